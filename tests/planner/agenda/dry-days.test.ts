/** Days for washing, from monthly figures that are the same all year: no curve through them can be anything else. */
import { expect, test } from 'vitest';
import { dryDay, usuallyDryAndWarm } from '../../../src/planner/agenda/dry-days.ts';
import type { Climate } from '../../../src/planner/climate/types.ts';
import { dayNumber } from '../../../src/planner/dates.ts';
import { place } from '../fluids/fixture.ts';

const months = (value: number) => Array.from({ length: 12 }, () => value);

function climate(maxC: number[], precipMm?: number[]): Climate {
  const { climate: of } = place();
  if (of.kind !== 'normals') throw new RangeError('expected normals');
  const normals = { ...of.normals, maxC, meanC: maxC.map((t) => t - 5), minC: maxC.map((t) => t - 10) };
  return { ...of, normals: precipMm ? { ...normals, precipMm } : normals };
}

const isUsual = (of: Climate, date: string) => usuallyDryAndWarm(of)(dayNumber(date));

test('a day is warm above 5 °C', () => {
  expect(isUsual(climate(months(5.1)), '2026-07-15')).toBe(true);
  expect(isUsual(climate(months(4.9)), '2026-07-15')).toBe(false);
});

test('a month is dry whose rain, at 6 mm a day, leaves two days of five without', () => {
  // June has 30 days: 18 of them wet are 108 mm; January has 31: 18.6 and 111.6 mm; February 28: 16.8 and 100.8 mm.
  const warm = months(15);
  const dry = (month: number, mm: number, date: string) =>
    isUsual(
      climate(
        warm,
        months(0).map((_, m) => (m === month ? mm : 0)),
      ),
      date,
    );
  expect(dry(5, 107.9, '2026-06-30')).toBe(true);
  expect(dry(5, 108.1, '2026-06-01')).toBe(false);
  expect(dry(0, 111.5, '2027-01-31')).toBe(true);
  expect(dry(0, 111.7, '2027-01-31')).toBe(false);
  expect(dry(1, 100.7, '2028-02-29')).toBe(true);
  expect(dry(1, 100.9, '2028-02-29')).toBe(false);
  expect(dry(11, 500, '2026-12-31')).toBe(false);
  expect(dry(11, 500, '2026-11-30')).toBe(true);
});

test('the day is one of the date, whatever the year', () => {
  const of = climate(months(0).map((_, m) => (m >= 5 && m <= 7 ? 20 : -20)));
  for (const year of [2026, 2027, 2028]) {
    expect([`${year}-01-15`, `${year}-07-15`, `${year}-12-31`].map((date) => isUsual(of, date))).toEqual([
      false,
      true,
      false,
    ]);
  }
  expect(isUsual(of, '2028-02-29')).toBe(false);
});

test('its warmth is said in the units of the household', () => {
  expect([dryDay('metric'), dryDay('us')]).toEqual(['dry day above 5 °C', 'dry day above 41 °F']);
});
