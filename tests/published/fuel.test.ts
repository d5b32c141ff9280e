import { expect, test } from 'vitest';
import { vapourPressurePa } from '../../src/planner/climate/index.ts';
import {
  breathedWaterG,
  expansionPerK,
  expansionRatio,
  KEEPING,
  keepingRow,
  lifeShare,
  vapourDensityGM3,
  waterInHydrocarbonPpm,
  waterTolerancePct,
} from '../../src/planner/fuel/index.ts';
import { localLimit } from '../../src/planner/fuel/limits.ts';
import cases from './fuel.json' with { type: 'json' };

test.each(cases.alpha)('swelling of petrol of $densityKgM3 kg/m³', ({ densityKgM3, alphaPerK }) => {
  expect(expansionPerK(densityKgM3)).toBeCloseTo(alphaPerK, 6);
});

test.each(cases.expansion)('petrol from $fromC to $toC °C', ({ fromC, toC, densityKgM3, growth }) => {
  expect(expansionRatio(fromC, toC, densityKgM3) - 1).toBeCloseTo(growth, 3);
});

test.each(cases.textbook)(
  'the standard swells more than the textbook, so the tank stays under its brim',
  ({ alphaPerK }) => {
    expect(expansionPerK(745)).toBeGreaterThan(alphaPerK);
  },
);

test.each(cases.e10)('E10 holds $volPct % of water at $temperatureC °C', ({ temperatureC, volPct }) => {
  const { value, low, high } = waterTolerancePct('E10', temperatureC);
  // The points themselves scatter by a tenth (the 10 °F and 0 °F points have the same figure).
  expect(Math.abs(value / volPct - 1)).toBeLessThan(0.1);
  expect(volPct).toBeGreaterThanOrEqual(low);
  expect(volPct).toBeLessThanOrEqual(high);
});

// A point without a temperature can only be told to lie within the curve's range from −20 to 30 °C.
test.each(cases.e10WithoutTemperature)('E10 point without a temperature: $volPct %', ({ volPct }) => {
  expect(volPct).toBeGreaterThan(waterTolerancePct('E10', -20).low);
  expect(volPct).toBeLessThan(waterTolerancePct('E10', 30).high);
});

test.each(cases.e0)('petrol of HC $hydrogenCarbon at $temperatureC °C', ({ hydrogenCarbon, temperatureC, ppmMass }) => {
  // Printed in whole ppm.
  expect(Math.abs(waterInHydrocarbonPpm(temperatureC, hydrogenCarbon) - ppmMass)).toBeLessThan(0.75);
});

test.each(cases.e0Quoted)(
  'the 150 ppm quoted for petrol without ethanol lies near the law',
  ({ ppmMass, temperatureC }) => {
    expect(ppmMass / waterInHydrocarbonPpm(temperatureC, 0.155)).toBeLessThan(1.3);
    expect(ppmMass / waterInHydrocarbonPpm(temperatureC, 0.155)).toBeGreaterThan(1 / 1.3);
  },
);

test.each(cases.e15)('E15 at the assumed temperature', ({ volPct }) => {
  expect(waterTolerancePct('E15', 15.6).value).toBeCloseTo(volPct, 2);
});

test.each(cases.breathing)('a tank breathes $gramsPerDay g a day at most', (c) => {
  const vapour = vapourDensityGM3(vapourPressurePa(c.meanC, c.rhPct), c.meanC);
  const perDay = breathedWaterG(c.headSpaceL, c.swingK, c.meanC, vapour);
  expect(perDay).toBeCloseTo(c.gramsPerDay, 4);
  expect(perDay * 180).toBeCloseTo(c.gramsIn180Days, 2);
});

test.each(cases.vapour)('vapour at $temperatureC °C, $rhPct %', ({ temperatureC, rhPct, gM3 }) => {
  expect(Math.abs(vapourDensityGM3(vapourPressurePa(temperatureC, rhPct), temperatureC) - gM3)).toBeLessThan(0.02);
});

test.each(cases.shelfLife)('an opened can keeps $months months at $meanC °C', ({ meanC, months }) => {
  expect(keepingRow('can').months.high * lifeShare(meanC)).toBeCloseTo(months, 6);
});

test.each(cases.tankLife)('untreated fuel in a tank: the spread holds $months months', ({ months }) => {
  const { low, high } = KEEPING.find((k) => k.id === 'tank-untreated')!.months;
  expect(months).toBeGreaterThanOrEqual(low);
  expect(months).toBeLessThanOrEqual(high);
});

test.each(cases.localLimits)('local limit, $country', ({ country, withinL, beyondL }) => {
  expect(localLimit(country, withinL).exceeded).toBe(false);
  expect(localLimit(country, beyondL).exceeded).toBe(true);
  expect(localLimit(country, beyondL).text).toMatch(/check your local code/i);
});
