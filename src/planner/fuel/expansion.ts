import { exp } from '../elementary.ts';

/** One range of density with its constants: α = a + k0/ρ² + k1/ρ. */
interface ExpansionRow {
  fromKgM3: number;
  belowKgM3: number;
  a: number;
  k0: number;
  k1: number;
  name: string;
}

/** ASTM D1250 table 54B by density at 15 °C: petrol, the range between petrol and jet fuel, jet fuel. */
const EXPANSION: readonly ExpansionRow[] = [
  { fromKgM3: 653, belowKgM3: 770, a: 0, k0: 346.4228, k1: 0.4388, name: 'petrol' },
  { fromKgM3: 770, belowKgM3: 787.5, a: -0.00336312, k0: 2680.3206, k1: 0, name: 'between petrol and jet fuel' },
  { fromKgM3: 787.5, belowKgM3: 839, a: 0, k0: 594.5418, k1: 0, name: 'jet fuel' },
];

export const EXPANSION_SOURCE = 'ASTM D1250 (API MPMS 11.1), table 54B';
export const EXPANSION_EQUATION = 'VCF = exp(−α·ΔT·(1 + 0.8·α·ΔT)), α = 346.4228/ρ² + 0.4388/ρ, ΔT = T − 15 °C';

/** Density range that the table covers [kg/m³]. */
export const DENSITY_RANGE = { low: 653, high: 839 };

/**
 * Coefficient of thermal expansion of petrol at 15 °C.
 * @param densityKgM3 - density at 15 °C [kg/m³]
 * @returns α [1/K]
 * Source: ASTM D1250, table 54B: petrol 653 ≤ ρ < 770; rows for heavier fuel as in API MPMS 11.1 (2004).
 * Valid: 653 to 839 kg/m³.
 * Error: textbooks give 0.00095 1/K for petrol, a quarter less; the standard is the safer figure here.
 */
export function expansionPerK(densityKgM3: number): number {
  const row = EXPANSION.find((r) => densityKgM3 >= r.fromKgM3 && densityKgM3 < r.belowKgM3);
  if (!row)
    throw new RangeError(
      `fuel density: found ${densityKgM3} kg/m³, expected ${DENSITY_RANGE.low} to ${DENSITY_RANGE.high} kg/m³ at 15 °C`,
    );
  return row.a + row.k0 / densityKgM3 ** 2 + row.k1 / densityKgM3;
}

/**
 * Volume correction factor: a volume at T times this is the volume at 15 °C.
 * @param temperatureC - temperature of the fuel [°C]
 * @param densityKgM3 - density at 15 °C [kg/m³]
 * @returns factor, below 1 when warmer than 15 °C
 * Source: ASTM D1250, table 54B.
 * Valid: −70 to 120 °C; the table itself begins at −18 °C, colder is an extrapolation. API MPMS 11.1 (2004) takes the equation to
 * 150 °C (from memory); a store in the desert sun comes to 80.
 */
export function volumeCorrection(temperatureC: number, densityKgM3: number): number {
  if (!(temperatureC >= -70 && temperatureC <= 120))
    throw new RangeError(`fuel temperature: found ${temperatureC} °C, expected −70 to 120 °C`);
  const x = expansionPerK(densityKgM3) * (temperatureC - 15);
  return exp(-x * (1 + 0.8 * x));
}

/**
 * How many times its volume fuel takes at another temperature.
 * @param fromC - temperature at which the volume was measured [°C]
 * @param toC - the other temperature [°C]
 * @param densityKgM3 - density at 15 °C [kg/m³]
 * @returns volume at `toC` divided by volume at `fromC`
 */
export function expansionRatio(fromC: number, toC: number, densityKgM3: number): number {
  return volumeCorrection(fromC, densityKgM3) / volumeCorrection(toC, densityKgM3);
}
