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
  [475.23819332975995, 'mL', '475 mL (16.1 US fl oz)'],
])('%d of "%s" reads "%s"', (amount, unit, text) => {
  expect(formatSupply(amount, unit, 'metric')).toBe(text);
});

test('measured amounts stand in the household’s system first', () => {
  expect(formatSupply(4.2, 'L', 'us')).toBe('1.11 US gal (4.2 L)');
});

test('an amount that is no number is refused', () => {
  expect(() => formatSupply(Number.NaN, 'can', 'metric')).toThrow(/NaN/);
});
