import { addDays } from '../dates.ts';
import type { Assembly, IsoDate, Job, Machine } from '../household.ts';
import type { PlanStep, StripPlan, StripStep } from '../season-plan.ts';
import { tickedOn } from '../ticked.ts';
import { AS_NOTED, formatSupply, type Reader } from '../units/index.ts';
import { counted } from '../written.ts';
import { mustComeOff } from './order.ts';
import { type OrderGroup, orderGroups, REFIT_GROUP } from './orders.ts';
import { type PartRow, partRows } from './parts.ts';
import { openJobs, waitsForStartUp } from './plan-strip.ts';
import { assemblyItem, checkStepId, jobStepId, offStepId, onStepId, orderStepId } from './step-ids.ts';
import { torqueRows } from './torque.ts';

const ORDER_MINUTES = 15;
const CHECK_MINUTES = 5;
const PRACTICE = ['common practice'];

/** What of the work a step belongs to; a job goes by its own name. */
const PARTS = { order: 'Orders', off: 'Taking apart', on: 'Putting back together' };

/** What is said when a fluid is opened. Common practice. */
const FLUID_CAUTIONS: Record<NonNullable<Assembly['opensFluid']>, string> = {
  fuel: 'Fuel is opened: no flame, no pilot light, no charging nearby; drain into a labelled, approved can.',
  oil: 'Oil is opened: catch it, and wipe the floor before anything is lifted over it.',
  coolant: 'Coolant is opened: only when cold; it is poisonous to animals, so catch all of it.',
  'brake-fluid': 'Brake fluid is opened: it strips paint; cap the line, and bleed before any ride.',
};

/**
 * The winter steps of a machine: order parts, take off, do the jobs, refit.
 *
 * Each removal opens "assembly:<id>" and each refit closes it. A refit follows the last job that needs the assembly off,
 * and the refits of what lies behind it, so a machine does not stand apart for longer than its jobs take; the start-up
 * sheet then verifies the safety-critical ones (`refitSteps`). An assembly that was off when the content was written has
 * no removal step here: the ledger opens its item from `StripPlan.nowOff`. It is refitted here if a job needs it off or
 * something refitted here lies in front of it, otherwise at start-up. So opened = closed over both lists. An assembly comes
 * off only after the parts of every job that it comes off for have come.
 * @param machine - with assemblies and jobs
 * @param strip - the machine's own plan, from `planStrip`
 * @param reader - whose units and language the order steps are in
 * @returns steps in a safe order; empty where nothing comes off and no job is open
 */
export function winterSteps(machine: Machine, strip: StripPlan, reader: Reader = 'metric'): PlanStep[] {
  const jobs = openJobs(machine);
  const byId = new Map(machine.assemblies.map((a) => [a.id, a]));
  const off = strip.off.map((s) => s.assembly);
  const parts = partRows(machine, off, jobs);
  const late = startUpSet(machine, strip);
  const reach = new Map(jobs.map((j) => [j.id, mustComeOff(machine.assemblies, j.assemblies)]));
  const removed = strip.off.filter((s) => !leftOff(machine, s.assembly));
  const removedIds = new Set(removed.map((s) => s.assembly));
  const onStand = new Set(jobs.filter((j) => j.needs.stand).flatMap((j) => [...reach.get(j.id)!]));
  const done = new Set(machine.doneSteps.map((d) => d.stepId));

  const orders = orderGroups(jobs, reach, parts);

  /** Orders that must have come before something is opened for these jobs. */
  const ordersFor = (jobIds: readonly string[]) =>
    orders.filter((g) => jobIds.some((id) => g.jobs.has(id))).map((g) => orderStepId(g.id));
  /** From when on their parts are here, where they are ordered: a part that comes late has its lead time written anew. */
  const from = (jobIds: readonly string[]): Pick<PlanStep, 'earliest'> => {
    const days = orders
      .filter((g) => jobIds.some((id) => g.jobs.has(id)))
      .flatMap((g) => orderedOn(machine, g.id).map((day) => addDays(day, g.leadDays)));
    return days.length > 0 ? { earliest: days.sort().at(-1)! } : {};
  };
  const takeOff = (s: StripStep): PlanStep => {
    const assembly = byId.get(s.assembly)!;
    return {
      ...blank(offStepId(s.assembly), PARTS.off, `Take off: ${assembly.name}`, assembly.offMinutes),
      ...from(s.forJobs),
      detail: 'Mark and bag what comes off, thread bolts back into their own holes, plug open ports.',
      tools: heads(assembly),
      cautions: cautionsOf(assembly),
      why:
        s.forJobs.length > 0
          ? `For: ${s.forJobs.map((id) => jobs.find((j) => j.id === id)!.name).join(', ')}.`
          : 'It was taken off, and no open job needs it off any more.',
      opens: [assemblyItem(s.assembly)],
      after: [...ordersFor(s.forJobs), ...s.behind.filter((b) => removedIds.has(b)).map(offStepId)],
      safetyCritical: assembly.safetyCritical,
      needs: needs({ stand: onStand.has(s.assembly) }),
    };
  };
  const doJob = (job: Job): PlanStep => ({
    ...blank(jobStepId(job.id), job.name, job.name, job.minutes),
    ...from([job.id]),
    detail: job.notes.length > 0 ? job.notes.join(' ') : undefined,
    tools: job.tools,
    supplies: job.parts.map(({ what, amount, unit }) => ({ what, amount, unit })),
    cautions: job.cautions,
    why: 'A job for the idle months.',
    after: [
      ...ordersFor([job.id]),
      ...off.filter((id) => removedIds.has(id) && reach.get(job.id)!.has(id)).map(offStepId),
      ...job.after.filter((id) => reach.has(id)).map(jobStepId),
    ],
    needs: needs(job.needs),
  });
  const refit = strip.on
    .filter((s) => !late.has(s.assembly))
    .map((s): PlanStep => {
      const lastJobs = s.forJobs.map(jobStepId);
      const step = refitStep(byId.get(s.assembly)!, parts, refitsBehind(machine, strip, s.assembly));
      return {
        ...step,
        phase: 'winter',
        stage: undefined,
        after: [...(removedIds.has(s.assembly) ? [offStepId(s.assembly)] : []), ...lastJobs, ...step.after],
        needs: needs({ stand: onStand.has(s.assembly) }),
      };
    });
  const steps = [
    ...orders.map((g) => orderStep(g, jobs, reader)),
    ...removed.map(takeOff),
    ...inOrder(jobs).map(doJob),
    ...refit,
  ];
  return steps.map((s) => ({ ...s, done: done.has(s.id) }));
}

/**
 * The start-up sheet's part of the strip-down, stage "refit", in the reverse of the removal order.
 *
 * Whatever is off and not refitted in winter is refitted here and its item closed. Safety-critical assemblies that a
 * winter step refits are verified against their torque; that closes nothing, for it opened nothing.
 * @param machine - with assemblies and jobs
 * @param strip - the machine's own plan, from `planStrip`
 * @returns start-up steps with torque rows
 */
export function refitSteps(machine: Machine, strip: StripPlan): PlanStep[] {
  const byId = new Map(machine.assemblies.map((a) => [a.id, a]));
  const parts = partRows(
    machine,
    strip.off.map((s) => s.assembly),
    openJobs(machine),
  );
  const late = startUpSet(machine, strip);
  const done = new Set(machine.doneSteps.map((d) => d.stepId));
  const ticked = (id: string) => tickedOn(machine, { id, phase: 'start-up' }) !== undefined;
  const check = (assembly: Assembly): PlanStep => ({
    ...checkStep(assembly),
    done: ticked(checkStepId(assembly.id)),
  });
  // Refitted, and its job written down as finished: the strip-down has nothing left of it, the check has.
  const inStrip = new Set(strip.on.map((s) => s.assembly));
  const finished = machine.assemblies.filter((a) => a.safetyCritical && done.has(onStepId(a.id)) && !inStrip.has(a.id));
  const refits = strip.on.flatMap((s): PlanStep[] => {
    const assembly = byId.get(s.assembly)!;
    if (late.has(s.assembly)) {
      const step = refitStep(assembly, parts, refitsBehind(machine, strip, s.assembly));
      const waits = parts.some((p) => p.assembly === s.assembly && !p.inStock && p.leadDays > 0);
      const after = waits ? [orderStepId(REFIT_GROUP), ...step.after] : step.after;
      return [{ ...step, after, done: ticked(step.id) }];
    }
    return assembly.safetyCritical ? [check(assembly)] : [];
  });
  return [...refits, ...finished.map((a) => ({ ...check(a), after: [] }))];
}

/** Verifies a refit that was made in winter; it closes nothing. */
function checkStep(assembly: Assembly): PlanStep {
  return {
    ...blank(checkStepId(assembly.id), PARTS.on, `Check the refit: ${assembly.name}`, CHECK_MINUTES),
    phase: 'start-up',
    stage: 'refit',
    detail: 'Taken off and refitted over the rest. Go round every fastener once more.',
    tools: heads(assembly),
    cautions: cautionsOf(assembly),
    why: 'It was off, and a mistake here is dangerous.',
    after: [onStepId(assembly.id)],
    safetyCritical: true,
    doNotRide: `${assembly.name}: a fastener is loose, missing or not at its torque.`,
    torques: torqueRows(assembly),
  };
}

/** Days on which the parts of a group were ordered, as the record says. */
function orderedOn(machine: Machine, group: string): IsoDate[] {
  return machine.doneSteps.filter(({ stepId }) => stepId === orderStepId(group)).map(({ date }) => date);
}

/**
 * Parts that the record says are ordered, or used in a job that is done: nothing more is to be bought.
 * @param machine - with its record
 * @param strip - the machine's own plan, from `planStrip`
 * @param parts - as `partRows` gives them
 */
export function orderedParts(machine: Machine, strip: StripPlan, parts: readonly PartRow[]): Set<PartRow> {
  const jobs = openJobs(machine);
  const reach = new Map(jobs.map((j) => [j.id, mustComeOff(machine.assemblies, j.assemblies)]));
  const done = new Set(machine.doneSteps.map((d) => d.stepId));
  const isUsed = (p: PartRow) =>
    p.job === undefined ? done.has(onStepId(p.assembly!)) && !isOff(strip, p.assembly!) : done.has(jobStepId(p.job));
  return new Set([
    ...orderGroups(jobs, reach, parts).flatMap((g) => (orderedOn(machine, g.id).length > 0 ? g.rows : [])),
    ...parts.filter(isUsed),
  ]);
}

const isOff = (strip: StripPlan, assembly: string) => strip.nowOff.some((n) => n.assembly === assembly);

function startUpSet(machine: Machine, strip: StripPlan): Set<string> {
  const needed = new Set(strip.off.filter((s) => s.forJobs.length > 0).map((s) => s.assembly));
  return waitsForStartUp(machine, needed, new Set(strip.nowOff.map((n) => n.assembly)));
}

/** Left off by the content itself: nothing in the plan takes it off. */
function leftOff(machine: Machine, id: string): boolean {
  return machine.asLeft.some((l) => l.item === id || l.item === assemblyItem(id));
}

/** Refits that come first: those of what lies behind this assembly and is off. */
function refitsBehind(machine: Machine, strip: StripPlan, id: string): string[] {
  const off = new Set(strip.off.map((s) => s.assembly));
  return machine.assemblies.filter((a) => off.has(a.id) && a.behind.includes(id)).map((a) => onStepId(a.id));
}

function refitStep(assembly: Assembly, parts: readonly PartRow[], after: string[]): PlanStep {
  return {
    ...blank(onStepId(assembly.id), PARTS.on, `Refit: ${assembly.name}`, assembly.onMinutes),
    phase: 'start-up',
    stage: 'refit',
    detail: assembly.refitNotes.length > 0 ? assembly.refitNotes.join(' ') : undefined,
    tools: heads(assembly),
    supplies: parts.filter((p) => p.assembly === assembly.id).map(({ what, amount, unit }) => ({ what, amount, unit })),
    cautions: cautionsOf(assembly),
    why: 'It was taken off.',
    closes: [assemblyItem(assembly.id)],
    after,
    safetyCritical: assembly.safetyCritical,
    doNotRide: assembly.safetyCritical ? `${assembly.name}: not refitted, or not at its torque.` : undefined,
    torques: torqueRows(assembly),
  };
}

function orderStep({ id, jobs: ids, rows, leadDays }: OrderGroup, jobs: readonly Job[], reader: Reader): PlanStep {
  const names = jobs.filter((j) => ids.has(j.id)).map((j) => j.name);
  const amount = (p: PartRow) => (p.unit === AS_NOTED ? '' : `, ${formatSupply(p.amount, p.unit, reader, p.what)}`);
  const list = rows.map((p) => `${p.what.replace(/[.]$/, '')}${amount(p)} (${p.why})`);
  return {
    ...blank(orderStepId(id), PARTS.order, `Order parts for: ${names.join(', ') || 'what is refitted'}`, ORDER_MINUTES),
    detail: `The last of them comes after ${counted(leadDays, 'day')}. ${list.join('; ')}.`,
    why: 'Parts are here before the machine is opened.',
    waitH: 24 * leadDays,
  };
}

/** Jobs so that each stands after those it waits for; otherwise in the order of the content. */
function inOrder(jobs: readonly Job[]): Job[] {
  const left = new Map(jobs.map((j) => [j.id, j]));
  const out: Job[] = [];
  while (left.size > 0) {
    const next = [...left.values()].find((j) => j.after.every((a) => !left.has(a))) ?? [...left.values()][0]!;
    left.delete(next.id);
    out.push(next);
  }
  return out;
}

function heads(assembly: Assembly): string[] {
  return [...new Set(assembly.fasteners.map((f) => f.head))];
}

function cautionsOf(assembly: Assembly): string[] {
  return [...assembly.cautions, ...(assembly.opensFluid ? [FLUID_CAUTIONS[assembly.opensFluid]] : [])];
}

function needs(some: Partial<PlanStep['needs']>): PlanStep['needs'] {
  return { dryDay: false, warmEngine: false, stand: false, charger: false, bench: false, power: false, ...some };
}

function blank(id: string, part: string, title: string, minutes: number): Omit<PlanStep, 'why'> {
  return {
    id,
    phase: 'winter',
    part,
    title,
    minutes,
    tools: [],
    supplies: [],
    cautions: [],
    sources: PRACTICE,
    amounts: [],
    opens: [],
    closes: [],
    after: [],
    safetyCritical: false,
    needs: needs({}),
    waitH: 0,
    torques: [],
    done: false,
  };
}
