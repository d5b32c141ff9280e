/** What stands on a printed sheet, in order: pure lists from the plan. */
import type { IsoDate } from '../planner/household.ts';
import type { LedgerItem, MachinePlan, PlanStep, Session, TorqueRow } from '../planner/season-plan.ts';
import { ledgerOf, orderOf } from './by-machine.ts';

export const SHEETS = ['lay-up', 'start-up'] as const;
export type SheetKind = (typeof SHEETS)[number];

/**
 * The steps of a sheet. Start-up in the order of the plan, which is the ledger's; lay-up by the days the agenda gave, since it
 * keeps the order of steps, and what is done before what is to be done on its day; a season swap belongs to the lay-up.
 */
export function stepsOfSheet(machine: MachinePlan, kind: SheetKind, sessions: readonly Session[]): PlanStep[] {
  const steps = machine.steps.filter((s) => s.phase === kind || (kind === 'lay-up' && s.phase === 'swap'));
  if (kind === 'start-up') return withLate(steps, machine);
  const order = new Map(orderOf(sessions, machine.id).map((step, i) => [step, i]));
  const place = (step: PlanStep) => (step.done ? -1 : (order.get(step.id) ?? order.size));
  const isDated = steps.some(({ date }) => date !== undefined);
  // Among dated steps, what has found no day stands where it would be late.
  const day = ({ date, latest }: PlanStep) => date ?? (isDated ? latest : undefined) ?? '9999';
  return steps.sort((a, b) => (day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : place(a) - place(b)));
}

/**
 * The start-up's steps, and before its fluids what the lay-up has left undone and is still of use then: a coolant that nobody has
 * tested can freeze as long as the cold is to come.
 */
function withLate(steps: PlanStep[], { steps: all, startUp }: MachinePlan): PlanStep[] {
  const late = all.filter(
    ({ phase, useUntil, done, date }) =>
      phase === 'lay-up' && useUntil !== undefined && !done && date !== undefined && date >= startUp.start,
  );
  const at = steps.findIndex(({ stage }) => stage === 'fluids');
  return at < 0 ? [...late, ...steps] : steps.toSpliced(at, 0, ...late);
}

/**
 * The steps of look-ins and winter work, which no sheet has, by day: first what is to be done yet, then what is done or whose
 * day is past.
 */
export function restSteps({ steps }: Pick<MachinePlan, 'steps'>, asOf: IsoDate): PlanStep[] {
  const place = (step: PlanStep) => `${step.done || isPast(step, asOf) ? 1 : 0} ${step.date ?? '9999'}`;
  return steps
    .filter(({ phase }) => phase === 'look-in' || phase === 'winter')
    .sort((a, b) => (place(a) < place(b) ? -1 : place(a) > place(b) ? 1 : 0));
}

/** The day with which a step passes: of a look-in, for which the next one stands. A charge and winter work are still to be done. */
export const passesWith = ({ phase, needs, date }: PlanStep): IsoDate | undefined =>
  phase === 'look-in' && !needs.charger ? date : undefined;

/** Whether a step is a look-in whose day is gone by. */
export const isPast = (step: PlanStep, asOf: IsoDate): boolean => (passesWith(step) ?? asOf) < asOf;

/** What stands open when the sheet is taken up: the items that those of its own steps close that are still to be done. */
export function openOfSheet(ledger: readonly LedgerItem[], machine: string, steps: readonly PlanStep[]): LedgerItem[] {
  const own = new Set(steps.filter((step) => !step.done).map((step) => step.id));
  const opens = new Set(steps.map((step) => step.id));
  return ledgerOf(ledger, machine).filter((item) => own.has(item.closedBy) && !opens.has(item.openedBy));
}

/** Every tool once, whatever its case. */
export function toolsOf(steps: readonly PlanStep[]): string[] {
  return [...new Map(steps.flatMap((s) => s.tools).map((tool) => [tool.toLowerCase(), tool])).values()];
}

/** Supplies summed over steps. */
export function suppliesOf(steps: readonly PlanStep[]): PlanStep['supplies'] {
  const sums = new Map<string, PlanStep['supplies'][number]>();
  for (const supply of steps.flatMap((s) => s.supplies)) {
    const key = `${supply.what}\n${supply.unit}`;
    const sum = sums.get(key);
    if (sum) sum.amount += supply.amount;
    else sums.set(key, { ...supply });
  }
  return [...sums.values()];
}

/** Torque rows of the steps, each once. */
export function torquesOf(steps: readonly PlanStep[]): TorqueRow[] {
  return [...new Map(steps.flatMap((s) => s.torques).map((row) => [JSON.stringify(row), row])).values()];
}
