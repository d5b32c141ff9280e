/** A file's bytes before YAML: encoding, tabs, and nesting that would exhaust a parser that recurses. */
import { CST, LineCounter, Parser } from 'yaml';
import { codeOf, type Problem } from './problem.ts';

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

export function decode(bytes: Uint8Array | string): { text: string } | Pick<Problem, 'line' | 'what' | 'fix'> {
  const size = typeof bytes === 'string' ? bytes.length : bytes.byteLength;
  if (size > MAX_BYTES) {
    return {
      line: 1,
      what: `found a file of ${Math.round(size / 1024)} kB, expected at most ${MAX_BYTES / 1024} kB`,
      fix: 'Split the file, or take out what does not belong in it.',
    };
  }
  if (typeof bytes === 'string') return readable(bytes);
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) {
    return { line: 1, what: 'found UTF-16 text, expected UTF-8', fix: 'Save the file again with the encoding UTF-8.' };
  }
  const nul = bytes.indexOf(0);
  if (isTwoByte(bytes)) {
    return { line: 1, what: 'found UTF-16 text, expected UTF-8', fix: 'Save the file again with the encoding UTF-8.' };
  }
  if (nul >= 0) {
    return {
      line: lineOfByte(bytes, nul),
      what: 'found binary data, expected text in UTF-8',
      fix: 'Put a text file here, or delete this one.',
    };
  }
  try {
    return readable(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return {
      line: lineOfByte(bytes, badByte(bytes)),
      what: 'found bytes that are not UTF-8, expected text in UTF-8',
      fix: 'Save the file again with the encoding UTF-8.',
    };
  }
}

/** UTF-16 without its mark: of Latin letters every other byte is nought. */
function isTwoByte(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 400);
  const noughts = [0, 1].map((from) => start.filter((byte, i) => i % 2 === from && byte === 0).length);
  return Math.max(...noughts) > start.length / 4 && Math.min(...noughts) === 0;
}

/** Offset of the first byte at which strict decoding fails. */
function badByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, middle), { stream: true });
      good = middle;
    } catch {
      bad = middle;
    }
  }
  return good;
}

function lineOfByte(bytes: Uint8Array, offset: number): number {
  let line = 1;
  for (let i = 0; i < offset; i++) if (bytes[i] === 10) line++;
  return line;
}

function readable(decoded: string): { text: string } | Pick<Problem, 'line' | 'what' | 'fix'> {
  const text = (decoded.startsWith('\ufeff') ? decoded.slice(1) : decoded).replaceAll('\r\n', '\n');
  const at = text.search(/(?![\t\n])\p{Cc}/u);
  if (at < 0) return { text };
  const code = text.charCodeAt(at);
  const line = text.slice(0, at).split('\n').length;
  if (code === 13)
    return {
      line,
      what: 'found a carriage return alone, expected lines that end in LF or CRLF',
      fix: 'Save the file again with line endings LF.',
    };
  return {
    line,
    what: `found the control character ${codeOf(text[at]!)}, expected printable text`,
    fix: 'Delete that character.',
  };
}

/** Lines indented by anything but spaces; within quotes or a block of text that is part of the text. */
export function tabProblems(file: string, text: string): Problem[] {
  const suspect = text.split('\n').flatMap((line, i) => {
    const tab = /^ *([\t\u00a0\u2000-\u200b\u202f\u3000])/u.exec(line);
    return tab && line.trim() !== '' ? [{ line: i + 1, column: tab[0].length, sign: tab[1]! }] : [];
  });
  if (suspect.length === 0) return [];
  const inText = linesWithinText(text);
  return suspect
    .filter(({ line }) => !inText.has(line))
    .map(({ line, column, sign }) => ({
      file,
      line,
      column,
      field: '',
      what: `found ${sign === '\t' ? 'a tab' : `a space of another kind (${codeOf(sign)})`} before the text, expected spaces`,
      fix: sign === '\t' ? 'Indent with two spaces for each level.' : 'Delete it, and type the spaces on the keyboard.',
    }));
}

/** Numbers of the lines that begin within a quoted value or a block of text. */
function linesWithinText(text: string): Set<number> {
  const lines = new LineCounter();
  const within = new Set<number>();
  const look = (token: CST.Token | null | undefined) => {
    if (!token || !('source' in token) || !/^(?:double-quoted|single-quoted|block)-scalar$/.test(token.type)) return;
    const head = token.type === 'block-scalar' ? token.props.map((part) => ('source' in part ? part.source : '')) : [];
    const first = lines.linePos(token.offset).line;
    const last = lines.linePos(token.offset + head.join('').length + token.source.length - 1).line;
    for (let line = first + 1; line <= last; line++) within.add(line);
  };
  for (const token of new Parser(lines.addNewLine).parse(text))
    if (token.type === 'document')
      CST.visit(token, ({ key, value }) => {
        look(key);
        look(value);
      });
  return within;
}
