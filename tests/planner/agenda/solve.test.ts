import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastSessions } from '../../../src/planner/agenda/lower-bound.ts';
import type { Problem, Schedule } from '../../../src/planner/agenda/problem.ts';
import { solve } from '../../../src/planner/agenda/solve.ts';
import { faults } from './check.ts';
import { bestOfOrders, exhaustive } from './exhaustive.ts';
import { largeProblem } from './large-cases.ts';
import { fullProblem, plainActivity, smallProblem, without } from './small-cases.ts';
import { waitOrNightProblem, waitProblem } from './wait-cases.ts';

const costOf = (problem: Problem, { missing, sessions }: Schedule) => ({
  missing: missing.length,
  missingMinutes: missing.reduce((sum, i) => sum + problem.activities[i]!.minutes, 0),
  sessions,
});

test.each([
  ['a few', smallProblem, 400],
  ['as many as are searched through', fullProblem, 100],
])(
  'of %s steps as few are left out, and as few sessions held, as any assignment to days allows',
  (_, cases, numRuns) => {
    fc.assert(
      fc.property(cases, (problem) => {
        const schedule = solve(problem, 1);
        expect(faults(problem, schedule)).toEqual([]);
        expect(costOf(problem, schedule)).toEqual(exhaustive(problem));
        expect(boundOf(problem, schedule)).toBeLessThanOrEqual(exhaustive(without(problem, schedule.missing)).sessions);
      }),
      { numRuns },
    );
  },
);

test('with soaks to wait for and a bench to share, no order on any choice of days does better', () => {
  fc.assert(
    fc.property(waitOrNightProblem, (problem) => {
      const schedule = solve(problem, 1);
      expect(faults(problem, schedule)).toEqual([]);
      expect(costOf(problem, schedule)).toEqual(bestOfOrders(problem));
    }),
    { numRuns: 300 },
  );
});

test('waits of minutes and of a day are kept when sessions are made shorter', () => {
  fc.assert(
    fc.property(waitProblem(9), (problem) => {
      expect(faults(problem, solve(problem, 1))).toEqual([]);
      expect(faults(problem, solve(problem, 1, true))).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

test('on large cases every rule is kept, nothing is lost, and the same comes out again', () => {
  fc.assert(
    fc.property(largeProblem, fc.integer({ min: 1, max: 9 }), (problem, seed) => {
      const schedule = solve(problem, seed);
      expect(faults(problem, schedule)).toEqual([]);
      expect(new Set(schedule.pieces.map((p) => p.day)).size).toBe(schedule.sessions);
      expect(schedule.sessions).toBeGreaterThanOrEqual(boundOf(problem, schedule));
      expect(solve(problem, seed)).toEqual(schedule);
    }),
    { numRuns: 60 },
  );
});

test('steps that wait for one another are refused', () => {
  const activities = [1, 0].map((of) => plainActivity({ to: 0, after: [{ of, lag: 0 }] }));
  const problem = { capacity: [1, 1], days: [{ start: 0, length: 60 }], tripMinutes: [0], activities };
  expect(() => solve(problem, 1)).toThrow(/2 activities that wait for one another/);
});

/** Sessions that what found a place cannot do without. */
function boundOf(problem: Problem, { day }: Schedule): number {
  return leastSessions(
    problem,
    [...problem.activities.keys()].filter((i) => day[i]! >= 0),
  );
}
