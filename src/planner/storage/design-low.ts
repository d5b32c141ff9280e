import type { Climate } from '../climate/index.ts';
import { designLow, MONTH_START, normalsOf, normalYear, WEATHER } from '../climate/index.ts';
import { exp, log, power } from '../elementary.ts';
import { checkEnclosure } from './check.ts';
import { storeYearOf } from './store-year.ts';
import type { Enclosure, StoreDesignLow } from './types.ts';

/** How long the cold spell of the design low is taken to last [h]. */
const SPELL_H = 96;

/** How fast a spell of a typical year comes and goes: by the memory of the drawn weather from day to day [1/h]. */
const SPELL_RATE = -log(WEATHER.warmMemory) / 24;

/** Angular frequency of the day [1/h]. */
const DAY_FREQUENCY = (2 * Math.PI) / 24;

/**
 * Share of a spell of a typical year that a store takes up: the highest that a first-order body reaches when its
 * surroundings go as e^(−λ·|t|), with x = λ·τ: ((1 + x)/2)^(x/(1 − x)).
 * @param timeConstantH - of the store [h]
 * @returns share, 1 in the open and less the slower the store
 */
function takenUpOfTypical(timeConstantH: number): number {
  const x = SPELL_RATE * timeConstantH;
  return Math.abs(x - 1) < 1e-6 ? exp(-0.5) : power((1 + x) / 2, x / (1 - x));
}

/**
 * The cold that battery, coolant and fuel must survive in a store, by month.
 *
 * The outdoor low lies under the normal mean by half of the daily swing and by the depth of a cold spell. The store
 * damps the swing as a first-order body does, and takes up the spell as far as it has the time for: for the design low
 * one that stays at its depth for four days, for the typical one a spell that comes and goes.
 * @param climate - normals or one hourly year
 * @param enclosure - the store
 * @returns design and typical low in the store, 12 months [°C]
 * Source: first-order damping 1/√(1 + (ωτ)²) and step response 1 − e^(−96 h/τ); the spell's length is common practice;
 *   the typical spell comes and goes with the memory of the drawn weather.
 * Error: that of the outdoor low; a longer spell would reach deeper in an insulated store.
 */
export function storeDesignLow(climate: Climate, enclosure: Enclosure): StoreDesignLow {
  checkEnclosure(enclosure);
  const outdoors = designLow(climate);
  const normals = normalsOf(climate);
  const store = storeYearOf(normalYear(climate), enclosure);
  const { timeConstantH, houseCoupling } = enclosure;
  const damped = 1 / Math.sqrt(1 + (DAY_FREQUENCY * timeConstantH) ** 2);
  const takenUp = timeConstantH > 0 ? 1 - exp(-SPELL_H / timeConstantH) : 1;
  const setpoint = enclosure.setpointC ?? -Infinity;
  const inStore = (lows: number[], share: number) =>
    lows.map((low, m) => {
      const days = store.dayMeanC.subarray(MONTH_START[m]!, MONTH_START[m + 1]!);
      const storeMean = days.reduce((sum, t) => sum + t, 0) / days.length;
      const swing = normals.meanC[m]! - normals.minC[m]!;
      const spell = Math.max(0, normals.meanC[m]! - low - swing);
      return Math.max(setpoint, storeMean - (1 - houseCoupling) * (swing * damped + spell * share));
    });
  const designC = inStore(outdoors.designC, takenUp);
  if (climate.kind === 'hourly') {
    const typicalC = normals.meanC.map((_, m) =>
      Math.min(...store.dayMinC.subarray(MONTH_START[m]!, MONTH_START[m + 1]!)),
    );
    return {
      designC: designC.map((t, m) => Math.min(t, typicalC[m]!)),
      typicalC,
      basis: `${outdoors.basis} Inside: the hourly year carried through the store, and a cold spell of ${SPELL_H} h.`,
    };
  }
  return {
    designC,
    typicalC: inStore(outdoors.typicalC, takenUpOfTypical(timeConstantH)),
    basis: `${outdoors.basis} Inside: the day's swing damped and a cold spell of ${SPELL_H} h taken up with the store's time constant.`,
  };
}
