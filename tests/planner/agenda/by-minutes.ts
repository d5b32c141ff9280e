import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';

/** All times of the problems that are given to it are multiples of this [min]. */
const STEP = 5;

/** Shortest stretch worth beginning on a job that is spread over sessions [min]. */
const SHORTEST = 30;

interface Work {
  activity: number;
  day: number;
  start: number;
  minutes: number;
}

/**
 * What a serial schedule is by its definition: each activity in the order given begins at the first minute at which all rules let
 * it, those before it being where they are. Every minute of every day is looked at; no code is shared with the scheduler.
 * @returns the stretches of work, and what found no place
 */
export function byMinutes(
  problem: Problem,
  order: readonly number[],
  open: Uint8Array,
): { work: Work[]; missing: number[] } {
  const { activities, days } = problem;
  const work: Work[] = [];
  const missing: number[] = [];
  const charges: { charger: number; from: number; to: number }[] = [];
  const stands = days.map(() => new Map<number, number>());

  const clock = (w: Work) => days[w.day]!.start + w.start;
  const endOf = (i: number) => Math.max(...work.filter((w) => w.activity === i).map((w) => clock(w) + w.minutes));
  const onDay = (day: number) => work.filter((w) => w.day === day);

  /** Minutes of a day's session that are left over for work, with one more activity on it. */
  const limit = (a: Activity, day: number) => {
    const places = new Set([...onDay(day).map((w) => activities[w.activity]!.place), a.place]);
    return days[day]!.length - [...places].reduce((sum, place) => sum + problem.tripMinutes[place]!, 0);
  };
  const isFree = (a: Activity, day: number, minute: number) => {
    const running = onDay(day).filter((w) => w.start <= minute && minute < w.start + w.minutes);
    const used = (r: number) => running.reduce((sum, w) => sum + activities[w.activity]!.demand[r]!, 0);
    return problem.capacity.every((units, r) => a.demand[r] === 0 || used(r) + a.demand[r]! <= units);
  };
  const freeFor = (a: Activity, day: number, start: number, minutes: number) => {
    for (let m = start; m < start + Math.max(STEP, minutes); m += STEP) if (!isFree(a, day, m)) return false;
    return true;
  };
  const standOn = (a: Activity, day: number) => {
    const held = stands[day]!;
    return held.get(a.group) ?? a.stands.find((stand) => ![...held.values()].includes(stand));
  };
  const chargerAt = (a: Activity, from: number) => {
    const to = from + a.minutes + a.chargeMinutes;
    return a.chargers.find((c) => !charges.some((taken) => taken.charger === c && taken.from < to && taken.to > from));
  };
  const usable = (a: Activity, day: number) =>
    open[day] === 1 &&
    (a.fit?.[day] ?? 1) === 1 &&
    (a.stands.length === 0 || standOn(a, day) !== undefined) &&
    onDay(day).every((w) => w.start + w.minutes <= limit(a, day));

  const whole = (a: Activity, activity: number, ready: number): Work | undefined => {
    for (let day = Math.max(0, a.from); day <= a.to; day++) {
      if (!usable(a, day)) continue;
      for (let start = Math.max(0, ready - days[day]!.start); start + a.minutes <= limit(a, day); start += STEP) {
        const isCharged = a.chargers.length === 0 || chargerAt(a, days[day]!.start + start) !== undefined;
        if (isCharged && freeFor(a, day, start, a.minutes)) return { activity, day, start, minutes: a.minutes };
      }
    }
    return undefined;
  };
  /** A job longer than any session of its window has of each session the first stretch that is free. */
  const spread = (a: Activity, activity: number, ready: number): Work[] => {
    if (!a.splittable || a.chargers.length > 0) return [];
    const window = days.slice(Math.max(0, a.from), a.to + 1);
    if (window.some(({ length }) => length - problem.tripMinutes[a.place]! >= a.minutes)) return [];
    const found: Work[] = [];
    let left = a.minutes;
    for (let day = Math.max(0, a.from); day <= a.to && left > 0; day++) {
      if (!usable(a, day)) continue;
      let start = Math.max(0, ready - days[day]!.start);
      while (start < limit(a, day) && !isFree(a, day, start)) start += STEP;
      let minutes = 0;
      while (minutes < left && start + minutes < limit(a, day) && isFree(a, day, start + minutes)) minutes += STEP;
      if (minutes < Math.min(left, SHORTEST)) continue;
      found.push({ activity, day, start, minutes });
      left -= minutes;
    }
    return left > 0 ? [] : found;
  };

  for (const i of order) {
    const a = activities[i]!;
    const waits = a.after.some(({ of }) => missing.includes(of));
    const ready = Math.max(a.ready ?? Number.NEGATIVE_INFINITY, ...a.after.map(({ of, lag }) => endOf(of) + lag));
    const one = waits ? undefined : whole(a, i, ready);
    const pieces = one ? [one] : waits ? [] : spread(a, i, ready);
    if (pieces.length === 0) missing.push(i);
    for (const piece of pieces) {
      if (a.stands.length > 0) stands[piece.day]!.set(a.group, standOn(a, piece.day)!);
      const from = clock(piece);
      if (a.chargers.length > 0)
        charges.push({ charger: chargerAt(a, from)!, from, to: from + a.minutes + a.chargeMinutes });
      work.push(piece);
    }
  }
  return { work, missing };
}

/** Each order in which every activity is behind those that it follows. */
export function* ordersOf(problem: Problem, begun: readonly number[] = []): Generator<readonly number[]> {
  if (begun.length === problem.activities.length) yield begun;
  for (const [i, a] of problem.activities.entries()) {
    const isNext = !begun.includes(i) && a.after.every(({ of }) => begun.includes(of));
    if (isNext) yield* ordersOf(problem, [...begun, i]);
  }
}
