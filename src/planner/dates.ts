/**
 * Calendar dates as ISO text ("2026-10-25"), reckoned on the civil calendar without any clock or time zone.
 *
 * ISO dates of the years 0000–9999 compare as text. Days are counted from 1970-01-01 by `Date.UTC`, which is pure
 * arithmetic on the proleptic Gregorian calendar (ECMAScript, "Time Values and Time Range").
 */
import type { IsoDate, Weekday } from './household.ts';

const DAY_MS = 86_400_000;
const WEEKDAYS: readonly Weekday[] = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

/**
 * Number of days from 1970-01-01 to a date.
 * @param iso - calendar date, "YYYY-MM-DD"
 * @returns whole days, negative before 1970 [d]
 */
export function dayNumber(iso: IsoDate): number {
  const met = numbers.get(iso);
  if (met !== undefined) return met;
  const ms = Date.UTC(Number(iso.slice(0, 4)), Number(iso.slice(5, 7)) - 1, Number(iso.slice(8, 10)));
  if (!(Number.isFinite(ms) && iso.length === 10))
    throw new RangeError(`found "${iso}", expected a date such as 2026-10-25`);
  const day = ms / DAY_MS;
  if (numbers.size < TEXTS_MOST) numbers.set(iso, day);
  return day;
}

/**
 * The date of a day number, the inverse of `dayNumber`.
 * @param day - whole days from 1970-01-01 [d]
 */
export function isoOfDay(day: number): IsoDate {
  const met = texts.get(day);
  if (met !== undefined) return met;
  const text = new Date(day * DAY_MS).toISOString().slice(0, 10);
  if (texts.size < TEXTS_MOST) texts.set(day, text);
  return text;
}

/** Dates already written out: a plan asks for the same few hundred days ten thousand times. */
const texts = new Map<number, IsoDate>();
const numbers = new Map<IsoDate, number>();
const TEXTS_MOST = 20_000;

/** A date some days later (earlier when `days` is negative) [d]. */
export function addDays(iso: IsoDate, days: number): IsoDate {
  return isoOfDay(dayNumber(iso) + days);
}

/**
 * A date some calendar months later; a day that the month lacks becomes its last day (31 January + 1 month = 28 February).
 * @param months - whole months, negative for earlier
 */
export function addMonths(iso: IsoDate, months: number): IsoDate {
  const total = Number(iso.slice(0, 4)) * 12 + Number(iso.slice(5, 7)) - 1 + months;
  const year = Math.floor(total / 12);
  const month = total - year * 12;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const last = month === 1 && leap ? 29 : MONTH_DAYS[month]!;
  const day = Math.min(Number(iso.slice(8, 10)), last);
  return `${String(year).padStart(4, '0')}-${two(month + 1)}-${two(day)}`;
}

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const two = (n: number) => (n < 10 ? `0${n}` : String(n));

/** Days from `from` to `to`; negative when `to` is earlier [d]. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return dayNumber(to) - dayNumber(from);
}

/** Every date from `from` to `to`, both included; empty when `to` is earlier. */
export function eachDay(from: IsoDate, to: IsoDate): IsoDate[] {
  const first = dayNumber(from);
  return Array.from({ length: Math.max(0, dayNumber(to) - first + 1) }, (_, i) => isoOfDay(first + i));
}

/** The month of a date, 1–12. */
export function monthOf(iso: IsoDate): number {
  return Number(iso.slice(5, 7));
}

/** The day of the week of a date. */
export function weekdayOf(iso: IsoDate): Weekday {
  return WEEKDAYS[(((dayNumber(iso) + 4) % 7) + 7) % 7]!;
}

/** The earlier of two dates. */
export function earlier(a: IsoDate, b: IsoDate): IsoDate {
  return a <= b ? a : b;
}

/** The later of two dates. */
export function later(a: IsoDate, b: IsoDate): IsoDate {
  return a >= b ? a : b;
}
