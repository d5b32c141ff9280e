import { dayNumber, isoOfDay } from '../dates.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR } from './types.ts';

/** Days in each month of the 365-day year, January first. */
export const MONTH_DAYS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Index of each month's first day; a thirteenth entry closes the year. */
export const MONTH_START: readonly number[] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

/** Month (0 to 11) of each of the 365 days. */
export const MONTH_OF_DAY: Uint8Array = Uint8Array.from(MONTH_DAYS.flatMap((days, month) => Array(days).fill(month)));

/** Month (0 to 11) of each of the 8760 hours. */
export const MONTH_OF_HOUR: Uint8Array = Uint8Array.from({ length: HOURS_PER_YEAR }, (_, h) =>
  Number(MONTH_OF_DAY[Math.floor(h / 24)]),
);

/**
 * Place of a calendar date in the 365-day year.
 * @param isoDate - a date as YYYY-MM-DD, or an ISO date and time
 * @returns 0 for 1 January to 364 for 31 December; 29 February is taken as 28 February
 */
export function dayIndexOf(isoDate: string): number {
  const iso = isoDate.slice(0, 10);
  if (!(/^\d{4}-\d{2}-\d{2}$/.test(iso) && isoOfDay(dayNumber(iso)) === iso))
    throw new RangeError(`date: "${isoDate}" is not a calendar date; expected YYYY-MM-DD`);
  const [month, day] = [Number(iso.slice(5, 7)), Number(iso.slice(8))];
  return MONTH_START[month - 1]! + (month === 2 ? Math.min(day, 28) : day) - 1;
}

/**
 * Calendar date of a place in the 365-day year.
 * @param dayIndex - 0 to 364
 * @param year - calendar year
 * @returns YYYY-MM-DD
 */
export function dateOfDayIndex(dayIndex: number, year: number): string {
  if (!(Number.isInteger(dayIndex) && dayIndex >= 0 && dayIndex < DAYS_PER_YEAR)) {
    throw new RangeError(`day index: ${dayIndex} is not a whole number from 0 to ${DAYS_PER_YEAR - 1}`);
  }
  const month = MONTH_OF_DAY[dayIndex]!;
  if (!(Number.isInteger(year) && year >= 0 && year <= 9999))
    throw new RangeError(`year: ${year} is not a calendar year`);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month + 1)}-${two(dayIndex - MONTH_START[month]! + 1)}`;
}

/**
 * Means by month of 365 daily values.
 * @param daily - 365 values
 * @returns 12 means, January first
 */
export function monthMeans(daily: ArrayLike<number>): number[] {
  return MONTH_DAYS.map((days, month) => {
    let sum = 0;
    for (let d = MONTH_START[month]!; d < MONTH_START[month + 1]!; d++) sum += daily[d]!;
    return sum / days;
  });
}

/**
 * Means by month of hourly values, over one year or several.
 * @param hourly - a whole number of years of 8760 values
 * @returns 12 means, January first
 */
export function monthMeansOfHours(hourly: ArrayLike<number>): number[] {
  const sum = new Float64Array(12);
  for (let h = 0, inYear = 0; h < hourly.length; h++) {
    sum[MONTH_OF_HOUR[inYear]!]! += hourly[h]!;
    if (++inYear === HOURS_PER_YEAR) inYear = 0;
  }
  const years = hourly.length / HOURS_PER_YEAR;
  return MONTH_DAYS.map((days, month) => sum[month]! / (24 * days * years));
}
