import fc from 'fast-check';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';
import { plainActivity } from './small-cases.ts';

/** A few steps on up to three days, with waits of minutes and of about a day, one or two pairs of hands, a bench and a way. */
export const waitProblem = (mostSteps: number): fc.Arbitrary<Problem> =>
  fc
    .record({
      hands: fc.integer({ min: 1, max: 2 }),
      lengths: fc.array(fc.constantFrom(60, 90, 120), { minLength: 1, maxLength: 3 }),
      trip: fc.constantFrom(0, 0, 10),
      steps: fc.array(
        fc.record({
          minutes: fc.constantFrom(10, 20, 30, 40),
          bench: fc.nat(1),
          group: fc.nat(1),
          wait: fc.oneof(
            fc.constantFrom(0, 0, 10, 30),
            fc.integer({ min: 134, max: 150 }).map((tens) => tens * 10),
          ),
          to: fc.integer({ min: 0, max: 2 }),
          follows: fc.array(fc.nat(mostSteps - 1), { maxLength: 2 }),
        }),
        { minLength: 1, maxLength: mostSteps },
      ),
    })
    .map(({ hands, lengths, trip, steps }) => ({
      capacity: [hands, 1],
      days: lengths.map((length, d) => ({ start: d * 1440 + 600, length })),
      tripMinutes: [trip],
      activities: steps.map((s, i): Activity => {
        const before = [...new Set(s.follows)].filter((of) => of < i);
        return plainActivity({
          minutes: s.minutes,
          demand: [1, s.bench],
          after: before.map((of) => ({ of, lag: steps[of]!.wait })),
          to: Math.min(s.to, lengths.length - 1),
          group: s.group,
        });
      }),
    }));

/**
 * Four steps whose waits end within the session or last until the next day or the one after it, whatever the order within the
 * session: the search through the days takes one order of each session alone.
 */
export const waitOrNightProblem = waitProblem(4).map(
  ({ activities, ...problem }): Problem => ({
    ...problem,
    activities: activities.map((a) => ({
      ...a,
      after: a.after.map(({ of, lag }) => ({ of, lag: lag < 1340 ? lag : lag < 1430 ? 720 : 2000 })),
    })),
  }),
);
