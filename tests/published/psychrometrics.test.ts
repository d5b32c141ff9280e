import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import {
  dewPointC,
  frostPointC,
  readTable,
  relativeHumidityPct,
  SURFACE_TABLE,
  saturationOverIcePa,
  saturationOverWaterPa,
  vapourPressurePa,
  WATER_TABLE,
} from '../../src/planner/climate/index.ts';
import cases from './psychrometrics.json' with { type: 'json' };

psychrolib.SetUnitSystem(psychrolib.SI);

const range = (low: number, high: number, step: number) =>
  Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + i * step);

test('every case names its source', () => {
  const { about: _, ...groups } = cases;
  for (const item of Object.values(groups).flat()) expect(item.source.length).toBeGreaterThan(10);
});

test.each(cases.saturation)('saturation at $temperatureC °C', (c) => {
  // Printed to 0.01 Pa.
  expect(saturationOverWaterPa(c.temperatureC)).toBeCloseTo(c.overWaterPa, 1);
  if (c.overIcePa !== null) expect(saturationOverIcePa(c.temperatureC)).toBeCloseTo(c.overIcePa, 1);
  // The Magnus form of the weather services is another fit to the same measurements.
  expect(Math.abs(saturationOverWaterPa(c.temperatureC) / c.magnusWaterPa - 1)).toBeLessThan(0.004);
});

test('saturation agrees with psychrolib, over water from 0.01 °C and over ice below', () => {
  for (const t of range(0.5, 60, 0.5)) {
    expect(saturationOverWaterPa(t) / psychrolib.GetSatVapPres(t)).toBeCloseTo(1, 9);
  }
  for (const t of range(-60, 0, 0.5)) {
    expect(saturationOverIcePa(t) / psychrolib.GetSatVapPres(t)).toBeCloseTo(1, 9);
  }
});

test('dew and frost points agree with psychrolib within its own tolerance of 0.001 K', () => {
  for (const t of range(2, 40, 2)) {
    for (const rh of [30, 50, 70, 90, 99]) {
      const vapourPa = vapourPressurePa(t, rh);
      const dew = psychrolib.GetTDewPointFromVapPres(t, vapourPa);
      if (dew > 0.01) expect(dewPointC(vapourPa)).toBeCloseTo(dew, 2);
      else if (dew < 0) expect(frostPointC(vapourPa)).toBeCloseTo(dew, 2);
    }
  }
  for (const t of range(-40, -1, 1)) {
    for (const shareOverIce of [0.3, 0.6, 0.9]) {
      const vapourPa = psychrolib.GetVapPresFromRelHum(t, shareOverIce);
      expect(frostPointC(vapourPa)).toBeCloseTo(psychrolib.GetTDewPointFromVapPres(t, vapourPa), 2);
    }
  }
});

test.each(cases.points)('dew point at $temperatureC °C and $rhPct % over water', (c) => {
  const vapourPa = vapourPressurePa(c.temperatureC, c.rhPct);
  expect(dewPointC(vapourPa)).toBeCloseTo(c.dewPointC, 1);
  if (c.frostPointC !== null) expect(frostPointC(vapourPa)).toBeCloseTo(c.frostPointC, 1);
  // Magnus differs from Hyland and Wexler by 0.045 K at most from 0 to 40 °C; below 0 °C by about as much.
  expect(Math.abs(dewPointC(vapourPa) - c.magnusDewPointC)).toBeLessThan(0.06);
});

test('humidity below 0 °C is over water: the same share holds more vapour than over ice', () => {
  for (const c of cases.points.filter((p) => p.temperatureC < 0)) {
    expect(vapourPressurePa(c.temperatureC, c.rhPct)).toBeGreaterThan(c.overIceVapourPa);
    expect(psychrolib.GetVapPresFromRelHum(c.temperatureC, c.rhPct / 100)).toBeCloseTo(c.overIceVapourPa, 0);
  }
});

test.each(cases.library)('the example in the library', (c) => {
  expect(dewPointC(vapourPressurePa(c.temperatureC, c.rhPct))).toBeCloseTo(c.dewPointC, 3);
});

test.each(cases.heating)('heating air from $fromC to $toC °C dries it', (c) => {
  const rh = relativeHumidityPct(c.toC, vapourPressurePa(c.fromC, c.rhPct));
  // The manual prints whole per cent.
  expect(Math.abs(rh - c.expectedRhPct)).toBeLessThan(1);
});

test.each(cases.approach)('air at $temperatureC °C and $rhPct % stands above its dew point', (c) => {
  expect(c.temperatureC - dewPointC(vapourPressurePa(c.temperatureC, c.rhPct))).toBeCloseTo(c.aboveDewPointK, 1);
});

test('the tables of the fast loops keep within 1 in 100 000 of psychrolib', () => {
  for (const t of range(-60, 60, 0.137)) {
    const surface = readTable(SURFACE_TABLE, t);
    // Between 0 and 0.01 °C the library is still over ice.
    if (Math.abs(t) > 0.1) expect(Math.abs(surface / psychrolib.GetSatVapPres(t) - 1)).toBeLessThan(1e-5);
    if (t > 0.1) expect(Math.abs(readTable(WATER_TABLE, t) / psychrolib.GetSatVapPres(t) - 1)).toBeLessThan(1e-5);
    else expect(Math.abs(readTable(WATER_TABLE, t) / saturationOverWaterPa(t) - 1)).toBeLessThan(1e-5);
  }
});
