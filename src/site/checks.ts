/** Published values that the calculations are checked against, and what the calculation gives for them now. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { RUNNERS } from '../planner/methods/runners.ts';

/** One published value, as tests/published/methods.json holds it. */
export interface Check {
  /** Key of the method. */
  method: string;
  what: string;
  /** Which function is asked, and with what. */
  run: string;
  in: (number | string)[];
  published: number;
  unit: string;
  tolerance: number;
  /** Why the tolerance is what it is. */
  reason: string;
  source: string;
  /** SEEN: read in the source; DERIVED: computed from such; MEMORY: from memory. */
  status: 'SEEN' | 'DERIVED' | 'MEMORY';
}

export interface CheckResult extends Check {
  ours: number;
  met: boolean;
}

/** Every check with its present result; empty where the project's tests are not at hand. */
export function runChecks(root = process.cwd()): CheckResult[] {
  const file = join(root, 'tests/published/methods.json');
  if (!existsSync(file)) return [];
  const { cases }: { cases: Check[] } = JSON.parse(readFileSync(file, 'utf8'));
  return cases.map((check) => {
    const run = RUNNERS[check.run];
    if (!run) throw new Error(`${file}: found the calculation "${check.run}", expected one of ${Object.keys(RUNNERS)}`);
    const ours = run(...check.in);
    return { ...check, ours, met: Math.abs(ours - check.published) <= check.tolerance };
  });
}
