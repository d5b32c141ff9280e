import type { WeatherEnsemble } from '../../planner/climate/index.ts';
import { weatherYears } from '../../planner/climate/index.ts';
import { enclosureById, metalById } from '../../planner/storage/index.ts';
import { COUNTERS, countByMonth, STRIDE } from '../../planner/storage/simulate.ts';
import type { HourlyYear } from './hourly-years.ts';

/** Stores and metals compared. */
export const CASES = [
  ['open', 'motorcycle-engine'],
  ['thin-metal-shed', 'motorcycle-engine'],
  ['thin-metal-shed', 'car-engine'],
  ['slab-garage', 'motorcycle-engine'],
  ['slab-garage', 'panel'],
  ['masonry', 'motorcycle-engine'],
  ['insulated', 'motorcycle-engine'],
] as const;

export const COUNTS = ['condensation', 'frost', 'wet'] as const;
export type Count = (typeof COUNTS)[number];

/** One count of one store at one place: hours in the real year, and in the years drawn. */
export interface Comparison {
  site: string;
  enclosure: string;
  metal: string;
  count: Count;
  /** The six months in a row with the lowest sum of normal means, or the other six; or one month. */
  period: string;
  realH: number;
  drawnH: number;
  /** A tenth of the drawn years lie under the first, a tenth over the second. */
  drawnRangeH: [number, number];
}

/** First month of the coldest six in a row. */
function coldStart(meanC: number[]): number {
  const sums = meanC.map((_, first) =>
    Array.from({ length: 6 }, (_, k) => meanC[(first + k) % 12]!).reduce((a, b) => a + b),
  );
  return sums.indexOf(Math.min(...sums));
}

const sum = (values: number[]) => values.reduce((total, v) => total + v, 0);

/** Hours of a count in chosen months, year by year. */
function hoursIn(counters: Float64Array, years: number, count: Count, months: number[]): number[] {
  return Array.from({ length: years }, (_, y) =>
    sum(months.map((m) => counters[(12 * y + m) * STRIDE + COUNTERS.indexOf(count)]!)),
  );
}

/**
 * Counts on a real year beside the same counts on weather drawn from that year's monthly means.
 * @param year - the real year
 * @param drawn - weather drawn from its normals
 * @param by - half-years, or months
 * @returns one row for each case, count and period
 */
export function compare(year: HourlyYear, drawn: WeatherEnsemble, by: 'half-year' | 'month'): Comparison[] {
  const real = weatherYears(year.climate, { seed: 0, years: 1 });
  const first = coldStart(year.normals.meanC);
  const months = (from: number) => Array.from({ length: 6 }, (_, k) => (first + from + k) % 12);
  const periods: [string, number[]][] =
    by === 'month'
      ? Array.from({ length: 12 }, (_, m) => [`month ${m + 1}`, [m]])
      : [
          ['cold half', months(0)],
          ['warm half', months(6)],
        ];
  return CASES.flatMap(([enclosure, metal]) => {
    const tau = metalById(metal).timeConstantH;
    const onReal = countByMonth(real, enclosureById(enclosure), tau);
    const onDrawn = countByMonth(drawn, enclosureById(enclosure), tau);
    return COUNTS.flatMap((count) =>
      periods.map(([period, chosen]): Comparison => {
        const hours = hoursIn(onDrawn, drawn.years, count, chosen).sort((a, b) => a - b);
        const at = (p: number) => hours[Math.max(0, Math.ceil(p * hours.length) - 1)]!;
        return {
          site: year.climate.name,
          enclosure,
          metal,
          count,
          period,
          realH: hoursIn(onReal, 1, count, chosen)[0]!,
          drawnH: sum(hours) / hours.length,
          drawnRangeH: [at(0.1), at(0.9)],
        };
      }),
    );
  });
}

/** Hours added to both sides of a ratio, so that 3 hours against 1 does not pass for a large error. */
const FEW_H = 10;

/** Rows with fewer hours than this on both sides together tell nothing. */
const TOO_FEW_H = 40;

/**
 * Drawn over real, pooled over rows.
 * @param rows - comparisons
 * @returns ratio of the sums
 */
export function pooled(rows: Comparison[]): number {
  return sum(rows.map((r) => r.drawnH)) / sum(rows.map((r) => r.realH));
}

/**
 * Typical error of single rows, as a factor of 1 or more: the median and the root mean square of the logarithms.
 * @param rows - comparisons
 * @returns factors, and how many rows told anything
 */
export function typicalFactor(rows: Comparison[]): { median: number; rms: number; rows: number } {
  const logs = rows
    .filter((r) => r.realH + r.drawnH > TOO_FEW_H)
    .map((r) => Math.abs(Math.log((r.drawnH + FEW_H) / (r.realH + FEW_H))))
    .sort((a, b) => a - b);
  return {
    median: Math.exp(logs[Math.floor(logs.length / 2)] ?? Number.NaN),
    rms: Math.exp(Math.sqrt(sum(logs.map((v) => v * v)) / logs.length)),
    rows: logs.length,
  };
}
