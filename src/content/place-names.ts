/** How names of places are compared, whoever typed them. */

/** Letters that Unicode does not take apart into a letter and its mark. */
const LETTERS: Record<string, string> = { ß: 'ss', ø: 'o', œ: 'o', æ: 'a', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' };

/**
 * A name without case, accents and punctuation: "Straße" and "strasse", "Köln" and "Koeln", "St. Cloud", "Saint Cloud" and
 * "Sankt Cloud" become the same.
 */
export function plainName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßøœæłđðþı]/g, (letter) => LETTERS[letter]!)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .replace(/([aou])e|aa/g, (pair, letter: string | undefined) => letter ?? pair[0]!)
    .replace(/\b(?:saint|sainte|sankt|sint|ste)\b/g, 'st');
}
