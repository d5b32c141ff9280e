/** One thing that is wrong in the content: where, what, and what to do about it. */
export interface Problem {
  /** Path inside the content folder, with forward slashes: "machines/juniper.yaml". */
  file: string;
  /** Counted from 1. */
  line: number;
  /** Counted from 1, in characters. */
  column: number;
  /** The field as a person would say it: "battery.chemistry", "jobs.valves.minutes", "tyres.2.pressure"; "" for the whole file. */
  field: string;
  /** "found …, expected …" */
  what: string;
  /** What to do. */
  fix: string;
}

/**
 * One problem as one line: `content/machines/juniper.yaml:12:5  battery.chemistry: found …, expected …. What to do.`
 * @param folder - name of the content folder as the user knows it
 */
export function formatProblem(problem: Problem, folder = 'content'): string {
  const place = `${folder}/${problem.file}:${problem.line}:${problem.column}`;
  const field = problem.field === '' ? '' : `${problem.field}: `;
  return `${place}  ${field}${problem.what}. ${problem.fix}`;
}

/** All problems in the order of files, then lines. */
export function sortProblems(problems: readonly Problem[]): Problem[] {
  const text = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return [...problems].sort(
    (a, b) =>
      text(a.file, b.file) || a.line - b.line || a.column - b.column || text(a.field, b.field) || text(a.what, b.what),
  );
}

/**
 * A value as it is shown in a message: short, on one line, quoted where it is text.
 */
export function shown(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'a group of lines';
  if (typeof value !== 'string') return String(value);
  const clean = printable(value);
  return `"${clean.length > 60 ? `${clean.slice(0, 57)}…` : clean}"`;
}

/** Text with every control character written out, so that a message can neither move the cursor nor hide what was found. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, codeOf);
}

/** A character by its number: "U+00A0". */
export function codeOf(character: string): string {
  return `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}

/**
 * The known word nearest to a mistyped one, if one is near enough to be meant; of two that are as near neither is.
 * @param word - as found
 * @param known - the words that would have been right
 */
export function nearest(word: string, known: readonly string[]): string | undefined {
  const lower = word.slice(0, 60).toLowerCase();
  let best: string | undefined;
  let isTie = false;
  let bestDistance = Math.max(1, Math.floor(Math.min(lower.length, 12) / 3)) + 0.5;
  for (const candidate of known) {
    const distance = editDistance(lower, candidate.toLowerCase());
    if (distance < bestDistance) [best, bestDistance, isTie] = [candidate, distance, false];
    else if (distance === bestDistance) [best, isTie] = [undefined, true];
  }
  if (isTie) return undefined;
  const begins = lower.slice(0, 5);
  const alike = begins.length >= 3 ? known.filter((k) => k.toLowerCase().startsWith(begins)) : [];
  return best ?? (begins.length >= 4 || alike.length === 1 ? alike[0] : undefined);
}

/**
 * Insertions, deletions, substitutions and swaps of neighbours that turn one word into the other.
 * Source: Damerau–Levenshtein distance in its "optimal string alignment" form.
 */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j]!, before[j - 2]! + 1);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}
