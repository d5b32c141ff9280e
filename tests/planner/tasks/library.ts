/** The library of procedures as the reader gives it, for tests of the planner. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../../../src/content/check.ts';
import { procedureProblems } from '../../../src/content/cross-procedure.ts';
import { formatProblem, type Problem } from '../../../src/content/problem.ts';
import { toProcedure } from '../../../src/content/resolve-procedure.ts';
import { procedureSchema } from '../../../src/content/schemas/procedure.ts';
import { readSource } from '../../../src/content/source.ts';
import type { Procedure } from '../../../src/planner/household.ts';
import { mergeProcedures } from '../../../src/planner/tasks/index.ts';

const FOLDER = join(import.meta.dirname, '../../../content/procedures');

/** One procedure from YAML text, and what is wrong with it. */
export function readProcedure(name: string, text: string): { procedure?: Procedure; problems: Problem[] } {
  const source = readSource(`procedures/${name}.yaml`, text);
  const checked = check(source, procedureSchema);
  const problems = [...source.problems, ...checked.problems, ...procedureProblems({ id: name, source, checked })];
  return checked.value ? { procedure: toProcedure(name, checked.value, source), problems } : { problems };
}

/** Every procedure of the library; throws with all problems where there is one. */
export function library(): Procedure[] {
  const read = readdirSync(FOLDER)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => readProcedure(file.slice(0, -5), readFileSync(join(FOLDER, file), 'utf8')));
  const problems = read.flatMap((one) => one.problems);
  if (problems.length > 0) throw new Error(problems.map((problem) => formatProblem(problem)).join('\n'));
  return mergeProcedures(
    read.map((one) => one.procedure!),
    [],
  );
}
