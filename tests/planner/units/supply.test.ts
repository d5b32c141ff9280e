import { expect, test } from 'vitest';
import { formatSupply } from '../../../src/planner/units/index.ts';

test.each([
  [1, 'piece', '1 piece'],
  [2, 'piece', '2 pieces'],
  [4, 'pieces', '4 pieces'],
  [1, 'pieces', '1 piece'],
  [0.5, 'can', '0.5 can'],
  [1.5, 'can', '1.5 cans'],
  [3, 'box', '3 boxes'],
  [1, 'as noted', 'as noted'],
  [3, '', '3'],
  [100, 'g', '100 g'],
  [475.23819332975995, 'mL', '475 mL'],
])('%d of "%s" reads "%s"', (amount, unit, text) => {
  expect(formatSupply(amount, unit, 'metric')).toBe(text);
});

test('measured amounts stand in the household’s system', () => {
  // An avoirdupois ounce is 28.349523125 g by definition: 100/28.35 = 3.527.
  expect(formatSupply(100, 'g', 'us')).toBe('3.5 oz');
  expect(formatSupply(4.2, 'L', 'us')).toBe('1.11 US gal');
});

test('an amount that is no number is refused', () => {
  expect(() => formatSupply(Number.NaN, 'can', 'metric')).toThrow(/NaN/);
});
