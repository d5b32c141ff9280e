import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';
import { solve } from '../../../src/planner/agenda/solve.ts';
import { byMinutes, ordersOf } from './by-minutes.ts';
import { faults } from './check.ts';
import { plainActivity } from './small-cases.ts';

/** Up to five steps of one long session with soaks and drains to wait for, one or two pairs of hands and a bench. */
const oneDay: fc.Arbitrary<Problem> = fc
  .record({
    hands: fc.integer({ min: 1, max: 2 }),
    start: fc.constantFrom(0, 2040),
    steps: fc.array(
      fc.record({
        minutes: fc.constantFrom(5, 10, 15, 30),
        hands: fc.constantFrom(1, 1, 1, 2),
        bench: fc.nat(1),
        ready: fc.constantFrom(undefined, undefined, 20),
        wait: fc.constantFrom(0, 0, 10, 30),
        follows: fc.array(fc.nat(4), { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ hands, start, steps }) => ({
    capacity: [hands, 1],
    days: [{ start, length: 1000 }],
    tripMinutes: [0],
    activities: steps.map((s, i): Activity => {
      const before = [...new Set(s.follows)].filter((of) => of < i);
      return plainActivity({
        minutes: s.minutes,
        demand: [Math.min(hands, s.hands), s.bench],
        after: before.map((of) => ({ of, lag: steps[of]!.wait })),
        ready: s.ready === undefined ? undefined : start + s.ready,
        to: 0,
      });
    }),
  }));

/** Some order puts everything where the shortest session has it: R. Kolisch, European Journal of Operational Research 90 (1996) 320–333. */
function leastMinutes(problem: Problem): number {
  const open = new Uint8Array([1]);
  const lengths = [...ordersOf(problem)].map((order) =>
    Math.max(...byMinutes(problem, order, open).work.map((w) => w.start + w.minutes)),
  );
  return Math.min(...lengths);
}

const minutesOf = ({ pieces }: { pieces: readonly { start: number; minutes: number }[] }) =>
  Math.max(...pieces.map((p) => p.start + p.minutes));

test('of a hundred sessions of a few steps no more than three could be shorter, whatever the order', () => {
  const drawn = fc.sample(oneDay, { numRuns: 200, seed: 20261129 });
  const longer = drawn.filter((problem) => {
    const schedule = solve(problem, 1);
    expect(faults(problem, schedule)).toEqual([]);
    expect(schedule.missing).toEqual([]);
    const least = leastMinutes(problem);
    expect(minutesOf(schedule)).toBeGreaterThanOrEqual(least);
    return minutesOf(schedule) > least;
  });
  expect(longer.length).toBeLessThanOrEqual(6);
});

test('work goes into the waits, though what is waited for comes later by it', () => {
  // 30 min go into the wait of 20, and 20 into that of 10: no minute of 90 is idle. The other way round one would be.
  const behind = (of: number, lag: number) => plainActivity({ to: 0, after: [{ of, lag }] });
  const some = (minutes: number) => plainActivity({ to: 0, minutes });
  const other = { ...some(20), group: 1 };
  const activities = [some(10), some(30), behind(0, 20), behind(2, 10), other, behind(3, 0)];
  const problem = { capacity: [1, 1], days: [{ start: 600, length: 600 }], tripMinutes: [0], activities };
  expect(minutesOf(solve(problem, 1))).toBe(90);
});

test('two pairs of hands are done together: the long step for the one, the short ones for the other', () => {
  const activities = [10, 10, 40].map((minutes) => plainActivity({ to: 0, minutes }));
  const problem = { capacity: [2, 1], days: [{ start: 600, length: 600 }], tripMinutes: [0], activities };
  expect(minutesOf(solve(problem, 1))).toBe(40);
});
