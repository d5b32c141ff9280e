import { dayNumber, isoOfDay, weekdayOf } from '../dates.ts';
import type { Household } from '../household.ts';
import { writtenDate } from '../written.ts';

/** What of a household decides on the days, and how they are written. */
export type Days = Pick<Household, 'away' | 'hoursByWeekday' | 'locale'>;

/** The days on which somebody can go. */
export interface OpenDays {
  isOpen: (day: number) => boolean;
  isAway: (day: number) => boolean;
  nextOpen: (day: number) => number | undefined;
  hours: (day: number) => number;
  weekend: (day: number) => boolean;
  /** The day as a date in words. */
  written: (day: number) => string;
}

/**
 * Days away and weekdays without hours taken out; where no weekday has hours, the hours are left out of account.
 * @param household - days away, and hours by weekday
 */
export function openDays(household: Days): OpenDays {
  const away = household.away.map((a) => ({ from: dayNumber(a.from), to: dayNumber(a.to) }));
  const anyHours = Object.values(household.hoursByWeekday).some((h) => h > 0);
  // Asked for many times each day of the rest; days are numbered, and the week has seven.
  const week = Array.from({ length: 7 }, (_, day) => weekdayOf(isoOfDay(day)));
  const weekday = (day: number) => week[((day % 7) + 7) % 7]!;
  const hours = (day: number) => household.hoursByWeekday[weekday(day)];
  const isAway = (day: number) => away.some((a) => day >= a.from && day <= a.to);
  const isOpen = (day: number) => !isAway(day) && (!anyHours || hours(day) > 0);
  return {
    isOpen,
    isAway,
    hours,
    nextOpen: (day) => {
      for (let d = day; d < day + 3660; d++) if (isOpen(d)) return d;
      return undefined;
    },
    weekend: (day) => weekday(day) === 'saturday' || weekday(day) === 'sunday',
    written: (day) => writtenDate(isoOfDay(day), household.locale),
  };
}
