import { expect, test } from 'vitest';
import { calendarOf, monthViews } from '../../src/calendar/index.ts';
import { aPlan } from '../fixtures/plan.ts';
import cases from './calendar.json' with { type: 'json' };

const plan = aPlan({ siteUrl: '' });
const [event] = plan.events;
/** Unfolded lines of the file of one reminder. */
const linesOf = (over: Partial<typeof event>) =>
  calendarOf({ ...plan, events: [{ ...event!, ...over }] })
    .replaceAll('\r\n ', '')
    .split('\r\n');

test('every case names its source and its status', () => {
  for (const row of [...cases.days, ...cases.texts, ...cases.firstDays]) {
    expect(row.source).toMatch(/\S/);
    expect(row.status).toMatch(/\S/);
  }
});

test.each(cases.days)('$name', ({ date, endDate, lines }) => {
  expect(linesOf({ date, endDate })).toEqual(expect.arrayContaining(lines));
});

test.each(cases.texts)('$name', ({ text, line }) => {
  expect(linesOf({ text })).toContain(line);
});

test.each(cases.firstDays)('a week of $locale begins on $day', ({ locale, day }) => {
  const [month] = monthViews({ ...plan, household: { ...plan.household, locale } });
  expect(month!.weekdays[0]).toBe(day);
});
