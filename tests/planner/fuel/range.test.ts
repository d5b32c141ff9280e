/**
 * Each model takes the whole of the range that its docstring states, and refuses what lies outside and what is no number, so that
 * a fault of reading never becomes a figure on a sheet.
 */
import { expect, test } from 'vitest';
import { keepingRow, useByWindow } from '../../../src/planner/fuel/age.ts';
import { expansionPerK, volumeCorrection } from '../../../src/planner/fuel/expansion.ts';
import {
  breathedWaterG,
  breathingBound,
  vapourDensityGM3,
  waterInHydrocarbonMolPct,
  waterTolerancePct,
} from '../../../src/planner/fuel/water.ts';
import { storeYear } from '../fluids/fixture.ts';

/** A model of one number, the ends of its range, and how far outside it is tried. */
test.each([
  ['water in a hydrocarbon', (t: number) => waterInHydrocarbonMolPct(t, 0.155), -70, 120, 0.1],
  ['water in a blend', (t: number) => waterTolerancePct('E10', t).value, -70, 120, 0.1],
  ['volume of fuel', (t: number) => volumeCorrection(t, 745), -70, 120, 0.1],
  ['density of fuel', expansionPerK, 653, 838.9, 0.2],
] as [string, (x: number) => number, number, number, number][])('%s', (_, model, low, high, beyond) => {
  for (const x of [low, (low + high) / 2, high]) expect(model(x), String(x)).toBeGreaterThan(0);
  for (const x of [low - beyond, high + beyond, Number.NaN]) expect(() => model(x), String(x)).toThrow(RangeError);
});

test('of what can be nought but not less: heads of air, swings, vapour', () => {
  expect([breathedWaterG(0, 10, 10, 5), breathedWaterG(10, 0, 10, 5), breathedWaterG(10, 10, 10, 0)]).toEqual([
    0, 0, 0,
  ]);
  expect(vapourDensityGM3(0, 10)).toBe(0);
  for (const less of [-0.1, Number.NaN]) {
    expect(() => breathedWaterG(less, 10, 10, 5)).toThrow(RangeError);
    expect(() => breathedWaterG(10, less, 10, 5)).toThrow(RangeError);
    expect(() => breathedWaterG(10, 10, 10, less)).toThrow(RangeError);
    expect(() => vapourDensityGM3(less, 10)).toThrow(RangeError);
  }
});

// By their formulas: benzene, C6H6, has 1.008 / 12.011 = 0.084, methane, CH4, four times as much, 0.336; none has more.
test('hydrocarbons alone have a hydrogen–carbon ratio', () => {
  for (const ratio of [0.084, 0.336]) expect(waterInHydrocarbonMolPct(20, ratio)).toBeGreaterThan(0);
  for (const ratio of [0.05, 0.34, Number.NaN]) expect(() => waterInHydrocarbonMolPct(20, ratio)).toThrow(RangeError);
});

test('a tank breathes at least as its air does', () => {
  const store = storeYear();
  expect(breathingBound(10, store, '2026-11-01', '2026-11-01', 1)).toMatchObject({
    nights: 0,
    waterML: 0,
    meanSwingK: 0,
  });
  for (const factor of [0.99, Number.NaN])
    expect(() => breathingBound(10, store, '2026-11-01', '2027-03-01', factor)).toThrow(RangeError);
});

// Half a month is 15.2 days of 365.25 / 12 / 2; 30 °C halves the life that 20 °C leaves, by the row's own source.
test('parts of a month are counted in days', () => {
  const untreated = keepingRow('tank-untreated');
  expect(untreated.months).toEqual({ low: 1, high: 3 });
  expect(useByWindow('2026-06-01', untreated, 20)).toEqual({ earliest: '2026-07-01', latest: '2026-09-01' });
  expect(useByWindow('2026-06-01', untreated, 30)).toEqual({ earliest: '2026-06-16', latest: '2026-07-16' });
});
