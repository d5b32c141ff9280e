import { MONTH_DAYS, MONTH_OF_DAY } from './calendar.ts';
import { meanPreserving } from './curves.ts';
import { DAY_SHAPE } from './day-profile.ts';
import type { NoiseTape } from './noise.ts';
import { noiseTape } from './noise.ts';
import { normalsOf, yearOfHours } from './normals.ts';
import { SURFACE_TABLE, TABLE_LOW_C, TABLE_PER_K, WATER_TABLE } from './saturation-table.ts';
import { annualRangeK, daySpreadK } from './spread.ts';
import type { Climate, EnsembleOptions, MonthlyNormals, WeatherEnsemble } from './types.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR } from './types.ts';

/*
 * Weather from monthly normals: spells of days about the smooth normal, a daily swing that clear dry days widen, quick
 * hourly changes, and moisture as a share of saturation at a steadier temperature T*, held under a ceiling.
 *
 * The forms come from eleven hourly years at ten places (Fairbanks to the Po plain). The constants were moved from there
 * to fit spreads, quantiles of humidity, hourly and daily changes and day cycles of four hourly years (Skien, Duluth,
 * Burlington, London in Ontario). Hours of condensation, frost and wetness took no part in the fit: they are the check.
 */
const W = {
  /** Spread of the quick changes of temperature [K]. */
  quickK: 1.27,
  /** How warm spells and moist spells go together: at 15 °C and more, and added at −5 °C and less. */
  warmMoist: -0.1,
  warmMoistCold: 0.48,
  /** How much a moist day narrows the daily swing, and how much the sky varies it besides (logarithmic). */
  swingMoist: 0.23,
  swingSky: 0.39,
  /** Spread of moisture (logistic), and what spring and autumn add. */
  moist: 0.57,
  moistBetween: 0.15,
  /** Share of the day's swing that T* follows at −5 °C and less; none at 15 °C and more. */
  followSwing: 0.4,
  /** Share of the quick changes that T* follows, and what cold adds. */
  followQuick: 0.04,
  followQuickCold: 0.36,
  /** Spread of the quick changes of moisture, as temperature [K]. */
  quickMoistK: 1.76,
  /** Highest humidity of outdoor air, and how far ice holds it down below 0 °C. */
  ceiling: 0.98,
  iceHold: 0.9,
};

/** Ceiling of outdoor vapour pressure by temperature [Pa]. */
const CEILING_TABLE: Float64Array = WATER_TABLE.map((w, i) => W.ceiling * (w - W.iceHold * (w - SURFACE_TABLE[i]!)));

/** Every how many days the daily swing is sampled while its level is sought. */
const SWING_STRIDE = 3;
const SWING_ROUNDS = 3;
const MOIST_ROUNDS = 4;

/** What the weather of one place needs, day by day of the year. */
interface Place {
  base: Float64Array;
  spread: Float64Array;
  /** 0 at 15 °C and more, 1 at −5 °C and less. */
  cold: Float64Array;
  swing: Float64Array;
  moistLevel: Float64Array;
}

/** What changes by the day of the ensemble; the arrays are reused from one place to the next. */
interface Days {
  count: number;
  /** Spell over the normal at noon [K]. */
  warm: Float64Array;
  /** Departure of moisture at noon (logistic). */
  moist: Float64Array;
  /** Factor on the daily swing. */
  swing: Float64Array;
  /** Share of saturation at noon. */
  share: Float64Array;
}

const daysOf = (count: number): Days => {
  const array = () => new Float64Array(count);
  return { count, warm: array(), moist: array(), swing: array(), share: array() };
};

let scratch = daysOf(0);

/** Departures of each day that do not depend on the levels still sought. */
function spreadDays(place: Place, tape: NoiseTape, day: Days): void {
  const centre = -0.5 * (W.swingMoist ** 2 + W.swingSky ** 2);
  for (let k = 0, y = 0; k < day.count; k++) {
    const cold = place.cold[y]!;
    const together = W.warmMoist + W.warmMoistCold * cold;
    const x = tape.warmth[k]!;
    const moist = together * x + Math.sqrt(1 - together * together) * tape.moisture[k]!;
    day.warm[k] = place.spread[y]! * x;
    day.moist[k] = (W.moist + W.moistBetween * 4 * cold * (1 - cold)) * moist;
    const swing = Math.exp(centre - W.swingMoist * moist + W.swingSky * tape.sky[k]!);
    day.swing[k] = swing < 0.1 ? 0.1 : Math.min(swing, 2.5);
    if (++y === DAYS_PER_YEAR) y = 0;
  }
}

/** Mean of each month over the ensemble of what spells and quick changes add to the normal [K]. */
function meanDepartures(tape: NoiseTape, day: Days): Float64Array {
  const sum = new Float64Array(12);
  for (let k = 0, y = 0, i = 0; k < day.count; k++) {
    let quick = 0;
    for (let h = 0; h < 24; h++) quick += tape.quick[i++]!;
    const before = day.warm[k === 0 ? day.count - 1 : k - 1]!;
    const after = day.warm[k === day.count - 1 ? 0 : k + 1]!;
    sum[MONTH_OF_DAY[y]!]! += day.warm[k]! * 0.75 + (before + after) * 0.125 + (W.quickK * quick) / 24;
    if (++y === DAYS_PER_YEAR) y = 0;
  }
  return sum.map((s, m) => s / (MONTH_DAYS[m]! * tape.years));
}

/** Moves twelve levels toward twelve targets by the secant, slope kept between a third and three times the first guess. */
class MonthlySteps {
  private readonly level: number[];
  private readonly slope: number[];
  private before: { level: number; found: number }[] = [];
  private readonly guess: number;
  constructor(level: number[], slope: number) {
    this.level = level;
    this.guess = slope;
    this.slope = level.map(() => slope);
  }
  toward(target: number[], found: (month: number) => number): void {
    const now = this.level.map((level, m) => ({ level, found: found(m) }));
    for (let m = 0; m < 12; m++) {
      const was = this.before[m];
      const { level, found: got } = now[m]!;
      if (was && Math.abs(level - was.level) > 1e-3) {
        const slope = (got - was.found) / (level - was.level);
        this.slope[m] = Math.min(3 * this.guess, Math.max(this.guess / 3, slope));
      }
      this.level[m] = level + (target[m]! - got) / this.slope[m]!;
    }
    this.before = now;
  }
}

/** Daily swing that gives back the normal distance between minimum and maximum, sought on a sample of days. */
function seekSwing(place: Place, normals: MonthlyNormals, tape: NoiseTape, day: Days): void {
  const target = normals.maxC.map((t, m) => t - normals.minC[m]!);
  const level = target.map((range) => Math.max(0.3, 0.9 * range));
  const steps = new MonthlySteps(level, 0.9);
  for (let round = 0; ; round++) {
    place.swing = meanPreserving(level).map((a) => Math.max(0.05, a));
    if (round === SWING_ROUNDS) return;
    const found = sampleRange(place, tape, day);
    steps.toward(target, (m) => found[m]!);
    for (let m = 0; m < 12; m++) level[m] = Math.max(0.05, level[m]!);
  }
}

/** Mean daily range of each month, from a sample of days [K]. */
function sampleRange(place: Place, tape: NoiseTape, day: Days): Float64Array {
  const sum = new Float64Array(12);
  const count = new Float64Array(12);
  for (let k = 1; k < day.count - 1; k += SWING_STRIDE) {
    const y = k % DAYS_PER_YEAR;
    const swing = place.swing[y]! * day.swing[k]!;
    const noon = day.warm[k]!;
    let rise = (noon - day.warm[k - 1]!) / 24;
    let low = Infinity;
    let high = -Infinity;
    for (let h = 0; h < 24; h++) {
      if (h === 12) rise = (day.warm[k + 1]! - noon) / 24;
      const t = rise * (h - 11.5) + swing * DAY_SHAPE[h]! + W.quickK * tape.quick[24 * k + h]!;
      if (t < low) low = t;
      if (t > high) high = t;
    }
    sum[MONTH_OF_DAY[y]!]! += high - low;
    count[MONTH_OF_DAY[y]!]!++;
  }
  return sum.map((s, m) => s / count[m]!);
}

/** Share of saturation at each noon. */
function shareDays(place: Place, day: Days): void {
  for (let k = 0; k < day.count; k++) {
    day.share[k] = 1 / (1 + Math.exp(-(place.moistLevel[k % DAYS_PER_YEAR]! + day.moist[k]!)));
  }
}

const logit = (pct: number) => Math.log(pct / (101 - pct));

/**
 * Level of moisture that gives back the normal relative humidity, sought on four hours of every day with the arithmetic
 * of writeHours.
 */
function seekMoisture(place: Place, normals: MonthlyNormals, tape: NoiseTape, day: Days): void {
  const target = normals.rhPct.map((rh) => logit(Math.min(97.5, Math.max(2, rh))));
  const level = normals.rhPct.map((rh) => logit(Math.min(97.5, Math.max(2, rh))));
  const steps = new MonthlySteps(level, 0.8);
  for (let round = 0; ; round++) {
    place.moistLevel = meanPreserving(level);
    shareDays(place, day);
    if (round === MOIST_ROUNDS) return;
    const found = sampleHumidity(place, tape, day);
    steps.toward(target, (m) => logit(Math.max(1, found[m]!)));
    for (let m = 0; m < 12; m++) level[m] = Math.min(9, level[m]!);
  }
}

/** Mean relative humidity of each month, from four hours of every day, three hours later on every other day [%]. */
function sampleHumidity(place: Place, tape: NoiseTape, day: Days): Float64Array {
  const { quick, quickMoisture } = tape;
  const sum = new Float64Array(12);
  for (let k = 0, y = 0; k < day.count; k++) {
    const kb = k === 0 ? day.count - 1 : k - 1;
    const ka = k === day.count - 1 ? 0 : k + 1;
    const swing = place.swing[y]! * day.swing[k]!;
    const cold = place.cold[y]!;
    const follow = W.followSwing * cold * swing;
    const followQuick = (W.followQuick + W.followQuickCold * cold) * W.quickK;
    const warm = day.warm[k]!;
    const noon = place.base[y]! + warm;
    const share = day.share[k]!;
    let total = 0;
    for (let h = k % 2 === 0 ? 2 : 5; h < 24; h += 6) {
      const x = (h - 11.5) / 24;
      const spell = noon + (x < 0 ? warm - day.warm[kb]! : day.warm[ka]! - warm) * x;
      const q = share + (x < 0 ? share - day.share[kb]! : day.share[ka]! - share) * x;
      const n = quick[24 * k + h]!;
      const t = spell + swing * DAY_SHAPE[h]! + W.quickK * n;
      const steady = spell + follow * DAY_SHAPE[h]! + followQuick * n + W.quickMoistK * quickMoisture[24 * k + h]!;
      const xs = (steady - TABLE_LOW_C) * TABLE_PER_K;
      const is = xs | 0;
      const e = q * (WATER_TABLE[is]! + (WATER_TABLE[is + 1]! - WATER_TABLE[is]!) * (xs - is));
      const it = ((t - TABLE_LOW_C) * TABLE_PER_K + 0.5) | 0;
      const cap = CEILING_TABLE[it]!;
      total += Math.min(e, cap) / WATER_TABLE[it]!;
    }
    sum[MONTH_OF_DAY[y]!]! += total;
    if (++y === DAYS_PER_YEAR) y = 0;
  }
  return sum.map((s, m) => (100 * s) / (4 * MONTH_DAYS[m]! * tape.years));
}

/** Writes the hours of the whole ensemble. */
function writeHours(place: Place, tape: NoiseTape, day: Days, out: WeatherEnsemble): void {
  const { temperatureC, vapourPa } = out;
  const { quick, quickMoisture } = tape;
  const days = day.count;
  for (let k = 0, y = 0, i = 0; k < days; k++) {
    const kb = k === 0 ? days - 1 : k - 1;
    const ka = k === days - 1 ? 0 : k + 1;
    const swing = place.swing[y]! * day.swing[k]!;
    const cold = place.cold[y]!;
    const follow = W.followSwing * cold * swing;
    const followQuick = (W.followQuick + W.followQuickCold * cold) * W.quickK;
    const noon = place.base[y]! + day.warm[k]!;
    const share = day.share[k]!;
    for (let half = 0; half < 2; half++) {
      const rise = (half === 0 ? day.warm[k]! - day.warm[kb]! : day.warm[ka]! - day.warm[k]!) / 24;
      const shareRise = (half === 0 ? share - day.share[kb]! : day.share[ka]! - share) / 24;
      const from = half === 0 ? -11.5 : 0.5;
      let spell = noon + rise * from;
      let q = share + shareRise * from;
      for (let h = half * 12; h < half * 12 + 12; h++, i++) {
        const shape = DAY_SHAPE[h]!;
        const n = quick[i]!;
        const t = spell + swing * shape + W.quickK * n;
        const steady = spell + follow * shape + followQuick * n + W.quickMoistK * quickMoisture[i]!;
        const xs = (steady - TABLE_LOW_C) * TABLE_PER_K;
        const is = xs | 0;
        const low = WATER_TABLE[is]!;
        const e = q * (low + (WATER_TABLE[is + 1]! - low) * (xs - is));
        const xt = (t - TABLE_LOW_C) * TABLE_PER_K;
        const it = xt | 0;
        const capLow = CEILING_TABLE[it]!;
        const cap = capLow + (CEILING_TABLE[it + 1]! - capLow) * (xt - it);
        temperatureC[i] = t;
        vapourPa[i] = Math.min(e, cap);
        spell += rise;
        q += shareRise;
      }
    }
    if (++y === DAYS_PER_YEAR) y = 0;
  }
}

function refuseNotFinite(ensemble: WeatherEnsemble, id: string): void {
  let sum = 0;
  for (let i = 0; i < ensemble.temperatureC.length; i++) sum += ensemble.temperatureC[i]! + ensemble.vapourPa[i]!;
  if (!Number.isFinite(sum)) throw new RangeError(`${id}: generated weather is not finite`);
}

const made = new WeakMap<Climate, { seed: number; ensemble: WeatherEnsemble }>();

/**
 * Years of hourly weather for a place. The last ensemble of each climate is kept; its arrays are not to be written to.
 * @param climate - normals, from which weather is drawn; or one hourly year, which is given back as it is
 * @param options - seed and years; the same give the same weather
 * @returns the hours of all years, one year after the other
 * Valid: annual range of monthly means 5 to 45 K.
 * Error: monthly mean temperature returns within 0.01 K, daily range within 0.3 K, relative humidity within 1 point
 *   (normals over 97.5 % are held to that). Real years differ from it as the report of climate checks tells.
 */
export function weatherYears(climate: Climate, options: EnsembleOptions): WeatherEnsemble {
  const { seed, years } = options;
  const kept = made.get(climate);
  if (kept && kept.seed === seed && (kept.ensemble.years === years || climate.kind === 'hourly')) return kept.ensemble;
  const ensemble =
    climate.kind === 'hourly' ? { years: 1, ...yearOfHours(climate) } : draw(climate, noiseTape(seed, years));
  refuseNotFinite(ensemble, climate.id);
  made.set(climate, { seed, ensemble });
  return ensemble;
}

function draw(climate: Climate, tape: NoiseTape): WeatherEnsemble {
  const normals = normalsOf(climate);
  const meanC = meanPreserving(normals.meanC);
  const range = annualRangeK(normals.meanC);
  const place: Place = {
    base: meanC,
    spread: meanC.map((t) => daySpreadK(range, t)),
    cold: meanC.map((t) => Math.min(1, Math.max(0, (15 - t) / 20))),
    swing: meanC,
    moistLevel: meanC,
  };
  const hours = tape.years * HOURS_PER_YEAR;
  if (scratch.count !== tape.years * DAYS_PER_YEAR) scratch = daysOf(tape.years * DAYS_PER_YEAR);
  const day = scratch;
  spreadDays(place, tape, day);
  const departure = meanPreserving(Array.from(meanDepartures(tape, day)));
  place.base = meanC.map((t, d) => t - departure[d]!);
  seekSwing(place, normals, tape, day);
  seekMoisture(place, normals, tape, day);
  const out = { years: tape.years, temperatureC: new Float64Array(hours), vapourPa: new Float64Array(hours) };
  writeHours(place, tape, day, out);
  return out;
}
