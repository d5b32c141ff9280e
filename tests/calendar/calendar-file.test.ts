import { expect, test } from 'vitest';
import { calendarOf } from '../../src/calendar/index.ts';
import { addDays } from '../../src/planner/dates.ts';
import type { PlanEvent, SeasonPlan } from '../../src/planner/season-plan.ts';
import { aPlan } from '../fixtures/plan.ts';
import { readBack } from './read-back.ts';

const plan = aPlan();
const file = calendarOf(plan);
/** Lines as they were before they were folded. */
const unfolded = (text: string) => text.replaceAll('\r\n ', '').split('\r\n');
const lines = unfolded(file);
const starting = (start: string, text = file) => unfolded(text).filter((line) => line.startsWith(start));
/** The standard plan with one reminder, changed. */
const one = (over: Partial<PlanEvent>, household: Partial<SeasonPlan['household']> = {}): SeasonPlan => ({
  ...plan,
  household: { ...plan.household, ...household },
  events: [{ ...plan.events[0]!, ...over }],
});

test('a reader finds the same reminders on the same days as the plan', () => {
  const { events } = readBack(file);
  expect(events.map((e) => [e.uid, e.start, e.summary])).toEqual(plan.events.map((e) => [e.uid, e.date, e.title]));
  expect(events.length).toBeGreaterThan(20);
});

test('events are whole days, their end is the day after, and they block no time', () => {
  for (const event of readBack(file).events) {
    expect(event.end).toBe(addDays(event.start, 1));
    expect(event.transparency).toBe('TRANSPARENT');
  }
  expect(starting('DTSTART')).toHaveLength(plan.events.length);
  expect(starting('DTSTART').every((line) => /^DTSTART;VALUE=DATE:\d{8}$/.test(line))).toBe(true);
  expect(starting('DTEND').every((line) => /^DTEND;VALUE=DATE:\d{8}$/.test(line))).toBe(true);
});

test('an event of several days ends on the day after its last', () => {
  const [event] = readBack(calendarOf(one({ date: '2026-12-30', endDate: '2027-01-02' }))).events;
  expect([event!.start, event!.end]).toEqual(['2026-12-30', '2027-01-03']);
});

test('leap days and turns of the year keep their dates', () => {
  for (const [date, next] of [
    ['2028-02-28', '2028-02-29'],
    ['2028-02-29', '2028-03-01'],
    ['2026-12-31', '2027-01-01'],
    ['2027-03-14', '2027-03-15'],
    ['2026-11-01', '2026-11-02'],
  ] as const) {
    const [event] = readBack(calendarOf(one({ date }))).events;
    expect([event!.start, event!.end]).toEqual([date, next]);
  }
});

test('no time zone and no method is in the file', () => {
  expect(file).not.toMatch(/TZID|VTIMEZONE|X-WR-TIMEZONE|TIMEZONE-ID|METHOD|ATTENDEE|ORGANIZER/);
});

test('the revision is the instant of the last content change', () => {
  for (const event of readBack(file).events) {
    expect(event.stamp).toBe('2026-10-01T18:30:00Z');
    expect(event.lastModified).toBe('2026-10-01T18:30:00Z');
    expect(event.sequence).toBe((Date.UTC(2026, 9, 1, 18, 30) - Date.UTC(2024, 0, 1)) / 60_000);
  }
});

test('a revision with an offset is written in UTC', () => {
  expect(starting('DTSTAMP', calendarOf(one({}, { revised: '2026-10-01T20:30:00+02:00' })))).toEqual([
    'DTSTAMP:20261001T183000Z',
  ]);
});

test('a revision before the epoch of SEQUENCE does not make it negative', () => {
  expect(starting('SEQUENCE', calendarOf(one({}, { revised: '2020-01-01T00:00:00Z' })))).toEqual(['SEQUENCE:0']);
});

test('each event has one display alarm fifteen hours before its day', () => {
  for (const event of readBack(file).events) {
    expect(event.alarms).toEqual([{ action: 'DISPLAY', trigger: '-PT15H', description: event.summary }]);
  }
  expect(new Set(starting('TRIGGER'))).toEqual(new Set(['TRIGGER:-PT15H']));
});

test('SEQUENCE counts the minutes of the revisions, so that it stays a 32-bit number', () => {
  const sequence = (revised: string) => readBack(calendarOf(one({}, { revised }))).events[0]!.sequence;
  const first = sequence('2026-11-25T07:00:00Z');
  expect(sequence('2026-11-25T07:00:59Z')).toBe(first);
  expect(sequence('2026-11-25T07:01:00Z')).toBe(first + 1);
  expect(sequence('2026-11-26T07:00:00Z')).toBe(first + 24 * 60);
  expect(sequence('2999-01-01T00:00:00Z')).toBeLessThan(2 ** 31);
});

test('the file names its maker', () => {
  expect(lines).toContain('PRODID:-//Idle Season//Season plan//EN');
});

test('reminders of machines that the file does not have do no harm', () => {
  const { uid } = plan.events[0]!;
  expect(readBack(calendarOf(one({ machines: ['sold'] }))).events.map((e) => e.uid)).toEqual([uid]);
});

test('the file asks to be fetched once a day', () => {
  expect(lines).toContain('REFRESH-INTERVAL;VALUE=DURATION:P1D');
  expect(lines).toContain('X-PUBLISHED-TTL:P1D');
});

test('each event has its category', () => {
  expect(readBack(file).events.map((e) => e.categories)).toEqual(plan.events.map((e) => [e.category]));
});

test('the address of the page is in the URL and again at the end of the text', () => {
  const events = readBack(file).events;
  for (const [i, event] of events.entries()) {
    expect(event.url).toBe(`https://garage.example/season${plan.events[i]!.path}`);
    expect(event.description).toBe(`${plan.events[i]!.text}\n\n${event.url}`);
  }
});

test('comma, semicolon, backslash and other letters in an address are percent-encoded', () => {
  const text = calendarOf(one({ path: '/machines/a,b;c\\d é/' }), { siteUrl: 'https://garage.example/my,own;place/' });
  const address = 'https://garage.example/my%2Cown%3Bplace/machines/a%2Cb%3Bc%5Cd%20%C3%A9/';
  expect(starting('URL', text)).toEqual([`URL;VALUE=URI:${address}`]);
  expect(readBack(text).events[0]).toMatchObject({ url: address });
  expect(readBack(text).events[0]!.description.endsWith(address)).toBe(true);
});

test('without a web address the reminders have no link', () => {
  for (const siteUrl of ['', 'not an address', 'ftp://garage.example']) {
    const text = calendarOf(plan, { siteUrl });
    expect(text).not.toContain('URL');
    expect(readBack(text).events.map((e) => e.description)).toEqual(plan.events.map((e) => e.text));
  }
});

test('lines are ended by CRLF, the last one too, and hold at most 75 octets', () => {
  const awkward = calendarOf(one({ title: '🏍️🔋'.repeat(60), text: 'é–漢🛠'.repeat(300) }, { name: '🏚️'.repeat(40) }));
  for (const text of [file, awkward]) {
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const longest = Math.max(...text.split('\r\n').map((line) => Buffer.byteLength(line)));
    expect(longest).toBeLessThanOrEqual(75);
    expect(longest).toBeGreaterThan(70);
  }
  expect(readBack(awkward).events[0]).toMatchObject({ summary: '🏍️🔋'.repeat(60) });
});

test('no line break splits a character', () => {
  for (let pad = 0; pad < 8; pad++) {
    const text = calendarOf(one({ title: `${'x'.repeat(pad)}${'漢🛠é'.repeat(40)}` }));
    for (const line of Buffer.from(text).toString('latin1').split('\r\n')) {
      expect(() => new TextDecoder('utf-8', { fatal: true }).decode(Buffer.from(line, 'latin1'))).not.toThrow();
    }
  }
});

test('commas, semicolons, backslashes, quotes, line breaks and emoji come back as they were', () => {
  const awkward = 'Drain, fill; "check" \\ back\\nslash: 5 % ✓ 🛠️ <b>&amp;</b> ^n';
  const text = `${awkward}\n\nsecond, line\r\nthird\rfourth`;
  const [event] = readBack(calendarOf(one({ title: awkward, text }), { siteUrl: '' })).events;
  expect(event!.summary).toBe(awkward);
  expect(event!.description).toBe(`${awkward}\n\nsecond, line\nthird\nfourth`);
  expect(event!.alarms[0]!.description).toBe(awkward);
});

test('control characters and halves of characters do not reach the file', () => {
  const bad = 'a\u0000b\u0007c\u001bd\u007fe\u0085f\u2028g\ufeffh\ud83di\tj';
  const text = calendarOf(one({ title: bad, text: bad, path: '/machines/\ud83d/' }, { name: bad }));
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff]/);
  expect(text).not.toMatch(/\p{Cs}/u);
  expect(readBack(text).events[0]!.summary).toBe('abcde f gh�i j');
});

test('a title of two lines becomes one', () => {
  expect(readBack(calendarOf(one({ title: 'Charge\nJuniper\r\n' }))).events[0]!.summary).toBe('Charge Juniper');
});

test("the calendar's name is escaped and names the machine where the file is one machine's", () => {
  const named = calendarOf(one({}, { name: 'Shed, yard; "back\\door"\nEND:VCALENDAR' }));
  const { calendar } = readBack(named);
  for (const property of ['name', 'x-wr-calname']) {
    const value = calendar.getFirstPropertyValue(property);
    // ical.js knows NAME as text; X- properties come back as they stand in the file.
    expect(String(value).replaceAll(/\\([\\;,])/g, '$1')).toBe('Shed, yard; "back\\door" END:VCALENDAR');
  }
  expect(starting('X-WR-CALNAME', calendarOf(plan, { machineId: 'juniper' }))).toEqual([
    'X-WR-CALNAME:Juniper\\, Tarn Hollow',
  ]);
});

test("a machine's file has its own reminders and the trips it shares, with the same UIDs", () => {
  for (const { id } of plan.machines) {
    const expected = plan.events.filter((e) => e.machines.includes(id)).map((e) => [e.uid, e.date]);
    expect(readBack(calendarOf(plan, { machineId: id })).events.map((e) => [e.uid, e.start])).toEqual(expected);
    expect(expected.length).toBeGreaterThan(1);
  }
});

test('a machine that is not in the plan is refused by name', () => {
  expect(() => calendarOf(plan, { machineId: 'nobody' })).toThrow(
    'found machine "nobody", expected one of badger, juniper, old-fern, sleet',
  );
});

test('a date or a revision that is none is refused by name', () => {
  expect(() => calendarOf(one({ date: '2026-02-30' }))).toThrow('found "2026-02-30", expected a date');
  expect(() => calendarOf(one({}, { revised: 'yesterday' }))).toThrow('found "yesterday", expected an instant');
});
