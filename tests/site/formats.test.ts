import { expect, test } from 'vitest';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { formatOf } from '../../src/site/formats.ts';

const german = formatOf({ locale: 'de-DE', clock: '24h', units: 'metric', asOf: '2026-11-29' });

// Decimal signs: Unicode CLDR, numbers/symbols.
test('what goes into an equation has the reader’s decimal sign, in words as in figures', () => {
  expect(german.measured('0.26 to 0.39', '% by volume')).toBe('0,26 to 0,39 % by volume');
  expect(german.measured(12.64, 'V')).toBe('12,64 V');
  expect(german.figures('0.50 % at 15.6 °C')).toBe('0,50 % at 15,6 °C');
});

// By hand: 0 L are nought quarts, a tenth of a millilitre is 0.003 US fl oz, and 0 °F is −17.8 °C.
test('an amount that is none in the other unit too is not said twice, a temperature of nought is', () => {
  const { measured } = formatOf({ locale: 'en-US', clock: '12h', units: 'us', asOf: '2026-11-29' });
  expect(measured(0, 'L')).toBe('0 L');
  expect(measured(0.1, 'mL')).toBe('0.1 mL');
  expect(measured(4, 'L')).toBe('4 L (1.06 US gal)');
  expect(measured(-17.78, '°C')).toBe('−17.78 °C (0 °F)');
});

const readIn = (units: SeasonPlan['units']) =>
  formatOf({ locale: 'en-US', clock: '12h', units, asOf: '2026-11-29' } as Parameters<typeof formatOf>[0]).readIn;

// By definition: what is read off a gauge or counter is read in the units of the country; hours and volts are the same in all.
test.each([
  ['metric', 'km or h', 'km or h'],
  ['us', 'km or h', 'mi or h'],
  ['imperial', 'km or h', 'mi or h'],
  ['us', 'kPa', 'psi'],
  ['us', 'V', 'V'],
  ['metric', '%', '%'],
] as const)('in %s units what is written as %s is read in %s', (units, written, read) => {
  expect(readIn(units)(written)).toBe(read);
});
