import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';

let folder: string;
const read = () => readFolder(folder, { asOf: '2026-11-25' });

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'idle-content-'));
  cpSync(join(import.meta.dirname, '..', 'households', 'smallest'), folder, { recursive: true });
});
afterEach(() => {
  delete process.env.SOURCE_DATE_EPOCH;
  rmSync(folder, { recursive: true, force: true });
});

test('a folder is read as its files are', () => {
  expect(read().household?.machines.map((m) => m.id)).toEqual(['juniper']);
});

test('a link that leads out of the folder is not followed', () => {
  symlinkSync('/etc/hostname', join(folder, 'machines', 'secret.yaml'));
  expect(read().problems).toMatchObject([
    { file: 'machines/secret.yaml', what: expect.stringContaining('leads out of the content folder') },
  ]);
});

test('a folder that is a link out of the folder is not followed', () => {
  symlinkSync('/etc', join(folder, 'records'));
  expect(read().problems).toMatchObject([
    { file: 'records', what: expect.stringContaining('leads out of the content folder') },
  ]);
});

test.each([
  ['climates/valley.yaml', 'valley'],
  ['climates/a.epw', '{ hourly: a.epw }'],
])('weather in %s that cannot be read is told once, with its file', (path, climate) => {
  rmSync(join(folder, path), { force: true });
  symlinkSync('/etc/hostname', join(folder, path));
  writeFileSync(
    join(folder, 'places', 'tin-shed.yaml'),
    `name: Shed\nenclosure: carport\npower: false\nclimate: ${climate}\n`,
  );
  const { household, problems } = read();
  expect(household).toBeUndefined();
  expect(problems).toMatchObject([{ file: path, what: expect.stringContaining('leads out of the content folder') }]);
});

// YAML 1.2, 7.3: a key may be quoted as any text may; JSON, which is YAML too, quotes all of them.
test.each([
  '{ near: [48.2, 13.5] }',
  '{ "near": [48.2, 13.5] }',
  "{ 'near' : [48.2, 13.5] }",
  '{ "station": "Duluth, US" }',
])('a station of the library is found by %s', (climate) => {
  writeFileSync(
    join(folder, 'places', 'tin-shed.yaml'),
    `name: Shed\nenclosure: carport\npower: false\nclimate: ${climate}\n`,
  );
  const library = join(import.meta.dirname, '..', '..', 'public', 'climate', 'normals.json');
  const { household, problems } = readFolder(folder, { asOf: '2026-11-25', library });
  expect(problems).toEqual([]);
  expect(household?.places[0]?.climate).toBeDefined();
});

test('a link that leads nowhere is said', () => {
  symlinkSync(join(folder, 'gone.yaml'), join(folder, 'machines', 'other.yaml'));
  expect(read().problems).toMatchObject([
    { file: 'machines/other.yaml', what: expect.stringContaining('leads nowhere') },
  ]);
});

test('a folder with the name of a content file is said', () => {
  mkdirSync(join(folder, 'machines', 'new.yaml'));
  expect(read().problems).toMatchObject([{ file: 'machines/new.yaml', what: 'found a folder, expected a file' }]);
});

test('a link to a folder inside is not followed in silence', () => {
  symlinkSync('machines', join(folder, 'club'));
  expect(read().problems).toMatchObject([{ file: 'club', what: expect.stringContaining('link to a folder') }]);
});

test('what is no file is not opened', () => {
  execFileSync('mkfifo', [join(folder, 'machines', 'pipe.yaml')]);
  expect(read().problems).toMatchObject([{ file: 'machines/pipe.yaml', what: expect.stringContaining('no file') }]);
});

test('a file too large is not read', () => {
  writeFileSync(join(folder, 'machines', 'large.yaml'), 'name: x\n'.repeat(60_000));
  expect(read().problems).toMatchObject([{ file: 'machines/large.yaml', what: expect.stringContaining('469 kB') }]);
});

test('a folder that is not there is said', () => {
  const { problems } = readFolder(join(folder, 'nowhere'), { asOf: '2026-11-25' });
  expect(problems[0]?.what).toContain('found no folder');
});

test('the newest file time is the last change, where the content does not say', () => {
  const then = new Date('2026-03-04T05:06:07Z');
  for (const file of ['household.yaml', 'places/tin-shed.yaml', 'climates/valley.yaml'])
    utimesSync(join(folder, file), 1e9, 1e9);
  utimesSync(join(folder, 'machines', 'juniper.yaml'), then, then);
  expect(read().household?.revised).toBe('2026-03-04T05:06:07.000Z');
});

test('SOURCE_DATE_EPOCH stands before file times', () => {
  process.env.SOURCE_DATE_EPOCH = '1772600000';
  expect(read().household?.revised).toBe(new Date(1772600000000).toISOString());
});

test.each(['', 'yesterday', '1e30'])('SOURCE_DATE_EPOCH of "%s" is no instant, and file times count', (told) => {
  process.env.SOURCE_DATE_EPOCH = told;
  expect(read().household?.revised).toMatch(/^20/);
});

test('the day of the plan can depend on the household’s time zone', () => {
  let zone = '';
  readFolder(folder, {
    asOf: (z) => {
      zone = z;
      return '2026-11-25';
    },
  });
  expect(zone).toBe('Europe/Oslo');
});

test('a file name in another encoding is told as such, not as a link', () => {
  const name = Buffer.concat([
    Buffer.from(join(folder, 'machines', 'r')),
    Buffer.from([0xf6]),
    Buffer.from('bin.yaml'),
  ]);
  writeFileSync(name, 'name: Robin\n');
  expect(read().problems).toMatchObject([
    { what: 'found a file name that is not UTF-8, expected letters a–z and digits', fix: 'Rename the file.' },
  ]);
});

test('a place in a folder of another name finds its station: the name of the folder is all that is wrong', () => {
  cpSync(join(folder, 'places'), join(folder, 'place'), { recursive: true });
  rmSync(join(folder, 'places'), { recursive: true });
  writeFileSync(
    join(folder, 'place', 'tin-shed.yaml'),
    'name: Shed\nenclosure: carport\npower: false\nclimate: { near: [48.2, 13.5] }\n',
  );
  const library = join(import.meta.dirname, '..', '..', 'public', 'climate', 'normals.json');
  expect(readFolder(folder, { asOf: '2026-11-25', library }).problems).toMatchObject([
    { file: 'place/tin-shed.yaml', fix: 'Rename the folder to places.' },
  ]);
});

test('a household in a folder of its own belongs at the top; files of no kind belong elsewhere', () => {
  mkdirSync(join(folder, 'household'));
  cpSync(join(folder, 'household.yaml'), join(folder, 'household', 'household.yaml'));
  rmSync(join(folder, 'household.yaml'));
  writeFileSync(join(folder, 'compose.yaml'), 'services: {}\n');
  const fixes = read().problems.map(({ file, fix }) => [file, fix]);
  expect(fixes).toContainEqual(['household/household.yaml', 'Move it to the top of the content folder.']);
  expect(fixes).toContainEqual(['compose.yaml', expect.stringContaining('or out of this folder')]);
});

test('JSON is told where content lies, and left alone elsewhere', () => {
  writeFileSync(join(folder, 'machines', 'kite.json'), '{ "name": "Kite", "kind": "scooter", "place": "tin-shed" }');
  writeFileSync(join(folder, 'settings.json'), '{}');
  expect(read().problems).toMatchObject([{ file: 'machines/kite.json', fix: 'Rename the file to kite.yaml.' }]);
});

test('a folder that is not read is told alone: it is not said to be empty as well', () => {
  rmSync(join(folder, 'machines'), { recursive: true });
  symlinkSync('/etc', join(folder, 'machines'));
  expect(read().problems.map(({ file }) => file)).toEqual(['machines']);
});

test('a weather file of many years is told to be taken as it was published', () => {
  mkdirSync(join(folder, 'climates'), { recursive: true });
  writeFileSync(join(folder, 'climates', 'years.epw'), 'x'.repeat(10 * 1024 * 1024));
  expect(read().problems).toMatchObject([
    { file: 'climates/years.epw', fix: expect.stringContaining('one whole year') },
  ]);
});
