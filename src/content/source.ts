/**
 * Reads one YAML text into plain data and remembers where each value stands.
 *
 * YAML 1.2 core only, and less than that: no aliases, no tags, no second document, no keys that are not text. What is left
 * is what a person writes, and nothing in it can grow (alias bombs) or surprise (a date that becomes an instant).
 */

import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import { codeOf, type Problem, printable, shown } from './problem.ts';
import { syntaxProblems } from './syntax.ts';
import { decode, deepLine, longLine, MAX_DEPTH, tabProblems } from './text.ts';

export type Path = readonly (string | number)[];

export interface Source {
  file: string;
  /** Undefined where the text could not be read at all. */
  data: unknown;
  problems: Problem[];
  /** True where a value was refused and reported already, here or around it. */
  refused(path: Path): boolean;
  /** Position of a value, or of the nearest thing around it that exists. */
  at(path: Path): { line: number; column: number };
  /** Position of the key under which a value stands. */
  atKey(path: Path): { line: number; column: number };
}

/** Problems told of one file's text: one with more is a file of another kind. */
const MOST_PROBLEMS = 200;

/** Control characters, direction overrides, separators that are not new lines, and halves of pairs. */
const FORBIDDEN = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/u;

/**
 * Reads one file's bytes (or text) as YAML.
 * @param file - path for messages
 * @param bytes - as found on disk, or text that is already decoded
 */
export function readSource(file: string, bytes: Uint8Array | string): Source {
  const decoded = decode(bytes);
  if ('what' in decoded) return failed(file, [{ file, column: 1, field: '', ...decoded }]);
  const { text } = decoded;
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
  const tabs = tabProblems(file, text);
  if (tabs.length > 0) return failed(file, tabs);
  const lines = new LineCounter();
  try {
    return compose(file, text, lines);
  } catch (error) {
    // The parser recurses; text made to exhaust the stack ends here and not in a stack trace.
    if (error instanceof RangeError || (error as Error).name === 'InternalError')
      return failed(file, [tooDeep(file, 1, 1, '')]);
    throw error;
  }
}

function compose(file: string, text: string, lines: LineCounter): Source {
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
  if (document.errors.length > 0) return failed(file, syntaxProblems(file, text, document.errors, lines));
  const walker = new Walker(file, lines);
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
    problems: walker.problems.slice(0, MOST_PROBLEMS),
    refused: (path) =>
      path.some((_, i) => walker.refused.has(key(path.slice(0, i + 1)))) || walker.refused.has(key([])),
    at: near,
    atKey: (path) => walker.positions.get(key(path))?.key ?? near(path),
  };
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

class Walker {
  readonly problems: Problem[] = [];
  readonly refused = new Set<string>();
  /** The first alias of the file. */
  alias: Problem | undefined;
  readonly positions = new Map<
    string,
    { key?: { line: number; column: number }; value: { line: number; column: number } }
  >();
  private readonly file: string;
  private readonly lines: LineCounter;

  constructor(file: string, lines: LineCounter) {
    this.file = file;
    this.lines = lines;
  }

  plain(node: unknown, path: Path, keyOffset?: number): unknown {
    const offset = (node as Node | null)?.range?.[0] ?? keyOffset ?? 0;
    const value = this.position(offset);
    this.positions.set(key(path), keyOffset === undefined ? { value } : { key: this.position(keyOffset), value });
    if (path.length > MAX_DEPTH) {
      this.problems.push(tooDeep(this.file, value.line, value.column, fieldName(path.slice(0, 3))));
      this.refused.add(key(path.slice(0, 1)));
      return undefined;
    }
    if (node === null || node === undefined) return null;
    if (isAlias(node)) {
      this.alias ??= this.problem(
        offset,
        path,
        `found the alias "*${printable(node.source)}", expected the value itself`,
        'Write the value out; aliases are not used here.',
      );
      return undefined;
    }
    const tag = (node as Node & { tag?: string }).tag;
    if (tag !== undefined) {
      return this.refuse(
        offset,
        path,
        `found the tag "${printable(tag)}", expected a plain value`,
        'Take the tag away; put text in quotes.',
      );
    }
    if (isMap(node)) return this.map(node.items, path);
    if (isSeq(node)) return node.items.map((item, i) => this.plain(item, [...path, i]));
    if (isScalar(node)) return this.scalar(node.value, node.type === 'PLAIN', offset, path);
    return undefined;
  }

  private map(items: readonly { key: unknown; value: unknown }[], path: Path): Record<string, unknown> {
    const result: Record<string, unknown> = {};
    for (const item of items) {
      const keyNode = item.key as Node | null;
      const offset = keyNode?.range?.[0] ?? 0;
      const name = isScalar(keyNode) ? keyNode.value : undefined;
      if (typeof name !== 'string') {
        this.say(
          offset,
          path,
          `found ${isScalar(keyNode) && name !== null ? `the key ${shown(name)}` : 'a key that is no word'}, expected a word`,
          'Write a field name before the colon; put it in quotes if it must look like a number.',
        );
        continue;
      }
      if (name === '<<') {
        const what = 'found the merge key "<<", expected a field name';
        this.say(offset, path, what, 'Write the fields themselves; merge keys are not used here.');
        continue;
      }
      if (name === '__proto__' || FORBIDDEN.test(name)) {
        this.say(offset, path, `found the key "${printable(name)}", expected a field name`, 'Delete the line.');
        continue;
      }
      if (Object.hasOwn(result, name)) {
        const what = 'found this field a second time, expected each field once';
        this.say(offset, [...path, name], what, 'Delete one of the two lines.');
        continue;
      }
      result[name] = this.plain(item.value, [...path, name], offset);
    }
    return result;
  }

  private scalar(value: unknown, plain: boolean, offset: number, path: Path): unknown {
    if (typeof value === 'bigint') return Number(value);
    if (typeof value !== 'string') return value;
    if (FORBIDDEN.test(value)) {
      return this.refuse(
        offset,
        path,
        `found the control character ${codeOf(FORBIDDEN.exec(value)![0])}, expected printable text`,
        'Delete that character; type the text again if it cannot be seen.',
      );
    }
    if (plain && /^\d{4}-\d{1,2}-\d{1,2}([T ].*)?$/.test(value)) {
      this.say(
        offset,
        path,
        `found the date ${value} without quotes, expected "${value}"`,
        'Quote it: programs take a bare date for an instant in some time zone.',
      );
    }
    return value;
  }

  private position(offset: number) {
    const { line, col } = this.lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  }

  private problem(offset: number, path: Path, what: string, fix: string): Problem {
    return { file: this.file, ...this.position(offset), field: fieldName(path), what, fix };
  }

  private say(offset: number, path: Path, what: string, fix: string): void {
    this.problems.push(this.problem(offset, path, what, fix));
  }

  /** Reports a value and leaves it out: nothing else is said of it. */
  private refuse(offset: number, path: Path, what: string, fix: string): undefined {
    this.say(offset, path, what, fix);
    this.refused.add(key(path));
  }
}

/** "battery.chemistry"; a place in a list is counted from 1. */
export function fieldName(path: Path): string {
  return path.map((part) => (typeof part === 'number' ? String(part + 1) : printable(part))).join('.');
}

function key(path: Path): string {
  return JSON.stringify(path);
}

function failed(file: string, problems: Problem[]): Source {
  const start = () => ({ line: 1, column: 1 });
  return { file, data: undefined, problems, refused: () => true, at: start, atKey: start };
}

/** A directive would let another version of YAML read "yes" as true and 010 as eight. */
function directiveProblem(file: string, line: number): Problem {
  const what = 'found a line that begins with "%", expected a field';
  return { file, line, column: 1, field: '', what, fix: 'Delete the line; put a value that begins with % in quotes.' };
}

function tooDeep(file: string, line: number, column: number, field: string): Problem {
  return {
    file,
    line,
    column,
    field,
    what: `found lists or groups nested more than ${MAX_DEPTH} deep, expected a few levels`,
    fix: 'Write the file flat, as the field reference shows.',
  };
}
