/** A file that takes back what an earlier one had; read with ical.js. RFC 5545 (2009): 3.8.1.11 STATUS, 3.8.7.4 SEQUENCE. */
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { remembered, withCancelled } from '../../src/calendar/cancelled.ts';
import { calendarOf } from '../../src/calendar/index.ts';
import type { PlanEvent } from '../../src/planner/season-plan.ts';
import { aPlan } from '../fixtures/plan.ts';
import { readBack } from './read-back.ts';

const plan = aPlan();
const EARLIER = '2026-11-25T07:00:00Z';
const LATER = '2026-12-05T18:30:00Z';

function fileOf(events: readonly PlanEvent[], revised: string): string {
  return calendarOf({ ...plan, events: [...events], household: { ...plan.household, revised } });
}

function statuses(file: string): Record<string, string> {
  const events = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent');
  return Object.fromEntries(
    events.map((e) => [String(e.getFirstPropertyValue('uid')), String(e.getFirstPropertyValue('status') ?? '')]),
  );
}

const event = (uid: string, date: string): PlanEvent => ({ ...plan.events[0]!, uid, date, endDate: undefined });
const past = event('past@home', '2026-12-01');
const gone = event('gone@home', '2026-12-05');
const kept = event('kept@home', '2026-12-20');

test('what is gone is cancelled under its own identity, what is kept stays as the new file has it', () => {
  const fresh = fileOf([kept], LATER);
  const file = withCancelled(fresh, fileOf([gone, kept], EARLIER), fileOf([kept], LATER), '2026-12-05');
  expect(statuses(file)).toEqual({ 'kept@home': '', 'gone@home': 'CANCELLED' });
  expect(file.startsWith(fresh.slice(0, fresh.indexOf('END:VCALENDAR')))).toBe(true);
  expect(file.endsWith('END:VEVENT\r\nEND:VCALENDAR\r\n')).toBe(true);
});

test('a cancelled reminder is a later revision on its old day, and rings no more', () => {
  const earlier = fileOf([gone, kept], EARLIER);
  const file = withCancelled(fileOf([kept], LATER), earlier, fileOf([kept], LATER), '2026-12-05');
  const [before] = readBack(earlier).events;
  const [now, then] = readBack(file).events;
  expect(then!.uid).toBe('gone@home');
  expect(then!.start).toBe('2026-12-05');
  expect(then!.summary).toBe(before!.summary);
  expect(then!.alarms).toEqual([]);
  expect(now!.alarms).toHaveLength(1);
  expect(then!.sequence).toBeGreaterThan(before!.sequence);
  expect([then!.sequence, then!.stamp, then!.lastModified]).toEqual([now!.sequence, now!.stamp, now!.lastModified]);
});

test('what lies before the day stays in the calendar as it was', () => {
  const earlier = fileOf([past, gone], EARLIER);
  expect(statuses(withCancelled(fileOf([kept], LATER), earlier, fileOf([kept], LATER), '2026-12-05'))).toEqual({
    'kept@home': '',
    'gone@home': 'CANCELLED',
  });
  expect(statuses(withCancelled(fileOf([kept], LATER), earlier, fileOf([kept], LATER), '2026-12-06'))).toEqual({
    'kept@home': '',
  });
});

test('where nothing is gone the new file stays byte for byte', () => {
  const fresh = fileOf([gone, kept], LATER);
  expect(withCancelled(fresh, fileOf([kept], EARLIER), fileOf([gone, kept], LATER), '2026-11-25')).toBe(fresh);
  expect(withCancelled(fresh, fileOf([], EARLIER), fileOf([gone, kept], LATER), '2026-11-25')).toBe(fresh);
});

test('where nothing is left all that was there is taken back', () => {
  const file = withCancelled(fileOf([], LATER), fileOf([gone, kept], EARLIER), fileOf([], LATER), '2026-11-25');
  expect(statuses(file)).toEqual({ 'gone@home': 'CANCELLED', 'kept@home': 'CANCELLED' });
});

test.each(['BEGIN:VEVENT', 'END:VEVENT', 'END:VCALENDAR', 'BEGIN:VALARM', 'END:VALARM'])(
  'a machine that is called %s is taken back like any other',
  (summary) => {
    const named = { ...gone, title: summary, text: `${summary}\n${summary}` };
    const file = withCancelled(
      fileOf([{ ...kept, title: summary }], LATER),
      fileOf([named, { ...kept, title: summary }], EARLIER),
      fileOf([kept], LATER),
      '2026-12-05',
    );
    expect(statuses(file)).toEqual({ 'kept@home': '', 'gone@home': 'CANCELLED' });
    expect(readBack(file).events.map((e) => e.summary)).toEqual(
      [summary, summary].map((s) => expect.stringContaining(s)),
    );
    expect(readBack(file).events[1]!.alarms).toEqual([]);
  },
);

test('a reminder that goes on without this machine is brought up to date', () => {
  const file = withCancelled(
    fileOf([kept], LATER),
    fileOf([gone, kept], EARLIER),
    fileOf([gone, kept], LATER),
    '2026-12-05',
  );
  expect(statuses(file)).toEqual({ 'kept@home': '', 'gone@home': '' });
});

test('what is remembered of files that were taken is enough to take all of them back, each once', () => {
  const first = remembered(fileOf([past, gone], EARLIER), '', '2026-12-05');
  const second = remembered(fileOf([kept], LATER), first, '2026-12-05');
  expect(second).not.toMatch(/DESCRIPTION|VALARM/);
  expect(remembered(fileOf([kept], LATER), second, '2026-12-05')).toBe(second);
  const file = withCancelled(fileOf([], LATER), second, fileOf([], LATER), '2026-12-05');
  expect(statuses(file)).toEqual({ 'gone@home': 'CANCELLED', 'kept@home': 'CANCELLED' });
  expect(readBack(file).events.map((e) => [e.summary, e.start])).toEqual(
    readBack(fileOf([gone, kept], EARLIER)).events.map((e) => [e.summary, e.start]),
  );
  expect(remembered(fileOf([kept], LATER), second, '2026-12-20')).toBe(
    remembered(fileOf([kept], LATER), '', '2026-12-20'),
  );
});
