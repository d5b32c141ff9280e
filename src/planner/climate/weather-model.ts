import { SURFACE_TABLE, WATER_TABLE } from './saturation-table.ts';

/** The constants of the weather drawn from monthly normals. */
export interface WeatherConstants {
  /** How strongly warm spells remember the day before. */
  warmMemory: number;
  /** How strongly moist spells remember the day before. */
  moistMemory: number;
  /** How strongly quick changes of temperature remember the hour before. */
  quickMemory: number;
  /** How strongly quick changes of moisture remember the hour before. */
  quickMoistMemory: number;
  /** Spread of the quick changes of temperature [K]. */
  quickK: number;
  /** How warm spells and moist spells go together, at 15 °C and more. */
  warmMoist: number;
  /** What cold adds to that, at −5 °C and less. */
  warmMoistCold: number;
  /** How much a moist day narrows the daily swing (logarithmic). */
  swingMoist: number;
  /** How much the sky varies the daily swing besides (logarithmic), at 15 °C and more. */
  swingSky: number;
  /** What cold adds to that, at −5 °C and less. */
  swingSkyCold: number;
  /** Spread of moisture from day to day (logistic). */
  moist: number;
  /** What spring and autumn add to that spread. */
  moistBetween: number;
  /** How long moist air takes to give way to dry, or the other way, about midnight [h]; 24 = evenly from noon to noon. */
  moistFrontH: number;
  /** Share of the day's swing that the steadier temperature follows, at −5 °C and less; none at 15 °C and more. */
  followSwing: number;
  /** Share of the quick changes of temperature that it follows. */
  followQuick: number;
  /** What cold adds to that share. */
  followQuickCold: number;
  /** Spread of the quick changes of moisture, as temperature [K]. */
  quickMoistK: number;
  /** Highest humidity of outdoor air, as a share. */
  ceiling: number;
  /** How far ice holds that down below 0 °C: 1 = saturation over ice. */
  iceHold: number;
}

/**
 * Weather from monthly normals: spells of days about the smooth normal, a daily swing that clear dry days widen, quick
 * hourly changes, and moisture as a share of saturation at a steadier temperature, held under a ceiling.
 *
 * Source: the forms were found on eleven hourly years at ten places, Fairbanks to the Po plain, and their constants are
 *   where the fit starts and what it is held to. The fit itself (src/cli/fit-weather.ts) is to spreads, quantiles of
 *   humidity, hourly and daily changes and day cycles of four hourly years: Skien, Duluth, Burlington, London (Ontario).
 *   Hours of condensation, frost and wetness took no part in it: they are the check. Tried and not kept: another scale of
 *   the day-to-day spread (the fit gave 1.0), quicker changes of warm spells (the fit stayed at noon to noon).
 * Valid: annual range of monthly means 5 to 45 K.
 * Error: held against years left out of the fit, pooled hours come to 0.92–1.02 of the real ones for wet metal, 0.81–0.85
 *   for frost in stores of 7 h and more and 0.82–0.89 for condensation there; single places: see the typical factors of
 *   the store's figures. Frost is low since real dew points move 5 to 15 % more from hour to hour in winter.
 */
export const WEATHER: WeatherConstants = {
  warmMemory: 0.5,
  moistMemory: 0.328,
  quickMemory: 0.871,
  quickMoistMemory: 0.836,
  quickK: 1.27,
  warmMoist: -0.007,
  warmMoistCold: 0.588,
  swingMoist: 0.191,
  swingSky: 0.294,
  swingSkyCold: 0.445,
  moist: 0.517,
  moistBetween: 0.127,
  moistFrontH: 16,
  followSwing: 0.398,
  followQuick: 0.059,
  followQuickCold: 0.382,
  quickMoistK: 1.736,
  ceiling: 0.977,
  iceHold: 0.916,
};

let lastCeiling: { ceiling: number; iceHold: number; table: Float64Array } | undefined;

/**
 * Highest vapour pressure of outdoor air, on the points of the saturation tables.
 * @param constants - of the weather
 * @returns pressures [Pa]
 */
export function ceilingTable(constants: WeatherConstants): Float64Array {
  const { ceiling, iceHold } = constants;
  if (lastCeiling?.ceiling === ceiling && lastCeiling.iceHold === iceHold) return lastCeiling.table;
  const table = WATER_TABLE.map((w, i) => ceiling * (w - iceHold * (w - SURFACE_TABLE[i]!)));
  lastCeiling = { ceiling, iceHold, table };
  return table;
}

/** Warm spells give way to one another evenly from noon to noon: a quicker front did not come nearer to real hours [h]. */
export const WARM_FRONT_H = 24;

/**
 * Share of the neighbouring day's air in each hour of a day: the day before up to noon, the day after from noon on. A
 * half at midnight, falling straight to nothing once the front is through.
 * @param frontH - how long the front takes, 24 h at most [h]
 * @returns 24 shares
 */
export function frontShares(frontH: number): Float64Array {
  if (!(frontH > 0 && frontH <= 24))
    throw new RangeError(`front: ${frontH} h found, more than 0 and at most 24 h expected`);
  return Float64Array.from({ length: 24 }, (_, h) => Math.max(0, 0.5 - Math.min(h + 0.5, 23.5 - h) / frontH));
}

/**
 * Share of one neighbouring day in a day's mean.
 * @param frontH - how long the front takes [h]
 * @returns share
 */
export function neighbourShare(frontH: number): number {
  return frontShares(frontH).reduce((sum, share) => sum + share, 0) / 48;
}
