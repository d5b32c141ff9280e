/** The search for a day with room enough, against a walk through the days. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FreeTree } from '../../../src/planner/agenda/free-tree.ts';

const minutes = fc.integer({ min: -1, max: 9 });

test('the next day that has room is the first one that a walk through the days comes to', () => {
  const changes = fc.array(fc.tuple(fc.nat(19), minutes), { maxLength: 6 });
  fc.assert(
    fc.property(
      fc.array(minutes, { maxLength: 20 }),
      changes,
      fc.nat(40),
      fc.integer({ min: 0, max: 9 }),
      (free, set, from, asked) => {
        const days = [...free];
        const tree = new FreeTree(days);
        for (const [day, left] of set.filter(([d]) => d < days.length)) {
          days[day] = left;
          tree.set(day, left);
        }
        expect(tree.next(from, asked)).toBe(days.findIndex((left, d) => d >= from && left >= asked));
      },
    ),
    { numRuns: 500 },
  );
});
