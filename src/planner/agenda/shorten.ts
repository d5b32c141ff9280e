import { generate } from './generate.ts';
import type { Problem, Schedule } from './problem.ts';
import { randomFrom } from './random.ts';
import { listBy, type Windows, windowsOf } from './windows.ts';

/**
 * A shorter schedule of one day: priority lists, lists drawn by chance about the latest starts, and each of them drawn
 * together from the right and from the left.
 * @param problem - one day
 * @param windows - of the same problem
 * @param samples - lists to draw
 * @param seed - of the draw
 * @returns the schedule that ends first
 * Source: serial scheme with priority rules, R. Kolisch, European Journal of Operational Research 90 (1996) 320–333;
 * double justification, V. Valls, F. Ballestín, S. Quintanilla, European Journal of Operational Research 165 (2005) 375–386.
 */
export function shorten(problem: Problem, windows: Windows, samples: number, seed: number): Schedule {
  const { activities } = problem;
  const mirror = mirrored(problem);
  const random = randomFrom(seed);
  const least = lowerBound(problem, windows);
  const list = (key: (i: number) => number) => listBy(problem, [key]);
  const latestEnd = (i: number) => windows.latestStart[i]! + activities[i]!.minutes;
  let best = generate(problem, list(latestEnd));
  const offer = (order: Int32Array) => {
    let schedule = generate(problem, order);
    for (let round = 0; round < 3; round++) {
      const drawn = justified(problem, mirror, schedule);
      if (!(endOf(drawn) < endOf(schedule)) || drawn.missing.length > schedule.missing.length) break;
      schedule = drawn;
    }
    const gain = best.missing.length - schedule.missing.length || endOf(best) - endOf(schedule);
    if (gain > 0) best = schedule;
  };
  offer(list(latestEnd));
  offer(list((i) => windows.latestStart[i]!));
  offer(list((i) => -windows.tail[i]!));
  const span = Math.max(1, ...windows.earliestStart.map((s, i) => s + activities[i]!.minutes));
  for (let k = 0; k < samples && endOf(best) > least; k++) {
    const reach = span * (0.05 + (0.3 * (k % 10)) / 10);
    const shaken = activities.map((_, i) => latestEnd(i) + reach * (random() - 0.5));
    offer(list((i) => shaken[i]!));
  }
  return best;
}

/** End of the last activity on the absolute clock; −∞ when nothing is placed. */
export function endOf(schedule: Schedule): number {
  let end = Number.NEGATIVE_INFINITY;
  for (const e of schedule.end) if (e > end) end = e;
  return end;
}

/** The same activities from last to first. */
function mirrored(problem: Problem): Problem {
  const after: { of: number; lag: number }[][] = problem.activities.map(() => []);
  problem.activities.forEach((a, i) => {
    for (const { of, lag } of a.after) after[of]!.push({ of: i, lag });
  });
  return {
    ...problem,
    activities: problem.activities.map((a, i) => ({ ...a, after: after[i]!, ready: undefined })),
  };
}

/** Shifts all to the right (late ends first, on the mirrored problem), then to the left in the order that came of it. */
function justified(problem: Problem, mirror: Problem, schedule: Schedule): Schedule {
  const late = listBy(mirror, [(i) => -schedule.end[i]!]);
  const right = generate(mirror, late);
  const early = listBy(problem, [(i) => -right.end[i]!]);
  return generate(problem, early);
}

/** The longest chain, or the fullest resource: nothing ends before it. */
function lowerBound(problem: Problem, windows: Windows): number {
  const start = problem.days[0]!.start;
  const chain = Math.max(0, ...problem.activities.map((a, i) => windows.earliestStart[i]! + a.minutes));
  const loads = problem.capacity.map((units, r) => {
    const work = problem.activities.reduce((sum, a) => sum + a.minutes * a.demand[r]!, 0);
    return work / units;
  });
  return start + Math.max(chain, ...loads);
}

/** Windows and a shortened schedule of one day, from the problem alone. */
export function shortestDay(problem: Problem, samples: number, seed: number): Schedule {
  return shorten(problem, windowsOf(problem), samples, seed);
}
