import { log } from '../elementary.ts';
import { monthMeansOfHours } from './calendar.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR } from './types.ts';
import type { WeatherConstants } from './weather-model.ts';
import { neighbourShare, WARM_FRONT_H } from './weather-model.ts';

/** Random numbers of an ensemble: the same for every place with the same seed and years. */
export interface NoiseTape {
  years: number;
  /** Spells of warm and cold, at noon of each day; the means of days have unit spread. */
  warmth: Float64Array;
  /** Spells of moist and dry, likewise. */
  moisture: Float64Array;
  /** Clear or cloudy beyond what moisture tells: one independent number a day. */
  sky: Float64Array;
  /** Quick changes of temperature, hour by hour, unit spread. */
  quick: Float32Array;
  /** Their mean in each month over all years. */
  quickMeans: number[];
  /** Quick changes of moisture, likewise. */
  quickMoisture: Float32Array;
}

/** Points of the table of normal deviates; the tails end at 3.7 spreads. */
const QUANTILES = 4096;

/**
 * Quantile of the normal distribution.
 * @param p - probability, 0 < p < 1
 * @returns deviate
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.23.
 * Error: 4.5e-4.
 */
function normalQuantile(p: number): number {
  const tail = Math.min(p, 1 - p);
  const t = Math.sqrt(-2 * log(tail));
  const x = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  return p < 0.5 ? -x : x;
}

const DEVIATES: Float64Array = (() => {
  const raw = Float64Array.from({ length: QUANTILES }, (_, i) => normalQuantile((i + 0.5) / QUANTILES));
  const spread = Math.sqrt(raw.reduce((sum, v) => sum + v * v, 0) / QUANTILES);
  return raw.map((v) => v / spread);
})();

/** Spreads a seed over 32 bits so that neighbouring seeds share nothing; never 0, where xorshift would stay. */
function scramble(seed: number): number {
  let x = (seed ^ 0x9e3779b9) | 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  x ^= x >>> 16;
  return x === 0 ? 0x6d2b79f5 : x;
}

/** Fills a series that forgets by the given factor a step, unit spread (xorshift32, 12 bits a deviate). */
function fillRemembering(out: Float64Array | Float32Array, memory: number, seed: number): void {
  const fresh = Math.sqrt(1 - memory * memory);
  let state = scramble(seed);
  let value = 0;
  for (let i = -40; i < out.length; i++) {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    value = memory * value + fresh * DEVIATES[state >>> 20]!;
    if (i >= 0) out[i] = value;
  }
}

/** Spread of the day's mean of a series given at noons, with fronts between them. */
function spreadOfDayMean(memory: number, frontH: number): number {
  const outer = neighbourShare(frontH);
  const weights = [outer, 1 - 2 * outer, outer];
  let variance = 0;
  for (let a = 0; a < 3; a++) {
    for (let b = 0; b < 3; b++) variance += weights[a]! * weights[b]! * memory ** Math.abs(a - b);
  }
  return Math.sqrt(variance);
}

/** How strongly each of the series remembers its step before, and how fast its days give way to one another. */
export type Memories = Pick<
  WeatherConstants,
  'warmMemory' | 'moistMemory' | 'quickMemory' | 'quickMoistMemory' | 'moistFrontH'
>;

let last: { key: string; tape: NoiseTape } | undefined;

/**
 * The random numbers of an ensemble. The last tape is kept, since every place of a household reads the same one.
 * @param seed - any whole number
 * @param years - years in the ensemble
 * @param memories - of the four series that remember
 * @returns the tape; the same for the same arguments
 */
export function noiseTape(seed: number, years: number, memories: Memories): NoiseTape {
  if (!Number.isInteger(seed)) throw new RangeError(`seed: ${seed} found, a whole number expected`);
  if (!(Number.isInteger(years) && years >= 1 && years <= 200)) {
    throw new RangeError(`years: ${years} found, a whole number from 1 to 200 expected`);
  }
  const { warmMemory, moistMemory, quickMemory, quickMoistMemory, moistFrontH } = memories;
  const key = [seed, years, warmMemory, moistMemory, quickMemory, quickMoistMemory, moistFrontH].join(' ');
  if (last?.key === key) return last.tape;
  const days = years * DAYS_PER_YEAR;
  const hours = years * HOURS_PER_YEAR;
  const tape: NoiseTape = {
    years,
    warmth: new Float64Array(days),
    moisture: new Float64Array(days),
    sky: new Float64Array(days),
    quick: new Float32Array(hours),
    quickMeans: [],
    quickMoisture: new Float32Array(hours),
  };
  fillRemembering(tape.warmth, warmMemory, seed * 5 + 1);
  fillRemembering(tape.moisture, moistMemory, seed * 5 + 2);
  fillRemembering(tape.sky, 0, seed * 5 + 3);
  fillRemembering(tape.quick, quickMemory, seed * 5 + 4);
  fillRemembering(tape.quickMoisture, quickMoistMemory, seed * 5 + 5);
  const warmScale = 1 / spreadOfDayMean(warmMemory, WARM_FRONT_H);
  const moistScale = 1 / spreadOfDayMean(moistMemory, moistFrontH);
  for (let d = 0; d < days; d++) {
    tape.warmth[d]! *= warmScale;
    tape.moisture[d]! *= moistScale;
  }
  tape.quickMeans = monthMeansOfHours(tape.quick);
  last = { key, tape };
  return tape;
}
