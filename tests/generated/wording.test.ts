import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Household } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { slipsIn } from '../planner/whole/slips.ts';
import { caseArb } from './household.ts';
import { placePool } from './places.ts';
import { libraryNames, planCase } from './plan-case.ts';

/** Fields of a household that hold a user's own words. */
const FREE = new Set([
  'name',
  'what',
  'text',
  'caution',
  'cautions',
  'condition',
  'head',
  'note',
  'where',
  'why',
  'supplier',
]);

/** The same household with names that are words: what drawn names do to a text is another test's matter. */
function plainlyNamed(household: Household): Household {
  const { procedures, ...own } = household;
  let n = 0;
  const plain = (value: unknown, field = ''): unknown => {
    if (typeof value === 'string') return FREE.has(field) ? `Thing ${(n++ % 90) + 10}` : value;
    if (Array.isArray(value)) return value.map((one) => plain(one, field));
    if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, plain(one, name)]));
  };
  return { ...(plain(own) as Omit<Household, 'procedures'>), locale: 'en-GB', procedures };
}

test('every text of generated plans is whole', () => {
  const cases = fc.sample(caseArb({ ...libraryNames(), pool: placePool(6), machines: 1, wholeOneIn: 1e9 }), {
    numRuns: 30,
    seed: 20261128,
  });
  const slips = cases.flatMap((drawn) => {
    const planned = planCase(drawn);
    return 'result' in planned
      ? slipsIn(planSeason(plainlyNamed(planned.household), { asOf: drawn.asOf, quick: true }).plan)
      : [];
  });
  expect([...new Set(slips)]).toEqual([]);
});
