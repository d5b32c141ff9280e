import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../../src/content/read-folder.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import { inUnits, lineInUnits } from '../../../src/planner/units/index.ts';

const PROJECT = join(import.meta.dirname, '../../..');

test('amounts in braces stand in the user’s system first, rounded', () => {
  expect(inUnits('Up to {30 L}, at home {94.635 L}.', 'metric')).toBe(
    'Up to 30 L (7.9 US gal), at home 94.6 L (25 US gal).',
  );
  expect(inUnits('Up to {94.635 L}.', 'us')).toBe('Up to 25 US gal (94.6 L).');
  expect(inUnits('under {-2 °C}, {5 K} to spare', 'us')).toBe('under 28.4 °F (−2 °C), 9 °F (5 K) to spare');
  expect(inUnits('of {procedure} and {fuel.level}', 'us')).toBe('of {procedure} and {fuel.level}');
});

test('a line to write into a file is proposed in the user’s units', () => {
  expect(lineInUnits('fuel: { inTank: 3.79 L }', 'us')).toBe('fuel: { inTank: 1.00 US gal }');
  expect(lineInUnits('tyres: [{ position: front, count: 1, pressure: 175 kPa }]', 'us')).toBe(
    'tyres: [{ position: front, count: 1, pressure: 25 psi }]',
  );
  expect(lineInUnits('battery: { drain: 3 mA }', 'us')).toBe('battery: { drain: 3 mA }');
  expect(lineInUnits('fuel: { inTank: 3.79 L }', 'metric')).toBe('fuel: { inTank: 3.79 L }');
});

/** An amount that only the other half of the world reads. */
const METRIC = /(?<![\w.])[−-]?\d[\d.,]*(?: \d+)? ?(?:K|°C|L|mL|litres?|km|kPa|kg|m²|L\/h)(?![\w·/²³])/;

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
    .map((line) => line.replaceAll(BOTH, '').replaceAll(/\([^()]*\)/g, ''))
    .filter((line) => METRIC.test(line));
  expect([...new Set(bare)]).toEqual([]);
});
