import { expect, test } from 'vitest';
import { designLow } from '../../../src/planner/climate/index.ts';
import { COLD, COLD_SOUTH, withNormals } from './places.ts';

test('a known record low is the design low', () => {
  const recordLowC = COLD.normals.minC.map((t) => t - 20);
  const low = designLow(withNormals({ recordLowC }));
  expect(low.designC).toEqual(recordLowC);
  for (let m = 0; m < 12; m++) expect(low.typicalC[m]!).toBeGreaterThanOrEqual(low.designC[m]!);
});

test('without a record it lies under the typical low, and that under the mean minimum', () => {
  const { designC, typicalC } = designLow(COLD);
  for (let m = 0; m < 12; m++) {
    expect(designC[m]!).toBeLessThan(typicalC[m]!);
    expect(typicalC[m]!).toBeLessThan(COLD.normals.minC[m]!);
  }
});

test('the months are those of the place, not of a hemisphere', () => {
  const [north, south] = [designLow(COLD).designC, designLow(COLD_SOUTH).designC];
  expect(south.indexOf(Math.min(...south))).toBe((north.indexOf(Math.min(...north)) + 6) % 12);
});

test('an hourly year gives its own lowest hours as typical', () => {
  const temperatureC = Float64Array.from({ length: 8760 }, (_, h) => 10 * Math.cos((2 * Math.PI * h) / 8760));
  temperatureC[5000] = -30;
  const climate = { ...COLD, kind: 'hourly' as const, temperatureC, rhPct: new Float64Array(8760).fill(80) };
  const low = designLow(climate);
  expect(low.typicalC[6]).toBe(-30);
  expect(low.designC[6]!).toBeLessThanOrEqual(-30);
});
