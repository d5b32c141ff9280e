/**
 * Dates, numbers and amounts as a household reads them: the only place where a value becomes text. The pages ask for their
 * household's once (format.ts); the planner page asks anew for each household it is given.
 */
import { chargeTimeText } from '../planner/charging-time.ts';
import { dayNumber, daysBetween } from '../planner/dates.ts';
import type { IsoDate, Weekday } from '../planner/household.ts';
import type { Quantity, SeasonPlan, SupplyLine } from '../planner/season-plan.ts';
import {
  decimalsIn,
  formatDifference,
  formatOne,
  formatQuantity,
  formatSupply,
  isForeign,
  lineInUnits,
  unitFor,
} from '../planner/units/index.ts';
import { durationText, englishFor, withSeparator } from '../planner/written.ts';

/** What decides how a value is written. */
export interface Manner {
  locale: string;
  clock: SeasonPlan['household']['clock'];
  units: SeasonPlan['units'];
  asOf: IsoDate;
}

/** From a Monday, 1 June 2026. */
const WEEK: readonly Weekday[] = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

const at = (iso: IsoDate) => new Date(dayNumber(iso) * 86_400_000);

/** An amount that rounds to none; nought degrees are a temperature. */
const NOTHING = /^−?0(?:[.,]0+)? [^°]/;

/** What is bought, and how much of it. */
type Bought = Pick<SupplyLine, 'what' | 'amount' | 'unit' | 'about'>;

export type Format = ReturnType<typeof formatOf>;

/**
 * The ways of writing of one household.
 * @param manner - language, clock, units, and the day from which "in 10 days" is reckoned
 */
export function formatOf({ locale, clock: clockStyle, units: system, asOf }: Manner) {
  const reader = { locale, units: system };
  const english = englishFor(locale);
  const style = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(english, { timeZone: 'UTC', calendar: 'gregory', ...options });
  const STYLES = {
    day: style({ weekday: 'short', day: 'numeric', month: 'short' }),
    year: style({ weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' }),
    plain: style({ day: 'numeric', month: 'short', year: 'numeric' }),
    short: style({ day: 'numeric', month: 'short' }),
    month: style({ month: 'long', year: 'numeric' }),
    monthName: style({ month: 'long' }),
    monthShort: style({ month: 'short' }),
    weekday: style({ weekday: 'short' }),
  };
  const relative = new Intl.RelativeTimeFormat(english, { numeric: 'auto' });
  const fourDigits = new Intl.NumberFormat('en', { maximumSignificantDigits: 4, useGrouping: false });
  const list = new Intl.ListFormat(english, { style: 'long', type: 'conjunction' });

  /** "Sat, 5 Dec 2026". */
  const dateText = (iso: IsoDate) => STYLES.year.format(at(iso));
  /** "Sat, 5 Dec". */
  const dayText = (iso: IsoDate) => STYLES.day.format(at(iso));
  /** "5 Dec". */
  const shortDay = (iso: IsoDate) => STYLES.short.format(at(iso));
  /** "5 Dec 2026". */
  const plainDate = (iso: IsoDate) => STYLES.plain.format(at(iso));
  /** "December 2026". */
  const monthText = (iso: IsoDate) => STYLES.month.format(at(iso));
  /** "December"; `month` 1–12. */
  const monthName = (month: number) => STYLES.monthName.format(Date.UTC(2026, month - 1, 1));
  /** "Dec"; `month` 1–12. */
  const monthShort = (month: number) => STYLES.monthShort.format(Date.UTC(2026, month - 1, 1));
  /** "Mon". */
  const weekdayName = (day: Weekday) => STYLES.weekday.format(Date.UTC(2026, 5, 1 + WEEK.indexOf(day)));
  /** "in 10 days", reckoned from the day of the plan; the page itself works it out again. */
  const fromNow = (iso: IsoDate) => relative.format(daysBetween(asOf, iso), 'day');
  /** "a, b and c". */
  const listText = (items: readonly string[]) => list.format(items);

  /** A season's name: "2026–27". */
  function seasonName(from: IsoDate, to: IsoDate): string {
    const [a, b] = [from.slice(0, 4), to.slice(0, 4)];
    return a === b ? a : `${a}–${b.slice(2)}`;
  }

  /** An amount in the household's units, the other system in brackets where both are in use. */
  const quantity = (value: number, unit: string) => formatQuantity(value, unit, reader);
  /** An amount in the household's units alone; in the same one as a larger value that it stands beside. */
  const amount = (value: number, unit: string, digits?: number, beside?: number) =>
    formatOne(value, unit, reader, digits, beside);

  /** An amount of supplies: "4", "2 cans", "64 mL", "about 3 L". */
  const supplyAmount = ({ what, amount: value, unit, about }: Bought) =>
    `${about ? 'about ' : ''}${/^(pieces?)?$/.test(unit) ? number(value) : formatSupply(value, unit, reader, what)}`;

  /** A text's own figures as the household writes numbers. */
  const figures = (text: string) => decimalsIn(text, reader);

  /** A number with four significant digits, for equations; never in another unit than its own. Words stay, a date is written. */
  function number(value: number | string): string {
    if (typeof value === 'string') return /^\d{4}-\d\d-\d\d$/.test(value) ? plainDate(value) : value;
    if (!Number.isFinite(value)) throw new RangeError(`found ${value}, expected a number that can be printed`);
    return withSeparator(fourDigits.format(value).replace('-', '−'), locale);
  }

  /**
   * A figure with four significant digits and its unit; in the household's unit where that is another one, as a larger value that
   * it stands beside.
   */
  const measuredAs = (value: number | string, unit: string, what = '', beside?: number) =>
    typeof value === 'number' && (isForeign(unit, reader) || unit === 'K')
      ? amount(value, unitFor(unit, what), undefined, beside)
      : figures(`${number(value)} ${unit}`.trim());

  /** A figure of an equation in the equation's own unit, the household's after it in brackets unless it says nothing: "0.0 US qt". */
  function measured(value: number | string, unit: string, what = ''): string {
    const difference = typeof value === 'number' && unit === 'K';
    const own = difference
      ? formatDifference(value, { ...reader, units: 'metric' })
      : figures(`${number(value)} ${unit}`.trim());
    if (typeof value !== 'number' || !isForeign(unit, reader)) return own;
    const other = difference ? formatDifference(value, reader) : amount(value, unitFor(unit, what));
    return NOTHING.test(other) ? own : `${own} (${other})`;
  }

  /** The household's unit for what is read in a unit of the plan, or in one unit or another ("km or h"). */
  const readIn = (units: string) =>
    units
      .split(' or ')
      .map((unit) => (isForeign(unit, reader) ? amount(0, unit).replace(/^\S+ /, '') : unit))
      .join(' or ');

  /** A line of a content file in the household's units. */
  const contentLine = (line: string) => lineInUnits(line, reader);

  /** The time of a charge: "12.5 h (at most 14 h)". */
  const chargeTime = (hours: number, most: number) => chargeTimeText(hours, most, locale);

  /** Hours as "1.5 h". */
  const hours = (h: number) => `${number(Math.round(h * 10) / 10)} h`;

  /** A time of day "13:00" on the household's clock. */
  function clock(text: string): string {
    if (clockStyle === '24h') return text;
    const [h = 0, m = 0] = text.split(':').map(Number);
    return `${h % 12 || 12}:${String(m).padStart(2, '0')} ${h < 12 ? 'am' : 'pm'}`;
  }

  /** Puts the amounts of a step in place of the {names} in its text. */
  function fillIn(text: string, amounts: readonly Quantity[]): string {
    return text.replaceAll(/\{([\w.-]+)\}/g, (whole, name: string) => {
      const found = amounts.find((a) => a.name === name);
      return found ? quantity(found.value, unitFor(found.unit, name)) : whole;
    });
  }

  return {
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
    figures,
    number,
    measured,
    measuredAs,
    readIn,
    contentLine,
    /** Minutes as "45 min" or "2 h 5 min". */
    duration: durationText,
    chargeTime,
    hours,
    clock,
    fillIn,
  };
}
