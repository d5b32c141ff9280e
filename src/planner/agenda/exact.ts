import { generate } from './generate.ts';
import type { Activity, Problem, Schedule } from './problem.ts';

/** Problems up to this size are searched through. */
export const EXACT_UP_TO = 12;
/** States that the search may visit before it gives up. */
const STATES = 30_000;

/** Compared in this order. */
export type Cost = readonly [missing: number, missingMinutes: number, sessions: number];

/** What stands after some days: which activities are done, and when they ended. */
interface State {
  done: number;
  end: Float64Array;
  sessions: number;
  /** Day of each activity so far, −1 where it has none, and the order they were placed in. */
  day: Int32Array;
  order: number[];
}

/**
 * A better schedule than the one known, by going through the days one after the other and trying, on each, to hold no
 * session or to do a set of steps to which none can be added.
 *
 * Larger sets leave nothing undone that smaller ones do not, so sets to which a step could be added are passed over. States
 * that agree in what is done and in the waits still running are followed up once, with the fewest sessions.
 * @param problem - no more than `EXACT_UP_TO` activities, none of them spread over days or at a charger
 * @param known - cost to be bettered
 * @returns the schedule; undefined where there is none better or the search was given up
 */
export function exactSchedule(problem: Problem, known: Cost): Schedule | undefined {
  const { activities } = problem;
  if (activities.length > EXACT_UP_TO) return undefined;
  if (activities.some((a) => a.splittable || a.chargers.length > 0)) return undefined;
  return new Exact(problem, known).run();
}

class Exact {
  private readonly problem: Problem;
  private best: Cost;
  private found: State | undefined;
  private readonly seen = new Map<string, number>();
  private statesLeft = STATES;

  constructor(problem: Problem, known: Cost) {
    this.problem = problem;
    this.best = known;
  }

  run(): Schedule | undefined {
    const n = this.problem.activities.length;
    this.visit(0, {
      done: 0,
      end: new Float64Array(n).fill(Number.NaN),
      sessions: 0,
      day: new Int32Array(n).fill(-1),
      order: [],
    });
    const { found } = this;
    if (!found) return undefined;
    const fixed = this.problem.activities.map((a, i): Activity => {
      const d = found.day[i]!;
      return d >= 0 ? { ...a, from: d, to: d } : { ...a, from: 1, to: 0 };
    });
    const rest = fixed.flatMap((_, i) => (found.day[i]! < 0 ? [i] : []));
    return generate({ ...this.problem, activities: fixed }, [...found.order, ...rest]);
  }

  private visit(d: number, state: State): void {
    const lost = this.lost(d, state);
    if (!less([lost.count, lost.minutes, state.sessions], this.best)) return;
    if (d === this.problem.days.length) {
      this.best = [lost.count, lost.minutes, state.sessions];
      this.found = state;
      return;
    }
    if (this.statesLeft <= 0) return;
    const key = `${d} ${state.done} ${this.runningWaits(d, state)}`;
    if (!((this.seen.get(key) ?? Number.POSITIVE_INFINITY) > state.sessions)) return;
    this.seen.set(key, state.sessions);
    this.statesLeft -= 1;
    const candidates = [...this.problem.activities.keys()].filter((i) => this.possible(i, d, state));
    for (const next of this.fullestSessions(d, candidates, state)) this.visit(d + 1, next);
    this.visit(d + 1, state);
  }

  /** Activities whose window is over. */
  private lost(d: number, { done }: State): { count: number; minutes: number } {
    let count = 0;
    let minutes = 0;
    this.problem.activities.forEach((a, i) => {
      if ((done >> i) & 1 || (a.to >= d && a.to >= a.from)) return;
      count += 1;
      minutes += a.minutes;
    });
    return { count, minutes };
  }

  /** Ends of activities whose wait reaches into the days to come. */
  private runningWaits(d: number, { done, end }: State): string {
    const start = this.problem.days[d]!.start;
    const waits = new Set<string>();
    this.problem.activities.forEach((a, i) => {
      if ((done >> i) & 1) return;
      for (const { of, lag } of a.after) if (end[of]! + lag > start) waits.add(`${of}:${end[of]}`);
    });
    return [...waits].sort().join(',');
  }

  private possible(i: number, d: number, { done }: State): boolean {
    const a = this.problem.activities[i]!;
    return !((done >> i) & 1) && d >= a.from && d <= a.to && (!a.fit || a.fit[d] === 1);
  }

  /** Sessions on one day to which no candidate could be added. */
  private fullestSessions(d: number, candidates: readonly number[], state: State): State[] {
    const sessions = new Map<number, State>();
    const tried = new Set<number>();
    const grow = (chosen: number, base: State | undefined) => {
      if (tried.has(chosen)) return;
      tried.add(chosen);
      let full = true;
      for (const i of candidates) {
        if ((chosen >> i) & 1) continue;
        const set = chosen | (1 << i);
        const next = this.hold(
          d,
          candidates.filter((k) => (set >> k) & 1),
          state,
        );
        if (!next) continue;
        full = false;
        grow(set, next);
      }
      if (full && base) sessions.set(chosen, base);
    };
    grow(0, undefined);
    return [...sessions.values()];
  }

  /** All of these on one day; undefined where that cannot be. */
  private hold(d: number, members: readonly number[], state: State): State | undefined {
    const { activities, capacity, days } = this.problem;
    const minutes = members.reduce((sum, i) => sum + activities[i]!.minutes * activities[i]!.demand[0]!, 0);
    if (minutes > days[d]!.length * capacity[0]!) return undefined;
    const set = new Set(members);
    const ready = (i: number) => activities[i]!.after.every(({ of }) => set.has(of) || (state.done >> of) & 1);
    if (!members.every(ready)) return undefined;
    const local = new Map(members.map((i, k) => [i, k]));
    const sub: Problem = {
      ...this.problem,
      days: [days[d]!],
      activities: members.map((i) => {
        const a = activities[i]!;
        const outside = a.after.filter(({ of }) => !set.has(of)).map(({ of, lag }) => state.end[of]! + lag);
        return {
          ...a,
          after: a.after.flatMap(({ of, lag }) => (set.has(of) ? [{ of: local.get(of)!, lag }] : [])),
          ready: Math.max(a.ready ?? Number.NEGATIVE_INFINITY, ...outside),
          from: 0,
          to: 0,
          fit: undefined,
        };
      }),
    };
    const schedule = this.inSomeOrder(sub);
    if (!schedule) return undefined;
    const end = state.end.slice();
    const day = state.day.slice();
    let { done } = state;
    members.forEach((i, k) => {
      end[i] = schedule.end[k]!;
      day[i] = d;
      done |= 1 << i;
    });
    const inOrder = [...members.keys()].sort((a, b) => schedule.start[a]! - schedule.start[b]!);
    return {
      done,
      end,
      day,
      sessions: state.sessions + 1,
      order: [...state.order, ...inOrder.map((k) => members[k]!)],
    };
  }

  /** Tries the orders that what follows what allows, until one of them fits all; without waits the first one does or none. */
  private inSomeOrder(sub: Problem): Schedule | undefined {
    const n = sub.activities.length;
    let triesLeft = sub.activities.some((a) => a.after.some((f) => f.lag > 0) || a.ready! > sub.days[0]!.start)
      ? 200
      : 1;
    if (sub.capacity[0]! > 1) triesLeft = 200;
    const order: number[] = [];
    const extend = (): Schedule | undefined => {
      if (order.length === n) {
        triesLeft -= 1;
        const schedule = generate(sub, order);
        return schedule.missing.length === 0 ? schedule : undefined;
      }
      for (let k = 0; k < n && triesLeft > 0; k++) {
        if (order.includes(k) || !sub.activities[k]!.after.every(({ of }) => order.includes(of))) continue;
        order.push(k);
        const schedule = extend();
        if (schedule) return schedule;
        order.pop();
      }
      return undefined;
    };
    return extend();
  }
}

function less(a: Cost, b: Cost): boolean {
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return a[k]! < b[k]!;
  return false;
}
