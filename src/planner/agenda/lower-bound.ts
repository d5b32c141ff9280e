import type { Problem } from './problem.ts';
import type { Windows } from './windows.ts';

/** Spans looked at; in large problems a share of them, which keeps the bound true but may lower it. */
const MOST_SPANS = 200_000;

/**
 * A number of sessions that no schedule of these activities can do without.
 *
 * For each span of days that holds whole windows (narrowed by what follows what), the work in it asks for a number of
 * sessions: as many as its longest days need to hold it, at least one. The fewest days that give each span its number are
 * found by going through the spans by their last day and taking the latest days first.
 * @param problem - activities and days
 * @param windows - of the same problem
 * @param chosen - activities that must have a place
 * @returns sessions
 */
export function leastSessions(problem: Problem, windows: Windows, chosen: readonly number[]): number {
  const { activities, days, capacity } = problem;
  const workFrom = new Float64Array(days.length);
  const begins = new Uint8Array(days.length);
  const byEnd = new Map<number, number[]>();
  const from = (i: number) => Math.max(0, activities[i]!.from, windows.earliestDay[i]!);
  for (const i of chosen) {
    const to = Math.min(activities[i]!.to, windows.latestDay[i]!);
    if (!(to >= from(i))) continue;
    const own = byEnd.get(to);
    if (own) own.push(i);
    else byEnd.set(to, [i]);
  }
  const ends = [...byEnd.keys()].sort((a, b) => a - b);
  const stride = Math.max(1, Math.ceil((days.length * ends.length) / MOST_SPANS));
  const taken = new Uint8Array(days.length);
  let sessions = 0;
  for (const [k, end] of ends.entries()) {
    for (const i of byEnd.get(end)!) {
      workFrom[from(i)]! += activities[i]!.minutes * activities[i]!.demand[0]!;
      begins[from(i)] = 1;
    }
    if (k % stride !== 0 && k + 1 < ends.length) continue;
    const lengths: number[] = [];
    let total = 0;
    let held = 0;
    for (let start = end; start >= 0; start--) {
      insertDescending(lengths, days[start]!.length * capacity[0]!);
      held += taken[start]!;
      if (begins[start] === 0) continue;
      total += workFrom[start]!;
      for (let d = end; d >= start && held < sessionsFor(total, lengths); d--) {
        if (taken[d] === 1) continue;
        taken[d] = 1;
        sessions += 1;
        held += 1;
      }
    }
  }
  return sessions;
}

function insertDescending(list: number[], value: number): void {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (list[mid]! >= value) low = mid + 1;
    else high = mid;
  }
  list.splice(low, 0, value);
}

/** How many of the longest days hold the work; one even for none. */
function sessionsFor(work: number, lengths: readonly number[]): number {
  let left = work;
  let count = 0;
  while (left > 1e-9 && count < lengths.length) left -= lengths[count++]!;
  return Math.max(1, count);
}
