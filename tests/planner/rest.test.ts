/** The days on which cold comes into a store, from lows of the months worked out by hand. */
import { expect, test } from 'vitest';
import type { PlaceContext } from '../../src/planner/place-context.ts';
import { restOf } from '../../src/planner/rest.ts';

const SEASON = { lastUse: '2026-10-10', firstUse: '2027-05-01', proposed: false, reasons: [] };
/** −10 °C in the middle of October, −30 °C in the middle of November and after; the store of a usual year freezes all October. */
const reckonedC = [-30, -30, -30, -10, 0, 5, 5, 5, 0, -10, -30, -30];
const context = {
  designLow: { designC: reckonedC, typicalC: [-20, -20, -10, -5, 5, 10, 10, 10, 1, -3, -10, -15] },
  outdoors: { designC: reckonedC.map((c) => c - 4), typicalC: reckonedC },
} as unknown as PlaceContext;

test('cold that the coolant stands comes later than frost: between two months as much as its share of the way', () => {
  const { firstFrost, firstColdOf } = restOf(SEASON, context);
  // From the middle of September, 1 °C on the 16th at midnight, to that of October, −3 °C, 30.5 days: −1 °C after 15.25 of them,
  // within 1 October, so that the 2nd is the first day to begin with it.
  expect(firstFrost).toBe('2026-10-02');
  // From noon of 16 October 20 K are lost in 30.5 days: 13.8 K after 21.05 of them, so from 7 November on.
  expect(firstColdOf('store', -23.8)).toBe('2026-11-07');
  // Outdoors it is 4 K colder: 9.8 K after 14.9 days.
  expect(firstColdOf('outdoors', -23.8)).toBe('2026-11-01');
  expect(firstColdOf('store', -31)).toBeUndefined();
});
