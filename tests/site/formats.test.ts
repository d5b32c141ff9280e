import { expect, test } from 'vitest';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { formatOf } from '../../src/site/formats.ts';

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
