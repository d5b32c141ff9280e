import { expect, test } from 'vitest';
import { din55474Units, milStd2073BarrierUnits, milStd2073RigidUnits } from '../../src/planner/corrosion/index.ts';
import { parseQuantity } from '../../src/planner/units/index.ts';
import cases from './desiccant.json' with { type: 'json' };

const POUND_KG = parseQuantity('1 lb', 'mass') as number;
const US_GALLON_M3 = (parseQuantity('1 US gal', 'volume') as number) / 1000;

test.each(cases.din)('DIN 55474: $units units for $areaM2 m², $days days, film $filmGM2D', ({ units, ...bag }) => {
  // A part of a unit needs a whole one.
  expect(Math.ceil(din55474Units(bag))).toBe(units);
});

// The standard rounds its factor three ways (0.011 a square inch, 1.6 a square foot, 17 a square metre): 1.1 % apart.
test.each(cases.milBarrier)('MIL-STD-2073 barrier: $units units', ({ areaIn2, woodLb, units }) => {
  const found = milStd2073BarrierUnits(areaIn2 * 0.0254 ** 2, { wood: woodLb * POUND_KG });
  expect(Math.abs(found / units - 1)).toBeLessThan(0.011);
});

// 0.161 a gallon against 1.2 a cubic foot: 0.4 % apart.
test.each(cases.milRigid)('MIL-STD-2073 metal can: $units units', ({ volumeUsGal, foamLb, units }) => {
  const found = milStd2073RigidUnits(volumeUsGal * US_GALLON_M3, { foam: foamLb * POUND_KG });
  expect(Math.abs(found / units - 1)).toBeLessThan(0.005);
});
