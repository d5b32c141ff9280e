/** The steps of a start-up that make the machine ready: all of it but the first ride, and what belongs to that. */
import type { PlanStep } from './season-plan.ts';

export const makesReady = ({ phase, stage }: Pick<PlanStep, 'phase' | 'stage'>): boolean =>
  phase === 'start-up' && stage !== 'first-ride';

/** One of them that is to be done and has found no day. */
export const lacksDay = (step: Pick<PlanStep, 'phase' | 'stage' | 'done' | 'date'>): boolean =>
  makesReady(step) && !step.done && step.date === undefined;
