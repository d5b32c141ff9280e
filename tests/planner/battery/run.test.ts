/** The days of a rest and the battery by itself through them, at their borders. Losses are chosen to be exact: 3 % a day. */
import { expect, test } from 'vitest';
import { freezingPointC } from '../../../src/planner/battery/freezing.ts';
import {
  chemistryRow,
  dailyLoss,
  dayReached,
  lossCurve,
  lossRates,
  restOf,
  statePath,
} from '../../../src/planner/battery/index.ts';
import { temperatureFactor } from '../../../src/planner/battery/loss.ts';
import { dayOfYear } from '../../../src/planner/battery/rest.ts';
import { alonePath, dueDays, freezingMonths, lastTripIndex, smallestMargin } from '../../../src/planner/battery/run.ts';
import { addDays } from '../../../src/planner/dates.ts';
import { battery, COLD_LOW, COLD_STORE, exactly } from './world.ts';

const THREE_A_DAY = { selfPctPerH: 0, drainPctPerH: 0.125 };
const curveOf = (days: number) => lossCurve(restOf('2026-01-01', addDays('2026-01-01', days)), { roomC: 20 }, 9);
const ROW = chemistryRow('flooded-antimony');

test('a rest has one day to 3660, and its dates run from the last use to the first', () => {
  expect(restOf('2026-12-31', '2027-01-01')).toMatchObject({ days: 1, dates: ['2026-12-31', '2027-01-01'] });
  expect(restOf('2026-01-01', addDays('2026-01-01', 3660)).dates).toHaveLength(3661);
  expect(() => restOf('2026-01-01', addDays('2026-01-01', 3661))).toThrow(
    'found last use 2026-01-01 and first use 2036-01-10, expected first use 1 to 3660 days later',
  );
  expect(() => restOf('2026-01-01', '2026-01-01')).toThrow(/expected first use 1 to 3660 days later$/);
});

test('each day has its month and its place in a year of 365 days; 29 February is taken as the 28th', () => {
  const rest = restOf('2028-02-27', '2028-03-02');
  expect([...rest.month]).toEqual([2, 2, 2, 3, 3]);
  expect([...rest.dayOfYear]).toEqual([57, 58, 58, 59, 60]);
  expect(dayOfYear('2026-01-01')).toBe(0);
  expect(dayOfYear('2026-03-29')).toBe(31 + 28 + 28);
  expect(dayOfYear('2026-12-31')).toBe(364);
});

test('the doubling step is taken from 1 to 100 K, in a room and in a store', () => {
  const rest = restOf('2026-01-01', '2026-01-09');
  for (const where of [{ roomC: 20 }, { store: { ...COLD_STORE, airC: COLD_STORE.airC.slice() } }]) {
    for (const step of [1, 100]) expect(() => lossCurve(rest, where, step)).not.toThrow();
    for (const step of [0.99, 100.01])
      expect(() => lossCurve(rest, where, step)).toThrow(`found doubling step ${step} K, expected 1 to 100 K`);
  }
  expect(temperatureFactor(29, 9)).toBe(2);
  expect(temperatureFactor(2, 9)).toBe(0.25);
});

test('the warmth of a store is that of its own days, the first of them without hours', () => {
  const curve = lossCurve(restOf('2026-12-30', '2027-01-02'), { store: COLD_STORE }, 9);
  expect([...curve.temperatureC]).toEqual([363, 364, 0, 1].map((day) => COLD_STORE.dayMeanC[day]));
  expect(curve.equivalentH[0]).toBe(0);
  const room = lossCurve(restOf('2026-12-30', '2027-01-02'), { roomC: 29 }, 9);
  expect([...room.temperatureC]).toEqual([29, 29, 29, 29]);
  expect([...room.equivalentH]).toEqual([0, 48, 96, 144]);
});

test('a rate of nothing is one, one under nothing is refused', () => {
  const rates = (own: object) => () => lossRates(battery('agm', 10, own), true);
  expect(rates({ selfDischargePctPerMonth: exactly(0) })().low).toEqual({ selfPctPerH: 0, drainPctPerH: 0 });
  expect(rates({ selfDischargePctPerMonth: exactly(-1) })).toThrow(
    /^found loss rates -0\.0013\d+ and 0 %\/h, expected 0/,
  );
  expect(rates({ drainMA: exactly(-10) })).toThrow(/^found loss rates 0\.0041\d+ and -0\.1 %\/h, expected 0 or more$/);
  expect(rates({ health: exactly(0) })).toThrow('found usable capacity 0 Ah, expected more than 0');
});

test('each rate takes its own end of both ranges', () => {
  const rates = lossRates(
    battery('agm', 10, {
      selfDischargePctPerMonth: { value: 7.2, low: 3.6, high: 14.4 },
      drainMA: { value: 2, low: 1, high: 4 },
    }),
    true,
  );
  // 7.2 % in 720 h is 0.01 %/h; 1 mA of 10 Ah is 0.01 %/h.
  const close = (self: number, drain: number) => ({
    selfPctPerH: expect.closeTo(self, 12),
    drainPctPerH: expect.closeTo(drain, 12),
  });
  expect(rates).toEqual({ low: close(0.005, 0.01), expected: close(0.01, 0.02), high: close(0.02, 0.04) });
});

test('the first day at the level counts, the last day of the rest included', () => {
  expect(dayReached(curveOf(30), THREE_A_DAY, 0, 100, 94)).toBe(2);
  expect(dayReached(curveOf(2), THREE_A_DAY, 0, 100, 94)).toBe(2);
  expect(dayReached(curveOf(2), THREE_A_DAY, 0, 100, 93.9)).toBe(Number.POSITIVE_INFINITY);
  expect(dayReached(curveOf(2), THREE_A_DAY, 1, 100, 97)).toBe(2);
  expect(dayReached(curveOf(2), THREE_A_DAY, 2, 90, 97)).toBe(Number.POSITIVE_INFINITY);
  // Under the level from the start: reached on the next day.
  expect(dayReached(curveOf(30), THREE_A_DAY, 4, 50, 75)).toBe(5);
  expect([...dailyLoss(curveOf(3), THREE_A_DAY)]).toEqual([0, 3, 3, 3]);
});

test('a path is set anew by each reset in turn: a charge never lowers, a reading never raises', () => {
  const path = (resets: Parameters<typeof statePath>[3]) => [...statePath(curveOf(4), THREE_A_DAY, 100, resets)];
  expect(path([])).toEqual([100, 97, 94, 91, 88]);
  expect(path([{ index: 2, pct: 90, kind: 'at-most' }])).toEqual([100, 97, 90, 87, 84]);
  expect(path([{ index: 2, pct: 99, kind: 'at-most' }])).toEqual([100, 97, 94, 91, 88]);
  expect(path([{ index: 2, pct: 99, kind: 'charge' }])).toEqual([100, 97, 99, 96, 93]);
  expect(path([{ index: 2, pct: 90, kind: 'charge' }])).toEqual([100, 97, 94, 91, 88]);
  expect(
    path([
      { index: 0, pct: 80, kind: 'at-most' },
      { index: 2, pct: 60, kind: 'at-most' },
      { index: 2, pct: 95, kind: 'charge' },
      { index: 4, pct: 100, kind: 'charge' },
    ]),
  ).toEqual([80, 77, 95, 92, 100]);
});

// 25 % at 3 % a day is gone on the ninth day.
test('what is due in the last week is left to the start-up, in the last two where it goes no more than 5 % under until then', () => {
  const last = (pctPerDay: number, days = 100) =>
    lastTripIndex(curveOf(days), { selfPctPerH: 0, drainPctPerH: pctPerDay / 24 });
  // 5 % at 3 % a day is gone in less than two days, at 0.5 % in ten, at 0.1 % in fifty.
  expect(last(3)).toBe(93);
  expect(last(0.5)).toBe(90);
  expect(last(0.1)).toBe(86);
  expect(last(0.1, 10)).toBe(0);
});

test('a battery by itself is due every nine days, but in the last week before first use', () => {
  const due = (days: number, startPct = 100, from = 0) => dueDays(ROW, curveOf(days), THREE_A_DAY, startPct, from);
  expect(due(34)).toEqual([9, 18]);
  expect(due(35)).toEqual([9, 18, 27]);
  expect(due(35, 81)).toEqual([2, 11, 20]);
  expect(due(35, 90, 5)).toEqual([10, 19]);
  const { days, path } = alonePath('flooded-antimony', curveOf(20), THREE_A_DAY, 100);
  expect(days).toEqual([9]);
  expect([...path].slice(7, 12)).toEqual([79, 76, 100, 97, 94]);
});

test('the margin of a month is reckoned at its own lowest charge, in its own cold', () => {
  const rest = restOf('2026-01-30', '2026-03-02');
  const path = statePath(lossCurve(rest, { roomC: 20 }, 9), { selfPctPerH: 0, drainPctPerH: 0.125 }, 100, [
    { index: 20, pct: 90, kind: 'charge' },
  ]);
  // January: to the 31st; February: to the 18th, 57 %; March: from 90 % on the 19th February to 2 March.
  const months = freezingMonths('gel', rest, path, { designLow: COLD_LOW });
  const points = [97, 43, 57].map((pct) => freezingPointC('gel', pct));
  expect(path[1]).toBe(97);
  expect(path[19]).toBe(43);
  expect(path[31]).toBe(57);
  expect(months).toEqual([
    { month: 1, designLowC: -34, typicalLowC: -25, freezingPointC: points[0], marginK: -34 - points[0]! },
    { month: 2, designLowC: -33, typicalLowC: -24, freezingPointC: points[1], marginK: -33 - points[1]! },
    { month: 3, designLowC: -27, typicalLowC: -18, freezingPointC: points[2], marginK: -27 - points[2]! },
  ]);
  expect(smallestMargin(months)).toEqual({ minK: months[1]!.marginK, month: 2 });
  expect(freezingMonths('gel', rest, path, { roomC: 18 }).map((m) => [m.designLowC, m.typicalLowC])).toEqual([
    [18, 18],
    [18, 18],
    [18, 18],
  ]);
});
