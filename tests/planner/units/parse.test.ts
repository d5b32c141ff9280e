import { expect, test } from 'vitest';
import { formatOne, formatQuantity, parseQuantity } from '../../../src/planner/units/index.ts';

const problem = (text: string, dimension: Parameters<typeof parseQuantity>[1] = 'distance') => {
  const found = parseQuantity(text, dimension);
  return typeof found === 'number' ? `read as ${found}` : found.problem;
};

test.each([
  ['61,240 km', '"61240" or "61.24"'],
  ['61.240 km', '"61240" or "61.24"'],
  ['-1,500 km', '"-1500" or "-1.5"'],
  ['61 240 km', 'expected "61240"'],
  ['61\u00a0240 km', 'expected "61240"'],
  ["61'240 km", 'expected "61240"'],
  ['61’240 km', 'expected "61240"'],
  ['61_240 km', 'expected "61240"'],
  ['1,234,567 km', 'expected "1234567"'],
  ['1.234.567 km', 'expected "1234567"'],
  ['  61 240 km', 'expected "61240"'],
])('digits in groups are refused, not read as a thousandth: %s', (text, words) => {
  expect(problem(text)).toContain(words);
});

test.each([
  ['0,125 km', 0.125],
  ['0.125 km', 0.125],
  ['12,5 km', 12.5],
  ['12.25 km', 12.25],
  ['1234 km', 1234],
  ['1234,5 km', 1234.5],
  ['12,3456 km', 12.3456],
  ['+3 km', 3],
  ['−3 km', -3],
  ['12km', 12],
  [' 12   km ', 12],
  ['1.5e3 km', 1500],
  ['2e-1 km', 0.2],
  ['2e+1 km', 20],
  ['1.25e10 km', 1.25e10],
  ['  12  km  ', 12],
  ['1.5E3 km', 1500],
  ['12 KM', 12],
] as const)('decimals are read with point or comma: %s', (text, value) => {
  expect(parseQuantity(text, 'distance')).toBeCloseTo(value, 12);
});

test('three decimals of a litre are no thousands', () => {
  expect(parseQuantity('2.250 L', 'volume')).toBeCloseTo(2.25, 12);
  expect(problem('2,250 L', 'volume')).toContain('"2250" or "2.25"');
});

test.each(['5-7 L', '5 – 7 L', '5 to 7 L', '6 ± 1 L', '6 +/- 1 L'])('a range is called one: %s', (text) => {
  expect(problem(text, 'volume')).toContain(`found "${text}", which is a range`);
});

test('what is no figure with a unit of its kind is refused with what was found and the units that would do', () => {
  expect(problem('17', 'volume')).toContain(
    'found "17" without a unit, expected a number with its unit (L, mL, US gal',
  );
  expect(problem('17 kg', 'volume')).toContain(
    'found "17 kg" with the unit "kg", expected a number with its unit (L, mL, US gal',
  );
  expect(problem('seventeen L', 'volume')).toContain('found "seventeen L"');
  expect(problem('km 12')).toContain('found "km 12", expected a number with its unit (km, mi)');
  expect(problem('1e999 km')).toContain('found "1e999 km"');
  for (const text of ['4 gal', '4 gallon', '4 GALLONS'])
    expect(problem(text, 'volume')).toContain('expected "US gal" or "imp gal"');
  expect(parseQuantity('4 gal (US)', 'volume')).toBeCloseTo(4 * 3.785411784, 9);
});

test('a unit without a row is printed with a tenth below ten, and whole from there', () => {
  expect(formatOne(9.94, 'd', 'metric')).toBe('9.9 d');
  expect(formatOne(9, 'd', 'metric')).toBe('9 d');
  expect(formatOne(10.4, 'd', 'metric')).toBe('10 d');
  expect(formatOne(10, '', 'us')).toBe('10');
  expect(formatOne(2.7186, 'd', 'us', 3)).toBe('2.719 d');
});

test('what both systems print alike stands once; a nought has no sign; what is no number is not printed', () => {
  expect(formatQuantity(3, 'd', 'metric')).toBe('3 d');
  expect(formatOne(-0.02, 'L', 'metric')).toBe('0.0 L');
  expect(formatOne(-20, '°C', 'metric')).toBe('−20 °C');
  expect(() => formatOne(Number.NaN, 'L', 'metric')).toThrow(/found NaN/);
});
