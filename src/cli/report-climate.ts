/*
 * Prints hours of condensation, frost and wet metal on drawn weather beside the same on real hourly years.
 *
 *   node src/cli/report-climate.ts tests/published/data/climate [--months]
 *
 * Each place is drawn from the monthly means of its own year, with constants fitted to the other years only
 * (left-out.json beside the years): none of the figures has seen the year it is held against.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { drawWeather } from '../planner/climate/generator.ts';
import type { WeatherConstants } from '../planner/climate/weather-model.ts';
import { WEATHER } from '../planner/climate/weather-model.ts';
import type { Comparison } from './climate/compare.ts';
import { CASES, COUNTS, compare, pooled, typicalFactor } from './climate/compare.ts';
import { readHourlyYears } from './climate/hourly-years.ts';

const [, , folder, flag] = process.argv;
if (!folder) {
  console.error('usage: node src/cli/report-climate.ts <folder of hourly years> [--months]');
  process.exit(1);
}
const by = flag === '--months' ? 'month' : 'half-year';
const years = readHourlyYears(folder);
const leftOut = JSON.parse(readFileSync(join(folder, 'left-out.json'), 'utf8')) as Record<string, WeatherConstants>;
const OPTIONS = { seed: 11, years: 20 };

function rowsWith(constantsFor: (id: string) => WeatherConstants): Comparison[] {
  return years.flatMap((year) => compare(year, drawWeather(year.normals, OPTIONS, constantsFor(year.climate.id)), by));
}

function print(rows: Comparison[]): void {
  const sites = years.map((y) => y.climate.name);
  console.log(
    `${'store, metal'.padEnd(36)}${'hours of'.padEnd(14)}${'period'.padEnd(11)}${sites.map((s) => s.slice(0, 21).padEnd(23)).join('')}pooled`,
  );
  for (const [enclosure, metal] of CASES) {
    for (const count of COUNTS) {
      const these = rows.filter((r) => r.enclosure === enclosure && r.metal === metal && r.count === count);
      for (const period of new Set(these.map((r) => r.period))) {
        const line = these.filter((r) => r.period === period);
        if (line.every((r) => r.realH + r.drawnH < 1)) continue;
        const cells = line.map((r) =>
          `${r.realH.toFixed(0).padStart(5)} ${r.drawnH.toFixed(0).padStart(5)} (${r.drawnRangeH.map((h) => h.toFixed(0)).join('–')})`.padEnd(
            23,
          ),
        );
        console.log(
          `${`${enclosure}, ${metal}`.padEnd(36)}${count.padEnd(14)}${period.padEnd(11)}${cells.join('')}${pooled(line).toFixed(2)}`,
        );
      }
    }
  }
  for (const count of COUNTS) {
    for (const enclosure of new Set(CASES.map((c) => c[0]))) {
      const these = rows.filter((r) => r.count === count && r.enclosure === enclosure);
      const { median, rms } = typicalFactor(these);
      console.log(
        `${count}, ${enclosure}: pooled ${pooled(these).toFixed(2)}, factor ${median.toFixed(2)} (median), ${rms.toFixed(2)} (rms)`,
      );
    }
    const { median, rms } = typicalFactor(rows.filter((r) => r.count === count));
    console.log(`${count}, all stores: factor ${median.toFixed(2)} (median), ${rms.toFixed(2)} (rms)`);
  }
  const { median, rms, rows: told } = typicalFactor(rows);
  console.log(`all counts: factor ${median.toFixed(2)} (median), ${rms.toFixed(2)} (rms) over ${told} figures\n`);
}

console.log('In each column: hours in the real year, mean of the years drawn, and their 10th to 90th percentile.\n');
console.log('Cross-validated: constants fitted without the place they are held against.');
print(rowsWith((id) => leftOut[id] ?? WEATHER));
console.log('As shipped: constants fitted to all of these years (their behaviour, not these hours).');
print(rowsWith(() => WEATHER));
