/** The rows of a content file as a person means them: fields, entries and text, whatever a parser would make of them. */

/** A field, an entry's dash, or text that is neither. */
export interface Mark {
  kind: 'entry' | 'field' | 'text';
  /** Spaces before it; after a dash its place in the row. */
  indent: number;
  /** The field's name; of text its first word. */
  name: string;
  /** What stands behind the colon; of text the whole of it. */
  value: string;
}

export interface Row {
  /** Counted from 1. */
  line: number;
  indent: number;
  /** From the outside in: "- id: seat" is an entry and a field. */
  marks: readonly Mark[];
}

const FIELD = /^("[^"]*"|'[^']*'|[\w.-]+(?: [\w.-]+)*)\s*:(?=\s|$)\s*(.*)$/su;

/** True for what looks like a field or an entry. */
export function looksLikeField(text: string): boolean {
  return /^\s*(?:- |[\w-]+\s*:(?:\s|$))/.test(text);
}

/** One row with something on it. */
export function rowOf(text: string, line: number): Row {
  const indent = text.length - text.trimStart().length;
  const marks: Mark[] = [];
  let rest = text.trimStart();
  let at = indent;
  for (let dash = /^-(?:\s+|$)/.exec(rest); dash; dash = /^-(?:\s+|$)/.exec(rest)) {
    marks.push({ kind: 'entry', indent: at, name: '', value: '' });
    at += dash[0].length;
    rest = rest.slice(dash[0].length);
  }
  const field = FIELD.exec(rest);
  if (field) marks.push({ kind: 'field', indent: at, name: field[1]!, value: withoutComment(field[2]!) });
  else if (withoutComment(rest) !== '')
    marks.push({ kind: 'text', indent: at, name: rest.split(/\s/)[0]!, value: withoutComment(rest) });
  return { line, indent, marks };
}

function withoutComment(value: string): string {
  return /^["']/.test(value) ? value.trimEnd() : value.replace(/(?:^|\s)#.*$/s, '').trimEnd();
}

/** Offset of the quote that closes the one a value begins with; -1 where none does. */
export function closingQuote(value: string): number {
  const [quote] = value;
  for (let i = 1; i < value.length; i++) {
    if (quote === '"' && value[i] === '\\') i++;
    else if (quote === "'" && value.startsWith("''", i)) i++;
    else if (value[i] === quote) return i;
  }
  return -1;
}

/** A bracket that goes with no other: which, where, and the one that is open there. */
export interface Bracket {
  sign: string;
  at: number;
  open: string;
}

/**
 * The brackets of a value that begins with one.
 * @returns those still open at its end, outermost first; the first that closes none, or what else ends the reading
 */
export function bracketsOf(value: string): {
  open: Bracket[];
  wrong?: Bracket;
  /** Offset of a quote that is not closed. */
  quote?: number;
  /** Offset behind the bracket that closes the outermost. */
  end?: number;
} {
  const open: Bracket[] = [];
  for (let i = 0; i < value.length; i++) {
    const sign = value[i]!;
    if (sign === '#' && /\s/.test(value[i - 1] ?? ' ')) break;
    if ((sign === '"' || sign === "'") && /[\s[{,:]/.test(value[i - 1] ?? ' ')) {
      const end = closingQuote(value.slice(i));
      if (end < 0) return { open, quote: i };
      i += end;
    } else if (sign === '[' || sign === '{') open.push({ sign, at: i, open: '' });
    else if (sign === ']' || sign === '}') {
      const last = open.pop();
      if (last?.sign !== (sign === ']' ? '[' : '{')) return { open, wrong: { sign, at: i, open: last?.sign ?? '' } };
      if (open.length === 0 && !/[\]}]/.test(value.slice(i + 1))) return { open, end: i + 1 };
    }
  }
  return { open };
}
