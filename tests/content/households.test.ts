import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { daysBetween, monthOf } from '../../src/planner/dates.ts';
import { readWith, SMALLEST } from './helpers.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const bundled = {
  procedures: join(ROOT, 'content', 'procedures'),
  library: join(ROOT, 'public', 'climate', 'normals.json'),
};

test('the demo household is sound, with its five machines, two places and three jobs that share seat, tank and airbox', () => {
  const { household, problems } = readFolder(join(ROOT, 'content'), { asOf: '2026-11-25', ...bundled });
  expect(problems).toEqual([]);
  expect(household!.machines.map((m) => m.name).sort()).toEqual(['Badger', 'Juniper', 'Magpie', 'Old Fern', 'Sleet']);
  expect(household!.places.map((p) => [p.id, p.power])).toEqual([
    ['attached-garage', true],
    ['tin-shed', false],
  ]);
  const juniper = household!.machines.find((m) => m.id === 'juniper')!;
  expect(juniper.jobs).toHaveLength(3);
  for (const job of juniper.jobs) expect(job.assemblies).toEqual(expect.arrayContaining(['seat', 'tank', 'airbox']));
  expect(household!.machines.find((m) => m.id === 'old-fern')!.cooling.coolant?.strength).toBeUndefined();
});

test('every demo file names the schema that editors check it by', () => {
  for (const [file, depth] of [
    ['household.yaml', '../'],
    ['places/tin-shed.yaml', '../../'],
    ['climates/tarn-hollow.yaml', '../../'],
    ['machines/juniper.yaml', '../../'],
    ['records/juniper/2026-11.yaml', '../../../'],
  ] as const) {
    const first = readFileSync(join(ROOT, 'content', file), 'utf8').split('\n')[0]!;
    expect(first).toMatch(
      new RegExp(
        `^# yaml-language-server: \\$schema=${depth.replaceAll('.', '\\.')}public/schemas/[a-z]+\\.schema\\.json$`,
      ),
    );
  }
});

test('a household without procedures of its own takes the bundled ones; in the southern half of the world the rest is its winter', () => {
  const { household, problems } = readFolder(join(ROOT, 'tests', 'households', 'south'), {
    asOf: '2026-11-25',
    ...bundled,
  });
  expect(problems).toEqual([]);
  expect(household!.procedures.length).toBeGreaterThan(10);
  const plover = household!.machines.find((m) => m.id === 'plover')!;
  expect(plover.season.proposed).toBe(true);
  expect([3, 4, 5]).toContain(monthOf(plover.season.lastUse));
  expect([9, 10, 11]).toContain(monthOf(plover.season.firstUse));
  expect(household!.machines.find((m) => m.id === 'heron')!.fuel!.taps).toEqual({ kind: 'manual', count: 2 });
  expect(household!.places.every((p) => p.station !== undefined && !p.station.far)).toBe(true);
});

test.each([
  ['lastUse alone', SMALLEST.replace(/firstUse.*\n/, '')],
  ['firstUse alone', SMALLEST.replace(/lastUse.*\n/, '')],
])('%s: the climate proposes the other end of the same rest', (_, yaml) => {
  const { household, problems } = readWith({ 'machines/juniper.yaml': yaml });
  expect(problems).toEqual([]);
  const { season } = household!.machines[0]!;
  expect(season.proposed).toBe(true);
  expect(daysBetween(season.lastUse, season.firstUse)).toBeGreaterThan(60);
  expect(daysBetween(season.lastUse, season.firstUse)).toBeLessThan(300);
});

test('a climate in Fahrenheit with dew points is the climate in Celsius with humidity', () => {
  const f = (c: number) => Math.round((c * 9) / 5 + 32);
  const list = (values: number[]) => `[${values.map(f).join(', ')}]`;
  const mean = [-10, -5, 0, 5, 10, 15, 20, 15, 10, 5, 0, -5];
  const { household, problems } = readWith({
    'climates/valley.yaml': `name: V\nlatitudeDeg: 50\nelevation: 500 ft\nsource: own\nmeanF: ${list(mean)}\nminF: ${list(mean.map((t) => t - 5))}\nmaxF: ${list(mean.map((t) => t + 5))}\ndewPointF: ${list(mean)}\n`,
  });
  expect(problems).toEqual([]);
  const climate = household!.places[0]!.climate;
  expect(climate.elevationM).toBeCloseTo(152.4, 6);
  if (climate.kind !== 'normals') throw new Error('expected normals');
  for (const [m, t] of mean.entries()) expect(climate.normals.meanC[m]).toBeCloseTo(t, 0);
  for (const rh of climate.normals.rhPct) expect(rh).toBeCloseTo(100, 6);
});

test('an hourly file in the content folder takes the place of normals', () => {
  const rows = Array.from({ length: 8760 }, (_, h) => {
    const day = new Date(Date.UTC(2025, 0, 1, h));
    const t = (-8 + 24 * Math.sin((Math.PI * h) / 8760)).toFixed(1);
    return `2025,${day.getUTCMonth() + 1},${day.getUTCDate()},${day.getUTCHours() + 1},0,?,${t},-10.0,60,95000`;
  });
  const head = [
    'LOCATION,Somewhere,-,-,own station,000000,48.2,13.5,1.0,350',
    ...Array(6).fill('COMMENTS'),
    'DATA PERIODS,1,1,Data,Sunday,1/1,12/31',
  ];
  const readHours = (hours: readonly string[]) =>
    readWith({
      'places/tin-shed.yaml':
        'name: Shed\nenclosure: timber-shed\npower: true\nclimate: { hourly: climates/own.epw }\n',
      'climates/own.epw': `${[...head, ...hours].join('\n')}\n`,
    });
  const { household, problems } = readHours(rows);
  expect(problems).toEqual([]);
  const { climate } = household!.places[0]!;
  if (climate.kind !== 'hourly') throw new Error('expected an hourly climate');
  expect(climate.temperatureC[0]).toBe(-8);
  expect(climate.rhPct[8759]).toBe(60);
  expect(climate.latitudeDeg).toBe(48.2);
  // The tenth hour is on line 18; before its temperature stand the 16 signs of "2025,1,1,10,0,?,".
  const broken = readHours(rows.toSpliced(9, 1, rows[9]!.replace(/,\?,[^,]*/, ',?,cold'))).problems;
  expect(broken.map(({ file, line, column }) => `${file}:${line}:${column}`)).toEqual(['climates/own.epw:18:17']);
  expect(broken[0]!.what).toContain('"cold"');
});
