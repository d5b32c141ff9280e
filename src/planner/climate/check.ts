import type { Climate, MonthlyNormals } from './types.ts';
import { HOURS_PER_YEAR } from './types.ts';

function monthly(values: readonly number[], what: string, low: number, high: number, unit: string): void {
  if (values.length !== 12) throw new RangeError(`${what}: ${values.length} values found, 12 expected (January first)`);
  for (const [m, v] of values.entries()) {
    if (!(v >= low && v <= high)) {
      throw new RangeError(`${what}, month ${m + 1}: ${v} ${unit} found, ${low} to ${high} ${unit} expected`);
    }
  }
}

/**
 * Refuses monthly normals that cannot be a climate: wrong length, not finite, or minimum, mean and maximum out of order.
 * @param normals - monthly normals
 */
export function checkNormals(normals: MonthlyNormals): void {
  monthly(normals.meanC, 'mean temperature', -75, 50, '°C');
  monthly(normals.minC, 'mean daily minimum', -80, 45, '°C');
  monthly(normals.maxC, 'mean daily maximum', -70, 55, '°C');
  monthly(normals.rhPct, 'relative humidity', 1, 100, '%');
  for (let m = 0; m < 12; m++) {
    const [low, mean, high] = [normals.minC[m]!, normals.meanC[m]!, normals.maxC[m]!];
    if (!(low <= mean && mean <= high)) {
      throw new RangeError(`month ${m + 1}: minimum ${low}, mean ${mean}, maximum ${high} °C are out of order`);
    }
  }
  if (normals.recordLowC) {
    monthly(normals.recordLowC, 'lowest on record', -95, 45, '°C');
    for (let m = 0; m < 12; m++) {
      if (!(normals.recordLowC[m]! <= normals.minC[m]!)) {
        throw new RangeError(
          `month ${m + 1}: lowest on record ${normals.recordLowC[m]} °C is above the mean daily minimum ${normals.minC[m]} °C`,
        );
      }
    }
  }
  if (normals.snowDepthCm) monthly(normals.snowDepthCm, 'snow depth', 0, 2000, 'cm');
  if (normals.precipMm) monthly(normals.precipMm, 'precipitation', 0, 5000, 'mm');
}

/**
 * Refuses a climate with values that are missing, not finite or out of all bounds.
 * @param climate - normals or one hourly year
 */
export function checkClimate(climate: Climate): void {
  if (!(climate.latitudeDeg >= -90 && climate.latitudeDeg <= 90)) {
    throw new RangeError(`${climate.id}: latitude ${climate.latitudeDeg}° found, −90 to 90° expected`);
  }
  if (climate.kind === 'normals') {
    checkNormals(climate.normals);
    return;
  }
  for (const [what, series, low, high] of [
    ['temperature [°C]', climate.temperatureC, -90, 60],
    ['relative humidity [%]', climate.rhPct, 0, 100],
  ] as const) {
    if (series.length !== HOURS_PER_YEAR) {
      throw new RangeError(`${climate.id}, ${what}: ${series.length} hours found, ${HOURS_PER_YEAR} expected`);
    }
    for (let h = 0; h < HOURS_PER_YEAR; h++) {
      if (!(series[h]! >= low && series[h]! <= high)) {
        throw new RangeError(`${climate.id}, ${what}, hour ${h}: ${series[h]} found, ${low} to ${high} expected`);
      }
    }
  }
}
