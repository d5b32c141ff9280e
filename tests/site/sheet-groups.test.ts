/** Headings of a printed sheet. By definition of the kinds: one rides what has a saddle, drives a car, uses a mower. */
import { expect, test } from 'vitest';
import type { MachineKind } from '../../src/planner/household.ts';
import { formatOf } from '../../src/site/formats.ts';
import { sheetGroups } from '../../src/site/sheet-groups.ts';
import { WORDS } from '../../src/site/words.ts';
import { plainStep } from '../planner/plain-step.ts';

const manner = { locale: 'en-GB', clock: '24h', units: 'metric', asOf: '2026-11-29' };

test.each<[MachineKind, string]>([
  ['motorcycle', 'ride'],
  ['snow-machine', 'ride'],
  ['car', 'drive'],
  ['side-by-side', 'drive'],
  ['tractor', 'use'],
  ['mower', 'use'],
])('the day of first use of a %s is its first %s, and a check that fails forbids that', (kind, word) => {
  const step = plainStep('ride.first', { phase: 'start-up', stage: 'first-ride' });
  const groups = sheetGroups([step], 'start-up', kind, formatOf(manner as Parameters<typeof formatOf>[0]));
  expect(groups.map(({ heading }) => heading)).toEqual([`First ${word}`]);
  expect(WORDS.sheet.stops(kind)).toBe(`Do not ${word}:`);
});
