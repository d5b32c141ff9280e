/** Which steps a record says are done. */
import type { IsoDate, Machine, Ticked } from './household.ts';
import type { PlanStep } from './season-plan.ts';

/** Phases that a record may name as a whole: who ticked the printed sheet writes one line. */
export const WHOLE_PHASES = ['lay-up', 'start-up'] as const satisfies readonly PlanStep['phase'][];

/**
 * The day on which a step was done.
 * @param machine - with its record of this season
 * @param step - id and phase
 * @returns the tick's day; undefined where neither the step nor its whole phase is ticked
 */
export function tickedOn(machine: Machine, step: Pick<PlanStep, 'id' | 'phase'>): IsoDate | undefined {
  const whole = step.phase === 'swap' ? 'lay-up' : step.phase;
  const isOf = ({ stepId }: Ticked) => stepId === step.id || (stepId === whole && isWholePhase(stepId));
  return machine.doneSteps.find(isOf)?.date;
}

/** Whether a record's name of a step is the name of a whole phase. */
export const isWholePhase = (stepId: string): boolean => WHOLE_PHASES.some((phase) => phase === stepId);
