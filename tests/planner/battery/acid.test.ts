/** Acid, its freezing and the resting voltage: the borders of what may be asked, and what is said at them and beyond. */
import { expect, test } from 'vitest';
import { waterDensity } from '../../../src/planner/battery/acid.ts';
import {
  acidFreezingPoint,
  acidMassFraction,
  CHEMISTRIES,
  chemistryRow,
  correctSpecificGravity,
  freezingPoint,
  freezingPointC,
  freezingPointOfGravity,
  GRAVITY_RULES,
  openCircuitVoltage,
  specificGravity,
  stateOfChargeFromVoltage,
} from '../../../src/planner/battery/index.ts';
import { LEAD } from './world.ts';

test.each<[string, (x: number) => unknown, number, number, string]>([
  ['water', waterDensity, 0, 60, '°C, expected 0 to 60 °C'],
  ['a gravity', (sg) => acidMassFraction(sg, 20), 1, 1.4, 'expected 1.000 to 1.400'],
  ['a mass fraction', acidFreezingPoint, 0, 0.41, 'expected 0 to 0.41'],
  ['a reading', (sg) => correctSpecificGravity(sg, 20), 1, 1.4, 'expected 1.0 to 1.4'],
  ['the temperature of a reading', (c) => correctSpecificGravity(1.2, c), -50, 60, '°C, expected −50 to 60 °C'],
  ['a state of charge for its gravity', (s) => specificGravity('agm', s), 0, 100, '%, expected 0 to 100 %'],
  ['a state of charge for its freezing', (s) => freezingPointC('agm', s), 0, 100, '%, expected 0 to 100 %'],
  ['a state of charge without acid', (s) => freezingPointC('lifepo4', s), 0, 100, '%, expected 0 to 100 %'],
  ['a state of charge for its voltage', (s) => openCircuitVoltage('agm', s, 20), 0, 100, '%, expected 0 to 100 %'],
  ['a battery', (c) => openCircuitVoltage('agm', 50, c), -80, 100, '°C, expected −80 to 100 °C'],
  ['a voltage', (v) => stateOfChargeFromVoltage('agm', v, 20), 0, 60, 'V, expected 0 to 60 V'],
])('%s is taken from its lowest to its highest and refused beyond, with what was found', (_, ask, low, high, said) => {
  expect(() => [ask(low), ask(high)]).not.toThrow();
  for (const wrong of [low - 0.001, high + 0.001, Number.NaN])
    expect(() => ask(wrong)).toThrow(new RegExp(`^found .*${wrong}.*${said}$`));
});

test('water has its greatest density at 4 °C, and that of the metrologists at 25 °C', () => {
  // Tanaka et al. 2001: 0.999975 at 3.983 °C, 0.997047 at 25 °C (from memory).
  expect(waterDensity(3.983035)).toBeCloseTo(0.999975, 6);
  expect(waterDensity(25)).toBeCloseTo(0.997047, 6);
  expect(waterDensity(0)).toBeLessThan(waterDensity(4));
});

test('water alone is no acid and freezes at 0 °C; beyond half by mass no more is read', () => {
  expect(acidMassFraction(1, 20)).toBe(0);
  expect(acidFreezingPoint(0)).toEqual({ temperatureC: expect.closeTo(0, 12), atOrBelow: false });
  // 50 % by mass has 1.395 at 20 °C (CRC, from memory): 1.4 lies above the last line.
  expect(acidMassFraction(1.4, 20)).toBe(0.5);
});

test('beyond 34 % by mass the freezing point is a bound, the last that was fitted', () => {
  const last = acidFreezingPoint(0.34);
  expect(last.atOrBelow).toBe(false);
  expect(acidFreezingPoint(0.341)).toEqual({ temperatureC: last.temperatureC, atOrBelow: true });
  expect(acidFreezingPoint(0.41)).toEqual({ temperatureC: last.temperatureC, atOrBelow: true });
});

test('a hydrometer reading is brought to 80 °F by four points for ten degrees where no rule is named', () => {
  // TM 5-3895-349-14P: add 0.004 for each 10 °F above 80 °F. 100 °F is 37.8 °C, 60 °F is 15.6 °C.
  expect(correctSpecificGravity(1.25, (80 - 32) / 1.8)).toBe(1.25);
  expect(correctSpecificGravity(1.25, (100 - 32) / 1.8)).toBeCloseTo(1.258, 6);
  expect(correctSpecificGravity(1.25, (60 - 32) / 1.8)).toBeCloseTo(1.242, 6);
  // Witte 1922: one point for each 3 °F from 70 °F.
  expect(correctSpecificGravity(1.25, (100 - 32) / 1.8, GRAVITY_RULES.point1Per3F)).toBeCloseTo(1.26, 6);
});

test('the gravity runs straight from empty to full', () => {
  for (const chemistry of LEAD) {
    const { emptySG, fullSG } = CHEMISTRIES[chemistry].acid!;
    expect(specificGravity(chemistry, 0)).toBe(emptySG);
    expect(specificGravity(chemistry, 100)).toBeCloseTo(fullSG, 12);
    expect(specificGravity(chemistry, 25)).toBeCloseTo(emptySG + (fullSG - emptySG) / 4, 12);
  }
  expect(specificGravity('lifepo4', 50)).toBeUndefined();
});

test('the freezing point by charge is that of the acid at its gravity, at every whole percent and between two', () => {
  const bounds = new Set<boolean>();
  for (const chemistry of LEAD) {
    const own = (s: number) =>
      freezingPointOfGravity(specificGravity(chemistry, s)!, CHEMISTRIES[chemistry].acid!.referenceC);
    for (let s = 0; s <= 100; s++) {
      const found = freezingPoint(chemistry, s);
      expect(found.temperatureC).toBeCloseTo(own(s).temperatureC, 9);
      expect(found.atOrBelow).toBe(own(s).atOrBelow);
      bounds.add(found.atOrBelow);
    }
    expect(freezingPoint(chemistry, 40.25).temperatureC).toBeCloseTo(
      0.75 * own(40).temperatureC + 0.25 * own(41).temperatureC,
      9,
    );
  }
  expect(bounds).toEqual(new Set([true, false]));
});

test('a battery without acid has its lowest storage temperature at every charge', () => {
  for (const s of [0, 50, 100]) expect(freezingPoint('lifepo4', s)).toEqual({ temperatureC: -40, atOrBelow: false });
});

test('a chemistry that is not known is refused with those that are', () => {
  expect(() => chemistryRow('salt' as never)).toThrow(
    'found chemistry "salt", expected one of flooded-antimony, flooded-calcium, agm, gel, lifepo4',
  );
});

// "State Of Charge.pdf": full wet 12.65 V at 26.7 °C; −16 mV at 15.6 °C, +13 mV at 48.9 °C, −84 mV at −6.7 °C.
test('the voltage shifts with temperature along its table and is held at both ends', () => {
  const full = (c: number) => openCircuitVoltage('flooded-calcium', 100, c);
  expect(full(26.7)).toBeCloseTo(12.65, 9);
  expect(full((15.6 + 26.7) / 2)).toBeCloseTo(12.65 - 0.008, 9);
  expect(full((26.7 + 48.9) / 2)).toBeCloseTo(12.65 + 0.0065, 9);
  expect(full(48.9)).toBeCloseTo(12.663, 9);
  expect(full(70)).toBe(full(48.9));
  expect(full(-6.7)).toBeCloseTo(12.566, 9);
  expect(full(-30)).toBe(full(-6.7));
  // Halfway from 50 to 75 %: between 12.24 and 12.45 V.
  expect(openCircuitVoltage('flooded-calcium', 62.5, 26.7)).toBeCloseTo(12.345, 9);
  expect(openCircuitVoltage('lifepo4', 50, -20)).toBe(openCircuitVoltage('lifepo4', 50, 40));
});

test('a voltage beyond the table says by how much, and one at its ends is inside', () => {
  const read = (volts: number) => stateOfChargeFromVoltage('flooded-calcium', volts, 26.7);
  expect(read(12.65)).toEqual({ stateOfChargePct: 100, spreadPct: 6, beyondV: 0 });
  expect(read(11.89)).toEqual({ stateOfChargePct: 0, spreadPct: 6, beyondV: 0 });
  expect(read(12.85)).toMatchObject({ stateOfChargePct: 100, beyondV: expect.closeTo(0.2, 9) });
  expect(read(11.59)).toMatchObject({ stateOfChargePct: 0, beyondV: expect.closeTo(-0.3, 9) });
  expect(read(12.345)).toMatchObject({ stateOfChargePct: expect.closeTo(62.5, 9), beyondV: 0 });
});
