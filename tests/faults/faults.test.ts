import { join } from 'node:path';
import { expect, test } from 'vitest';
import { formatProblem } from '../../src/content/problem.ts';
import { expectedOf, FAULTS, faultNames, filesOf, readFault, readOver } from './household.ts';

test('the household under the faults is sound', () => {
  const { household, problems } = readOver([]);
  expect(problems).toEqual([]);
  expect(household?.machines.map((m) => m.id)).toEqual(['bike']);
});

test('there are at least eighty faults', () => {
  expect(faultNames().length).toBeGreaterThanOrEqual(80);
});

test.each(faultNames())('%s is found at its line, with the words of the fix', (name) => {
  const expected = expectedOf(name).problems;
  const { household, problems } = readFault(name);
  expect(household).toBeUndefined();
  expect(expected.length).toBeGreaterThan(0);
  expect(problems.map(({ file, line, field }) => ({ file, line, field }))).toEqual(
    expected.map(({ file, line, field }) => ({ file, line, field })),
  );
  for (const [i, { words, column }] of expected.entries()) {
    if (column !== undefined) expect(problems[i]!.column).toBe(column);
    const text = formatProblem(problems[i]!);
    expect(words.length).toBeGreaterThan(0);
    for (const word of words) expect(text).toContain(word);
    expect(text).toMatch(/^content\/[^\n]+:\d+:\d+ {2}[^\n]+[.!]$/);
  }
});

/** The word or figure that a message says was found: "found the unknown field "colour"", "found 12.55". */
const FOUND = /^found (?!that )(?:an? (?:quote \()?|the )?(?:[a-z]+ )*(?:"([^"]+)"|\((["'])\)|(-?[\d.]+\b))/;

test('a problem stands at what was found, or where its row begins', () => {
  let seen = 0;
  for (const name of faultNames()) {
    const files = new Map(filesOf(join(FAULTS, name)).map(({ path, bytes }) => [path, bytes]));
    for (const { file, line, column, what } of readFault(name).problems) {
      const bytes = files.get(file);
      const [, quoted, sign, figure] = FOUND.exec(what) ?? [];
      const found = quoted ?? sign ?? figure;
      // Of a file of one line that stands at the wrong place the line says nothing.
      if (bytes === undefined || found === undefined || /file|folder/.test(what)) continue;
      const row = new TextDecoder().decode(bytes as Uint8Array).split('\n')[line - 1]!;
      // Of a row with a tab the place is that in the row as it is meant.
      if (!row.includes(found) || row.includes('\t')) continue;
      const places = [...row.matchAll(/./gu)]
        .map(({ index }) => index)
        .filter((at) => row.startsWith(found, at))
        // Text in quotes begins with its quote, and a list or group with its bracket.
        .flatMap((at) => [at, ...(/["']/.test(row[at - 1] ?? '') ? [at - 1] : [])]);
      // A row may be wrong as a whole, and so may an entry behind its dash.
      expect([...places, row.search(/\S/), row.search(/(?<=^\s*- )\S/)].map((at) => at + 1), `${name}: ${what}`).toContain(column);
      seen += 1;
    }
  }
  expect(seen).toBeGreaterThan(200);
});
