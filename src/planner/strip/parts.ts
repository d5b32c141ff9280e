import type { Assembly, Job, Machine } from '../household.ts';
import type { StripPlan } from '../season-plan.ts';
import { AS_NOTED } from '../units/index.ts';

/** One part for one purpose, before the list is summed. */
export interface PartRow {
  what: string;
  amount: number;
  unit: string;
  why: string;
  leadDays: number;
  inStock: boolean;
  /** The job or the assembly that needs it. */
  job?: string | undefined;
  assembly?: string | undefined;
}

/** Sealing washers to one banjo bolt: one on each side of the fitting. Common practice. */
const WASHERS_PER_BANJO = 2;

/** Days that a part without a stated lead time is given. Common practice: a week by post. */
export const USUAL_LEAD_DAYS = 7;

/** The unit of what is counted, as content writes it. */
const PIECES = 'piece';

const BANJO_WASHER = /banjo.*washer|washer.*banjo|sealing washer/i;

/**
 * Every part that the jobs and what comes off for them ask for, one row for each purpose.
 * @param machine - with assemblies, jobs and notes
 * @param off - ids of the assemblies that come off, and of those already off
 * @param jobs - the jobs to be done
 * @returns rows in the order of jobs, then of removal
 */
export function partRows(machine: Machine, off: readonly string[], jobs: readonly Job[]): PartRow[] {
  const byId = new Map(machine.assemblies.map((a) => [a.id, a]));
  const rows: PartRow[] = jobs.flatMap((job) =>
    job.parts.map(({ what, amount, unit, leadDays, inStock }) => {
      return { what, amount, unit, leadDays, inStock, why: job.name, job: job.id };
    }),
  );
  for (const id of off) {
    const assembly = byId.get(id)!;
    const jobParts = rows.filter((r) => jobs.some((j) => j.id === r.job && uses(j, id)));
    rows.push(...ownParts(machine, assembly), ...missingWashers(assembly, jobParts));
  }
  return rows;
}

function uses(job: Job, assembly: string): boolean {
  return job.assemblies.includes(assembly);
}

function ownParts(machine: Machine, assembly: Assembly): PartRow[] {
  const { id, name } = assembly;
  return [
    ...assembly.singleUse.map(({ what, count, leadDays, inStock }) => {
      return { what, amount: count, unit: PIECES, leadDays, inStock, why: `used once: ${name}`, assembly: id };
    }),
    ...assembly.replaceNextTime.map(({ what, amount, unit, leadDays, inStock }) => {
      return { what, amount, unit, leadDays, inStock, why: `replace at this removal: ${name}`, assembly: id };
    }),
    ...machine.notes
      .filter((note) => note.assemblyId === id)
      .map((note) => {
        const why = `noted earlier: ${name}`;
        return { what: note.text, amount: 1, unit: AS_NOTED, leadDays: 0, inStock: false, why, assembly: id };
      }),
  ];
}

/** Washers that the banjo bolts need beyond those that the content lists for the assembly or its jobs. */
function missingWashers(assembly: Assembly, jobParts: readonly PartRow[]): PartRow[] {
  const bolts = assembly.fasteners.filter((f) => f.banjo).reduce((sum, f) => sum + f.count, 0);
  const listed =
    assembly.singleUse.filter((p) => BANJO_WASHER.test(p.what)).reduce((sum, p) => sum + p.count, 0) +
    assembly.replaceNextTime.filter((p) => BANJO_WASHER.test(p.what)).reduce((sum, p) => sum + p.amount, 0) +
    jobParts.filter((p) => BANJO_WASHER.test(p.what)).reduce((sum, p) => sum + p.amount, 0);
  const amount = bolts * WASHERS_PER_BANJO - listed;
  if (amount <= 0) return [];
  const counted = `${bolts} banjo ${bolts === 1 ? 'bolt' : 'bolts'}, a washer on each side`;
  const why = `${assembly.name}: ${counted}${listed > 0 ? `; ${listed} listed already` : ''}`;
  const lead = Math.max(USUAL_LEAD_DAYS, ...assembly.singleUse.map((p) => p.leadDays));
  return [{ what: 'sealing washer', amount, unit: PIECES, why, leadDays: lead, inStock: false, assembly: assembly.id }];
}

/** "pieces" and "piece" are one unit. */
export function unitOf(written: string): string {
  return written === 'pieces' ? PIECES : written;
}

/**
 * The list summed: the same thing in the same unit once, what is in stock apart from what is not.
 * @param rows - one for each purpose
 * @returns summed parts in the order they first appear
 */
export function sumParts(rows: readonly PartRow[]): StripPlan['parts'] {
  const sums = new Map<string, StripPlan['parts'][number]>();
  for (const { what, amount, unit: written, why, leadDays, inStock } of rows) {
    const unit = unitOf(written);
    const key = JSON.stringify([what.trim().toLowerCase(), unit, inStock]);
    const sum = sums.get(key);
    if (!sum) {
      sums.set(key, { what, amount, unit, why, leadDays, inStock });
      continue;
    }
    sum.amount += amount;
    sum.leadDays = Math.max(sum.leadDays, leadDays);
    if (!sum.why.split('; ').includes(why)) sum.why += `; ${why}`;
  }
  return [...sums.values()];
}
