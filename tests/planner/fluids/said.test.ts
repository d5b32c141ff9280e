/** What is said of service items and brake fluid, case by case. */
import { expect, test } from 'vitest';
import { BRAKE_FLUIDS, brakeFluidText } from '../../../src/planner/fluids/brake-fluid.ts';
import { dueServices } from '../../../src/planner/fluids/due.ts';
import type { Machine, ServiceItem } from '../../../src/planner/household.ts';
import { machine } from './fixture.ts';

const item = (over: Partial<ServiceItem>): ServiceItem =>
  ({ id: 'filter', what: 'Air filter', interval: {}, minutes: 20, assemblies: [], ...over }) as ServiceItem;

/** The fixture rests from 25 October 2026 to 10 April 2027. */
function due(over: Partial<ServiceItem>, own: Partial<Machine> = {}, asOf = '2026-10-01') {
  return dueServices(machine({ ...own, services: [item(over)] }), asOf, { locale: 'en-GB', units: 'us' })[0]!;
}
const months = (n: number, date: string): Partial<ServiceItem> => ({ interval: { months: n }, lastDone: { date } });

test.each<[string, ReturnType<typeof due>, Partial<ReturnType<typeof due>>]>([
  ['no interval', due({}), { by: 'unknown', pulledIn: false, text: 'No interval is given.' }],
  [
    'an interval and no day',
    due({ interval: { months: 12 } }),
    {
      by: 'unknown',
      pulledIn: true,
      text: 'Nobody knows when it was last done: do it at this lay-up and write the day down.',
    },
  ],
  [
    'a return that was seen, and no day',
    due({ observedMonths: 8 }),
    {
      by: 'unknown',
      pulledIn: true,
      text: 'Nobody knows when it was last done: do it at this lay-up and write the day down.',
    },
  ],
  [
    'a day before the plan',
    due(months(12, '2025-09-15')),
    {
      due: '2026-09-15',
      by: 'calendar',
      pulledIn: true,
      text: 'Overdue: 12 months after it was last done. Done at this lay-up.',
    },
  ],
  [
    'the day of the plan',
    due(months(1, '2026-09-01')),
    { due: '2026-10-01', text: 'Overdue: 1 month after it was last done. Done at this lay-up.' },
  ],
  [
    'the day after it',
    due(months(1, '2026-09-02')),
    { text: 'Due 2 October 2026: 1 month after it was last done. Done at this lay-up.' },
  ],
  [
    'the day before first use',
    due(months(12, '2026-04-09')),
    { due: '2027-04-09', text: 'Due 9 April 2027: 12 months after it was last done. Done at this lay-up.' },
  ],
  [
    'the day of first use',
    due(months(12, '2026-04-10')),
    {
      text: 'Due 10 April 2027: 12 months after it was last done. It would fall into next season, so it is done at this lay-up.',
    },
  ],
  [
    'the season after next',
    due(months(36, '2026-04-10')),
    { due: '2029-04-10', pulledIn: false, text: 'Due 10 April 2029: 36 months after it was last done.' },
  ],
  [
    'an early return',
    due({ ...months(24, '2026-02-01'), observedMonths: 8 }),
    {
      due: '2026-10-01',
      by: 'observed',
      text: 'Overdue: it came back after 8 months, so that is its own interval. Done at this lay-up.',
    },
  ],
  [
    'a return as late as the interval',
    due({ ...months(24, '2026-02-01'), observedMonths: 24 }),
    { by: 'calendar', due: '2028-02-01' },
  ],
  ['a return of nothing', due({ ...months(24, '2026-02-01'), observedMonths: 0 }), { by: 'calendar' }],
  [
    'a return alone',
    due({ observedMonths: 8, lastDone: { date: '2026-02-01' } }),
    { by: 'observed', due: '2026-10-01' },
  ],
  [
    'a distance that is used up',
    due({ interval: { km: 6000 }, lastDone: { km: 10_000 } }, { odometerKm: 16_500, seasonKm: 4000 }),
    { dueKm: 16_000, by: 'distance', text: 'Overdue: by distance, at 9942 mi. Done at this lay-up.' },
  ],
  [
    'hours that are used up',
    due({ interval: { hours: 50 }, lastDone: { hours: 100 } }, { engineHours: 151, seasonHours: 40 }),
    { dueHours: 150, by: 'hours', text: 'Overdue: by engine hours, at 150 h. Done at this lay-up.' },
  ],
  [
    'marks without the use in a season',
    due(
      { interval: { km: 6000, hours: 50 }, lastDone: { km: 10_000, hours: 100 } },
      { odometerKm: 12_000, engineHours: 120 },
    ),
    {
      by: 'unknown',
      pulledIn: false,
      text: 'Due at 9942 mi or 150 h; without the use in a season no day can be told.',
    },
  ],
  [
    'a mark that its use does not reach in twenty years',
    due({ interval: { km: 90_000 }, lastDone: { km: 10_000 } }, { odometerKm: 12_000, seasonKm: 1000 }),
    {
      by: 'unknown',
      pulledIn: false,
      text: 'Due at 62137 mi; by the use in a season that is not within 20 years.',
    },
  ],
  [
    'a mark of a machine that is not used in a season',
    due({ interval: { km: 6000 }, lastDone: { km: 10_000 } }, { odometerKm: 12_000, seasonKm: 0 }),
    { pulledIn: false, text: 'Due at 9942 mi; without the use in a season no day can be told.' },
  ],
  [
    'a mark in hours, with the use in kilometres alone',
    due({ interval: { hours: 50 }, lastDone: { hours: 100 } }, { engineHours: 120, odometerKm: 9, seasonKm: 4000 }),
    { text: 'Due at 150 h; without the use in a season no day can be told.' },
  ],
  ['an interval in kilometres, and no mark', due({ interval: { km: 6000 } }), { by: 'unknown', pulledIn: true }],
  ['an interval in hours, and no mark', due({ interval: { hours: 50 } }), { by: 'unknown', pulledIn: true }],
  ['the last day of next season', due(months(12, '2026-10-25')), { due: '2027-10-25', pulledIn: true }],
  [
    'the day after next season',
    due(months(12, '2026-10-26')),
    { due: '2027-10-26', pulledIn: false, text: 'Due 26 October 2027: 12 months after it was last done.' },
  ],
  [
    'a half month, which is rounded',
    due({ ...months(24, '2026-02-01'), observedMonths: 7.6 }),
    { by: 'observed', due: '2026-10-01' },
  ],
  [
    'calendar, distance and hours on one day: the calendar',
    due(
      { interval: { months: 12, km: 10, hours: 10 }, lastDone: { date: '2025-10-01', km: 1, hours: 1 } },
      { odometerKm: 11, engineHours: 11 },
    ),
    { by: 'calendar', due: '2026-10-01', dueKm: 11, dueHours: 11 },
  ],
  [
    'hours before distance before calendar',
    due(
      { interval: { months: 12, km: 10, hours: 10 }, lastDone: { date: '2026-06-01', km: 1, hours: 1 } },
      { odometerKm: 5, seasonKm: 20, engineHours: 11 },
    ),
    { by: 'hours', due: '2026-10-01' },
  ],
  [
    'a mark in hours alone',
    due({ interval: { hours: 50 }, lastDone: { hours: 100 } }, { engineHours: 120 }),
    { pulledIn: false, text: 'Due at 150 h; without the use in a season no day can be told.' },
  ],
  [
    'a mark and no counter',
    due({ interval: { hours: 50 }, lastDone: { hours: 100 } }),
    { by: 'unknown', pulledIn: true },
  ],
  [
    'a counter and no mark',
    due({ interval: { km: 50 } }, { odometerKm: 120, seasonKm: 40 }),
    { by: 'unknown', pulledIn: true, dueKm: undefined },
  ],
])('due by %s', (_, found, expected) => {
  expect(found).toMatchObject(expected);
});

test('an item is handed on with its name, and a machine without brake fluid has no note on it', () => {
  expect(due({})).toMatchObject({ id: 'filter', what: 'Air filter', due: undefined, dueKm: undefined });
  const { brakeFluid: _, ...chassis } = machine().chassis;
  expect(due({ id: 'brake-fluid' }, { chassis }).text).toBe('No interval is given.');
  expect(due({ id: 'brake-fluid' }).text).toMatch(/^No interval is given\. DOT4 boils at 446 °F at least/);
});

test('brake fluid has its note wherever the item is it, by id or by name, and nothing else has', () => {
  const noted = (over: Partial<ServiceItem>) => / boils at /.test(due(over).text);
  expect(noted({ id: 'brake-fluid', what: 'Fluid' })).toBe(true);
  expect(noted({ id: 'x', what: 'Brake fluid' })).toBe(true);
  expect(noted({ id: 'x', what: 'Brakefluid' })).toBe(true);
  expect(noted({ id: 'x', what: 'Brake pads' })).toBe(false);
});

/** FMVSS 116 (49 CFR 571.116), S5.1.1 and S5.1.2: least boiling points, new and wet. */
test.each([
  ['DOT3', 205, 140],
  ['DOT4', 230, 155],
  ['DOT5', 260, 180],
  ['DOT5.1', 260, 180],
] as const)('%s boils at %d °C new and %d °C wet', (grade, dry, wet) => {
  const text = brakeFluidText(grade, { locale: 'en', units: 'metric' });
  expect(text).toContain(
    `${grade} boils at ${dry} °C at least when new and ${wet} °C with 3.7 % of water (FMVSS 116 (49 CFR 571.116), S5.1.1 and S5.1.2)`,
  );
  if (grade === 'DOT5')
    expect(text).toMatch(/; silicone takes up no water, but what gets in gathers at the lowest point\.$/);
  // 3.7 % at 1–2 % a year.
  else expect(text).toMatch(/\. At 1–2 % a year that is 1\.9–3\.7 years: change by age is trade practice, not law, /);
});

test('mineral oil is no grade of the standard, and an unknown grade is refused by name', () => {
  expect(brakeFluidText('mineral', { locale: 'en', units: 'metric' })).toBe(
    'mineral oil: no grade of FMVSS 116; only where the maker names it.',
  );
  expect(() => brakeFluidText('DOT6' as never, { locale: 'en', units: 'metric' })).toThrow(
    `brake fluid: found "DOT6", expected one of ${BRAKE_FLUIDS.map((row) => row.grade).join(', ')}`,
  );
});
