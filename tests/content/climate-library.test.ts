import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import type { ClimateLibrary } from '../../src/content/climate-library.ts';
import {
  distanceKm,
  nearestStations,
  openClimateLibrary,
  stationClimate,
  stationOf,
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

/** Two stations of an invented library: one on the equator at 0°, one a degree north of it and 400 m up. */
const SMALL = {
  format: 1,
  sources: { a: { name: 'Table', attribution: 'Office', terms: 'free' } },
  humidity: { m: { text: 'measured', estimated: false }, e: { text: 'from the dew point', estimated: true } },
  id: ['1', '2'],
  name: ['Low', 'High'],
  country: ['AA', 'BB'],
  source: 'aa',
  humiditySource: 'me',
  latitudeStep100: [0, 100],
  longitudeStep100: [0, 0],
  elevationM: [10, 400],
  // January, then the steps to each next month.
  meanStep10: Array.from({ length: 12 }, (_, m) => (m === 0 ? [250, -105] : [1, 2])),
  belowStep10: Array.from({ length: 12 }, (_, m) => (m === 0 ? [40, 31] : [0, 0])),
  aboveStep10: Array.from({ length: 12 }, (_, m) => (m === 0 ? [50, 22] : [0, 0])),
  rhStep: Array.from({ length: 12 }, (_, m) => (m === 0 ? [80, 60] : [0, 1])),
};

test('the columns are steps, and are read as sums of them', () => {
  const small = openClimateLibrary(SMALL);
  const high = stationClimate(small, 1);
  expect([small.size, high.id, high.name, high.latitudeDeg, high.elevationM]).toEqual([2, '2', 'High', 1, 400]);
  if (high.kind !== 'normals') throw new Error('a station has normals');
  expect(high.normals.meanC).toEqual([-10.5, -10.3, -10.1, -9.9, -9.7, -9.5, -9.3, -9.1, -8.9, -8.7, -8.5, -8.3]);
  expect([high.normals.minC[0], high.normals.maxC[0]]).toEqual([-13.6, -8.3]);
  expect([high.normals.rhPct[0], high.normals.rhPct[11]]).toEqual([60, 71]);
  expect(high.source).toBe('Table, station 2; humidity: from the dew point');
  expect(high.attribution).toBe('Office');
  expect(() => stationClimate(small, 2)).toThrow(/station 2: the library has 2/);
  expect(() => stationClimate(openClimateLibrary({ ...SMALL, source: 'ab' }), 1)).toThrow(/source that is not listed/);
  expect(() => stationClimate(openClimateLibrary({ ...SMALL, humiditySource: 'mx' }), 1)).toThrow(/not listed/);
});

test.each([
  ['no columns', { id: undefined }],
  ['a name too few', { name: ['Low'] }],
  ['no names', { name: undefined }],
  ['no months', { rhStep: undefined }],
  ['no letters', { source: undefined }],
  ['no letters for its humidity', { humiditySource: undefined }],
  ['a country too few', { country: ['AA'] }],
  ['a height too many', { elevationM: [1, 2, 3] }],
  ['a step too few', { latitudeStep100: [0] }],
  ['a month too few', { meanStep10: SMALL.meanStep10.slice(1) }],
  ['a month without a station', { rhStep: [...SMALL.rhStep.slice(1), [80]] }],
  ['a letter too few', { source: 'a' }],
  ['a letter too many', { humiditySource: 'mmm' }],
  ['no sources', { sources: undefined }],
  ['no humidity', { humidity: undefined }],
  ['another format', { format: 2 }],
])('a library with %s is none', (_, change) => {
  expect(() => openClimateLibrary(SMALL)).not.toThrow();
  expect(() => openClimateLibrary({ ...SMALL, ...change })).toThrow(/not a library of format 1/);
});

// A degree of a great circle is a 360th of the earth's: 40,030 km with the mean radius of 6371 km, so 111.19 km.
test('a station is far beyond 75 km or 200 m, and its warnings say why', () => {
  const small = openClimateLibrary(SMALL);
  const at = (latitude: number, elevationM?: number) => nearestStations(small, latitude, 0, { elevationM })[0]!;
  const near = at(-0.67);
  expect(near.distanceKm).toBeCloseTo(74.5, 1);
  expect([near.warnings, stationOf(near).far]).toEqual([[], false]);
  const away = at(-0.68);
  expect([away.warnings, stationOf(away).far]).toEqual([[expect.stringMatching(/^Low is 76 km away/)], true]);
  expect(stationOf(away).distanceKm).toBe(75.6);
  expect([at(0, 210).warnings, stationOf(at(0, 210)).far]).toEqual([[], false]);
  const below = at(0, 211);
  expect(stationOf(below)).toEqual({ name: 'Low', distanceKm: 0, heightDifferenceM: -201, far: true });
  // The standard atmosphere (ISO 2533) is 6.5 K colder a kilometre.
  expect(below.warnings).toEqual([expect.stringMatching(/^Low lies 201 m lower: about 1\.3 K warmer/)]);
  const [high] = nearestStations(small, 1, 0, { elevationM: 0 });
  expect(high!.warnings).toEqual([
    expect.stringMatching(/^High lies 400 m higher: about 2\.6 K colder/),
    expect.stringMatching(/^Humidity at High is an estimate/),
  ]);
  expect(stationOf(at(0)).heightDifferenceM).toBe(0);
});

test('poles and meridian are within the bounds, what lies beyond is not', () => {
  const small = openClimateLibrary(SMALL);
  for (const [latitude, longitude] of [
    [90, 180],
    [-90, -180],
  ] as const)
    expect(nearestStations(small, latitude, longitude)).toHaveLength(1);
  for (const latitude of [90.1, -90.1]) expect(() => nearestStations(small, latitude, 0)).toThrow(RangeError);
  for (const longitude of [180.1, -180.1]) expect(() => nearestStations(small, 0, longitude)).toThrow(RangeError);
  expect(nearestStations(small, 0.9, 0, { count: 5 }).map(({ climate }) => climate.name)).toEqual(['High', 'Low']);
});

test('a station is found by its number, its whole name before others, the beginning of a name, then a part of it', () => {
  const three = openClimateLibrary({ ...SMALL, name: ['Old Lowick', 'Low'] });
  const found = (query: string) => stationsByName(three, query).map(({ climate }) => climate.name);
  expect(found('1')).toEqual(['Old Lowick']);
  expect(found('LOW')).toEqual(['Low']);
  expect(found('low, aa')).toEqual(['Old Lowick']);
  expect(found('Low, BB')).toEqual(['Low']);
  expect(found('low,cc')).toEqual([]);
  expect(found('old')).toEqual(['Old Lowick']);
  expect(found('o')).toEqual(['Old Lowick']);
  expect(found('ow')).toEqual(['Low', 'Old Lowick']);
});
