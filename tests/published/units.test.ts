import { expect, test } from 'vitest';
import { cansFor } from '../../src/planner/fuel/index.ts';
import { type Dimension, formatOne, parseQuantity } from '../../src/planner/units/index.ts';
import cases from './units.json' with { type: 'json' };

test.each(cases.exact)('$text', ({ text, dimension, si }) => {
  expect(parseQuantity(text, dimension as Dimension)).toBeCloseTo(si, 9);
});

test('a can of 2 US gal holds 7.57 L and not 7.6 L', () => {
  const canL = parseQuantity('2 US gal', 'volume') as number;
  expect(cansFor(7.57, canL)).toBe(1);
  expect(cansFor(canL, canL)).toBe(1);
  expect(cansFor(7.6, canL)).toBe(2);
  expect(formatOne(canL, 'L', 'us')).toBe('2.00 US gal');
});
