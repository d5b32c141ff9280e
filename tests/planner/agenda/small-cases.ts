import fc from 'fast-check';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';

const DAY = 1440;

/** Ten minutes of one pair of hands on any of the first ten days, but for what is given. */
export const plainActivity = (own: Partial<Activity>): Activity => ({
  minutes: 10,
  demand: [1, 0],
  after: [],
  from: 0,
  to: 9,
  group: 0,
  stands: [],
  chargers: [],
  chargeMinutes: 0,
  place: 0,
  splittable: false,
  ...own,
});

/** Up to six steps on up to five days: windows, wet days, what follows what, waits overnight, two places, one or two stands. */
export const smallProblem: fc.Arbitrary<Problem> = fc
  .record({
    lengths: fc.array(fc.constantFrom(60, 120, 180, 300), { minLength: 1, maxLength: 5 }),
    stands: fc.integer({ min: 1, max: 2 }),
    wet: fc.array(fc.nat(4), { maxLength: 2 }),
    trips: fc.constantFrom([0, 0], [0, 15], [10, 20]),
    steps: fc.array(
      fc.record({
        minutes: fc.constantFrom(10, 25, 30, 45, 60, 90, 120),
        from: fc.nat(4),
        span: fc.nat(4),
        group: fc.nat(2),
        place: fc.nat(1),
        stand: fc.boolean(),
        dry: fc.boolean(),
        follows: fc.array(fc.record({ of: fc.nat(5), waits: fc.boolean() }), { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ lengths, stands, wet, trips, steps }): Problem => {
    const last = lengths.length - 1;
    const fit = Uint8Array.from(lengths, (_, d) => (wet.includes(d) ? 0 : 1));
    return {
      capacity: [1, 1],
      days: lengths.map((length, d) => ({ start: d * DAY + 600, length })),
      tripMinutes: trips,
      activities: steps.map((s, i): Activity => {
        const from = Math.min(s.from, last);
        const after = new Map(s.follows.filter((f) => f.of < i).map((f) => [f.of, f.waits ? 600 : 0]));
        return {
          minutes: s.minutes,
          demand: [1, 0],
          after: [...after].map(([of, lag]) => ({ of, lag })),
          from,
          to: Math.min(last, from + s.span),
          fit: s.dry ? fit : undefined,
          group: s.group,
          stands: s.stand ? [...Array(stands).keys()] : [],
          chargers: [],
          chargeMinutes: 0,
          place: s.place,
          splittable: false,
        };
      }),
    };
  });

/** The problem without some of its activities: the others no longer wait for them. */
export function without(problem: Problem, left: readonly number[]): Problem {
  const kept = [...problem.activities.keys()].filter((i) => !left.includes(i));
  return {
    ...problem,
    activities: kept.map((i) => {
      const a = problem.activities[i]!;
      const after = a.after.filter(({ of }) => kept.includes(of));
      return { ...a, after: after.map(({ of, lag }) => ({ of: kept.indexOf(of), lag })) };
    }),
  };
}
