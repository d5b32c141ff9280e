import { expect, test } from 'vitest';
import { BRAKE_FLUIDS, brakeFluidText, yearsToWet } from '../../src/planner/fluids/index.ts';
import cases from './fluids.json' with { type: 'json' };

test.each(cases.boiling)('$grade boils at $dryC °C dry and $wetC °C wet at least', ({ grade, dryC, wetC }) => {
  const row = BRAKE_FLUIDS.find((r) => r.grade === grade)!;
  expect([row.dryC, row.wetC]).toEqual([dryC, wetC]);
  const text = brakeFluidText(row.grade, { locale: 'en', units: 'metric' });
  expect(text).toContain(`${dryC} °C`);
  expect(text).toContain(`${wetC} °C`);
});

test.each(cases.wet)('years until the fluid holds $waterPct % of water', ({ yearsLow, yearsHigh }) => {
  expect(yearsToWet().low).toBeCloseTo(yearsLow, 2);
  expect(yearsToWet().high).toBeCloseTo(yearsHigh, 2);
});
