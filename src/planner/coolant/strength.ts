import { readCurve } from './curve.ts';
import { type GlycolRow, glycolRow } from './glycols.ts';

type Glycol = GlycolRow['glycol'];

/** The strongest mixture of the table, as volume fraction, and the cold it reaches [°C]. */
export function tableEnd(glycol: Glycol): { strength: number; freezeC: number } {
  const [strength, freezeC] = glycolRow(glycol).points.at(-1)!;
  return { strength, freezeC };
}

/**
 * Freezing point of coolant by its strength.
 * @param glycol - ethylene or propylene
 * @param strength - volume fraction of glycol, 0 to 0.578 (ethylene) or 0.60 (propylene)
 * @returns first ice [°C]
 * Source: ASHRAE tables (GLYCOLS), read by a monotone curve.
 * Valid: up to the end of the table; stronger coolant protects less again.
 * Error: 0.1 K at the rows; Melinder's tables differ by up to 2.3 K at 55 % by mass; a refractometer reads to 1 K (ASTM D3321).
 */
export function freezingPointC(glycol: Glycol, strength: number): number {
  if (!(strength >= 0 && strength <= 1))
    throw new RangeError(`coolant strength: found ${strength}, expected a volume fraction of 0 to 1`);
  return readCurve(glycolRow(glycol).points, strength);
}

/**
 * The strength that freezes at a given temperature.
 * @param glycol - ethylene or propylene
 * @param freezeC - wanted freezing point [°C]
 * @returns volume fraction; undefined where no mixture of the table reaches so low
 */
export function strengthFor(glycol: Glycol, freezeC: number): number | undefined {
  if (!(freezeC >= -273.15)) throw new RangeError(`freezing point: found ${freezeC} °C, expected a temperature`);
  if (freezeC >= 0) return 0;
  const end = tableEnd(glycol);
  if (freezeC < end.freezeC) return undefined;
  let low = 0;
  let high = end.strength;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (freezingPointC(glycol, middle) > freezeC) low = middle;
    else high = middle;
  }
  return high;
}

/** How coolant is brought to a strength by draining some and filling up with the refill. */
export interface Swap {
  /** Litres drained and replaced in all [L]. */
  totalL: number;
  /** Number of drainings; each but the last takes all that drains. */
  swaps: number;
  /** Litres of each draining [L]. */
  each: number[];
}

/** More drainings than this are not worth the work: flush, or use a stronger refill. */
const MOST_SWAPS = 4;

/**
 * Litres to drain and replace to come from one strength to another.
 * @param volumeL - coolant in the whole system [L]
 * @param drainableL - what one draining lets out [L]
 * @param now - strength now, volume fraction
 * @param target - strength wanted, volume fraction
 * @param refill - strength of what is filled in, volume fraction
 * @returns the drainings; undefined where that refill cannot get there in four
 * Source: balance of glycol, x = V·(Ct − C0)/(Cc − C0).
 * Error: volumes are added as they are; the shrinking of about 1 % on mixing is left out.
 */
export function drainAndReplace(
  volumeL: number,
  drainableL: number,
  now: number,
  target: number,
  refill: number,
): Swap | undefined {
  if (!(volumeL > 0 && drainableL > 0 && drainableL <= volumeL))
    throw new RangeError(
      `coolant: found ${drainableL} L drainable of ${volumeL} L, expected more than 0 and no more than all`,
    );
  for (const share of [now, target, refill]) {
    if (!(share >= 0 && share <= 1))
      throw new RangeError(`coolant strength: found ${share}, expected a volume fraction of 0 to 1`);
  }
  if (now >= target) return { totalL: 0, swaps: 0, each: [] };
  if (refill <= now) return undefined;
  const each: number[] = [];
  let strength = now;
  while (each.length < MOST_SWAPS) {
    const neededL = (volumeL * (target - strength)) / (refill - strength);
    if (neededL <= drainableL * (1 + 1e-9)) {
      each.push(neededL);
      return { totalL: each.reduce((a, b) => a + b, 0), swaps: each.length, each };
    }
    each.push(drainableL);
    strength += ((refill - strength) * drainableL) / volumeL;
    if (refill <= target) return undefined;
  }
  return undefined;
}

/**
 * The strongest that one draining can reach.
 * @returns volume fraction
 * Source: C0 + (Cc − C0)·Vdrainable/V.
 */
export function reachOfOneSwap(volumeL: number, drainableL: number, now: number, refill: number): number {
  return now + ((refill - now) * drainableL) / volumeL;
}
