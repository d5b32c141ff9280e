/** The levels of a file's rows, and the rows that fit none: where a dash, a colon or spaces are missing. */
import type { Mark, Row } from './rows.ts';

export interface Slip {
  line: number;
  /** Counted from 1. */
  column: number;
  what: string;
  fix: string;
}

type Placed = Mark & { line: number };

/** Names of fields, as far as they tell what was meant. */
export interface Names {
  /** All that there are. */
  all: ReadonlySet<string>;
  /** Fields that are lists of groups. */
  lists: ReadonlySet<string>;
  /** Fields that are groups, some of them in one word as well. */
  groups: ReadonlySet<string>;
  /** The outermost fields of this kind of file. */
  outermost: ReadonlySet<string>;
}

interface Level {
  indent: number;
  kind: 'entry' | 'field';
  /** The first field of the group, or of the list's first entry. */
  first: Placed;
  /** Its entry stands wrong: the next row tells how deep its fields are meant to be. */
  loose: boolean;
  /** Rows that stand wrong are told once. */
  told: boolean;
}

/** Goes through the rows of a file in order; what does not fit is told, and taken as it was most likely meant. */
export class Levels {
  readonly slips: Slip[] = [];
  private readonly names: Names;
  private readonly levels: Level[] = [];
  /** Levels that the last row closed, innermost first. */
  private closed: Level[] = [];
  private last: Placed | undefined;

  constructor(names: Names) {
    this.names = names;
  }

  /** True where a row is the rest of the text that began above it. */
  goesOn({ marks, indent }: Row): boolean {
    const above = this.last;
    return above !== undefined && !isOpen(above) && marks[0]?.kind === 'text' && indent > above.indent;
  }

  /** Takes the next row. */
  take({ line, marks }: Row): void {
    const [first, ...rest] = marks;
    if (!first) return;
    const name = first.kind !== 'entry' ? first.name : rest[0]?.kind === 'field' ? rest[0].name : '';
    const before = this.slips.length;
    this.place({ ...first, name, line });
    const isMoved = this.slips.length > before;
    for (const mark of rest) this.enter(this.withColon({ ...mark, line }), isMoved);
  }

  /** Text behind a dash where the other entries begin with a field of that name. */
  private withColon(mark: Placed): Placed {
    const list = this.levels.at(-1);
    if (mark.kind !== 'text' || list?.first.name !== mark.name || list.first.line === mark.line) return mark;
    const value = mark.value.slice(mark.name.length).trim();
    this.tell(mark, withoutColon(mark), `Write "${mark.name}: ${value}".`);
    return { ...mark, kind: 'field', value };
  }

  private enter(mark: Placed, loose = false): void {
    if (mark.kind !== 'text')
      this.levels.push({ indent: mark.indent, kind: mark.kind, first: mark, loose, told: false });
    this.last = mark;
  }

  private place(mark: Placed): void {
    const { last: above, closed } = this;
    this.closed = [];
    const inner = this.levels.at(-1);
    if (inner?.loose && mark.kind === 'field' && mark.indent > (this.levels.at(-2)?.indent ?? -1)) {
      inner.indent = mark.indent;
      inner.loose = false;
    }
    if (above && isOpen(above) && (mark.indent > above.indent || isListAtIndent(above, mark))) this.inside(above, mark);
    else if (mark.kind === 'text') this.text(mark, above);
    else {
      this.closed = this.pop(mark.indent);
      const level = this.levels.at(-1);
      if (!level) this.margin(mark);
      else if (level.indent === mark.indent) this.beside(level, mark);
      else if (this.closed.length > 0) this.between(level, mark);
      else this.deeper(level, mark, closed);
      this.last = mark;
    }
  }

  private pop(indent: number): Level[] {
    const closed: Level[] = [];
    while (this.levels.length > 0 && this.levels.at(-1)!.indent > indent) closed.push(this.levels.pop()!);
    return closed;
  }

  /** The first row below a field that has nothing behind its colon. */
  private inside(above: Placed, mark: Placed): void {
    if (mark.kind === 'field' && above.kind === 'field' && this.names.lists.has(above.name)) this.dash(mark);
    else {
      const isNoList = this.names.groups.has(above.name) && !this.names.lists.has(above.name);
      this.enter(mark);
      if (isNoList && mark.kind === 'entry' && above.kind === 'field') {
        this.tell(mark, `found a dash below "${above.name}", which is no list`, 'Take the dashes below it away.');
        this.levels.at(-1)!.told = true;
      }
    }
  }

  /** Tells that an entry has no dash, and goes on as if it had. */
  private dash(mark: Placed): void {
    const what = `found ${called(mark)} without a dash, expected "- " where an entry of a list begins`;
    this.tell(mark, what, `Write "- ${written(mark)}", and the entry’s other fields below it, two spaces deeper.`);
    const list = this.levels.at(-1);
    if (list?.indent === mark.indent && list.kind === 'entry') list.told = true;
    else this.levels.push({ indent: mark.indent, kind: 'entry', first: mark, loose: false, told: true });
    this.levels.push({ indent: mark.indent + 2, kind: 'field', first: mark, loose: true, told: false });
    this.last = mark;
  }

  /** Text where a field or an entry was to be. */
  private text(mark: Placed, above: Placed | undefined): void {
    if (/^["'[{]/.test(mark.value)) {
      this.last = mark;
      return;
    }
    const level = this.levels.at(-1);
    if (level?.kind === 'entry' && level.indent === mark.indent) {
      this.tell(
        mark,
        `found ${called(mark)} without a dash, expected "- " before each entry`,
        `Write "- ${mark.value}".`,
      );
      this.last = mark;
      return;
    }
    const [, name = '', value = ''] = /^([A-Za-z][\w-]*)(?:\s+(.*))?$/su.exec(mark.value) ?? [];
    if (above && isOpen(above) && above.indent === mark.indent && !(name && value)) {
      const what = `found "${mark.value}" below "${above.name}:", expected it behind the colon`;
      this.tell(mark, what, `Write "${above.name}: ${mark.value}".`);
      this.last = { ...above, value: mark.value };
      return;
    }
    const goesOn = above && !isOpen(above) && above.kind === 'field' && above.indent === mark.indent;
    const meant = name === '' ? 'Write "field: value".' : `Write "${`${name}: ${value}`.trim()}".`;
    const further = `Indent it deeper than "${above?.name}", if it goes on with that text; else write "field: value".`;
    this.tell(mark, withoutColon(mark), goesOn && !this.names.all.has(name) ? further : meant);
    this.place({ ...mark, kind: 'field', name: name || mark.name, value });
  }

  /** A row to the left of all before it. */
  private margin(mark: Placed): void {
    const outer = this.closed.at(-1);
    if (outer) {
      const { first } = outer;
      const what = `found ${called(first)} ${place(first.indent)}, expected it at the margin`;
      this.tell(first, what, 'Take the spaces before it away; the outermost fields begin at the margin.');
    }
    this.enter(mark);
  }

  /** A row at the place of others: of their kind, or a dash is missing or stands too deep. */
  private beside(level: Level, mark: Placed): void {
    if (level.kind === mark.kind || (level.told && mark.kind === 'field')) return;
    const around = this.levels.at(-2);
    if (mark.kind === 'field' && mark.name === level.first.name) this.dash(mark);
    else if (mark.kind === 'field') {
      level.told = true;
      const depth = spaces(mark.indent + 2);
      const what = `found ${called(mark)} where the entries of a list begin, expected ${depth} before it, or a dash`;
      this.tell(mark, what, `Indent it by ${depth}, or begin another entry with "- ".`);
    } else if (around?.kind === 'entry') {
      this.depth(mark, around.indent);
      this.levels.pop();
    } else {
      level.kind = 'entry';
      this.dash(level.first);
      this.levels.pop();
    }
  }

  /** A row between two levels: spaces too many or too few. */
  private between(level: Level, mark: Placed): void {
    const alike = [...this.closed, level].filter(({ kind }) => kind === mark.kind);
    const away = ({ indent }: Level) => Math.abs(indent - mark.indent);
    const [meant = level] = alike.sort((a, b) => away(a) - away(b));
    if (meant.told) meant.indent = mark.indent;
    else this.depth(mark, meant.indent);
    if (meant !== level) this.levels.push(...this.closed.slice(this.closed.indexOf(meant)).reverse());
  }

  /** A row deeper than the one above, which has a value of its own: one of the two stands wrong. */
  private deeper(level: Level, mark: Placed, closedByAbove: readonly Level[]): void {
    const above = this.last!;
    const lost = closedByAbove.find(({ indent, kind }) => indent === mark.indent && kind === mark.kind);
    const isOutermost = above.indent === 0 && this.names.outermost.has(above.name);
    if (lost && above.kind === mark.kind && !isOutermost) {
      this.depth(above, lost.indent);
      this.levels.push(...closedByAbove.slice(closedByAbove.indexOf(lost)).reverse());
      return;
    }
    if (!level.told) {
      const what = `found ${called(mark)} ${place(mark.indent)} below ${called(above)}, which has a value of its own, expected it ${place(level.indent)}`;
      const inside = `; if it belongs inside ${called(above)}, take the value "${shortened(above.value)}" away`;
      this.tell(mark, what, `${indentBy(level.indent)}${this.names.groups.has(above.name) ? inside : ''}.`);
    }
    const kind = mark.kind === 'entry' ? 'entry' : 'field';
    this.levels.push({ indent: mark.indent, kind, first: mark, loose: false, told: true });
  }

  private depth(mark: Placed, indent: number): void {
    const what = `found ${called(mark)} ${place(mark.indent)}, expected it ${place(indent)} as the lines beside it`;
    this.tell(mark, what, `${indentBy(indent)}.`);
  }

  private tell({ line, indent }: Placed, what: string, fix: string): void {
    this.slips.push({ line, column: indent + 1, what, fix });
  }
}

const isOpen = ({ kind, value }: Mark) => kind !== 'text' && value === '';

/** Entries of a list may stand as deep as the field whose list they are. */
const isListAtIndent = (above: Mark, mark: Mark) =>
  mark.kind === 'entry' && above.kind === 'field' && mark.indent === above.indent;

const spaces = (n: number) => (n === 1 ? '1 space' : `${n} spaces`);
const place = (n: number) => (n === 0 ? 'at the margin' : `indented by ${spaces(n)}`);
const indentBy = (n: number) => (n === 0 ? 'Begin it at the margin' : `Indent it by ${spaces(n)}`);
const withoutColon = ({ value }: Mark) => `found "${shortened(value)}" without a colon, expected "field: value"`;
const shortened = (text: string) => (text.length > 40 ? `${text.slice(0, 37)}…` : text);
const written = ({ name, value }: Mark) => shortened(`${name}: ${value}`.trim());

function called({ kind, name, value }: Mark): string {
  if (kind === 'text') return `"${shortened(value)}"`;
  return kind === 'entry' ? `"-${name === '' ? '' : ` ${name}`}"` : `"${name}"`;
}
