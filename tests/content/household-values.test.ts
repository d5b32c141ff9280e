/** Values of household.yaml and of records that standards define: IANA zones, BCP 47, ISO 3166, ISO 8601, RFC 3986. */
import { expect, test } from 'vitest';
import { readWith } from './helpers.ts';

const BASE: Record<string, string> = { id: 'a', name: 'A', timeZone: 'Europe/Oslo', units: 'metric' };

function home(fields: Record<string, string>): string[] {
  const text = Object.entries({ ...BASE, ...fields }).map(([name, value]) => `${name}: ${value}\n`);
  return readWith({ 'household.yaml': text.join('') }).problems.map(
    ({ field, what, fix }) => `${field}: ${what}. ${fix}`,
  );
}

test.each([
  ['timeZone', 'UTC'],
  ['timeZone', 'America/Argentina/Buenos_Aires'],
  ['locale', 'nb'],
  ['locale', 'en-CA'],
  ['locale', 'zh-Hant-TW'],
  ['country', 'GB'],
  ['country', '"NO"'],
  ['siteUrl', 'https://garage.example'],
  ['siteUrl', 'https://garage.example/'],
  ['siteUrl', 'https://garage.example/idle/season'],
  ['hours', '{ monday: 0, sunday: 24 }'],
  ['away', '[{ from: "2026-12-20", to: "2026-12-20" }]'],
  ['batteryRoom', '{ name: Hall, temperature: -10 °C }'],
  ['hands', '1'],
])('%s: %s is taken', (name, value) => {
  expect(home({ [name]: value })).toEqual([]);
});

test.each([
  ['timeZone', 'Oslo', 'Write Europe/Oslo.'],
  ['timeZone', 'new york', 'Write America/New_York.'],
  ['timeZone', 'Europe/Olso', 'Write Europe/Oslo.'],
  ['timeZone', 'MST', 'Write area and city'],
  ['timeZone', '"+01:00"', 'Write area and city'],
  ['timeZone', 'Middle/Earth', 'Write'],
  ['locale', 'english', 'Write language, hyphen, country.'],
  ['locale', 'en_GB', 'Write language, hyphen, country.'],
  ['locale', 'e', 'Write language, hyphen, country.'],
  ['country', 'UK', 'Write GB.'],
  ['country', 'gb', 'Write GB.'],
  ['country', 'QX', 'Write the two-letter code of ISO 3166.'],
  ['country', 'Norway', 'Write the two-letter code of ISO 3166.'],
  ['siteUrl', 'http://garage.example', 'Write the address of the published site'],
  ['siteUrl', 'https://garage.example/?a', 'Write the address of the published site'],
  ['siteUrl', 'https://garage.example/#a', 'Write the address of the published site'],
  ['siteUrl', 'garage.example', 'Write the address of the published site'],
  ['siteUrl', '" https://garage.example"', 'Write the address of the published site'],
  ['hours', '{ monday: 25 }', ''],
  ['hours', '{ monday: 3 hours }', 'Write 3.'],
  ['hours', '{ monday: 1.5h }', 'Write 1.5.'],
  ['hours', '{ monday: "2:30" }', 'Write 2.5.'],
  ['hours', '{ monday: 150 min }', 'Write 2.5.'],
  // More hours than a day has, or no hours.
  ['hours', '{ monday: 25 h }', 'Write it like monday: 3.'],
  ['hours', '{ monday: 100 % }', 'Write it like monday: 3.'],
  ['hours', '{ monday: -1 }', ''],
  ['hands', '0', ''],
  ['away', '[{ from: "2026-12-21", to: "2026-12-20" }]', 'Swap the two dates.'],
  ['batteryRoom', '{ name: Hall, temperature: 36 °C }', ''],
])('%s: %s is told', (name, value, fix) => {
  const found = home({ [name]: value });
  expect(found).toHaveLength(1);
  expect(found[0]!.startsWith(name)).toBe(true);
  expect(found[0]).toContain(fix);
});

function record(text: string): string[] {
  return readWith({ 'records/bike/b.yaml': text }, 'workshop').problems.map(
    ({ field, what, fix }) => `${field}: ${what}. ${fix}`,
  );
}

test.each([
  'exported: "2026-11-20T18:20:00Z"',
  'exported: "2026-11-20T18:20Z"',
  'exported: "2026-11-20T18:20:00.123Z"',
  'season: "2026-05"',
  'machine: bike',
  'finishedJobs: []',
  'readings: [{ date: "2026-11-20", voltage: 0 V, temperature: 0 °C, rested: 0 h }, { date: "2026-11-20", voltage: 16 V, temperature: 0 °C, rested: 0 h }]',
  // Another hour, another temperature, another day: another reading.
  'readings: [{ date: "2026-11-20", voltage: 12 V, temperature: 0 °C, rested: 1 h }, { date: "2026-11-20", voltage: 12 V, temperature: 0 °C, rested: 2 h }]',
  'readings: [{ date: "2026-11-20", voltage: 12 V, temperature: 0 °C, rested: 1 h }, { date: "2026-11-20", voltage: 12 V, temperature: 1 °C, rested: 1 h }]',
  'readings: [{ date: "2026-11-20", voltage: 12 V, temperature: 0 °C, rested: 1 h }, { date: "2026-11-19", voltage: 12 V, temperature: 0 °C, rested: 1 h }]',
  'asLeft: [{ item: tank }, { item: "assembly:seat" }]',
  'notes: [{ date: "2026-11-20", text: A, assembly: airbox }]',
])('a record with %s is taken', (text) => {
  expect(record(`${text}\n`)).toEqual([]);
});

test.each([
  ['exported: "2026-11-20T18:20:00+01:00"', 'exported: '],
  ['exported: "2026-11-20"', 'exported: '],
  ['exported: "2026-13-20T18:20:00Z"', 'exported: '],
  ['season: "2026-06"', 'season: '],
  ['season: "26-05"', 'season: '],
  ['machine: car', 'machine: found "car" in the folder of "bike", expected "bike". Write bike, or delete the line.'],
  [
    'readings: [{ date: "2026-11-20", voltage: 16.1 V, temperature: 0 °C, rested: 0 h }]',
    'readings.1.voltage: found 16.1 V, expected 0 to 16 V',
  ],
  [
    'readings: [{ date: "2026-11-20", voltage: 12 V, temperature: 0 °C, rested: 1 h }, { date: "2026-11-20", voltage: 12 V, temperature: 0 °C, rested: 1 h }]',
    'readings.2: found the reading of 2026-11-20 a second time',
  ],
  [
    'finishedJobs: [polish]',
    'finishedJobs.1: found the job "polish", expected one of valves, cables. Write a job of this machine.',
  ],
  [
    'notes: [{ date: "2026-11-20", text: A, assembly: boiler }]',
    'notes.1.assembly: found the assembly "boiler", expected one of seat, tank, airbox. Write an assembly of this machine',
  ],
  [
    'notes: [{ date: "2026-11-20", text: A, assembly: aribox }]',
    'notes.1.assembly: found the assembly "aribox", expected one of seat, tank, airbox. Write airbox.',
  ],
])('a record with %s is told', (text, words) => {
  expect(record(`${text}\n`).map((one) => one.slice(0, words.length))).toEqual([words]);
});
