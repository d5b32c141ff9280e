import { expect, test } from 'vitest';
import { dateOfDayIndex, dayIndexOf } from '../../../src/planner/climate/index.ts';

test('the year runs from 0 to 364, in leap years too', () => {
  expect(dayIndexOf('2027-01-01')).toBe(0);
  expect(dayIndexOf('2027-12-31')).toBe(364);
  expect(dayIndexOf('2028-12-31')).toBe(364);
  expect(dayIndexOf('2028-03-01')).toBe(dayIndexOf('2027-03-01'));
});

test('29 February is taken as 28 February', () => {
  expect(dayIndexOf('2028-02-29')).toBe(dayIndexOf('2028-02-28'));
});

test('a date comes back from its place in the year', () => {
  for (let day = 0; day < 365; day++) expect(dayIndexOf(dateOfDayIndex(day, 2028))).toBe(day);
});

test('what is no date is refused with its text', () => {
  expect(() => dayIndexOf('2027-02-30')).toThrow('2027-02-30');
  expect(() => dayIndexOf('soon')).toThrow('soon');
  expect(() => dateOfDayIndex(365, 2027)).toThrow('365');
  expect(() => dateOfDayIndex(Number.NaN, 2027)).toThrow('NaN');
});
