import { expect, test } from 'vitest';
import { readHourlyYears } from '../../src/cli/climate/hourly-years.ts';
import type { NormalsClimate } from '../../src/planner/climate/index.ts';
import { MONTH_START, normalYear } from '../../src/planner/climate/index.ts';
import { enclosureById, storeDesignLow, storeNormalYear } from '../../src/planner/storage/index.ts';
import cases from './climate.json' with { type: 'json' };

const years = readHourlyYears(new URL('data/climate', import.meta.url).pathname);

test('every case and every hourly year names its source', () => {
  for (const item of cases.dayProfile) expect(item.source.length).toBeGreaterThan(10);
  expect(years.length).toBeGreaterThanOrEqual(4);
  for (const { climate } of years) {
    expect(climate.source.length).toBeGreaterThan(10);
    expect(climate.attribution.length).toBeGreaterThan(5);
  }
});

test.each(cases.dayProfile)('the day profile, shifted by the same amount at every hour', (c) => {
  const same = (value: number) => Array<number>(12).fill(value);
  const place: NormalsClimate = {
    kind: 'normals',
    id: 'even',
    name: 'the same all year',
    latitudeDeg: 45,
    elevationM: 0,
    normals: { meanC: same(6), minC: same(c.maxC - c.rangeK), maxC: same(c.maxC), rhPct: same(70) },
    source: 'made up for tests',
    attribution: 'none',
  };
  const day = Array.from(normalYear(place).temperatureC.subarray(24 * 50, 24 * 51));
  const shift = day[0]! - c.hours1to24C[0]!;
  // The fractions put the mean of a day at 0.536 of the range under the maximum.
  expect(shift).toBeCloseTo(6 - (c.maxC - 0.536 * c.rangeK), 2);
  for (const [h, t] of day.entries()) expect(t - c.hours1to24C[h]!).toBeCloseTo(shift, 6);
});

test('the design low holds for every hour of the real years, outdoors and in stores', () => {
  for (const { climate, normals } of years) {
    const { temperatureC: _t, rhPct: _rh, ...place } = climate;
    const fromNormals: NormalsClimate = { ...place, kind: 'normals', normals };
    for (const id of ['open', 'slab-garage', 'masonry', 'insulated', 'attached-garage', 'cellar']) {
      const enclosure = enclosureById(id);
      const { designC } = storeDesignLow(fromNormals, enclosure);
      const { airC } = storeNormalYear(climate, enclosure);
      for (let m = 0; m < 12; m++) {
        const lowest = Math.min(...airC.subarray(24 * MONTH_START[m]!, 24 * MONTH_START[m + 1]!));
        expect(lowest, `${climate.name}, ${id}, month ${m + 1}`).toBeGreaterThan(designC[m]!);
      }
    }
  }
});

test('the typical low lies near the lowest hour of a real month', () => {
  for (const id of ['open', 'slab-garage', 'masonry', 'attached-garage']) {
    const enclosure = enclosureById(id);
    const gaps = years.flatMap(({ climate, normals }) => {
      const { temperatureC: _t, rhPct: _rh, ...place } = climate;
      const { typicalC } = storeDesignLow({ ...place, kind: 'normals', normals }, enclosure);
      const { airC } = storeNormalYear(climate, enclosure);
      return typicalC.map((t, m) => Math.min(...airC.subarray(24 * MONTH_START[m]!, 24 * MONTH_START[m + 1]!)) - t);
    });
    gaps.sort((a, b) => a - b);
    // A single month of a single year may be milder or harder by a few kelvin; the middle of 48 must not be.
    expect(Math.abs(gaps[24]!)).toBeLessThan(2);
  }
});
