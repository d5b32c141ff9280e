import { addDays } from '../dates.ts';
import type { Household, IsoDate, Machine, Supply } from '../household.ts';
import type { PlanStep, StripPlan, SupplyLine } from '../season-plan.ts';
import { offStepId, openJobs, orderedParts, type PartRow, partRows, USUAL_LEAD_DAYS, unitOf } from '../strip/index.ts';

/** One machine as far as supplies go. */
export interface SupplyMachine {
  machine: Machine;
  /** All steps; `date` is the day the agenda gave it, where it gave one. */
  steps: readonly PlanStep[];
  strip?: StripPlan | undefined;
}

/** One need of one machine, before the lines are summed. */
export interface Need {
  what: string;
  amount: number;
  unit: string;
  about?: boolean | undefined;
  needBy: IsoDate;
  leadDays: number;
  inStock: boolean;
  for: SupplyLine['for'][number];
}

/**
 * What to buy, summed over machines: the same thing in the same unit is one line, what is in stock a line apart.
 *
 * A supply is needed on the day of its step; a part of the strip-down on the day its machine is opened for it. A line is
 * ordered by the earliest of its needs less their lead times. Parts of winter jobs are counted from the strip-down alone,
 * never again from the steps that use them. Steps that are done need nothing.
 * @param machines - with their steps and strip-downs
 * @param household - its procedures and services say lead time and stock of a step's supplies
 * @returns lines by order-by date, what is in stock last
 */
export function sumSupplies(machines: readonly SupplyMachine[], household: Household): SupplyLine[] {
  const lines = new Map<string, SupplyLine>();
  for (const need of supplyNeeds(machines, household)) add(lines, need);
  return [...lines.values()].sort(
    (a, b) =>
      Number(a.inStock) - Number(b.inStock) ||
      compare(a.orderBy ?? a.needBy, b.orderBy ?? b.needBy) ||
      compare(a.what, b.what) ||
      compare(a.unit, b.unit),
  );
}

/**
 * What each machine needs by itself, each thing with its own day.
 * @param machines - with their steps and strip-downs
 * @param household - its procedures and services say lead time and stock of a step's supplies
 */
export function supplyNeeds(machines: readonly SupplyMachine[], household: Household): Need[] {
  const procedures = practiceFacts(household.procedures);
  return machines.flatMap((each) => {
    const own = supplyFacts(each.machine.services.flatMap((s) => s.supplies));
    const facts = (what: string, unit: string) => own.get(key(what, unit)) ?? procedures.get(key(what, unit));
    return [...stepNeeds(each, facts), ...stripNeeds(each)];
  });
}

type Fact = { leadDays: number; inStock: boolean };
type Facts = (what: string, unit: string) => Fact | undefined;

/** What the practice says of its supplies, kept with it. */
const practice = new WeakMap<Household['procedures'], Map<string, Fact>>();

function practiceFacts(procedures: Household['procedures']): Map<string, Fact> {
  const known = practice.get(procedures);
  if (known) return known;
  const facts = supplyFacts(procedures.flatMap((p) => p.steps.flatMap((s) => s.supplies)));
  practice.set(procedures, facts);
  return facts;
}

function supplyFacts(supplies: readonly Supply[]): Map<string, Fact> {
  const facts = new Map<string, Fact>();
  for (const s of supplies) {
    const known = facts.get(key(s.what, s.unit));
    facts.set(key(s.what, s.unit), {
      leadDays: Math.max(s.leadDays, known?.leadDays ?? 0),
      inStock: s.inStock && (known?.inStock ?? true),
    });
  }
  return facts;
}

function stepNeeds({ machine, steps }: SupplyMachine, facts: Facts): Need[] {
  return steps
    .filter((s) => !s.done && !isStripStep(s))
    .flatMap((step) =>
      step.supplies.map(({ what, amount, unit, about }) => ({
        what,
        amount,
        unit,
        about,
        needBy: step.date ?? fallbackDate(machine, step),
        ...(facts(what, unit) ?? { leadDays: USUAL_LEAD_DAYS, inStock: false }),
        for: { machine: machine.id, step: step.id, amount },
      })),
    );
}

/** Steps made from the strip-down: their parts are counted from the strip-down itself. */
function isStripStep(step: PlanStep): boolean {
  return step.id.startsWith('strip.') || step.id.startsWith('job.');
}

function stripNeeds({ machine, steps, strip }: SupplyMachine): Need[] {
  if (!strip) return [];
  const byId = new Map(steps.map((s) => [s.id, s]));
  const jobs = openJobs(machine);
  /** Earliest removal among these, or the latest day that is known where nothing is to be removed. */
  const opened = (assemblies: readonly string[], stepId: string): IsoDate => {
    const dates = assemblies.flatMap((id) => byId.get(offStepId(id))?.date ?? []);
    return dates.sort()[0] ?? byId.get(stepId)?.date ?? machine.season.firstUse;
  };
  const needBy = (p: PartRow): IsoDate => {
    if (p.job === undefined) return opened([p.assembly!], `strip.on.${p.assembly}`);
    const job = strip.off.filter((s) => s.forJobs.includes(p.job!)).map((s) => s.assembly);
    return opened(job, `job.${p.job}`);
  };
  const rows = partRows(
    machine,
    strip.off.map((s) => s.assembly),
    jobs,
  );
  const ordered = orderedParts(machine, strip, rows);
  return rows
    .filter((p) => !ordered.has(p))
    .map((p) => ({
      what: p.what,
      amount: p.amount,
      unit: p.unit,
      needBy: needBy(p),
      leadDays: p.leadDays,
      inStock: p.inStock,
      for:
        p.job === undefined
          ? { machine: machine.id, amount: p.amount }
          : { machine: machine.id, job: p.job, amount: p.amount },
    }));
}

/** The day a step without a date is taken to fall on: its latest, or the edge of the season it belongs to. */
function fallbackDate(machine: Machine, step: PlanStep): IsoDate {
  return step.latest ?? (step.phase === 'start-up' ? machine.season.firstUse : machine.season.lastUse);
}

function add(lines: Map<string, SupplyLine>, need: Need): void {
  if (!(need.amount >= 0 && Number.isFinite(need.amount))) {
    throw new RangeError(`found ${need.amount} ${need.unit} of "${need.what}", expected an amount of 0 or more`);
  }
  if (need.amount === 0) return;
  const id = JSON.stringify([key(need.what, need.unit), need.inStock]);
  const orderBy = need.inStock ? undefined : addDays(need.needBy, -need.leadDays);
  const line = lines.get(id);
  if (!line) {
    const { what, amount, unit, about, needBy, inStock } = need;
    lines.set(id, {
      what,
      amount,
      unit: unitOf(unit),
      ...(about && { about }),
      orderBy,
      needBy,
      inStock,
      for: [need.for],
    });
    return;
  }
  line.amount += need.amount;
  if (need.about) line.about = true;
  if (need.needBy < line.needBy) line.needBy = need.needBy;
  if (orderBy !== undefined && orderBy < line.orderBy!) line.orderBy = orderBy;
  line.for.push(need.for);
}

function key(what: string, unit: string): string {
  return `${what.trim().toLowerCase().replace(/\s+/g, ' ')}|${unitOf(unit)}`;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
