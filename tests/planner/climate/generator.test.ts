import { expect, test } from 'vitest';
import { monthMeansOfHours, readTable, WATER_TABLE, weatherYears } from '../../../src/planner/climate/index.ts';
import { all, COLD, COLD_SOUTH, withNormals } from './places.ts';

const fresh = (climate = COLD) => ({ ...climate });

test('the same seed gives the same weather, another seed another', () => {
  const a = weatherYears(fresh(), { seed: 7, years: 3 });
  const other = weatherYears(fresh(), { seed: 8, years: 3 });
  const again = weatherYears(fresh(), { seed: 7, years: 3 });
  expect(again.temperatureC).toEqual(a.temperatureC);
  expect(again.vapourPa).toEqual(a.vapourPa);
  expect(other.temperatureC).not.toEqual(a.temperatureC);
});

test.each([COLD, COLD_SOUTH])('twenty years return the normals: $id', (climate) => {
  const { temperatureC, vapourPa } = weatherYears(fresh(climate), { seed: 1, years: 20 });
  const humidity = Float64Array.from(vapourPa, (e, i) => (100 * e) / readTable(WATER_TABLE, temperatureC[i]!));
  const { meanC, minC, maxC, rhPct } = climate.normals;
  for (const [m, t] of monthMeansOfHours(temperatureC).entries()) expect(Math.abs(t - meanC[m]!)).toBeLessThan(0.05);
  for (const [m, rh] of monthMeansOfHours(humidity).entries()) expect(Math.abs(rh - rhPct[m]!)).toBeLessThan(0.5);
  const range = new Float64Array(temperatureC.length);
  for (let h = 0; h < range.length; h += 24) {
    const day = temperatureC.subarray(h, h + 24);
    range.fill(Math.max(...day) - Math.min(...day), h, h + 24);
  }
  for (const [m, r] of monthMeansOfHours(range).entries()) {
    expect(Math.abs(r - (maxC[m]! - minC[m]!))).toBeLessThan(0.3);
  }
});

test('a single year returns its temperature as well', () => {
  const { temperatureC } = weatherYears(fresh(), { seed: 2, years: 1 });
  for (const [m, t] of monthMeansOfHours(temperatureC).entries()) {
    expect(Math.abs(t - COLD.normals.meanC[m]!)).toBeLessThan(0.05);
  }
});

test('a winter has thaws and cold spells, which the normal year has not', () => {
  const { temperatureC } = weatherYears(fresh(), { seed: 1, years: 20 });
  let [thaw, cold] = [0, 0];
  for (let y = 0; y < 20; y++) {
    for (const t of temperatureC.subarray(8760 * y, 8760 * y + 24 * 31)) {
      if (t > 0) thaw++;
      if (t < -24) cold++;
    }
  }
  expect(thaw).toBeGreaterThan(20 * 5);
  expect(cold).toBeGreaterThan(20 * 5);
});

test.each([
  ['always damp and warm', { meanC: all(26), minC: all(23), maxC: all(30), rhPct: all(92) }],
  ['as damp as can be', { rhPct: all(100) }],
  ['as dry as can be', { rhPct: all(3) }],
  ['hard cold', { meanC: all(-60), minC: all(-65), maxC: all(-55), rhPct: all(70) }],
  ['no daily swing', { minC: COLD.normals.meanC, maxC: COLD.normals.meanC }],
])('%s: every hour is finite and at or under saturation', (_name, changes) => {
  const { temperatureC, vapourPa } = weatherYears(withNormals(changes), { seed: 1, years: 2 });
  for (let h = 0; h < temperatureC.length; h++) {
    const saturation = readTable(WATER_TABLE, temperatureC[h]!);
    expect(vapourPa[h]! >= 0 && vapourPa[h]! <= saturation * 1.000001).toBe(true);
  }
});

test('a number of years that is none is refused', () => {
  expect(() => weatherYears(fresh(), { seed: 1, years: 0 })).toThrow(/years: 0/);
  expect(() => weatherYears(fresh(), { seed: 0.5, years: 2 })).toThrow(/seed: 0.5/);
});
