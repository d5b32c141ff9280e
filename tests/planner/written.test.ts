import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { counted, writtenDate } from '../../src/planner/written.ts';

const ROOT = join(import.meta.dirname, '..', '..');

test('a date is written in English, in the order of the reader’s English', () => {
  expect(writtenDate('2026-10-25', 'en-GB')).toBe('25 October 2026');
  expect(writtenDate('2026-10-25', 'en-US')).toBe('October 25, 2026');
  // Canada's English has the month first; Norwegian and Thai have the day first, and British English is written for them.
  expect(writtenDate('2026-10-25', 'en-CA')).toBe('October 25, 2026');
  expect(writtenDate('2026-10-25', 'nb-NO')).toBe('25 October 2026');
  expect(writtenDate('2026-10-25', 'th-TH')).toBe('25 October 2026');
  expect(writtenDate('2026-10-25', 'no such tag')).toBe('25 October 2026');
});

test('one is counted in the singular', () => {
  expect(counted(1, 'day')).toBe('1 day');
  expect(counted(4, 'day')).toBe('4 days');
  expect(counted(0, 'box', 'boxes')).toBe('0 boxes');
});

/** Every sentence of a plan with its place; what is to be pasted into a file, and what a source prints, is left out. */
function sentences(value: unknown, path = ''): { path: string; text: string }[] {
  if (typeof value === 'string') return /\s/.test(value) ? value.split('\n').map((text) => ({ path, text })) : [];
  if (value === null || typeof value !== 'object') return [];
  const own = Object.entries(value).filter(
    ([key]) => !['settle', 'sources', 'source', 'equation', 'caveat', 'attribution'].includes(key),
  );
  return own.flatMap(([key, part]) => sentences(part, Array.isArray(value) ? path : `${path}.${key}`));
}

describe.each([
  ['the demo household', 'content', '2026-11-25'],
  ['the smallest household', 'tests/households/smallest', '2026-10-01'],
  ['a household of the south', 'tests/households/south', '2026-05-01'],
  ['a household with a record', 'tests/households/workshop', '2026-11-25'],
])('the texts of %s', (_, folder, asOf) => {
  const { household, problems } = readFolder(join(ROOT, folder), {
    asOf,
    procedures: join(ROOT, 'content', 'procedures'),
    library: join(ROOT, 'public', 'climate', 'normals.json'),
  });
  if (!household) throw new Error(JSON.stringify(problems));
  const texts = sentences(planSeason(household, { asOf }).plan);

  test.each([
    ['no date in figures', /\d{4}-\d\d-\d\d/],
    ['no number with more digits than anybody reads', /\d[.]\d{5}/],
    ['no plural of one', /(?<![\d.–] ?)\b1 (pieces|days|cans|charges|months|hours|steps|items|visits|approved cans)\b/],
    ['no singular of many', /(?<![.\d])([2-9]|\d\d) (piece|day|can|charge|month|hour|step|item|visit)\b/],
    ['no key of a file', /snow-machine|side-by-side-|flooded-|undefined|NaN|null\b/],
    ['no word twice', /\b(\p{L}{2,}) \1\b/u],
  ])('have %s', (_, wrong) => {
    expect(texts.length).toBeGreaterThan(50);
    expect(texts.filter(({ text }) => wrong.test(text))).toEqual([]);
  });
});
