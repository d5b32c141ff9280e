/** The parser's complaints in the words of somebody who has to mend the file. */
import type { LineCounter, YAMLError } from 'yaml';
import { KINDS_OF_FILES, kindOfFile } from './fields.ts';
import type { Names } from './levels.ts';
import { type Problem, printable } from './problem.ts';
import { fieldsOf } from './schema-walk.ts';
import { slipsOf } from './slips.ts';

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

/** Names of the fields that a file may have. */
export function namesIn(file: string): Names {
  return { ...NAMES, outermost: new Set(Object.keys(KINDS_OF_FILES[kindOfFile(file)].schema.shape)) };
}

/** A file with more slips is one of another kind, and a few say it. */
const MOST_SLIPS = 20;
const MOST_TOLD = 5;

const ALL = Object.values(KINDS_OF_FILES).flatMap(({ schema }) => fieldsOf(schema));
const named = (form?: 'list' | 'group') =>
  new Set(ALL.flatMap((field) => (form === undefined || field.form === form ? [field.name] : [])));
const NAMES = { all: named(), lists: named('list'), groups: named('group') };

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
  const slips = slipsOf(text, namesIn(file));
  if (slips.length > 0)
    return slips.slice(0, slips.length > MOST_SLIPS ? MOST_TOLD : MOST_SLIPS).map(({ what, fix, ...at }) => ({
      file,
      ...at,
      field: '',
      what: printable(what),
      fix: printable(fix),
    }));
  // One fault often makes the parser stumble several times, there and on the next line.
  const told: Problem[] = [];
  for (const error of errors.slice(0, MOST_READ)) {
    const { line, col } = lines.linePos(error.pos[0]);
    const [what, fix] = SYNTAX[error.code] ?? [`found text that is not YAML (${printable(error.message)})`, OTHER_FIX];
    if (!told.some((t) => Math.abs(t.line - line) <= 1))
      told.push({ file, line: Math.max(1, line), column: Math.max(1, col), field: '', what, fix });
  }
  return told.slice(0, MOST_TOLD);
}
