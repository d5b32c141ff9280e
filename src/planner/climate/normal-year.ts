import { dailyCurves } from './curves.ts';
import { DAY_SHAPE } from './day-profile.ts';
import { normalsOf, yearOfHours } from './normals.ts';
import { saturationOverWaterPa } from './psychrometrics.ts';
import type { Climate, WeatherYear } from './types.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR } from './types.ts';

/**
 * The normal year by the hour: every day is the normal of its date, with the ASHRAE day profile. No weather in it: it
 * makes no thaw and no cold spell. An hourly climate gives its own year.
 * @param climate - normals or one hourly year
 * @returns 8760 hours
 * Error: vapour pressure is the day's, held at or under saturation, so hours near saturation lose a little of it.
 */
export function normalYear(climate: Climate): WeatherYear {
  if (climate.kind === 'hourly') return yearOfHours(climate);
  const curves = dailyCurves(normalsOf(climate));
  const temperatureC = new Float64Array(HOURS_PER_YEAR);
  const vapourPa = new Float64Array(HOURS_PER_YEAR);
  for (let d = 0, i = 0; d < DAYS_PER_YEAR; d++) {
    const mean = curves.meanC[d]!;
    const range = curves.maxC[d]! - curves.minC[d]!;
    for (let h = 0; h < 24; h++, i++) {
      const t = mean + DAY_SHAPE[h]! * range;
      temperatureC[i] = t;
      vapourPa[i] = Math.min(curves.vapourPa[d]!, saturationOverWaterPa(t));
    }
  }
  return { temperatureC, vapourPa };
}
