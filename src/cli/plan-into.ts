/**
 * The first half of `npm run build`, in a process of its own: plans, and writes everything that is published beside the pages
 * into a folder that the pages are then built from. Its memory is free again before the pages are built.
 *
 *   node src/cli/plan-into.ts <folder>    prints the number of machines; exit code 1 where something is wrong
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { bundledProcedures } from '../content/read-folder.ts';
import { readProcedures } from '../content/read-procedures.ts';
import type { Procedure } from '../planner/household.ts';
import { publishInputs } from '../publish/inputs.ts';
import { publish } from '../publish/write.ts';
import { contentFolder, PROJECT } from './paths.ts';
import { planContent } from './plan-content.ts';

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('found no folder, expected one to write the plan into');
const planned = await planContent(contentFolder());
if (!planned) process.exit(1);
publish(planned.plan, folder);
publishInputs(planned.household, planned.plan, folder, bundledBeside());
console.log(planned.plan.machines.length);

/** The procedures that come with the program, where the household has some of its own besides. */
function bundledBeside(): Procedure[] | undefined {
  const bundled = bundledProcedures(join(PROJECT, 'content', 'procedures'), contentFolder());
  const hasOwn = existsSync(join(contentFolder(), 'procedures'));
  return hasOwn && bundled.length > 0 ? readProcedures(bundled).procedures : undefined;
}
