/** Dates and counts as the planner's texts say them: the one place where they become words. */
import type { Household, IsoDate } from './household.ts';

/** What decides how a household's texts are written. */
export type Manner = Pick<Household, 'locale' | 'units'>;

/**
 * The English in which dates stand within English texts: the reader's own, for its order of day and month, else the British one,
 * whose order most other languages share.
 * @param locale - BCP 47 tag
 * @returns "en-US" for "en-US", "en-GB" for "nb-NO"
 */
export const englishFor = (locale: string): string => (/^en(-|$)/i.test(locale) ? locale : 'en-GB');

/**
 * A date as words, in English: "25 October 2026".
 * @param date - calendar date
 * @param locale - BCP 47 tag; says the order of day and month, where it is one of English
 */
export function writtenDate(date: IsoDate, locale: string): string {
  return dateIn(formatterOf(locale, LONG), date);
}

/** The same in short, with its weekday: "Thu, 3 Dec 2026". */
export function writtenDay(date: IsoDate, locale: string): string {
  return dateIn(formatterOf(locale, SHORT), date);
}

/** The name of a month: "February"; `month` 1–12. */
export function writtenMonth(month: number, locale: string): string {
  return formatterOf(locale, MONTH).format(Date.UTC(2026, month - 1, 1));
}

const COMMON = { timeZone: 'UTC', calendar: 'gregory' } as const;
const LONG = { ...COMMON, dateStyle: 'long' } as const;
const SHORT = { ...COMMON, weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' } as const;
const MONTH = { ...COMMON, month: 'long' } as const;

/** A plan writes the same few dates hundreds of times, and writing one is dear. */
const dates = new WeakMap<Intl.DateTimeFormat, Map<IsoDate, string>>();
const DATES_MOST = 20_000;

function dateIn(formatter: Intl.DateTimeFormat, date: IsoDate): string {
  const texts = dates.get(formatter) ?? new Map<IsoDate, string>();
  dates.set(formatter, texts);
  const known = texts.get(date);
  if (known !== undefined) return known;
  const text = formatter.format(new Date(`${date}T00:00:00Z`));
  if (texts.size < DATES_MOST) texts.set(date, text);
  return text;
}

/** Formatters are dear to make and the same for all dates of a household. */
const formatters = new Map<Intl.DateTimeFormatOptions, Map<string, Intl.DateTimeFormat>>();

function formatterOf(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const ofStyle = formatters.get(options) ?? new Map<string, Intl.DateTimeFormat>();
  formatters.set(options, ofStyle);
  const known = ofStyle.get(locale);
  if (known) return known;
  let made: Intl.DateTimeFormat;
  try {
    made = new Intl.DateTimeFormat(englishFor(locale), options);
  } catch {
    made = new Intl.DateTimeFormat('en-GB', options);
  }
  ofStyle.set(locale, made);
  return made;
}

const separators = new Map<string, string>();

/**
 * A number with the sign that a language has before decimals: "7,2" for de-DE. Thousands are not parted.
 * @param text - a number with a point, or without
 * @param locale - BCP 47 tag; one that is not known keeps the point
 */
export function withSeparator(text: string, locale: string): string {
  const known = separators.get(locale) ?? separatorOf(locale);
  separators.set(locale, known);
  return text.replace('.', known);
}

function separatorOf(locale: string): string {
  try {
    const parts = new Intl.NumberFormat(locale, { numberingSystem: 'latn' }).formatToParts(1.5);
    return parts.find(({ type }) => type === 'decimal')!.value;
  } catch {
    return '.';
  }
}

/**
 * A number with what it counts: "1 day", "4 days".
 * @param n - whole number
 * @param one - the word for one
 * @param many - the word for more, where it is not the first with an "s"
 */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/**
 * A length of time: "45 min", "2 h 5 min".
 * @param minutes - rounded to whole ones [min]
 */
export function durationText(minutes: number): string {
  const whole = Math.round(minutes);
  if (!(whole >= 0 && Number.isFinite(whole))) throw new RangeError(`found ${minutes} minutes, expected 0 or more`);
  const [h, min] = [Math.floor(whole / 60), whole % 60];
  return [h > 0 ? `${h} h` : '', min > 0 || h === 0 ? `${min} min` : ''].filter(Boolean).join(' ');
}

/** "a", "a and b", "a, b and c". */
export function listText(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** A name within a sentence: "Insurance" becomes "insurance", "MOT" stays. */
export function withinSentence(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}

/** So many parts of the work are named in a title, and a step of its own no longer than this many letters. */
const PARTS_NAMED = 2;
const TITLE_MOST = 60;

/**
 * What is done in a session, in words: "wash and dry; engine oil and filter; 3 more", the parts that take longest named.
 * @param steps - in order of the work, each with the part it belongs to
 */
export function partsText(steps: readonly { part: string; title: string; minutes: number }[]): string {
  if (steps.length === 1 && steps[0]!.title.length <= TITLE_MOST) return withinSentence(steps[0]!.title);
  const minutes = new Map<string, number>();
  for (const { part, minutes: m } of steps) minutes.set(part, (minutes.get(part) ?? 0) + m);
  const all = [...minutes.keys()];
  const longest = new Set(all.toSorted((a, b) => minutes.get(b)! - minutes.get(a)!).slice(0, PARTS_NAMED));
  const named = all.filter((part) => longest.has(part) || all.length === PARTS_NAMED + 1).map(withinSentence);
  // Parts have commas of their own.
  return [...named, ...(named.length < all.length ? [`${all.length - named.length} more`] : [])].join('; ');
}

/** A text that begins a sentence: "snow machine" becomes "Snow machine". */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
