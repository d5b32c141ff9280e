/** Procedures and one machine -> the steps of its season, with amounts, days and reasons. */
import { lookFirst } from '../battery/index.ts';
import { addDays, earlier, later } from '../dates.ts';
import type { Household, IsoDate, Machine, Place, Procedure, ProcedureStep, StepEach } from '../household.ts';
import type { BeforeCharge, PlanStep, Quantity } from '../season-plan.ts';
import { tickedOn } from '../ticked.ts';
import { type Amounts, fill, machineAmounts } from './amounts.ts';
import { caution } from './cautions.ts';
import { machineFacts } from './facts.ts';
import { type Occurrence, occurrences } from './occurrences.ts';
import { type PlanParts, type Windows, windowsOf } from './parts.ts';
import { inWorkOrder } from './procedures.ts';
import { sortSteps } from './sort.ts';
import { type Facts, matches } from './when.ts';

export { AMOUNT_NAMES, AMOUNTS, type AmountRow } from './amount-table.ts';
export { type Amounts, machineAmounts, unknownAmounts, unknownAmountsOf } from './amounts.ts';
export { CAUTION_IDS, CAUTIONS, type Caution, caution } from './cautions.ts';
export { FACT_NAMES, FACTS, type FactRow } from './fact-table.ts';
export { machineFacts } from './facts.ts';
export { lookInDates } from './occurrences.ts';
export { type PlanParts, type Windows, windowsOf } from './parts.ts';
export { mergeProcedures } from './procedures.ts';
export { type Facts, matches } from './when.ts';
export { unknownFacts, unknownValues } from './when-table.ts';

export interface StepInput {
  machine: Machine;
  place: Place;
  household: Household;
  parts: PlanParts;
  /** Library and own procedures together, as `mergeProcedures` gives them. */
  procedures: readonly Procedure[];
  /** Worked out here where they are not given. */
  facts?: Facts | undefined;
  amounts?: Amounts | undefined;
}

/** What a step reads that asks for the battery's voltage. */
const BATTERY_READING = 'V';

interface Draft {
  step: ProcedureStep;
  procedure: Procedure;
  /** Number of the repetition, from 1. */
  n: number;
  plan: PlanStep;
}

/**
 * The steps that the procedures ask of one machine over its season.
 *
 * Steps that close items are all here, whether the item is open or not: `settleSteps` of the ledger keeps those that have
 * something to close.
 * @param input - machine, place, household, what the calculations found, procedures
 * @returns steps in the order of the work; where a procedure names no order its steps follow each other as written
 */
export function concreteSteps(input: StepInput): PlanStep[] {
  const { machine, place, household, parts } = input;
  const facts = input.facts ?? machineFacts(machine, place, household, parts);
  const amounts = input.amounts ?? machineAmounts(machine, place, household, parts);
  const windows = windowsOf(machine.season);
  const applicable = inWorkOrder(input.procedures)
    .filter((procedure) => matches(procedure.when, facts))
    .map((procedure) => ({ procedure, steps: procedure.steps.filter((step) => matches(step.when, facts)) }));
  const covered = applicable.flatMap(({ steps }) => steps.flatMap((step) => step.covers));
  const once: Occurrence[] = [{ key: '', amounts }];
  const known = new Map<StepEach, Occurrence[]>();
  const repeats = ({ each }: ProcedureStep): Occurrence[] => {
    if (each === undefined) return once;
    const made =
      known.get(each) ??
      occurrences(each, machine, household, parts).map((one) => ({
        ...one,
        amounts: { ...amounts, ...one.amounts },
      }));
    known.set(each, made);
    return made;
  };
  const drafts = applicable.flatMap(({ procedure, steps }) =>
    steps.flatMap((step): Draft[] =>
      repeats(step)
        .filter((occurrence) => step.each !== 'service' || !covered.includes(occurrence.key))
        .map((occurrence, n) => ({
          step,
          procedure,
          n: occurrence.n ?? n + 1,
          plan: concrete(procedure, step, occurrence, n, { ...input, facts }, windows),
        })),
    ),
  );
  const groups = byProcedure(drafts);
  const before = stepsBefore(drafts);
  for (const draft of drafts) {
    draft.plan.after = predecessors(draft, groups, before);
    if (draft.step.sameSession) draft.plan.goesOnFrom = before.get(draft.step)!.at(-1)?.plan.id;
  }
  return sortSteps(drafts.map((draft) => draft.plan)).steps;
}

function concrete(
  procedure: Procedure,
  step: ProcedureStep,
  occurrence: Occurrence,
  n: number,
  { machine, household, parts, facts }: StepInput & { facts: Facts },
  windows: Windows,
): PlanStep {
  const id = `${procedure.id}.${step.id}${step.each === undefined ? '' : `.${occurrence.n ?? n + 1}`}`;
  const { amounts } = occurrence;
  const used: Quantity[] = [];
  const text = (template: string): string => {
    const filled = fill(template, amounts, household);
    for (const quantity of filled.used) if (!used.some((u) => u.name === quantity.name)) used.push(quantity);
    return filled.text;
  };
  const item = (name: string): string => (occurrence.key === '' ? name : `${name}:${occurrence.key}`);
  const done =
    occurrence.isLookedIn === true ||
    (step.reading === BATTERY_READING && occurrence.isRead === true) ||
    tickedOn(machine, { id, phase: procedure.phase, stage: step.stage }) !== undefined;
  const before = done ? undefined : beforeOf(step, occurrence, parts);
  const said = { title: text(step.title), detail: step.detail === undefined ? undefined : text(step.detail) };
  const days = daysOf(procedure, step, occurrence, windows, parts);
  return {
    id,
    phase: procedure.phase,
    part: procedure.title,
    ...(before ? lookFirst(said, before) : said),
    // A step that says how long something runs lasts no less.
    minutes: Math.max(
      occurrence.minutes ?? step.minutes,
      ...used.filter((u) => u.unit === 'min').map((u) => Math.ceil(u.value)),
    ),
    tools: step.tools,
    supplies: step.supplies.flatMap((supply) => {
      const amount = supply.amountOf === undefined ? undefined : amounts[supply.amountOf];
      if (amount === undefined || 'text' in amount)
        return supply.amountOf === undefined ? [{ what: supply.what, amount: supply.amount, unit: supply.unit }] : [];
      return amount.value > 0
        ? [
            {
              what: supply.what,
              amount: amount.value,
              unit: amount.unit || supply.unit,
              ...(amount.assumed && { about: true }),
            },
          ]
        : [];
    }),
    cautions: step.cautions.filter((name) => concerns(name, facts)),
    why: text(step.why),
    sources: [step.source],
    amounts: used,
    opens: step.opens.map((open) => item(open.item)),
    closes: step.closes.map(item),
    after: [],
    stage: step.stage,
    safetyCritical: step.safetyCritical,
    doNotRide: step.doNotRide === undefined ? undefined : text(step.doNotRide),
    needs: step.needs,
    ...days,
    waitH: step.waitH,
    reading: step.reading,
    torques: [],
    done,
  };
}

/** What has to be settled before a step that charges the battery: a charge of the rest has its own. */
function beforeOf(step: ProcedureStep, { before }: Occurrence, { battery }: PlanParts): BeforeCharge | undefined {
  if (!step.needs.charger) return undefined;
  return step.each === 'charge' ? before : battery?.before;
}

/** A caution of the table may say which machines it does not concern; the user's own words concern all. */
function concerns(id: string, facts: Facts): boolean {
  const { unless = [] } = caution(id) ?? {};
  return ![unless].flat().some((when) => matches(when, facts));
}

/** First and last day of a step, before its neighbours are looked at. */
function daysOf(
  { phase }: Procedure,
  step: ProcedureStep,
  occurrence: Occurrence,
  windows: Windows,
  parts: PlanParts,
): Pick<PlanStep, 'earliest' | 'latest' | 'date' | 'overdue' | 'useUntil'> {
  const { date, overdue } = occurrence;
  if (date !== undefined) return { earliest: date, latest: occurrence.latest ?? date, date, overdue };
  const { before, beforeLast, lastUse, layUpEnd, startUpFrom, firstUse, rideEnd } = windows;
  if (phase === 'swap') return { earliest: before, latest: layUpEnd };
  if (phase === 'look-in') return { earliest: layUpEnd, latest: startUpFrom };
  if (phase === 'start-up') {
    if (step.stage !== 'first-ride') return { earliest: startUpFrom, latest: firstUse };
    if (step.deadline?.before === 'first-use-eve') {
      const eve = later(startUpFrom, addDays(firstUse, -1));
      return { earliest: eve, latest: eve, date: eve };
    }
    // The first ride is the first use, and no session is sought for it.
    return step.deadline?.before === 'ride-end'
      ? { earliest: addDays(firstUse, 1), latest: rideEnd }
      : { earliest: firstUse, latest: firstUse, date: firstUse };
  }
  switch (step.deadline?.before) {
    case 'last-use':
      return { earliest: beforeLast, latest: lastUse };
    case 'first-frost-in-store': {
      const frost = parts.firstFrost;
      return daysBefore(frost === undefined ? undefined : addDays(frost, -1), windows);
    }
    case 'coolant-freezes': {
      const by = parts.coolant?.testBy ?? parts.coolant?.changeBy;
      // As long as the cold is to come it is not too late, whatever the start-up has reached.
      return { ...daysBefore(by, windows), useUntil: by && rideEnd };
    }
    case 'drained-fuel-use-by':
      return { earliest: lastUse, latest: later(lastUse, parts.fuel?.drainedUseBy ?? layUpEnd) };
    case 'first-use':
      return { earliest: lastUse, latest: later(lastUse, firstUse) };
    default:
      return { earliest: lastUse, latest: layUpEnd };
  }
}

/** Days of a lay-up step that some cold puts a last day to: a fortnight has two weekends. */
function daysBefore(by: IsoDate | undefined, { lastUse, layUpEnd }: Windows): Pick<PlanStep, 'earliest' | 'latest'> {
  const latest = by === undefined ? layUpEnd : earlier(by, layUpEnd);
  return { earliest: earlier(lastUse, addDays(latest, -14)), latest };
}

/** What a step comes after: what it names, and the step before it in its own procedure. */
function predecessors(
  draft: Draft,
  groups: ReadonlyMap<string, readonly Draft[]>,
  before: ReadonlyMap<ProcedureStep, readonly Draft[]>,
): string[] {
  const { step, plan } = draft;
  // What is repeated alike goes on within its own repetition: January's look comes before no step of November's.
  const isOfAnother = (other: Draft) => isAlike(step.each, other.step.each) && other.n !== draft.n;
  const named = step.after.flatMap((name) => namedIn(groups, name)).filter((other) => other.step !== step);
  const previous = before.get(step)!.filter((other) => !isOfAnother(other));
  return [...new Set([...named, ...previous].map((other) => other.plan.id))].filter((id) => id !== plan.id);
}

/** Whether two steps are repeated for the same things: a look-in with a charge is one of the look-ins. */
const isAlike = (a: StepEach | undefined, b: StepEach | undefined): boolean =>
  a !== undefined && b !== undefined && a.replace(/-without-charge$/, '') === b.replace(/-without-charge$/, '');

/** For each step the drafts of the step before it in its procedure; drafts stand in the order of their procedures. */
function stepsBefore(drafts: readonly Draft[]): Map<ProcedureStep, Draft[]> {
  const before = new Map<ProcedureStep, Draft[]>();
  let [last, own]: [Draft | undefined, Draft[]] = [undefined, []];
  for (const draft of drafts) {
    if (draft.step !== last?.step) {
      before.set(draft.step, draft.procedure === last?.procedure ? own : []);
      own = [];
    }
    own.push(draft);
    last = draft;
  }
  return before;
}

function byProcedure(drafts: readonly Draft[]): Map<string, Draft[]> {
  const groups = new Map<string, Draft[]>();
  for (const draft of drafts) {
    const group = groups.get(draft.procedure.id);
    if (group) group.push(draft);
    else groups.set(draft.procedure.id, [draft]);
  }
  return groups;
}

/** What a name that `after` can use stands for: a procedure's, or that of one of its steps. */
function namedIn(groups: ReadonlyMap<string, readonly Draft[]>, name: string): readonly Draft[] {
  const [procedure, id] = name.split('.') as [string, string?];
  const group = groups.get(procedure) ?? [];
  return id === undefined ? group : group.filter(({ step }) => step.id === id);
}
