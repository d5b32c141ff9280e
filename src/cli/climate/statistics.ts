import { MONTH_OF_HOUR, readTable, WATER_TABLE } from '../../planner/climate/index.ts';
import { HOURS_PER_YEAR } from '../../planner/climate/types.ts';

/** December to February, and so on: the quarters that the statistics are taken over. */
const QUARTERS = [
  [11, 0, 1],
  [2, 3, 4],
  [5, 6, 7],
  [8, 9, 10],
];

/** What a statistic's name begins with says how two values of it are compared: the difference that counts as one. */
const UNIT_OF: Record<string, number> = {
  humidityQuantile: 6,
  humidityShare: 0.06,
  correlation: 0.2,
  /** Spreads and steps, compared by their logarithms. */
  spread: 0.15,
  dewPointCycle: 0.5,
  humidityCycle: 4,
};

/** Eight values of a day cycle count as two statistics. */
const WEIGHT_OF: Record<string, number> = { dewPointCycle: 0.25, humidityCycle: 0.25 };

export type Statistics = Record<string, number>;

/** Dew point by the Magnus form (WMO-No. 8), near enough for statistics of its changes [°C]. */
function dewPoint(vapourPa: number): number {
  const g = Math.log(Math.max(vapourPa, 1) / 611.2);
  return (243.12 * g) / (17.62 - g);
}

type Series = Float64Array;

function mean(values: Series): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

function spread(values: Series): number {
  const m = mean(values);
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i]! - m) ** 2;
  return Math.sqrt(sum / values.length);
}

function correlation(a: Series, b: Series): number {
  const [ma, mb] = [mean(a), mean(b)];
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i]! - ma) * (b[i]! - mb);
  return sum / a.length / (spread(a) * spread(b));
}

/** Steps of the counting below: fine beside any difference that matters. */
const BINS = 20_000;

/** Quantiles by counting between two bounds, which saves sorting; values beyond count at the bounds. */
function quantiles(values: Series, low: number, high: number, shares: number[]): number[] {
  const counts = new Int32Array(BINS);
  for (let i = 0; i < values.length; i++) {
    const bin = ((values[i]! - low) / (high - low)) * BINS;
    counts[Math.min(BINS - 1, Math.max(0, bin | 0))]!++;
  }
  return shares.map((share) => {
    const wanted = share * (values.length - 1);
    let seen = 0;
    let bin = 0;
    while (bin < BINS - 1 && seen + counts[bin]! <= wanted) seen += counts[bin++]!;
    return low + ((bin + 0.5) / BINS) * (high - low);
  });
}

/** Means of the eight three-hour parts of the day, less the day's. */
function dayCycle(series: Series, hours: Int32Array): number[] {
  const sum = new Float64Array(8);
  const count = new Float64Array(8);
  for (let i = 0; i < hours.length; i++) {
    const part = Math.floor((hours[i]! % 24) / 3);
    sum[part]! += series[hours[i]!]!;
    count[part]!++;
  }
  const means = sum.map((total, part) => total / count[part]!);
  const middle = mean(means);
  return Array.from(means, (v) => v - middle);
}

function picked(series: Series, hours: Int32Array): Series {
  const out = new Float64Array(hours.length);
  for (let i = 0; i < hours.length; i++) out[i] = series[hours[i]!]!;
  return out;
}

function changes(series: Series, hours: Int32Array, back: number): Series {
  const out = new Float64Array(hours.length);
  for (let i = 0; i < hours.length; i++) out[i] = series[hours[i]!]! - series[hours[i]! - back]!;
  return out;
}

/** Differences from each element to the next. */
function steps(values: Series): Series {
  return values.subarray(1).map((v, i) => v - values[i]!);
}

const quartersMade = new Map<number, { hours: Int32Array; days: Int32Array }[]>();

/** Hours (from the thirteenth, so that all have a past) and days of each quarter, for so many years. */
function quartersOf(hours: number): { hours: Int32Array; days: Int32Array }[] {
  const kept = quartersMade.get(hours);
  if (kept) return kept;
  const made = QUARTERS.map((months) => {
    const chosen: number[] = [];
    const days: number[] = [];
    for (let h = 0; h < hours; h++) {
      if (!months.includes(MONTH_OF_HOUR[h % HOURS_PER_YEAR]!)) continue;
      if (h >= 12) chosen.push(h);
      if (h % 24 === 0) days.push(h / 24);
    }
    return { hours: Int32Array.from(chosen), days: Int32Array.from(days) };
  });
  quartersMade.set(hours, made);
  return made;
}

/**
 * How weather behaves, quarter by quarter: spreads, quantiles of humidity, changes, day cycles. No count of wet metal.
 * @param temperatureC - hours of one year or several [°C]
 * @param vapourPa - the same hours [Pa]
 * @returns one set of statistics for each quarter of the year
 */
export function weatherStatistics(temperatureC: ArrayLike<number>, vapourPa: ArrayLike<number>): Statistics[] {
  const count = temperatureC.length;
  const warm = Float64Array.from(temperatureC);
  const dew = new Float64Array(count);
  const rh = new Float64Array(count);
  for (let h = 0; h < count; h++) dew[h] = dewPoint(vapourPa[h]!);
  for (let h = 0; h < count; h++) rh[h] = (100 * vapourPa[h]!) / readTable(WATER_TABLE, warm[h]!);
  return quartersOf(count).map(({ hours, days }) => {
    const out: Statistics = {};
    const change = (series: Series, back: number) => changes(series, hours, back);
    const humidity = picked(rh, hours);
    const shares = [0.05, 0.2, 0.5, 0.8, 0.9, 0.97];
    for (const [i, q] of quantiles(humidity, 0, 102, shares).entries()) out[`humidityQuantile ${shares[i]}`] = q;
    for (const over of [80, 90]) {
      let above = 0;
      for (let i = 0; i < humidity.length; i++) if (humidity[i]! > over) above++;
      out[`humidityShare ${over}`] = above / humidity.length;
    }
    for (const back of [1, 3, 6, 12]) {
      const [warmer, moister] = [change(warm, back), change(dew, back)];
      out[`spread temperature ${back} h`] = spread(warmer);
      out[`spread dew point ${back} h`] = spread(moister);
      if (back > 3) continue;
      out[`correlation ${back} h`] = correlation(warmer, moister);
      out[`spread steep temperature ${back} h`] = quantiles(warmer, -20, 20, [0.99])[0]!;
      out[`spread steep dew point ${back} h`] = quantiles(moister, -20, 20, [0.98])[0]!;
    }
    const dayMean = (series: Series) => Float64Array.from(days, (d) => mean(series.subarray(24 * d, 24 * d + 24)));
    const humid = dayMean(rh);
    const ranges = Float64Array.from(days, (d) => {
      let [low, high] = [Infinity, -Infinity];
      for (let h = 24 * d; h < 24 * d + 24; h++) {
        low = Math.min(low, warm[h]!);
        high = Math.max(high, warm[h]!);
      }
      return high - low;
    });
    out['spread day humidity'] = spread(humid);
    out['spread day range'] = spread(ranges);
    out['correlation range and humidity'] = correlation(ranges, humid);
    out['correlation humidity next day'] = correlation(humid.subarray(1), humid.subarray(0, -1));
    out['spread dew point next day'] = spread(steps(dayMean(dew)));
    out['spread temperature next day'] = spread(steps(dayMean(warm)));
    for (const [k, v] of dayCycle(dew, hours).entries()) out[`dewPointCycle ${k}`] = v;
    for (const [k, v] of dayCycle(rh, hours).entries()) out[`humidityCycle ${k}`] = v;
    return out;
  });
}

/**
 * How far two sets of statistics lie apart: 1 where every one is off by the difference that counts as one. Grows by the
 * square up to two such differences, and straight beyond, so that one odd instrument does not rule.
 * @param found - quarter by quarter
 * @param wanted - quarter by quarter
 * @returns mean misfit
 */
export function misfit(found: Statistics[], wanted: Statistics[]): number {
  let sum = 0;
  let weights = 0;
  for (const [quarter, set] of wanted.entries()) {
    for (const [name, want] of Object.entries(set)) {
      const kind = name.split(' ')[0]!;
      const got = found[quarter]![name]!;
      const log = (v: number) => Math.log(Math.max(v, 1e-3));
      const apart = Math.abs(kind === 'spread' ? log(got) - log(want) : got - want) / UNIT_OF[kind]!;
      const weight = WEIGHT_OF[kind] ?? 1;
      sum += weight * (apart < 2 ? apart * apart : 4 * apart - 4);
      weights += weight;
    }
  }
  return sum / weights;
}
