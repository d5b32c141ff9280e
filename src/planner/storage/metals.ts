import type { MetalClass } from './types.ts';

/**
 * How slowly metal follows the air, by the machine's heaviest part. Masses are assumed, so orders of magnitude.
 *
 * Source: mass × heat capacity over surface × film coefficient of 5–10 W/(m²·K) (Incropera, free convection and radiation).
 */
export const METALS: readonly MetalClass[] = [
  {
    id: 'car-engine',
    name: 'car engine, iron block',
    timeConstantH: 2,
    rangeH: { low: 1.3, high: 3.3 },
    // 150 kg, 1.5 m².
  },
  {
    id: 'motorcycle-engine',
    name: 'motorcycle engine',
    timeConstantH: 1.5,
    rangeH: { low: 0.8, high: 1.7 },
    // 55 kg, 1.2 m².
  },
  {
    id: 'snow-machine-engine',
    name: 'snow machine or quad engine',
    timeConstantH: 1.3,
    rangeH: { low: 1, high: 1.9 },
    // 35 kg, 0.7 m².
  },
  {
    id: 'brake-disc',
    name: 'brake disc or shaft',
    timeConstantH: 0.6,
    rangeH: { low: 0.4, high: 1.4 },
    // 10 mm cast iron.
  },
  {
    id: 'panel',
    name: 'panels and tanks',
    timeConstantH: 0.1,
    rangeH: { low: 0.05, high: 0.15 },
    // 0.8–1 mm steel, empty.
  },
];

/**
 * The row of a kind of metal mass.
 * @param id - id in the table
 * @returns the row
 */
export function metalById(id: string): MetalClass {
  const row = METALS.find((m) => m.id === id);
  if (!row) {
    throw new RangeError(`metal: "${id}" is not in the table; expected one of ${METALS.map((m) => m.id).join(', ')}`);
  }
  return row;
}
