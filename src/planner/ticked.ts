/** Which steps a record says are done. */
import type { IsoDate, Machine, Ticked } from './household.ts';
import type { PlanStep } from './season-plan.ts';

/** Phases that a record may name as a whole: who ticked the printed sheet writes one line. */
export const WHOLE_PHASES = ['lay-up', 'start-up'] as const satisfies readonly PlanStep['phase'][];

/**
 * The day on which a step was done. The start-up as a whole holds its first ride only from the day of first use on: who ticks
 * the sheet before has not ridden yet.
 * @param machine - with its record of this season
 * @param step - id, phase and stage
 * @returns the tick's day; undefined where neither the step nor its whole phase is ticked
 */
export function tickedOn(
  machine: Pick<Machine, 'doneSteps' | 'season'>,
  step: Pick<PlanStep, 'id' | 'phase' | 'stage'>,
): IsoDate | undefined {
  const whole = step.phase === 'swap' ? 'lay-up' : step.phase;
  const holds = ({ date }: Ticked) => step.stage !== 'first-ride' || date >= machine.season.firstUse;
  const isOf = (tick: Ticked) =>
    tick.stepId === step.id || (tick.stepId === whole && isWholePhase(tick.stepId) && holds(tick));
  return machine.doneSteps.find(isOf)?.date;
}

/** What a record writes of a look-in as a whole, by its day: there is one each month. */
export const LOOK_IN = 'look-in';

/** Whether a record's name of a step is the name of a whole phase. */
export const isWholePhase = (stepId: string): boolean => WHOLE_PHASES.some((phase) => phase === stepId);
