import { earlier, later } from '../dates.ts';
import type { Machine } from '../household.ts';
import type { PlanStep } from '../season-plan.ts';
import { sortSteps } from '../tasks/sort.ts';
import { startUpOrder } from './start-up.ts';

/**
 * The id that an item found open carries in the ledger: an assembly's id gets "assembly:" before it.
 * @param machine - whose assemblies they are
 * @param item - as written in content
 */
export function itemId(machine: Machine, item: string): string {
  return machine.assemblies.some((assembly) => assembly.id === item) ? `assembly:${item}` : item;
}

/**
 * The steps of a season as they stand on the sheets: none that was left out on purpose, a closing step only where its item
 * is open, a start-up step that opens something only where that is not open yet, start-up in safe order, days in keeping with the
 * order.
 * @param machine - the machine
 * @param steps - of procedures, of the winter strip and of the refit, each list in its own order
 * @returns before the start-up in order of the work, then the start-up sheet's order; `after` names only steps that are there
 */
export function settleSteps(machine: Machine, steps: readonly PlanStep[]): PlanStep[] {
  const earlierPhases = sortSteps(steps.filter((step) => step.phase !== 'start-up')).steps;
  const sheet = startUpOrder(steps.filter((step) => step.phase === 'start-up'));
  const open = new Set(machine.asLeft.map((left) => itemId(machine, left.item)));
  const skipped = new Set(machine.skippedSteps?.map((step) => step.stepId));
  const dropped = new Map<string, PlanStep>();
  const kept = inPhases(earlierPhases)
    .concat(sheet)
    .flatMap((step): PlanStep[] => {
      const closes = step.closes.filter((item) => open.has(item));
      const isDone = step.phase === 'start-up' && step.opens.length > 0 && step.opens.every((item) => open.has(item));
      if (skipped.has(step.id) || isDone || (step.closes.length > 0 && closes.length === 0)) {
        dropped.set(step.id, step);
        return [];
      }
      for (const item of closes) open.delete(item);
      for (const item of step.opens) open.add(item);
      return [{ ...step, closes }];
    });
  // The steps kept are copies of our own: what follows changes them in place.
  for (const step of kept) {
    step.after = through(step.after, dropped);
    while (step.goesOnFrom !== undefined && dropped.has(step.goesOnFrom))
      step.goesOnFrom = dropped.get(step.goesOnFrom)!.goesOnFrom;
  }
  chain(kept);
  fitDays(kept);
  return kept;
}

/** Lay-up and swap, then look-ins and winter work, each in the order given. */
function inPhases(steps: readonly PlanStep[]): PlanStep[] {
  const first = steps.filter((step) => step.phase === 'lay-up' || step.phase === 'swap');
  return [...first, ...steps.filter((step) => !first.includes(step))];
}

/** Predecessors with each dropped one replaced by what it came after itself. */
function through(after: readonly string[], dropped: ReadonlyMap<string, PlanStep>): string[] {
  const seen = new Set<string>();
  const result = new Set<string>();
  const visit = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    const behind = dropped.get(id)?.after;
    if (behind) behind.forEach(visit);
    else result.add(id);
  };
  after.forEach(visit);
  return [...result];
}

/** The start-up is one row of steps, each behind the one before; paper waits for nobody. */
function chain(steps: readonly PlanStep[]): void {
  let before: string | undefined;
  for (const step of steps) {
    if (step.phase !== 'start-up' || step.stage === 'paperwork') continue;
    if (before !== undefined && !step.after.includes(before)) step.after.push(before);
    before = step.id;
  }
}

/** No step later than what follows it, none earlier than what it follows, as far as its own last day allows. */
function fitDays(steps: readonly PlanStep[]): void {
  const byId = new Map(steps.map((step) => [step.id, step]));
  for (const step of steps.toReversed())
    for (const id of step.after) {
      const behind = byId.get(id);
      if (behind?.latest !== undefined && step.latest !== undefined)
        behind.latest = earlier(behind.latest, step.latest);
    }
  for (const step of steps) {
    for (const id of step.after) {
      const start = byId.get(id)?.earliest;
      if (start !== undefined && step.earliest !== undefined) step.earliest = later(step.earliest, start);
    }
    if (step.earliest !== undefined && step.latest !== undefined) step.earliest = earlier(step.earliest, step.latest);
  }
}
