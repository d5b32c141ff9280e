import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import type { ClimateLibrary } from '../../src/content/climate-library.ts';
import {
  distanceKm,
  nearestStations,
  openClimateLibrary,
  stationClimate,
  stationsByName,
} from '../../src/content/climate-library.ts';
import { checkClimate, dailyCurves, monthMeans, proposeSeason } from '../../src/planner/climate/index.ts';

const FILE = new URL('../../public/climate/normals.json', import.meta.url);
let library: ClimateLibrary;

beforeAll(() => {
  library = openClimateLibrary(JSON.parse(readFileSync(FILE, 'utf8')));
});

test('the library is small enough to be fetched by a page', () => {
  expect(gzipSync(readFileSync(FILE)).length).toBeLessThan(300_000);
});

test('every station is a whole climate with source and attribution, and its curves return its months', () => {
  expect(library.size).toBeGreaterThan(3000);
  for (let i = 0; i < library.size; i++) {
    const climate = stationClimate(library, i);
    checkClimate(climate);
    expect(climate.source.length > 10 && climate.attribution.length > 10).toBe(true);
    const { meanC } = dailyCurves(climate.normals);
    for (const [m, t] of monthMeans(meanC).entries()) {
      if (!(Math.abs(t - climate.normals.meanC[m]!) < 0.05)) throw new Error(`${climate.name}, month ${m + 1}: ${t}`);
    }
  }
});

test('a season is proposed everywhere, and it ends after the day it was asked for', () => {
  for (let i = 0; i < library.size; i += 5) {
    const climate = stationClimate(library, i);
    for (const use of ['road', 'trail', 'snow'] as const) {
      const { lastUse, firstUse } = proposeSeason(climate, use, '2026-08-01');
      if (!(lastUse < firstUse && firstUse > '2026-08-01')) throw new Error(`${climate.name}: ${lastUse} ${firstUse}`);
    }
  }
});

test('a station read back has the published figures', () => {
  // WMO climatological standard normals 1991–2020, Helsinki Kaisaniemi: January and July mean, January humidity.
  const [helsinki] = stationsByName(library, 'Helsinki Kaisaniemi, FI');
  expect(helsinki!.climate.normals.meanC[0]).toBe(-3.1);
  expect(helsinki!.climate.normals.meanC[6]).toBe(18.1);
  expect(helsinki!.climate.normals.rhPct[0]).toBe(87);
});

test('the nearest station comes with its distance, and first', () => {
  const [first, second] = nearestStations(library, 60.17, 24.94, { count: 2, elevationM: 10 });
  expect(first!.climate.name).toContain('Helsinki');
  expect(first!.distanceKm).toBeLessThan(10);
  expect(second!.distanceKm).toBeGreaterThan(first!.distanceKm);
  expect(first!.heightDifferenceM).toBe(first!.climate.elevationM - 10);
  expect(first!.warnings).toEqual([]);
});

test('the nearest station is found over the 180° meridian and at the poles', () => {
  for (const [lat, lon] of [
    [-17.8, 179.9],
    [-17.8, -179.9],
    [90, 0],
    [-90, 123],
  ] as const) {
    const [found] = nearestStations(library, lat, lon);
    const every = Array.from({ length: library.size }, (_, i) =>
      distanceKm(lat, lon, library.latitudeDeg[i]!, library.longitudeDeg[i]!),
    );
    expect(found!.distanceKm).toBe(Math.min(...every));
  }
  expect(distanceKm(0, 179.5, 0, -179.5)).toBeCloseTo(111.2, 0);
});

test('a station far away or at another height is told with figures', () => {
  const [ocean] = nearestStations(library, -50, -120);
  expect(ocean!.warnings[0]).toMatch(/is \d+ km away/);
  const [low] = nearestStations(library, 60.17, 24.94, { elevationM: 900 });
  expect(low!.warnings.join(' ')).toMatch(/lies \d+ m lower: about \d\.\d K warmer/);
});

test('a name is found without its accents and case, and nothing for no name', () => {
  expect(stationsByName(library, 'helsinki kaisaniemi')).toHaveLength(1);
  expect(stationsByName(library, ' ')).toEqual([]);
  expect(stationsByName(library, 'no such place at all')).toEqual([]);
});

test('what is no library is refused', () => {
  for (const wrong of [null, {}, { format: 2 }, { format: 1, id: ['a'], name: [] }]) {
    expect(() => openClimateLibrary(wrong)).toThrow(/not a library/);
  }
  expect(() => nearestStations(library, 91, 0)).toThrow(/latitude: 91/);
  expect(() => nearestStations(library, 0, Number.NaN)).toThrow(/longitude: NaN/);
});
