import type { Fuel } from '../household.ts';
import type { Derivation } from '../season-plan.ts';
import { blendRow } from './blends.ts';
import type { FuelInput } from './facts.ts';
import { breathingBound, PETROL_BREATHING_FACTOR, waterTolerancePct } from './water.ts';

/** Nothing is known of fuel colder than this; it holds next to no water there [°C]. */
const COLDEST_C = -70;

/**
 * Water that the fuel of the rest can hold in the cold, against the most that breathing can bring.
 * @param input - the fuel input, the fuel system, and the fuel that stands in the tank [L]
 * @returns both amounts [mL] with their derivations
 */
export function waterPart(input: FuelInput & { fuel: Fuel; levelL: number }): {
  toleranceML: number;
  breathingML: number;
  derivations: Derivation[];
} {
  const { fuel, levelL, store, machine } = input;
  const lowestStoreC = Math.max(COLDEST_C, input.lowestStoreC);
  const row = blendRow(fuel.blend);
  const share = waterTolerancePct(fuel.blend, lowestStoreC);
  const toleranceML = levelL * share.value * 10;
  const headSpaceL = Math.max(0, fuel.tankL - levelL);
  const factor = levelL > 0 ? PETROL_BREATHING_FACTOR : 1;
  const bound = breathingBound(headSpaceL, store, machine.season.lastUse, machine.season.firstUse, factor);
  const tolerance: Derivation = {
    method: 'fuel.water-tolerance',
    equation:
      row.water.law === 'hydrocarbon'
        ? 'log10 X = −(4200·HC + 1050)·(1/T − 0.0016) + 2.00 (mole %, HC 0.155, T in K); by volume with 100 g/mol and 0.74'
        : `w = ${row.water.at15C.value}·exp(0.016·(T − 15.6)) % by volume`,
    inputs: [
      { name: 'fuel in the tank', value: levelL, unit: 'L' },
      { name: 'blend', value: fuel.blend, unit: '' },
      { name: 'coldest hour of a usual year in the store', value: lowestStoreC, unit: '°C' },
      { name: 'water held', value: share.value, unit: '% by volume' },
      {
        name: 'range of it',
        value: `${share.low.toPrecision(2)} to ${share.high.toPrecision(2)}`,
        unit: '% by volume',
      },
    ],
    result: { value: toleranceML, unit: 'mL' },
    sources: [row.water.source],
    caveat: `${row.caveat} Valid from −40 to 30 °C.`,
  };
  const breathing: Derivation = {
    method: 'fuel.breathing-water',
    equation: 'water ≤ Σ over nights of F · head space · swing/T · vapour density of the store air',
    inputs: [
      { name: 'head space', value: headSpaceL, unit: 'L' },
      { name: 'nights', value: bound.nights, unit: '' },
      { name: 'mean daily swing in the store', value: bound.meanSwingK, unit: 'K' },
      { name: 'mean vapour density, dampest hour of the day', value: bound.meanVapourGM3, unit: 'g/m³' },
      { name: 'breath over that of air alone, F', value: factor, unit: '' },
    ],
    result: { value: bound.waterML, unit: 'mL' },
    sources: ['thermal breathing of a vented tank: AP-42, ch. 7.1, eq. 1-5 (F for petrol of 13 psi: from memory)'],
    caveat:
      'An upper bound for the breath of normal days: all vapour drawn in is kept. Changes of weather come on top. Breathing alone hardly ever separates fuel with ethanol; a bad cap seal or rain does.',
  };
  return { toleranceML, breathingML: bound.waterML, derivations: [tolerance, breathing] };
}
