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

test('oil and coolant are bought by the quart where petrol is bought by the gallon', () => {
  // A US quart is a quarter of 231 in³, 0.946353 L (NIST SP 811, B.8): 4.5/0.946353 = 4.755, 7/0.946353 = 7.397.
  expect(formatSupply(4.5, 'L', 'us', 'Engine oil, the grade the manual names')).toBe('4.8 US qt');
  expect(formatSupply(7, 'L', 'us', 'Coolant, the kind the manual names')).toBe('7.4 US qt');
  expect(formatSupply(7, 'L', 'us', 'Petrol')).toBe('1.85 US gal');
  expect(formatSupply(4.5, 'L', 'metric', 'Engine oil')).toBe('4.5 L');
});

test('an amount that is no number is refused', () => {
  expect(() => formatSupply(Number.NaN, 'can', 'metric')).toThrow(/NaN/);
});
