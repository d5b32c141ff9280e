import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { planSeason } from '../../src/planner/plan.ts';
import {
  counted,
  durationText,
  listText,
  partsText,
  sentence,
  withinSentence,
  withSeparator,
  writtenDate,
  writtenDay,
  writtenMonth,
} from '../../src/planner/written.ts';
import { formatOf } from '../../src/site/formats.ts';

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

test('a day in short has its weekday; a month its name', () => {
  // 3 December 2026 is a Thursday: 29 November, the first Sunday of Advent, is four days before it.
  expect(writtenDay('2026-12-03', 'en-GB')).toBe('Thu, 3 Dec 2026');
  expect(['en-GB', 'nb-NO'].map((locale) => writtenMonth(2, locale))).toEqual(['February', 'February']);
  expect([writtenMonth(1, 'en-GB'), writtenMonth(12, 'en-GB')]).toEqual(['January', 'December']);
});

test('only a tag that begins with the language English is English', () => {
  // "enm" is Middle English (ISO 639-2): no language of a reader, and no English of this century.
  expect(writtenDate('2026-10-25', 'enm-US')).toBe('25 October 2026');
  expect(writtenDate('2026-10-25', 'sw-US')).toBe('25 October 2026');
  expect(writtenDate('2026-10-25', 'EN-us')).toBe('October 25, 2026');
});

test('a decimal has the sign of its language (CLDR), in Latin digits', () => {
  expect(withSeparator('7.2', 'de-DE')).toBe('7,2');
  expect(withSeparator('7.2', 'en-US')).toBe('7.2');
  expect(withSeparator('12', 'de-DE')).toBe('12');
  // Egypt's own digits have the Arabic decimal sign, "٫"; its Latin ones have a point.
  expect(withSeparator('7.2', 'ar-EG')).toBe('7.2');
  expect(withSeparator('7.2', 'no such tag')).toBe('7.2');
});

test('things are listed as in English, without a comma before "and"', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(listText)).toEqual(['', 'a', 'a and b', 'a, b and c']);
});

test('a name within a sentence begins small, unless it is an abbreviation; a sentence begins with a capital', () => {
  expect(['Insurance', 'MOT', 'a tax', 'Öl', 'X'].map(withinSentence)).toEqual([
    'insurance',
    'MOT',
    'a tax',
    'öl',
    'X',
  ]);
  expect(['snow machine', '12 V socket', ''].map(sentence)).toEqual(['Snow machine', '12 V socket', '']);
});

const step = (part: string, minutes: number, title = `${part}, a step`) => ({ part, minutes, title });

test('a session of one step is named by the step, unless that is long', () => {
  expect(partsText([step('Wash', 30, 'Wash the chain')])).toBe('wash the chain');
  // Sixty letters still go into a title, one more does not.
  expect(partsText([step('Wash', 30, `W${'a'.repeat(59)}`)])).toBe(`w${'a'.repeat(59)}`);
  expect(partsText([step('Wash', 30, `W${'a'.repeat(60)}`)])).toBe('wash');
});

test('of several parts the two that take longest are named, in the order of the work', () => {
  expect(partsText([step('Wash', 10), step('Oil', 20)])).toBe('wash; oil');
  // A third one is named rather than counted.
  expect(partsText([step('Wash', 10), step('Oil', 20), step('Tyres', 5)])).toBe('wash; oil; tyres');
  const four = [step('Wash', 10), step('Oil', 20), step('Tyres', 5), step('Fuel', 25)];
  expect(partsText(four)).toBe('oil; fuel; 2 more');
  // Wash takes 30 min in two steps, more than oil and fuel.
  expect(partsText([...four, step('Wash', 20)])).toBe('wash; fuel; 2 more');
  // Two steps of one part are no step of their own.
  expect(partsText([step('Wash', 10), step('Wash', 20)])).toBe('wash');
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

// An hour has 60 minutes.
test.each([
  [0, '0 min'],
  [45, '45 min'],
  [59.6, '1 h'],
  [60, '1 h'],
  [125, '2 h 5 min'],
  [3.5 * 60, '3 h 30 min'],
  [600, '10 h'],
])('%d minutes are %s, on the pages as in the calendar', (minutes, text) => {
  expect(durationText(minutes)).toBe(text);
  const { duration } = formatOf({ locale: 'de-DE', clock: '24h', units: 'metric', asOf: '2026-11-29' });
  expect(duration(minutes)).toBe(text);
});

test('what is no length of time is refused', () => {
  for (const minutes of [-1, Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => durationText(minutes)).toThrow(/expected 0 or more/);
});
