/** Where the person slipped who wrote a text that is no YAML: read row by row, since the parser tells where it lost the thread. */
import { Levels, type Names, type Slip } from './levels.ts';
import { printable } from './problem.ts';
import { rowSlip } from './row-slips.ts';
import { bracketsOf, closingQuote, looksLikeField, type Mark, rowOf } from './rows.ts';

/**
 * The slips of a text that the parser refused, in the order of its lines.
 * @param names - of the fields that there are
 * @returns none where all rows are as they should be, seen one by one
 */
export function slipsOf(text: string, names: Names): Slip[] {
  const rows = text.split('\n');
  // A file in brackets has no levels; what the parser says of it is as good.
  if (/^(?:\s*(?:#.*)?\n)*\s*[[{]/.test(text)) return [];
  const levels = new Levels(names);
  const { slips } = levels;
  let isCut = false;
  for (let i = 0; i < rows.length; i++) {
    const line = i + 1;
    let row = rows[i]!;
    if (/^\s*(?:#.*)?$/.test(row)) continue;
    if (/^(?:---|\.\.\.)(?:\s|$)/.test(row)) {
      // The first is told; what follows it is another document, or the rest of this one.
      if (!isCut) slips.push(...documentMark(rows, i));
      isCut ||= slips.some((slip) => slip.line === line);
      continue;
    }
    const own = levels.goesOn(rowOf(row, line)) && !looksLikeField(row) ? undefined : rowSlip(row);
    if (own) {
      slips.push({ line, column: row.search(/\S/) + 1, what: own.what, fix: own.fix });
      if (own.meant === undefined) continue;
      row = own.meant;
    }
    const read = rowOf(row, line);
    if (levels.goesOn(read)) continue;
    levels.take(read);
    const mark = read.marks.at(-1)!;
    const { slip, rest } = valueSlip(mark, row, rows, i);
    if (slip) slips.push(slip);
    i += rest;
  }
  return slips.sort((a, b) => a.line - b.line || a.column - b.column);
}

/** A line that ends the document: at the end of the file it says nothing, elsewhere it cuts the file in two. */
function documentMark(rows: readonly string[], at: number): Slip[] {
  const isRow = (row: string) => !/^\s*(?:#.*)?$/.test(row) && !/^(?:---|\.\.\.)\s*$/.test(row);
  const names = (part: readonly string[]) => part.flatMap((row) => /^([\w-]+):/.exec(row)?.[1] ?? []);
  const [before, after] = [rows.slice(0, at), rows.slice(at + 1)];
  if (!before.some(isRow)) return [];
  const sign = rows[at]!.trimEnd();
  const tell = (what: string, fix: string) => [{ line: at + 1, column: 1, what, fix }];
  if (!after.some(isRow))
    return sign === '...' ? [] : tell(`found "${sign}" at the end of the file, expected nothing`, 'Delete the line.');
  const again = names(after).some((name) => names(before).includes(name));
  return tell(
    `found a second document after "${printable(sign)}", expected one thing per file`,
    again
      ? 'Put what follows into a file of its own, and delete this line.'
      : 'Delete this line: it cuts the file in two.',
  );
}

/** What is wrong with quotes and brackets of a value, and how many further rows it takes. */
function valueSlip(
  { kind, value, name }: Mark,
  row: string,
  rows: readonly string[],
  at: number,
): { slip?: Slip | undefined; rest: number } {
  const column = row.lastIndexOf(value) + 1;
  const tell = (offset: number, what: string, fix: string) => ({ line: at + 1, column: column + offset, what, fix });
  if (/^[|>][-+\d]*$/.test(value)) return blockSlip(row, rows, at, name);
  if (/^["']/.test(value)) return quoteSlip(value, rows, at, tell);
  if (/^[[{]/.test(value)) return bracketSlip(value, row, rows, at, tell);
  const colon = kind === 'field' ? value.search(/:(?:\s|$)/) : -1;
  if (colon >= 0) {
    const before = value.slice(0, colon).split(/\s/).at(-1)!;
    const what = `found a second colon on the line, after "${before}", expected one field on each line`;
    const fix = `Put the value in quotes: ${quoted(value)}; or begin a new line, if another field begins there.`;
    return { slip: tell(colon, what, fix), rest: 0 };
  }
  if (kind === 'field' && /^[-?](?:\s|$)/.test(value)) {
    const text = value.slice(1).trim();
    const fix =
      text === ''
        ? 'Write the value, or delete the line.'
        : `Put it in quotes: ${quoted(value)}; an entry of a list goes into brackets: [${text}].`;
    return { slip: tell(0, `found "${value[0]}" in place of a value`, printable(fix)), rest: 0 };
  }
  const sign = /^[@`%*]/.exec(value)?.[0];
  if (sign !== undefined && kind === 'field')
    return {
      slip: tell(
        0,
        `found a value that begins with the reserved sign "${sign}"`,
        `Put it in quotes: ${quoted(value)}.`,
      ),
      rest: 0,
    };
  return { rest: 0 };
}

/** Nobody writes a longer value in brackets; looking for its end takes a time that grows with the square of its length. */
const MOST_LOOKED_AT = 4000;

type Tell = (offset: number, what: string, fix: string) => Slip;

/** Text in quotes that hold the other kind, as YAML reads it. */
function quoted(text: string): string {
  const shown = printable(text.length > 60 ? `${text.slice(0, 57)}…` : text);
  if (!/["\\]/.test(shown)) return `"${shown}"`;
  return `'${shown.replaceAll("'", "''")}'`;
}

function quoteSlip(value: string, rows: readonly string[], at: number, tell: Tell): { slip?: Slip; rest: number } {
  const sign = value[0]!;
  const end = closingQuote(value);
  if (end >= 0) {
    const behind = value.slice(end + 1);
    if (/^\s*(?:#.*)?$/.test(behind) && (behind === '' || /^\s/.test(behind))) return { rest: 0 };
    if (/^\s*,\s*$/.test(behind))
      return { slip: tell(end + 1, 'found a comma after the value, expected nothing', 'Delete the comma.'), rest: 0 };
    const twice = sign.repeat(2);
    if (value.startsWith(twice) && value.length > 4 && value.endsWith(twice))
      return {
        slip: tell(0, 'found two quotes at either end, expected one', `Write ${value.slice(1, -1)}.`),
        rest: 0,
      };
    const last = value.lastIndexOf(sign);
    const inner = last > end ? value.slice(1, last) + value.slice(last + 1) : value.replaceAll(sign, '');
    const whole = last > end ? inner : value;
    const what = `found text after a closing quote, expected the quote (${sign}) at the end of the value alone`;
    return { slip: tell(end, what, `Write ${quoted(whole)}.`), rest: 0 };
  }
  // A comment behind it is no part of the text.
  const text = value.replace(/\s+#\s.*$/, '');
  const close = { rest: 0, slip: tell(0, `found a quote (${sign}) that is not closed`, `Close it: ${text}${sign}.`) };
  // Text in quotes may run over several lines, all deeper than its field, and nothing stands behind its end.
  for (let i = at + 1; i < rows.length; i++) {
    const next = rows[i]!;
    if (looksLikeField(next) && next.search(/\S/) <= rows[at]!.search(/\S/)) return close;
    const closes = closingQuote(sign + next);
    if (closes >= 0) return /^\s*(?:#.*)?$/.test(next.slice(closes)) ? { rest: i - at } : close;
  }
  return close;
}

function bracketSlip(
  value: string,
  row: string,
  rows: readonly string[],
  at: number,
  tell: Tell,
): { slip?: Slip | undefined; rest: number } {
  const indent = row.search(/\S/);
  let whole = value;
  let i = at;
  for (; i < rows.length; i++) {
    if (whole.length > MOST_LOOKED_AT) return { rest: i - at };
    if (i > at) {
      // Inside brackets a field may begin a line, but none as far left as the value's own.
      if (looksLikeField(rows[i]!) && rows[i]!.search(/\S/) <= indent) break;
      whole += `\n${rows[i]}`;
    }
    const { open, wrong, quote, end } = bracketsOf(whole);
    if (quote !== undefined && i === at)
      return {
        slip: tell(
          quote,
          `found a quote (${value[quote]}) that is not closed`,
          'Close it before the comma or bracket that ends the value.',
        ),
        rest: 0,
      };
    if (i === at && end !== undefined && !/^\s*(?:,?\s*|\s#.*)$/.test(value.slice(end)))
      return {
        slip: tell(end, 'found text after a closing bracket', `Put the value in quotes: ${quoted(value)}.`),
        rest: 0,
      };
    if (wrong && i === at) {
      const what =
        wrong.open === ''
          ? `found "${wrong.sign}" that closes nothing`
          : `found "${wrong.sign}" where "${wrong.open}" is open`;
      const fix = wrong.open === '' ? 'Delete it.' : `Write "${wrong.open === '[' ? ']' : '}'}".`;
      return { slip: tell(wrong.at, what, fix), rest: 0 };
    }
    if (wrong || open.length === 0) return { slip: i === at ? emptySlip(value, tell) : undefined, rest: i - at };
  }
  const first = bracketsOf(value).open[0] ?? { sign: value[0]!, at: 0 };
  const closing = first.sign === '[' ? ']' : '}';
  const rest = i - at - 1;
  const here = `Close it with "${closing}": ${value}${first.sign === '{' ? ' ' : ''}${closing}.`;
  const fix = rest === 0 ? here : `Close it with "${closing}" at the end of line ${at + 1 + rest}.`;
  return { slip: tell(first.at, `found "${first.sign}" that is not closed`, fix), rest };
}

/** Two commas between which nothing stands. */
function emptySlip(value: string, tell: Tell): Slip | undefined {
  const at = value.search(/(?<=[,[{]\s*),/);
  if (at < 0 || /["']/.test(value)) return undefined;
  return tell(at, 'found a comma before which nothing stands, expected an entry', 'Delete the comma.');
}

/** A block of text stands deeper than its field. */
function blockSlip(row: string, rows: readonly string[], at: number, name: string): { slip?: Slip; rest: number } {
  const indent = row.search(/\S/);
  let end = at + 1;
  while (end < rows.length && (rows[end]!.trim() === '' || rows[end]!.search(/\S/) > indent)) end++;
  const next = rows[at + 1] ?? '';
  if (end > at + 1 || looksLikeField(next) || next.trim() === '') return { rest: end - at - 1 };
  const what = `found the text of "${name}" as deep as its field, expected it deeper`;
  return {
    slip: {
      line: at + 2,
      column: next.search(/\S/) + 1,
      what,
      fix: `Indent the text by ${indent + 2} spaces or more.`,
    },
    rest: 1,
  };
}
