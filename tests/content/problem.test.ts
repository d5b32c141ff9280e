/** How problems are ordered and said: the rules that stand at their functions. */
import { expect, test } from 'vitest';
import { formatProblem, nearest, type Problem, printable, shown, sortProblems } from '../../src/content/problem.ts';

const problem = (file: string, line: number, column: number, field = '', what = 'found a'): Problem => ({
  file,
  line,
  column,
  field,
  what,
  fix: 'Mend it.',
});

test('problems stand in the order of files, then lines, then columns, whatever order they were found in', () => {
  const inOrder = [
    problem('household.yaml', 9, 1),
    problem('machines/a.yaml', 1, 1),
    problem('machines/a.yaml', 1, 7, 'a'),
    problem('machines/a.yaml', 1, 7, 'b', 'found a'),
    problem('machines/a.yaml', 1, 7, 'b', 'found b'),
    problem('machines/a.yaml', 2, 3),
    // By number and not by text.
    problem('machines/a.yaml', 10, 2),
    problem('machines/b.yaml', 1, 1),
  ];
  for (let turn = 0; turn < inOrder.length; turn++) {
    const turned = [...inOrder.slice(turn), ...inOrder.slice(0, turn)];
    expect(sortProblems(turned)).toEqual(inOrder);
    expect(sortProblems(turned.reverse())).toEqual(inOrder);
  }
});

test('the list that was handed over stays as it was', () => {
  const list = [problem('b', 1, 1), problem('a', 1, 1)];
  sortProblems(list);
  expect(list.map(({ file }) => file)).toEqual(['b', 'a']);
});

test('a problem of a whole file names no field', () => {
  expect(formatProblem(problem('machines/a.yaml', 3, 5), 'garage')).toBe(
    'garage/machines/a.yaml:3:5  found a. Mend it.',
  );
  expect(formatProblem(problem('machines/a.yaml', 3, 5, 'fuel.tank'))).toBe(
    'content/machines/a.yaml:3:5  fuel.tank: found a. Mend it.',
  );
});

test.each([
  [null, 'nothing'],
  [undefined, 'nothing'],
  [[], 'an empty list'],
  [[1], 'a list'],
  [{}, 'a group of lines'],
  [12, '12'],
  [false, 'false'],
  ['', '""'],
  ['two words', '"two words"'],
  ['a\nb', '"aU+000Ab"'],
  ['x'.repeat(60), `"${'x'.repeat(60)}"`],
  ['x'.repeat(61), `"${'x'.repeat(57)}…"`],
])('%j is shown short and on one line', (value, text) => {
  expect(shown(value)).toBe(text);
});

// Unicode code charts: no-break space U+00A0 is seen as a space; zero-width joiner, line separator and half a pair are not seen.
test('signs that cannot be seen are written out by their number of four digits or more', () => {
  expect(printable('a\u200db\u2028c\ud800d\u{e0001}e\u0007')).toBe('aU+200DbU+2028cU+D800dU+E0001eU+0007');
  expect(printable('a\u00a0b é 漢 🛵')).toBe('a\u00a0b é 漢 🛵');
});

// One slip each of the four that the Damerau–Levenshtein distance counts: left out, doubled, another letter, two that changed places.
test.each(['capcity', 'cappacity', 'capasity', 'cpaacity', 'caapcity'])('%s is one slip or two away', (word) => {
  expect(nearest(word, ['chemistry', 'capacity', 'care'])).toBe('capacity');
});

test.each([
  ['of two that are as near, neither', 'bat', ['cat', 'rat'], undefined],
  ['the nearer of two, whichever stands first', 'caar', ['card', 'cart', 'car'], 'car'],
  ['the nearer of two, whichever stands last', 'tyress', ['tyres', 'tyre'], 'tyres'],
  ['a short word with two slips in it is another', 'ab', ['xy'], undefined],
  ['a short word with one slip is that word', 'oik', ['oil', 'air'], 'oil'],
  ['a word that is its beginning', 'insu', ['registration', 'insurance'], 'insurance'],
  ['a word of which so far more than one begins so', 'cha', ['chain', 'chassis'], undefined],
  ['a beginning of three letters, where one alone begins so', 'reg', ['registration', 'insurance'], 'registration'],
  ['a beginning of two letters says nothing', 're', ['registration', 'insurance'], undefined],
  ['capital letters are no slip', 'LIFEPO4', ['lifepo4', 'gel'], 'lifepo4'],
  ['nothing, where nothing is known', 'gel', [], undefined],
] as const)('%s', (_, word, known, meant) => {
  expect(nearest(word, known)).toBe(meant);
  expect(nearest(word, [...known].reverse())).toBe(meant);
});
