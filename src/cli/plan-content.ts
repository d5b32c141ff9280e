/** Content folder -> plan, with every problem printed: the step that build, check and bench share. */
import { join, relative } from 'node:path';
import { DateTime } from 'luxon';
import { formatProblem, type Problem } from '../content/problem.ts';
import { readFolder } from '../content/read-folder.ts';
import type { Household, IsoDate } from '../planner/household.ts';
import { planSeason } from '../planner/plan.ts';
import type { SeasonPlan, WhatIf } from '../planner/season-plan.ts';
import { PROJECT } from './paths.ts';
import { whatIfBeside } from './what-if-beside.ts';

/** The day the plan is made for: as the command was told, or today where the household is. */
export function today(zone: string): IsoDate {
  return process.env.IDLE_TODAY ?? DateTime.now().setZone(zone).toISODate() ?? DateTime.utc().toISODate();
}

/** Up to so many machines a second thread takes longer to start than it saves. */
const FEW = 30;

/**
 * Reads and plans a household; prints every problem of every file to standard error.
 * @param folder - the content folder, absolute
 * @returns the household with its plan, or undefined when there are problems
 */
export async function planContent(folder: string): Promise<{ household: Household; plan: SeasonPlan } | undefined> {
  let asOf = '';
  const { household, problems } = readFolder(folder, {
    asOf: (zone) => {
      asOf = today(zone);
      return asOf;
    },
    procedures: join(PROJECT, 'content', 'procedures'),
    library: join(PROJECT, 'public', 'climate', 'normals.json'),
  });
  if (!household) return refuse(problems, folder);
  const whatIf = household.machines.length > FEW ? whatIfBeside(household, asOf) : undefined;
  let made: ReturnType<typeof planSeason>;
  try {
    made = planSeason(household, { asOf, withoutWhatIf: whatIf !== undefined });
  } catch (error) {
    // A bound of a model that no rule of the content knows: told in its words, not by a stack.
    if (!(error instanceof RangeError)) throw error;
    console.error(`This household cannot be planned: ${error.message}. Look for that figure in its files.`);
    return undefined;
  }
  const { plan, problems: unsafe } = made;
  if (unsafe.length > 0) return refuse(unsafe, folder);
  return { household, plan: whatIf ? withWhatIf(plan, await whatIf()) : plan };
}

function withWhatIf(plan: SeasonPlan, whatIf: readonly WhatIf[][]): SeasonPlan {
  return { ...plan, machines: plan.machines.map((machine, i) => ({ ...machine, whatIf: whatIf[i]! })) };
}

function refuse(problems: readonly Problem[], folder: string): undefined {
  const shown = relative(process.cwd(), folder) || '.';
  for (const problem of problems) console.error(formatProblem(problem, shown));
  console.error(`${problems.length} ${problems.length === 1 ? 'problem' : 'problems'} in ${shown}: nothing was built.`);
  return undefined;
}
