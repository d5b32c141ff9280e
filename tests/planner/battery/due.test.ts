/** By when a battery is due that was read: nobody could know before the reading what it teaches. */
import { expect, test } from 'vitest';
import { planBatteries } from '../../../src/planner/battery/index.ts';
import type { Reading } from '../../../src/planner/household.ts';
import { battery, COLD_LOW, contexts, household, machine, ranged, sineStore } from './world.ts';

const MILD = { store: sineStore(10, 6, 2), low: { ...COLD_LOW, designC: COLD_LOW.designC.map(() => 3) } };
const SEASON = { lastUse: '2026-10-18', firstUse: '2027-03-28', proposed: false, reasons: [] };
const read = (date: string, volts: number): Reading => ({ date, volts, temperatureC: 26.7, restedH: 200 });

function planned(readings: Reading[], asOf: string, loss = ranged(3, 1.5, 5)) {
  const own = battery('flooded-calcium', 9, { care: 'visits', selfDischargePctPerMonth: loss });
  const charged = [{ date: '2026-10-25', toPct: 100 }];
  const moth = machine('Moth', 'garage', { battery: own, season: SEASON, readings, charged });
  const home = household([moth]);
  const found = planBatteries(home, asOf, contexts(home, MILD.store, MILD.low));
  return { ...found, plan: found.plans.get('Moth')! };
}

// 12.24 V at 26.7 °C is half charged (state-of-charge table by temperature); charged full on 25 October, 3 % a month would leave 90 %.
test('a low reading calls for a charge from its day on, and blames nobody for the weeks before it', () => {
  const { plan, warnings } = planned([read('2027-01-09', 12.24)], '2027-01-10');
  expect(plan.calibration!.multiplier).toBeGreaterThan(4);
  expect(plan.charges[0]).toMatchObject({
    date: '2027-01-10',
    earliest: '2027-01-09',
    expected: '2027-01-09',
    why: 'It read 12.24 V on 9 January 2027 (about 50 %): it is to be charged at 75 %.',
  });
  const texts = warnings.map(({ text }) => text);
  expect(texts.filter((text) => /was due|none is logged/.test(text))).toEqual([]);
  expect(texts).toContain("Moth's battery read 12.24 V on 9 January 2027 (about 50 %): charge it on 10 January 2027.");
});

test('what fell due by the table before the reading was due then, whatever was read since', () => {
  // 15 % a month at the most, at 20 °C, some 8 % in this store: a quarter is gone in about three months, before the reading.
  const { plan } = planned([read('2027-03-06', 12.24)], '2027-03-07', ranged(12, 10, 24));
  expect(plan.charges[0]!.earliest < '2027-03-06').toBe(true);
});

test('of two low readings the first is the day', () => {
  const { plan } = planned([read('2027-01-02', 12.3), read('2027-01-09', 12.24)], '2027-01-10');
  expect(plan.charges[0]!.earliest).toBe('2027-01-02');
});
