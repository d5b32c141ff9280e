import { MONTH_OF_HOUR, readTable, WATER_TABLE } from '../../planner/climate/index.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR } from '../../planner/climate/types.ts';

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

function mean(values: number[]): number {
  let sum = 0;
  for (const v of values) sum += v;
  return sum / values.length;
}

function spread(values: number[]): number {
  const m = mean(values);
  let sum = 0;
  for (const v of values) sum += (v - m) ** 2;
  return Math.sqrt(sum / values.length);
}

function correlation(a: number[], b: number[]): number {
  const [ma, mb] = [mean(a), mean(b)];
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i]! - ma) * (b[i]! - mb);
  return sum / a.length / (spread(a) * spread(b));
}

function quantile(sorted: Float64Array, p: number): number {
  return sorted[Math.floor(p * (sorted.length - 1))]!;
}

/** Means of the eight three-hour parts of the day, less the day's. */
function dayCycle(series: ArrayLike<number>, hours: number[]): number[] {
  const sum = new Float64Array(8);
  const count = new Float64Array(8);
  for (const h of hours) {
    const part = Math.floor((h % 24) / 3);
    sum[part]! += series[h]!;
    count[part]!++;
  }
  const means = Array.from(sum, (total, part) => total / count[part]!);
  const middle = mean(means);
  return means.map((v) => v - middle);
}

/**
 * How weather behaves, quarter by quarter: spreads, quantiles of humidity, changes, day cycles. No count of wet metal.
 * @param temperatureC - hours of one year or several [°C]
 * @param vapourPa - the same hours [Pa]
 * @returns one set of statistics for each quarter of the year
 */
export function weatherStatistics(temperatureC: ArrayLike<number>, vapourPa: ArrayLike<number>): Statistics[] {
  const hours = temperatureC.length;
  const dew = Float64Array.from({ length: hours }, (_, h) => dewPoint(vapourPa[h]!));
  const rh = Float64Array.from(
    { length: hours },
    (_, h) => (100 * vapourPa[h]!) / readTable(WATER_TABLE, temperatureC[h]!),
  );
  return QUARTERS.map((months) => {
    const chosen: number[] = [];
    for (let h = 6; h < hours; h++) if (months.includes(MONTH_OF_HOUR[h % HOURS_PER_YEAR]!)) chosen.push(h);
    const out: Statistics = {};
    const humidity = Float64Array.from(chosen, (h) => rh[h]!).sort();
    for (const p of [0.05, 0.2, 0.5, 0.8, 0.9, 0.97]) out[`humidityQuantile ${p}`] = quantile(humidity, p);
    for (const over of [80, 90])
      out[`humidityShare ${over}`] = humidity.filter((v) => v > over).length / humidity.length;
    const change = (series: ArrayLike<number>, back: number) => chosen.map((h) => series[h]! - series[h - back]!);
    for (const back of [1, 3, 6]) {
      const [warm, moist] = [change(temperatureC, back), change(dew, back)];
      out[`spread temperature ${back} h`] = spread(warm);
      out[`spread dew point ${back} h`] = spread(moist);
      if (back === 6) continue;
      out[`correlation ${back} h`] = correlation(warm, moist);
      out[`spread steep temperature ${back} h`] = quantile(Float64Array.from(warm).sort(), 0.99);
      out[`spread steep dew point ${back} h`] = quantile(Float64Array.from(moist).sort(), 0.98);
    }
    const days: { rh: number; range: number; dew: number; warm: number }[] = [];
    for (let d = 0; d < hours / 24; d++) {
      if (!months.includes(MONTH_OF_HOUR[24 * (d % DAYS_PER_YEAR)]!)) continue;
      const day = Array.from({ length: 24 }, (_, h) => 24 * d + h);
      const temperatures = day.map((h) => temperatureC[h]!);
      days.push({
        rh: mean(day.map((h) => rh[h]!)),
        dew: mean(day.map((h) => dew[h]!)),
        warm: mean(temperatures),
        range: Math.max(...temperatures) - Math.min(...temperatures),
      });
    }
    const humid = days.map((d) => d.rh);
    const ranges = days.map((d) => d.range);
    out['spread day humidity'] = spread(humid);
    out['spread day range'] = spread(ranges);
    out['correlation range and humidity'] = correlation(ranges, humid);
    out['correlation humidity next day'] = correlation(humid.slice(1), humid.slice(0, -1));
    out['spread dew point next day'] = spread(days.slice(1).map((d, i) => d.dew - days[i]!.dew));
    out['spread temperature next day'] = spread(days.slice(1).map((d, i) => d.warm - days[i]!.warm));
    for (const [k, v] of dayCycle(dew, chosen).entries()) out[`dewPointCycle ${k}`] = v;
    for (const [k, v] of dayCycle(rh, chosen).entries()) out[`humidityCycle ${k}`] = v;
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
