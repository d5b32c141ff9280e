import type { Piece, Problem, Schedule } from './problem.ts';

/**
 * A session of one pair of hands with each machine's steps kept together and in their own order, as far as what follows what
 * allows: nobody likes to go to and fro between two machines.
 * @param problem - activities and days
 * @param schedule - of the whole problem
 * @param own - the session's work, one piece after the other without a gap
 * @returns the same work in another order; undefined where the session cannot be told to stay sound
 */
export function tidied(problem: Problem, schedule: Schedule, own: readonly Piece[]): Piece[] | undefined {
  const { activities, days } = problem;
  const minutes = own.reduce((sum, p) => sum + p.minutes, 0);
  const length = Math.max(...own.map((p) => p.start + p.minutes));
  if (problem.capacity[0] !== 1 || length > minutes) return undefined;
  if (own.filter((p) => activities[p.activity]!.chargers.length > 0).length > 1) return undefined;
  if (own.some((p) => p.minutes !== activities[p.activity]!.minutes)) return undefined;
  const base = days[own[0]!.day]!.start;
  const left = own.toSorted((a, b) => a.start - b.start || a.activity - b.activity);
  const waiting = new Set(left.map((p) => p.activity));
  const out: Piece[] = [];
  const ends = new Map<number, number>();
  let group = -1;
  let at = 0;
  while (left.length > 0) {
    const free = left.filter((p) => activities[p.activity]!.after.every(({ of }) => !waiting.has(of)));
    const ours = free.filter((p) => activities[p.activity]!.group === group);
    const theirs = free.filter((p) => activities[p.activity]!.group === activities[free[0]!.activity]!.group);
    const next = (ours.length > 0 ? ours : theirs).reduce((a, b) => (b.activity < a.activity ? b : a));
    const a = activities[next.activity]!;
    const ready = Math.max(
      a.ready ?? Number.NEGATIVE_INFINITY,
      ...a.after.map(({ of, lag }) => (ends.get(of) ?? schedule.end[of]!) + lag),
    );
    if (ready > base + at || !chargesAlone(problem, schedule, next, base + at)) return undefined;
    out.push({ ...next, start: at });
    at += next.minutes;
    ends.set(next.activity, base + at);
    waiting.delete(next.activity);
    left.splice(left.indexOf(next), 1);
    group = a.group;
  }
  return out;
}

/** Whether a charge could begin at another minute without another charge being near. */
function chargesAlone({ activities }: Problem, { start, end }: Schedule, { activity: i }: Piece, at: number): boolean {
  const a = activities[i]!;
  if (a.chargers.length === 0) return true;
  const from = Math.min(start[i]!, at);
  const to = Math.max(end[i]!, at + a.minutes) + a.chargeMinutes;
  return activities.every(
    (b, k) => k === i || b.chargers.length === 0 || !(start[k]! < to && end[k]! + b.chargeMinutes > from),
  );
}
