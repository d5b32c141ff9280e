import fc from 'fast-check';
import { expect, test } from 'vitest';
import { generate, generateWithin } from '../../../src/planner/agenda/generate.ts';
import type { Problem, Schedule } from '../../../src/planner/agenda/problem.ts';
import { byMinutes } from './by-minutes.ts';
import { largeProblem } from './large-cases.ts';
import { plainActivity } from './small-cases.ts';

/** The activities in an order drawn by chance, each behind those that it follows. */
function ordered({ activities }: Problem, urgency: readonly number[]): number[] {
  const left = [...activities.keys()].sort(
    (a, b) => urgency[a % urgency.length]! - urgency[b % urgency.length]! || a - b,
  );
  const order: number[] = [];
  while (left.length > 0) {
    const next = left.findIndex((i) => activities[i]!.after.every(({ of }) => order.includes(of)));
    order.push(...left.splice(next, 1));
  }
  return order;
}

/** Half of its long jobs may be spread over several sessions. */
const withLongJobs = ({ activities, ...problem }: Problem): Problem => ({
  ...problem,
  activities: activities.map((a, i) => (a.minutes >= 90 && i % 2 === 0 ? { ...a, splittable: true } : a)),
});

const trial = fc
  .tuple(
    fc.oneof(largeProblem, largeProblem.map(withLongJobs)),
    fc.array(fc.nat(20), { minLength: 7, maxLength: 11 }),
    fc.array(fc.nat(24), { maxLength: 5 }),
  )
  .map(([problem, urgency, closed]) => ({
    problem,
    order: ordered(problem, urgency),
    open: Uint8Array.from(problem.days, (_, d) => (closed.includes(d) ? 0 : 1)),
  }));

test('each activity begins at the first minute at which those placed before it let it', () => {
  fc.assert(
    fc.property(trial, ({ problem, order, open }) => {
      const schedule = generate(problem, order, open);
      const { work, missing } = byMinutes(problem, order, open);
      expect(schedule.pieces).toEqual(work);
      expect(schedule.missing).toEqual(missing);
      expect(schedule.sessions).toBe(new Set(work.map((w) => w.day)).size);
      expect(timesOf(schedule)).toEqual(
        problem.activities.map((_, i) => {
          const own = work.filter((w) => w.activity === i);
          const clock = own.map((w) => problem.days[w.day]!.start + w.start);
          return own.length === 0
            ? { day: -1, start: Number.NaN, end: Number.NaN }
            : { day: own[0]!.day, start: clock[0], end: clock.at(-1)! + own.at(-1)!.minutes };
        }),
      );
    }),
    { numRuns: 150 },
  );
});

test('a trial ends without a schedule where it would leave out more than is known to be enough, and only there', () => {
  fc.assert(
    fc.property(trial, fc.nat(20), fc.nat(1500), ({ problem, order, open }, most, minutes) => {
      const schedule = generate(problem, order, open);
      const leftOut = schedule.missing.reduce((sum, i) => sum + problem.activities[i]!.minutes, 0);
      const own = schedule.missing.length;
      const isEnough = (n: number, m: number) => own < n || (own === n && leftOut <= m);
      for (const [n, m] of [
        [most, minutes],
        [own, leftOut],
        [own, Math.max(0, leftOut - 1)],
        [Math.max(0, own - 1), leftOut],
        [own + 1, 0],
      ] as const)
        expect(generateWithin(problem, order, open, [n, m])).toEqual(isEnough(n, m) ? schedule : undefined);
    }),
    { numRuns: 60 },
  );
});

const timesOf = ({ day, start, end }: Schedule) => [...day].map((d, i) => ({ day: d, start: start[i], end: end[i] }));

test('a soak that takes no hands, and is longer than the session, shows nothing of who has hands', () => {
  const activities = [
    plainActivity({ to: 0 }),
    plainActivity({ to: 0, minutes: 200, demand: [0, 1] }),
    plainActivity({ to: 0 }),
  ];
  const problem = { capacity: [1, 1], days: [{ start: 600, length: 120 }], tripMinutes: [0], activities };
  const { pieces, missing } = generate(problem, [0, 1, 2]);
  expect(pieces.map((p) => [p.activity, p.start])).toEqual([
    [0, 0],
    [2, 10],
  ]);
  expect(missing).toEqual([1]);
});

test('less than half an hour is worth no beginning of a long job, unless that is all that is left of it', () => {
  // What it waits for is over 20 min before the end of the first session.
  const days = [0, 1, 2].map((d) => ({ start: d * 1440 + 600, length: 120 }));
  const pieces = (minutes: number, lag: number) => {
    const long = plainActivity({ to: 2, minutes, splittable: true, after: [{ of: 0, lag }] });
    const problem = { capacity: [1, 1], days, tripMinutes: [0], activities: [plainActivity({ to: 2 }), long] };
    return generate(problem, [0, 1])
      .pieces.slice(1)
      .map((p) => [p.day, p.start, p.minutes]);
  };
  expect(pieces(150, 90)).toEqual([
    [1, 0, 120],
    [2, 0, 30],
  ]);
  expect(pieces(130, 90)).toEqual([
    [1, 0, 120],
    [2, 0, 10],
  ]);
  expect(pieces(150, 80)).toEqual([
    [0, 90, 30],
    [1, 0, 120],
  ]);
});
