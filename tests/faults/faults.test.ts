import { expect, test } from 'vitest';
import { formatProblem } from '../../src/content/problem.ts';
import { expectedOf, faultNames, readFault, readOver } from './household.ts';

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
