import type { Activity, Problem } from './problem.ts';
import { topologicalOrder } from './windows.ts';

/** What follows what, as seen from the activity that comes first. */
export interface Links {
  /** Of each activity: what follows it, the wait between them, and the longest session that could hold both [min]. */
  followers: readonly (readonly Link[])[];
  /** Place of each activity in an order that has its followers before it. */
  rank: Int32Array;
}

interface Link {
  by: number;
  lag: number;
  longest: number;
}

/**
 * Which sessions could hold an activity and one that follows it.
 * @param problem - activities and days
 * @param from - first day of each activity
 * @param to - last day of each activity
 * Error: throws RangeError where activities wait for one another.
 */
export function linksOf(problem: Problem, from: readonly number[], to: readonly number[]): Links {
  const { activities } = problem;
  const followers: Link[][] = activities.map(() => []);
  activities.forEach((a, by) => {
    for (const { of, lag } of a.after) {
      const first = Math.max(from[of]!, from[by]!);
      const last = Math.min(to[of]!, to[by]!);
      followers[of]!.push({ by, lag, longest: longestDay(problem, first, last, activities[of]!, a) });
    }
  });
  const rank = new Int32Array(activities.length);
  topologicalOrder(problem, followers).forEach((i, k) => {
    rank[i] = -k;
  });
  return { followers, rank };
}

/** Of the days that both may be done on, less the way to their places; −∞ where there is none. */
function longestDay(problem: Problem, first: number, last: number, a: Activity, b: Activity): number {
  const { days, tripMinutes } = problem;
  let longest = Number.NEGATIVE_INFINITY;
  for (let d = first; d <= last; d++) {
    if ((a.fit && a.fit[d] !== 1) || (b.fit && b.fit[d] !== 1)) continue;
    longest = Math.max(longest, days[d]!.length);
  }
  return longest - tripMinutes[a.place]! - (b.place === a.place ? 0 : tripMinutes[b.place]!);
}
