import { expect, test } from 'vitest';
import { checkEnclosure } from '../../../src/planner/storage/index.ts';
import type { Enclosure } from '../../../src/planner/storage/types.ts';

const SHED: Enclosure = {
  id: 'shed',
  timeConstantH: 3,
  houseCoupling: 0,
  houseC: 18,
  gainK: 0,
  airChangesPerH: 1,
};

test.each<[keyof Enclosure, number, number, string, string]>([
  ['timeConstantH', 0, 1000, 'time constant', 'h'],
  ['houseCoupling', 0, 1, 'share of the house', ''],
  ['houseC', -10, 35, 'house temperature', '°C'],
  ['gainK', -20, 40, 'gain', 'K'],
  ['airChangesPerH', 0.001, 1000, 'air changes', '1/h'],
  ['setpointC', -30, 35, 'set point', '°C'],
  ['dampFloorPa', 0, 2000, 'damp floor', 'Pa'],
  ['maxRhPct', 5, 100, 'highest relative humidity', '%'],
])('%s lies between %d and %d', (field, low, high, what, unit) => {
  const check = (value: number) => () => checkEnclosure({ ...SHED, [field]: value });
  expect(check(low)).not.toThrow();
  expect(check(high)).not.toThrow();
  for (const value of [low - 0.0005, high + 0.5, Number.NaN])
    expect(check(value)).toThrow(`shed: ${what}: ${value} ${unit} found, ${low} to ${high} ${unit} expected`);
});

test('what a store has not need not be said', () => {
  expect(() => checkEnclosure(SHED)).not.toThrow();
});
