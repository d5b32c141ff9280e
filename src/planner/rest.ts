/** The rest of a machine, from its last use to its first use, seen in the store it stands in. */
import { dayIndexOf, MONTH_START } from './climate/index.ts';
import { dayNumber, isoOfDay, monthOf } from './dates.ts';
import type { IsoDate, Season } from './household.ts';
import type { PlaceContext } from './place-context.ts';

/** Water begins to freeze below 0 °C; a margin of one kelvin for what the thermometer and the model do not see. */
const FROST_C = -1;

/** Frost that has been possible for longer than this before the rest is the machine's own season, not a surprise. */
const LOOK_BACK_DAYS = 90;

export interface Rest {
  from: IsoDate;
  to: IsoDate;
  days: number;
  /** Months of the rest in order, each once, 1–12. */
  months: number[];
  /** The coldest to be reckoned with over the rest, in the store and outdoors [°C]. */
  designLowC: number;
  outdoorLowC: number;
  /**
   * First day on which the store of a typical year can reach −1 °C; undefined when it cannot during the rest. Where it can already on the
   * last day of use, the day since when it can, up to three months back.
   */
  firstFrost?: IsoDate | undefined;
  /** First day on which a typical year can get down to so many °C, in the store or outdoors; sought as `firstFrost` is. */
  firstColdOf: (where: 'store' | 'outdoors', coldC: number) => IsoDate | undefined;
}

/**
 * Looks at a rest through the store's year.
 * @param season - last and first use
 * @param context - the place
 */
export function restOf(season: Season, context: PlaceContext): Rest {
  const first = dayNumber(season.lastUse);
  const days = dayNumber(season.firstUse) - first;
  if (!(days >= 1))
    throw new RangeError(`found a rest from ${season.lastUse} to ${season.firstUse}, expected at least one day`);
  const span = Math.min(days, 365);
  const months: number[] = [];
  let designLowC = Infinity;
  let outdoorLowC = Infinity;
  for (let d = 0; d <= span; d++) {
    const iso = isoOfDay(first + d);
    const month = monthOf(iso);
    if (!months.includes(month)) months.push(month);
    designLowC = Math.min(designLowC, context.designLow.designC[month - 1]!);
    outdoorLowC = Math.min(outdoorLowC, context.outdoors.designC[month - 1]!);
  }
  const firstFrost = firstDayOf(context.designLow.typicalC, FROST_C, first, span);
  const firstColdOf: Rest['firstColdOf'] = (where, coldC) =>
    firstDayOf((where === 'store' ? context.designLow : context.outdoors).typicalC, coldC, first, span);
  return { from: season.lastUse, to: season.firstUse, days, months, designLowC, outdoorLowC, firstFrost, firstColdOf };
}

/**
 * First day of a span on which the lows of the months, drawn out to days, get down to a cold; where they have on its first day
 * already, the day since when they have, up to `LOOK_BACK_DAYS` back.
 */
function firstDayOf(lows: readonly number[], coldC: number, first: number, span: number): IsoDate | undefined {
  const isCold = (d: number) => lowOfDay(lows, dayIndexOf(isoOfDay(first + d))) <= coldC;
  let day = 0;
  while (day <= span && !isCold(day)) day += 1;
  if (day > span) return undefined;
  let back = 0;
  if (day === 0) while (back < LOOK_BACK_DAYS && isCold(-back - 1)) back += 1;
  return isoOfDay(first + day - (back < LOOK_BACK_DAYS ? back : 0));
}

/**
 * Monthly lows drawn out to a day: straight lines between the middles of the months.
 * @param lows - 12 values, January first [°C]
 * @param dayIndex - 0 to 364
 */
function lowOfDay(lows: readonly number[], dayIndex: number): number {
  const middle = (m: number) => (MONTH_START[m]! + MONTH_START[m + 1]!) / 2;
  let m = 11;
  while (m >= 0 && middle(m) > dayIndex) m -= 1;
  const before = (m + 12) % 12;
  const after = (m + 1) % 12;
  const start = m < 0 ? middle(11) - 365 : middle(m);
  const end = m === 11 ? middle(0) + 365 : middle(m + 1);
  const share = (dayIndex - start) / (end - start);
  return lows[before]! * (1 - share) + lows[after]! * share;
}
