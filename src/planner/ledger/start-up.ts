import type { CloseStage } from '../household.ts';
import type { PlanStep } from '../season-plan.ts';
import { sortSteps } from '../tasks/sort.ts';

/** The stages in safe order. Source: common practice. */
export const STAGES: readonly CloseStage[] = [
  'refit',
  'fluids',
  'fuel',
  'battery',
  'plugs-out',
  'tyres',
  'controls',
  'leaks',
  'first-start',
  'first-ride',
  'paperwork',
];

/** What must be behind the machine before its engine turns under its own power. */
export const BEFORE_FIRST_START: readonly CloseStage[] = ['refit', 'fluids', 'fuel', 'battery', 'plugs-out'];

/**
 * The start-up sheet's order: by stage, within a stage as given, and each step behind all that it comes after.
 *
 * Paper that must be in force before the road is drawn in front of the first ride by the ride's own `after`.
 * @param steps - steps of the start-up; refit steps in the reverse of the strip order
 * @returns the same steps in order
 */
export function startUpOrder(steps: readonly PlanStep[]): PlanStep[] {
  const rank = (step: PlanStep): number => (step.stage === undefined ? 0 : STAGES.indexOf(step.stage));
  const staged = steps
    .map((step, index) => ({ step, index }))
    .sort((a, b) => rank(a.step) - rank(b.step) || a.index - b.index)
    .map(({ step }) => step);
  return sortSteps(staged).steps;
}
