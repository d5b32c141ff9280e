import { exp, power } from '../elementary.ts';

const KELVIN = 273.15;
const SEA_LEVEL_KPA = 101.325;
const MONTH_D = 30.4375;

/** Leakage through the rubber: share of the gauge pressure in a month at the reference temperature. */
export const LEAKAGE = {
  perMonth: 0.01,
  atC: 20,
  doublingK: 11,
  source:
    'Tire Sci. Technol. 13(1) 1985: 0.5–1.0 psi a month at 21 °C, about 1.5 at 32 °C; 31 tyres over 12 months lost 11.7 % (consumer test)',
  caveat:
    'The journal gives 1.7–3.3 % a month for a car tyre at 30 psi, the consumer test 1 %; 1 % is taken, so a tyre may well lose three times as much. A slow valve or bead leak is beyond any figure.',
} as const;

/**
 * Pressure of the air at a height above the sea.
 * @param elevationM - [m]
 * @returns [kPa]
 * Source: ICAO standard atmosphere (ISO 2533).
 * Valid: −500 to 11 000 m.
 */
export function atmosphereKPa(elevationM: number): number {
  if (!(elevationM >= -500 && elevationM <= 11_000))
    throw new RangeError(`elevation: found ${elevationM} m, expected −500 to 11 000 m`);
  return SEA_LEVEL_KPA * power(1 - 2.25577e-5 * elevationM, 5.25588);
}

/**
 * Gauge pressure of a closed tyre at another temperature.
 * @param gaugeKPa - gauge pressure at `fromC` [kPa]
 * @param fromC - temperature of the tyre when it was set [°C]
 * @param toC - the other temperature [°C]
 * @param atmKPa - pressure of the air outside [kPa]
 * @returns gauge pressure [kPa]; negative would mean under the pressure outside
 * Source: p2 = (p1 + patm)·T2/T1 − patm, ideal gas of constant volume, kelvin.
 * Error: the tyre's own change of volume is left out, about 1 %.
 */
export function pressureAt(gaugeKPa: number, fromC: number, toC: number, atmKPa = SEA_LEVEL_KPA): number {
  if (!(gaugeKPa >= -atmKPa && gaugeKPa <= 2000))
    throw new RangeError(`tyre pressure: found ${gaugeKPa} kPa, expected up to 2000 kPa gauge`);
  if (!(fromC > -KELVIN && toC > -KELVIN && fromC < 200 && toC < 200))
    throw new RangeError(`tyre temperature: found ${fromC} and ${toC} °C, expected temperatures of a tyre`);
  return ((gaugeKPa + atmKPa) * (toC + KELVIN)) / (fromC + KELVIN) - atmKPa;
}

/**
 * Share of the gauge pressure that is left after leaking day by day.
 * @param dayMeansC - mean temperature of each day [°C]
 * @returns 0–1
 * Source: LEAKAGE: 1 % a month at 20 °C, doubling with every 11 K.
 */
export function shareLeft(dayMeansC: Iterable<number>): number {
  let exponent = 0;
  for (const t of dayMeansC) {
    if (!(t > -100 && t < 100)) throw new RangeError(`store temperature: found ${t} °C, expected a temperature`);
    exponent += (LEAKAGE.perMonth / MONTH_D) * power(2, (t - LEAKAGE.atC) / LEAKAGE.doublingK);
  }
  return exp(-exponent);
}
