/** The name of a rest: what reminders and records are told apart by, from one season to the next. */
import { addDays, dayNumber, daysBetween, isoOfDay } from './dates.ts';
import type { IsoDate, Season, Ticked } from './household.ts';

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

/** How a record knows a season: by its name, or where none is named by the first day of its record. */
export interface RecordSeason {
  key: string;
  from: IsoDate;
}

/** Work on a lay-up begins at most so long before the last use, and at least so long. Common practice. */
const EARLIEST_DAYS = 90;
const LATEST_DAYS = 14;

/**
 * The name of a season, and the day from which a record that names none is of it: between the last start-up and this lay-up.
 * @param season - last and first use
 */
export function recordSeason(season: Pick<Season, 'lastUse' | 'firstUse'>): RecordSeason {
  const inUse = 365 - daysBetween(season.lastUse, season.firstUse);
  const days = Math.round(Math.min(EARLIEST_DAYS, Math.max(LATEST_DAYS, inUse / 2)));
  return { key: restKey(season), from: addDays(season.lastUse, -days) };
}

/**
 * Whether a tick is of a season.
 * @param tick - which names its season, or has its date alone
 * @param season - as `recordSeason` has it
 */
export function isOfSeason(tick: Pick<Ticked, 'date' | 'season'>, season: RecordSeason): boolean {
  return tick.season === undefined ? tick.date >= season.from : tick.season === season.key;
}
