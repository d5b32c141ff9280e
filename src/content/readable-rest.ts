/** What can still be read of a text that is no YAML: it without the outermost fields in which somebody slipped. */

/** A field at the margin begins what belongs to it; nothing else of a sound file stands there but entries and comments. */
const MARGIN = /^["']?[\w-]+["']?\s*:(?:\s|$)/;

/**
 * Leaves out the fields at the margin that hold the slips. A slip on a line at the margin may be one of the field above it, which
 * is left out as well; lines left out are blank, so that all others keep their numbers.
 * @param text - the file
 * @param slips - lines of the slips, from 1
 * @returns undefined where no field is left
 */
export function readableRest(text: string, slips: readonly number[]): string | undefined {
  const rows = text.split('\n');
  // Behind a mark stands another document, whose fields may be the same again.
  if (rows.some((row) => /^(?:---|\.\.\.)(?:\s|$)/.test(row))) return undefined;
  const starts = rows.flatMap((row, i) => (MARGIN.test(row) ? [i] : []));
  const blocks = starts.map((from, n) => ({ from, to: starts[n + 1] ?? rows.length }));
  const holds = ({ from, to }: (typeof blocks)[number], line: number) => from < line && line <= to;
  const broken = blocks.filter((block, n) =>
    slips.some(
      (line) =>
        holds(block, line) || (/^\S/.test(rows[line - 1] ?? '') && blocks[n + 1] && holds(blocks[n + 1]!, line)),
    ),
  );
  const isBroken = (i: number) => i < (starts[0] ?? 0) || broken.some(({ from, to }) => from <= i && i < to);
  if (broken.length === blocks.length || slips.some((line) => line <= (starts[0] ?? 0))) return undefined;
  return rows.map((row, i) => (isBroken(i) ? '' : row)).join('\n');
}
