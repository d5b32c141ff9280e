import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dailyCurves, monthMeans, vapourPressurePa } from '../../../src/planner/climate/index.ts';
import { COLD, COLD_SOUTH, withNormals } from './places.ts';

const worstGap = (got: number[], wanted: number[]) => Math.max(...got.map((v, m) => Math.abs(v - wanted[m]!)));

test.each([COLD, COLD_SOUTH])('the mean over each month returns the normal: $id', ({ normals }) => {
  const curves = dailyCurves(normals);
  expect(worstGap(monthMeans(curves.meanC), normals.meanC)).toBeLessThan(0.05);
  expect(worstGap(monthMeans(curves.minC), normals.minC)).toBeLessThan(0.05);
  expect(worstGap(monthMeans(curves.maxC), normals.maxC)).toBeLessThan(0.05);
  const vapour = normals.meanC.map((t, m) => vapourPressurePa(t, normals.rhPct[m]!));
  for (const [m, e] of monthMeans(curves.vapourPa).entries()) expect(e / vapour[m]!).toBeCloseTo(1, 3);
});

test('any normals in order give finite curves in order, and their months back', () => {
  const month = fc.tuple(
    fc.double({ min: -45, max: 32, noNaN: true }),
    fc.double({ min: 0, max: 12, noNaN: true }),
    fc.double({ min: 0, max: 12, noNaN: true }),
    fc.double({ min: 5, max: 100, noNaN: true }),
  );
  fc.assert(
    fc.property(fc.array(month, { minLength: 12, maxLength: 12 }), (months) => {
      const { normals } = withNormals({
        meanC: months.map(([t]) => t),
        minC: months.map(([t, below]) => t - below),
        maxC: months.map(([t, , above]) => t + above),
        rhPct: months.map(([, , , rh]) => rh),
      });
      const { meanC, minC, maxC, vapourPa } = dailyCurves(normals);
      expect(worstGap(monthMeans(meanC), normals.meanC)).toBeLessThan(0.05);
      expect(worstGap(monthMeans(minC), normals.minC)).toBeLessThan(0.05);
      expect(worstGap(monthMeans(maxC), normals.maxC)).toBeLessThan(0.05);
      for (let d = 0; d < 365; d++) {
        expect(minC[d]! <= meanC[d]! && meanC[d]! <= maxC[d]! && vapourPa[d]! > 0).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});

test('the curve is smooth over the turn of the year', () => {
  const { meanC } = dailyCurves(COLD.normals);
  const steps = Array.from(meanC, (t, d) => meanC[(d + 1) % 365]! - t);
  const bends = steps.map((s, d) => Math.abs(steps[(d + 1) % 365]! - s));
  expect(bends[364]!).toBeLessThan(0.03);
  expect(Math.max(...bends)).toBeLessThan(0.03);
});

test('normals that cannot be are refused with month, value and what is expected', () => {
  const bad = (changes: Parameters<typeof withNormals>[0]) => () => dailyCurves(withNormals(changes).normals);
  const put = (values: number[], value: number) => values.map((v, m) => (m === 3 ? value : v));
  expect(bad({ meanC: put(COLD.normals.meanC, Number.NaN) })).toThrow(/mean temperature, month 4: NaN/);
  expect(bad({ rhPct: put(COLD.normals.rhPct, 101) })).toThrow(/relative humidity, month 4: 101/);
  expect(bad({ minC: put(COLD.normals.minC, 9) })).toThrow(/month 4: minimum 9, mean 5/);
  expect(bad({ maxC: COLD.normals.maxC.slice(1) })).toThrow(/11 values found, 12 expected/);
  expect(bad({ recordLowC: COLD.normals.minC.map((t) => t + 1) })).toThrow(/lowest on record/);
});
