import { addDays, addMonths, daysBetween, later } from '../dates.ts';
import type { IsoDate, Season } from '../household.ts';

/** More years than this are not looked ahead. */
export const MOST_YEARS = 20;

/**
 * Last day of the season that follows the rest: the first yearly return of the last day of use after first use.
 * @param season - last and first use around the rest
 */
export function nextSeasonEnd(season: Season): IsoDate {
  for (let years = 1; years <= MOST_YEARS; years++) {
    const end = addMonths(season.lastUse, 12 * years);
    if (end > season.firstUse) return end;
  }
  throw new RangeError(
    `found a rest from ${season.lastUse} to ${season.firstUse}, expected one of less than ${MOST_YEARS} years`,
  );
}

/**
 * The day on which a count of kilometres or hours is used up, spread evenly over the days of use; none in the rest.
 * @param left - what may still be used [km or h]; 0 or less is due at once
 * @param perSeason - use in a season [km or h]
 * @param season - last and first use around the rest
 * @param asOf - the day on which `left` is counted
 * @returns the day; undefined when the machine is not used, or not within twenty years
 */
export function dayUsedUp(left: number, perSeason = 0, season: Season, asOf: IsoDate): IsoDate | undefined {
  if (!Number.isFinite(left)) throw new RangeError(`use left: found ${left}, expected a number`);
  if (left <= 0) return asOf;
  const seasonDays = daysBetween(season.firstUse, nextSeasonEnd(season));
  const perDay = perSeason / seasonDays;

  let rest = left;
  const use = later(asOf, addDays(season.lastUse, -seasonDays));
  const before = Math.max(0, daysBetween(use, season.lastUse));
  if (rest <= before * perDay) return addDays(use, Math.ceil(rest / perDay));
  rest -= before * perDay;
  const sinceFirst = Math.max(0, daysBetween(season.firstUse, asOf));
  for (let year = 0; year < MOST_YEARS; year++) {
    const start = addMonths(season.firstUse, 12 * year);
    const begin = year === 0 ? Math.min(sinceFirst, seasonDays) : 0;
    const days = seasonDays - begin;
    if (rest <= days * perDay) return addDays(start, begin + Math.ceil(rest / perDay));
    rest -= days * perDay;
  }
  return undefined;
}
