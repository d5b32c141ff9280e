import { saturationOverIcePa, saturationOverWaterPa } from './psychrometrics.ts';

/*
 * Saturation pressures in tables, for the loops that need one every simulated hour. Linear between points.
 * Error: within 1 in 100 000 of the equations from −60 to 60 °C. Outside −100 to 100 °C the end values hold.
 */

/** Coldest temperature of the tables [°C]; far below the equations' own limit, so that no hour falls out of them. */
export const TABLE_LOW_C = -160;

/** Points to a kelvin. */
export const TABLE_PER_K = 16;

const TABLE_HIGH_C = 140;

function table(saturation: (temperatureC: number) => number): Float64Array {
  const points = (TABLE_HIGH_C - TABLE_LOW_C) * TABLE_PER_K + 2;
  return Float64Array.from({ length: points }, (_, i) => {
    const t = TABLE_LOW_C + i / TABLE_PER_K;
    return saturation(Math.min(100, Math.max(-100, t)));
  });
}

/** Over water at every temperature [Pa]. */
export const WATER_TABLE: Float64Array = table(saturationOverWaterPa);

/** Over ice below 0 °C, over water from there on: what a cold surface is wetted or frosted by [Pa]. */
export const SURFACE_TABLE: Float64Array = table((t) => (t < 0 ? saturationOverIcePa(t) : saturationOverWaterPa(t)));

/**
 * Reads a table between its points.
 * @param values - WATER_TABLE, SURFACE_TABLE or another on the same points
 * @param temperatureC - temperature [°C]
 * @returns pressure; NaN for a temperature that is not finite or out of the table [Pa]
 */
export function readTable(values: Float64Array, temperatureC: number): number {
  const x = (temperatureC - TABLE_LOW_C) * TABLE_PER_K;
  const i = x | 0;
  const low = values[i]!;
  return low + (values[i + 1]! - low) * (x - i);
}
