/** Limits are told in the unit that was written: who typed gallons is not told of litres. */
import { expect, test } from 'vitest';
import { problemsOf } from '../../src/content/answers.ts';
import { readWith } from './helpers.ts';

const problems = (lines: string) =>
  readWith(
    { 'machines/juniper.yaml': `name: Juniper\nkind: motorcycle\nplace: shed\n${lines}\n` },
    'workshop',
  ).problems.map(({ what }) => what);

// 60 L is the most for a motorcycle, 0.2 L the least. 1 US gal = 3.785411784 L, 1 imp gal = 4.54609 L, by definition.
test.each([
  ['170 L', '170 L, expected 0.2 to 60 L'],
  ['30 US gal', '30 US gal, expected 0.05 to 15.85 US gal'],
  ['20 imp gal', '20 imp gal, expected 0.04 to 13.2 imp gal'],
  ['20 IMP GAL', '20 imp gal, expected 0.04 to 13.2 imp gal'],
])('a tank of %s', (tank, said) => {
  expect(problems(`fuel: { tank: ${tank} }`)).toEqual([`found ${said} for a motorcycle`]);
});

// 10 to 500 kPa; 1 psi = 6.894757 kPa: 72.52 and 1.45 psi.
test('a pressure, in a list', () => {
  expect(
    problems('tyres:\n  - { position: front, pressure: 32 psi }\n  - { position: rear, pressure: 100 psi }'),
  ).toEqual(['found 100 psi, expected 2.9 to 72.52 psi for a motorcycle']);
});

// 12 L in the tank of 2 US gal (7.57 L): 3.17 US gal.
test('more in the tank than it holds is told in the unit of the tank', () => {
  expect(problems('fuel: { tank: 2 US gal, inTank: 12 L }')).toEqual([
    'found 3.17 US gal in a tank of 2 US gal, expected no more than it holds',
  ]);
});

test('the form is told as the file is', () => {
  const machine = { id: 'a', name: 'A', kind: 'motorcycle', place: 'p', fuel: { tank: '30 US gal' } };
  const household = { id: 'h', name: 'H', timeZone: 'Etc/UTC', locale: 'en-US', units: 'us' as const, revised: '' };
  expect(problemsOf({ household, places: [], machines: [machine] })).toEqual([
    {
      machine: 'a',
      field: 'fuel.tank',
      what: 'found 30 US gal, expected 0.05 to 15.85 US gal for a motorcycle',
      fix: 'Check the figure and its unit.',
    },
  ]);
});
