import { expect, test } from 'vitest';
import { monthViews } from '../../src/calendar/index.ts';
import { aPlan } from '../fixtures/plan.ts';

const plan = aPlan({ locale: 'en-GB' });
const views = monthViews(plan);

test('every month from the first reminder to the last is there, in order', () => {
  expect(views.map((v) => `${v.year}-${String(v.month).padStart(2, '0')}`)).toEqual([
    '2026-06',
    '2026-07',
    '2026-08',
    '2026-09',
    '2026-10',
    '2026-11',
    '2026-12',
    '2027-01',
    '2027-02',
    '2027-03',
    '2027-04',
    '2027-05',
  ]);
});

test('weeks are whole, days follow each other, and each day of the month is there once', () => {
  for (const locale of ['en-GB', 'en-US', 'ar-EG']) {
    for (const view of monthViews({ ...plan, household: { ...plan.household, locale } })) {
      expect(view.weeks.every((week) => week.length === 7)).toBe(true);
      const days = view.weeks.flat();
      expect(days.map((d) => d.date)).toEqual(days.map((d) => d.date).sort());
      const inMonth = days.filter((d) => d.inMonth).map((d) => d.day);
      const length = new Date(Date.UTC(view.year, view.month, 0)).getUTCDate();
      expect(inMonth).toEqual(Array.from({ length }, (_, i) => i + 1));
    }
  }
});

test('the columns are the weekdays of their dates', () => {
  const names = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
  for (const view of views) {
    for (const week of view.weeks) {
      expect(week.map((d) => names[new Date(`${d.date}T00:00Z`).getUTCDay()])).toEqual(view.weekdays);
    }
  }
});

test('weeks begin on the day of the locale: Monday in Britain, Sunday in the United States, Saturday in Egypt (CLDR)', () => {
  const first = (locale: string) =>
    monthViews({ ...plan, household: { ...plan.household, locale } })[0]!.weekdays.slice(0, 2);
  expect(first('en-GB')).toEqual(['monday', 'tuesday']);
  expect(first('en-US')).toEqual(['sunday', 'monday']);
  expect(first('ar-EG')).toEqual(['saturday', 'sunday']);
});

test('no month has a week that lies outside it', () => {
  for (const locale of ['en-GB', 'en-US'])
    for (const view of monthViews({ ...plan, household: { ...plan.household, locale } }))
      for (const week of view.weeks) expect(week.some((day) => day.inMonth)).toBe(true);
});

test('a reminder on the first of a month brings that month; events in any order', () => {
  const on = (date: string) => ({ ...plan.events[0]!, uid: date, date, endDate: undefined });
  const months = monthViews({ ...plan, events: [on('2027-03-01'), on('2027-01-31')] }).map((v) => v.month);
  expect(months).toEqual([1, 2, 3]);
});

test('two acts of one day stand side by side; the same act of two machines once, by its title where it has no label', () => {
  const [a, b] = [plan.events[0]!, plan.events[1]!];
  const on = { date: '2026-12-05', endDate: undefined };
  const events = [
    { ...a, ...on, uid: 'a', label: 'Look in' },
    { ...b, ...on, uid: 'b', label: 'Look in' },
    { ...b, ...on, uid: 'c', label: undefined, title: 'Charge Juniper' },
  ];
  const day = monthViews({ ...plan, events })[0]!
    .weeks.flat()
    .find(({ date }) => date === on.date)!;
  expect(day.labels).toEqual([
    { uid: 'a', text: 'Look in', category: a.category, machines: a.machines },
    { uid: 'c', text: 'Charge Juniper', category: b.category, machines: b.machines },
  ]);
});

test('each reminder stands once on its day, by its short label', () => {
  const shown = views.flatMap((v) => v.weeks.flat().flatMap((d) => d.labels.map((l) => `${d.date} ${l.text}`)));
  expect(shown).toEqual([...new Set(plan.events.map((e) => `${e.date} ${e.label}`))]);
});

test('a reminder of several days stands on each of them', () => {
  const long = { ...plan.events[0]!, date: '2026-12-30', endDate: '2027-01-02' };
  const days = monthViews({ ...plan, events: [long] }).flatMap((v) => v.weeks.flat());
  expect(days.filter((d) => d.labels.length > 0).map((d) => d.date)).toEqual([
    '2026-12-30',
    '2026-12-31',
    '2027-01-01',
    '2027-01-02',
  ]);
});

test('a plan without reminders has no months', () => {
  expect(monthViews({ ...plan, events: [] })).toEqual([]);
});
