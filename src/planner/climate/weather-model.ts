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
 *   Hours of condensation, frost and wetness took no part in it: they are the check.
 * Valid: annual range of monthly means 5 to 45 K.
 */
export const WEATHER: WeatherConstants = {
  warmMemory: 0.45,
  moistMemory: 0.34,
  quickMemory: 0.87,
  quickMoistMemory: 0.84,
  quickK: 1.27,
  warmMoist: -0.1,
  warmMoistCold: 0.48,
  swingMoist: 0.23,
  swingSky: 0.25,
  swingSkyCold: 0.3,
  moist: 0.57,
  moistBetween: 0.15,
  followSwing: 0.4,
  followQuick: 0.04,
  followQuickCold: 0.36,
  quickMoistK: 1.76,
  ceiling: 0.98,
  iceHold: 0.9,
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
