import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { beforeAll, expect, test } from 'vitest';
import { Desk } from '../../src/browser/planner/desk.ts';
import { answersOf, newDrafts } from '../../src/browser/planner/drafts.ts';
import type { Shown } from '../../src/browser/planner/show.ts';
import { readFiles } from '../../src/content/read-folder.ts';
import { type BenchRecord, emptyRecord } from '../../src/planner/bench-record.ts';
import { withoutPaths } from '../fixtures/without-paths.ts';
import { demoSite, PROJECT, TODAY } from './site.ts';

let folder: string;
let desk: Desk;

beforeAll(async () => {
  folder = await demoSite();
  desk = new Desk({ base: '', methods: {} }, async (path) => JSON.parse(readFileSync(join(folder, path), 'utf8')));
}, 240_000);

const sorted = (value: unknown): string =>
  JSON.stringify(value, (_, v) =>
    v !== null && typeof v === 'object' && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  );

test('what the page does with the demo files gives the plan of the build, byte for byte with sorted keys', async () => {
  const files = readFiles(join(PROJECT, 'content')).files.map(({ path, bytes }) => ({
    path,
    bytes: bytes as Uint8Array,
  }));
  const { problems, shown } = await desk.files({
    files,
    now: Date.parse(`${TODAY}T19:00:00Z`),
    revised: '2026-01-01T00:00:00Z',
  });
  expect(problems).toEqual([]);
  expect(shown!.machines).toHaveLength(5);
  const plan = desk.plan();
  expect(sorted(withoutPaths(plan))).toBe(sorted(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))));
  for (const machine of plan.machines)
    expect(sorted(machine)).toBe(
      sorted(JSON.parse(readFileSync(join(folder, 'machines', machine.id, 'plan.json'), 'utf8'))),
    );
  const { file } = await desk.calendar({ machine: undefined, taken: {} });
  expect(file).toBe(readFileSync(join(folder, 'calendar/all.ics'), 'utf8'));
});

// Time zones are called after a town of theirs (IANA): who is in that of Berlin is in Germany, not in New Hampshire.
test.each([
  ['Europe/Berlin', 'DE'],
  ['America/New_York', 'US'],
])('a town that there is twice is first the one of the device’s own part of the world: %s', async (zone, country) => {
  const found = await desk.stations({ query: 'berlin', zone, units: 'metric' });
  expect(new Set(found.map((one) => one.country))).toContain('DE');
  expect(found[0]!.country).toBe(country);
});

const nothing = emptyRecord();
const record = (machine: string, said: BenchRecord) =>
  desk.record({
    input: 'household.json',
    machine,
    records: { [machine]: said },
    asOf: TODAY,
    now: `${TODAY}T19:00:00Z`,
  });

test('what is worked out from the published household is the build’s where the record says nothing more', async () => {
  for (const machine of ['juniper', 'magpie', 'sleet', 'badger', 'old-fern']) {
    const { charges, steps } = await record(machine, nothing);
    const built = JSON.parse(readFileSync(join(folder, 'machines', machine, 'plan.json'), 'utf8'));
    expect(charges).toEqual(built.battery.charges.map((c: { date: string }) => c.date));
    const days = new Map(built.steps.map((s: { id: string; date?: string }) => [s.id, s.date]));
    for (const { id, date } of Object.values(steps).flat()) expect([id, date]).toEqual([id, days.get(id)]);
    expect(Object.values(steps).flat()).toHaveLength(days.size);
  }
});

const LOW = { ...nothing, readings: [{ date: '2026-11-24', volts: 12.3, temperatureC: -3, restedH: 300 }] };

test('a reading far below what was expected moves charges, numbers, picture and look-ins together', async () => {
  const [before, after] = [await record('juniper', nothing), await record('juniper', LOW)];
  expect(before.charges).toEqual([]);
  expect(after.charges.length).toBeGreaterThan(0);
  expect(after.sections.battery).not.toBe(before.sections.battery);
  // Far below the threshold on the day before: the first of its charges is overdue.
  expect(before.lists.numbers).not.toContain('overdue');
  expect(after.lists.numbers).toContain('Charge overdue since</dt><dd class="big">Nov 24');
  const charge = after.steps.rest.find((s) => s.date === after.charges[0]);
  expect(charge?.title).toMatch(/charge/);
});

test('the calendar with a record keeps what reminders there were, a revision higher, and a shared trip goes on for the others', async () => {
  const published = readFileSync(join(folder, 'calendar/old-fern.ics'), 'utf8');
  // A charge given moves the reminder to charge out of the plan.
  await record('old-fern', { ...nothing, charged: [{ date: '2026-11-24', toPct: 100 }] });
  const fresh = eventsOf(await desk.recordCalendar({ machine: 'old-fern', earlier: published }));
  const old = eventsOf(published);
  const coming = old.filter((e) => e.day >= TODAY);
  expect(new Set(fresh.map((e) => e.uid)).size).toBe(fresh.length);
  for (const { uid, sequence } of coming) {
    const now = fresh.find((e) => e.uid === uid);
    expect(now?.sequence).toBeGreaterThan(sequence);
  }
  // The trip goes on for the other battery, which is not to lose its reminder.
  const trip = coming.find((e) => /^Charge the batteries of Old Fern and /.test(e.title));
  const now = fresh.find((e) => e.uid === trip?.uid);
  expect(now?.title).toMatch(/^Charge Sleet's battery/);
  expect(now?.status).toBe(null);
});

/** Read by another program than the one that wrote it. */
function eventsOf(text: string) {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    uid: String(event.getFirstPropertyValue('uid')),
    day: String(event.getFirstPropertyValue('dtstart')),
    title: String(event.getFirstPropertyValue('summary')),
    sequence: Number(event.getFirstPropertyValue('sequence')),
    status: event.getFirstPropertyValue('status'),
    alarms: event.getAllSubcomponents('valarm').length,
  }));
}

/** What a page says, without its markup. */
const textOf = (shown: Shown) =>
  [...Object.values(shown.slots), ...Object.values(shown.folds).flatMap((folds) => Object.values(folds))]
    .join('\n')
    .replaceAll(/<[^>]*>/g, ' ');

test('who answers the form reads of no file and no symbol of a table, who loads files reads which line settles what', async () => {
  const drafts = newDrafts('en-US', 'home-0123abcd');
  Object.assign(drafts.machines[0]!, { name: 'Grey Owl', station: '72745', chemistry: 'flooded', capacity: '12' });
  drafts.home.revised = '2026-09-01T00:00:00Z';
  const answers = answersOf(drafts, { timeZone: 'America/Chicago', locale: 'en-US' });
  // In October there is stabiliser to get; in July nothing of the last rest is ticked, and its days are over.
  for (const asOf of ['2026-10-01', '2027-07-20']) {
    const { shown } = await desk.form({ answers, asOf });
    const said = textOf(shown!);
    expect(said).toMatch(/in the form|on the form/);
    expect(said).not.toMatch(/\.yaml|In a content file|record file|in the files|τ\d/);
    const { shown: loaded } = await desk.files({
      files: await desk.content(),
      now: Date.parse(`${asOf}T19:00:00Z`),
      revised: '2026-01-01T00:00:00Z',
    });
    expect(textOf(loaded!)).toMatch(/\.yaml/);
    expect(textOf(loaded!)).toContain('In a content file');
  }
});
