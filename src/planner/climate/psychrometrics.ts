/*
 * Water vapour in air.
 *
 * Convention below 0 °C: relative humidity is over (supercooled) water at every temperature, as weather services and
 * sensors report it (WMO-No. 8). The ASHRAE formulation, and the psychrolib package after it, takes relative humidity
 * over ice below the triple point: 80 % there is 73 % here at −10 °C. Vapour pressure is the same in both.
 */

import { exp, log } from '../elementary.ts';

const KELVIN = 273.15;

/** Warmest and coldest temperature that the functions below accept [°C]. */
const RANGE_C = { low: -100, high: 100 };

function inRange(temperatureC: number): void {
  if (!(temperatureC >= RANGE_C.low && temperatureC <= RANGE_C.high)) {
    throw new RangeError(`temperature: ${temperatureC} °C found, ${RANGE_C.low} to ${RANGE_C.high} °C expected`);
  }
}

/**
 * Saturation vapour pressure over liquid water, supercooled below 0 °C.
 * @param temperatureC - air temperature [°C]
 * @returns pressure [Pa]
 * Source: Hyland and Wexler, ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 6.
 * Valid: 0 to 200 °C as published; continued below 0 °C for supercooled water.
 * Error: below 0 °C within 0.5 % of the Magnus form of WMO-No. 8 down to −40 °C.
 */
export function saturationOverWaterPa(temperatureC: number): number {
  inRange(temperatureC);
  const k = temperatureC + KELVIN;
  return exp(
    -5.8002206e3 / k + 1.3914993 + k * (-4.8640239e-2 + k * (4.1764768e-5 + k * -1.4452093e-8)) + 6.5459673 * log(k),
  );
}

/**
 * Saturation vapour pressure over ice.
 * @param temperatureC - air temperature, 0.01 °C at most [°C]
 * @returns pressure [Pa]
 * Source: Hyland and Wexler, ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5.
 * Valid: −100 to 0.01 °C.
 */
export function saturationOverIcePa(temperatureC: number): number {
  if (!(temperatureC >= RANGE_C.low && temperatureC <= 0.01)) {
    throw new RangeError(`temperature over ice: ${temperatureC} °C found, ${RANGE_C.low} to 0.01 °C expected`);
  }
  const k = temperatureC + KELVIN;
  return exp(
    -5.6745359e3 / k +
      6.3925247 +
      k * (-9.677843e-3 + k * (6.2215701e-7 + k * (2.0747825e-9 + k * -9.484024e-13))) +
      4.1635019 * log(k),
  );
}

/**
 * Vapour pressure of air at a relative humidity over water.
 * @param temperatureC - air temperature [°C]
 * @param rhPct - relative humidity over water, also below 0 °C [%]
 * @returns pressure [Pa]
 */
export function vapourPressurePa(temperatureC: number, rhPct: number): number {
  if (!(rhPct >= 0 && rhPct <= 100)) throw new RangeError(`relative humidity: ${rhPct} % found, 0 to 100 expected`);
  return (rhPct / 100) * saturationOverWaterPa(temperatureC);
}

/**
 * Relative humidity over water.
 * @param temperatureC - air temperature [°C]
 * @param vapourPa - vapour pressure [Pa]
 * @returns relative humidity; over 100 where the air is supersaturated [%]
 */
export function relativeHumidityPct(temperatureC: number, vapourPa: number): number {
  if (!(vapourPa >= 0)) throw new RangeError(`vapour pressure: ${vapourPa} Pa found, 0 or more expected`);
  return (100 * vapourPa) / saturationOverWaterPa(temperatureC);
}

function invert(vapourPa: number, saturation: (t: number) => number, a: number, b: number, top: number): number {
  if (!(vapourPa > 0)) throw new RangeError(`vapour pressure: ${vapourPa} Pa found, more than 0 expected`);
  const target = log(vapourPa);
  const g = log(vapourPa / 611.2);
  let t = Math.min(top, Math.max(RANGE_C.low + 1, (b * g) / (a - g)));
  for (let i = 0; i < 50; i++) {
    const slope = (a * b) / (b + t) ** 2;
    const step = (log(saturation(t)) - target) / slope;
    t = Math.min(top, Math.max(RANGE_C.low, t - step));
    if (Math.abs(step) < 1e-10) break;
  }
  return t;
}

/**
 * Dew point: the temperature at which this vapour would be saturated over water.
 * @param vapourPa - vapour pressure [Pa]
 * @returns dew point, over water also below 0 °C [°C]
 * Source: saturationOverWaterPa, inverted by Newton steps from the Magnus form (WMO-No. 8, annex 4.B).
 * Error: 1e-8 K against the forward function.
 */
export function dewPointC(vapourPa: number): number {
  return invert(vapourPa, saturationOverWaterPa, 17.62, 243.12, RANGE_C.high);
}

/**
 * Frost point: the temperature at which this vapour would be saturated over ice.
 * @param vapourPa - vapour pressure, at most that of the triple point [Pa]
 * @returns frost point [°C]
 * Source: saturationOverIcePa, inverted by Newton steps from the Magnus form over ice (WMO-No. 8, annex 4.B).
 * Valid: up to 611.66 Pa; above it there is no frost.
 * Error: 1e-8 K against the forward function.
 */
export function frostPointC(vapourPa: number): number {
  if (!(vapourPa > 0 && vapourPa <= saturationOverIcePa(0.01))) {
    throw new RangeError(`vapour pressure over ice: ${vapourPa} Pa found, 0 to 611.66 Pa expected`);
  }
  return invert(vapourPa, saturationOverIcePa, 22.46, 272.62, 0.01);
}
