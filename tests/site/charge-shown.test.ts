/** A charge in the five figures, in the battery's part of the page and in its reminder: due, overdue, without a day, none. */
import { expect, test } from 'vitest';
import { makeEvents } from '../../src/planner/events/index.ts';
import type { BatteryPlan } from '../../src/planner/season-plan.ts';
import { fiveNumbersOf } from '../../src/site/numbers.ts';
import { battery } from '../../src/site/show/battery.ts';
import { showingOf } from '../../src/site/show/showing.ts';
import { aBattery, aCharge, aMachine, planParts } from '../fixtures/plan.ts';

const ASOF = '2027-01-14';

function shown(given: BatteryPlan) {
  const moth = aMachine('moth', 'Moth', '2026-10-25', '2027-04-10', { battery: given });
  const parts = { ...planParts(), asOf: ASOF, machines: [moth], sessions: [], trips: [], supplies: [], ledger: [] };
  const plan = { ...parts, events: makeEvents(parts) };
  const showing = showingOf(plan, moth, {});
  const { name, value, note } = fiveNumbersOf(moth, showing.format)[0]!;
  const page = battery(showing).text.replaceAll(/<[^>]+>/g, '');
  return {
    figure: `${name} ${value}: ${note}`,
    page,
    reminder: plan.events.find(({ category }) => category === 'charge'),
  };
}

test('one that is due says by when, and is no more said to be late than none is', () => {
  const { figure, page, reminder } = shown(aBattery([aCharge('2027-02-05', 3)]));
  expect(figure).toBe('First charge by Feb 5: 1 charge in all');
  expect(page).toMatch(/By Feb 5, 2027: put back/);
  expect(page).not.toMatch(/overdue/i);
  expect(reminder!.title).not.toMatch(/overdue/);
  const none = shown(aBattery([]));
  expect(none.figure).toBe('First charge by none: needed before start-up');
  expect(none.page).toMatch(/No charge is needed before the one at start-up/);
});

test('one that is overdue says since when, and when it is to be made, everywhere', () => {
  const { figure, page, reminder } = shown(aBattery([aCharge(ASOF, 3, { earliest: '2027-01-11', overdue: true })]));
  expect(figure).toBe('Charge overdue since Jan 11: charge it today, Jan 14');
  expect(page).toMatch(/On Jan 14, 2027, overdue since Jan 11, 2027: put back/);
  expect(page).toMatch(/Charged already\? Write it down/);
  expect(page).not.toMatch(/No charge is needed/);
  expect(reminder).toMatchObject({
    date: ASOF,
    title: "Charge Moth's battery, overdue: about 3 Ah, 5.5 h",
    text: expect.stringMatching(/Overdue since Mon, Jan 11, 2027\. If it was charged, write that down/),
  });
});

test('one that no day was found for is told with its day, not as none', () => {
  const { figure, page } = shown(aBattery([], { chargeWithoutDay: '2027-01-11' }));
  expect(figure).toBe('Charge due by Jan 11: no day found for it: see the warnings');
  expect(page).toMatch(/A charge is due by Jan 11, 2027, and no day was found for it/);
  expect(page).not.toMatch(/No charge is needed/);
});

test('one that nothing can charge where it rests is told so, not that no day was found', () => {
  const { figure, page } = shown(aBattery([], { chargeWithoutDay: '2027-01-11', outOfReach: true }));
  expect(figure).toBe('Charge due by Jan 11: nothing can charge it there: see the warnings');
  expect(page).toMatch(/A charge is due by Jan 11, 2027, and nothing can charge it where it rests/);
  expect(page).not.toMatch(/Charged on visits|no day was found/);
});

test('on a maintainer that keeps it nothing is lost; on one that does not, that is said', () => {
  const kept = { care: 'maintainer' as const, firstMonthLossPct: { low: 0, expected: 0, high: 0 } };
  expect(shown(aBattery([], kept)).page).toMatch(/none, while the maintainer makes it good/);
  const left = shown(aBattery([], { care: 'maintainer', notKeptSince: '2026-12-05' }));
  expect(left.figure).toBe('First charge by none: not kept full, by its readings: see the warnings');
  expect(left.page).toMatch(/between 1\.0 % and 6\.0 %/);
});

test('a lead that is to come off and has not been ticked is not said to be off', () => {
  const leads = (given: Partial<BatteryPlan>) => /Leads(.*?)Charge at/.exec(shown(aBattery([], given)).page)?.[1];
  expect(leads({ connected: false })).toBe('off');
  expect(leads({ connected: true })).toBe('connected');
  expect(leads({ connected: false, leadStillOn: true })).toBe('to come off; reckoned on until that is ticked');
});

test('the 12 V battery of an electric machine is called by its name in the reminder', () => {
  const driveBattery = {
    ...{ chemistry: 'lithium-ion' as const, removable: false, keepPct: { low: 40, high: 60 }, chargeToPct: 50 },
    ...{ rechargeBelowPct: 33, lossPctPerMonth: { low: 2, expected: 3, high: 6 }, lowestStorageC: -20, storeLowC: 0 },
    derivations: [],
  };
  const given = { battery: aBattery([aCharge(ASOF, 3)]), driveBattery };
  const moth = aMachine('moth', 'Moth', '2026-10-25', '2027-04-10', given);
  const events = makeEvents({ ...planParts(), machines: [moth], sessions: [], trips: [], supplies: [], ledger: [] });
  const { title, label, text } = events.find(({ category }) => category === 'charge')!;
  expect([title, label]).toEqual([
    expect.stringMatching(/^Charge Moth's 12 V battery: /),
    "Charge Moth's 12 V battery",
  ]);
  expect(text).toMatch(/^Moth's 12 V battery \(/);
});
