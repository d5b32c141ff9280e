/** The names that steps have, in whatever season. */
import type { Procedure } from './household.ts';
import { isWholePhase, LOOK_IN } from './ticked.ts';

/** Steps of the strip-down and of jobs are named after what the machine has, or had: a job that was finished may be gone. */
const OF_WORK = /^(?:strip\.(?:off|on|check|order)|job)\.[^.]+$/;

/**
 * Whether a record's name of a step is one that a step has, or had before a household wrote its own procedure.
 * @param id - "oil.drain", "tyres.pressure.2", "job.valves", "lay-up"
 * @param procedures - library and own together
 */
export function isStepName(id: string, procedures: readonly Procedure[]): boolean {
  if (isWholePhase(id) || id === LOOK_IN || OF_WORK.test(id)) return true;
  const [name, step, n, ...more] = id.split('.');
  const own = procedures.find((procedure) => procedure.id === name);
  const steps = [...(own?.steps ?? []), ...(own?.replaces?.steps ?? [])].filter((one) => one.id === step);
  if (n === undefined) return steps.length > 0;
  return more.length === 0 && /^\d+$/.test(n) && steps.some((one) => one.each !== undefined);
}
