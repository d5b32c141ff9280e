/** The days on which cold comes into a store, from lows of the months worked out by hand. */
import { expect, test } from 'vitest';
import type { PlaceContext } from '../../src/planner/place-context.ts';
import { restOf } from '../../src/planner/rest.ts';

const SEASON = { lastUse: '2026-10-10', firstUse: '2027-05-01', proposed: false, reasons: [] };
/** Lowest hour by month: −10 °C in the middle of October, −30 °C in that of November and after; outdoors 4 K colder. */
const lowsC = [-30, -30, -30, -10, 0, 5, 5, 5, 0, -10, -30, -30];
const colder = (by: number) => lowsC.map((c) => c - by);
const context = {
  designLow: { designC: colder(15), typicalC: lowsC },
  outdoors: { designC: colder(19), typicalC: colder(4) },
} as unknown as PlaceContext;

test('cold that the coolant stands comes later than frost: between two months as much as its share of the way', () => {
  const { firstFrost, firstColdOf } = restOf(SEASON, context);
  // From the middle of September, 0 °C on the 16th at midnight, to that of October 10 K are lost in 30.5 days: −1 °C after 3.05 of
  // them, within the 19th, so that the 20th is the first day to begin with it (in use by then).
  expect(firstFrost).toBe('2026-09-20');
  // From noon of 16 October 20 K are lost in 30.5 days: 13.8 K after 21.05 of them, so from 7 November on.
  expect(firstColdOf('store', -23.8)).toBe('2026-11-07');
  // Outdoors it is 4 K colder: 9.8 K after 14.9 days.
  expect(firstColdOf('outdoors', -23.8)).toBe('2026-11-01');
  expect(firstColdOf('store', -31)).toBeUndefined();
});
