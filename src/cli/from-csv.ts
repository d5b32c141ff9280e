/**
 * `npm run from-csv -- members.csv --content ../club`: machine files from a spreadsheet, one row a machine. The folder may
 * also stand behind the spreadsheet without `--content`.
 *
 *   --replace   writes over machine files that are there and differ
 *   --columns   lists the columns that can be used
 *
 * The first row names the columns: fields of the machine file as the field reference writes them ("battery.capacity"), and
 * "id". All faults of all rows are told, each by row and cell; while there is one, nothing is written.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { formatProblem, type Problem } from '../content/problem.ts';
import { readContent } from '../content/read.ts';
import { readFiles } from '../content/read-folder.ts';
import { COLUMNS, type CsvMachines, machinesOf } from './csv/machines.ts';
import { type CellProblem, cellName, readTable } from './csv/table.ts';
import { PROJECT, readCommandLine, stop } from './paths.ts';
import { today } from './plan-content.ts';

const { values, positionals } = readCommandLine(
  ['content', 'today'],
  { replace: { type: 'boolean' }, columns: { type: 'boolean' } },
  true,
);

if (values.columns) {
  for (const { field, meaning, form, example } of COLUMNS)
    console.log(`${field.padEnd(24)}${meaning} (${form})${example === '' ? '' : `; for example ${example}`}`);
  process.exit(0);
}
const [csv, folder = process.env.IDLE_CONTENT] = positionals;
if (csv === undefined || folder === undefined || positionals.length > 2)
  stop('Write the spreadsheet and the content folder: npm run from-csv -- members.csv --content ../club');
if (!existsSync(csv)) stop(`${csv}: found no such file. Save the spreadsheet as CSV UTF-8 and name it here.`);
if (!existsSync(join(folder, 'household.yaml')))
  stop(
    `${folder}: found no household.yaml, expected the content folder of the household. Copy household.yaml and places/ of the demo household there and change them.`,
  );

const table = readTable(readFileSync(csv));
const made: CsvMachines =
  table.problems.length > 0
    ? { machines: [], problems: table.problems, columns: new Map() }
    : machinesOf(table.rows, basename(csv));
const { files } = readFiles(resolve(folder));
const present = new Map(files.map((file) => [file.path, new TextDecoder().decode(file.bytes as Uint8Array)]));
const pathOf = (id: string) => `machines/${id}.yaml`;
const problems = [...made.problems, ...takenIds(), ...acrossFiles()].sort(
  (a, b) => a.row - b.row || a.column - b.column,
);

if (problems.length > 0) {
  for (const problem of problems) console.error(told(problem));
  const many = `${problems.length} ${problems.length === 1 ? 'fault' : 'faults'}`;
  stop(`${many} in ${csv}: no file was written.`);
}

const changed = made.machines.filter(({ id, text }) => present.get(pathOf(id)) !== text);
mkdirSync(join(folder, 'machines'), { recursive: true });
for (const { id, text } of changed) {
  const file = join(folder, pathOf(id));
  writeFileSync(`${file}.new`, text);
  renameSync(`${file}.new`, file);
}
console.log(
  `${made.machines.length} machines in ${csv}: ${changed.length} files written to ${join(folder, 'machines')}, ${made.machines.length - changed.length} were there already.`,
);
const ids = new Set(made.machines.map((m) => `${m.id}.yaml`));
const others = readdirSync(join(folder, 'machines')).filter((name) => name.endsWith('.yaml') && !ids.has(name));
if (others.length > 0)
  console.log(
    `Left as they are, since no row is of them: ${others.join(', ')}. Delete those of machines that are gone.`,
  );

/** Machine files that are there and would change. */
function takenIds(): CellProblem[] {
  if (values.replace) return [];
  const column = made.columns.get('id') ?? made.columns.get('name') ?? 0;
  return made.machines.flatMap(({ id, row, text }) => {
    const found = present.get(pathOf(id));
    return found === undefined || found === text
      ? []
      : [
          {
            row,
            column,
            field: 'id',
            what: `found ${pathOf(id)} there already, with other content, expected no such file`,
            fix: 'Add --replace to write over it, or give the row another id.',
          },
        ];
  });
}

/** What only shows beside the household's other files: places, care, dates. */
function acrossFiles(): CellProblem[] {
  const mine = new Map(made.machines.map((m) => [pathOf(m.id), m]));
  const result = readContent(
    [
      ...files.filter((file) => !mine.has(file.path)),
      ...made.machines.map((m) => ({ path: pathOf(m.id), bytes: m.text })),
    ],
    {
      asOf: today,
      procedures: readFiles(join(PROJECT, 'content', 'procedures')).files.map((file) => ({
        path: `procedures/${file.path}`,
        bytes: file.bytes,
      })),
    },
  );
  return result.problems.flatMap((problem: Problem) => {
    const machine = mine.get(problem.file);
    if (!machine) return [];
    const parts = problem.field.split('.');
    const field = parts.map((_, i) => parts.slice(0, parts.length - i).join('.')).find((f) => made.columns.has(f));
    const column = made.columns.get(field ?? '') ?? 0;
    return [{ row: machine.row, column, field: problem.field, what: problem.what, fix: problem.fix }];
  });
}

function told({ row, column, field, what, fix }: CellProblem): string {
  const shown = relative(process.cwd(), dirname(resolve(csv!))) || '.';
  const cell = column === 0 ? `row ${row}` : `cell ${cellName(row, column)}`;
  const line = {
    file: basename(csv!),
    line: row,
    column: Math.max(1, column),
    field: `${cell} ${field}`.trim(),
    what,
    fix,
  };
  return formatProblem(line, shown);
}
