/** Reading row by row where the writer slipped: nothing is told of texts that are YAML. */
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { slipsOf } from '../../src/content/slips.ts';
import { namesIn } from '../../src/content/syntax.ts';
import { filesOf } from '../faults/household.ts';
import { readWith } from './helpers.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const files = ['content', 'tests/households'].flatMap((folder) => filesOf(join(ROOT, folder)));

test.each(files.filter(({ path }) => path.endsWith('.yaml')).map(({ path, bytes }) => [path, bytes] as const))(
  '%s has no slip, as the parser (yaml) finds no error in it',
  (path, bytes) => {
    const text = new TextDecoder().decode(bytes as Uint8Array);
    expect(parseDocument(text).errors).toEqual([]);
    expect(slipsOf(text, namesIn(path))).toEqual([]);
  },
);

test.each([
  ['a list as deep as its field', 'assemblies:\n- id: seat\n  name: Seat\n- id: tank\n  name: Tank\n'],
  ['four spaces a level', 'fuel:\n    tank: 17 L\n    bowls: 2\ncooling: air\n'],
  ['a list deeper than its field by one', 'jobs:\n - id: a\n   name: A\n - id: b\n   name: B\n'],
  ['text in quotes over several lines', 'remarks: "one\n  two: three\n  four"\ncooling: air\n'],
  ['plain text over several lines', 'remarks: one\n  two\n  three\ncooling: air\n'],
  ['a block of text', 'remarks: |\n  a: "b\n  - [c\n\n  ---x\ncooling: air\n'],
  ['brackets over several lines', 'jobs: [\n  { id: a,\n    name: A },\n]\ncooling: air\n'],
  ['a bracket that closes at the margin', 'tyres: [\n]\ncooling: air\n'],
  ['a value below its field', 'remarks:\n  of two words\ncooling: air\n'],
  ['a colon within a word', 'siteUrl: https://garage.example\nname: at 10:30\n'],
  ['comments of any depth', 'fuel: # all of it\n# left\n      # deep\n  tank: 17 L # 4.5 gal: full\n'],
  ['quotes within plain text', 'name: The "fast" bike, Bob\'s\n'],
  ['doubled quotes', 'name: \'Bob\'\'s bike\'\nspot: "a \\"b\\""\n'],
  ['a mark before and dots behind', '---\nname: Bike\n...\n'],
  ['nothing behind the colon', 'fuel:\ncooling: air\n'],
  ['names in quotes', '"name": "Bike"\n\'spot\': 4\n'],
])('%s is no slip, as the parser (yaml) finds no error in it', (_, text) => {
  expect(parseDocument(text).errors).toEqual([]);
  expect(slipsOf(text, namesIn('machines/bike.yaml'))).toEqual([]);
});

// A file in brackets has no rows to read one by one: there the parser (yaml) says what is wrong.
test.each([
  ['{ name: One }\n---\n{ name: Two }\n', 2, 'found a second document after "---"'],
  ['{ name: One, "kind: car }\n', 1, 'found a quote or bracket that is not closed'],
  ['{ name: One\n', 1, 'found a quote or bracket that is not closed'],
])('%j in brackets is told', (text, line, words) => {
  const { problems } = readWith({ 'machines/one.yaml': text });
  expect(problems).toHaveLength(1);
  expect(Math.abs(problems[0]!.line - line)).toBeLessThanOrEqual(1);
  expect(problems[0]!.what).toContain(words);
});

test.each(['=====', '~~~~', '*****', '____', '-----', '=== '])(
  'a line of %j is told as no field, and a name with such signs is one',
  (line) => {
    const told = (text: string) => slipsOf(text, namesIn('machines/bike.yaml')).map(({ what }) => what);
    expect(told(`name: Bike\n${line}\nkind: car\n`)).toEqual([`found a line of "${line.trim()[0]}", expected a field`]);
    expect(told(`name: Bike\nremarks: a ${line} b\nspot: end ${line}\n`)).toEqual([]);
  },
);
