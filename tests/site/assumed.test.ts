/** What was assumed, as a page says it: in words, in the units of people, with the line that settles it. */
import { expect, test } from 'vitest';
import type { Assumption, MachinePlan } from '../../src/planner/season-plan.ts';
import { assumedText } from '../../src/site/assumed.ts';
import { formatOf } from '../../src/site/formats.ts';
import { showingOf } from '../../src/site/show/showing.ts';
import { assumed } from '../../src/site/show/unsure.ts';
import { aBattery, aCharge, aMachine, planParts } from '../fixtures/plan.ts';

const format = formatOf({ locale: 'en-GB', clock: '24h', units: 'metric', asOf: '2026-11-29' } as Parameters<
  typeof formatOf
>[0]);
const still = {
  firstChargeShiftDays: 0,
  firstChargeAt: { low: null, high: null },
  marginShiftK: { low: 0, high: 0 },
  visitsShift: { low: 0, high: 0 },
  reason: 'common practice',
};
const said = (
  row: Pick<Assumption, 'field' | 'value' | 'low' | 'high' | 'unit'> & Partial<Assumption>,
  isCharged = true,
) => {
  const { what, taken, could, moves } = assumedText({ ...still, settle: 'use: road', ...row }, format, isCharged);
  return [what, taken, could, moves];
};

test('a share is said in percent, years with their unit, a yes as yes', () => {
  const health = { field: 'battery.health', value: 0.85, low: 0.6, high: 0.95, unit: 'share' };
  expect(said(health)).toEqual(['battery: health', '85 %', '60 to 95 %', '']);
  const life = { field: 'cooling.life', value: 3, low: 2, high: 5, unit: 'years' };
  expect(said(life)).toEqual(['coolant: life', '3 years', '2 to 5 years', '']);
  const lined = { field: 'fuel.lined', value: 'false', low: 'false', high: 'false', unit: '' };
  expect(said(lined)).toEqual(['fuel: tank lined inside', 'no', '', '']);
});

/** 0.946353 L to a US quart, 3.785412 L to a US gallon (NIST SP 811, B.8): 3/0.946353 = 3.17, 4.5 → 4.755, 7 → 7.397. */
test('value and range are told in one unit, that of the largest', () => {
  const us = formatOf({ locale: 'en-US', clock: '12h', units: 'us', asOf: '2026-11-29' });
  const inUs = (field: string, value: number, low: number, high: number) => {
    const { taken, could } = assumedText({ ...still, settle: '', field, value, low, high, unit: 'L' }, us, true);
    return [taken, could];
  };
  expect(inUs('engine.oil', 4.5, 3, 7)).toEqual(['4.8 US qt', '3.2 to 7.4 US qt']);
  expect(inUs('cooling.volume', 7, 4, 12)).toEqual(['7.4 US qt', '4.2 to 12.7 US qt']);
  // 5.7/3.785412 = 1.506, 0.9 → 0.238, 2 → 0.528.
  expect(inUs('fuel.inTank', 2, 0.9, 5.7)).toEqual(['0.53 US gal', '0.24 to 1.51 US gal']);
});

test('a field of a place is one of the store, and a name of several words is parted', () => {
  const air = { field: 'places/tin-shed: enclosure.timeConstant', value: 0.3, low: 0.1, high: 0.5, unit: 'h' };
  expect(said(air)[0]).toBe('store: time in which it follows the air outside');
  expect(said({ field: 'chassis.exhaustOutlets', value: 1, low: 1, high: 3, unit: '' })[0]).toBe(
    'chassis: exhaust outlets',
  );
});

test('what it moves is a whole sentence whichever of the two it is', () => {
  const drain = { field: 'battery.drain', value: 3, low: 1, high: 8, unit: 'mA' };
  expect(said({ ...drain, firstChargeShiftDays: -21 })[3]).toBe('moves the first charge by 21 days');
  expect(said({ ...drain, marginShiftK: { low: 1.25, high: -2 } })[3]).toBe(
    'moves the freezing margin by +1.3 to −2.0 degrees',
  );
  expect(said({ ...drain, firstChargeShiftDays: 1, marginShiftK: { low: 0.01, high: -2 } })[3]).toBe(
    'moves the first charge by 1 day; the freezing margin by −2.0 degrees',
  );
});

const DRAIN = { field: 'battery.drain', value: 3, low: 1, high: 8, unit: 'mA' };
const BRINGS = { ...DRAIN, firstChargeShiftDays: -21, firstChargeAt: { low: null, high: '2027-03-20' } };

test('where no charge falls due there is none to be moved: what it could bring is said with its day', () => {
  expect(said(BRINGS, false)[3]).toBe('could bring a charge by 20 Mar 2027');
  expect(said({ ...BRINGS, marginShiftK: { low: 0, high: -2 } }, false)[3]).toBe(
    'could bring a charge by 20 Mar 2027; moves the freezing margin by −2.0 degrees',
  );
  expect(said(BRINGS)[3]).toBe('moves the first charge by 21 days');
});

/** What the part of the page says above the list. */
function head(battery: MachinePlan['battery'], rows: Partial<Assumption>[]) {
  const assumptions = rows.map((row): Assumption => ({ ...still, ...DRAIN, settle: 'use: road', ...row }));
  const moth = aMachine('moth', 'Moth', '2026-10-25', '2027-04-10', { battery, assumptions });
  const text = assumed(showingOf({ ...planParts(), events: [], machines: [moth] }, moth, {})).text;
  return text.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');
}

test('what is worth a measurement speaks of a first charge only where there is one', () => {
  const one = aBattery([aCharge('2027-02-05', 3)]);
  expect(head(one, [BRINGS])).toMatch(/Over the range it could have, the first charge moves by 21 days\./);
  expect(head(aBattery([], { chargeWithoutDay: '2027-02-05' }), [BRINGS])).toMatch(/the first charge moves by 21 days/);
  const none = head(aBattery([]), [BRINGS]);
  expect(none).toMatch(
    /Measure this first: .* No charge falls due as it is taken; .* one could fall due by Mar 20, 2027\./,
  );
  expect(none).not.toMatch(/first charge/);
  expect(head(one, [{}])).toMatch(/None of these moves the first charge\./);
  expect(head(aBattery([]), [{}])).toMatch(/No charge falls due while it rests, and none of these brings one\./);
  expect(head(undefined, [{}])).toMatch(/It has no 12 V battery/);
});
