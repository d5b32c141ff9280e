import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { placeContext } from '../../src/planner/place-context.ts';
import { planSeason } from '../../src/planner/plan.ts';

const HOUSEHOLDS = join(import.meta.dirname, '../households');

/** A household with one machine, which rests from 25 October to 10 April. */
const smallest = (asOf: string) =>
  readFolder(join(HOUSEHOLDS, 'smallest'), {
    asOf,
    procedures: join(import.meta.dirname, '../../content/procedures'),
  }).household!;

/** Days more that are tried for it. */
function tried(asOf: string): number[] {
  const household = smallest(asOf);
  const [machine] = planSeason(household, { asOf }).plan.machines;
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

test('a last use on the day of the first use is no rest, and not tried', () => {
  const asOf = '2026-10-01';
  const { machines, ...household } = smallest(asOf);
  const days = (firstUse: string) => {
    const season = { ...machines[0]!.season, firstUse };
    const { plan } = planSeason({ ...household, machines: [{ ...machines[0]!, season }] }, { asOf });
    return plan.machines[0]!.whatIf.map((trial) => trial.days);
  };
  // Two weeks after 25 October is 8 November.
  expect(days('2026-11-08')).toEqual([7]);
  expect(days('2026-11-09')).toEqual([7, 14]);
});

test.each([
  // One week more ends on the last day of October, the other weeks in November: only they have November's cold.
  ['2026-10-24', [10, 11, 11]],
  // A day later the week's last day, which is one of use, is 1 November.
  ['2026-10-25', [11, 11, 11]],
  // From February on it gets warmer: the coldest night is among the first days, in the month of the planned last day.
  ['2027-02-28', [2, 2, 2]],
])('the coldest night of the days more after %s is of the coldest month that they touch', (lastUse, months) => {
  const asOf = '2026-10-01';
  const household = smallest(asOf);
  const [machine] = household.machines;
  const { typicalC } = placeContext(household.places[0]!, household.seed).outdoors;
  // The valley's mean daily minimum falls from October to January and rises from then on.
  expect(typicalC[9]).toBeGreaterThan(typicalC[10]!);
  expect(typicalC[1]).toBeLessThan(typicalC[2]!);
  const machines = [{ ...machine!, season: { ...machine!.season, lastUse } }];
  const { plan } = planSeason({ ...household, machines }, { asOf });
  expect(plan.machines[0]!.whatIf.map(({ coldestNightC }) => coldestNightC)).toEqual(
    months.map((month) => typicalC[month - 1]),
  );
});
