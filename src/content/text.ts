/** A file's bytes before YAML: size, encoding, and nesting that would exhaust a parser that recurses. */
import type { Problem } from './problem.ts';

/** Largest YAML file that is read; a machine with a hundred assemblies takes some 60 kB [bytes]. */
export const MAX_BYTES = 256 * 1024;

/** Longest line; nobody writes one, and a parser may need a time that grows with its square [characters]. */
const MAX_LINE = 8_000;

/** Levels of lists and groups; the deepest field of any file has six. */
export const MAX_DEPTH = 20;

/** The first line that is too long to be meant. */
export function longLine(text: string): { line: number; length: number } | undefined {
  const rows = text.split('\n');
  const at = rows.findIndex((row) => row.length > MAX_LINE);
  return at < 0 ? undefined : { line: at + 1, length: rows[at]!.length };
}

/** The first line whose brackets or dashes nest too deep: found before the recursive parser sees them. */
export function deepLine(text: string): number | undefined {
  const lines = text.split('\n');
  let open = 0;
  for (const [i, line] of lines.entries()) {
    for (const c of line.replace(/(["']).*?\1|#.*$/g, '')) {
      if (c === '[' || c === '{') open++;
      if (c === ']' || c === '}') open = Math.max(0, open - 1);
      if (open > MAX_DEPTH * 2) return i + 1;
    }
    if (/^\s*(?:[-?] ){21,}/.test(line)) return i + 1;
  }
  return undefined;
}

/** What is wrong with a file's bytes, and where. */
export type TextFault = Pick<Problem, 'line' | 'column' | 'what' | 'fix'>;

/** A file's text, as far as it could be read, and what is wrong with it. */
export interface Decoded {
  /** Undefined where nothing more is to be said of the file. */
  text: string | undefined;
  faults: TextFault[];
}

const UTF_8 = 'Save the file again with the encoding UTF-8.';

/** A text with more of its signs unprintable is no text. */
const MOST_UNPRINTABLE = 1 / 50;

/** @param bytes - as found on disk, or text that is already decoded */
export function decode(bytes: Uint8Array | string): Decoded {
  const size = typeof bytes === 'string' ? bytes.length : bytes.byteLength;
  if (size > MAX_BYTES) {
    const what = `found a file of ${Math.round(size / 1024)} kB, expected at most ${MAX_BYTES / 1024} kB`;
    return refused({ line: 1, column: 1, what, fix: 'Split the file, or take out what does not belong in it.' });
  }
  if (typeof bytes === 'string') return readable(bytes);
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff) || isTwoByte(bytes))
    return refused({ line: 1, column: 1, what: 'found UTF-16 text, expected UTF-8', fix: UTF_8 });
  const unprintable = bytes.filter((byte) => byte < 9 || (byte > 13 && byte < 32));
  if (unprintable.length > bytes.length * MOST_UNPRINTABLE) {
    const first = bytes.findIndex((byte) => byte < 9 || (byte > 13 && byte < 32));
    const fix = 'Put a text file here, or delete this one.';
    return refused({ ...placeOfByte(bytes, first), what: 'found binary data, expected text in UTF-8', fix });
  }
  try {
    return readable(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    const what = 'found bytes that are not UTF-8, expected text in UTF-8';
    const fault = { ...placeOfByte(bytes, badByte(bytes)), what, fix: UTF_8 };
    // Most other texts of western programs are in this one; what else is wrong is told in the same run.
    const { text, faults } = readable(new TextDecoder('windows-1252').decode(bytes));
    return { text, faults: [fault, ...faults] };
  }
}

const refused = (fault: TextFault): Decoded => ({ text: undefined, faults: [fault] });

/** UTF-16 without its mark: of Latin letters every other byte is nought. */
function isTwoByte(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 400);
  const noughts = [0, 1].map((from) => start.filter((byte, i) => i % 2 === from && byte === 0).length);
  return Math.max(...noughts) > start.length / 4 && Math.min(...noughts) === 0;
}

/** Offset of the first byte that begins no sign of UTF-8. */
function badByte(bytes: Uint8Array): number {
  const begun = (end: number) =>
    new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes.subarray(0, end), { stream: true });
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    try {
      begun(middle);
      good = middle;
    } catch {
      bad = middle;
    }
  }
  // What begins a sign fails only with the byte behind it.
  return new TextEncoder().encode(begun(good)).length;
}

/** Line and sign of a byte; signs before it are counted as UTF-8 has them. */
function placeOfByte(bytes: Uint8Array, offset: number): { line: number; column: number } {
  const start = bytes.subarray(0, offset).lastIndexOf(10) + 1;
  const line = bytes.subarray(0, start).filter((byte) => byte === 10).length + 1;
  return { line, column: new TextDecoder().decode(bytes.subarray(start, offset)).length + 1 };
}

function readable(decoded: string): Decoded {
  const text = (decoded.startsWith('\ufeff') ? decoded.slice(1) : decoded).replaceAll('\r\n', '\n');
  const at = text.indexOf('\r');
  if (at < 0) return { text, faults: [] };
  const what = 'found a carriage return alone, expected lines that end in LF or CRLF';
  return refused({ ...placeIn(text, at), what, fix: 'Save the file again with line endings LF.' });
}

/** Line and sign of an offset. */
export function placeIn(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}
