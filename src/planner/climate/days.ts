import { exp } from '../elementary.ts';
import { MONTH_DAYS, MONTH_OF_DAY } from './calendar.ts';
import type { NoiseTape } from './noise.ts';
import { DAYS_PER_YEAR } from './types.ts';
import type { WeatherConstants } from './weather-model.ts';
import { neighbourShare, WARM_FRONT_H } from './weather-model.ts';

/** What the weather of one place needs, by day of the year. */
export interface Place {
  /** Normal mean, less what the drawn departures add on average [°C]. */
  base: Float64Array;
  /** Day-to-day spread [K]. */
  spread: Float64Array;
  /** 0 at 15 °C and more, 1 at −5 °C and less. */
  cold: Float64Array;
  /** Daily swing of a middling day [K]. */
  swing: Float64Array;
  /** Moisture of a middling day (logistic). */
  moistLevel: Float64Array;
}

/** What changes by the day of the ensemble; the arrays are reused from one place to the next. */
export interface Days {
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

let scratch: Days | undefined;

/**
 * Arrays for so many days; the same ones as before where the number is the same.
 * @param count - days
 * @returns arrays, not cleared
 */
export function daysFor(count: number): Days {
  if (scratch?.count !== count) {
    const array = () => new Float64Array(count);
    scratch = { count, warm: array(), moist: array(), swing: array(), share: array() };
  }
  return scratch;
}

/** Departures of each day that do not depend on the levels still sought. */
export function spreadDays(place: Place, tape: NoiseTape, day: Days, constants: WeatherConstants): void {
  const { warmMoist, warmMoistCold, moist, moistBetween, swingMoist, swingSky, swingSkyCold } = constants;
  for (let k = 0, y = 0; k < day.count; k++) {
    const cold = place.cold[y]!;
    const together = warmMoist + warmMoistCold * cold;
    const x = tape.warmth[k]!;
    const z = together * x + Math.sqrt(1 - together * together) * tape.moisture[k]!;
    day.warm[k] = place.spread[y]! * x;
    day.moist[k] = (moist + moistBetween * 4 * cold * (1 - cold)) * z;
    const sky = swingSky + swingSkyCold * cold;
    const centre = -0.5 * (swingMoist * swingMoist + sky * sky);
    day.swing[k] = Math.min(2, Math.max(0.2, exp(centre - swingMoist * z + sky * tape.sky[k]!)));
    if (++y === DAYS_PER_YEAR) y = 0;
  }
}

/** Mean of each month over the ensemble of what spells and quick changes add to the normal [K]. */
export function meanDepartures(tape: NoiseTape, day: Days, constants: WeatherConstants): number[] {
  const outer = neighbourShare(WARM_FRONT_H);
  const sum = new Float64Array(12);
  for (let k = 0, y = 0; k < day.count; k++) {
    const before = day.warm[k === 0 ? day.count - 1 : k - 1]!;
    const after = day.warm[k === day.count - 1 ? 0 : k + 1]!;
    sum[MONTH_OF_DAY[y]!]! += day.warm[k]! * (1 - 2 * outer) + (before + after) * outer;
    if (++y === DAYS_PER_YEAR) y = 0;
  }
  return tape.quickMeans.map((quick, m) => sum[m]! / (MONTH_DAYS[m]! * tape.years) + constants.quickK * quick);
}

/** Share of saturation at the noons about each sampled day (every stride-th from the second), from the level now tried. */
export function shareDays(place: Place, day: Days, stride: number): void {
  const apart = Math.max(3, stride);
  for (let first = 0; first < day.count; first += apart) {
    for (let k = first; k < Math.min(first + 3, day.count); k++) {
      day.share[k] = 1 / (1 + exp(-(place.moistLevel[k % DAYS_PER_YEAR]! + day.moist[k]!)));
    }
  }
}
