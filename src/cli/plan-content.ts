/** Content folder -> plan, with every problem printed: the step that build, check and bench share. */
import { join, relative } from 'node:path';
import { DateTime } from 'luxon';
import { formatProblem, type Problem } from '../content/problem.ts';
import { readFolder } from '../content/read-folder.ts';
import type { Household, IsoDate } from '../planner/household.ts';
import { planSeason } from '../planner/plan.ts';
import type { SeasonPlan } from '../planner/season-plan.ts';
import { PROJECT } from './paths.ts';

/** The day the plan is made for: as the command was told, or today where the household is. */
export function today(zone: string): IsoDate {
  return process.env.IDLE_TODAY ?? DateTime.now().setZone(zone).toISODate() ?? DateTime.utc().toISODate();
}

/**
 * Reads and plans a household; prints every problem of every file to standard error.
 * @param folder - the content folder, absolute
 * @returns the household with its plan, or undefined when there are problems
 */
export function planContent(folder: string): { household: Household; plan: SeasonPlan } | undefined {
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
  const result = planSeason(household, { asOf });
  return result.problems.length > 0 ? refuse(result.problems, folder) : { household, plan: result.plan };
}

function refuse(problems: readonly Problem[], folder: string): undefined {
  const shown = relative(process.cwd(), folder) || '.';
  for (const problem of problems) console.error(formatProblem(problem, shown));
  console.error(`${problems.length} ${problems.length === 1 ? 'problem' : 'problems'} in ${shown}: nothing was built.`);
  return undefined;
}
