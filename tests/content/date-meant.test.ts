/** Days written otherwise: what each was meant to be, by the usage of those who write so (ISO 8601; CLDR for the rest). */
import { expect, test } from 'vitest';
import { daysMeant } from '../../src/content/date-meant.ts';

const DAY = '2026-10-25';

test.each([
  // ISO 8601: the basic form, a date with a time, and one with short numbers.
  ['20261025', [DAY]],
  ['2026-10-25T10:00:00Z', [DAY]],
  ['2026-10-25 10:00', [DAY]],
  ['2026-4-5', ['2026-04-05']],
  ['2026/10/25', [DAY]],
  ['2026.10.25', [DAY]],
  // A month over 12 is a day.
  ['2026-25-10', [DAY]],
  ['2026-12-25', ['2026-12-25']],
  ['2026-13-12', ['2026-12-13']],
  // Day first, with points, as most of Europe writes; the point tells which is which.
  ['25.10.2026', [DAY]],
  ['25. 10. 2026', [DAY]],
  ['5.4.2026', ['2026-04-05']],
  ['10.12.2026', ['2026-12-10']],
  // With strokes Britain puts the day first and America the month: only a number over 12 tells.
  ['25/10/2026', [DAY]],
  ['10/25/2026', [DAY]],
  ['25-10-2026', [DAY]],
  ['4/5/2026', ['2026-05-04', '2026-04-05']],
  ['12/12/2026', ['2026-12-12']],
  ['12/13/2026', ['2026-12-13']],
  // In words, either way round.
  ['25 October 2026', [DAY]],
  ['25 Oct 2026', [DAY]],
  ['25. Oct. 2026', [DAY]],
  ['25th october, 2026', [DAY]],
  ['1st May 2026', ['2026-05-01']],
  ['2nd May 2026', ['2026-05-02']],
  ['3rd May 2026', ['2026-05-03']],
  ['October 25, 2026', [DAY]],
  ['Oct 25th 2026', [DAY]],
  ['Oct. 25 2026', [DAY]],
  ['Jan 1, 2026', ['2026-01-01']],
  ['31 December 2026', ['2026-12-31']],
  // Quotes of every kind around it, and spaces.
  [' "2026/10/25" ', [DAY]],
  ['„25.10.2026“', [DAY]],
  ['’25 Oct 2026’', [DAY]],
  ['""2026/10/25""', [DAY]],
] as const)('%j is meant for a day', (text, days) => {
  expect(daysMeant(text)).toEqual(days);
});

test.each([
  'tomorrow',
  '25 Brumaire 2026',
  '2026',
  '2026-10',
  '25.10.26',
  'Oct 2026',
  '25 of October 2026',
  '12026-10-25',
  '2026-10-255',
  'x 25.10.2026',
  '25.10.2026 x',
  '13/14/2026',
  '202610255',
  '',
])('%j is meant for none', (text) => {
  expect(daysMeant(text)).toEqual([]);
});
