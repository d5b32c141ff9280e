import { EXACT_UP_TO, exactSchedule } from './exact.ts';
import { generate, generateWithin } from './generate.ts';
import type { Problem, Schedule } from './problem.ts';
import { randomFrom } from './random.ts';
import { listBy, type Windows } from './windows.ts';

/** Placements that the search may spend: it ends after so much work, not after so much time, and so repeats exactly. */
const EFFORT = 60_000;
/** What it may spend in any case, and at most, in whole schedules. */
const LEAST_RUNS = 8;
const MOST_RUNS = 200;
/** What a trial between two frames of a slider may spend. */
const QUICK_RUNS = 12;
/** Beyond this number of activities only the first two lists are tried: a list alone costs as much as the schedule made from it. */
export const LARGE = 5_000;

/** A schedule with the list and the open days that made it. */
interface Found {
  schedule: Schedule;
  order: Int32Array;
  open: Uint8Array;
  score: Score;
}

/** What no schedule can go beyond: it cannot place more than so many, nor all of these in fewer sessions. */
export interface Least {
  all: number;
  sessions: number;
}

/** Compared in this order: steps without a place, their minutes, sessions, how late the days are. */
type Score = readonly [missing: number, missingMinutes: number, sessions: number, lateness: number];

/**
 * A schedule that leaves the fewest activities out, in the fewest sessions, as early as that allows.
 *
 * Several priority lists are tried with every day open; then days are closed one after the other, as long as nothing that
 * had a place loses it; at last each session is moved to an earlier day where that can be done.
 * @param problem - activities, resources, days
 * @param windows - of the same problem
 * @param least - the search ends when it is reached
 * @param seed - of the changed lists
 * @param quick - takes what the first lists give, for a slider that is still moving
 * @returns the best schedule found
 * Error: exact on small problems as far as tests reach; in general an upper bound to the number of sessions.
 */
export function fewestSessions(
  problem: Problem,
  windows: Windows,
  least: Least,
  seed: number,
  quick = false,
): Schedule {
  const search = new Search(problem, windows, least, seed);
  return quick ? search.short() : search.run();
}

class Search {
  private readonly problem: Problem;
  private readonly windows: Windows;
  private readonly least: Least;
  private readonly random: () => number;
  private runsLeft: number;

  constructor(problem: Problem, windows: Windows, least: Least, seed: number) {
    this.problem = problem;
    this.windows = windows;
    this.least = least;
    this.random = randomFrom(seed);
    this.runsLeft = Math.min(
      MOST_RUNS,
      Math.max(LEAST_RUNS, Math.floor(EFFORT / Math.max(1, problem.activities.length))),
    );
  }

  run(): Schedule {
    const { activities } = this.problem;
    const all = new Uint8Array(this.problem.days.length).fill(1);
    const lists = this.lists();
    let base = this.attempt(lists[0]!, all);
    for (const order of lists.slice(1)) base = better(base, this.attemptWithin(base, order, all));
    base = this.dropLess(base);
    let best = base;
    for (const start of this.starts(base)) {
      if (this.done(best)) break;
      best = better(best, this.close(start.found, start.days));
    }
    best = this.exact(best);
    if (activities.length <= EXACT_UP_TO || activities.length > LARGE) return this.earlier(best).schedule;
    for (const order of this.changedLists()) {
      if (this.done(best) || this.runsLeft <= 0) break;
      const found = this.attemptWithin(best, order, all);
      if (!found) continue;
      best = better(best, this.close(found, this.starts(found)[1]!.days));
    }
    return this.earlier(best).schedule;
  }

  /** The first list, and the days closed from the last as far as a few runs reach. */
  short(): Schedule {
    this.runsLeft = QUICK_RUNS;
    const all = new Uint8Array(this.problem.days.length).fill(1);
    const base = this.attempt(this.lists(1)[0]!, all);
    const start = this.starts(base)[0]!;
    return this.close(start.found, start.days).schedule;
  }

  /** On a small problem: something better, if there is any. */
  private exact(best: Found): Found {
    if (this.done(best)) return best;
    const [missing, minutes, sessions] = best.score;
    const schedule = exactSchedule(this.problem, [missing, minutes, sessions]);
    if (!schedule) return best;
    const { start } = schedule;
    const placedFirst = (i: number) => (Number.isNaN(start[i]!) ? Number.POSITIVE_INFINITY : start[i]!);
    const order = listBy(this.problem, [placedFirst]);
    const open = new Uint8Array(this.problem.days.length);
    for (const p of schedule.pieces) open[p.day] = 1;
    return { schedule, order, open, score: scoreOf(this.problem, schedule) };
  }

  private done(found: Found): boolean {
    return this.lacking(found) === 0 && found.schedule.sessions <= this.least.sessions;
  }

  /** How many found no place that could have one. */
  private lacking(found: Found): number {
    return found.score[0] + this.least.all - this.problem.activities.length;
  }

  private attempt(order: Int32Array, open: Uint8Array): Found {
    this.runsLeft -= 1;
    const schedule = generate(this.problem, order, open);
    return { schedule, order, open, score: scoreOf(this.problem, schedule) };
  }

  /** Nothing where it would leave out more than one that is known. */
  private attemptWithin(known: Found, order: Int32Array, open: Uint8Array): Found | undefined {
    this.runsLeft -= 1;
    const [missing, minutes] = known.score;
    const schedule = generateWithin(this.problem, order, open, [missing, minutes]);
    return schedule && { schedule, order, open, score: scoreOf(this.problem, schedule) };
  }

  /** Lists by the rules of the literature; the machine's steps stay together where they are equally urgent. */
  private lists(most?: number): Int32Array[] {
    const { problem, windows } = this;
    const { activities } = problem;
    const group = (i: number) => activities[i]!.group;
    const latestDay = (i: number) => windows.latestDay[i]!;
    const latestStart = (i: number) => windows.latestStart[i]!;
    const slack = (i: number) => windows.latestStart[i]! - windows.earliestStart[i]!;
    const longFirst = (i: number) => -activities[i]!.minutes;
    const shortFirst = (i: number) => activities[i]!.minutes;
    return [[latestDay, group], [latestDay, shortFirst], [latestStart], [latestDay, longFirst], [slack], [shortFirst]]
      .slice(0, most ?? (activities.length > LARGE ? 2 : undefined))
      .map((rules) => listBy(problem, rules));
  }

  /** Lists whose urgency is shaken a little, the more the further the search goes. */
  private *changedLists(): Generator<Int32Array> {
    const { problem, windows, random } = this;
    for (let round = 1; ; round++) {
      const reach = Math.min(problem.days.length, 1 + round / 4);
      const shaken = Float64Array.from(windows.latestDay, (day) => day + reach * (random() - 0.5));
      yield listBy(problem, [(i) => shaken[i]!]);
    }
  }

  /** Where some find no place: does leaving another one out let more in? Its turn comes last in the list then. */
  private dropLess(base: Found): Found {
    let best = base;
    for (let round = 0; round < 3 && this.lacking(best) > 1 && this.runsLeft > LEAST_RUNS; round++) {
      const before = best;
      const days = new Set(before.schedule.missing.map((i) => this.windows.latestDay[i]!));
      const latest = Math.max(...days);
      const candidates = [...this.problem.activities.keys()]
        .filter((i) => before.schedule.day[i]! >= 0 && before.schedule.day[i]! <= latest)
        .sort((a, b) => this.problem.activities[b]!.minutes - this.problem.activities[a]!.minutes);
      for (const i of candidates) {
        if (this.runsLeft <= LEAST_RUNS) return best;
        const order = this.withLast(best.order, i);
        if (order) best = better(best, this.attemptWithin(best, order, best.open));
      }
      if (best === before) break;
    }
    return best;
  }

  /** The list with one activity at its end; undefined where others follow it. */
  private withLast(order: Int32Array, i: number): Int32Array | undefined {
    if (this.windows.tail[i]! > this.problem.activities[i]!.minutes) return undefined;
    return Int32Array.from([...order].filter((k) => k !== i).concat(i));
  }

  /** Days to try to close, in three orders: of those in use, the last first; of all, the last first; the shortest first. */
  private starts(base: Found): { found: Found; days: number[] }[] {
    const { days } = this.problem;
    const used = new Set(base.schedule.pieces.map((p) => p.day));
    const open = Uint8Array.from(base.open, (_, d) => (used.has(d) ? 1 : 0));
    const backwards = [...days.keys()].filter((d) => base.open[d] === 1).reverse();
    return [
      { found: { ...base, open }, days: backwards.filter((d) => used.has(d)) },
      { found: base, days: backwards.toSorted((a, b) => days[a]!.length - days[b]!.length) },
      { found: base, days: backwards },
    ];
  }

  /** Closes days in the order given, in runs that double while it goes well, and halve where it does not. */
  private close(start: Found, days: readonly number[]): Found {
    let best = start;
    let block = 1;
    for (let k = 0; k < days.length && !this.done(best) && this.runsLeft > 0; ) {
      const some = days.slice(k, k + block);
      const open = best.open.slice();
      for (const d of some) open[d] = 0;
      const used = best.schedule.pieces.some((p) => open[p.day] === 0);
      const found = used ? this.attemptWithin(best, best.order, open) : { ...best, open };
      if (found) {
        best = found;
        k += some.length;
        block *= 2;
      } else if (block === 1) k += 1;
      else block = Math.max(1, Math.floor(block / 4));
    }
    return best;
  }

  /** Moves each session to an earlier day, as early as keeps everything in its place. */
  private earlier(start: Found): Found {
    const usedNow = (found: Found) => [...new Set(found.schedule.pieces.map((p) => p.day))].sort((a, b) => a - b);
    let best = start;
    let reruns = LEAST_RUNS * 8;
    const count = usedNow(start).length;
    for (let s = 0; s < count; s++) {
      const used = usedNow(best);
      const day = used[s];
      if (day === undefined) break;
      let low = s === 0 ? 0 : used[s - 1]! + 1;
      let high = day;
      while (low < high && reruns > 0) {
        const mid = (low + high) >> 1;
        const open = new Uint8Array(this.problem.days.length);
        for (const d of usedNow(best)) open[d] = 1;
        open[high] = 0;
        open[mid] = 1;
        reruns -= 1;
        const found = this.attemptWithin(best, best.order, open);
        if (found && compareScores(found.score, best.score) < 0) {
          best = found;
          high = mid;
        } else low = mid + 1;
      }
    }
    return best;
  }
}

function scoreOf(problem: Problem, schedule: Schedule): Score {
  let minutes = 0;
  for (const i of schedule.missing) minutes += problem.activities[i]!.minutes;
  let lateness = 0;
  for (const day of schedule.day) if (day >= 0) lateness += problem.days[day]!.start;
  return [schedule.missing.length, minutes, schedule.sessions, lateness];
}

function compareScores(a: Score, b: Score): number {
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return a[k]! - b[k]!;
  return 0;
}

function better(a: Found, b: Found | undefined): Found {
  return b && compareScores(b.score, a.score) < 0 ? b : a;
}
