/** How long a rest is, in the words that practice uses: one home for the two borders. */
import { daysBetween } from './dates.ts';
import type { Season } from './household.ts';

/**
 * A rest shorter than this is a short one.
 * Source: petrol in a vented tank is good for about a month (oil-company fact sheets, "vehicle tank, vented: 1 month").
 */
export const SHORT_REST_DAYS = 28;

/** A rest longer than this is a long one. Common practice. */
export const LONG_REST_DAYS = 365;

/**
 * How long the rest is, in the terms of procedures.
 * @param season - last and first use
 */
export function restLength(season: Pick<Season, 'lastUse' | 'firstUse'>): 'short' | 'season' | 'long' {
  const days = daysBetween(season.lastUse, season.firstUse);
  return days < SHORT_REST_DAYS ? 'short' : days > LONG_REST_DAYS ? 'long' : 'season';
}
