import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import { type ClimateLibrary, distanceKm, openClimateLibrary } from '../../src/content/climate-library.ts';
import { plainName } from '../../src/content/place-names.ts';
import { countryName, type PlaceFound, placesByName, type TownsFile } from '../../src/content/towns.ts';

const CLIMATE = new URL('../../public/climate/', import.meta.url);
const FILES = ['normals.json', 'towns.json'].map((name) => readFileSync(new URL(name, CLIMATE)));
let library: ClimateLibrary;
let towns: TownsFile;

beforeAll(() => {
  library = openClimateLibrary(JSON.parse(String(FILES[0])));
  towns = JSON.parse(String(FILES[1]));
});

const look = (query: string, home?: string) => placesByName(library, towns, query, home);
const said = ({ station, country, town }: PlaceFound) => `${town ? `${town.name} by ${station}` : station}, ${country}`;

test('stations and towns together are small enough to be fetched by a page', () => {
  expect(FILES.reduce((sum, file) => sum + gzipSync(file).length, 0)).toBeLessThan(300_000);
});

test('the columns of the towns are equally long', () => {
  const size = towns.name.length;
  expect(size).toBeGreaterThan(5000);
  expect([towns.country.length, towns.state.length]).toEqual([2 * size, 2 * size]);
  for (const column of [towns.latitudeStep10, towns.longitudeStep10, towns.size]) expect(column).toHaveLength(size);
});

/** Unicode NFKD takes marks off (UAX 15); ß, ø, ł have none to take off; German writes ä as ae (DIN 5007-2); common spellings of Saint. */
test.each([
  ['München', 'Muenchen'],
  ['STRASSE', 'Straße'],
  ['Tromsø', 'Tromso'],
  ['Łódź', 'lodz'],
  ['Århus', 'Aarhus'],
  ['Genève', 'geneve'],
  ['St. Cloud', 'Saint Cloud'],
  ['Sankt Peter-Ording', 'St Peter Ording'],
  ['L’viv', "L'viv"],
])('%s and %s are the same name', (one, other) => {
  expect(plainName(one)).toBe(plainName(other));
});

test('different names stay different', () => {
  const names = ['Bern', 'Barn', 'Hanover', 'Hannover', 'Stein', 'Saintes', 'Steinau'];
  expect(new Set(names.map(plainName)).size).toBe(names.length);
});

/** Where a town lies and which station of the library is near it: an atlas, from memory. */
test.each([
  ['münchen', 'DE', 'Muenchen-Flughafen, DE'],
  ['muenchen', 'DE', 'Muenchen-Flughafen, DE'],
  ['munich', 'US', 'München by Muenchen-Flughafen, DE'],
  ['köln', 'DE', 'KoelnBonn, DE'],
  ['cologne', 'GB', 'Köln by KoelnBonn, DE'],
  ['wien', 'AT', 'Wien Hohe Warte, AT'],
  ['geneva', 'CH', 'Genève by Geneve / Cointrin, CH'],
  ['southampton', 'GB', 'Southampton by Hurn, GB'],
  ['saint cloud', 'US', 'MN St Cloud Rgnl Ap, US'],
  ['st. cloud', 'US', 'MN St Cloud Rgnl Ap, US'],
  ['saint cloud', 'FR', 'Saint-Cloud by Le Bourget, FR'],
  ['london', 'GB', 'London by Heathrow, GB'],
  ['queenstown', 'NZ', 'Queenstown by Lauder Observatory, NZ'],
  ['london', 'CA', 'London Cs, CA'],
  ['london, ca', 'GB', 'London Cs, CA'],
  ['london, united kingdom', 'CA', 'London by Heathrow, GB'],
  ['duluth', 'US', 'MN Duluth, US'],
  ['duluth mn', 'US', 'MN Duluth, US'],
  ['duluth, ga', 'US', 'Duluth by GA Marietta Dobbins Afb, US'],
])('"%s" typed in %s finds %s first', (query, home, first) => {
  expect(said(look(query, home)[0]!)).toBe(first);
});

test('a town without a station of its own comes with the nearest one and how far it is', () => {
  const [found] = look('hannover', 'DE');
  // 52.4° N, 9.7° E; by an atlas, from memory.
  expect(found).toMatchObject({ country: 'DE', town: { name: 'Hannover', latitudeDeg: 52.4, longitudeDeg: 9.7 } });
  const { distanceKm: away, id } = found!;
  const every = library.file.id.map((_, i) => distanceKm(52.4, 9.7, library.latitudeDeg[i]!, library.longitudeDeg[i]!));
  expect(away).toBe(Math.min(...every));
  expect(library.file.id[every.indexOf(away)]).toBe(id);
});

test('what begins with the word comes before what holds it, and the reader’s country before others', () => {
  const found = look('ham', 'DE');
  const begins = found.map((f) => /^(?:[a-z]{2} )?ham/.test(plainName(f.town?.name ?? f.station)));
  expect(begins).toEqual([...begins].sort((a, b) => Number(b) - Number(a)));
  const home = found.filter((_, i) => begins[i]).map((f) => f.country === 'DE');
  expect(home).toEqual([...home].sort((a, b) => Number(b) - Number(a)));
  expect(home[0]).toBe(true);
});

test('no name finds nothing, a name of nowhere neither, and a country that does not fit', () => {
  for (const query of ['', ' , ', 'no such place at all', 'duluth, norway']) expect(look(query, 'US')).toEqual([]);
});

test('a country has its name in words', () => {
  expect([countryName('DE'), countryName('GB')]).toEqual(['Germany', 'United Kingdom']);
});
