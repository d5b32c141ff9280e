import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { addDays, addMonths, dayNumber, daysBetween, eachDay, isoOfDay, weekdayOf } from '../../src/planner/dates.ts';

const day = fc.integer({ min: -20_000, max: 60_000 });
const luxon = (iso: string) => DateTime.fromISO(iso, { zone: 'utc' });

test('days and months are added as luxon adds them, leap years included', () => {
  fc.assert(
    fc.property(day, fc.integer({ min: -1500, max: 1500 }), fc.integer({ min: -60, max: 60 }), (d, days, months) => {
      const iso = isoOfDay(d);
      expect(addDays(iso, days)).toBe(luxon(iso).plus({ days }).toISODate());
      expect(addMonths(iso, months)).toBe(luxon(iso).plus({ months }).toISODate());
      expect(weekdayOf(iso)).toBe(luxon(iso).weekdayLong?.toLowerCase());
      expect(daysBetween(iso, addDays(iso, days))).toBe(days);
    }),
  );
});

test('every day of a span is listed once, both ends included', () => {
  expect(eachDay('2028-02-27', '2028-03-01')).toEqual(['2028-02-27', '2028-02-28', '2028-02-29', '2028-03-01']);
  expect(eachDay('2028-03-01', '2028-02-27')).toEqual([]);
});

test('a text that is no date is refused in words', () => {
  for (const text of ['', '2026-1-1', '26-10-25', 'soon', '2026-xx-01']) {
    expect(() => dayNumber(text)).toThrow(/expected a date such as/);
  }
});

// ISO 8601, the Gregorian calendar: every fourth year, but of the full centuries every fourth alone.
test('February has 29 days in 2000 and 2400, 28 in 1900 and 2100', () => {
  const after = (year: number) => addMonths(`${year}-01-31`, 1);
  expect([2000, 2400, 2028, 1900, 2100, 2027].map(after)).toEqual([
    '2000-02-29',
    '2400-02-29',
    '2028-02-29',
    '1900-02-28',
    '2100-02-28',
    '2027-02-28',
  ]);
});
