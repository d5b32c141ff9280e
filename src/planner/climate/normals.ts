import { MONTH_DAYS, MONTH_START, monthMeansOfHours } from './calendar.ts';
import { checkClimate } from './check.ts';
import { saturationOverWaterPa } from './psychrometrics.ts';
import type { Climate, HourlyClimate, MonthlyNormals, WeatherYear } from './types.ts';
import { HOURS_PER_YEAR } from './types.ts';

function meanOfDaily(temperatureC: Float64Array, pick: (...hours: number[]) => number): number[] {
  return MONTH_DAYS.map((days, month) => {
    let sum = 0;
    for (let d = MONTH_START[month]!; d < MONTH_START[month + 1]!; d++) {
      sum += pick(...temperatureC.subarray(24 * d, 24 * d + 24));
    }
    return sum / days;
  });
}

/**
 * Monthly means of a place: its normals, or those of its hourly year.
 * @param climate - normals or one hourly year
 * @returns monthly normals; from an hourly year they are that one year's
 */
export function normalsOf(climate: Climate): MonthlyNormals {
  checkClimate(climate);
  if (climate.kind === 'normals') return climate.normals;
  return {
    meanC: monthMeansOfHours(climate.temperatureC),
    minC: meanOfDaily(climate.temperatureC, Math.min),
    maxC: meanOfDaily(climate.temperatureC, Math.max),
    rhPct: monthMeansOfHours(climate.rhPct),
  };
}

/**
 * Temperature and vapour pressure of an hourly climate.
 * @param climate - one hourly year
 * @returns the same year, humidity as vapour pressure
 */
export function yearOfHours(climate: HourlyClimate): WeatherYear {
  checkClimate(climate);
  const vapourPa = new Float64Array(HOURS_PER_YEAR);
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    vapourPa[h] = (climate.rhPct[h]! / 100) * saturationOverWaterPa(climate.temperatureC[h]!);
  }
  return { temperatureC: climate.temperatureC, vapourPa };
}
