/** Assemblies, jobs, services and notes as written -> the planner's. */
import type { Assembly, Job, Machine, ServiceItem, Supply } from '../planner/household.ts';
import type { MachineFile } from './schemas/machine.ts';

/** The part of a machine that its winter work is planned from. */
export type Work = Pick<Machine, 'services' | 'assemblies' | 'jobs' | 'notes'>;

/** Completes services, assemblies, jobs and notes; each with its usual defaults. */
export function resolveWork(raw: MachineFile): Work {
  return {
    services: (raw.services ?? []).map(service),
    assemblies: (raw.assemblies ?? []).map(assembly),
    jobs: (raw.jobs ?? []).map(job),
    notes: (raw.notes ?? []).map((n) => ({ date: n.date, text: n.text, assemblyId: n.assembly })),
  };
}

type Raw<K extends 'services' | 'assemblies' | 'jobs'> = NonNullable<MachineFile[K]>[number];
type RawSupply = NonNullable<Raw<'jobs'>['parts']>[number];

function supply(s: RawSupply): Supply {
  return {
    what: s.what,
    amount: s.amount?.value ?? 1,
    unit: s.amount?.unit ?? 'piece',
    leadDays: s.leadDays ?? 0,
    inStock: s.inStock ?? false,
  };
}

function service(s: Raw<'services'>): ServiceItem {
  return {
    id: s.id,
    what: s.what,
    lastDone: s.lastDone && { date: s.lastDone.date, km: s.lastDone.odometer, hours: s.lastDone.engineHours },
    interval: { months: s.every.time, km: s.every.distance, hours: s.every.hours },
    observedMonths: s.cameBackAfter,
    minutes: s.minutes ?? 30,
    source: s.source ?? 'the machine’s file',
    supplies: (s.supplies ?? []).map(supply),
    assemblies: s.assemblies ?? [],
  };
}

function assembly(a: Raw<'assemblies'>): Assembly {
  return {
    id: a.id,
    name: a.name,
    behind: a.behind ?? [],
    offMinutes: a.offMinutes,
    // Refitting with torque and a clean thread takes longer than taking off; common practice.
    onMinutes: a.onMinutes ?? a.offMinutes * 1.5,
    fasteners: (a.fasteners ?? []).map((f) => ({
      what: f.what,
      count: f.count,
      head: f.head,
      size: f.size,
      torqueNm: f.torque,
      condition: f.condition ?? 'unstated',
      threadlock: f.threadlock,
      antiSeize: f.antiSeize ?? false,
      banjo: f.banjo ?? false,
    })),
    singleUse: (a.singleUse ?? []).map((p) => ({
      what: p.what,
      count: p.count ?? 1,
      leadDays: p.leadDays ?? 0,
      inStock: p.inStock ?? false,
    })),
    cautions: a.cautions ?? [],
    opensFluid: a.opensFluid,
    refitNotes: a.refitNotes ?? [],
    replaceNextTime: (a.replaceNextTime ?? []).map(supply),
    safetyCritical: a.safetyCritical ?? false,
  };
}

function job(j: Raw<'jobs'>): Job {
  return {
    id: j.id,
    name: j.name,
    assemblies: j.assemblies,
    minutes: j.minutes,
    parts: (j.parts ?? []).map(supply),
    tools: j.tools ?? [],
    cautions: j.cautions ?? [],
    notes: j.notes ?? [],
    after: j.after ?? [],
    needs: { stand: j.stand ?? false, bench: j.bench ?? false },
    done: j.done ?? false,
  };
}
