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
  const work = (i: number) => activities[i]!.minutes * activities[i]!.demand[0]!;
  const from = (i: number) => Math.max(0, activities[i]!.from, windows.earliestDay[i]!);
  const to = (i: number) => Math.min(activities[i]!.to, windows.latestDay[i]!);
  const sound = chosen.filter((i) => to(i) >= from(i)).sort((a, b) => from(b) - from(a));
  const ends = [...new Set(sound.map(to))].sort((a, b) => a - b);
  const starts = new Set(sound.map(from)).size;
  const stride = Math.max(1, Math.ceil((starts * ends.length) / MOST_SPANS));
  const taken = new Uint8Array(days.length);
  let sessions = 0;
  for (const end of ends) {
    const lengths: number[] = [];
    let total = 0;
    let next = end;
    let span = 0;
    for (let k = 0; k < sound.length; k++) {
      const start = from(sound[k]!);
      if (start > end) continue;
      if (to(sound[k]!) <= end) total += work(sound[k]!);
      if (k + 1 < sound.length && from(sound[k + 1]!) === start) continue;
      if (to(sound[k]!) > end && total === 0) continue;
      for (; next >= start; next--) insertDescending(lengths, days[next]!.length * capacity[0]!);
      span += 1;
      if (span % stride !== 0 && k + 1 < sound.length) continue;
      let missing = sessionsFor(total, lengths) - countBetween(taken, start, end);
      for (let d = end; d >= start && missing > 0; d--) {
        if (taken[d] === 1) continue;
        taken[d] = 1;
        sessions += 1;
        missing -= 1;
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

function countBetween(taken: Uint8Array, start: number, end: number): number {
  let count = 0;
  for (let d = start; d <= end; d++) count += taken[d]!;
  return count;
}
