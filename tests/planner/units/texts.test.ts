import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../../src/content/read-folder.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import {
  decimalsIn,
  formatDifference,
  formatOne,
  formatQuantity,
  formatSupply,
  inUnits,
  lineInUnits,
} from '../../../src/planner/units/index.ts';

const PROJECT = join(import.meta.dirname, '../../..');

test('amounts in braces stand in the user’s system, rounded; a difference in degrees of its thermometer', () => {
  expect(inUnits('Up to {30 L}, at home {94.635 L}.', 'metric')).toBe('Up to 30 L, at home 94.6 L.');
  expect(inUnits('Up to {94.635 L}.', 'us')).toBe('Up to 25 US gal.');
  expect(inUnits('under {-2 °C}, {5 K} to spare', 'us')).toBe('under 28.4 °F, 9 degrees to spare');
  expect(inUnits('of {procedure} and {fuel.level}', 'us')).toBe('of {procedure} and {fuel.level}');
});

test('a line to write into a file is proposed in the user’s units', () => {
  expect(lineInUnits('fuel: { inTank: 3.79 L }', 'us')).toBe('fuel: { inTank: 1.00 US gal }');
  expect(lineInUnits('oil: 1.9 L', 'us')).toBe('oil: 2.0 US qt');
  // 4.5 L are 4.755 US quarts (0.946353 L, NIST SP 811, B.8).
  expect(lineInUnits('engine: { oil: 4.5 L }', 'us')).toBe('engine: { oil: 4.8 US qt }');
  expect(lineInUnits('tyres: [{ position: front, count: 1, pressure: 175 kPa }]', 'us')).toBe(
    'tyres: [{ position: front, count: 1, pressure: 25 psi }]',
  );
  expect(lineInUnits('battery: { drain: 3 mA }', 'us')).toBe('battery: { drain: 3 mA }');
  // 9 K are 16.2 steps of a Fahrenheit thermometer (1 K = 9/5), and no freezing point is added to a difference.
  expect(lineInUnits('battery: { doubling: 9 K }', 'us')).toBe('battery: { doubling: 16 °F }');
  expect(lineInUnits('fuel: { inTank: 3.79 L }', 'metric')).toBe('fuel: { inTank: 3.79 L }');
});

/** An amount that only the other half of the world reads. */
const METRIC = /(?<![\w.])[−-]?\d[\d.,]*(?: \d+)? ?(?:K|°C|L|mL|litres?|km|kPa|kg|g|mm|m²|L\/h)(?![\w·/²³])/;

/** Where °C stands with °F beside it, in the texts that are the same for everybody. */
const BOTH = /−?\d+ °C,? \(?−?\d+ °F\)?/g;

test.each([
  ['tests/walks/households/yard', '2026-10-27'],
  ['tests/households/south', '2027-03-20'],
])('what a US household is told and reminded of is in its own units: %s', (folder, asOf) => {
  const { household, problems } = readFolder(join(PROJECT, folder), {
    asOf,
    procedures: join(PROJECT, 'content/procedures'),
    library: join(PROJECT, 'public/climate/normals.json'),
  });
  expect(problems).toEqual([]);
  expect(household!.units).toBe('us');
  const { plan } = planSeason(household!, { asOf, quick: true });
  const texts = [
    ...plan.events.flatMap((e) => [e.title, e.text]),
    ...plan.warnings.flatMap((w) => [w.text, w.act]),
    ...plan.misfits.map((m) => m.text),
    ...plan.machines.flatMap((m) => [
      ...m.warnings.flatMap((w) => [w.text, w.act]),
      ...m.season.reasons,
      ...m.steps.flatMap((s) => [s.title, s.detail ?? '', s.why, s.doNotRide ?? '', ...s.cautions]),
      m.battery?.careReason ?? '',
      ...(m.battery?.charges ?? []).flatMap((c) => [c.why, c.noCharger ?? '']),
      m.fuel?.reason ?? '',
      m.fuel?.tap ?? '',
      m.fuel?.localLimit.text ?? '',
      m.fuel?.atFirstUse.text ?? '',
      m.coolant?.text ?? '',
      m.corrosion.protection.reason,
      ...m.services.map((s) => s.text),
    ]),
  ];
  const bare = texts
    .flatMap((text) => text.split('\n'))
    .map((line) => line.replaceAll(BOTH, '').replaceAll(/[\d.]+ N·m|\([\d.]+ N·m\)/g, ''))
    .filter((line) => METRIC.test(line));
  expect([...new Set(bare)]).toEqual([]);
});

/**
 * What stands in brackets: torque in both systems for everybody, pressure where gauges show psi beside the metric scale, litres for
 * those who count in imperial gallons and buy litres (common practice). 1 lbf·ft = 1.355818 N·m, 1 psi = 6.894757 kPa,
 * 1 imp gal = 4.54609 L: 25/1.355818 = 18.44, 220/6.894757 = 31.9, 10/4.54609 = 2.20.
 */
test.each([
  [25, 'N·m', 'metric', '25.0 N·m (18.4 lbf·ft)'],
  [25, 'N·m', 'us', '18.4 lbf·ft (25.0 N·m)'],
  [220, 'kPa', 'metric', '220 kPa (32 psi)'],
  [220, 'kPa', 'imperial', '32 psi (220 kPa)'],
  [220, 'kPa', 'us', '32 psi'],
  [10, 'L', 'metric', '10.0 L'],
  [10, 'L', 'imperial', '2.20 imp gal (10.0 L)'],
  [10, 'L', 'us', '2.64 US gal'],
  // Less than a gallon is sold by the quart, a quarter of 231 in³: 0.946 L.
  [3, 'L', 'us', '3.2 US qt'],
  [3.78, 'L', 'us', '4.0 US qt'],
  [0.2, 'L', 'us', '0.2 US qt'],
  // Oil and coolant come in litres where petrol is counted in imperial gallons (common practice).
  [3, 'L', 'imperial', '3.0 L'],
  [4.54, 'L', 'imperial', '4.5 L'],
  [4.6, 'L', 'imperial', '1.01 imp gal (4.6 L)'],
  // A mil is a thousandth of an inch, 25.4 µm (definition).
  [25.4, 'µm', 'us', '1.00 mil'],
  [1.3, 'µm', 'us', '0.05 mil'],
  [25.4, 'µm', 'metric', '25.4 µm'],
  [25.4, 'µm', 'imperial', '25.4 µm'],
  [-40, '°C', 'metric', '−40 °C'],
  [-40, '°C', 'us', '−40 °F'],
] as const)('%d %s reads for %s "%s"', (value, unit, system, text) => {
  expect(formatQuantity(value, unit, system)).toBe(text);
});

/** A step of the Celsius scale is a kelvin, one of the Fahrenheit scale 5/9 of it (definition): 10 K are 18 of them, never 50. */
test('a difference of temperatures is told in degrees of the reader’s thermometer, and never as a temperature', () => {
  expect(formatQuantity(10, 'K', 'metric')).toBe('10 degrees');
  expect(formatQuantity(10, 'K', 'imperial')).toBe('10 degrees');
  expect(formatQuantity(10, 'K', 'us')).toBe('18 degrees');
  expect(formatOne(-5, 'K', 'us', 1)).toBe('−9.0 degrees');
  expect(formatOne(1, 'K', 'metric')).toBe('1 degree');
  expect(formatDifference(10, 'us')).toBe('18 Δ°F');
  expect(formatDifference(2.5, 'metric')).toBe('2.5 Δ°C');
});

/**
 * Decimals in the reader's language: a comma for German and French, a point for British English and where a tag is none
 * (Unicode CLDR, numbers/symbols). Thousands are not parted, and an equation's point in a content file stays.
 */
test.each([
  ['de-DE', '7,2 L', '1,5 cans', '18,4 lbf·ft (25,0 N·m)'],
  ['fr-FR', '7,2 L', '1,5 cans', '18,4 lbf·ft (25,0 N·m)'],
  ['en-GB', '7.2 L', '1.5 cans', '18.4 lbf·ft (25.0 N·m)'],
  ['no tag at all', '7.2 L', '1.5 cans', '18.4 lbf·ft (25.0 N·m)'],
])('in %s a number is written with its own sign', (locale, litres, cans, torque) => {
  expect(formatOne(7.2, 'L', { locale, units: 'metric' })).toBe(litres);
  expect(formatSupply(1.5, 'can', { locale, units: 'metric' })).toBe(cans);
  expect(formatQuantity(25, 'N·m', { locale, units: 'us' })).toBe(torque);
  expect(inUnits('{1234.5 L}', { locale, units: 'metric' })).toBe(`1234${litres[1]}5 L`);
  expect(inUnits('{30 L}', { locale, units: 'metric' })).toBe('30 L');
});

/**
 * Gauges of Europe, Britain among them, show bar; those of Canada, Australia, New Zealand and South Africa kilopascals (common
 * practice). 1 bar = 100 kPa by definition, 1 psi = 6.894757 kPa: 225/6.894757 = 32.6.
 */
test.each([
  ['de-DE', 'metric', '2,25 bar (33 psi)', 'pressure: 2.25 bar'],
  ['de', 'metric', '2,25 bar (33 psi)', 'pressure: 2.25 bar'],
  ['fr-FR', 'metric', '2,25 bar (33 psi)', 'pressure: 2.25 bar'],
  ['en-GB', 'metric', '2.25 bar (33 psi)', 'pressure: 2.25 bar'],
  ['en-GB', 'imperial', '33 psi (2.25 bar)', 'pressure: 33 psi'],
  ['en-CA', 'metric', '225 kPa (33 psi)', 'pressure: 225 kPa'],
  ['fr-CA', 'metric', '225 kPa (33 psi)', 'pressure: 225 kPa'],
  ['en-NZ', 'metric', '225 kPa (33 psi)', 'pressure: 225 kPa'],
  ['de-DE', 'us', '33 psi', 'pressure: 33 psi'],
  ['no tag at all', 'metric', '225 kPa (33 psi)', 'pressure: 225 kPa'],
] as const)('a tyre in %s with %s units is set by "%s"', (locale, units, text, line) => {
  expect(formatQuantity(225, 'kPa', { locale, units })).toBe(text);
  expect(lineInUnits('pressure: 225 kPa', { locale, units })).toBe(line);
});

/** Decimal signs: Unicode CLDR, numbers/symbols. 49 CFR 571.116 and MPMS 11.1 are names of clauses, DOT 5.1 one of a fluid. */
test('a text’s own figures have the reader’s decimal sign, names and equations their point', () => {
  const german = { locale: 'de-DE', units: 'metric' } as const;
  expect(decimalsIn('about 13.8 to 14.7 V', german)).toBe('about 13,8 to 14,7 V');
  expect(decimalsIn('0.26 to 0.39 % by volume', german)).toBe('0,26 to 0,39 % by volume');
  expect(decimalsIn('SG at 26.7 °C', german)).toBe('SG at 26,7 °C');
  for (const name of ['FMVSS 116 (49 CFR 571.116)', 'API MPMS 11.1', 'DOT 5.1 fluid', '0.8·α·ΔT', 'IEC 60529 14.2.3 V'])
    expect(decimalsIn(name, german)).toBe(name);
  expect(decimalsIn('about 13.8 to 14.7 V', { locale: 'en-GB', units: 'metric' })).toBe('about 13.8 to 14.7 V');
});

/** A number with a point that is a figure and not a clause of a standard, a date or an equation: it has a unit behind it. */
const POINT = /(?<![\d.§-])\d+\.\d+ (?:L|mL|Ah|A|V|h|kg|m²|%|degrees|US gal)\b/;

test('what a German household is told has no decimal point beside its commas', () => {
  const asOf = '2026-11-25';
  const { household } = readFolder(join(PROJECT, 'content'), {
    asOf,
    library: join(PROJECT, 'public/climate/normals.json'),
  });
  const { plan } = planSeason({ ...household!, locale: 'de-DE' }, { asOf, quick: true });
  const texts = [
    ...plan.events.flatMap((e) => [e.title, e.text]),
    ...[...plan.warnings, ...plan.machines.flatMap((m) => m.warnings)].flatMap((w) => [w.text, w.act]),
    ...plan.misfits.map((m) => m.text),
    ...plan.machines.flatMap((m) => [
      ...m.steps.flatMap((s) => [s.title, s.detail ?? '', s.why, s.doNotRide ?? '']),
      m.battery?.careReason ?? '',
      ...(m.battery?.charges ?? []).flatMap((c) => [c.why, c.noCharger ?? '']),
      m.fuel?.reason ?? '',
      m.fuel?.atFirstUse.text ?? '',
      m.coolant?.text ?? '',
      ...m.services.map((s) => s.text),
    ]),
  ];
  expect(texts.some((text) => /\d,\d/.test(text))).toBe(true);
  expect(texts.some((text) => text.includes('about 13,8 to 14,7 V'))).toBe(true);
  const lines = texts.flatMap((text) => text.split('\n'));
  expect([...new Set(lines.filter((line) => POINT.test(line)))]).toEqual([]);
});
