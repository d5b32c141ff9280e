/** Dates and counts as the planner's texts say them: the one place where they become words. */
import type { Household, IsoDate } from './household.ts';

/** What decides how a household's texts are written. */
export type Manner = Pick<Household, 'locale' | 'units'>;

/**
 * A date as words in the household's language: "25 October 2026".
 * @param date - calendar date
 * @param locale - BCP 47 tag; one that is not known gives English
 */
export function writtenDate(date: IsoDate, locale: string): string {
  return formatterOf(locale).format(new Date(`${date}T00:00:00Z`));
}

/** Formatters are dear to make and the same for all dates of a household. */
const formatters = new Map<string, Intl.DateTimeFormat>();

function formatterOf(locale: string): Intl.DateTimeFormat {
  const known = formatters.get(locale);
  if (known) return known;
  const options = { dateStyle: 'long', timeZone: 'UTC', calendar: 'gregory' } as const;
  let made: Intl.DateTimeFormat;
  try {
    made = new Intl.DateTimeFormat(locale, options);
  } catch {
    made = new Intl.DateTimeFormat('en-GB', options);
  }
  formatters.set(locale, made);
  return made;
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

/** A text that begins a sentence: "snow machine" becomes "Snow machine". */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
