/** How the household of this site reads dates, numbers and amounts. */
import { formatOf } from './formats.ts';
import { season } from './season.ts';

export const format = formatOf({ ...season.household, units: season.units, asOf: season.asOf });

export const {
  dateText,
  dayText,
  shortDay,
  plainDate,
  monthText,
  monthName,
  monthShort,
  weekdayName,
  fromNow,
  listText,
  seasonName,
  quantity,
  amount,
  supplyAmount,
  number,
  duration,
  hours,
  clock,
  fillIn,
} = format;
