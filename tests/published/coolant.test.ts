import { expect, test } from 'vitest';
import { readCurve } from '../../src/planner/coolant/curve.ts';
import { drainAndReplace, freezingPointC, GLYCOLS, strengthFor } from '../../src/planner/coolant/index.ts';
import cases from './coolant.json' with { type: 'json' };

type Glycol = 'ethylene' | 'propylene';
const fahrenheit = (f: number) => ((f - 32) * 5) / 9;

test.each(cases.ashrae)('ASHRAE $glycol glycol, $volPct % by volume', ({ glycol, volPct, freezeC }) => {
  expect(freezingPointC(glycol as Glycol, volPct / 100)).toBeCloseTo(freezeC, 6);
});

test.each(GLYCOLS)('a row of $glycol glycol taken out of the table is read back from its neighbours', ({ points }) => {
  // The widest gap of the table (5 to 15 % by mass) costs most; the others come back within the 0.1 K of the print.
  const errors = points.slice(1, -1).map(([x, y], i) => {
    const without = points.filter((_, k) => k !== i + 1);
    return readCurve(without, x) - y;
  });
  expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.3);
  expect(errors.filter((e) => Math.abs(e) > 0.15).length).toBeLessThanOrEqual(3);
});

// Melinder measured pure glycol, ASHRAE inhibited coolant: up to 2.3 K apart at 50–55 % by mass (both tables published).
test.each(cases.melinder.filter((c) => c.massPct > 0))(
  'Melinder $glycol glycol, $massPct % by mass, lies beside ASHRAE',
  ({ glycol, massPct, freezeC }) => {
    const byMass = cases.ashrae.filter((c) => c.glycol === glycol).map((c) => [c.massPct, c.volPct / 100] as const);
    const strength = readCurve(byMass, massPct);
    expect(Math.abs(freezingPointC(glycol as Glycol, strength) - freezeC)).toBeLessThan(2.5);
  },
);

// Lange prints whole Fahrenheit degrees of an older determination of pure glycol: up to 1.2 K from ASHRAE's inhibited one.
// Two rows of the weak end stand further off, and say why.
test.each(cases.lange)('Lange propylene glycol, $volPct % by volume', (c) => {
  expect(Math.abs(fahrenheit(c.freezeF) - c.freezeC)).toBeLessThan(0.3);
  const off = Math.abs(freezingPointC('propylene', c.volPct / 100) - c.freezeC);
  if (c.disagrees === undefined) expect(off).toBeLessThan(1.2);
  else expect(off).toBeLessThan(1.5);
});

// The slush table is rounded to whole Fahrenheit degrees and to tens of percent.
test.each(cases.slush)('slush table, $volPct % by volume', ({ volPct, freezeF, burstF }) => {
  expect(Math.abs(freezingPointC('propylene', volPct / 100) - fahrenheit(freezeF))).toBeLessThan(3);
  expect(burstF).toBeLessThan(freezeF);
});

// A list from memory in whole percent, which asks for more at the weak end: within 4 points of volume.
test.each(cases.required)('propylene glycol against $freezeF °F needs about $volPct %', ({ freezeF, volPct }) => {
  expect(Math.abs(strengthFor('propylene', fahrenheit(freezeF))! * 100 - volPct)).toBeLessThan(4);
});

test.each(cases.swaps)('a worked swap from $now to $target', (c) => {
  const swap = drainAndReplace(c.volumeL, c.volumeL, c.now, c.target, c.refill)!;
  expect(swap.totalL).toBeCloseTo(c.litres, 3);
  // The printed freezing points are rounded to 0.1 K and read by straight lines.
  expect(Math.abs(freezingPointC('ethylene', c.now) - c.freezeBeforeC)).toBeLessThan(0.1);
  expect(Math.abs(freezingPointC('ethylene', c.target) - c.freezeAfterC)).toBeLessThan(0.1);
});
