import { type Links, linksOf } from './links.ts';
import type { Activity, Problem } from './problem.ts';
import { windowsOf } from './windows.ts';

/** Spans looked at; in large problems a share of them, which keeps the bound true but may lower it. */
const MOST_SPANS = 200_000;

/**
 * A number of sessions that no schedule of these activities can do without.
 *
 * For each span of days that holds whole windows (narrowed by what follows what), what is in it asks for a number of sessions,
 * at least one: as many as its longest days need to hold the work and a way to its place, as many as its longest chain of work and
 * waits breaks into, as many as its machines need to share the stands. The fewest days that give each span its number are found by
 * going through the spans by their last day and taking the latest days first.
 * @param problem - activities and days
 * @param chosen - activities that must have a place, with all that they follow
 * @returns sessions
 */
export function leastSessions(problem: Problem, chosen: readonly number[]): number {
  const sub = onlyThese(problem, chosen);
  const { activities, days } = sub;
  const windows = windowsOf(sub);
  const from = activities.map((a, i) => Math.max(0, a.from, windows.earliestDay[i]!));
  const to = activities.map((a, i) => Math.min(a.to, windows.latestDay[i]!));
  const links = linksOf(sub, from, to);
  const byEnd = new Map<number, number[]>();
  for (const i of activities.keys()) {
    if (!(to[i]! >= from[i]!)) continue;
    const own = byEnd.get(to[i]!);
    if (own) own.push(i);
    else byEnd.set(to[i]!, [i]);
  }
  const ends = [...byEnd.keys()].sort((a, b) => a - b);
  const stride = Math.max(1, Math.ceil((days.length * ends.length) / MOST_SPANS));
  const beginning: number[][] = days.map(() => []);
  const taken = new Uint8Array(days.length);
  let sessions = 0;
  for (const [k, end] of ends.entries()) {
    for (const i of byEnd.get(end)!) beginning[from[i]!]!.push(i);
    if (k % stride !== 0 && k + 1 < ends.length) continue;
    const span = new Span(sub, links);
    let held = 0;
    for (let start = end; start >= 0; start--) {
      span.addDay(days[start]!.length);
      held += taken[start]!;
      if (beginning[start]!.length === 0) continue;
      for (const i of beginning[start]!.sort((a, b) => links.rank[a]! - links.rank[b]!)) span.addWork(i);
      const needed = span.sessions();
      // No span asks for more than it has days.
      for (let d = end; held < needed; d--) {
        if (taken[d] === 1) continue;
        taken[d] = 1;
        sessions += 1;
        held += 1;
      }
    }
  }
  return sessions;
}

/** The chosen activities alone, each with the days on which it may be done from the first to the last of them. */
function onlyThese(problem: Problem, chosen: readonly number[]): Problem {
  const numbers = new Map(chosen.map((i, k) => [i, k]));
  const activities = chosen.map((i): Activity => {
    const a = problem.activities[i]!;
    const after = a.after.flatMap(({ of, lag }) => (numbers.has(of) ? [{ of: numbers.get(of)!, lag }] : []));
    let { from, to } = a;
    if (a.fit) {
      while (from <= to && a.fit[from] !== 1) from += 1;
      while (to >= from && a.fit[to] !== 1) to -= 1;
    }
    return { ...a, after, from, to };
  });
  return { ...problem, activities };
}

/** What a span of days asks for; it grows by the day before it, and by activities whose followers within it are in it already. */
class Span {
  private readonly problem: Problem;
  private readonly links: Links;
  /** Of its days, longest first [min]. */
  private readonly lengths: number[] = [];
  private readonly work: Float64Array;
  private way = Number.POSITIVE_INFINITY;
  private readonly onStands = new Set<number>();
  private readonly stands = new Set<number>();
  /** From each activity on: sessions after its own, and minutes from its start to the last work of the chain in its own. */
  private readonly later: Int32Array;
  private readonly minutes: Float64Array;
  private longestChain = 0;

  constructor(problem: Problem, links: Links) {
    this.problem = problem;
    this.links = links;
    this.work = new Float64Array(problem.capacity.length);
    this.later = new Int32Array(problem.activities.length).fill(-1);
    this.minutes = new Float64Array(problem.activities.length);
  }

  addDay(length: number): void {
    const { lengths } = this;
    let low = 0;
    let high = lengths.length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (lengths[mid]! >= length) low = mid + 1;
      else high = mid;
    }
    lengths.splice(low, 0, length);
  }

  addWork(i: number): void {
    const a = this.problem.activities[i]!;
    for (let r = 0; r < this.work.length; r++) this.work[r]! += a.minutes * a.demand[r]!;
    this.way = Math.min(this.way, this.problem.tripMinutes[a.place]!);
    if (a.stands.length > 0) this.onStands.add(a.group);
    for (const stand of a.stands) this.stands.add(stand);
    this.addToChain(i);
  }

  sessions(): number {
    let most = Math.max(1, this.longestChain);
    if (this.stands.size > 0) most = Math.max(most, Math.ceil(this.onStands.size / this.stands.size));
    for (let r = 0; r < this.work.length; r++) most = Math.max(most, this.sessionsFor(r));
    return Math.min(most, this.lengths.length);
  }

  private addToChain(i: number): void {
    const { activities } = this.problem;
    // A session need not hold the whole of what may be spread.
    const own = activities[i]!.splittable ? 0 : activities[i]!.minutes;
    let later = 0;
    let minutes = own;
    for (const { by, lag, longest } of this.links.followers[i]!) {
      const then = this.later[by]!;
      if (then < 0) continue;
      const together = own + lag + this.minutes[by]!;
      const breaks = together > longest;
      const [count, length] = breaks ? [then + 1, own] : [then, together];
      if (count > later || (count === later && length > minutes)) [later, minutes] = [count, length];
    }
    this.later[i] = later;
    this.minutes[i] = minutes;
    this.longestChain = Math.max(this.longestChain, later + 1);
  }

  /** How many of the longest days hold the work that takes a resource, each with one way to a place. */
  private sessionsFor(resource: number): number {
    const units = this.problem.capacity[resource]!;
    let left = this.work[resource]!;
    let count = 0;
    while (left > 1e-9 && count < this.lengths.length) left -= (this.lengths[count++]! - this.way) * units;
    return count;
  }
}
