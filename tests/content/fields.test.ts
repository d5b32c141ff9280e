import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { editorSchema, type FileKind, fieldRows, KINDS_OF_FILES, kindOfFile } from '../../src/content/fields.ts';

const kinds = Object.keys(KINDS_OF_FILES) as FileKind[];

test.each(kinds)('the editors’ schema of a %s is the one that the reader goes by', (kind) => {
  const written = readFileSync(
    join(import.meta.dirname, '..', '..', 'public', 'schemas', `${kind}.schema.json`),
    'utf8',
  );
  expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify(editorSchema(kind))));
});

test.each(kinds.filter((kind) => kind !== 'procedure'))('every field of a %s has a meaning', (kind) => {
  const rows = fieldRows(kind);
  expect(rows.length).toBeGreaterThan(5);
  expect(rows.filter((row) => row.meaning === '').map((row) => row.field)).toEqual([]);
});

test.each(kinds.filter((kind) => kind !== 'procedure'))(
  'every field of a %s that is a single value has an example',
  (kind) => {
    const values = fieldRows(kind).filter((row) => !/^(group|list)$/.test(row.form));
    expect(values.filter((row) => row.example === '').map((row) => row.field)).toEqual([]);
  },
);

test('the editors’ schema refuses unknown fields, as the reader does', () => {
  expect(editorSchema('machine').additionalProperties).toBe(false);
});

test('the field reference says of each field what can be written there', () => {
  const form = (kind: FileKind, field: string) => fieldRows(kind).find((row) => row.field === field)?.form;
  expect(form('machine', 'name')).toBe('text');
  expect(form('machine', 'year')).toBe('whole number');
  expect(form('machine', 'fuel.densityKgPerM3')).toBe('number');
  expect(form('machine', 'battery.removable')).toBe('true or false');
  expect(form('machine', 'jobs')).toBe('list');
  expect(form('machine', 'roadSalt')).toBe('group');
  expect(form('machine', 'battery')).toBe('none, or group');
  expect(form('machine', 'chassis.throttle')).toBe('cable, wire');
  // A quantity that may be a range says so in words, and has no row for each end.
  expect(form('machine', 'battery.drain')).toBe('text, or value with low and high');
  expect(fieldRows('machine').filter(({ field }) => /\.(value|low|high)$/.test(field))).toEqual([]);
});

test('the field reference has each field once, and tells which cannot be left out', () => {
  for (const kind of kinds) {
    const fields = fieldRows(kind).map(({ field }) => field);
    expect(new Set(fields).size, kind).toBe(fields.length);
  }
  // As README and the smallest household have it: name, kind and place.
  const outermost = fieldRows('machine').filter(({ field, required }) => required && /^\w+$/.test(field));
  expect(outermost.map(({ field }) => field)).toEqual(['name', 'kind', 'place']);
  const inTyres = fieldRows('machine').filter(({ field, required }) => required && field.startsWith('tyres[].'));
  expect(inTyres.map(({ field }) => field)).toEqual(['tyres[].position', 'tyres[].pressure']);
});

test.each([
  ['household.yaml', 'household'],
  ['places/shed.yaml', 'place'],
  ['climates/valley.yaml', 'climate'],
  ['machines/bike.yaml', 'machine'],
  ['records/bike/a.yaml', 'record'],
  ['procedures/oil.yaml', 'procedure'],
] as const)('%s is a %s', (path, kind) => {
  expect(kindOfFile(path)).toBe(kind);
});
