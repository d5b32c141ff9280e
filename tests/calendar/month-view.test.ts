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
