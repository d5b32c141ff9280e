import { dailyCurves, normalsOf } from '../climate/index.ts';
import type { Climate } from '../climate/types.ts';
import { dayNumber, isoOfDay } from '../dates.ts';
import type { Household } from '../household.ts';
import { formatOne } from '../units/index.ts';

/** Warm enough to wash and to dry off: mean daily maximum above this. Common practice. */
const WARM_C = 5;

/** The day that washing needs, in words: "dry day above 5 °C". */
export const dryDay = (units: Household['units']) => `dry day above ${formatOne(WARM_C, '°C', units)}`;

/** Precipitation of a usual wet day, for want of a count of wet days [mm]. Common practice: 5–8 mm in temperate places. */
const WET_DAY_MM = 6;

/** Share of dry days from which on a month's days are called usually dry. */
const USUALLY_DRY = 0.4;

/**
 * Whether a dry day above 5 °C is usual at a time of the year: it says nothing of any one day.
 *
 * Warm: the normal daily maximum of the date is above 5 °C. Dry: the month's precipitation over a usual wet day's leaves at
 * least two days in five without; a place without precipitation figures is judged by warmth alone.
 * @param climate - of the place
 * @returns a function of the day number that says so
 * Valid: monthly normals; an hourly year is judged by its own months.
 * Error: the number of wet days is a guess from the month's sum.
 */
export function usuallyDryAndWarm(climate: Climate): (day: number) => boolean {
  const found = met.get(climate) ?? judged(climate);
  met.set(climate, found);
  return found;
}

/** Climates judged already: a household's machines share a few, and each is planned several times. */
const met = new WeakMap<Climate, (day: number) => boolean>();

function judged(climate: Climate): (day: number) => boolean {
  const normals = normalsOf(climate);
  const curves = dailyCurves(normals);
  const byDate = new Map<string, boolean>();
  return (day) => {
    const monthDay = isoOfDay(day).slice(5);
    let usual = byDate.get(monthDay);
    if (usual === undefined) {
      usual = warm(monthDay) && dry(Number(monthDay.slice(0, 2)) - 1);
      byDate.set(monthDay, usual);
    }
    return usual;
  };

  function warm(monthDay: string): boolean {
    const plain = monthDay === '02-29' ? '02-28' : monthDay;
    return curves.maxC[dayNumber(`2001-${plain}`) - dayNumber('2001-01-01')]! > WARM_C;
  }

  function dry(month: number): boolean {
    const mm = normals.precipMm?.[month];
    if (mm === undefined) return true;
    const days = new Date(Date.UTC(2001, month + 1, 0)).getUTCDate();
    return 1 - mm / WET_DAY_MM / days >= USUALLY_DRY;
  }
}
