/**
 * Reads one YAML text into plain data and remembers where each value stands.
 *
 * YAML 1.2 core only, and less than that: no aliases, no tags, no second document, no keys that are not text. What is left
 * is what a person writes, and nothing in it can grow (alias bombs) or surprise (a date that becomes an instant).
 */

import { LineCounter, parseDocument } from 'yaml';
import { key, type Path } from './path.ts';
import type { Problem } from './problem.ts';
import { readableRest } from './readable-rest.ts';
import { withoutSigns } from './signs.ts';
import { syntaxProblems } from './syntax.ts';
import { decode, deepLine, longLine, type TextFault } from './text.ts';
import { tooDeep, Walker } from './walker.ts';

export interface Source {
  file: string;
  /** Undefined where the text could not be read at all. */
  data: unknown;
  /** True where `data` is what can be read of a text that is no YAML: what is missing from it may well be there. */
  isPart: boolean;
  problems: Problem[];
  /** True where a value was refused and reported already, here or around it. */
  refused(path: Path): boolean;
  /** Names of the fields that a group has, whatever they say. */
  keysAt(path: Path): string[];
  /** Position of a value, or of the nearest thing around it that exists. */
  at(path: Path): { line: number; column: number };
  /** Position of the key under which a value stands. */
  atKey(path: Path): { line: number; column: number };
}

/** Problems told of one file's text: one with more is a file of another kind. */
const MOST_PROBLEMS = 200;

/**
 * Reads one file's bytes (or text) as YAML.
 * @param file - path for messages
 * @param bytes - as found on disk, or text that is already decoded
 */
export function readSource(file: string, bytes: Uint8Array | string): Source {
  const decoded = decode(bytes);
  const toProblem = (fault: TextFault): Problem => ({ file, field: '', ...fault });
  const early = decoded.faults.map(toProblem);
  if (decoded.text === undefined) return failed(file, early);
  const { text, faults } = withoutSigns(decoded.text);
  const signs = [...early, ...faults.map(toProblem)];
  const source = readText(file, text);
  // Of a text that was put right, what the parser says may come of that.
  if (signs.length > 0 && (source.data === undefined || source.isPart)) return failed(file, signs);
  return { ...source, problems: [...signs, ...source.problems] };
}

function readText(file: string, text: string, isRest = false): Source {
  const long = longLine(text);
  if (long) {
    const what = `found a line of ${long.length} characters, expected text that a person can read`;
    return failed(file, [
      { file, line: long.line, column: 1, field: '', what, fix: 'Break the line, or take it out.' },
    ]);
  }
  const directive = text.split('\n').findIndex((row) => row.startsWith('%'));
  if (directive >= 0) return failed(file, [directiveProblem(file, directive + 1)]);
  const depth = deepLine(text);
  if (depth !== undefined) return failed(file, [tooDeep(file, depth, 1, '')]);
  const lines = new LineCounter();
  try {
    return compose(file, text, lines, isRest);
  } catch (error) {
    // The parser recurses; text made to exhaust the stack ends here and not in a stack trace.
    if (error instanceof RangeError || (error as Error).name === 'InternalError')
      return failed(file, [tooDeep(file, 1, 1, '')]);
    throw error;
  }
}

function compose(file: string, text: string, lines: LineCounter, isRest: boolean): Source {
  const document = withoutStacks(() =>
    parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      version: '1.2',
      schema: 'core',
      // Checked below: the parser's own check takes a time that grows with the square of the number of fields.
      uniqueKeys: false,
      strict: true,
    }),
  );
  if (document.errors.length > 0) {
    const slips = syntaxProblems(file, text, document.errors, lines);
    return isRest ? failed(file, slips) : partOf(file, text, slips);
  }
  const walker = new Walker(file, text, lines);
  const data = walker.plain(document.contents, []);
  // Whatever is built on aliases is not what it seems; nothing more is said of such a file.
  if (walker.alias) return failed(file, [walker.alias]);
  const start = { line: 1, column: 1 };
  const near = (path: Path): { line: number; column: number } => {
    for (let length = path.length; length >= 0; length--) {
      const found = walker.positions.get(key(path.slice(0, length)));
      if (found) return length === path.length ? found.value : (found.key ?? found.value);
    }
    return start;
  };
  return {
    file,
    data,
    isPart: false,
    problems: walker.problems.slice(0, MOST_PROBLEMS),
    refused: (path) =>
      path.some((_, i) => walker.refused.has(key(path.slice(0, i + 1)))) || walker.refused.has(key([])),
    keysAt: (path) => {
      const group = path.reduce<unknown>((node, part) => (node as Record<string, unknown> | undefined)?.[part], data);
      return typeof group === 'object' && group !== null ? Object.keys(group) : [];
    },
    at: near,
    atKey: (path) => walker.positions.get(key(path))?.key ?? near(path),
  };
}

/** What can be read of a text besides where somebody slipped. */
function partOf(file: string, text: string, slips: Problem[]): Source {
  const rest = readableRest(
    text,
    slips.map(({ line }) => line),
  );
  const source = rest === undefined ? undefined : readText(file, rest, true);
  // What is still no YAML tells nothing that the slips do not.
  if (source?.data === undefined) return failed(file, slips);
  return { ...source, isPart: true, problems: [...slips, ...source.problems] };
}

/** The parser makes an error object for each fault, and a stack for each; a file of another kind has a hundred thousand. */
function withoutStacks<T>(work: () => T): T {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return work();
  } finally {
    Error.stackTraceLimit = limit;
  }
}

function failed(file: string, problems: Problem[]): Source {
  const start = () => ({ line: 1, column: 1 });
  return {
    file,
    data: undefined,
    isPart: false,
    problems,
    refused: () => true,
    keysAt: () => [],
    at: start,
    atKey: start,
  };
}

/** A directive would let another version of YAML read "yes" as true and 010 as eight. */
function directiveProblem(file: string, line: number): Problem {
  const what = 'found a line that begins with "%", expected a field';
  return { file, line, column: 1, field: '', what, fix: 'Delete the line; put a value that begins with % in quotes.' };
}
