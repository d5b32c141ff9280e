import { fewestSessions, LARGE } from './fewest.ts';
import { leastSessions } from './lower-bound.ts';
import { possible } from './possible.ts';
import type { Piece, Problem, Schedule } from './problem.ts';
import { shortestDay } from './shorten.ts';
import { tidied } from './tidy.ts';
import { apart, joined } from './unbroken.ts';
import { windowsOf } from './windows.ts';

/** Lists drawn to shorten a session, at most; and placements that all sessions together may spend on it. */
const SAMPLES = 400;
const SHORTEN_EFFORT = 80_000;
/** Schedules made of each list that is drawn. */
const RUNS_PER_LIST = 6;

/**
 * The scheduler: first the days, in the fewest sessions; then within each session, so that it ends as soon as possible. What goes
 * on without a break is one piece of work in both.
 * @param problem - activities, resources, days
 * @param seed - the same seed gives the same schedule
 * @param quick - for a slider that is still moving: a sound schedule, without the search for a better one
 * @returns the schedule
 */
export function solve(problem: Problem, seed: number, quick = false): Schedule {
  const unbroken = joined(problem);
  return apart(solveJoined(unbroken.problem, seed, quick), unbroken, problem.activities);
}

function solveJoined(problem: Problem, seed: number, quick: boolean): Schedule {
  const windows = windowsOf(problem);
  const all = possible(problem);
  // A search that is short in any case seldom reaches the bound, which costs as much as all its runs there.
  const sessions = problem.activities.length > LARGE ? 0 : leastSessions(problem, all);
  const schedule = fewestSessions(problem, windows, { all: all.length, sessions }, seed, quick);
  return quick ? schedule : shortenSessions(problem, schedule, seed);
}

function shortenSessions(problem: Problem, schedule: Schedule, seed: number): Schedule {
  const byDay = new Map<number, Piece[]>();
  for (const p of schedule.pieces) {
    const own = byDay.get(p.day);
    if (own) own.push(p);
    else byDay.set(p.day, [p]);
  }
  const pieces: Piece[] = [];
  // Each session is judged by what the sessions before it have become.
  const now: Schedule = { ...schedule, start: schedule.start.slice(), end: schedule.end.slice() };
  const inTime = followersInTime(problem, now);
  const samples = Math.min(SAMPLES, Math.floor(SHORTEN_EFFORT / RUNS_PER_LIST / Math.max(1, schedule.pieces.length)));
  for (const [day, own] of [...byDay].sort((a, b) => a[0] - b[0])) {
    const shorter = shorterSession(problem, now, day, own, samples, seed);
    const base = problem.days[day]!.start;
    const sound = (some: readonly Piece[] | undefined) =>
      some?.every((p) => inTime(p.activity, base + p.start + p.minutes, day)) ? some : undefined;
    const kept = sound(shorter) ?? sound(tidied(problem, now, own)) ?? own;
    pieces.push(...kept);
    if (kept === own) continue;
    for (const p of kept) {
      now.start[p.activity] = base + p.start;
      now.end[p.activity] = base + p.start + p.minutes;
    }
  }
  return { ...now, pieces };
}

/** Whether what follows an activity on other days still has its wait when the activity ends at another minute. */
function followersInTime(problem: Problem, schedule: Schedule): (i: number, end: number, day: number) => boolean {
  const followers = new Map<number, { by: number; lag: number }[]>();
  problem.activities.forEach((a, by) => {
    for (const { of, lag } of a.after) followers.set(of, [...(followers.get(of) ?? []), { by, lag }]);
  });
  return (i, end, day) =>
    (followers.get(i) ?? []).every(({ by, lag }) => schedule.day[by] === day || !(schedule.start[by]! < end + lag));
}

/**
 * The same work in a shorter session; undefined where nothing is gained, or where more than the session hangs on it
 * (chargers that stay taken, jobs that are spread over days).
 */
function shorterSession(
  problem: Problem,
  schedule: Schedule,
  day: number,
  own: readonly Piece[],
  samples: number,
  seed: number,
): Piece[] | undefined {
  const { activities, days } = problem;
  const length = Math.max(...own.map((p) => p.start + p.minutes));
  const minutes = own.reduce((sum, p) => sum + p.minutes, 0);
  if (problem.capacity[0] === 1 && length <= minutes) return undefined;
  const spread = own.some((p) => p.minutes !== activities[p.activity]!.minutes);
  if (spread || own.some((p) => activities[p.activity]!.chargers.length > 0)) return undefined;
  const local = new Map(own.map((p, k) => [p.activity, k]));
  const base = days[day]!.start;
  const sub: Problem = {
    capacity: problem.capacity,
    days: [{ start: base, length }],
    tripMinutes: [0],
    activities: own.map((p) => {
      const a = activities[p.activity]!;
      const outside = a.after.filter(({ of }) => !local.has(of)).map(({ of, lag }) => schedule.end[of]! + lag);
      return {
        ...a,
        after: a.after.flatMap(({ of, lag }) => (local.has(of) ? [{ of: local.get(of)!, lag }] : [])),
        ready: Math.max(base, a.ready ?? base, ...outside),
        from: 0,
        to: 0,
        fit: undefined,
        stands: [],
        place: 0,
      };
    }),
  };
  const found = shortestDay(sub, samples, seed);
  const ends = found.pieces.reduce((last, p) => Math.max(last, p.start + p.minutes), 0);
  if (found.missing.length > 0 || !(ends < length)) return undefined;
  return found.pieces.map((p) => ({ ...p, activity: own[p.activity]!.activity, day }));
}
