import type { Problem } from '../../../src/planner/agenda/problem.ts';
import { byMinutes, ordersOf } from './by-minutes.ts';

/** The fewest steps that must be left out, and the fewest sessions for the others. */
export interface Exhaustive {
  missing: number;
  missingMinutes: number;
  sessions: number;
}

/**
 * The best that can be done by one pair of hands where waits, if any, last until another day: each set of what can be done by the
 * end of a day is kept with the fewest sessions that it takes, and each set that the next day could hold is added to it. It shares
 * no code with the scheduler.
 */
export function exhaustive(problem: Problem): Exhaustive {
  const { activities, days } = problem;
  const sets = 1 << activities.length;
  let fewest = new Float64Array(sets).fill(Number.POSITIVE_INFINITY);
  fewest[0] = 0;
  days.forEach((_, d) => {
    const sessions = possibleSessions(problem, d);
    const next = fewest.slice();
    fewest.forEach((held, done) => {
      if (held === Number.POSITIVE_INFINITY) return;
      for (const { set, sameDay, before } of sessions) {
        if ((set & done) !== 0 || (before & ~done) !== 0 || (sameDay & ~(done | set)) !== 0) continue;
        if (held + 1 < next[done | set]!) next[done | set] = held + 1;
      }
    });
    fewest = next;
  });
  let best: Exhaustive = { missing: Number.POSITIVE_INFINITY, missingMinutes: 0, sessions: 0 };
  fewest.forEach((sessions, done) => {
    if (sessions === Number.POSITIVE_INFINITY) return;
    const left = activities.filter((_, i) => !has(done, i));
    const found = { missing: left.length, missingMinutes: minutesOf(left), sessions };
    if (isBetter(found, best)) best = found;
  });
  return best;
}

const has = (set: number, i: number) => ((set >> i) & 1) === 1;
const minutesOf = (some: Problem['activities']) => some.reduce((sum, a) => sum + a.minutes, 0);

function isBetter(a: Exhaustive, b: Exhaustive): boolean {
  if (a.missing !== b.missing) return a.missing < b.missing;
  if (a.missingMinutes !== b.missingMinutes) return a.missingMinutes < b.missingMinutes;
  return a.sessions < b.sessions;
}

/** A set of steps that one day has the time and the stands for; what they follow, on the same day at the latest or before it. */
interface PossibleSession {
  set: number;
  sameDay: number;
  before: number;
}

function possibleSessions(problem: Problem, d: number): PossibleSession[] {
  const { activities, days, tripMinutes } = problem;
  const may = activities.map((a) => a.from <= d && d <= a.to && a.fit?.[d] !== 0);
  const found: PossibleSession[] = [];
  for (let set = 1; set < 1 << activities.length; set++) {
    const own = activities.filter((_, i) => has(set, i));
    if (!activities.every((_, i) => may[i] || !has(set, i))) continue;
    const trips = [...new Set(own.map((a) => a.place))].reduce((sum, place) => sum + tripMinutes[place]!, 0);
    if (minutesOf(own) + trips > days[d]!.length) continue;
    const groups = new Map(own.flatMap((a) => (a.stands.length > 0 ? [[a.group, a.stands]] : [])));
    if (!standsSuffice([...groups.values()])) continue;
    const links = own.flatMap((a) => a.after);
    const bits = (some: typeof links) => some.reduce((sum, { of }) => sum | (1 << of), 0);
    found.push({ set, sameDay: bits(links), before: bits(links.filter(({ lag }) => lag > 0)) });
  }
  return found;
}

function standsSuffice(wanted: readonly (readonly number[])[], taken: readonly number[] = []): boolean {
  const [first, ...rest] = wanted;
  if (!first) return true;
  return first.some((s) => !taken.includes(s) && standsSuffice(rest, [...taken, s]));
}

/**
 * The best that any order on any choice of days gives: what is placed in the order in which the best schedule has it, on the days
 * that it uses, has its place there or before it. With soaks to wait for and a second pair of hands, for a few steps alone.
 */
export function bestOfOrders(problem: Problem): Exhaustive {
  const orders = [...ordersOf(problem)];
  const found: Exhaustive[] = [];
  for (let set = 0; set < 1 << problem.days.length; set++) {
    const open = Uint8Array.from(problem.days, (_, d) => (set >> d) & 1);
    for (const order of orders) {
      const { work, missing } = byMinutes(problem, order, open);
      const missingMinutes = missing.reduce((sum, i) => sum + problem.activities[i]!.minutes, 0);
      found.push({ missing: missing.length, missingMinutes, sessions: new Set(work.map((w) => w.day)).size });
    }
  }
  return found.reduce((a, b) => (isBetter(b, a) ? b : a));
}
