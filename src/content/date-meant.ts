/** What day was meant by text that is none: other ways to write one that leave no doubt. */

/**
 * @param text - as found: "25.10.2026", "2026/10/25", "2026-4-5", "2026-10-25T10:00:00Z", " 2026-10-25 ", "20261025"
 * @returns the day as content writes it, unchecked; undefined where day and month could change places
 */
export function dateMeant(text: string): string | undefined {
  const plain = text.trim().replace(/^["'“”„‘’]+|["'“”‘’]+$/g, '');
  const [, year, month, day] =
    /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(plain) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(plain) ?? [];
  if (year && month && day) return iso(year, month, day);
  // With points the day stands first; with strokes either may, and only a number over 12 tells which.
  const [, a, b, last] = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(plain) ?? [];
  if (a && b && last) return iso(last, b, a);
  const [, first, second, end] = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(plain) ?? [];
  if (!first || !second || !end) return undefined;
  if (Number(first) > 12) return iso(end, second, first);
  return Number(second) > 12 ? iso(end, first, second) : undefined;
}

function iso(year: string, month: string, day: string): string {
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}
