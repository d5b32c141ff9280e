import { expect, test } from 'vitest';
import {
  dailyLoss,
  dayReached,
  lossCurve,
  lossPct,
  lossRates,
  restOf,
  statePath,
} from '../../../src/planner/battery/index.ts';
import { battery, COLD_STORE, exactly, sineStore } from './world.ts';

/** The equation as it stands, hour after hour, with a calendar of its own. */
function hourByHour(
  airC: Float64Array,
  from: string,
  days: number,
  b: { r20: number; theta: number; drainMA: number; capacityAh: number; health: number },
  startPct: number,
): number[] {
  const states = [startPct];
  let state = startPct;
  for (let d = 1; d <= days; d++) {
    const date = new Date(`${from}T00:00:00Z`);
    date.setUTCDate(date.getUTCDate() + d);
    const leapDay = date.getUTCMonth() === 1 && date.getUTCDate() === 29;
    const plain = Date.UTC(2025, date.getUTCMonth(), leapDay ? 28 : date.getUTCDate());
    const first = ((plain - Date.UTC(2025, 0, 1)) / 3_600_000) | 0;
    for (let h = 0; h < 24; h++) {
      const self = (b.r20 / 30 / 24) * 2 ** ((airC[first + h]! - 20) / b.theta);
      state -= self + (100 * (b.drainMA / 1000)) / (b.capacityAh * b.health);
    }
    states.push(state);
  }
  return states;
}

test.each([
  ['a winter', '2026-10-25', '2027-04-10', COLD_STORE],
  ['a summer in the south over the turn of the year', '2026-12-01', '2027-03-01', sineStore(15, 8, 6, true)],
  ['a winter with 29 February', '2027-11-01', '2028-04-01', COLD_STORE],
  ['a week', '2026-01-01', '2026-01-08', COLD_STORE],
  ['three years', '2025-10-01', '2028-10-01', COLD_STORE],
])('the summed loss is the equation hour by hour over %s', (_, from, to, store) => {
  const rest = restOf(from, to);
  const b = battery('flooded-antimony', 12, { drainMA: exactly(0.4), health: exactly(0.85) });
  const path = statePath(lossCurve(rest, { store }, 9.1), lossRates(b, true).expected, 1000, []);
  const own = hourByHour(
    store.airC,
    from,
    rest.days,
    { r20: 6, theta: 9.1, drainMA: 0.4, capacityAh: 12, health: 0.85 },
    1000,
  );
  expect(path).toHaveLength(own.length);
  // Rounding of some 26 000 additions.
  own.forEach((state, i) => {
    expect(Math.abs(path[i]! - state)).toBeLessThan(1e-8);
  });
});

test('a battery at 20 °C loses its monthly rate in thirty days, and twice that one doubling step warmer', () => {
  const rest = restOf('2026-06-01', '2026-07-01');
  const rate = lossRates(battery('agm', 10), false).expected;
  expect(lossPct(lossCurve(rest, { roomC: 20 }, 10), rate, 0, 30)).toBeCloseTo(6, 10);
  expect(lossPct(lossCurve(rest, { roomC: 30 }, 10), rate, 0, 30)).toBeCloseTo(12, 10);
});

test('a drain counts only while the lead is on', () => {
  const b = battery('agm', 10, { drainMA: exactly(10) });
  // 10 mA on 10 Ah is 0.1 % an hour.
  expect(lossRates(b, true).expected.drainPctPerH).toBeCloseTo(0.1, 12);
  expect(lossRates(b, false).expected.drainPctPerH).toBe(0);
});

test('the management circuit of a lithium battery draws with the lead off too', () => {
  expect(lossRates(battery('lifepo4', 4), false).expected.drainPctPerH).toBeGreaterThan(0);
});

test('the daily losses add up to the loss between two days', () => {
  const curve = lossCurve(restOf('2026-10-25', '2027-04-10'), { store: COLD_STORE }, 9.1);
  const rate = lossRates(battery('gel', 10), false).high;
  const sum = dailyLoss(curve, rate)
    .slice(11, 51)
    .reduce((a, b) => a + b, 0);
  expect(sum).toBeCloseTo(lossPct(curve, rate, 10, 50), 10);
});

test('the day reached is the first at or under the level, and none where the rest ends before', () => {
  const curve = lossCurve(restOf('2026-01-01', '2026-06-30'), { roomC: 20 }, 9.1);
  // 6 % in 30 d is 0.2 % a day: 5 % is gone at the end of day 25.
  const rate = lossRates(battery('agm', 10), false).expected;
  expect(dayReached(curve, rate, 0, 100, 95.0001)).toBe(25);
  expect(dayReached(curve, rate, 40, 100, 95.0001)).toBe(65);
  expect(dayReached(curve, rate, 0, 100, 10)).toBe(Number.POSITIVE_INFINITY);
});

test('a path never falls under empty, and a charge never lowers it', () => {
  const curve = lossCurve(restOf('2026-01-01', '2026-06-30'), { roomC: 35 }, 9.1);
  const rate = lossRates(battery('lifepo4', 4), false).high;
  const path = statePath(curve, rate, 90, [{ index: 2, pct: 60, kind: 'charge' }]);
  expect(path[2]).toBeGreaterThan(80);
  expect(Math.min(...path)).toBe(0);
});

const stored = (airC: Float64Array) =>
  lossCurve(restOf('2026-01-01', '2026-02-01'), { store: { ...COLD_STORE, airC } }, 9);

test.each([
  ['a store with a missing hour', () => stored(COLD_STORE.airC.slice(1)), /8760/],
  ['a store with a value that is no number', () => stored(new Float64Array(8760).fill(Number.NaN)), /not a number/],
  [
    'a doubling step of nothing',
    () => lossCurve(restOf('2026-01-01', '2026-02-01'), { roomC: 20 }, Number.NaN),
    /doubling step NaN/,
  ],
  ['a first use before the last', () => restOf('2026-02-01', '2026-01-01'), /first use 1 to 3660 days later/],
  ['a battery without capacity', () => lossRates(battery('agm', 0), true), /usable capacity 0 Ah/],
])('%s is refused', (_, act, message) => {
  expect(act).toThrow(message);
});
