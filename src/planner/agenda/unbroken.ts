import type { Activity, Piece, Problem, Schedule } from './problem.ts';

/** A problem in which work without a break is one activity, and which activities of the given problem each is made of. */
export interface Unbroken {
  problem: Problem;
  members: readonly (readonly number[])[];
  /** Of each activity of the given problem: the one that it is part of. */
  partOf: Int32Array;
}

/**
 * Makes one activity of those that go on from one another without a break: an engine that runs is not left for next week.
 *
 * It asks for what any of them asks for, follows what any of them follows, and has the days that all of them have; where none of
 * these is long enough for all of them, none is done. They stay apart where something has to pass between them (a wait, another
 * activity, a charger).
 * @param problem - each activity behind those that it follows
 */
export function joined(problem: Problem): Unbroken {
  if (!problem.activities.some(({ goesOnFrom }) => goesOnFrom !== undefined)) {
    return {
      problem,
      members: problem.activities.map((_, i) => [i]),
      partOf: Int32Array.from(problem.activities.keys()),
    };
  }
  const members: number[][] = [];
  let whole: Activity | undefined;
  const activities: Activity[] = [];
  problem.activities.forEach((activity, i) => {
    const before = members.at(-1);
    const longer = before && activity.goesOnFrom === i - 1 ? together(whole!, activity, before) : undefined;
    if (longer) {
      whole = longer;
      before!.push(i);
      activities[activities.length - 1] = longer;
    } else {
      whole = activity;
      members.push([i]);
      activities.push(activity);
    }
  });
  const partOf = new Int32Array(problem.activities.length);
  members.forEach((own, k) => {
    for (const i of own) partOf[i] = k;
  });
  const renumbered = activities.map((activity, k) => ({ ...activity, after: afterOf(activity, partOf, k) }));
  return { problem: { ...problem, activities: renumbered }, members, partOf };
}

/**
 * The schedule of the activities as they were given: those that were one follow one another within its time.
 * @param schedule - of the problem in which they are one
 * @param unbroken - that problem, and what it was made of
 * @param activities - as they were given
 */
export function apart(schedule: Schedule, { members }: Unbroken, activities: readonly Activity[]): Schedule {
  if (members.length === activities.length) return schedule;
  const n = activities.length;
  const found: Schedule = {
    day: new Int32Array(n).fill(-1),
    start: new Float64Array(n).fill(Number.NaN),
    end: new Float64Array(n).fill(Number.NaN),
    pieces: schedule.pieces.flatMap((piece) => piecesOf(piece, members[piece.activity]!, activities)),
    missing: schedule.missing.flatMap((k) => members[k]!),
    sessions: schedule.sessions,
  };
  members.forEach((own, k) => {
    let start = schedule.start[k]!;
    own.forEach((i, place) => {
      const end = place === own.length - 1 ? schedule.end[k]! : start + activities[i]!.minutes;
      found.day[i] = schedule.day[k]!;
      found.start[i] = start;
      found.end[i] = end;
      start = end;
    });
  });
  return found;
}

/**
 * The whole piece of work that an activity is part of, with what it follows in the numbers of the problem as it was given.
 * @param i - an activity of that problem
 * @param unbroken - what `joined` made of it
 * @param activities - as they were given
 */
export function wholeOf(i: number, { problem, members, partOf }: Unbroken, activities: readonly Activity[]): Activity {
  const k = partOf[i]!;
  const after = members[k]!.flatMap((own) => activities[own]!.after).filter(({ of }) => !members[k]!.includes(of));
  return { ...problem.activities[k]!, after };
}

/** Two as one, or nothing where they cannot be. */
function together(one: Activity, next: Activity, members: readonly number[]): Activity | undefined {
  const [first] = members;
  const waits = next.after.some(({ of, lag }) => members.includes(of) && lag > 0);
  const outside = next.after.filter(({ of }) => !members.includes(of));
  if (waits || outside.some(({ of }) => of > first!)) return undefined;
  if (one.chargers.length > 0 || next.chargers.length > 0 || one.place !== next.place || one.group !== next.group)
    return undefined;
  return {
    ...one,
    minutes: one.minutes + next.minutes,
    demand: one.demand.map((units, r) => Math.max(units, next.demand[r]!)),
    after: [...one.after, ...outside],
    from: Math.max(one.from, next.from),
    to: Math.min(one.to, next.to),
    fit: one.fit && next.fit ? one.fit.map((is, day) => is & next.fit![day]!) : (one.fit ?? next.fit),
    ready: one.ready === undefined ? next.ready : Math.max(one.ready, next.ready ?? one.ready),
    stands: one.stands.length > 0 ? one.stands : next.stands,
    splittable: false,
  };
}

/** What it follows, by the numbers of the joined problem: each once, with the longest wait. */
function afterOf({ after }: Activity, partOf: Int32Array, own: number): Activity['after'] {
  const lags = new Map<number, number>();
  for (const { of, lag } of after) {
    const k = partOf[of]!;
    if (k !== own) lags.set(k, Math.max(lag, lags.get(k) ?? 0));
  }
  return [...lags].map(([of, lag]) => ({ of, lag }));
}

function piecesOf(piece: Piece, members: readonly number[], activities: readonly Activity[]): Piece[] {
  if (members.length === 1) return [{ ...piece, activity: members[0]! }];
  let start = piece.start;
  return members.map((activity) => {
    const { minutes } = activities[activity]!;
    const own = { activity, day: piece.day, start, minutes };
    start += minutes;
    return own;
  });
}
