/** Rows of a spreadsheet -> machine files: one row a machine, each column a field of the machine file. */
import { checkField } from '../../content/check.ts';
import { fieldRows } from '../../content/fields.ts';
import { ID_RULE, isId, slug } from '../../content/ids.ts';
import { nearest, shown } from '../../content/problem.ts';
import { scalar } from '../../content/scalar.ts';
import { schemaAt } from '../../content/schema-walk.ts';
import { machine } from '../../content/schemas/machine.ts';

import type { CellProblem } from './table.ts';

/** Fields that are one cell: lists (services, tyres, jobs) are written into the files by hand. */
export const COLUMNS: readonly { field: string; meaning: string; form: string; example: string }[] = [
  {
    field: 'id',
    meaning: 'Name of the file; left out, made from the name. Reminders are known by it: a member number is best',
    form: 'text',
    example: 'member-014',
  },
  ...fieldRows('machine').filter(
    ({ field, form }) => !field.includes('[]') && form !== 'group' && form !== 'list' && field !== 'remarks',
  ),
];

const NEEDED = ['name', 'kind', 'place'];

export interface CsvMachine {
  id: string;
  row: number;
  /** The machine file. */
  text: string;
}

export interface CsvMachines {
  machines: CsvMachine[];
  problems: CellProblem[];
  /** Column of each field, from 1. */
  columns: ReadonlyMap<string, number>;
}

type Content = { [field: string]: Content | string | number | boolean };

/**
 * Machine files from a table.
 * @param rows - the row of names first
 * @param name - of the spreadsheet, for the first line of each file
 * @returns a file for each row without a fault, and every fault of every row
 */
export function machinesOf(rows: readonly (readonly string[])[], name: string): CsvMachines {
  const [head = []] = rows;
  const { columns, problems } = columnsOf(head);
  const machines: CsvMachine[] = [];
  if (problems.length > 0) return { machines, problems, columns };
  const rowOf = new Map<string, number>();
  for (const [i, cells] of rows.entries()) {
    if (i === 0 || cells.every((cell) => cell === '')) continue;
    const row = i + 1;
    const found = rowProblems(cells, head, columns, row);
    const id = cells[columns.get('id')! - 1] || slug(cells[columns.get('name')! - 1] ?? '');
    const first = rowOf.get(id);
    if (first !== undefined) found.push(sameId(id, first, row, columns));
    rowOf.set(id, first ?? row);
    problems.push(...found);
    if (found.length === 0) machines.push({ id, row, text: fileOf(contentOf(cells, columns), name, row) });
  }
  if (machines.length === 0 && problems.length === 0)
    problems.push({
      row: 1,
      column: 0,
      field: '',
      what: 'found no row with a machine, expected one',
      fix: 'Add rows.',
    });
  return { machines, problems, columns };
}

function columnsOf(head: readonly string[]): { columns: Map<string, number>; problems: CellProblem[] } {
  const columns = new Map<string, number>();
  const problems: CellProblem[] = [];
  const known = COLUMNS.map((column) => column.field);
  const say = (column: number, what: string, fix: string) => problems.push({ row: 1, column, field: '', what, fix });
  for (const [i, name] of head.entries()) {
    if (name === '') continue;
    const field = known.find((k) => k.toLowerCase() === name.toLowerCase());
    if (field === undefined) {
      const near = nearest(name, known);
      say(
        i + 1,
        `found the column ${shown(name)}, expected ${near ? `"${near}"` : 'the name of a field'}`,
        near
          ? `Write ${near}, or leave the column out.`
          : 'Leave it out; npm run from-csv -- --columns lists the names.',
      );
    } else if (columns.has(field)) say(i + 1, `found the column "${field}" twice, expected it once`, 'Delete one.');
    else columns.set(field, i + 1);
  }
  // A name that is misspelt is one fault, not two.
  if (problems.length === 0)
    for (const field of NEEDED)
      if (!columns.has(field)) say(0, `found no column "${field}", expected one`, 'Add it to the first row.');
  return { columns, problems };
}

function rowProblems(
  cells: readonly string[],
  head: readonly string[],
  columns: ReadonlyMap<string, number>,
  row: number,
): CellProblem[] {
  const problems: CellProblem[] = [];
  const extra = cells.findIndex((cell, i) => cell !== '' && (head[i] ?? '') === '');
  if (extra >= 0)
    problems.push({
      row,
      column: extra + 1,
      field: '',
      what: `found ${shown(cells[extra])} in a column without a name, expected ${columns.size} cells`,
      fix: 'Name the column, or put a cell that has the separator in it into quotation marks.',
    });
  for (const [field, column] of columns) {
    const cell = cells[column - 1] ?? '';
    const say = (what: string, fix: string) => problems.push({ row, column, field, what, fix });
    if (cell === '') {
      if (NEEDED.includes(field)) say('found an empty cell, expected a value', 'Fill it in.');
    } else if (field === 'id') {
      if (!isId(cell)) say(`found ${shown(cell)}, expected ${ID_RULE}`, `Write it as "${slug(cell)}".`);
    } else if (!isNone(field, cell)) {
      const wrong = cellValue(field, cell).problem;
      if (wrong !== undefined) {
        const [what = wrong, ...fix] = wrong.split('. ');
        say(what, fix.join('. '));
      }
    }
  }
  const nameless = columns.get('id') === undefined || (cells[columns.get('id')! - 1] ?? '') === '';
  const name = cells[columns.get('name')! - 1] ?? '';
  if (nameless && name !== '' && slug(name) === 'machine' && name.toLowerCase() !== 'machine')
    problems.push({
      row,
      column: columns.get('name')!,
      field: 'name',
      what: `found ${shown(name)}, of which no file name can be made, expected an id beside it`,
      fix: 'Add a column "id", such as the member number.',
    });
  return problems;
}

function sameId(id: string, first: number, row: number, columns: ReadonlyMap<string, number>): CellProblem {
  const field = columns.has('id') ? 'id' : 'name';
  return {
    row,
    column: columns.get(field)!,
    field,
    what: `found the id "${id}" a second time (row ${first} has it), expected each once`,
    fix: 'Give each row an id of its own, such as the member number, in a column "id".',
  };
}

/** Clubs write "none" where the kind of battery or fuel would stand. */
function isNone(field: string, cell: string): boolean {
  return cell === 'none' && (field === 'battery.chemistry' || field === 'fuel.delivery');
}

/** What a cell is: text where the field takes it so, else a number or yes and no. */
function cellValue(field: string, cell: string): { value: string | number | boolean; problem?: string | undefined } {
  const path = field.split('.');
  const problem = checkField(machine, path, cell);
  if (problem === undefined) return { value: cell };
  const other = /^-?\d+([.,]\d+)?$/.test(cell)
    ? Number(cell.replace(',', '.'))
    : /^(true|yes|x)$/i.test(cell)
      ? true
      : /^(false|no)$/i.test(cell)
        ? false
        : cell;
  const again = other === cell ? problem : checkField(machine, path, other);
  if (again === undefined) return { value: other };
  // What is said of a number that is out of range helps more than that a text was found.
  return { value: cell, problem: typeof other === 'number' && takesNumber(path) ? again : problem };
}

function takesNumber(path: readonly string[]): boolean {
  const field = schemaAt(machine, path);
  return field !== undefined && ['number', 'int'].includes((field.def as { type: string }).type);
}

function contentOf(cells: readonly string[], columns: ReadonlyMap<string, number>): Content {
  const content: Content = {};
  for (const { field } of COLUMNS) {
    const cell = cells[(columns.get(field) ?? 0) - 1] ?? '';
    if (cell === '' || field === 'id') continue;
    const [group = field, inner] = field.split('.');
    if (isNone(field, cell)) content[group] = 'none';
    else if (inner === undefined) content[group] = cellValue(field, cell).value;
    else {
      const before = content[group];
      // "cooling" beside "cooling.volume": the word is the kind.
      const own: Content = typeof before === 'object' ? before : before === undefined ? {} : { kind: before };
      content[group] = before === 'none' ? before : { ...own, [inner]: cellValue(field, cell).value };
    }
  }
  return content;
}

function fileOf(content: Content, name: string, row: number): string {
  const lines = Object.entries(content).flatMap(([field, value]) =>
    typeof value === 'object'
      ? [`${field}:`, ...Object.entries(value).map(([inner, v]) => `  ${inner}: ${written(v as string)}`)]
      : [`${field}: ${written(value)}`],
  );
  const from = name.replace(/[^\w .-]/g, '_');
  return [
    '# yaml-language-server: $schema=../../public/schemas/machine.schema.json',
    '#',
    `# Row ${row} of ${from}. Written anew by: npm run from-csv -- ${from} --replace`,
    '',
    ...lines,
    '',
  ].join('\n');
}

function written(value: string | number | boolean): string {
  return typeof value === 'string' ? scalar(value) : String(value);
}
