import { expect, test } from 'vitest';
import { calendarOf } from '../../src/calendar/index.ts';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { aBattery, aCharge, aPlan, changeMachine, planParts, withEvents } from '../fixtures/plan.ts';
import { type ReadEvent, readBack } from './read-back.ts';

const LATER = '2026-10-08T06:05:00Z';
const read = (plan: SeasonPlan) => new Map(readBack(calendarOf(plan)).events.map((event) => [event.uid, event]));
const before = read(aPlan());

/** What a client sees that has the earlier file: by UID, what left, what came, what changed and how. */
function compare(after: Map<string, ReadEvent>) {
  const both = [...before.values()].flatMap((old) => {
    const now = after.get(old.uid);
    return now ? [{ old, now }] : [];
  });
  return {
    left: [...before.values()].filter((event) => !after.has(event.uid)).map((event) => event.summary),
    came: [...after.values()].filter((event) => !before.has(event.uid)).map((event) => event.summary),
    moved: both.filter(({ old, now }) => old.start !== now.start).map(({ now }) => now.summary),
    renamed: both.filter(({ old, now }) => old.summary !== now.summary).map(({ now }) => now.summary),
    /** Whether each is newer by both marks that clients go by. */
    newer: both.every(({ old, now }) => now.sequence > old.sequence && now.lastModified > old.lastModified),
    same: both.every(({ old, now }) => JSON.stringify(old) === JSON.stringify(now)),
  };
}

test('the same content again is the same file, whatever the day it is built on', () => {
  expect(compare(read(aPlan()))).toEqual({ left: [], came: [], moved: [], renamed: [], newer: false, same: true });
  expect(calendarOf({ ...aPlan(), asOf: '2026-12-24' })).toBe(calendarOf(aPlan()));
});

test('moved dates move every reminder and are newer', () => {
  const seen = compare(read(aPlan({ shiftDays: 9, revised: LATER })));
  expect(seen).toMatchObject({ left: [], came: [], renamed: [], newer: true });
  expect(seen.moved).toHaveLength(before.size);
});

test('a renamed machine renames its reminders and moves none', () => {
  const parts = changeMachine(planParts({ revised: LATER }), 'juniper', (m) => ({ ...m, name: 'June' }));
  const seen = compare(read(withEvents(parts)));
  expect(seen).toMatchObject({ left: [], came: [], moved: [], newer: true });
  expect(seen.renamed.length).toBeGreaterThan(5);
  expect(seen.renamed.every((summary) => summary.includes('June'))).toBe(true);
});

test('an added reading moves the charge it bears on', () => {
  const parts = changeMachine(planParts({ revised: LATER }), 'sleet', (m) => ({
    ...m,
    battery: aBattery([aCharge('2026-08-19', 4.4)], { chemistry: 'lifepo4' }),
  }));
  expect(compare(read(withEvents(parts)))).toMatchObject({
    left: [],
    came: [],
    moved: ["Charge Sleet's battery: about 4 Ah, 7 h"],
    newer: true,
  });
});

test('a removed step leaves, and nothing else does', () => {
  const parts = changeMachine(planParts({ revised: LATER }), 'old-fern', (m) => ({
    ...m,
    steps: m.steps.filter((step) => step.id !== 'rust.film'),
  }));
  expect(compare(read(withEvents(parts)))).toMatchObject({
    left: ['Old Fern: Film on the sills: today at the latest'],
    came: [],
    moved: [],
    renamed: [],
    newer: true,
  });
});

test('a change within the same minute is newer by LAST-MODIFIED and not older by SEQUENCE', () => {
  const [now] = [...read(aPlan({ revised: '2026-10-01T18:30:40Z' })).values()];
  const [old] = [...before.values()];
  expect(now!.lastModified > old!.lastModified).toBe(true);
  expect(now!.sequence).toBe(old!.sequence);
});
