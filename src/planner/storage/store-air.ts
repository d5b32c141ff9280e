import type { Climate, EnsembleOptions } from '../climate/index.ts';
import { MONTH_DAYS, weatherYears } from '../climate/index.ts';
import { sayableFor } from './sayable.ts';
import { COUNTERS, countByMonth, STRIDE } from './simulate.ts';
import type { Enclosure, StoreAir, StoreMonth } from './types.ts';

type Counter = (typeof COUNTERS)[number];

/** Nine in ten years lie at or under this (the nearest rank; of one year, that year). */
function p90(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.ceil(0.9 * sorted.length) - 1]!;
}

/** Half of the years lie at or over this (of an even number of years, the mean of the middle two). */
function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.floor((sorted.length - 1) / 2)]! + sorted[Math.ceil((sorted.length - 1) / 2)]!) / 2;
}

const mean = (values: number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;

/**
 * Air and metal in a store over years of weather: means by month, and the wet side of the spread between years.
 * @param climate - normals, from which years are drawn; or one hourly year
 * @param enclosure - the store
 * @param metalTimeConstantH - how slowly the metal follows the air [h]
 * @param options - seed and years
 * @returns means and 90th percentiles by month, extremes, and which figures may be shown
 * Error: see `sayable` and its typical factors; single months are off by more than half-years.
 */
export function storeAir(
  climate: Climate,
  enclosure: Enclosure,
  metalTimeConstantH: number,
  options: EnsembleOptions,
): StoreAir {
  const weather = weatherYears(climate, options);
  const counters = countByMonth(weather, enclosure, metalTimeConstantH);
  const ofMonth = (counter: Counter, month: number) => {
    const values: number[] = [];
    for (let i = month * STRIDE + COUNTERS.indexOf(counter); i < counters.length; i += 12 * STRIDE)
      values.push(counters[i]!);
    return values;
  };
  const months: StoreMonth[] = MONTH_DAYS.map((_, m) => {
    const [condensation, frost, wet] = [ofMonth('condensation', m), ofMonth('frost', m), ofMonth('wet', m)];
    return {
      month: m + 1,
      meanC: mean(ofMonth('airC', m)),
      meanRhPct: mean(ofMonth('rhPct', m)),
      condensationHours: mean(condensation),
      condensationHoursP90: p90(condensation),
      frostHours: mean(frost),
      frostHoursP90: p90(frost),
      wetHours: mean(wet),
      wetHoursP90: p90(wet),
    };
  });
  const byDays = (of: (month: StoreMonth) => number) =>
    months.reduce((sum, x, m) => sum + of(x) * MONTH_DAYS[m]!, 0) / 365;
  const total = (of: (month: StoreMonth) => number) => months.reduce((sum, x) => sum + of(x), 0);
  return {
    months,
    sayable: sayableFor(climate, enclosure),
    lowestC: MONTH_DAYS.map((_, m) => ofMonth('lowC', m)),
    highestC: MONTH_DAYS.map((_, m) => Math.max(...ofMonth('highC', m))),
    year: {
      meanC: byDays((x) => x.meanC),
      meanRhPct: byDays((x) => x.meanRhPct),
      condensationHours: total((x) => x.condensationHours),
      frostHours: total((x) => x.frostHours),
      wetHours: total((x) => x.wetHours),
    },
    years: weather.years,
  };
}

/**
 * The coldest hour that a usual year brings to the store in some of its months.
 * @param air - the store's air
 * @param months - the months, 1 to 12
 * @returns the median over the years of their coldest hour in these months [°C]
 */
export function usualLowC(air: Pick<StoreAir, 'years' | 'lowestC'>, months: number[]): number {
  const years = Array.from({ length: air.years }, (_, y) => Math.min(...months.map((m) => air.lowestC[m - 1]![y]!)));
  return median(years);
}
