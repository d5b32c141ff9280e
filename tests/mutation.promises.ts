/** What `npm test` asks of two thousand generated households, asked of a few for every mutant; without looking for a smaller one. */
import fc from 'fast-check';
import { test } from 'vitest';
import { caseArb } from './generated/household.ts';
import { placePool } from './generated/places.ts';
import { libraryNames } from './generated/plan-case.ts';
import { caseFaults } from './generated/run.ts';

test('a few generated households keep every promise of the plan', () => {
  const drawn = caseArb({ ...libraryNames(), pool: placePool(3), machines: 2, wholeOneIn: 1e9 });
  fc.assert(
    fc.property(fc.noShrink(drawn), (one) => {
      const faults = caseFaults(one, false, false);
      if (faults.length > 0) throw new Error(faults[0]);
    }),
    { numRuns: 20, seed: 20261128 },
  );
});
