import published from '../../tests/published/j30.json' with { type: 'json' };
import type { Problem, Schedule } from '../planner/agenda/problem.ts';
import { solve } from '../planner/agenda/solve.ts';

/** Longer than any of the instances takes, so that one day holds all of it. */
const LONG_DAY = 1000;

export interface Result {
  name: string;
  optimum: number;
  makespan: number;
  problem: Problem;
  schedule: Schedule;
}

/**
 * The published instances, each given to the agenda's scheduler as one long day.
 * Source: R. Kolisch, A. Sprecher, European Journal of Operational Research 96 (1997) 205–216 (PSPLIB, j30).
 */
export function publishedResults(seed = 1): Result[] {
  return Object.entries(published.instances).map(([name, instance]) => {
    const problem: Problem = {
      capacity: instance.capacity,
      days: [{ start: 0, length: LONG_DAY }],
      tripMinutes: [0],
      activities: instance.duration.map((minutes, i) => ({
        minutes,
        demand: instance.needs[i]!,
        after: instance.successors.flatMap((next, of) => (next.includes(i + 1) ? [{ of, lag: 0 }] : [])),
        from: 0,
        to: 0,
        group: 0,
        stands: [],
        chargers: [],
        chargeMinutes: 0,
        place: 0,
        splittable: false,
      })),
    };
    const schedule = solve(problem, seed);
    return { name, optimum: instance.optimum, makespan: Math.max(...schedule.end), problem, schedule };
  });
}
