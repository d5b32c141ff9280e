/** Coordinates held against the household's time zone: the places of the zones themselves are none of them doubted. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openClimateLibrary } from '../../src/content/climate-library.ts';
import { meantCoordinates } from '../../src/content/cross-place.ts';
import { readContent } from '../../src/content/read.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { household } from './helpers.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const DATA = join(ROOT, 'tests', 'published', 'data', 'zone-places.json');
const { places } = JSON.parse(readFileSync(DATA, 'utf8')) as { places: [string, number, number][] };

const fixFor = (zone: string, latitude: number, longitude: number): string | undefined => {
  const meant = meantCoordinates([latitude, longitude], zone, '2026-11-30');
  return meant && `[${meant.join(', ')}]`;
};

test('no principal place of any zone is doubted in its zone (IANA zone.tab)', () => {
  expect(places.length).toBeGreaterThan(400);
  expect(places.filter(([zone, latitude, longitude]) => fixFor(zone, latitude, longitude) !== undefined)).toEqual([]);
});

// Ends of countries that keep one time from end to end, or the time of a neighbour; coordinates as any atlas has them.
test.each([
  ['Asia/Shanghai', 39.47, 75.99],
  ['Europe/Madrid', 42.9, -9.27],
  ['America/Argentina/Buenos_Aires', -32.89, -68.84],
  ['America/Argentina/Buenos_Aires', -50.34, -72.28],
  ['Asia/Kolkata', 27.5, 96.1],
  ['America/Anchorage', 63.7, -170.5],
  ['Atlantic/Reykjavik', 65.5, -24.5],
])('%s keeps its own time at %d, %d', (zone, latitude, longitude) => {
  expect(fixFor(zone, latitude, longitude)).toBeUndefined();
});

test.each([
  ['America/Chicago', 45, 93, '[45, -93]'],
  ['America/New_York', 40.71, 74, '[40.71, -74]'],
  ['Australia/Sydney', 33.87, 151.21, '[-33.87, 151.21]'],
  ['America/Santiago', 33.45, 70.67, '[-33.45, -70.67]'],
  ['Europe/London', -3.1, 54.5, '[54.5, -3.1]'],
  ['Europe/Vienna', 16.4, 48.2, '[48.2, 16.4]'],
  ['Europe/Madrid', -3.7, 40.42, '[40.42, -3.7]'],
])('%s at %d, %d is meant as %s', (zone, latitude, longitude, meant) => {
  expect(fixFor(zone, latitude, longitude)).toBe(meant);
});

test('a place abroad is left alone where no sign puts it right, and so is a zone without a place', () => {
  expect(fixFor('Europe/London', -43.53, 172.64)).toBeUndefined();
  expect(fixFor('Europe/Vienna', -33.9, 18.4)).toBeUndefined();
  expect(fixFor('UTC', 45, 93)).toBeUndefined();
  expect(fixFor('Etc/GMT+6', 45, 93)).toBeUndefined();
});

test('a doubt is told with the plan, both ways out of it hold, and no place abroad is refused', () => {
  const library = openClimateLibrary(JSON.parse(readFileSync(join(ROOT, 'public/climate/normals.json'), 'utf8')));
  const told = (climate: string, zone = 'America/New_York') => {
    const files = household().map(({ path, bytes }) => ({ path, bytes: String(bytes) }));
    const texts = files.map(({ path, bytes }) =>
      path === 'household.yaml'
        ? { path, bytes: bytes.replace(/^timeZone: .*$/m, `timeZone: ${zone}`) }
        : path.startsWith('places/')
          ? { path, bytes: bytes.replace(/^climate: .*$/m, `climate: ${climate}`) }
          : { path, bytes },
    );
    const { household: read, problems } = readContent(texts, { asOf: '2026-11-30', library });
    expect(problems).toEqual([]);
    const { plan } = planSeason(read!, { asOf: '2026-11-30' });
    return plan.warnings.filter(({ about }) => about === 'content');
  };
  const [doubt, ...others] = told('{ near: [40.71, 74] }');
  expect(others).toEqual([]);
  expect(doubt).toMatchObject({
    level: 'warning',
    text: expect.stringMatching(
      / is given at 40\.71° north, 74° east, near .+: that is not where clocks keep the time of America\/New_York\./,
    ),
    act: expect.stringContaining('write near: [40.71, -74] in places/'),
  });
  expect(told('{ near: [40.71, -74] }')).toEqual([]);
  const named = /, near (.+?): that/.exec(doubt!.text)![1]!;
  expect(told(`{ station: "${named}" }`)).toEqual([]);
  expect(told('{ near: [-43.53, 172.64] }', 'Europe/London')).toEqual([]);
});
