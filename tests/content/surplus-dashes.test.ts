/** Dashes too many in a list, and lists that only look so. */
import { expect, test } from 'vitest';
import { readOver } from '../faults/household.ts';

const told = (jobs: string) =>
  readOver([
    { path: 'machines/old.yaml', bytes: `name: Old\nkind: motorcycle\nplace: shed\nassemblies:\n${jobs}` },
  ]).problems.map((p) => `${p.line} ${p.what}`);

const dash = (line: number, name: string) => `${line} found a dash before "${name}", which belongs to the entry above`;

test('every entry of a list is put together from the fields behind dashes of their own', () => {
  const found = told(
    '  - id: seat\n  - name: Seat\n  - offMinutes: 3\n  - id: tank\n    name: Tank\n  - offMinutes: 5\n',
  );
  expect(found.map((text) => text.split(',')[0])).toEqual(
    [dash(6, 'name'), dash(7, 'offMinutes'), dash(10, 'offMinutes')].map((text) => text.split(',')[0]),
  );
});

test('what no field behind a dash supplies is still missing', () => {
  const found = told('  - id: seat\n  - offMinutes: 3\n');
  expect(found).toHaveLength(2);
  expect(found.join('\n')).toMatch(/found nothing, expected .*\n.*found a dash before "offMinutes"/);
});

test('an entry that lacks a field and has what the one above has is an entry, and lacks it', () => {
  const found = told('  - id: seat\n    name: Seat\n    offMinutes: 3\n  - name: Tank\n    offMinutes: 5\n');
  expect(found).toHaveLength(1);
  expect(found[0]).toContain('found nothing');
});

test('an entry with a strange field is none of the entry above', () => {
  const found = told('  - id: seat\n    name: Seat\n    offMinutes: 3\n  - colour: red\n');
  expect(found.join('\n')).not.toContain('found a dash');
});
