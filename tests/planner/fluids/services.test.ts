import { describe, expect, test } from 'vitest';
import { daysBetween } from '../../../src/planner/dates.ts';
import { dayUsedUp, dueServices, nextSeasonEnd } from '../../../src/planner/fluids/index.ts';
import type { Machine, ServiceItem } from '../../../src/planner/household.ts';
import { machine } from './fixture.ts';

const item = (over: Partial<ServiceItem>): ServiceItem => ({
  id: 'oil',
  what: 'Engine oil',
  interval: {},
  minutes: 30,
  source: 'handbook',
  supplies: [],
  assemblies: [],
  ...over,
});

function due(over: Partial<ServiceItem>, m: Partial<Machine> = {}, asOf = '2026-10-10') {
  const [first] = dueServices(machine({ services: [item(over)], ...m }), asOf, { locale: 'en-GB', units: 'metric' });
  if (!first) throw new Error('one item gives one entry');
  return first;
}

describe('by calendar', () => {
  test('what comes due in the rest or in next season is pulled into this lay-up', () => {
    expect(due({ interval: { months: 12 }, lastDone: { date: '2026-04-01' } })).toMatchObject({
      due: '2027-04-01',
      by: 'calendar',
      pulledIn: true,
    });
    expect(due({ interval: { months: 12 }, lastDone: { date: '2026-09-01' } })).toMatchObject({
      due: '2027-09-01',
      pulledIn: true,
    });
  });

  test('what comes due after next season is left', () => {
    expect(due({ interval: { months: 24 }, lastDone: { date: '2026-09-01' } })).toMatchObject({
      due: '2028-09-01',
      pulledIn: false,
    });
  });

  test('what is overdue is said so', () => {
    expect(due({ interval: { months: 12 }, lastDone: { date: '2024-09-01' } }).text).toMatch(/^Overdue/);
  });

  test('nobody knows when: do it now and write it down', () => {
    const unknown = due({ interval: { months: 24 } });
    expect(unknown).toMatchObject({ by: 'unknown', pulledIn: true });
    expect(unknown.due).toBeUndefined();
    expect(unknown.text).toContain('write the day down');
  });

  test('no interval is no reason to do anything', () => {
    expect(due({})).toMatchObject({ by: 'unknown', pulledIn: false });
  });
});

describe('by observed return', () => {
  test('a bushing that squeals again early sets its own interval', () => {
    const early = due({ interval: { months: 24 }, observedMonths: 8, lastDone: { date: '2026-09-01' } });
    expect(early).toMatchObject({ by: 'observed', due: '2027-05-01', pulledIn: true });
    expect(early.text).toContain('came back after 8 months');
  });

  test('one that lasted longer than its interval does not stretch it', () => {
    expect(due({ interval: { months: 12 }, observedMonths: 30, lastDone: { date: '2026-09-01' } })).toMatchObject({
      by: 'calendar',
      due: '2027-09-01',
    });
  });
});

describe('by distance and hours', () => {
  const used = { odometerKm: 20_000, seasonKm: 6000 };

  test('kilometres run out in the season, not in the rest', () => {
    const found = due({ interval: { km: 6000 }, lastDone: { km: 17_000 } }, used);
    expect(found).toMatchObject({ by: 'distance', dueKm: 23_000, pulledIn: true });
    expect(found.due! > '2027-04-10').toBe(true);
    expect(found.due! < '2027-10-25').toBe(true);
  });

  test('what lasts beyond next season stays', () => {
    expect(due({ interval: { km: 24_000 }, lastDone: { km: 17_000 } }, used).pulledIn).toBe(false);
  });

  test('a mark that is passed is overdue', () => {
    expect(due({ interval: { km: 6000 }, lastDone: { km: 12_000 } }, used)).toMatchObject({
      due: '2026-10-10',
      pulledIn: true,
    });
  });

  test('hours count as kilometres do', () => {
    const found = due({ interval: { hours: 50 }, lastDone: { hours: 100 } }, { engineHours: 130, seasonHours: 40 });
    expect(found).toMatchObject({ by: 'hours', dueHours: 150 });
    expect(found.due! > '2027-04-10').toBe(true);
  });

  test('the earliest of several reasons decides', () => {
    const found = due({ interval: { months: 36, km: 3500 }, lastDone: { date: '2026-09-01', km: 19_900 } }, used);
    expect(found.by).toBe('distance');
  });

  test('without the use in a season the mark is shown and no day is made up', () => {
    const found = due({ interval: { km: 6000 }, lastDone: { km: 17_000 } }, { odometerKm: 20_000 });
    expect(found.due).toBeUndefined();
    expect(found.dueKm).toBe(23_000);
    expect(found.pulledIn).toBe(false);
    expect(found.text).toContain('23000');
  });
});

describe('use through the year', () => {
  const season = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] };

  test('half of a season’s use is used up in the middle of the season', () => {
    const day = dayUsedUp(3000, 6000, season, '2026-12-01')!;
    const days = daysBetween(season.firstUse, nextSeasonEnd(season));
    expect(daysBetween(season.firstUse, day)).toBe(Math.ceil(days / 2));
  });

  test('a season and a half reaches into the season after next', () => {
    expect(dayUsedUp(9000, 6000, season, '2026-12-01')!.slice(0, 4)).toBe('2028');
  });

  test('the days before the last use count', () => {
    const early = dayUsedUp(3000, 6000, season, '2026-09-25')!;
    const late = dayUsedUp(3000, 6000, season, '2026-10-25')!;
    expect(daysBetween(early, late)).toBe(30);
  });

  test('a rest of three years ends its next season at the first yearly return of the last use', () => {
    expect(nextSeasonEnd({ ...season, firstUse: '2029-06-01' })).toBe('2029-10-25');
    expect(nextSeasonEnd({ ...season, firstUse: '2026-11-15' })).toBe('2027-10-25');
  });

  // From 10 April to 25 October are 198 days: 198 in a season is one a day.
  test.each<[string, number, string, string | undefined]>([
    ['nothing is left', 0, '2026-12-01', '2026-12-01'],
    ['less than nothing is left', -5, '2026-12-01', '2026-12-01'],
    ['one, in the rest: the day after first use', 1, '2026-12-01', '2027-04-11'],
    ['half of one', 0.5, '2026-12-01', '2027-04-11'],
    ['a season', 198, '2026-12-01', '2027-10-25'],
    ['a season and one', 199, '2026-12-01', '2028-04-11'],
    ['five, five days before the last use', 5, '2026-10-20', '2026-10-25'],
    ['six, five days before the last use', 6, '2026-10-20', '2027-04-11'],
    ['one, on the last day of use', 1, '2026-10-25', '2027-04-11'],
    ['one, long before the season: it begins as long before the last use', 1, '2026-01-01', '2026-04-11'],
    ['a season, long before it', 198, '2026-01-01', '2026-10-25'],
    ['one, ten days after first use', 1, '2027-04-20', '2027-04-21'],
    ['to the end, ten days after first use', 188, '2027-04-20', '2027-10-25'],
    ['one more than that', 189, '2027-04-20', '2028-04-11'],
    ['one, on the day of first use', 1, '2027-04-10', '2027-04-11'],
    ['one, after the season', 1, '2027-11-30', '2028-04-11'],
    ['twenty seasons', 20 * 198, '2026-12-01', '2046-10-25'],
    ['more than twenty seasons', 20 * 198 + 1, '2026-12-01', undefined],
  ])('%s', (_, left, asOf, day) => {
    expect(dayUsedUp(left, 198, season, asOf)).toBe(day);
  });

  test('twice the use comes to the mark in half the days', () => {
    expect(dayUsedUp(100, 2 * 198, season, '2026-12-01')).toBe('2027-05-30');
    expect(dayUsedUp(4, 2 * 198, season, '2026-10-20')).toBe('2026-10-22');
    expect(dayUsedUp(10, 2 * 198, season, '2026-10-20')).toBe('2026-10-25');
    expect(dayUsedUp(11, 2 * 198, season, '2026-10-20')).toBe('2027-04-11');
  });

  test('the next season ends after first use, within twenty years', () => {
    expect(nextSeasonEnd({ ...season, firstUse: '2027-10-24' })).toBe('2027-10-25');
    expect(nextSeasonEnd({ ...season, firstUse: '2027-10-25' })).toBe('2028-10-25');
    expect(nextSeasonEnd({ ...season, firstUse: '2046-10-24' })).toBe('2046-10-25');
    expect(() => nextSeasonEnd({ ...season, firstUse: '2046-10-25' })).toThrow(
      'found a rest from 2026-10-25 to 2046-10-25, expected one of less than 20 years',
    );
  });

  test('what is left must be a number, and what is not used has no day', () => {
    for (const wrong of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => dayUsedUp(wrong, 100, season, '2026-12-01')).toThrow(`use left: found ${wrong}, expected a number`);
    expect(dayUsedUp(100, undefined, season, '2026-12-01')).toBeUndefined();
    expect(dayUsedUp(100, -1, season, '2026-12-01')).toBeUndefined();
  });

  test('a machine that is not used comes to no mark', () => {
    expect(dayUsedUp(100, 0, season, '2026-12-01')).toBeUndefined();
    expect(() => dayUsedUp(Number.NaN, 100, season, '2026-12-01')).toThrow(/expected/);
  });
});

test('brake fluid names the boiling points of its grade and says that the interval is trade practice', () => {
  const found = due({
    id: 'brake-fluid',
    what: 'Brake fluid',
    interval: { months: 24 },
    lastDone: { date: '2025-03-01' },
  });
  expect(found.text).toContain('DOT4 boils at 230 °C');
  expect(found.text).toContain('not law');
  const silicone = { ...machine().chassis, brakeFluid: 'DOT5' as const };
  expect(due({ id: 'brake-fluid', interval: { months: 24 } }, { chassis: silicone }).text).toContain(
    'takes up no water',
  );
});
