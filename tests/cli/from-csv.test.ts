import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { COLUMNS, machinesOf } from '../../src/cli/csv/machines.ts';
import { cellName, readTable } from '../../src/cli/csv/table.ts';
import { readFolder } from '../../src/content/read-folder.ts';
import { cleanUp, command, copyOf, put } from './household.ts';

const CLUB = readFileSync(join(import.meta.dirname, '../fixtures/club.csv'));
const PLACE = 'name: Hall\nenclosure: slab-garage\npower: true\nclimate: valley\n';

afterEach(cleanUp);

function club(): string {
  const folder = copyOf('smallest');
  put(folder, 'places/hall.yaml', PLACE);
  return folder;
}

const bytes = (text: string) => new TextEncoder().encode(text);

/** The table with its faults alone, as "cell: what was found". */
function faults(text: string): string[] {
  const table = readTable(bytes(text));
  const { problems } = table.problems.length > 0 ? table : machinesOf(table.rows, 'club.csv');
  return problems.map((p) => `${p.column > 0 ? cellName(p.row, p.column) : `row ${p.row}`} ${p.field}: ${p.what}`);
}

const HEAD = 'name,kind,place,battery.capacity,engine.cylinders,chassis.offGround,lastUse,firstUse\n';

test('each row becomes a machine file that the reader takes', async () => {
  const folder = club();
  put(folder, 'members.csv', new TextDecoder().decode(CLUB));
  const { code, out, err } = await command('from-csv', [join(folder, 'members.csv'), folder]);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(out).toContain('6 machines');
  const { household, problems } = readFolder(folder, { asOf: '2026-11-25' });
  expect(problems).toEqual([]);
  expect(household!.machines.map((m) => m.id)).toEqual(['juniper', ...[1, 2, 3, 4, 5, 6].map((n) => `member-00${n}`)]);
  const [, amber, quill, , bolt, hare, spark] = household!.machines;
  expect(amber!.cooling.coolant?.volumeL).toBe(2.4);
  expect(amber!.chassis.offGround).toBe(true);
  expect(quill!.name).toBe('Quill, the second');
  expect(bolt!.battery).toMatchObject({ chemistry: 'lifepo4', capacityAh: 10, boughtYear: 2025 });
  expect(hare!.battery).toBeUndefined();
  expect(spark!.fuel).toBeUndefined();
  expect(spark!.season.proposed).toBe(true);
});

test('a second run with the same list changes nothing; another list asks for --replace', async () => {
  const folder = club();
  put(folder, 'members.csv', new TextDecoder().decode(CLUB));
  const args = [join(folder, 'members.csv'), folder];
  await command('from-csv', args);
  expect((await command('from-csv', args)).out).toContain('0 files written');
  put(folder, 'members.csv', new TextDecoder().decode(CLUB).replace('12 Ah', '14 Ah'));
  const before = readFileSync(join(folder, 'machines/member-001.yaml'), 'utf8');
  const refused = await command('from-csv', args);
  expect(refused.code).toBe(1);
  expect(refused.err).toMatch(/members\.csv:2:1 {2}cell A2 id: found machines\/member-001\.yaml there already/);
  expect(readFileSync(join(folder, 'machines/member-001.yaml'), 'utf8')).toBe(before);
  const replaced = await command('from-csv', [...args, '--replace']);
  expect(replaced.out).toContain('1 files written');
  expect(replaced.out).toContain('juniper.yaml');
  expect(readFileSync(join(folder, 'machines/member-001.yaml'), 'utf8')).toContain('14 Ah');
});

test('all faults of all rows are told by cell, those across files too, and nothing is written', async () => {
  const folder = club();
  put(
    folder,
    'members.csv',
    `${HEAD}One,motorcycle,hall,12,2,,,\nTwo,boat,hall,,many,,,\nThree,quad,halle,,,,2027-01-01,2026-01-01\nOne,car,hall,,,maybe,,\n`,
  );
  const { code, err } = await command('from-csv', [join(folder, 'members.csv'), folder]);
  expect(code).toBe(1);
  for (const cell of [
    'D2 battery.capacity',
    'B3 kind',
    'E3 engine.cylinders',
    'C4 place',
    'H4 firstUse',
    'A5 name',
    'F5 chassis.offGround',
  ])
    expect(err).toContain(`cell ${cell}: found`);
  expect(err).toContain('7 faults');
  expect(readdirSync(join(folder, 'machines'))).toEqual(['juniper.yaml']);
});

test.each([
  ['semicolons and a byte order mark', '\ufeffname;kind;place\nA;quad;hall\n'],
  ['tabs', 'name\tkind\tplace\nA\tquad\thall\n'],
  ['carriage returns, empty rows and spaces', 'name , kind,place\r\n\r\n A ,quad, hall\r\n,,\r\n'],
  ['other letters in the names of columns', 'Name,KIND,Place\nA,quad,hall\n'],
])('a table with %s is read', (_, text) => {
  expect(faults(text)).toEqual([]);
  const { machines } = machinesOf(readTable(bytes(text)).rows, 'club.csv');
  expect(machines.map((m) => m.id)).toEqual(['a']);
  expect(machines[0]!.text).toContain('name: A\nkind: quad\nplace: hall\n');
});

test.each([
  ['name,kind\nA,quad\n', 'row 1 : found no column "place", expected one'],
  ['name,kind,place,batery.capacity\n', 'D1 : found the column "batery.capacity", expected "battery.capacity"'],
  ['name,kind,place,name\n', 'D1 : found the column "name" twice, expected it once'],
  ['name,kind,place\n', 'row 1 : found no row with a machine, expected one'],
  ['name,kind,place\nA,,hall\n', 'B2 kind: found an empty cell, expected a value'],
  ['name,kind,place\nA,quad,hall,more\n', 'D2 : found "more" in a column without a name, expected 3 cells'],
  [
    'name,kind,place\nA,quad,"hall\n',
    'row 2 : found a quotation mark that is not closed, expected a second one at the end of the cell',
  ],
  [
    'name,kind,place\n雪上車,quad,hall\n',
    'A2 name: found "雪上車", of which no file name can be made, expected an id beside it',
  ],
  [
    'id,name,kind,place\n../x,A,quad,hall\n',
    'A2 id: found "../x", expected small letters a–z, digits and single hyphens, at most 60',
  ],
  [`${HEAD}A,quad,hall,,99,,,\n`, 'E2 engine.cylinders: found 99, expected at most 16'],
  [
    `${HEAD}A,quad,hall,,,,25/10/2026,\n`,
    'G2 lastUse: found "25/10/2026", expected a day that the calendar has, written "YYYY-MM-DD"',
  ],
])('%j is told as %j', (text, fault) => {
  expect(faults(text)).toEqual([fault]);
});

test('text in another encoding asks for UTF-8', () => {
  expect(readTable(Uint8Array.from([110, 228, 109, 101])).problems[0]!.fix).toContain('CSV UTF-8');
});

test('a cell that YAML would misread comes back as it was', () => {
  const names = ['null', 'yes', '1e3', '- dash', '# no comment', '"quoted"', "it's", '*star', '{a: b}', '2026-10-25'];
  const rows = [['id', 'name', 'kind', 'place'], ...names.map((name, i) => [`m-${i}`, name, 'quad', 'hall'])];
  const { machines, problems } = machinesOf(rows, 'club.csv');
  expect(problems).toEqual([]);
  const folder = club();
  for (const { id, text } of machines) put(folder, `machines/${id}.yaml`, text);
  const { household } = readFolder(folder, { asOf: '2026-11-25' });
  const read = new Map(household!.machines.map((m) => [m.id, m.name]));
  expect(names.map((_, i) => read.get(`m-${i}`))).toEqual(names);
});

test('every column is a field with a meaning', () => {
  expect(COLUMNS.length).toBeGreaterThan(50);
  expect(COLUMNS.filter((column) => column.meaning === '')).toEqual([]);
});
