import { expect, test } from 'vitest';
import { exp, log, power } from '../../src/planner/elementary.ts';

/** Numbers that are the same in every run. */
function* drawn(count: number, low: number, high: number): Generator<number> {
  let state = 20_260_725;
  for (let i = 0; i < count; i++) {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    yield low + ((high - low) * state) / 2 ** 32;
  }
}

/** Distance of two numbers in units of the last place, about. */
const units = (found: number, expected: number) => Math.abs(found / expected - 1) / Number.EPSILON;

test('the exponential is the engine’s own to two units in the last place, and below them where it is zero or endless', () => {
  for (const x of [...drawn(20_000, -708, 709), ...drawn(20_000, -3, 3), ...drawn(2_000, -1e-6, 1e-6)])
    expect(units(exp(x), Math.exp(x)), `exp(${x})`).toBeLessThan(2);
  // DLMF 4.2.11 and table values of Abramowitz and Stegun, 4.4.
  expect(exp(0)).toBe(1);
  expect(exp(1)).toBe(Math.E);
  expect(exp(-1)).toBeCloseTo(0.36787944117144233, 16);
  expect([exp(-746), exp(710), exp(Number.NaN)]).toEqual([0, Number.POSITIVE_INFINITY, Number.NaN]);
  expect([exp(Number.NEGATIVE_INFINITY), exp(Number.POSITIVE_INFINITY)]).toEqual([0, Number.POSITIVE_INFINITY]);
  expect(Math.abs(exp(-740) - Math.exp(-740))).toBeLessThanOrEqual(1e-323);
});

test('the logarithm is the engine’s own to two units in the last place', () => {
  for (const x of [...drawn(20_000, 1e-9, 4), ...drawn(20_000, 0.9, 1.1), ...drawn(5_000, 1, 1e12)])
    expect(units(log(x), Math.log(x)), `log(${x})`).toBeLessThanOrEqual(2.5);
  expect(log(1)).toBe(0);
  expect(log(2)).toBe(Math.LN2);
  expect(log(10)).toBeCloseTo(Math.LN10, 15);
  expect(log(5e-324)).toBeCloseTo(-744.4400719213812, 10);
  expect([log(0), log(-1), log(Number.NaN)]).toEqual([Number.NEGATIVE_INFINITY, Number.NaN, Number.NaN]);
  expect(log(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
});

test('powers follow from both', () => {
  expect(power(2, 10)).toBeCloseTo(1024, 9);
  expect(power(10, -2.5)).toBeCloseTo(0.00316227766016838, 16);
  expect(power(0, 0.62)).toBe(0);
});
