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

/** Windows, wet days, what follows what, waits overnight, two places, one or two stands. */
const problems = (mostDays: number, leastSteps: number, mostSteps: number): fc.Arbitrary<Problem> =>
  fc
    .record({
      lengths: fc.array(fc.constantFrom(60, 120, 180, 300), { minLength: 1, maxLength: mostDays }),
      stands: fc.integer({ min: 1, max: 2 }),
      wet: fc.array(fc.nat(mostDays - 1), { maxLength: 2 }),
      trips: fc.constantFrom([0, 0], [0, 15], [10, 20]),
      steps: fc.array(
        fc.record({
          minutes: fc.constantFrom(10, 25, 30, 45, 60, 90, 120),
          from: fc.nat(mostDays - 1),
          span: fc.nat(mostDays - 1),
          group: fc.nat(2),
          place: fc.nat(1),
          stand: fc.boolean(),
          dry: fc.boolean(),
          follows: fc.array(fc.record({ of: fc.nat(mostSteps - 1), waits: fc.boolean() }), { maxLength: 2 }),
        }),
        { minLength: leastSteps, maxLength: mostSteps },
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

/** Up to six steps on up to five days. */
export const smallProblem = problems(5, 1, 6);

/** As many steps as are searched through, on up to eight days. */
export const fullProblem = problems(8, 7, 12);

/** One step more than are searched through: what the lists and the closing of days find. */
export const longerProblem = problems(8, 13, 13);

/** Five steps for one day, of one machine at one place. */
export const singleDay = problems(1, 5, 5).map(
  ({ activities, ...problem }): Problem => ({
    ...problem,
    tripMinutes: [0],
    activities: activities.map((a) => ({
      ...a,
      after: a.after.filter(({ lag }) => lag === 0),
      fit: undefined,
      group: 0,
      place: 0,
      stands: [],
    })),
  }),
);

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
