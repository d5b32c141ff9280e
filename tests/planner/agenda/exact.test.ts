import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Cost, EXACT_UP_TO, exactSchedule } from '../../../src/planner/agenda/exact.ts';
import type { Activity } from '../../../src/planner/agenda/problem.ts';
import { faults } from './check.ts';
import { bestOfOrders, exhaustive } from './exhaustive.ts';
import { plainActivity, smallProblem } from './small-cases.ts';
import { waitOrNightProblem } from './wait-cases.ts';

test('what is found is the best there is, and nothing is where that is known', () => {
  fc.assert(
    fc.property(smallProblem, (problem) => {
      const { missing, missingMinutes, sessions } = exhaustive(problem);
      expect(exactSchedule(problem, [missing, missingMinutes, sessions])).toBeUndefined();
      const worse: Cost[] = [
        [missing, missingMinutes, sessions + 1],
        [missing, missingMinutes + 1, 0],
        [missing + 1, 0, 0],
        [problem.activities.length + 1, 0, 0],
      ];
      for (const known of worse) {
        const found = exactSchedule(problem, known)!;
        expect(faults(problem, found)).toEqual([]);
        const left = found.missing.reduce((sum, i) => sum + problem.activities[i]!.minutes, 0);
        expect([found.missing.length, left, found.sessions]).toEqual([missing, missingMinutes, sessions]);
      }
      const better: Cost[] = [
        [missing, missingMinutes, sessions - 1],
        [missing, missingMinutes - 1, 99],
        [missing - 1, 9999, 99],
      ];
      for (const known of better) expect(exactSchedule(problem, known)).toBeUndefined();
    }),
    { numRuns: 100 },
  );
});

test('with waits and a second pair of hands it finds what the best order on the best choice of days gives', () => {
  fc.assert(
    fc.property(waitOrNightProblem, (problem) => {
      const { missing, missingMinutes, sessions } = bestOfOrders(problem);
      const found = exactSchedule(problem, [problem.activities.length + 1, 0, 0])!;
      expect(faults(problem, found)).toEqual([]);
      const left = found.missing.reduce((sum, i) => sum + problem.activities[i]!.minutes, 0);
      expect([found.missing.length, left, found.sessions]).toEqual([missing, missingMinutes, sessions]);
    }),
    { numRuns: 300 },
  );
});

test('it is asked no more than it can search through, and nothing that is spread over days or charges', () => {
  const days = [{ start: 600, length: 240 }];
  const asked = (activities: Activity[]) =>
    exactSchedule({ capacity: [1, 1], days, tripMinutes: [0], activities }, [99, 0, 0]);
  const some = (count: number) => Array.from({ length: count }, () => plainActivity({ to: 0 }));
  expect(asked(some(EXACT_UP_TO))?.sessions).toBe(1);
  expect(asked(some(EXACT_UP_TO + 1))).toBeUndefined();
  expect(asked([...some(2), plainActivity({ to: 0, splittable: true })])).toBeUndefined();
  expect(asked([...some(2), plainActivity({ to: 0, chargers: [0] })])).toBeUndefined();
});
