/** A battery through its rest, without the others of the household. */
import type { BatteryChemistry } from '../household.ts';
import type { BatteryPlan } from '../season-plan.ts';
import type { StoreDesignLow } from '../storage/types.ts';
import { type ChemistryRow, chemistryRow } from './chemistries.ts';
import { freezingPointC } from './freezing.ts';
import { dayReached, type LossCurve, type LossRate, lossPct, type Reset, statePath } from './loss.ts';
import type { Rest } from './rest.ts';

/**
 * What is due shortly before first use is met by the charge at start-up, not by a trip: in the last days in any case, in the last
 * fortnight where the battery goes no more than this under its threshold until then. Common practice: the battery is charged full
 * before the first start, and of two charges within a fortnight one is enough.
 */
export const TOP_UP = { days: 7, mostDays: 14, underPct: 5 };

/**
 * Index of the first day whose due charge is left to the start-up.
 * @param curve - warmth over the rest
 * @param rate - loss rate that the charges are placed by
 */
export function lastTripIndex(curve: LossCurve, rate: LossRate): number {
  const { days } = curve.rest;
  let index = days - TOP_UP.days;
  while (index > Math.max(0, days - TOP_UP.mostDays) && lossPct(curve, rate, index - 1, days) <= TOP_UP.underPct)
    index--;
  return index;
}

/**
 * The same for its first charge: what stands well under the threshold already does not wait a fortnight.
 * @param due - day on which it is due
 * @param leftPct - what it has left on the day of first use, uncharged [%]
 */
export function firstTripEnd(
  row: ChemistryRow,
  curve: LossCurve,
  rate: LossRate,
  due: number,
  leftPct: number,
): number {
  const last = lastTripIndex(curve, rate);
  return due >= last && leftPct < row.thresholdPct - TOP_UP.underPct ? curve.rest.days - TOP_UP.days : last;
}

/**
 * The days a battery by itself would be charged: each time its state comes down to the threshold.
 * @param startPct - state of charge at the end of day `from` [%]
 * @param from - index in the rest
 * @returns indices in the rest
 */
export function dueDays(row: ChemistryRow, curve: LossCurve, rate: LossRate, startPct: number, from = 0): number[] {
  const days: number[] = [];
  let due = dayReached(curve, rate, from, startPct, row.thresholdPct);
  let end = firstTripEnd(row, curve, rate, due, startPct - lossPct(curve, rate, from, curve.rest.days));
  while (due < end) {
    days.push(due);
    end = lastTripIndex(curve, rate);
    due = dayReached(curve, rate, due, row.chargeToPct, row.thresholdPct);
  }
  return days;
}

/** Charges on those days, as resets of a path. */
export function chargesOn(row: ChemistryRow, days: readonly number[]): Reset[] {
  return days.map((index) => ({ index, pct: row.chargeToPct, kind: 'charge' }));
}

export type MonthMargin = BatteryPlan['freezingByMonth'][number];

/**
 * Freezing margin by month of the rest: the cold to be survived less the freezing point at the month's lowest charge.
 * @param chemistry - chemistry
 * @param rest - days of the rest
 * @param path - state of charge by day on the high-loss path [%]
 * @param where - design low of the store by month, or the room's temperature
 */
export function freezingMonths(
  chemistry: BatteryChemistry,
  rest: Rest,
  path: Float64Array,
  where: { designLow: StoreDesignLow } | { roomC: number },
): MonthMargin[] {
  const months: MonthMargin[] = [];
  let lowest = 100;
  for (let i = 0; i <= rest.days; i++) {
    lowest = Math.min(lowest, path[i]!);
    const month = rest.month[i]!;
    if (i < rest.days && rest.month[i + 1] === month) continue;
    const designLowC = 'roomC' in where ? where.roomC : where.designLow.designC[month - 1]!;
    const typicalLowC = 'roomC' in where ? where.roomC : where.designLow.typicalC[month - 1]!;
    const point = freezingPointC(chemistry, lowest);
    months.push({ month, designLowC, typicalLowC, freezingPointC: point, marginK: designLowC - point });
    lowest = 100;
  }
  return months;
}

/** The month with the smallest margin. */
export function smallestMargin(months: readonly MonthMargin[]): { minK: number; month: number } {
  const worst = months.reduce((a, b) => (b.marginK < a.marginK ? b : a));
  return { minK: worst.marginK, month: worst.month };
}

/** Path of a battery that is charged each time it is due. */
export function alonePath(chemistry: BatteryChemistry, curve: LossCurve, rate: LossRate, startPct: number) {
  const row = chemistryRow(chemistry);
  const days = dueDays(row, curve, rate, startPct);
  return { days, path: statePath(curve, rate, startPct, chargesOn(row, days)) };
}
