import { DAYS_PER_YEAR, dayIndexOf } from '../climate/index.ts';
import { daysBetween } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { StoreYear } from '../storage/types.ts';

/**
 * Mean temperature of a store over a rest; from a year on, that of the whole year.
 * @param store - the store's normal year
 * @param from - first day
 * @param to - last day
 * @returns [°C]
 */
export function restMeanC(store: StoreYear, from: IsoDate, to: IsoDate): number {
  const first = dayIndexOf(from);
  const days = Math.min(DAYS_PER_YEAR, Math.max(1, daysBetween(from, to)));
  let sum = 0;
  for (let n = 0; n < days; n++) sum += store.dayMeanC[(first + n) % DAYS_PER_YEAR]!;
  return sum / days;
}
