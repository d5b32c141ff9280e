/** What day was meant by text that is none: other ways to write one. */

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * @param text - as found: "25.10.2026", "2026/10/25", "2026-25-10", "2026-10-25T10:00:00Z", "20261025", "25 October 2026";
 *   with signs that only look like figures and hyphens, or are not seen at all, too
 * @returns the days as content writes them, unchecked: one, two where day and month could change places, or none
 */
export function daysMeant(text: string): string[] {
  const plain = text
    .normalize('NFKC')
    .replace(/\p{Cf}/gu, '')
    .replace(/(?<=\d)\s*[\p{Pd}−]\s*(?=\d)/gu, '-')
    .trim()
    .replace(/^["'“”„‘’]+|["'“”‘’]+$/g, '');
  const [, year, month, day] =
    /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(plain) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(plain) ?? [];
  if (year && month && day) return [Number(month) > 12 ? iso(year, day, month) : iso(year, month, day)];
  // With points the day stands first; with strokes either may, and only a number over 12 tells which.
  const [, a, b, last] = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(plain) ?? [];
  if (a && b && last) return [iso(last, b, a)];
  const [, first, second, end] = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(plain) ?? [];
  if (first && second && end)
    return [...new Set([iso(end, second, first), iso(end, first, second)])].filter(
      (one) => Number(one.slice(5, 7)) <= 12,
    );
  const [, dayFirst, name, in_] =
    /^(\d{1,2})(?:(?:st|nd|rd|th)(?:\s+of)?|\.)?\s+([a-z]{3,})\.?,?\s+(\d{4})$/i.exec(plain) ?? [];
  const [, named, dayLast, of] = /^([a-z]{3,})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/i.exec(plain) ?? [];
  const at = MONTHS.indexOf((name ?? named ?? '').slice(0, 3).toLowerCase());
  return at < 0 ? [] : [iso((in_ ?? of)!, String(at + 1), (dayFirst ?? dayLast)!)];
}

function iso(year: string, month: string, day: string): string {
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}
