import { expect, test } from 'vitest';
import { HOURS_PER_YEAR } from '../../src/planner/climate/index.ts';
import type { Enclosure } from '../../src/planner/storage/index.ts';
import { storeYearOf } from '../../src/planner/storage/index.ts';
import { stepWeights } from '../../src/planner/storage/step.ts';
import cases from './storage.json' with { type: 'json' };

const store = (timeConstantH: number): Enclosure => ({
  id: 'test',
  timeConstantH,
  houseCoupling: 0,
  houseC: 18,
  gainK: 0,
  airChangesPerH: 1,
});

const DAY = (2 * Math.PI) / 24;

test('every case names its source', () => {
  for (const item of [...cases.damping, ...cases.ramp]) expect(item.source.length).toBeGreaterThan(10);
});

test.each(cases.damping)('a store of $timeConstantH h damps and delays the daily swing', (c) => {
  const temperatureC = Float64Array.from({ length: HOURS_PER_YEAR }, (_, h) => 10 * Math.sin(DAY * h));
  const vapourPa = new Float64Array(HOURS_PER_YEAR).fill(500);
  const { airC } = storeYearOf({ temperatureC, vapourPa }, store(c.timeConstantH));
  let [inPhase, behind] = [0, 0];
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    inPhase += (2 / HOURS_PER_YEAR) * airC[h]! * Math.sin(DAY * h);
    behind -= (2 / HOURS_PER_YEAR) * airC[h]! * Math.cos(DAY * h);
  }
  // Straight lines between hours take 0.6 % off a daily sine.
  expect(Math.abs(Math.hypot(inPhase, behind) / 10 / c.amplitudeRatio - 1)).toBeLessThan(0.02);
  expect(Math.atan2(behind, inPhase) / DAY).toBeCloseTo(c.lagH, 1);
});

test.each(cases.ramp)('metal of $timeConstantH h lags by $lagK K in air warming $rampKPerH K/h', (c) => {
  const { keep, before, now } = stepWeights(c.timeConstantH);
  let metal = 0;
  let air = 0;
  for (let h = 1; h <= 40; h++) {
    metal = keep * metal + before * air + now * (h * c.rampKPerH);
    air = h * c.rampKPerH;
  }
  // Both sides are printed to 0.01 K.
  expect(Math.abs(air - metal - c.lagK)).toBeLessThan(0.02);
});
