/** The published values that the calculations are held against, with what they give now. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type CheckResult, runChecks } from '../planner/methods/checks.ts';

/** Every check; empty where the project's tests are not at hand. */
export function checkResults(root = process.cwd()): CheckResult[] {
  const folder = join(root, 'tests', 'published');
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
  return runChecks(
    Object.fromEntries(
      files.map((file) => [file.replace(/\.json$/, ''), JSON.parse(readFileSync(join(folder, file), 'utf8'))]),
    ),
  );
}
