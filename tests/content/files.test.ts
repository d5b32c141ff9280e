/** What each path is, and each file's bytes: by the rules of the field reference, of Unicode and of YAML. */
import { expect, test } from 'vitest';
import { slug } from '../../src/content/ids.ts';
import { type ContentFile, readContent } from '../../src/content/read.ts';
import { decode, placeIn } from '../../src/content/text.ts';
import { household, SMALLEST } from './helpers.ts';

const bytes = (...parts: (string | number[])[]) =>
  Uint8Array.from(parts.flatMap((part) => (typeof part === 'string' ? [...new TextEncoder().encode(part)] : part)));

/** What is told of the smallest household with these files besides. */
function told(...paths: (string | ContentFile)[]): string[] {
  const more = paths.map((one) => (typeof one === 'string' ? { path: one, bytes: SMALLEST } : one));
  return readContent([...household(), ...more], { asOf: '2026-11-25' }).problems.map(
    ({ file, what, fix }) => `${file}: ${what}. ${fix}`,
  );
}

test.each([
  ['machines/One.yaml', 'for instance to one.yaml'],
  ['machines/my bike.yaml', 'for instance to my-bike.yaml'],
  [
    'machines/juniper (1).yaml',
    'Delete it, if it is a copy of juniper.yaml; if it is another machine, rename it, for instance to juniper-2.yaml',
  ],
  ['machines/juniper - Copy.yaml', 'Delete it, if it is a copy of juniper.yaml'],
  ['machines/Copy of juniper.yaml', 'Delete it, if it is a copy of juniper.yaml'],
  ['machines/juniper_copy.yaml', 'Delete it, if it is a copy of juniper.yaml'],
  ['machines/juniper.yaml.bak', 'Delete it, or move it out of the folder, if it is a copy of juniper.yaml'],
  ['machines/con.yaml', 'keep for a device, expected another id. Rename the file, for instance to con-1.yaml'],
  ['places/lpt1.yaml', 'Rename the file, for instance to lpt1-1.yaml'],
  ['machines/other.yml', 'Rename the file to other.yaml'],
  ['machines/other.YAML', 'Rename the file to other.yaml'],
  [
    'machines/club/other.yaml',
    'found a content file in the folder "machines/club", expected no folders inside it. Move it to machines/.',
  ],
  ['machine/other.yaml', 'expected machines. Rename the folder to machines.'],
  ['machine/club/other.yaml', 'Move it to machines/.'],
  ['stuff/other.yaml', 'Move it to one of places, climates, machines, procedures, records.'],
  ['other.yaml', 'at the top, expected household.yaml here, and all else in folders. Move it to one of'],
  ['houshold.yaml', 'Delete it, or move it away: there is one household.'],
  ['records/a.yaml', 'expected a folder for each machine inside records. Move it to records/<id of its machine>/.'],
  ['records/juniper/2026/a.yaml', 'Move it to records/<id of its machine>/.'],
  ['records/My Bike/a.yaml', 'Rename the folder.'],
  ['../a.yaml', 'found a path that leads out of its folder'],
  ['constructor/a.yaml', 'Move it to one of'],
])('%s is told what to do with it', (path, words) => {
  const found = told({ path, bytes: path.startsWith('records') ? 'notes: []\n' : SMALLEST });
  expect(found.filter((text) => text.startsWith(`${path}: `) && text.includes(words))).toHaveLength(1);
});

test('names that differ by capitals alone are told, since some disks take them for one', () => {
  expect(told('machines/JUNIPER.yaml')).toContainEqual(
    expect.stringMatching(/differs from machines\/juniper\.yaml by capitals only/i),
  );
});

test.each([
  'README.md',
  'machines/juniper.jpg',
  'machines/.juniper.yaml',
  '.git/machines/a.yaml',
  'climates/a.epw',
  'notes.txt',
])('%s is left alone', (path) => {
  expect(told({ path, bytes: ': [' })).toEqual([]);
});

test.each(['records/juniper/a.yaml', 'records/juniper/My export (2).yaml'])('%s is a record of juniper', (path) => {
  expect(told({ path, bytes: 'notes: [{ date: "2026-11-01", text: A }]\n' })).toEqual([]);
});

test('a mark of UTF-8 at the beginning and Windows line ends are no part of the text', () => {
  expect(decode(bytes([0xef, 0xbb, 0xbf], 'a: 1\r\nb: 2\r\n'))).toEqual({ text: 'a: 1\nb: 2\n', faults: [] });
  expect(decode('\ufeffa: 1')).toEqual({ text: 'a: 1', faults: [] });
  expect(decode('')).toEqual({ text: '', faults: [] });
});

// The Unicode Standard, chapter 2.6 and 23.8: the mark is FE FF or FF FE; without it every other byte of Latin text is nought.
test('UTF-16 is told by its mark and without it, either way round', () => {
  const utf16 = (text: string, big: boolean) =>
    [...text].flatMap((sign) => (big ? [0, sign.charCodeAt(0)] : [sign.charCodeAt(0), 0]));
  for (const big of [true, false]) {
    const mark = big ? [0xfe, 0xff] : [0xff, 0xfe];
    for (const written of [bytes(mark, utf16('name: A\n', big)), bytes(utf16('name: A\n', big))])
      expect(decode(written)).toMatchObject({
        text: undefined,
        faults: [{ line: 1, what: expect.stringContaining('UTF-16') }],
      });
  }
});

test('a text with a control sign or two is a text, with more than one in fifty it is none', () => {
  const letters = 'abcdefg\n'.repeat(25);
  expect(decode(bytes(letters.slice(0, -4), [1, 1, 1, 1])).text).toBeDefined();
  const binary = decode(bytes(letters.slice(0, -5), [1, 2, 3, 4, 31]));
  expect(binary).toMatchObject({ text: undefined, faults: [{ line: 25, column: 4 }] });
  expect(binary.faults[0]!.what).toContain('binary data');
  // Tab, line feed, vertical tab, form feed and carriage return are what text is set with.
  expect(decode(bytes('a\t\n\v\f\r\n'.repeat(40))).text).toBeDefined();
});

test('bytes that are no UTF-8 are told where they stand, and the rest is read as Western text', () => {
  // é is E9 in Windows-1252; in UTF-8 that byte begins a sign of three.
  const { text, faults } = decode(bytes('name: A\nspot: "caf', [0xe9], '"\n'));
  expect(faults).toMatchObject([{ line: 2, column: 11, what: expect.stringContaining('not UTF-8') }]);
  expect(text).toBe('name: A\nspot: "café"\n');
  // Signs before it are counted as signs, not as bytes.
  expect(decode(bytes('é: ä', [0xe9], 'x')).faults).toMatchObject([{ line: 1, column: 5 }]);
  expect(decode(bytes([0xff], 'a')).faults).toMatchObject([{ line: 1, column: 1 }]);
});

test('a carriage return alone is told at its place', () => {
  expect(decode('a: 1\nb: 2\rc: 3')).toMatchObject({ text: undefined, faults: [{ line: 2, column: 5 }] });
});

test('a place in a text is its line and its sign, each from one', () => {
  expect([placeIn('ab\ncd', 0), placeIn('ab\ncd', 2), placeIn('ab\ncd', 3), placeIn('ab\ncd', 5)]).toEqual([
    { line: 1, column: 1 },
    { line: 1, column: 3 },
    { line: 2, column: 1 },
    { line: 2, column: 3 },
  ]);
});

test('an id made from a name is never that of a device', () => {
  expect(['Aux', 'COM1', 'Nul!', 'Lpt9'].map(slug)).toEqual(['aux-1', 'com1-1', 'nul-1', 'lpt9-1']);
  expect(['Auxiliary', 'Com 1', 'Comet', 'Con Brio'].map(slug)).toEqual(['auxiliary', 'com-1', 'comet', 'con-brio']);
});
