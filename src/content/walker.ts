/** One parsed file -> plain data, the place of each value, and what YAML allows and content does not. */
import { isAlias, isMap, isScalar, isSeq, type LineCounter, type Node, type YAMLMap } from 'yaml';
import { FORBIDDEN } from './no-text.ts';
import { fieldName, key, type Path } from './path.ts';
import { codeOf, type Problem, printable, shown } from './problem.ts';
import { MAX_DEPTH } from './text.ts';

type Pairs = readonly { key: unknown; value: unknown }[];

const offsetOf = (node: unknown) => (node as Node | null)?.range?.[0] ?? 0;

/** Fields of an entry whose dash was forgotten, so that they stand in the entry before. */
class Undashed {
  readonly name: string;
  readonly pairs: Pairs;

  constructor(name: string, pairs: Pairs) {
    this.name = name;
    this.pairs = pairs;
  }
}

/** An entry, cut where the field it begins with comes again and others follow. */
function withDashes(entry: YAMLMap): (YAMLMap | Undashed)[] {
  const names = entry.items.map((pair) => (isScalar(pair.key) ? pair.key.value : undefined));
  const [first] = names;
  const cuts = names.flatMap((name, i) => (i > 0 && name === first && i < names.length - 1 ? [i] : []));
  if (typeof first !== 'string' || cuts.length === 0) return [entry];
  const parts = cuts.map((from, n) => new Undashed(first, entry.items.slice(from, cuts[n + 1])));
  entry.items.length = cuts[0]!;
  return [entry, ...parts];
}

/** Goes through one parsed file once; what it refuses is left out of the data and told. */
export class Walker {
  readonly problems: Problem[] = [];
  readonly refused = new Set<string>();
  /** Names that values before have been given. */
  private readonly anchors = new Set<string>();
  /** The first alias of the file. */
  alias: Problem | undefined;
  readonly positions = new Map<
    string,
    { key?: { line: number; column: number }; value: { line: number; column: number } }
  >();
  private readonly file: string;
  private readonly text: string;
  private readonly lines: LineCounter;

  constructor(file: string, text: string, lines: LineCounter) {
    this.file = file;
    this.text = text;
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
    if (isAlias(node) && !this.anchors.has(node.source))
      return this.refuse(
        offset,
        path,
        `found "*${printable(node.source)}", which names no value, expected a value`,
        `Put it in quotes: "*${printable(node.source)}".`,
      );
    if (isAlias(node)) {
      this.alias ??= this.problem(
        offset,
        path,
        `found the alias "*${printable(node.source)}", expected the value itself`,
        'Write the value out; aliases are not used here.',
      );
      return undefined;
    }
    const { tag, anchor } = node as Node & { tag?: string; anchor?: string };
    if (anchor !== undefined) this.anchors.add(anchor);
    if (anchor !== undefined && isScalar(node) && node.value === null)
      return this.refuse(
        this.signBefore('&', offset),
        path,
        `found "&${printable(anchor)}", which names a value that follows, expected a value`,
        'Put it in quotes.',
      );
    if (tag !== undefined) {
      return this.refuse(
        this.signBefore('!', offset),
        path,
        `found the tag "${printable(tag.replace(/^tag:yaml\.org,2002:/, '!!'))}", expected a plain value`,
        'Take the tag away; put text in quotes.',
      );
    }
    if (isMap(node)) return this.map(node.items, path, node.flow);
    if (isSeq(node)) return this.list(node.items, path);
    if (isScalar(node)) return this.scalar(node.value, node.type === 'PLAIN', offset, path);
    return undefined;
  }

  private list(items: readonly unknown[], path: Path): unknown[] {
    const entries = items.flatMap((item) => (isMap(item) && !item.flow ? withDashes(item) : [item]));
    return entries.map((entry, i) => {
      const own = [...path, i];
      if (!(entry instanceof Undashed)) return this.plain(entry, own);
      const offset = offsetOf(entry.pairs[0]!.key);
      const what = `found "${printable(entry.name)}" a second time in one entry, expected "- " before it where another begins`;
      this.say(offset, [...own, entry.name], what, 'Put the dash in front of it, or delete what stands twice.');
      this.positions.set(key(own), { value: this.position(offset) });
      return this.map(entry.pairs, own);
    });
  }

  private map(items: Pairs, path: Path, isFlow = false): Record<string, unknown> {
    const result: Record<string, unknown> = {};
    for (const [i, item] of items.entries()) {
      if (isFlow && this.isCutOff(items[i - 1], item, path)) continue;
      const keyNode = item.key as Node | null;
      const offset = offsetOf(keyNode);
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
        const sign = FORBIDDEN.exec(name)?.[0];
        const found = sign ? `the control character ${codeOf(sign)} in` : 'the key';
        const fix = sign ? 'Delete that character; type the name again if it cannot be seen.' : 'Delete the line.';
        this.say(offset, path, `found ${found} "${printable(name)}", expected a field name`, fix);
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

  /** True for what a decimal comma inside braces cuts off its figure: told there, and the figure is no value. */
  private isCutOff(before: Pairs[number] | undefined, { key: rest, value }: Pairs[number], path: Path): boolean {
    if (!before || value !== null || !isScalar(before.key) || !isScalar(before.value) || !isScalar(rest)) return false;
    const [whole, part] = [before.value.source ?? '', rest.source ?? ''];
    if (!/^[-−]?\d+$/.test(whole) || !/^\d+(?:\s*[a-z°%µ].*)?$/i.test(part)) return false;
    const name = String(before.key.value);
    const what = `found "${whole},${printable(part)}", expected a point: inside braces a comma ends the value`;
    const fix = /^\d{3}(?!\d)/.test(part)
      ? 'Write decimals with a point, and thousands without a comma.'
      : `Write ${printable(name)}: ${whole}.${printable(part)}.`;
    this.refuse(offsetOf(before.value), [...path, name], what, fix);
    return true;
  }

  private scalar(value: unknown, plain: boolean, offset: number, path: Path): unknown {
    if (typeof value === 'bigint') return Number(value);
    if (typeof value !== 'string') return value;
    if (FORBIDDEN.test(value)) {
      return this.refuse(
        this.signIn(FORBIDDEN.exec(value)![0], offset),
        path,
        `found the control character ${codeOf(FORBIDDEN.exec(value)![0])}, expected printable text`,
        this.text.slice(offset).includes(FORBIDDEN.exec(value)![0])
          ? 'Delete that character; type the text again if it cannot be seen.'
          : 'Delete that character; where a backslash is meant, use single quotes or write it twice.',
      );
    }
    if (plain && /^\d{4}-\d{1,2}-\d{1,2}(?:[Tt ]\s*\d{1,2}:\d\d.*)?$/.test(value)) {
      this.say(
        offset,
        path,
        `found the date ${value} without quotes, expected "${value}"`,
        'Quote it: programs take a bare date for an instant in some time zone.',
      );
    }
    return value;
  }

  /** Where a sign stands in a value; where it begins, if the sign is written as an escape. */
  private signIn(sign: string, offset: number): number {
    const at = this.text.indexOf(sign, offset);
    const end = this.text.indexOf('\n', offset);
    return at < 0 || (end >= 0 && at > end) ? offset : at;
  }

  /** Where the sign stands with which a value's tag or name begins. */
  private signBefore(sign: string, offset: number): number {
    const last = Math.max(0, this.text.lastIndexOf(sign, offset));
    return this.text[last - 1] === sign ? last - 1 : last;
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

export function tooDeep(file: string, line: number, column: number, field: string): Problem {
  return {
    file,
    line,
    column,
    field,
    what: `found lists or groups nested more than ${MAX_DEPTH} deep, expected a few levels`,
    fix: 'Write the file flat, as the field reference shows.',
  };
}
