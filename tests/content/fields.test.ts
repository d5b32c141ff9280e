import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { editorSchema, type FileKind, fieldRows, KINDS_OF_FILES } from '../../src/content/fields.ts';

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
