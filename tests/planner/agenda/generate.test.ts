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

const trial = fc
  .tuple(largeProblem, fc.array(fc.nat(20), { minLength: 7, maxLength: 11 }), fc.array(fc.nat(24), { maxLength: 5 }))
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
