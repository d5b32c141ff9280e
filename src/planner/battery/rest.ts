import { dayNumber, isoOfDay } from '../dates.ts';
import type { IsoDate } from '../household.ts';

const MONTH_START = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/** The days of a rest: index 0 is the last day of use, index `days` the first day of use after it. */
export interface Rest {
  firstDay: number;
  days: number;
  dates: readonly IsoDate[];
  /** Place of each day in the 365-day year. */
  dayOfYear: Int16Array;
  /** Month of each day, 1–12. */
  month: Uint8Array;
}

/** Rests already laid out: the machines of a household share a few, and a trial repeats its own. */
const known = new Map<string, Rest>();
const KNOWN_AT_MOST = 256;

/**
 * Lays out a rest.
 * @param lastUse - last day of use
 * @param firstUse - first day of use after it
 * Valid: one day to ten years.
 */
export function restOf(lastUse: IsoDate, firstUse: IsoDate): Rest {
  const key = `${lastUse} ${firstUse}`;
  const found = known.get(key);
  if (found) return found;
  const firstDay = dayNumber(lastUse);
  const days = dayNumber(firstUse) - firstDay;
  if (!(days >= 1 && days <= 3660))
    throw new RangeError(
      `found last use ${lastUse} and first use ${firstUse}, expected first use 1 to 3660 days later`,
    );
  const dates = Array.from({ length: days + 1 }, (_, i) => isoOfDay(firstDay + i));
  const rest: Rest = {
    firstDay,
    days,
    dates,
    dayOfYear: Int16Array.from(dates, dayOfYear),
    month: Uint8Array.from(dates, (date) => Number(date.slice(5, 7))),
  };
  if (known.size >= KNOWN_AT_MOST) known.clear();
  known.set(key, rest);
  return rest;
}

/**
 * Place of a date in the 365-day year; 29 February is taken as 28 February.
 * @returns 0 for 1 January to 364 for 31 December
 */
export function dayOfYear(iso: IsoDate): number {
  const month = Number(iso.slice(5, 7));
  const day = Number(iso.slice(8, 10));
  return MONTH_START[month - 1]! + (month === 2 && day === 29 ? 28 : day) - 1;
}
