/**
 * Self-discharge and drain over a rest.
 *
 *   dS/dt = −[ r20·2^((T − 20)/θ) + 100·I/(C·h) ]
 *
 * The bracket does not hold S, so the loss between two days is r20 times a sum of hourly factors plus the drain times the
 * hours: the sums are formed once for a store and a doubling step, and a path, a due date or a trial is then arithmetic.
 *
 * A day's value is the state at the end of that day. The battery has its start value at the end of the last day of use.
 */
import { exp, power } from '../elementary.ts';
import type { Battery } from '../household.ts';
import type { StoreYear } from '../storage/types.ts';
import { counted } from '../written.ts';
import { chemistryRow } from './chemistries.ts';
import type { Rest } from './rest.ts';

const HOURS_PER_MONTH = 720;

/** Where the battery stands: in the store, or in a room of constant temperature. */
export type Surroundings = { store: StoreYear } | { roomC: number };

/** What warmth does to a battery over a rest. */
export interface LossCurve {
  rest: Rest;
  /** Hours at 20 °C with the same self-discharge, from the end of day 0 to the end of each day [h]. */
  equivalentH: Float64Array;
  /** Mean temperature of each day [°C]. */
  temperatureC: Float64Array;
  /** Index of the day on which its lead comes off; 0 where it is off from the last use on. */
  leadOffAt: number;
}

/** Sums of the hourly factors by day of the year, kept with the store they were made from. */
const daySums = new WeakMap<Float64Array, Map<number, Float64Array>>();

function dayFactors(airC: Float64Array, doublingK: number): Float64Array {
  const byStep = daySums.get(airC) ?? new Map<number, Float64Array>();
  daySums.set(airC, byStep);
  let sums = byStep.get(doublingK);
  if (!sums) {
    const days = airC.length / 24;
    sums = new Float64Array(days);
    const k = Math.LN2 / heldStep(doublingK);
    for (let d = 0, h = 0; d < days; d++) {
      let sum = 0;
      for (const end = h + 24; h < end; h++) sum += exp(k * (airC[h]! - 20));
      sums[d] = sum;
    }
    byStep.set(doublingK, sums);
  }
  return sums;
}

/**
 * Factor by which self-discharge at a temperature exceeds that at 20 °C.
 * @param temperatureC - [°C]
 * @param doublingK - temperature step that doubles it [K]
 */
export function temperatureFactor(temperatureC: number, doublingK: number): number {
  return power(2, (temperatureC - 20) / heldStep(doublingK));
}

function heldStep(doublingK: number): number {
  if (!(doublingK >= 1 && doublingK <= 100))
    throw new RangeError(`found doubling step ${doublingK} K, expected 1 to 100 K`);
  return doublingK;
}

/**
 * The warmth a battery sees over a rest, in hours at 20 °C.
 * @param rest - days of the rest
 * @param where - store year (8760 hourly temperatures, periodic) or a room's temperature
 * @param doublingK - temperature step that doubles self-discharge [K]
 * @param leadOffAt - index of the day until which a lead stayed on that comes off
 * Source: exponential rule; the steps and their sources stand in chemistries.ts. Error: none beyond rounding (hourly sums).
 */
export function lossCurve(rest: Rest, where: Surroundings, doublingK: number, leadOffAt = 0): LossCurve {
  const equivalentH = new Float64Array(rest.days + 1);
  const temperatureC = new Float64Array(rest.days + 1);
  if ('roomC' in where) {
    const perDay = 24 * temperatureFactor(where.roomC, doublingK);
    for (let i = 0; i <= rest.days; i++) {
      equivalentH[i] = perDay * i;
      temperatureC[i] = where.roomC;
    }
  } else {
    const { airC, dayMeanC } = where.store;
    if (airC.length !== 8760) throw new RangeError(`found ${airC.length} hourly store temperatures, expected 8760`);
    const factors = dayFactors(airC, doublingK);
    temperatureC[0] = dayMeanC[rest.dayOfYear[0]!]!;
    for (let i = 1; i <= rest.days; i++) {
      const day = rest.dayOfYear[i]!;
      equivalentH[i] = equivalentH[i - 1]! + factors[day]!;
      temperatureC[i] = dayMeanC[day]!;
    }
  }
  if (!Number.isFinite(equivalentH[rest.days]!)) throw new RangeError('found a store temperature that is not a number');
  return { rest, equivalentH, temperatureC, leadOffAt };
}

/** How fast a battery loses charge, in percent of usable capacity. */
export interface LossRate {
  /** By itself at 20 °C [%/h]. */
  selfPctPerH: number;
  /** By currents drawn from it [%/h]. */
  drainPctPerH: number;
  /** By what else draws on it until its lead comes off [%/h]; absent: nothing. */
  untilOffPctPerH?: number | undefined;
}

/** The three rates that a plan runs. */
export interface LossRates {
  low: LossRate;
  expected: LossRate;
  high: LossRate;
}

/**
 * The loss rates of a battery: self-discharge and key-off drain both low, both expected, both high; the doubling step, the
 * health and the state of charge at the start are taken at their expected values on all three.
 * @param battery - battery
 * @param connected - leads on: the key-off drain counts
 */
export function lossRates(battery: Battery, connected: boolean): LossRates {
  const usableAh = battery.capacityAh * battery.health.value;
  if (!(usableAh > 0)) throw new RangeError(`found usable capacity ${usableAh} Ah, expected more than 0`);
  const management = chemistryRow(battery.chemistry).managementDrainMA;
  const rate = (key: 'low' | 'value' | 'high'): LossRate => {
    const selfPctPerH = battery.selfDischargePctPerMonth[key] / HOURS_PER_MONTH;
    const drainPctPerH = ((management + (connected ? battery.drainMA[key] : 0)) / 1000 / usableAh) * 100;
    if (!(selfPctPerH >= 0 && drainPctPerH >= 0))
      throw new RangeError(`found loss rates ${selfPctPerH} and ${drainPctPerH} %/h, expected 0 or more`);
    const untilOffPctPerH = connected ? 0 : (battery.drainMA[key] / 1000 / usableAh) * 100;
    return { selfPctPerH, drainPctPerH, ...(untilOffPctPerH > 0 && { untilOffPctPerH }) };
  };
  return { low: rate('low'), expected: rate('value'), high: rate('high') };
}

/**
 * A loss in words: "6 % a month"; beyond all there is, "all of its charge within about 9 days".
 * @param pctPerMonth - loss in 30 days [% of usable capacity]
 */
export function monthlyText(pctPerMonth: number): string {
  if (pctPerMonth < 100) return `${Math.round(pctPerMonth)} % a month`;
  return `all of its charge within about ${counted(Math.ceil(3000 / pctPerMonth), 'day')}`;
}

/**
 * Loss from the end of one day to the end of a later one.
 * @param from - index of the earlier day in the rest
 * @param to - index of the later day
 * @returns [% of usable capacity]
 */
export function lossPct(curve: LossCurve, rate: LossRate, from: number, to: number): number {
  const leadOnDays = Math.min(to, curve.leadOffAt) - Math.min(from, curve.leadOffAt);
  return (
    rate.selfPctPerH * (curve.equivalentH[to]! - curve.equivalentH[from]!) +
    rate.drainPctPerH * 24 * (to - from) +
    (rate.untilOffPctPerH ?? 0) * 24 * leadOnDays
  );
}

/**
 * Loss on each day of the rest.
 * @returns one value for each day, 0 for the last day of use [% of usable capacity]
 */
export function dailyLoss(curve: LossCurve, rate: LossRate): Float64Array {
  return Float64Array.from(curve.equivalentH, (_, i) => (i === 0 ? 0 : lossPct(curve, rate, i - 1, i)));
}

/**
 * The day on which a battery left alone comes down to a state of charge.
 * @param from - index of the day at whose end it stands at `fromPct`
 * @param fromPct - [%]
 * @param downToPct - [%]
 * @returns index in the rest, after `from`; Infinity where it does not within the rest
 */
export function dayReached(curve: LossCurve, rate: LossRate, from: number, fromPct: number, downToPct: number): number {
  let [low, high] = [from + 1, curve.rest.days];
  if (!(low <= high) || fromPct - lossPct(curve, rate, from, high) > downToPct) return Number.POSITIVE_INFINITY;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (fromPct - lossPct(curve, rate, from, middle) <= downToPct) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** A day on which the state of charge is set anew. */
export interface Reset {
  index: number;
  pct: number;
  /** `charge` never lowers; `at-most` is a reading that showed less than the path. */
  kind: 'charge' | 'at-most';
}

/**
 * State of charge at the end of each day.
 * @param startPct - at the end of the last day of use [%]
 * @param resets - by rising day
 * @param kept - by day, 1 where a charger that stays on keeps it full; undefined: on none
 * @returns one value for each day, never below 0 [%]
 */
export function statePath(
  curve: LossCurve,
  rate: LossRate,
  startPct: number,
  resets: readonly Reset[],
  kept?: Uint8Array,
): Float64Array {
  const path = new Float64Array(curve.rest.days + 1);
  let [from, pct, next] = [0, startPct, 0];
  for (let i = 0; i <= curve.rest.days; i++) {
    let state = Math.max(0, pct - lossPct(curve, rate, from, i));
    for (; next < resets.length && resets[next]!.index <= i; next++) {
      const reset = resets[next]!;
      state = reset.kind === 'charge' ? Math.max(state, reset.pct) : Math.min(state, reset.pct);
      [from, pct] = [i, state];
    }
    if (kept?.[i]) [from, pct, state] = [i, 100, 100];
    path[i] = state;
  }
  return path;
}
