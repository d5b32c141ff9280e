import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatProblem, nearest, printable } from '../../src/content/problem.ts';
import { readContent } from '../../src/content/read.ts';
import { household, readWith, SMALLEST } from './helpers.ts';

test('markup in a name stays the characters it is made of', () => {
  const name = '<img src=x onerror=alert(1)> & "quotes"';
  const { household: found } = readWith({ 'machines/juniper.yaml': SMALLEST.replace('Juniper', `'${name}'`) });
  expect(found?.machines[0]?.name).toBe(name);
});

test.each([
  ['../outside.yaml', 'leads out of its folder'],
  ['machines/../../outside.yaml', 'leads out of its folder'],
  ['machines//bike.yaml', 'leads out of its folder'],
  ['machines/a\\b.yaml', 'leads out of its folder'],
  ['machines/<b>bike.yaml', 'small letters'],
  ['machines/bike\u0000.yaml', 'leads out of its folder'],
  ['machines/bike\u202elmay.yaml', 'small letters'],
  ['machines/-bike.yaml', 'small letters'],
  ['machines/bike--two.yaml', 'small letters'],
  [`machines/${'a'.repeat(61)}.yaml`, 'small letters'],
  ['machines/Juniper.yaml', 'small letters'],
])('a file called %j is refused', (path, words) => {
  const { problems } = readContent([...household(), { path, bytes: SMALLEST }], { asOf: '2026-11-25' });
  const said = problems.map((p) => formatProblem(p)).join('\n');
  expect(said).toContain(words);
  expect(said.replaceAll('\n', '')).not.toMatch(/\p{Cc}|\u202e/u);
});

test('the same file handed over twice is a second machine of that id', () => {
  const { problems } = readContent([...household(), { path: 'machines/juniper.yaml', bytes: SMALLEST }], {
    asOf: '2026-11-25',
  });
  expect(problems[0]?.what).toContain('a second machine "juniper"');
});

test('pictures, notes and hidden files in the folder are left alone', () => {
  const { problems } = readWith({
    'README.md': '# Mine',
    'machines/juniper.jpg': 'x',
    '.git/config.yaml': 'x: [',
    'machines/.draft.yaml': ':',
  });
  expect(problems).toEqual([]);
});

test.each([
  ['capcity', 'capacity'],
  ['battrey', 'battery'],
  ['chemisty', 'chemistry'],
  ['Capacity', 'capacity'],
])('%s is taken for %s', (word, meant) => {
  expect(nearest(word, ['chemistry', 'capacity', 'battery', 'care'])).toBe(meant);
});

test('a word like no other has no nearest', () => {
  expect(nearest('colour', ['chemistry', 'capacity', 'battery'])).toBeUndefined();
});

test('no message holds a character that moves the cursor', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(printable(text)).not.toMatch(/\p{Cc}|[\u2028-\u202e\u2066-\u2069]/u);
    }),
  );
});
