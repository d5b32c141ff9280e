import { DayLine } from './day-line.ts';
import { FreeTree } from './free-tree.ts';
import type { Activity, Piece, Problem, Schedule } from './problem.ts';

/** Shortest stretch worth beginning on a job that is spread over sessions [min]. */
const SHORTEST_PIECE = 30;

/**
 * Serial schedule generation: takes the activities in the order given and puts each where it can begin earliest, given
 * those before it. An activity that finds no place in its window, or follows one that found none, is left out.
 * @param problem - activities, resources, days
 * @param order - every activity once, each after those it follows
 * @param open - 1 for each day that may be used; all when absent
 * @returns the schedule
 * Source: serial scheme, R. Kolisch, European Journal of Operational Research 90 (1996) 320–333.
 */
export function generate(problem: Problem, order: ArrayLike<number>, open?: Uint8Array): Schedule {
  const run = new Run(problem, open);
  for (let k = 0; k < order.length; k++) run.place(order[k]!);
  return run.schedule;
}

/** What a schedule leaves out: how many activities, and their minutes. Compared in this order. */
export type LeftOut = readonly [missing: number, minutes: number];

/**
 * `generate` for who has use only for a schedule that leaves no more out than one that is known: it ends as soon as it must leave
 * out more, which most trials do long before their last activity.
 * @param most - left out by the one that is known
 * @returns undefined where it would leave out more
 */
export function generateWithin(
  problem: Problem,
  order: ArrayLike<number>,
  open: Uint8Array,
  [most, mostMinutes]: LeftOut,
): Schedule | undefined {
  const run = new Run(problem, open);
  let minutes = 0;
  for (let k = 0; k < order.length; k++) {
    const i = order[k]!;
    if (run.place(i)) continue;
    minutes += problem.activities[i]!.minutes;
    const missing = run.schedule.missing.length;
    if (missing > most || (missing === most && minutes > mostMinutes)) return undefined;
  }
  return run.schedule;
}

class Run {
  readonly schedule: Schedule;
  private readonly problem: Problem;
  private readonly lines: (DayLine | undefined)[];
  private readonly free: FreeTree;
  private readonly trips: Float64Array;
  /** Hand-minutes not taken, and no more than the longest stretch known to be free. */
  private readonly left: Float64Array;
  private readonly longest: Float64Array;
  private readonly visited: (number[] | undefined)[];
  private readonly held: (Map<number, number> | undefined)[];
  private readonly charging: { from: number; to: number }[][] = [];

  constructor(problem: Problem, open?: Uint8Array) {
    const { activities, days, capacity } = problem;
    const n = activities.length;
    this.problem = problem;
    this.lines = new Array(days.length);
    this.visited = new Array(days.length);
    this.held = new Array(days.length);
    this.trips = new Float64Array(days.length);
    this.left = Float64Array.from(days, (d, i) => (open && open[i] === 0 ? -1 : d.length * capacity[0]!));
    this.longest = new Float64Array(days.length).fill(Number.POSITIVE_INFINITY);
    this.free = new FreeTree(this.left);
    this.schedule = {
      day: new Int32Array(n).fill(-1),
      start: new Float64Array(n).fill(Number.NaN),
      end: new Float64Array(n).fill(Number.NaN),
      pieces: [],
      missing: [],
      sessions: 0,
    };
  }

  /** Whether it finds a place. */
  place(i: number): boolean {
    const activity = this.problem.activities[i]!;
    const ready = this.readyAt(activity);
    const placed = ready !== undefined && (this.placeWhole(i, activity, ready) || this.placeSpread(i, activity, ready));
    if (!placed) this.schedule.missing.push(i);
    return placed;
  }

  /** When all it follows is over; undefined when one of those found no place. */
  private readyAt(activity: Activity): number | undefined {
    let ready = activity.ready ?? Number.NEGATIVE_INFINITY;
    for (const { of, lag } of activity.after) {
      const end = this.schedule.end[of]!;
      if (!(end + lag >= ready)) {
        if (Number.isNaN(end)) return undefined;
        continue;
      }
      ready = end + lag;
    }
    return ready;
  }

  private placeWhole(i: number, activity: Activity, ready: number): boolean {
    const { days } = this.problem;
    const work = activity.minutes * activity.demand[0]!;
    for (
      let d = this.nextDay(activity, ready, activity.from, work);
      d >= 0;
      d = this.nextDay(activity, ready, d + 1, work)
    ) {
      const stand = this.standFor(activity, d);
      if (stand === undefined) continue;
      const day = days[d]!;
      const line = this.lines[d];
      const limit = day.length - this.trips[d]! - this.tripTo(activity, d);
      if (line && line.last > limit) continue;
      let start = Math.max(0, ready - day.start);
      let charger = -1;
      for (;;) {
        if (line) start = line.earliest(start, activity.minutes, activity.demand);
        if (!(start + activity.minutes <= limit)) break;
        if (activity.chargers.length === 0) break;
        const found = this.chargerAt(activity, day.start + start);
        charger = found.charger;
        if (charger >= 0) break;
        start = found.freeAt - day.start;
      }
      if (!(start + activity.minutes <= limit)) {
        this.learn(activity, d, ready, day.length - this.trips[d]!);
        continue;
      }
      this.take({ activity: i, day: d, start, minutes: activity.minutes }, stand, charger);
      return true;
    }
    return false;
  }

  /** Over several sessions, where no one session of its window is long enough. */
  private placeSpread(i: number, activity: Activity, ready: number): boolean {
    if (!activity.splittable || activity.chargers.length > 0) return false;
    const { days } = this.problem;
    for (let d = Math.max(0, activity.from); d <= activity.to; d++) {
      if (days[d]!.length - this.problem.tripMinutes[activity.place]! >= activity.minutes) return false;
    }
    const pieces: { piece: Piece; stand: number }[] = [];
    let left = activity.minutes;
    let d = this.nextDay(activity, ready, activity.from, SHORTEST_PIECE);
    for (; d >= 0 && left > 0; d = this.nextDay(activity, ready, d + 1, Math.min(left, SHORTEST_PIECE))) {
      const stand = this.standFor(activity, d);
      if (stand === undefined) continue;
      const day = days[d]!;
      const limit = day.length - this.trips[d]! - this.tripTo(activity, d);
      const line = this.lines[d] ?? new DayLine(this.problem.capacity);
      if (line.last > limit) continue;
      const gap = line.firstGap(Math.max(0, ready - day.start), activity.demand, limit);
      const minutes = Math.min(left, gap.end - gap.start);
      if (!(minutes >= Math.min(left, SHORTEST_PIECE))) continue;
      pieces.push({ piece: { activity: i, day: d, start: gap.start, minutes }, stand });
      left -= minutes;
    }
    if (left > 0) return false;
    for (const { piece, stand } of pieces) this.take(piece, stand, -1);
    return true;
  }

  /** A stretch that is nowhere free now will not be free later: the day need not be tried for it again. */
  private learn(activity: Activity, d: number, ready: number, limit: number): void {
    const line = this.lines[d];
    if (!line || ready > this.problem.days[d]!.start) return;
    const hands = activity.demand.map((units, r) => (r === 0 ? units : 0));
    if (!(hands[0]! > 0) || line.earliest(0, activity.minutes, hands) + activity.minutes <= limit) return;
    this.longest[d] = Math.min(this.longest[d]!, activity.minutes * hands[0]! - 1e-6);
    this.free.set(d, Math.min(this.left[d]!, this.longest[d]!));
  }

  private nextDay(activity: Activity, ready: number, from: number, work: number): number {
    const { days } = this.problem;
    let d = Math.max(0, from);
    if (d < days.length && days[d]!.start + days[d]!.length < ready) d = firstDayEndingAfter(days, ready, d);
    for (d = this.free.next(d, work); d >= 0 && d <= activity.to; d = this.free.next(d + 1, work)) {
      if (!activity.fit || activity.fit[d] === 1) return d;
    }
    return -1;
  }

  private tripTo(activity: Activity, day: number): number {
    return this.visited[day]?.includes(activity.place) ? 0 : this.problem.tripMinutes[activity.place]!;
  }

  /** The stand it gets on that day, −1 when it needs none, undefined when none is left. */
  private standFor(activity: Activity, day: number): number | undefined {
    if (activity.stands.length === 0) return -1;
    const held = this.held[day];
    if (!held) return activity.stands[0]!;
    const own = held.get(activity.group);
    if (own !== undefined) return own;
    const taken = new Set(held.values());
    return activity.stands.find((s) => !taken.has(s));
  }

  private chargerAt(activity: Activity, start: number): { charger: number; freeAt: number } {
    const end = start + activity.minutes + activity.chargeMinutes;
    let freeAt = Number.POSITIVE_INFINITY;
    for (const c of activity.chargers) {
      const clash = this.charging[c]?.find((span) => span.from < end && span.to > start);
      if (!clash) return { charger: c, freeAt: start };
      freeAt = Math.min(freeAt, clash.to);
    }
    return { charger: -1, freeAt };
  }

  private take(piece: Piece, stand: number, charger: number): void {
    const { activity: i, day: d, start, minutes } = piece;
    const { schedule, problem } = this;
    const activity = problem.activities[i]!;
    if (!this.lines[d]) schedule.sessions += 1;
    this.lines[d] ??= new DayLine(problem.capacity);
    this.lines[d].take(start, minutes, activity.demand);
    const trip = this.tripTo(activity, d);
    if (!this.visited[d]?.includes(activity.place)) {
      this.visited[d] ??= [];
      this.visited[d].push(activity.place);
    }
    this.trips[d]! += trip;
    this.left[d]! -= minutes * activity.demand[0]! + trip * problem.capacity[0]!;
    this.free.set(d, Math.min(this.left[d]!, this.longest[d]!));
    if (stand >= 0) {
      this.held[d] ??= new Map();
      this.held[d].set(activity.group, stand);
    }
    const from = problem.days[d]!.start + start;
    if (charger >= 0) {
      this.charging[charger] ??= [];
      this.charging[charger].push({ from, to: from + minutes + activity.chargeMinutes });
    }
    if (schedule.day[i] === -1) {
      schedule.day[i] = d;
      schedule.start[i] = from;
    }
    schedule.end[i] = from + minutes;
    schedule.pieces.push(piece);
  }
}

function firstDayEndingAfter(days: Problem['days'], minute: number, from: number): number {
  let low = from;
  let high = days.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (days[mid]!.start + days[mid]!.length < minute) low = mid + 1;
    else high = mid;
  }
  return low;
}
