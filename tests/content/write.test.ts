import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FORBIDDEN } from '../../src/content/no-text.ts';
import { KINDS } from '../../src/content/schemas/household.ts';
import { writeHousehold, writeMachine, writePlace } from '../../src/content/write.ts';
import { readWith } from './helpers.ts';

const ROOT = join(import.meta.dirname, '..', '..');

test.each(KINDS)('a file written for a %s is read without a problem', (kind) => {
  const text = writeMachine({ name: 'One', kind, place: 'tin-shed', lastUse: '2026-10-25', firstUse: '2027-04-10' });
  const { household, problems } = readWith({ 'machines/one.yaml': text });
  expect(problems).toEqual([]);
  expect(household!.machines.find((m) => m.id === 'one')).toMatchObject({ kind, season: { lastUse: '2026-10-25' } });
});

test('all that was answered is in the file, and a machine without battery and fuel says so', () => {
  const full = writeMachine({
    name: 'One',
    kind: 'motorcycle',
    place: 'tin-shed',
    battery: { chemistry: 'agm', capacity: '12 Ah', removable: false, drain: '3 mA' },
    fuel: { delivery: 'carburettor', tank: '4.5 US gal', inTank: '1 US gal', blend: 'E10', tap: 'manual' },
    cooling: 'air',
  });
  const m = readWith({ 'machines/one.yaml': full }).household!.machines.find((x) => x.id === 'one')!;
  expect(m.battery).toMatchObject({ chemistry: 'agm', capacityAh: 12, removable: false, drainMA: { value: 3 } });
  expect(m.fuel).toMatchObject({ delivery: 'carburettor', blend: 'E10', taps: { kind: 'manual' } });
  const bare = writeMachine({ name: 'Two', kind: 'mower', place: 'tin-shed', battery: false, fuel: false });
  const two = readWith({ 'machines/two.yaml': bare }).household!.machines.find((x) => x.id === 'two')!;
  expect([two.battery, two.fuel]).toEqual([undefined, undefined]);
});

test('any name comes back as it was given', () => {
  const printable = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
    .map((s) => s.trim().normalize('NFC'))
    .filter((s) => s !== '' && !FORBIDDEN.test(s) && !/\p{Cc}/u.test(s));
  const tricky = fc.constantFrom(
    'no',
    'true',
    '12',
    '1e3',
    '0x1f',
    '2026-10-25',
    '- a',
    'a: b',
    'a #b',
    '"',
    "'",
    '<b>',
    '~',
    'null',
    '@x',
    '!x',
    '&a',
    '*a',
    '{a',
    '[a',
    '| a',
    '> a',
    '% a',
    '` a',
    '?',
    ': ',
  );
  fc.assert(
    fc.property(fc.oneof(printable, tricky), (name) => {
      const text = writeMachine({
        name,
        kind: 'car',
        place: 'tin-shed',
        lastUse: '2026-10-25',
        firstUse: '2027-04-10',
      });
      const { household, problems } = readWith({ 'machines/one.yaml': text });
      expect(problems).toEqual([]);
      expect(household!.machines.find((m) => m.id === 'one')!.name).toBe(name.trim());
    }),
    { numRuns: 150 },
  );
});

/** The lines of a written file that are no comments of their own. */
const rows = (text: string) => text.split('\n').filter((row) => row !== '' && !row.startsWith('#'));

const FULL = {
  name: 'One',
  kind: 'scooter',
  place: 'tin-shed',
  lastUse: '2026-10-25',
  firstUse: '2027-04-10',
  battery: { chemistry: 'agm', capacity: '12 Ah', removable: false, drain: '3 mA' },
  fuel: { delivery: 'carburettor', tank: '4.5 US gal', inTank: '1 US gal', blend: 'E10', tap: 'manual' },
  engine: { cycle: 'two-stroke', twoStrokeOil: 'injected' },
  cooling: 'liquid',
  coolantFreezesAt: '-34 °C',
  salted: true,
};

test('each answer stands in the file once, in the order of the questions, and each line but the name says what it is', () => {
  const text = writeMachine(FULL);
  const [bare, comments] = [0, 1].map((part) => rows(text).map((row) => row.split(' # ')[part]?.trim()));
  expect(bare).toEqual([
    'name: One',
    'kind: scooter',
    'place: tin-shed',
    'lastUse: "2026-10-25"',
    'firstUse: "2027-04-10"',
    'battery:',
    'chemistry: agm',
    'capacity: 12 Ah',
    'removable: false',
    'drain: 3 mA',
    'fuel:',
    'delivery: carburettor',
    'tank: 4.5 US gal',
    'inTank: 1 US gal',
    'blend: E10',
    'tap: manual',
    'engine:',
    'cycle: two-stroke',
    'twoStrokeOil: injected',
    'cooling:',
    'kind: liquid',
    'freezesAt: -34 °C',
    'roadSalt:',
    'exposed: true',
  ]);
  for (const [i, row] of bare!.entries()) {
    if (row === 'name: One' || row!.endsWith(':')) expect(comments![i], row).toBeUndefined();
    else expect(comments![i], row).toMatch(/\w{2}/);
  }
  // One below another, so that they can be read as a column.
  expect(new Set(rows(text).flatMap((row) => (row.includes(' # ') ? [row.indexOf(' # ')] : []))).size).toBe(1);
  expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=../../public/schemas/machine.schema.json');
  expect(writeMachine(FULL, 'own.json')).toMatch(/^# yaml-language-server: \$schema=own\.json\n/);
  expect(text).toMatch(/[^\n]\n$/);
  const m = readWith({ 'machines/one.yaml': text }).household!.machines.find((x) => x.id === 'one')!;
  expect(m).toMatchObject({
    battery: { removable: false, chemistry: 'agm' },
    engine: { cycle: 'two-stroke', twoStrokeOil: 'injected' },
    roadSalt: { exposed: true },
  });
});

test('what was not answered has no line, and a day that is proposed one to fill in', () => {
  const text = writeMachine({ name: 'One', kind: 'mower', place: 'tin-shed', battery: {}, fuel: {}, engine: {} });
  expect(rows(text).map((row) => row.split(' # ')[0]!.trim())).toEqual(['name: One', 'kind: mower', 'place: tin-shed']);
  for (const name of ['lastUse', 'firstUse']) {
    expect(text).toMatch(new RegExp(`^# ${name}: "\\d{4}-\\d{2}-\\d{2}" .*proposed from the climate$`, 'm'));
  }
  expect(text).not.toMatch(/undefined|null/);
  expect(rows(writeMachine({ name: 'One', kind: 'mower', place: 'a', battery: false, fuel: false }))).toEqual(
    expect.arrayContaining(['battery: none', 'fuel: none']),
  );
});

test('a household and a place written are read back as they were answered', () => {
  const home = writeHousehold({
    id: 'home',
    name: 'Home: ours',
    timeZone: 'Europe/Oslo',
    locale: 'nb-NO',
    units: 'metric',
    country: 'NO',
    charger: { current: '2 A', maintainer: true, lithium: true },
    stabiliserDose: '4 mL/L',
    batteryRoom: { name: 'Hall', temperature: '16 °C' },
    revised: '2026-11-20T10:00:00Z',
  });
  const place = writePlace({ name: 'Shed', enclosure: 'carport', power: true, climate: { station: '01384' } });
  const climate = /^climate: .*$/m.exec(place)![0];
  expect(climate).toMatch(/^climate: \{ station: "01384" \} +# /);
  expect(writePlace({ name: 'A', enclosure: 'open', power: false, climate: { near: [60.2, -10.7] } })).toMatch(
    /^climate: \{ near: \[60\.2, -10\.7\] \} +# /m,
  );
  const { household, problems } = readWith({
    'household.yaml': home,
    'places/tin-shed.yaml': place.replace(climate, 'climate: valley'),
  });
  expect(problems).toEqual([]);
  expect(household).toMatchObject({
    id: 'home',
    name: 'Home: ours',
    locale: 'nb-NO',
    country: 'NO',
    revised: '2026-11-20T10:00:00.000Z',
    fuelCare: { stabiliserDoseMLPerL: 4 },
    batteryRoom: { name: 'Hall', temperatureC: 16 },
  });
  const [charger] = household!.chargers;
  expect(charger).toMatchObject({ currentA: 2, maintainer: true });
  expect(new Set(charger!.chemistries)).toEqual(
    new Set(['flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4']),
  );
  expect(household!.places[0]).toMatchObject({ name: 'Shed', power: true });
  const least = writeHousehold({ id: 'home', name: 'Home', timeZone: 'UTC', locale: 'en-GB', units: 'us' });
  expect(rows(least).map((row) => row.split(':')[0])).toEqual(['id', 'name', 'timeZone', 'locale', 'units']);
  expect(
    writeHousehold({
      id: 'a',
      name: 'A',
      timeZone: 'UTC',
      locale: 'en',
      units: 'us',
      charger: { current: '1 A', maintainer: false },
    }),
  ).toContain('chemistries: [flooded, agm, gel]');
});

test('npm run new asks, corrects, writes once and never overwrites', () => {
  const folder = mkdtempSync(join(tmpdir(), 'idle-new-'));
  try {
    cpSync(join(ROOT, 'tests', 'households', 'smallest'), folder, { recursive: true });
    const run = (input: string, ...args: string[]) =>
      spawnSync(process.execPath, [join(ROOT, 'src', 'cli', 'new.ts'), ...args], {
        input,
        encoding: 'utf8',
        env: { ...process.env, IDLE_CONTENT: folder },
      });
    const first = run(
      'Grey Owl\nscooter\nnowhere\ntin-shed\n2026-10-30\n2027-04-01\nagm\n7\n7 Ah\ninjection\n\n\nair\n',
    );
    expect(first.status, first.stderr).toBe(0);
    expect(first.stdout).toContain('found "nowhere", expected one of tin-shed');
    expect(first.stdout).toContain('found "7" without a unit');
    const file = join(folder, 'machines', 'grey-owl.yaml');
    const text = readFileSync(file, 'utf8');
    expect(text).toContain('capacity: 7 Ah');
    expect(readWith({ 'machines/grey-owl.yaml': text }).problems).toEqual([]);
    const again = run(
      '',
      '--name',
      'Grey Owl',
      '--kind',
      'car',
      '--place',
      'tin-shed',
      '--chemistry',
      'none',
      '--delivery',
      'none',
    );
    expect(again.status).toBe(1);
    expect(again.stderr).toContain('is there already and was left as it is');
    expect(readFileSync(file, 'utf8')).toBe(text);
    const wrong = run('', '--name', 'Other', '--kind', 'rocket');
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toContain('--kind: found "rocket", expected one of motorcycle');
    expect(wrong.stderr).not.toContain('    at ');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
