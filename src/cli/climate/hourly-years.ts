import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { HourlyClimate, MonthlyNormals } from '../../planner/climate/index.ts';
import { normalsOf } from '../../planner/climate/index.ts';

/** A real year of hourly weather to check against. */
export interface HourlyYear {
  climate: HourlyClimate;
  /** Its own monthly means: what the drawn weather is given, so that patterns are compared and not the year's luck. */
  normals: MonthlyNormals;
}

interface YearFile {
  id: string;
  name: string;
  latitudeDeg: number;
  elevationM: number;
  source: string;
  attribution: string;
  temperature10: number[];
  rhPct: number[];
}

/**
 * The hourly years of a folder.
 * @param folder - JSON files with temperature in 0.1 °C and relative humidity over water
 * @returns the years in order of file name
 */
export function readHourlyYears(folder: string): HourlyYear[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as YearFile)
    .filter((file) => Array.isArray(file.temperature10))
    .map(({ temperature10, rhPct, ...place }) => {
      const climate: HourlyClimate = {
        kind: 'hourly',
        ...place,
        temperatureC: Float64Array.from(temperature10, (t) => t / 10),
        rhPct: Float64Array.from(rhPct),
      };
      return { climate, normals: normalsOf(climate) };
    });
}
