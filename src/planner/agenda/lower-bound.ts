import type { Problem } from './problem.ts';
import type { Windows } from './windows.ts';

/**
 * A number of sessions that no schedule of these activities can do without.
 *
 * The larger of two: days needed to meet every window at least once (windows narrowed by what follows what), and the
 * longest days that together hold all the minutes.
 * @param problem - activities and days
 * @param windows - of the same problem
 * @param chosen - activities that must have a place
 * @returns sessions
 */
export function leastSessions(problem: Problem, windows: Windows, chosen: readonly number[]): number {
  const { activities, days, capacity } = problem;
  const byEnd = chosen.toSorted((a, b) => windows.latestDay[a]! - windows.latestDay[b]!);
  let stabs = 0;
  let lastStab = -1;
  for (const i of byEnd) {
    const a = activities[i]!;
    if (stabs > 0 && Math.max(0, a.from) <= lastStab) continue;
    lastStab = Math.min(a.to, windows.latestDay[i]!);
    stabs += 1;
  }
  let left = chosen.reduce((sum, i) => sum + activities[i]!.minutes * activities[i]!.demand[0]!, 0);
  let held = 0;
  for (const length of days.map((d) => d.length * capacity[0]!).sort((a, b) => b - a)) {
    if (left <= 0) break;
    left -= length;
    held += 1;
  }
  return Math.max(stabs, held);
}
