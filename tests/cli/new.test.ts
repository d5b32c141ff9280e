/** `npm run new` in a folder that is not there yet: household, place and machine, which plan without a change. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { PROJECT } from '../../src/cli/paths.ts';

let folder: string;
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'idle-new-')), 'garage');
});
afterEach(() => rmSync(join(folder, '..'), { recursive: true }));

function run(command: 'new' | 'check', answers: readonly string[] = [], ...options: string[]) {
  return spawnSync(process.execPath, [join(PROJECT, 'src', 'cli', `${command}.ts`), '--content', folder, ...options], {
    input: answers.map((line) => `${line}\n`).join(''),
    encoding: 'utf8',
  });
}

const PLACE = ['Old barn', 'thin-metal-shed', 'yes', '46.8, -92.1'];
const MACHINE = [
  'Juniper',
  'motorcycle',
  '2026-10-25',
  '2027-04-10',
  'flooded',
  '12 Ah',
  'carburettor',
  '',
  '',
  '',
  '',
  'air',
  'yes',
];

test('from nothing to a plan', () => {
  const made = run('new', ['Frog shed', 'metric', '0.8 A', ...PLACE, ...MACHINE]);
  expect(made.stderr).toBe('');
  expect(made.status).toBe(0);
  expect(
    readdirSync(folder, { recursive: true })
      .filter((path) => String(path).endsWith('.yaml'))
      .sort(),
  ).toEqual(['household.yaml', join('machines', 'juniper.yaml'), join('places', 'old-barn.yaml')]);
  const checked = run('check');
  expect(checked.stderr).toBe('');
  expect(checked.stdout).toContain('1 machine: no problem found.');
});

test('a second machine is asked for its place, and nothing is asked of the household again', () => {
  run('new', ['Frog shed', 'metric', 'none', ...PLACE, ...MACHINE]);
  const household = readFileSync(join(folder, 'household.yaml'), 'utf8');
  const made = run('new', ['Fern', 'quad', 'somewhere', 'old-barn', '', '', 'none', 'none', '']);
  expect(made.status, made.stderr).toBe(0);
  expect(made.stdout).toContain('found "somewhere", expected one of old-barn.');
  expect(readFileSync(join(folder, 'household.yaml'), 'utf8')).toBe(household);
  expect(run('check').stdout).toContain('2 machines: no problem found.');
});

test('what cannot be is asked again', () => {
  const made = run('new', [
    ...['', 'feet', 'us', '0.8', '0.8 A'],
    ...['Old barn', 'barn', 'open', 'maybe', '', 'here', '46.8', '95, 3', '46.8 -92.1'],
    ...MACHINE,
  ]);
  expect(made.status, made.stderr).toBe(0);
  for (const said of [
    'found "feet"',
    'found "0.8" without a unit',
    'found "barn", expected one of open, carport',
    'found "maybe", expected one of yes, no',
    'found "here", expected degrees of latitude and longitude',
    'found "46.8", expected degrees of latitude and longitude',
    'found 95, expected at most 90',
  ])
    expect(made.stdout).toContain(said);
  expect(run('check').stdout).toContain('no problem found');
});

test('an electric machine is asked for its drive battery, one for the road for salt, and no other', () => {
  const machine = ['Moth', 'scooter', '', '', 'none', 'none', 'petrol', 'lead-acid', 'sometimes', 'yes', '', 'no'];
  const made = run('new', ['Frog shed', 'metric', 'none', ...PLACE, ...machine]);
  expect(made.status, made.stderr).toBe(0);
  expect(made.stdout).toContain('found "petrol"');
  expect(made.stdout).toContain('found "sometimes"');
  const text = readFileSync(join(folder, 'machines', 'moth.yaml'), 'utf8');
  for (const line of [
    /^driveBattery:$/m,
    /^ {2}chemistry: lead-acid /m,
    /^ {2}removable: true /m,
    /^roadSalt:$/m,
    /^ {2}exposed: false /m,
    /^engine:\n {2}cycle: electric /m,
    /^fuel: none$/m,
  ])
    expect(text).toMatch(line);
  expect(run('check').stdout).toContain('1 machine: no problem found.');
  const petrol = run('new', ['Fern', 'quad', 'old-barn', '', '', 'none', 'injection', '', '', '']);
  expect(petrol.stdout).not.toMatch(/drive battery|salted/);
});

test('options answer beforehand', () => {
  const made = run(
    'new',
    [],
    ...['--household', 'Frog shed', '--units', 'metric', '--charger', 'none'],
    ...['--place', 'Old barn', '--enclosure', 'masonry', '--power', 'no', '--near', '46.8,-92.1'],
    ...['--name', 'Fern', '--kind', 'tractor', '--chemistry', 'none', '--delivery', 'none'],
  );
  expect(made.status, made.stderr).toBe(0);
  expect(run('check').stdout).toContain('1 machine: no problem found.');
});
