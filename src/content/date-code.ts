/** The date code on a tyre's sidewall, read as if it were a year. */

/**
 * What to write for a date code: two digits of the week, two of the year, on tyres made since 2000 (49 CFR 574.5, from memory).
 * @param code - as found: 3522 is the 35th week of 2022
 */
export function dateCodeFix(code: number): string | undefined {
  const week = Math.floor(code / 100);
  if (!(week >= 1 && week <= 53)) return undefined;
  return `Write ${2000 + (code % 100)}, if it is the date code: its last two digits are the year.`;
}

/** True for a code of the 19th week, which looks like a year of long ago. */
export function looksLikeCode(year: number, now: number): boolean {
  return year >= 1900 && year <= 1900 + (now % 100);
}
