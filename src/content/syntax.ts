/** The parser's complaints in the words of somebody who has to mend the file. */
import type { LineCounter, YAMLError } from 'yaml';
import { type Problem, printable } from './problem.ts';

const SYNTAX: Partial<Record<string, [string, string]>> = {
  MULTIPLE_DOCS: ['found a second document after "---", expected one thing per file', 'Put it into a file of its own.'],
  BAD_INDENT: [
    'found text indented in a way that fits no level, expected the same indent as its neighbours',
    'Line it up with the fields beside it.',
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    'found a second colon where a value was expected',
    'Put the value in quotes, or start a new line.',
  ],
  MISSING_CHAR: [
    'found a quote or bracket that is not closed',
    'Close the quote or bracket, or put the whole value in quotes.',
  ],
  UNEXPECTED_TOKEN: ['found a sign that has no meaning here', 'Put the value in quotes.'],
  BAD_SCALAR_START: ['found a value that begins with a reserved sign (@ ` % or the like)', 'Put the value in quotes.'],
  BAD_DQ_ESCAPE: ['found a backslash that begins no known escape', 'Use single quotes, or write the backslash twice.'],
  MULTILINE_IMPLICIT_KEY: [
    'found a field name that runs over a line end, expected "field: value"',
    'Add the colon, or join the lines.',
  ],
  BLOCK_IN_FLOW: ['found two fields in braces without a comma between them', 'Write { field: value, field: value }.'],
  KEY_OVER_1024_CHARS: ['found a field name of more than 1024 characters', 'Write a field name before the colon.'],
};

/** A file of another kind makes thousands of errors; the first few say it. */
const MOST_READ = 50;

const OTHER_FIX = 'Compare the line with the demo files: "field: value", deeper levels two spaces further in.';

/**
 * The problems that the parser found.
 * @param text - the file
 * @param errors - in the order of the text
 */
export function syntaxProblems(
  file: string,
  text: string,
  errors: readonly YAMLError[],
  lines: LineCounter,
): Problem[] {
  const rows = text.split('\n');
  const found = errors.slice(0, MOST_READ).map((error) => trueFault(rows, lines, error));
  // One fault often makes the parser stumble several times, there and on the next line. Where the true place is known it
  // says it; else the first does.
  const told: Fault[] = [];
  for (const fault of [...found.filter((f) => f.moved), ...found]) {
    if (!told.some((t) => Math.abs(t.line - fault.line) <= 1)) told.push(fault);
  }
  return told.slice(0, 5).map(({ line, column, code, message }) => {
    const [what, fix] = rowFault(rows[line - 1] ?? '') ??
      SYNTAX[code] ?? [`found text that is not YAML (${printable(message)})`, OTHER_FIX];
    return { file, line, column, field: '', what, fix };
  });
}

/** Rows that say by themselves what is wrong with them, whatever the parser made of them. */
const ROWS: readonly [row: RegExp, what: string, fix: string][] = [
  [
    /^(<{7}|={7}|>{7})/,
    'found the mark of two versions that were not merged',
    'Keep one of the two, and delete the marked lines.',
  ],
  [
    /^\s*(- )?[\w-]+:[^\s:/]/,
    'found no space after the colon, expected "field: value"',
    'Put a space after the colon.',
  ],
  [/^\s*(- )?[\w-]+\s*=/, 'found "=", expected a colon after the field name', 'Write "field: value".'],
  [/^\s*(- )?[\w-]+\s*[：﹕∶ː]/u, 'found a colon of another alphabet, expected ":"', 'Type the colon again.'],
  [/^\s*-[^\s-]/, 'found no space after the dash, expected "- " before each entry', 'Put a space after the dash.'],
];

function rowFault(row: string): [what: string, fix: string] | undefined {
  const found = ROWS.find(([shape]) => shape.test(row));
  return found && [found[1], found[2]];
}

interface Fault {
  line: number;
  column: number;
  code: string;
  message: string;
  moved: boolean;
}

/** The parser names the place where it lost the thread; two common faults lie elsewhere. */
function trueFault(rows: readonly string[], lines: LineCounter, error: YAMLError): Fault {
  const at = lines.linePos(error.pos[0]);
  const [line, column] = [Math.max(1, at.line), Math.max(1, at.col)];
  const row = rows[line - 1] ?? '';
  const next = rows[line] ?? '';
  const indent = (text: string) => text.length - text.trimStart().length;
  const { message } = error;
  if (rowFault(row)) return { line, column, code: error.code, message, moved: false };
  if (
    error.code === 'BLOCK_AS_IMPLICIT_KEY' &&
    !/:\s.*:\s/.test(row) &&
    indent(next) > indent(row) &&
    next.includes(':')
  ) {
    return { line: line + 1, column: indent(next) + 1, code: 'BAD_INDENT', message, moved: true };
  }
  if (error.code === 'BAD_INDENT' && message.includes('Flow')) {
    for (let i = line - 1; i >= 0 && i > line - 20; i--) {
      const open = rows[i]!.search(/[[{][^\]}]*$/);
      if (open >= 0) return { line: i + 1, column: open + 1, code: 'MISSING_CHAR', message, moved: true };
    }
  }
  return { line, column, code: error.code, message, moved: false };
}
