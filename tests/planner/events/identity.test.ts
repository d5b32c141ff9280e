import { expect, test } from 'vitest';
import { addDays } from '../../../src/planner/dates.ts';
import { uidOf } from '../../../src/planner/events/identity.ts';
import { makeEvents } from '../../../src/planner/events/index.ts';
import { restKey } from '../../../src/planner/rest-key.ts';
import { aBattery, aCharge, aMachine, aStep, changeMachine, planParts } from '../../fixtures/plan.ts';

type Parts = ReturnType<typeof planParts>;
const uids = (parts: Parts) => makeEvents(parts).map((e) => e.uid);
const byUid = (parts: Parts) => new Map(makeEvents(parts).map((e) => [e.uid, e]));
const chargeUids = (parts: Parts) =>
  makeEvents(parts)
    .filter((e) => e.category === 'charge')
    .map((e) => e.uid);

/** The standard plan with the charges of one machine outside trips. */
const alone = (dates: string[], occurrences?: number[]) => ({
  ...planParts(),
  machines: [
    aMachine('juniper', 'Juniper', '2026-10-25', '2027-04-10', {
      battery: aBattery(dates.map((date, i) => aCharge(date, 3, { occurrence: occurrences?.[i] }))),
    }),
  ],
  trips: [],
  sessions: [],
});

test('a UID is a version 5 UUID and parts of a key do not run together', () => {
  expect(uidOf(['a', 'b'])).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(uidOf(['a-b', 'c'])).not.toBe(uidOf(['a', 'b-c']));
  expect(uidOf(['a', 1])).toBe(uidOf(['a', 1]));
});

test('no two reminders share a UID', () => {
  for (const south of [false, true]) {
    const all = uids(planParts({ south }));
    expect(new Set(all).size).toBe(all.length);
  }
});

test('two reminders whose keys would be the same still are two', () => {
  const paper = { id: 'tax', what: 'tax', date: '2027-01-01', kind: 'other', pausedOverRest: false };
  const parts = changeMachine(planParts(), 'juniper', (m) => ({ ...m, paperwork: [paper, paper] }));
  const all = uids(parts);
  expect(new Set(all).size).toBe(all.length);
});

test('every UID stays when all dates move by weeks, in both hemispheres', () => {
  for (const south of [false, true]) {
    const before = uids(planParts({ south })).sort();
    for (const shiftDays of [-42, -21, -7, 1, 14, 42]) {
      expect(uids(planParts({ south, shiftDays })).sort()).toEqual(before);
    }
  }
});

test('a rest keeps its name when either end moves by six weeks', () => {
  const rests = [
    ['2026-10-25', '2027-04-10'],
    ['2026-11-30', '2027-03-20'],
    ['2027-01-10', '2027-05-08'],
    ['2026-04-05', '2026-12-12'],
    ['2026-03-15', '2026-11-20'],
    ['2026-05-20', '2026-09-25'],
    ['2026-10-01', '2027-06-10'],
  ] as const;
  for (const [lastUse, firstUse] of rests) {
    const name = restKey({ lastUse, firstUse });
    for (const days of [-42, 42]) {
      expect(restKey({ lastUse: addDays(lastUse, days), firstUse }), `${lastUse} moved by ${days}`).toBe(name);
      expect(restKey({ lastUse, firstUse: addDays(firstUse, days) }), `${firstUse} moved by ${days}`).toBe(name);
    }
  }
});

test('the next rest of the same machine has reminders of its own', () => {
  const now = new Set(uids(planParts()));
  expect(uids(planParts({ shiftDays: 365 })).filter((uid) => now.has(uid))).toEqual([]);
  expect(restKey({ lastUse: '2026-06-01', firstUse: '2026-09-01' })).not.toBe(
    restKey({ lastUse: '2026-11-01', firstUse: '2027-04-01' }),
  );
});

test('a renamed machine keeps its UIDs', () => {
  const renamed = changeMachine(planParts(), 'juniper', (m) => ({ ...m, name: 'Juniper the Second' }));
  expect(uids(renamed)).toEqual(uids(planParts()));
});

test('another household has other UIDs', () => {
  const parts = planParts();
  const other = { ...parts, household: { ...parts.household, id: 'elsewhere' } };
  const mine = new Set(uids(parts));
  expect(uids(other).filter((uid) => mine.has(uid))).toEqual([]);
});

test('a reading that moves the dates and takes a charge away leaves the UIDs of the others', () => {
  const before = chargeUids(alone(['2026-12-05', '2027-01-20', '2027-03-01']));
  const after = chargeUids(alone(['2026-12-28', '2027-02-27']));
  expect(after).toEqual(before.slice(0, 2));
});

test('a charge that was done drops out and the later ones keep their UIDs', () => {
  const before = chargeUids(alone(['2026-12-05', '2027-01-20', '2027-03-01']));
  const after = chargeUids(alone(['2027-01-22', '2027-03-04'], [2, 3]));
  expect(after).toEqual(before.slice(1));
});

test('a machine that joins the trips leaves their UIDs as they are, whatever its id', () => {
  for (const id of ['aardvark', 'zebra']) {
    const parts = planParts();
    const joined: Parts = {
      ...parts,
      machines: [
        aMachine(id, 'Newcomer', '2026-11-01', '2027-04-20', {
          battery: aBattery([aCharge('2026-12-05', 5), aCharge('2027-02-20', 5)]),
        }),
        ...parts.machines,
      ],
      trips: parts.trips.map((trip, chargeIndex) => ({
        ...trip,
        machines: [id, ...trip.machines],
        charges: [{ machine: id, chargeIndex, hours: 7 }, ...trip.charges],
      })),
    };
    const after = byUid(joined);
    for (const [uid, event] of byUid(parts)) {
      expect(after.get(uid)?.date, event.title).toBe(event.date);
    }
    const trips = makeEvents(joined).filter((e) => e.machines.length === 3);
    expect(trips.map((e) => e.uid)).toEqual(chargeUids(parts).slice(1));
  }
});

test('a machine that leaves a trip leaves its UID as it is', () => {
  const parts = planParts();
  const left: Parts = {
    ...parts,
    trips: parts.trips.map((trip) => ({ ...trip, charges: trip.charges.slice(0, 1), machines: ['juniper'] })),
  };
  const before = chargeUids(parts);
  const after = makeEvents(left).filter((e) => e.machines.join() === 'juniper' && e.category === 'charge');
  expect(after.map((e) => e.uid)).toEqual(before.slice(1));
});

test('sessions filled anew keep their places, and a done one leaves those of the others', () => {
  const work = (parts: Parts) =>
    makeEvents(parts)
      .filter((e) => e.title.startsWith('Lay up Juniper'))
      .map((e) => e.uid);
  const parts = planParts();
  const before = work(parts);
  const refilled: Parts = {
    ...parts,
    sessions: parts.sessions.map((s, i) => {
      if (i === 0) return { ...s, date: '2026-11-01', steps: s.steps.slice(0, 1) };
      if (i === 1) return { ...s, date: '2026-11-09', steps: [parts.sessions[0]!.steps[1]!, ...s.steps] };
      return s;
    }),
  };
  expect(work(refilled)).toEqual(before);
  const done = changeMachine(parts, 'juniper', (m) => ({
    ...m,
    steps: m.steps.map((s) => ({ ...s, done: ['wash.wash', 'fuel-fill.dose'].includes(s.id) })),
  }));
  expect(work(done)).toEqual(before.slice(1));
  expect(work({ ...done, sessions: done.sessions.slice(1) })).toEqual(before.slice(1));
});

test('a step that is removed takes only its own reminder with it', () => {
  const parts = planParts();
  const removed = changeMachine(parts, 'badger', (m) => ({
    ...m,
    steps: m.steps.filter((s) => s.id !== 'look-in.maintainer.2'),
  }));
  const before = makeEvents(parts);
  const gone = before.find((e) => e.machine === 'badger' && e.date === '2027-03-11')!;
  expect(uids(removed)).toEqual(before.map((e) => e.uid).filter((uid) => uid !== gone.uid));
});

test('a look-in keeps its UID when another step joins it', () => {
  const parts = planParts();
  const joined = changeMachine(parts, 'badger', (m) => ({
    ...m,
    steps: [...m.steps, aStep('tyres.move.1', 'look-in', 'Move it half a turn', { date: '2027-03-11' })],
  }));
  expect(uids(joined)).toEqual(uids(parts));
});
