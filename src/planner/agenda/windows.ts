import type { Problem } from './problem.ts';

/** Working minutes before each day, and the way between the absolute clock and them. */
interface WorkClock {
  toWork(minute: number): number;
  toStart(work: number): number;
  toEnd(work: number): number;
  /** The day in which a stretch that begins at this much work begins. */
  dayOfStart(work: number): number;
  /** The day in which a stretch that ends at this much work ends. */
  dayOfEnd(work: number): number;
}

/** What the order of the activities can be made from. */
export interface Windows {
  /** Earliest start and latest start in working minutes, resources left out of account. */
  earliestStart: Float64Array;
  latestStart: Float64Array;
  /** Days in which it can begin at the earliest, and must end at the latest. */
  earliestDay: Int32Array;
  latestDay: Int32Array;
  /** Working minutes of all that follows it, itself included (each path once, the longest). */
  tail: Float64Array;
}

/**
 * Earliest and latest starts by passing the windows along what follows what, forwards and backwards, in working minutes:
 * a chain that is longer than a session begins a session earlier.
 * @param problem - activities and days
 * @returns windows in working minutes
 * Error: throws RangeError where activities wait for one another.
 */
export function windowsOf(problem: Problem): Windows {
  const { activities, days } = problem;
  const n = activities.length;
  const clock = workClock(days);
  const followers: { by: number; lag: number }[][] = Array.from({ length: n }, () => []);
  activities.forEach((a, i) => {
    for (const { of, lag } of a.after) followers[of]!.push({ by: i, lag });
  });
  const topological = topologicalOrder(problem, followers);
  const earliestStart = new Float64Array(n);
  const latestStart = new Float64Array(n);
  const latestDay = new Int32Array(n);
  const earliestDay = new Int32Array(n);
  const tail = new Float64Array(n);
  const last = days.length - 1;
  for (const i of topological) {
    const a = activities[i]!;
    let start =
      a.from <= last ? clock.toWork(days[Math.max(0, a.from)]!.start) : clock.toWork(Number.POSITIVE_INFINITY);
    if (a.ready !== undefined) start = Math.max(start, clock.toWork(a.ready));
    for (const { of, lag } of a.after) {
      const end = earliestStart[of]! + activities[of]!.minutes;
      start = Math.max(start, lag > 0 ? clock.toWork(clock.toEnd(end) + lag) : end);
    }
    earliestStart[i] = start;
    earliestDay[i] = clock.dayOfStart(start);
  }
  for (let k = n - 1; k >= 0; k--) {
    const i = topological[k]!;
    const a = activities[i]!;
    const to = days[Math.min(last, a.to)];
    let end = to ? clock.toWork(to.start + to.length) : 0;
    for (const { by, lag } of followers[i]!) {
      const start = latestStart[by]!;
      end = Math.min(end, lag > 0 ? clock.toWork(clock.toStart(start) - lag) : start);
      tail[i] = Math.max(tail[i]!, tail[by]!);
    }
    tail[i]! += a.minutes;
    latestDay[i] = clock.dayOfEnd(end);
    latestStart[i] = end - a.minutes;
  }
  return { earliestStart, latestStart, earliestDay, latestDay, tail };
}

/**
 * An order in which each activity follows all it waits for.
 * @param problem - activities
 * @param followers - of each activity
 * Error: throws RangeError where activities wait for one another.
 */
export function topologicalOrder(problem: Problem, followers: readonly { by: number }[][]): Int32Array {
  const n = problem.activities.length;
  const waiting = Int32Array.from(problem.activities, (a) => a.after.length);
  const order = new Int32Array(n);
  let filled = 0;
  for (let i = 0; i < n; i++) if (waiting[i] === 0) order[filled++] = i;
  for (let k = 0; k < filled; k++) {
    for (const { by } of followers[order[k]!]!) {
      waiting[by]! -= 1;
      if (waiting[by] === 0) order[filled++] = by;
    }
  }
  if (filled < n) throw new RangeError(`found ${n - filled} activities that wait for one another, expected an order`);
  return order;
}

function workClock(days: Problem['days']): WorkClock {
  const before = new Float64Array(days.length + 1);
  days.forEach((d, i) => {
    before[i + 1] = before[i]! + d.length;
  });
  const total = before[days.length]!;
  /** Number of days whose key is at most `value`. */
  const count = (key: (day: number) => number, value: number) => {
    let low = 0;
    let high = days.length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (key(mid) <= value) low = mid + 1;
      else high = mid;
    }
    return low;
  };
  const startOf = (d: number) => days[d]!.start;
  const dayStartingBy = (work: number) => count((d) => before[d]!, work) - 1;
  const dayOfEnd = (work: number) => Math.max(0, count((d) => before[d]! + 1e-9, work) - 1);
  return {
    toWork(minute) {
      const d = count(startOf, minute) - 1;
      return d < 0 ? 0 : Math.min(before[d + 1]!, before[d]! + minute - startOf(d));
    },
    toStart(work) {
      if (days.length === 0) return Number.POSITIVE_INFINITY;
      const d = Math.max(0, dayStartingBy(work));
      return startOf(d) + work - before[d]!;
    },
    toEnd(work) {
      if (days.length === 0) return Number.POSITIVE_INFINITY;
      const d = dayOfEnd(Math.min(work, total));
      return startOf(d) + Math.min(work, total) - before[d]!;
    },
    dayOfStart: (work) => Math.max(0, dayStartingBy(work)),
    dayOfEnd,
  };
}

/** How urgent an activity is: smaller goes first. */
export type Rule = (i: number) => number;

/**
 * An order in which each activity follows all it waits for, and the more urgent goes first where that leaves a choice.
 * @param problem - activities: among equals their own order is kept
 * @param rules - compared one after the other
 * @returns positions of activities
 */
export function listBy(problem: Problem, rules: readonly Rule[]): Int32Array {
  const { activities } = problem;
  const n = activities.length;
  const keys = rules.map((rule) => Float64Array.from({ length: n }, (_, i) => rule(i)));
  const compare = (a: number, b: number) => {
    for (const key of keys) if (key[a] !== key[b]) return key[a]! - key[b]!;
    return a - b;
  };
  const sorted = Int32Array.from({ length: n }, (_, i) => i).sort(compare);
  // Taken in the order of urgency, each after a walk through all it still waits for.
  const order = new Int32Array(n);
  const taken = new Uint8Array(n);
  let filled = 0;
  const stack: number[] = [];
  for (const first of sorted) {
    stack.push(first);
    while (stack.length > 0) {
      const i = stack.at(-1)!;
      const waits = taken[i] === 1 ? undefined : activities[i]!.after.filter(({ of }) => taken[of] === 0);
      if (waits && waits.length > 0) {
        stack.push(...waits.map(({ of }) => of).sort((a, b) => compare(b, a)));
        continue;
      }
      stack.pop();
      if (taken[i] === 0) {
        taken[i] = 1;
        order[filled++] = i;
      }
    }
  }
  return order;
}
