import type { Fuel } from '../household.ts';

/** What one blend of petrol does with water and in store. */
export interface BlendRow {
  blend: Fuel['blend'];
  /** Ethanol, percent by volume, at most. */
  ethanolPct: number;
  /** How the water it can hold is found. */
  water:
    | { law: 'hydrocarbon'; source: string }
    | {
        law: 'ethanol';
        /** Percent of the fuel's volume at 15.6 °C, with its range. */
        at15C: { value: number; low: number; high: number };
        source: string;
      };
  /** What the figure does not know. */
  caveat: string;
}

/** Growth of the water that an ethanol blend holds, per kelvin: fitted to the published points of E10. */
export const ETHANOL_BLEND_PER_K = 0.016;

const SAME_SLOPE = 'The change with temperature is taken from E10.';

/** One row for each blend. Where sources disagree the range holds them all and the row says so. */
export const BLENDS: readonly BlendRow[] = [
  {
    blend: 'E0',
    ethanolPct: 0,
    water: {
      law: 'hydrocarbon',
      source: 'NACA RM E52D24 (Hibbard and Schalla, 1952): solubility of water in hydrocarbons',
    },
    caveat:
      'For petrol without aromatics and olefins of hydrogen–carbon mass ratio 0.155 (0.145–0.165 changes it by a quarter); aromatics hold more. Other sources quote 0.015 % by mass and 0.02 % by volume at 15.6 °C.',
  },
  {
    blend: 'E5',
    ethanolPct: 5,
    water: {
      law: 'ethanol',
      at15C: { value: 0.2, low: 0.15, high: 0.25 },
      source: 'E5 at 15 °C: 0.15–0.25 % by volume, from memory',
    },
    caveat: `From memory, not checked against a published figure. ${SAME_SLOPE}`,
  },
  {
    blend: 'E10',
    ethanolPct: 10,
    water: {
      law: 'ethanol',
      at15C: { value: 0.5, low: 0.4, high: 0.6 },
      source:
        'fit to E10 points: 0.50 % at 15.6 °C (3.8 tsp per US gal), 0.365 % at −6.7 °C, 0.30 % at −12.2 °C (secondary copies)',
    },
    caveat:
      'Within 20 %, by the base petrol and its aromatics. A university test found 0.40 % and the US Coast Guard quotes 0.6–0.7 %, neither with a temperature.',
  },
  {
    blend: 'E15',
    ethanolPct: 15,
    water: {
      law: 'ethanol',
      at15C: { value: 0.84, low: 0.67, high: 1.01 },
      source: 'E15: 0.842 % (6.47 tsp per US gal), University of Nebraska-Lincoln test; temperature not stated',
    },
    caveat: `The test gives no temperature; 15.6 °C is assumed. ${SAME_SLOPE}`,
  },
  {
    blend: 'E20',
    ethanolPct: 20,
    water: {
      law: 'ethanol',
      at15C: { value: 1.15, low: 1.0, high: 1.3 },
      source: 'E20 at 15 °C: 1.0–1.3 % by volume, from memory',
    },
    caveat: `From memory, not checked against a published figure. ${SAME_SLOPE}`,
  },
  {
    blend: 'E85',
    ethanolPct: 85,
    water: {
      law: 'ethanol',
      at15C: { value: 15, low: 7, high: 20 },
      source: 'E85: about 20 % by mass in one bench test of an amateur; order of magnitude',
    },
    caveat: `An order of magnitude only. ${SAME_SLOPE}`,
  },
];

/**
 * The row of a blend.
 * @param blend - name of the blend
 */
export function blendRow(blend: Fuel['blend']): BlendRow {
  const row = BLENDS.find((b) => b.blend === blend);
  if (!row)
    throw new RangeError(`fuel blend: found "${blend}", expected one of ${BLENDS.map((b) => b.blend).join(', ')}`);
  return row;
}
