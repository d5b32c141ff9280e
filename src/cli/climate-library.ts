/*
 * Makes the bundled library of climate normals from a table of stations.
 *
 *   node src/cli/climate-library.ts normals.csv public/climate/normals.json
 *
 * Columns of the table: id, name, cc, lat, lon, elev, src, hsrc, noy, then t, tn, tx, rh and p with the months 1 to 12.
 * Stations without mean, minimum and maximum for every month are left out. Where a station has no humidity, that of the
 * nearest station within 150 km is taken and marked; farther than that the station is left out.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { ClimateLibraryFile } from '../content/climate-library.ts';
import { distanceKm } from '../content/climate-library.ts';

const BORROW_KM = 150;

const SOURCES: ClimateLibraryFile['sources'] = {
  W: {
    name: 'WMO climatological standard normals 1991–2020',
    attribution:
      'WMO Member Nations (2023), WMO Climatological Standard Normals for 1991–2020, NCEI Accession 0253808, doi:10.25921/800j-vn07',
    terms: 'WMO core data, free and unrestricted under Resolution 1 (Cg-Ext 2021)',
  },
  T: {
    name: 'typical meteorological year TMY3, months averaged',
    attribution: 'US National Renewable Energy Laboratory, National Solar Radiation Data Base, TMY3',
    terms: 'made for the US government',
  },
  C: {
    name: 'typical year CWEC, months averaged',
    attribution: 'Environment and Climate Change Canada, Canadian Weather Year for Energy Calculation',
    terms: 'Open Government Licence – Canada',
  },
};

const HUMIDITY: ClimateLibraryFile['humidity'] = {
  R: { text: 'published normal', estimated: false },
  D: { text: 'from the published dew-point normal', estimated: false },
  T: { text: 'typical year of a station within 45 km', estimated: false },
  C: { text: 'typical year of a station within 45 km', estimated: false },
  V: {
    text: 'estimated from published vapour pressure: off by 4 points between −10 and 0 °C, 7 points below; cold continental winters come out too moist',
    estimated: true,
  },
  N: { text: `taken from the nearest station with humidity, within ${BORROW_KM} km`, estimated: true },
};

function fields(line: string): string[] {
  const out: string[] = [];
  for (const match of line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)) {
    const text = match[1] ?? '';
    out.push(text.startsWith('"') ? text.slice(1, -1).replaceAll('""', '"') : text);
    if (!match[0].endsWith(',')) break;
  }
  return out;
}

interface Row {
  text: (column: string) => string;
  lat: number;
  lon: number;
  month: (column: string) => number[] | undefined;
}

function readTable(path: string): Row[] {
  const [head, ...lines] = readFileSync(path, 'utf8').trimEnd().split(/\r?\n/);
  const names = fields(head ?? '');
  return lines.map((line, i) => {
    const values = fields(line);
    if (values.length !== names.length) {
      throw new Error(`${path}:${i + 2}: ${values.length} columns found, ${names.length} expected`);
    }
    const byName = new Map(names.map((name, k) => [name, values[k] ?? '']));
    const text = (column: string) => byName.get(column) ?? '';
    const month = (column: string) => {
      const found = Array.from({ length: 12 }, (_, m) => text(`${column}${m + 1}`));
      if (found.some((v) => v === '')) return undefined;
      const numbers = found.map(Number);
      if (!numbers.every(Number.isFinite)) throw new Error(`${path}:${i + 2}: ${column} is not a number`);
      return numbers;
    };
    return { text, lat: Number(text('lat')), lon: Number(text('lon')), month };
  });
}

/** Integers as differences from the entry before, which gzip packs best where neighbours are alike. */
const steps = (values: number[]) => values.map((v, i) => v - (values[i - 1] ?? 0));

const [, , input, output] = process.argv;
if (!input || !output) {
  console.error('usage: node src/cli/climate-library.ts <normals.csv> <out.json>');
  process.exit(1);
}

const rows = readTable(input);
const humid = rows.filter((r) => r.month('rh'));
const kept: { row: Row; rh: number[]; hsrc: string }[] = [];
let withoutRange = 0;
let withoutHumidity = 0;
for (const row of rows) {
  if (!(row.month('t') && row.month('tn') && row.month('tx'))) {
    withoutRange++;
    continue;
  }
  let rh = row.month('rh');
  let hsrc = row.text('hsrc');
  if (!rh) {
    let best = BORROW_KM;
    for (const other of humid) {
      const away = distanceKm(row.lat, row.lon, other.lat, other.lon);
      if (away <= best) [best, rh, hsrc] = [away, other.month('rh'), 'N'];
    }
  }
  if (rh) kept.push({ row, rh, hsrc });
  else withoutHumidity++;
}
const band = (r: Row) => Math.floor((r.lat + 90) / 3);
kept.sort((a, b) => band(a.row) - band(b.row) || a.row.lon - b.row.lon || a.row.lat - b.row.lat);

const byMonth = (list: (k: (typeof kept)[number]) => number[]) => {
  const all = kept.map(list);
  return Array.from({ length: 12 }, (_, m) => all.map((v) => (m === 0 ? v[0]! : v[m]! - v[m - 1]!)));
};
const tenths = (values: number[]) => values.map((v) => Math.round(v * 10));
const library: ClimateLibraryFile = {
  format: 1,
  sources: SOURCES,
  humidity: HUMIDITY,
  id: kept.map((k) => k.row.text('id')),
  name: kept.map((k) => k.row.text('name')),
  country: kept.map((k) => k.row.text('cc')),
  source: kept.map((k) => k.row.text('src')).join(''),
  humiditySource: kept.map((k) => k.hsrc).join(''),
  latitudeStep100: steps(kept.map((k) => Math.round(k.row.lat * 100))),
  longitudeStep100: steps(kept.map((k) => Math.round(k.row.lon * 100))),
  elevationM: kept.map((k) => Math.round(Number(k.row.text('elev')))),
  meanStep10: byMonth((k) => tenths(k.row.month('t')!)),
  belowStep10: byMonth((k) => tenths(k.row.month('t')!.map((t, m) => t - k.row.month('tn')![m]!))),
  aboveStep10: byMonth((k) => tenths(k.row.month('tx')!.map((t, m) => t - k.row.month('t')![m]!))),
  rhStep: byMonth((k) => k.rh.map(Math.round)),
};
const json = `${JSON.stringify(library)}\n`;
writeFileSync(output, json);
console.log(
  `${kept.length} stations kept; left out: ${withoutRange} without daily extremes, ${withoutHumidity} without humidity.`,
);
console.log(`${json.length} bytes, ${gzipSync(json, { level: 9 }).length} gzip`);
