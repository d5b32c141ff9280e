/** Which rest a day belongs to: by the definition in the docstrings, worked out on the calendar. */
import { expect, test } from 'vitest';
import { isOfSeason, recordSeason, restKey } from '../../src/planner/rest-key.ts';
import { restLength } from '../../src/planner/rest-length.ts';

test.each([
  // The middle of 25 October and 10 April is 16 January.
  ['a northern winter', '2026-10-25', '2027-04-10', '2026-11'],
  // Middle 1 December.
  ['a rest that is over before the new year', '2026-11-01', '2026-12-31', '2026-11'],
  // Middle 17 July.
  ['a southern winter', '2026-05-15', '2026-09-20', '2026-05'],
  // Middle 30 April and 1 May: 181 days from 30 January are 30 July.
  ['the last day of April in the middle', '2026-04-20', '2026-05-10', '2025-11'],
  ['the first day of May in the middle', '2026-04-21', '2026-05-11', '2026-05'],
  ['the last day of October in the middle', '2026-10-21', '2026-11-10', '2026-05'],
  ['the first day of November in the middle', '2026-10-22', '2026-11-11', '2026-11'],
])('%s', (_, lastUse, firstUse, key) => {
  expect(restKey({ lastUse, firstUse })).toBe(key);
});

test.each([
  // 365 − 167 = 198 days in use; half of that is 99, and 90 are the most: 27 July.
  ['half a year', '2026-10-25', '2027-04-10', '2026-07-27'],
  // 365 − 265 = 100 days in use; half of that is 50: 5 September.
  ['most of the year', '2026-10-25', '2027-07-17', '2026-09-05'],
  // 365 − 350 = 15 days; half is less than a fortnight: 11 October.
  ['nearly all of it', '2026-10-25', '2027-10-10', '2026-10-11'],
  ['longer than a year', '2026-10-25', '2028-10-25', '2026-10-11'],
])(
  'a record that names no season is of a rest of %s from half of the use before it on',
  (_, lastUse, firstUse, from) => {
    const season = recordSeason({ lastUse, firstUse });
    expect(season.from).toBe(from);
    expect(isOfSeason({ date: from }, season)).toBe(true);
    expect(isOfSeason({ date: '2026-07-26' }, season)).toBe(false);
  },
);

test('a record that names its season is of that one, whatever its day', () => {
  const season = recordSeason({ lastUse: '2026-10-25', firstUse: '2027-04-10' });
  expect(isOfSeason({ date: '2020-01-01', season: '2026-11' }, season)).toBe(true);
  expect(isOfSeason({ date: '2026-11-01', season: '2025-11' }, season)).toBe(false);
});

test.each([
  ['2026-10-25', '2026-11-21', 'short'],
  ['2026-10-25', '2026-11-22', 'season'],
  ['2026-10-25', '2027-10-25', 'season'],
  ['2026-10-25', '2027-10-26', 'long'],
])('from %s to %s the rest is %s: under 28 days, over 365', (lastUse, firstUse, length) => {
  expect(restLength({ lastUse, firstUse })).toBe(length);
});
