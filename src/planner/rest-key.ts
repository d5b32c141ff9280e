/** The name of a rest: what reminders and records are told apart by, from one season to the next. */
import { dayNumber, isoOfDay } from './dates.ts';
import type { IsoDate } from './household.ts';

/**
 * The name of a rest: the half-year, from May or from November, that its middle lies in.
 *
 * Rests of either hemisphere have their middle near the end of January or of July, three months from either border; the
 * middle moves half as far as the end that is moved. So dates can move by weeks and the name stays.
 * @param season - last and first use
 * @returns first month of the half-year, "2026-11"
 */
export function restKey(season: { lastUse: IsoDate; firstUse: IsoDate }): string {
  const middle = isoOfDay(Math.floor((dayNumber(season.lastUse) + dayNumber(season.firstUse)) / 2));
  const year = Number(middle.slice(0, 4));
  const month = Number(middle.slice(5, 7));
  if (month < 5) return `${year - 1}-11`;
  return month < 11 ? `${year}-05` : `${year}-11`;
}
