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

const rest = (lastUse: string, firstUse: string, of = context) => restOf({ ...SEASON, lastUse, firstUse }, of);

test('a rest has its days, its months each once, and the lowest cold of them in the store and outdoors', () => {
  expect(rest('2026-10-31', '2027-03-01')).toMatchObject({
    from: '2026-10-31',
    to: '2027-03-01',
    days: 121,
    months: [10, 11, 12, 1, 2, 3],
    designLowC: -45,
    outdoorLowC: -49,
  });
  expect(rest('2026-04-30', '2026-05-01')).toMatchObject({
    days: 1,
    months: [4, 5],
    designLowC: -25,
    outdoorLowC: -29,
  });
  expect(rest('2026-06-05', '2026-06-20')).toMatchObject({ days: 15, months: [6], designLowC: -10, outdoorLowC: -14 });
  // A rest of more than a year has each month once.
  expect(rest('2026-06-05', '2028-08-01')).toMatchObject({
    days: 788,
    months: [6, 7, 8, 9, 10, 11, 12, 1, 2, 3, 4, 5],
  });
  expect(() => rest('2026-06-05', '2026-06-05')).toThrow(
    'found a rest from 2026-06-05 to 2026-06-05, expected at least one day',
  );
});

test('frost since less than three months is told with its day, a longer one is the season of the machine itself', () => {
  // It begins on 20 September: 18 December is 89 days later, the 19th ninety.
  expect(rest('2026-12-18', '2027-05-01').firstFrost).toBe('2026-09-20');
  expect(rest('2026-12-19', '2027-05-01').firstFrost).toBe('2026-12-19');
  expect(rest('2026-06-01', '2027-05-01').firstFrost).toBe('2026-09-20');
  expect(rest('2026-06-01', '2026-09-20').firstFrost).toBe('2026-09-20');
  expect(rest('2026-06-01', '2026-09-19').firstFrost).toBeUndefined();
});

test('lows are drawn through the turn of the year as between any other two months', () => {
  // −10 °C at noon of 16 December, −20 °C 31 days later: −15 °C with the beginning of the year.
  const winter = [-20, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, -10];
  const turning = { designLow: { designC: winter, typicalC: winter }, outdoors: { designC: winter, typicalC: winter } };
  const { firstColdOf } = rest('2026-12-10', '2027-05-01', turning as unknown as PlaceContext);
  expect(firstColdOf('store', -15)).toBe('2027-01-01');
  // −14 °C after 12.4 days, −16 °C after 18.6: the first days to begin with them are 29 December and 5 January.
  expect(firstColdOf('store', -14)).toBe('2026-12-29');
  expect(firstColdOf('store', -16)).toBe('2027-01-05');
  expect(firstColdOf('outdoors', -20)).toBeUndefined();
});
