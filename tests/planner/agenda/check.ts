import type { Problem, Schedule } from '../../../src/planner/agenda/problem.ts';

/**
 * What is wrong with a schedule, looked at minute by minute and rule by rule, with no code shared with the scheduler.
 * @returns one sentence for each fault; empty when it is feasible
 */
export function faults(problem: Problem, schedule: Schedule): string[] {
  const { activities, days, capacity } = problem;
  const found: string[] = [];
  const pieces = activities.map((_, i) => schedule.pieces.filter((p) => p.activity === i));
  const clock = (p: Schedule['pieces'][number]) => days[p.day]!.start + p.start;

  activities.forEach((a, i) => {
    const own = pieces[i]!;
    if (own.length === 0) {
      if (!schedule.missing.includes(i)) found.push(`${i} is neither placed nor missing`);
      return;
    }
    if (schedule.missing.includes(i)) found.push(`${i} is placed and missing`);
    if (own.reduce((sum, p) => sum + p.minutes, 0) !== a.minutes) found.push(`${i} does not get its minutes`);
    if (own.length > 1 && !a.splittable) found.push(`${i} is split`);
    if (schedule.start[i] !== Math.min(...own.map(clock))) found.push(`${i} does not start with its first piece`);
    if (schedule.end[i] !== Math.max(...own.map((p) => clock(p) + p.minutes)))
      found.push(`${i} does not end with its last`);
    for (const p of own) {
      if (p.day < a.from || p.day > a.to) found.push(`${i} lies outside its window`);
      if (a.fit && a.fit[p.day] === 0) found.push(`${i} lies on a day that is not fit`);
    }
    for (const { of, lag } of a.after) {
      const ends = pieces[of]!.map((p) => clock(p) + p.minutes);
      if (ends.length === 0) found.push(`${i} follows ${of}, which is missing`);
      else if (Math.min(...own.map(clock)) < Math.max(...ends) + lag) found.push(`${i} does not wait for ${of}`);
    }
  });
  days.forEach((day, d) => {
    const own = schedule.pieces.filter((p) => p.day === d);
    const places = new Set(own.map((p) => activities[p.activity]!.place));
    const trips = [...places].reduce((sum, place) => sum + problem.tripMinutes[place]!, 0);
    const groups = new Map(own.flatMap((p) => standOf(activities[p.activity]!)));
    if (own.some((p) => p.start < 0 || p.start + p.minutes + trips > day.length)) found.push(`day ${d} is too long`);
    if (!matching([...groups.values()])) found.push(`day ${d} has too few stands`);
    for (const at of own.map((p) => p.start)) {
      const running = own.filter((p) => p.minutes > 0 && p.start <= at && at < p.start + p.minutes);
      capacity.forEach((units, r) => {
        const use = running.reduce((sum, p) => sum + activities[p.activity]!.demand[r]!, 0);
        if (use > units) found.push(`day ${d}: resource ${r} is overused at ${at}`);
      });
    }
  });
  const charging = activities.flatMap((a, i) =>
    a.chargers.length > 0 && pieces[i]!.length > 0
      ? [{ chargers: a.chargers, from: schedule.start[i]!, to: schedule.end[i]! + a.chargeMinutes }]
      : [],
  );
  for (const { from } of charging) {
    const at = charging.filter((c) => c.from <= from && from < c.to);
    if (!matching(at.map((c) => c.chargers))) found.push(`too few chargers at ${from}`);
  }
  return found;
}

function standOf(a: Problem['activities'][number]): [number, readonly number[]][] {
  return a.stands.length > 0 ? [[a.group, a.stands]] : [];
}

/** Whether each can have one of what suits it, none shared. */
function matching(wanted: readonly (readonly number[])[], taken: readonly number[] = []): boolean {
  const [first, ...rest] = wanted;
  if (!first) return true;
  return first.some((s) => !taken.includes(s) && matching(rest, [...taken, s]));
}
