/** What a message tells to write is taken where it is written: the advice is followed, and the complaint is gone. */
import { expect, test } from 'vitest';
import { keysOf } from '../../src/content/schema-walk.ts';
import { household } from '../../src/content/schemas/household.ts';
import { machine } from '../../src/content/schemas/machine.ts';
import { record } from '../../src/content/schemas/record.ts';
import { readWith } from './helpers.ts';

const HEADS = {
  'household.yaml': 'id: smallest\nname: The least that plans\ntimeZone: Europe/Oslo\nunits: metric\n',
  'machines/one.yaml': 'name: One\nkind: motorcycle\nplace: tin-shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\n',
  'records/one/winter.yaml': 'machine: one\n',
};
type File = keyof typeof HEADS;

/** What is told of the form of a field: that it has to be a list, or a group of fields. */
function toldOfForm(file: File, line: string, field: string) {
  const { problems } = readWith({ ...HEADS, [file]: `${HEADS[file]}${line}\n` });
  return problems.find(
    (p) => p.file === file && p.field === field && /expected (a list|a group|none, or indented)/.test(p.what),
  );
}

const fields = (
  [
    ['household.yaml', household],
    ['machines/one.yaml', machine],
    ['records/one/winter.yaml', record],
  ] as const
).flatMap(([file, schema]) =>
  keysOf(schema)
    .filter((name) => toldOfForm(file, `${name}:`, name))
    .map((name): [File, string] => [file, name]),
);

test('there are lists and groups in each file', () => {
  for (const file of Object.keys(HEADS)) expect(fields.filter((of) => of[0] === file).length).toBeGreaterThan(4);
});

test.each(fields)('%s: %s left empty', (file, field) => {
  const { fix } = toldOfForm(file, `${field}:`, field)!;
  const [, line] = /^Write it like (.*?)\.(?: Or delete the line\.)?$/.exec(fix) ?? [];
  expect(line, fix).toMatch(new RegExp(`^${field}: `));
  expect(toldOfForm(file, line!, field)).toBeUndefined();
});
