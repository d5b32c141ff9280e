import { expect, test } from 'vitest';
import {
  dailyCurves,
  monthMeansOfHours,
  normalsOf,
  normalYear,
  saturationOverWaterPa,
} from '../../../src/planner/climate/index.ts';
import { COLD } from './places.ts';

test('every day has the mean of its date', () => {
  const { temperatureC } = normalYear(COLD);
  const { meanC } = dailyCurves(COLD.normals);
  for (let d = 0; d < 365; d++) {
    const day = temperatureC.subarray(24 * d, 24 * d + 24);
    expect(day.reduce((sum, t) => sum + t, 0) / 24).toBeCloseTo(meanC[d]!, 9);
  }
  for (const [m, t] of monthMeansOfHours(temperatureC).entries()) expect(t).toBeCloseTo(COLD.normals.meanC[m]!, 3);
});

test('the coldest hour ends at 5 in the morning and the warmest at 2 or 3 in the afternoon', () => {
  const day = Array.from(normalYear(COLD).temperatureC.subarray(24 * 100, 24 * 101));
  expect(day.indexOf(Math.min(...day))).toBe(4);
  expect([13, 14]).toContain(day.indexOf(Math.max(...day)));
});

test('air is never over saturation', () => {
  const { temperatureC, vapourPa } = normalYear(COLD);
  for (let h = 0; h < 8760; h++) expect(vapourPa[h]! <= saturationOverWaterPa(temperatureC[h]!)).toBe(true);
});

test('an hourly climate is given back as it is, and its normals are its own means', () => {
  const temperatureC = Float64Array.from({ length: 8760 }, (_, h) => 5 + 4 * Math.sin((2 * Math.PI * h) / 24));
  const rhPct = new Float64Array(8760).fill(80);
  const climate = { ...COLD, kind: 'hourly' as const, temperatureC, rhPct };
  const normals = normalsOf(climate);
  for (let m = 0; m < 12; m++) {
    expect(normals.meanC[m]!).toBeCloseTo(5, 9);
    expect(normals.minC[m]!).toBeCloseTo(1, 9);
    expect(normals.maxC[m]!).toBeCloseTo(9, 9);
    expect(normals.rhPct[m]!).toBe(80);
  }
  expect(normalYear(climate).temperatureC).toEqual(temperatureC);
});

test('an hour that is not a number is refused', () => {
  const temperatureC = new Float64Array(8760).fill(5);
  temperatureC[4000] = Number.NaN;
  const climate = { ...COLD, kind: 'hourly' as const, temperatureC, rhPct: new Float64Array(8760).fill(80) };
  expect(() => normalYear(climate)).toThrow(/hour 4000: NaN/);
});
