/** Which protection a rest asks for: steps of ISO 9223:1992 (τ1–τ5) and NAVEDTRA 14022 (60 days, 1 year); levels common practice. */
import { expect, test } from 'vitest';
import { PROTECTION, type ProtectionFacts, protectionFor } from '../../../src/planner/corrosion/protection.ts';

const FACTS: ProtectionFacts = {
  category: 'C1',
  wetHoursPerYear: 5,
  unwashedSalt: false,
  restDays: 100,
  canDehumidify: false,
  dryStore: false,
  hasCylinders: true,
};
const level = (facts: Partial<ProtectionFacts>) => protectionFor({ ...FACTS, ...facts }).level;

test.each([
  [1, 1],
  [10, 1],
  [10.1, 2],
  [250, 2],
  [251, 2],
  [2500, 2],
  [2501, 3],
  [5500, 3],
  // A shed in the damp and clean air of a temperate winter: film and cover, no bag (common practice).
  [5501, 3],
  [8760, 3],
  [8784, 3],
])('%d wet hours a year ask for level %d', (wetHoursPerYear, expected) => {
  const { level: found, reason } = protectionFor({ ...FACTS, wetHoursPerYear, restDays: 61 });
  // Sixty-one days to a year ask for level 2 by themselves.
  expect(found).toBe(Math.max(2, expected));
  const hours = Math.round(wetHoursPerYear);
  expect(reason).toContain(`metal wet for ${hours} ${hours === 1 ? 'hour' : 'hours'} a year at this rate`);
});

test.each([
  ['C1', 1],
  ['C2', 2],
  ['C3', 3],
  ['C4', 4],
  ['C5', 4],
  ['CX', 4],
] as const)('%s air asks for level %d, the dearest for dry air where it can be had', (category, expected) => {
  expect(level({ category, restDays: 366 })).toBe(Math.max(2, expected));
  expect(level({ category, restDays: 366, canDehumidify: true })).toBe(expected >= 4 ? 5 : Math.max(2, expected));
});

test.each([
  [27, 1, 2],
  [28, 1, 3],
  [60, 1, 3],
  [61, 2, 4],
  [366, 2, 4],
  [367, 4, 4],
  [1095, 4, 4],
])('%d idle days ask for level %d in the mildest air and %d in the worst', (restDays, mild, worst) => {
  expect(level({ restDays })).toBe(mild);
  expect(level({ restDays, category: 'CX' })).toBe(worst);
});

test('salt that is left on asks for one more, and is washed off before all else', () => {
  expect(level({ category: 'C2' })).toBe(2);
  const salted = protectionFor({ ...FACTS, category: 'C2', unwashedSalt: true });
  expect(salted.level).toBe(3);
  expect(salted.measures[0]).toBe(
    'First of all wash the salt off with plenty of fresh water: no film holds over salt.',
  );
  expect(salted.reason).toContain('; road salt not washed off; ');
});

test('measures are those of every level up to three, and of the closed store alone above', () => {
  const measures = (facts: Partial<ProtectionFacts>) =>
    protectionFor({ ...FACTS, ...facts }).measures.map((text) => PROTECTION.find((row) => row.measure === text)!.level);
  expect(measures({ restDays: 20 })).toEqual([1]);
  expect(measures({})).toEqual([1, 2]);
  expect(measures({ category: 'C3' })).toEqual([1, 2, 3]);
  expect(measures({ category: 'C4' })).toEqual([1, 2, 3, 4]);
  expect(measures({ category: 'C4', canDehumidify: true })).toEqual([1, 2, 3, 5]);
  expect(measures({ category: 'C4', hasCylinders: false })).toEqual([1, 2, 4]);
});

test('a machine without cylinders stays at the film where fogging is asked for', () => {
  expect(protectionFor({ ...FACTS, category: 'C3', hasCylinders: false })).toMatchObject({
    level: 2,
    name: 'film on bare metal',
  });
  expect(level({ category: 'C4', hasCylinders: false })).toBe(4);
});

test('a store that is held dry needs no bag, and says so', () => {
  const dry = protectionFor({ ...FACTS, category: 'C5', restDays: 500, dryStore: true });
  expect(dry).toMatchObject({ level: 3, name: 'fogged cylinders' });
  expect(dry.reason).toBe(
    'Air of corrosion class C5; metal wet for 5 hours a year at this rate; 500 days idle; the store is held dry already.',
  );
});

test('a bag is explained by what is missing for dry air', () => {
  const bag = protectionFor({ ...FACTS, category: 'C4' });
  expect(bag.reason).toMatch(/; 100 days idle; no power or no closed space here for a dehumidifier\.$/);
  expect(bag.sources).toHaveLength(bag.measures.length);
  expect(protectionFor({ ...FACTS, category: 'C4', canDehumidify: true }).reason).not.toMatch(/dehumidifier/);
  expect(protectionFor(FACTS).reason).not.toMatch(/dehumidifier/);
});
