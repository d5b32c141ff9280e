import { interpolate } from './interpolate.ts';

/** Sulfuric acid, density = c0 + c1·T(K) [g/cm³] at mass percents, linear between. Row 0 is water, filled in below. */
const MASS_PCT = [1, 5, 10, 20, 25, 30, 35, 40, 41, 45, 50];
const C0 = [1.13185, 1.17171, 1.22164, 1.3219, 1.37209, 1.42185, 1.4705, 1.51767, 1.52731, 1.56584, 1.61834];
const C1 = [
  -0.000435022, -0.000479481, -0.000531558, -0.000622448, -0.000660866, -0.000693492, -0.000718251, -0.000732869,
  -0.000735755, -0.000744294, -0.000761493,
];

/** Coefficients of w¹ … w⁵, fitted to the freezing-point column of the CRC table (0.12 K at worst). */
const FREEZING_FIT = [-40.051, 71.498, -2025.107, 8529.341, -18562.097];

/** Where the published freezing points end: from here on only "below −50 °C" can be said. */
export const LARGEST_FITTED_FRACTION = 0.34;

const KELVIN = 273.15;

/** One 60 °F/60 °F hydrometer scale [°C]; the reference of laboratory tables. */
export const HYDROMETER_60F_C = (60 - 32) / 1.8;

/**
 * Density of water.
 * @param temperatureC - [°C]
 * @returns [g/cm³]
 * Source: Tanaka et al., Metrologia 38 (2001) 301, eq. 1 (from memory; 0.997047 at 25 °C).
 * Valid: 0 to 40 °C. Error: below 1e-5 g/cm³.
 */
export function waterDensity(temperatureC: number): number {
  if (!(temperatureC >= 0 && temperatureC <= 60))
    throw new RangeError(`found water at ${temperatureC} °C, expected 0 to 60 °C`);
  const t = temperatureC;
  return 0.99997495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));
}

/**
 * Mass fraction of sulfuric acid from specific gravity, liquid and water at the same temperature.
 * @param specificGravity - over water at `referenceC`
 * @param referenceC - temperature of both [°C]
 * @returns mass fraction, 0–0.5
 * Source: density lines of the sulfuric-acid table in NCAR's CARMA model (sulfate_utils, dnwtp, dnc0, dnc1).
 * Valid: 0–50 % by mass, 0–50 °C. Error: 0.0005 g/cm³ against CRC at 20 °C, some 0.1 % by mass.
 */
export function acidMassFraction(specificGravity: number, referenceC: number): number {
  if (!(specificGravity >= 1 && specificGravity <= 1.4))
    throw new RangeError(`found specific gravity ${specificGravity}, expected 1.000 to 1.400`);
  const water = waterDensity(referenceC);
  const gravities = [1, ...MASS_PCT.map((_, i) => (C0[i]! + C1[i]! * (referenceC + KELVIN)) / water)];
  return interpolate(gravities, [0, ...MASS_PCT], specificGravity) / 100;
}

/** A freezing point, and whether it is only known to lie at or below that. */
export interface FreezingPoint {
  temperatureC: number;
  /** True: the figure is a bound ("below −50 °C"), not a value. */
  atOrBelow: boolean;
}

/**
 * Freezing point of sulfuric acid of a strength.
 * @param massFraction - 0–1
 * @returns [°C], held at the end of the table for stronger acid
 * Source: CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions: fit.
 * Valid: mass fraction up to 0.34; up to 0.41 the acid freezes below −50 °C and no figure is given.
 * Error: 0.12 K up to 0.30, where the table's freezing points end; from there to 0.34 about 1 K (Ordnance course OD1002).
 */
export function acidFreezingPoint(massFraction: number): FreezingPoint {
  if (!(massFraction >= 0 && massFraction <= 0.41))
    throw new RangeError(`found mass fraction ${massFraction}, expected 0 to 0.41`);
  const w = Math.min(massFraction, LARGEST_FITTED_FRACTION);
  let sum = 0;
  for (let k = FREEZING_FIT.length - 1; k >= 0; k--) sum = (sum + FREEZING_FIT[k]!) * w;
  return { temperatureC: sum, atOrBelow: massFraction > LARGEST_FITTED_FRACTION };
}

/**
 * Freezing point of battery acid by its specific gravity.
 * @param specificGravity - liquid and water both at `referenceC`
 * @param referenceC - [°C]
 */
export function freezingPointOfGravity(specificGravity: number, referenceC: number): FreezingPoint {
  return acidFreezingPoint(acidMassFraction(specificGravity, referenceC));
}

/** A trade rule for hydrometer readings: what to add for each kelvin above the reference. */
export interface GravityRule {
  referenceC: number;
  perK: number;
  source: string;
}

export const GRAVITY_RULES = {
  /** 0.004 for each 10 °F from 80 °F. */
  points4Per10F: { referenceC: (80 - 32) / 1.8, perK: 0.00072, source: 'TM 5-3895-349-14P, battery check' },
  /** 0.001 for each 3 °F from 70 °F. */
  point1Per3F: {
    referenceC: (70 - 32) / 1.8,
    perK: 0.0006,
    source: 'O. A. Witte, The Automobile Storage Battery, 3rd ed. (1922)',
  },
} as const satisfies Record<string, GravityRule>;

/**
 * A hydrometer reading brought to the rule's reference temperature.
 * @param reading - specific gravity as read
 * @param temperatureC - temperature of the electrolyte [°C]
 * @param rule - trade rule; 0.004 for 10 °F from 80 °F when none is named
 * @returns specific gravity at the reference temperature
 */
export function correctSpecificGravity(
  reading: number,
  temperatureC: number,
  rule: GravityRule = GRAVITY_RULES.points4Per10F,
): number {
  if (!(reading >= 1 && reading <= 1.4)) throw new RangeError(`found specific gravity ${reading}, expected 1.0 to 1.4`);
  if (!(temperatureC >= -50 && temperatureC <= 60))
    throw new RangeError(`found electrolyte at ${temperatureC} °C, expected −50 to 60 °C`);
  return reading + rule.perK * (temperatureC - rule.referenceC);
}
