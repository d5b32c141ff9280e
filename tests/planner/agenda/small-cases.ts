import fc from 'fast-check';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';

const DAY = 1440;

/** Up to six steps on up to five days: windows, what follows what, waits overnight, two places, one or two stands. */
export const smallProblem: fc.Arbitrary<Problem> = fc
  .record({
    lengths: fc.array(fc.constantFrom(60, 120, 180, 300), { minLength: 1, maxLength: 5 }),
    stands: fc.integer({ min: 1, max: 2 }),
    trips: fc.constantFrom([0, 0], [0, 15], [10, 20]),
    steps: fc.array(
      fc.record({
        minutes: fc.constantFrom(10, 25, 30, 45, 60, 90, 120),
        from: fc.nat(4),
        span: fc.nat(4),
        group: fc.nat(2),
        place: fc.nat(1),
        stand: fc.boolean(),
        follows: fc.array(fc.record({ of: fc.nat(5), waits: fc.boolean() }), { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ lengths, stands, trips, steps }): Problem => {
    const last = lengths.length - 1;
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
