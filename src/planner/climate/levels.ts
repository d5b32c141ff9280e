import { log } from '../elementary.ts';
import { MONTH_OF_DAY } from './calendar.ts';
import { meanPreserving } from './curves.ts';
import { DAY_SHAPE } from './day-profile.ts';
import type { Days, Place } from './days.ts';
import { shareDays } from './days.ts';
import type { NoiseTape } from './noise.ts';
import { TABLE_LOW_C, TABLE_PER_K, WATER_TABLE } from './saturation-table.ts';
import type { MonthlyNormals } from './types.ts';
import { DAYS_PER_YEAR } from './types.ts';
import type { WeatherConstants } from './weather-model.ts';
import { ceilingTable, frontShares, WARM_FRONT_H } from './weather-model.ts';

/** Every how many days each round samples while a level is sought: coarse while it is far off, close at the end. */
const SWING_STRIDES = [7, 7, 1];
const MOIST_STRIDES = [7, 7, 1];

/**
 * Moves twelve levels toward twelve targets by the secant. The slope is learnt only from two rounds on the same sample
 * and from a move large enough that the neighbouring months, which the smooth curve ties to it, do not drown it; it is
 * kept between half and twice the first guess.
 */
class MonthlySteps {
  private readonly level: number[];
  private readonly slope: number[];
  private readonly guess: number;
  private before: { level: number; found: number }[] = [];
  private sample = 0;
  private readonly least: number;
  constructor(level: number[], slope: number, least: number) {
    this.level = level;
    this.least = least;
    this.guess = slope;
    this.slope = level.map(() => slope);
  }
  toward(target: number[], sample: number, found: (month: number) => number): void {
    const now = this.level.map((level, m) => ({ level, found: found(m) }));
    for (let m = 0; m < 12; m++) {
      const was = this.before[m];
      const { level, found: got } = now[m]!;
      if (was && sample === this.sample && Math.abs(level - was.level) > this.least) {
        const slope = (got - was.found) / (level - was.level);
        this.slope[m] = Math.min(2 * this.guess, Math.max(this.guess / 2, slope));
      }
      this.level[m] = level + (target[m]! - got) / this.slope[m]!;
    }
    this.before = now;
    this.sample = sample;
  }
}

/** Daily swing that gives back the normal distance between minimum and maximum. */
export function seekSwing(
  place: Place,
  normals: MonthlyNormals,
  tape: NoiseTape,
  day: Days,
  constants: WeatherConstants,
): void {
  const target = normals.maxC.map((t, m) => t - normals.minC[m]!);
  const level = target.map((range) => Math.max(0.3, 0.9 * range));
  const steps = new MonthlySteps(level, 0.9, 0.5);
  for (let round = 0; ; round++) {
    place.swing = meanPreserving(level).map((a) => Math.max(0.05, a));
    const stride = SWING_STRIDES[round];
    if (stride === undefined) return;
    const found = sampleRange(place, tape, day, stride, constants);
    steps.toward(target, stride, (m) => found[m]!);
    for (let m = 0; m < 12; m++) level[m] = Math.max(0.05, level[m]!);
  }
}

/** Mean daily range of each month, from a sample of days [K]. */
function sampleRange(
  place: Place,
  tape: NoiseTape,
  day: Days,
  stride: number,
  constants: WeatherConstants,
): Float64Array {
  const { quick } = tape;
  const { quickK } = constants;
  const warmShares = frontShares(WARM_FRONT_H);
  const sum = new Float64Array(12);
  const count = new Float64Array(12);
  for (let k = 1; k < day.count - 1; k += stride) {
    const y = k % DAYS_PER_YEAR;
    const swing = place.swing[y]! * day.swing[k]!;
    const noon = day.warm[k]!;
    let step = day.warm[k - 1]! - noon;
    let low = Infinity;
    let high = -Infinity;
    for (let h = 0, i = 24 * k; h < 24; h++, i++) {
      if (h === 12) step = day.warm[k + 1]! - noon;
      const t = step * warmShares[h]! + swing * DAY_SHAPE[h]! + quickK * quick[i]!;
      low = Math.min(low, t);
      high = Math.max(high, t);
    }
    sum[MONTH_OF_DAY[y]!]! += high - low;
    count[MONTH_OF_DAY[y]!]!++;
  }
  return sum.map((s, m) => s / count[m]!);
}

/** Highest and lowest monthly humidity that is sought: outdoor air never stands at its ceiling all month [%]. */
const MOST_RH_PCT = 97.5;
const LEAST_RH_PCT = 2;

const logit = (pct: number) => log(pct / (101 - pct));

/**
 * Level of moisture that gives back the normal relative humidity, with the arithmetic of the hours that are written.
 */
export function seekMoisture(
  place: Place,
  normals: MonthlyNormals,
  tape: NoiseTape,
  day: Days,
  constants: WeatherConstants,
): void {
  const target = normals.rhPct.map((rh) => logit(Math.min(MOST_RH_PCT, Math.max(LEAST_RH_PCT, rh))));
  const level = [...target];
  const steps = new MonthlySteps(level, 0.8, 0.1);
  for (let round = 0; ; round++) {
    place.moistLevel = meanPreserving(level);
    const stride = MOIST_STRIDES[round];
    shareDays(place, day, stride ?? 1);
    if (stride === undefined) return;
    const found = sampleHumidity(place, tape, day, stride, constants);
    steps.toward(target, stride, (m) => logit(Math.max(1, found[m]!)));
    for (let m = 0; m < 12; m++) level[m] = Math.min(9, level[m]!);
  }
}

/** Mean relative humidity of each month, from four hours of a day, three hours later on every other day [%]. */
function sampleHumidity(
  place: Place,
  tape: NoiseTape,
  day: Days,
  stride: number,
  constants: WeatherConstants,
): Float64Array {
  const { quick, quickMoisture } = tape;
  const { quickK, followSwing, followQuick, followQuickCold, quickMoistK } = constants;
  const ceiling = ceilingTable(constants);
  const warmShares = frontShares(WARM_FRONT_H);
  const moistShares = frontShares(constants.moistFrontH);
  const sum = new Float64Array(12);
  const count = new Float64Array(12);
  for (let k = 1; k < day.count - 1; k += stride) {
    const y = k % DAYS_PER_YEAR;
    const cold = place.cold[y]!;
    const swing = place.swing[y]! * day.swing[k]!;
    const follow = followSwing * cold * swing;
    const followed = (followQuick + followQuickCold * cold) * quickK;
    const warm = day.warm[k]!;
    const noon = place.base[y]! + warm;
    const share = day.share[k]!;
    let total = 0;
    for (let h = k % 2 === 0 ? 2 : 5; h < 24; h += 6) {
      const beside = h < 12 ? k - 1 : k + 1;
      const spell = noon + (day.warm[beside]! - warm) * warmShares[h]!;
      const q = share + (day.share[beside]! - share) * moistShares[h]!;
      const n = quick[24 * k + h]!;
      const t = spell + swing * DAY_SHAPE[h]! + quickK * n;
      const steady = spell + follow * DAY_SHAPE[h]! + followed * n + quickMoistK * quickMoisture[24 * k + h]!;
      // The nearest point of the tables is close enough for a mean.
      const at = ((t - TABLE_LOW_C) * TABLE_PER_K + 0.5) | 0;
      const e = q * WATER_TABLE[((steady - TABLE_LOW_C) * TABLE_PER_K + 0.5) | 0]!;
      total += Math.min(e, ceiling[at]!) / WATER_TABLE[at]!;
    }
    sum[MONTH_OF_DAY[y]!]! += total;
    count[MONTH_OF_DAY[y]!]!++;
  }
  return sum.map((s, m) => (100 * s) / (4 * count[m]!));
}
