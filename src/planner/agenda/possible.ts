import type { Problem } from './problem.ts';

/**
 * Activities that some schedule could give a place to: those that find one when they have all hands, stands and chargers to
 * themselves. What is left out of these found none because of others; the rest finds none whatever the others do.
 * @param problem - activities without a circle, days
 * @returns positions of activities, in order
 */
export function possible(problem: Problem): number[] {
  const { activities, days, tripMinutes } = problem;
  const ends: (number | undefined)[] = [];
  /** When it ends at the earliest; ∞ where it has no place. */
  const endOf = (i: number): number => {
    ends[i] ??= endBehind(
      i,
      Math.max(
        activities[i]!.ready ?? Number.NEGATIVE_INFINITY,
        ...activities[i]!.after.map(({ of, lag }) => endOf(of) + lag),
      ),
    );
    return ends[i];
  };
  const endBehind = (i: number, ready: number): number => {
    const { from, to, fit, place, minutes, splittable } = activities[i]!;
    // Of what may be spread, the last piece may be short.
    const inOneGo = splittable ? 0 : minutes;
    for (let d = Math.max(0, from); d <= to; d++) {
      if (fit && fit[d] !== 1) continue;
      const { start, length } = days[d]!;
      const end = Math.max(start, ready) + inOneGo;
      if (end <= start + length - tripMinutes[place]!) return end;
    }
    return Number.POSITIVE_INFINITY;
  };
  return [...activities.keys()].filter((i) => Number.isFinite(endOf(i)));
}
