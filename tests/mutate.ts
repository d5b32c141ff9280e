/**
 * `npm run mutate -- --folder planner/tyres --sample 100 --seed 7`: mutation testing of what computes.
 *
 * All mutants take many hours, so a sample of each folder's is drawn, of the code and of the wording apart. It is held against the
 * tests of that folder, and what survives those against the tests of whole plans, which take far longer; what other tests would
 * have found besides is not counted. Without `--folder` every folder is tried, without `--sample` all of its mutants.
 */
import { spawnSync } from 'node:child_process';
import { globSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import fc from 'fast-check';
import { createInjector } from 'typed-inject';
import { mutantKey, type Place } from './mutation.checker.ts';

const PROJECT = join(import.meta.dirname, '..');
const WORK = '.work/mutation';
const CONFIG = 'tests/stryker.config.json';

interface Mutant {
  fileName: string;
  /** Lines and columns counted from nought. */
  location: Place;
  mutatorName: string;
  replacement: string;
}

/** Outside sources that a folder's models are held against, where the file is not called after the folder. */
const PUBLISHED: Record<string, string[]> = {
  'planner/agenda': ['schedule', 'j30'],
  'planner/climate': ['climate-drawn'],
  'planner/corrosion': ['desiccant'],
  'planner/fluids': ['fluid-sources'],
  'planner/storage': ['psychrometrics'],
};

/** Tests that hold a folder's code and lie where what they are about is: what reads content, a battery's record. */
const BESIDES: Record<string, string[]> = {
  planner: ['tests/content/records.test.ts', 'tests/planner/battery/laid-up.test.ts'],
  'planner/ledger': ['tests/content/procedures.test.ts', 'tests/faults/*.test.ts'],
  'planner/tasks': ['tests/content/procedures.test.ts', 'tests/faults/*.test.ts'],
};

/** The tests of a folder: those that lie where it does, and the published checks of its models. */
function testsOf(folder: string): string[] {
  const [area, name] = folder.split('/');
  const published = [name ?? area, ...(PUBLISHED[folder] ?? [])].map((file) => `tests/published/${file}.test.ts`);
  const own =
    area === 'content'
      ? ['tests/content/*.test.ts', 'tests/faults/*.test.ts']
      : [`tests/${folder}/${name === undefined ? '' : '**/'}*.test.ts`];
  return [...own, ...published, ...(BESIDES[folder] ?? [])];
}

/** Tests of whole plans. */
const WHOLE = ['tests/planner/whole/*.test.ts', 'tests/mutation.promises.ts'];

const FOLDERS = [
  ...readdirSync(join(PROJECT, 'src/planner'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => `planner/${entry.name}`)
    .sort(),
  'planner',
  'calendar',
  'content',
];

/** What Stryker would change in a folder's files. */
async function mutantsOf(folder: string): Promise<Mutant[]> {
  const below = folder === 'content' || folder.includes('/') ? '**/*.ts' : '*.ts';
  const silent = Object.fromEntries(
    ['isTraceEnabled', 'isDebugEnabled', 'trace', 'debug', 'info', 'warn', 'error', 'fatal'].map((name) => [
      name,
      () => false,
    ]),
  );
  const instrumenter = createInjector()
    .provideValue('logger', silent as never)
    .provideValue('getLogger', (() => silent) as never)
    .injectFunction(createInstrumenter as never) as {
    instrument(files: object[], options: object): Promise<{ mutants: readonly Mutant[] }>;
  };
  const files = globSync(`src/${folder}/${below}`, { cwd: PROJECT })
    .filter((name) => !name.endsWith('.d.ts'))
    .sort()
    .map((name) => ({ name, content: readFileSync(join(PROJECT, name), 'utf8'), mutate: true }));
  const { mutants } = await instrumenter.instrument(files, { plugins: null, excludedMutations: [], ignorers: [] });
  return [...mutants];
}

/** From lines and columns counted from one, as a report has them. */
const fromNought = ({ start, end }: Place): Place => ({
  start: { line: start.line - 1, column: start.column - 1 },
  end: { line: end.line - 1, column: end.column - 1 },
});

const isWording = ({ mutatorName }: { mutatorName: string }) => mutatorName === 'StringLiteral';
const keyOf = (mutant: Mutant) => `${mutant.fileName} ${mutantKey(mutant.location, mutant)}`;

function drawn(mutants: readonly Mutant[], count: number, seed: number): Mutant[] {
  if (mutants.length <= count) return [...mutants];
  const some = fc.shuffledSubarray([...mutants], { minLength: count, maxLength: count });
  return fc.sample(some, { numRuns: 1, seed })[0]!;
}

const { values } = parseArgs({
  options: {
    folder: { type: 'string', multiple: true, default: FOLDERS },
    sample: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '1' },
  },
});
mkdirSync(join(PROJECT, WORK), { recursive: true });
const base = JSON.parse(readFileSync(join(PROJECT, CONFIG), 'utf8'));

interface Tried extends Mutant {
  status: string;
}

/** Holds mutants against tests; those that Stryker could not judge are left out. */
function tryOut(mutants: readonly Mutant[], tests: readonly string[]): Tried[] {
  if (mutants.length === 0) return [];
  const [report, config, drawnFile] = ['report.json', 'config.json', 'drawn.json'].map((name) => join(WORK, name)) as [
    string,
    string,
    string,
  ];
  const mutate = mutants.map(
    ({ fileName, location: { start, end } }) =>
      `${fileName}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`,
  );
  writeFileSync(
    join(PROJECT, config),
    JSON.stringify({ ...base, mutate: [...new Set(mutate)], jsonReporter: { fileName: report } }),
  );
  const keys = new Set(mutants.map(keyOf));
  writeFileSync(join(PROJECT, drawnFile), JSON.stringify([...keys]));
  const env = { ...process.env, MUTATION_TESTS: tests.join(','), MUTATION_DRAWN: join(PROJECT, drawnFile) };
  const { status } = spawnSync('stryker', ['run', config], {
    cwd: PROJECT,
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (status !== 0) throw new Error(`stryker ended with ${status}: run it by hand with ${config}`);
  const { files } = JSON.parse(readFileSync(join(PROJECT, report), 'utf8')) as {
    files: Record<string, { mutants: Omit<Tried, 'fileName'>[] }>;
  };
  return Object.entries(files)
    .flatMap(([fileName, found]) =>
      found.mutants.map((mutant) => ({ ...mutant, fileName, location: fromNought(mutant.location) })),
    )
    .filter((mutant) => keys.has(keyOf(mutant)) && (isDead(mutant) || hasSurvived(mutant)));
}

const isDead = ({ status }: Tried) => status === 'Killed' || status === 'Timeout';
const hasSurvived = ({ status }: Tried) => status === 'Survived' || status === 'NoCoverage';

/** How many of them are dead; of those, how many only since their tests took too long, which a busy machine can cause as well. */
function score(tried: readonly Tried[]): string {
  if (tried.length === 0) return '';
  const dead = tried.filter(isDead).length;
  const late = tried.filter(({ status }) => status === 'Timeout').length;
  return `${dead}/${tried.length} = ${((100 * dead) / tried.length).toFixed(0)} %${late > 0 ? `, ${late} by time` : ''}`;
}

const rows: Record<string, object> = {};
for (const folder of values.folder) {
  const all = await mutantsOf(folder);
  const sample = [isWording, (mutant: Mutant) => !isWording(mutant)].flatMap((of) =>
    drawn(all.filter(of), Number(values.sample), Number(values.seed)),
  );
  const first = tryOut(sample, testsOf(folder));
  const left = first.filter(hasSurvived);
  const second = folder.startsWith('planner') ? tryOut(left, WHOLE) : left;
  const killed = new Set(second.filter(isDead).map(keyOf));
  const tried = first.map((mutant) => (killed.has(keyOf(mutant)) ? { ...mutant, status: 'Killed' } : mutant));
  for (const { fileName, location, mutatorName, replacement, status } of tried.filter(hasSurvived))
    console.log(
      `${fileName}:${location.start.line + 1}:${location.start.column + 1} ${status} ${mutatorName} -> ${replacement.slice(0, 80).replace(/\s+/g, ' ')}`,
    );
  rows[folder] = {
    mutants: all.length,
    code: score(tried.filter((mutant) => !isWording(mutant))),
    wording: score(tried.filter(isWording)),
  };
  console.table({ [folder]: rows[folder] });
}
console.table(rows);
