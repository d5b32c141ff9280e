import { DAYS_PER_YEAR, dayIndexOf } from '../climate/index.ts';
import { daysBetween } from '../dates.ts';
import { exp, power } from '../elementary.ts';
import type { Fuel, IsoDate } from '../household.ts';
import type { StoreYear } from '../storage/types.ts';
import { blendRow, ETHANOL_BLEND_PER_K } from './blends.ts';

const KELVIN = 273.15;
const WATER_M = 18.015;
const VAPOUR_GAS_CONSTANT = 461.524;

/** Petrol as the hydrocarbon law takes it: molar mass [g/mol], density relative to water, hydrogen–carbon mass ratio. */
const PETROL = { molarMass: 100, relativeDensity: 0.74, hydrogenCarbon: 0.155 };

/**
 * Water that a hydrocarbon dissolves, by mole.
 * @param temperatureC - [°C]
 * @param hydrogenCarbon - hydrogen–carbon mass ratio
 * @returns mole percent
 * Source: NACA RM E52D24 (Hibbard and Schalla, 1952): log10 X = −(4200·HC + 1050)·(1/T − 0.0016) + 2.00.
 * Valid: hydrocarbons without olefins.
 */
export function waterInHydrocarbonMolPct(temperatureC: number, hydrogenCarbon: number): number {
  if (!(temperatureC >= -70 && temperatureC <= 120))
    throw new RangeError(`temperature: found ${temperatureC} °C, expected −70 to 120 °C`);
  if (!(hydrogenCarbon > 0.05 && hydrogenCarbon < 0.34))
    throw new RangeError(`hydrogen–carbon mass ratio: found ${hydrogenCarbon}, expected 0.05 to 0.34`);
  return power(10, -(4200 * hydrogenCarbon + 1050) * (1 / (temperatureC + KELVIN) - 0.0016) + 2);
}

/**
 * The same by mass, for petrol of 100 g/mol.
 * @param temperatureC - [°C]
 * @param hydrogenCarbon - hydrogen–carbon mass ratio
 * @returns parts per million by mass
 */
export function waterInHydrocarbonPpm(temperatureC: number, hydrogenCarbon = PETROL.hydrogenCarbon): number {
  return (waterInHydrocarbonMolPct(temperatureC, hydrogenCarbon) / 100) * (WATER_M / PETROL.molarMass) * 1e6;
}

/**
 * Water that a blend of petrol holds before it separates.
 * @param blend - the blend
 * @param temperatureC - temperature of the fuel [°C]
 * @returns percent of the fuel's volume, with its range
 * Source: rows of BLENDS; E10: w = 0.50·exp(0.016·(T − 15.6)).
 * Valid: −40 to 30 °C for the ethanol blends.
 * Error: ±20 % for E10; see the row for the others.
 */
export function waterTolerancePct(
  blend: Fuel['blend'],
  temperatureC: number,
): { value: number; low: number; high: number } {
  const row = blendRow(blend);
  if (row.water.law === 'hydrocarbon') {
    const at = (hc: number) => waterInHydrocarbonPpm(temperatureC, hc) * 1e-6 * PETROL.relativeDensity * 100;
    return { value: at(PETROL.hydrogenCarbon), low: at(0.165), high: at(0.145) };
  }
  if (!(temperatureC >= -70 && temperatureC <= 120))
    throw new RangeError(`fuel temperature: found ${temperatureC} °C, expected −70 to 120 °C`);
  const growth = exp(ETHANOL_BLEND_PER_K * (temperatureC - 15.6));
  const { value, low, high } = row.water.at15C;
  return { value: value * growth, low: low * growth, high: high * growth };
}

/**
 * Vapour in air by volume.
 * @param vapourPa - vapour pressure [Pa]
 * @param temperatureC - air temperature [°C]
 * @returns [g/m³]
 * Source: ideal gas, gas constant of water vapour 461.524 J/(kg·K).
 */
export function vapourDensityGM3(vapourPa: number, temperatureC: number): number {
  if (!(vapourPa >= 0)) throw new RangeError(`vapour pressure: found ${vapourPa} Pa, expected 0 or more`);
  return (1000 * vapourPa) / (VAPOUR_GAS_CONSTANT * (temperatureC + KELVIN));
}

/**
 * Water drawn into a tank in one day when its air shrinks with the cooling of the night and sucks in store air.
 * @param headSpaceL - air over the fuel [L]
 * @param swingK - warmest less coldest hour [K]
 * @param meanC - mean temperature of the day [°C]
 * @param vapourGM3 - vapour in the air drawn in [g/m³]
 * @returns [g], which is as many mL of water
 * Source: ideal gas, the thermal term of the breathing of a vented tank (AP-42, ch. 7.1, eq. 1-5).
 */
export function breathedWaterG(headSpaceL: number, swingK: number, meanC: number, vapourGM3: number): number {
  if (!(headSpaceL >= 0 && swingK >= 0 && vapourGM3 >= 0))
    throw new RangeError(
      `tank breathing: found ${headSpaceL} L, ${swingK} K, ${vapourGM3} g/m³, expected numbers of 0 or more`,
    );
  return (((headSpaceL * swingK) / (meanC + KELVIN)) * vapourGM3) / 1000;
}

/**
 * How many times more a tank breathes because the petrol itself evaporates by day and condenses by night: the vapour space
 * expansion factor of petrol of the highest winter volatility over that of air alone, 0.391 / 0.053 between 2.5 and 17.5 °C.
 * Source: AP-42, ch. 7.1, eq. 1-5, with Reid vapour pressure 13 psi; vapour pressure constants from memory.
 */
export const PETROL_BREATHING_FACTOR = 0.391 / 0.053;

/**
 * The most water that breathing can bring to a tank over a rest: each night's breath of store air, all of its vapour kept.
 * @param headSpaceL - air over the fuel [L]
 * @param store - the store's normal year
 * @param from - first day
 * @param to - last day
 * @param factor - breath over that of air alone: PETROL_BREATHING_FACTOR over petrol, 1 in an empty tank
 * @returns water [mL], with the nights, mean swing and mean vapour that it was reckoned from
 * Source: breathedWaterG, each night with its own swing and the dampest hour of its day.
 * Error: nothing evaporates again here, so by far too much; but changes of weather come on top of the normal day's swing.
 */
export function breathingBound(
  headSpaceL: number,
  store: StoreYear,
  from: IsoDate,
  to: IsoDate,
  factor: number,
): { waterML: number; nights: number; meanSwingK: number; meanVapourGM3: number } {
  if (!(factor >= 1)) throw new RangeError(`breathing factor: found ${factor}, expected 1 or more`);
  const nights = Math.max(0, daysBetween(from, to));
  const first = dayIndexOf(from);
  const sum = { water: 0, swing: 0, vapour: 0 };
  for (let n = 0; n < Math.min(nights, DAYS_PER_YEAR); n++) {
    const day = (first + n) % DAYS_PER_YEAR;
    const times = Math.floor((nights - 1 - n) / DAYS_PER_YEAR) + 1;
    let vapourPa = 0;
    for (let h = 0; h < 24; h++) vapourPa = Math.max(vapourPa, store.vapourPa[day * 24 + h]!);
    const meanC = store.dayMeanC[day]!;
    const swing = store.dayMaxC[day]! - store.dayMinC[day]!;
    const vapour = vapourDensityGM3(vapourPa, meanC);
    sum.water += times * factor * breathedWaterG(headSpaceL, swing, meanC, vapour);
    sum.swing += times * swing;
    sum.vapour += times * vapour;
  }
  const mean = (x: number) => (nights > 0 ? x / nights : 0);
  return { waterML: sum.water, nights, meanSwingK: mean(sum.swing), meanVapourGM3: mean(sum.vapour) };
}
