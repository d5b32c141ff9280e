import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { planSeason } from '../../src/planner/plan.ts';

const HOUSEHOLDS = join(import.meta.dirname, '../households');

/** Days more that are tried for the one machine of a household that rests from 25 October to 10 April. */
function tried(asOf: string): number[] {
  const { household } = readFolder(join(HOUSEHOLDS, 'smallest'), {
    asOf,
    procedures: join(import.meta.dirname, '../../content/procedures'),
  });
  const [machine] = planSeason(household!, { asOf }).plan.machines;
  expect(machine!.season).toMatchObject({ lastUse: '2026-10-25', firstUse: '2027-04-10' });
  return machine!.whatIf.map((trial) => trial.days);
}

test('one, two and four weeks more are tried while the machine is in use', () => {
  expect(tried('2026-10-01')).toEqual([7, 14, 28]);
  expect(tried('2026-11-01')).toEqual([7, 14, 28]);
});

test('a longer season that would be over already is not tried', () => {
  expect(tried('2026-11-02')).toEqual([14, 28]);
  expect(tried('2026-11-22')).toEqual([28]);
  expect(tried('2026-11-23')).toEqual([]);
});
