/**
 * The plan that the pages show, read from the folder that the build wrote. Pages read nothing else and compute no number.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MachinePlan, SeasonPlan } from '../planner/season-plan.ts';
import { readPlan } from '../publish/plan-file.ts';

const folder = process.env.IDLE_PLAN;
if (!folder) throw new Error('IDLE_PLAN is not set, expected the folder with plan.json. Run "npm run build".');

/** What the build tells its pages: the plan is still being made; undefined where it cannot be. */
export interface PlanToCome {
  idleSeasonPlanning?: Promise<number | undefined>;
}

const { idleSeasonPlanning: planning } = globalThis as PlanToCome;
// Without a plan there are no pages; the build says why and ends.
if (planning && (await planning) === undefined) await new Promise<never>(() => {});

/** The household's whole plan, without the daily paths. */
export const season: SeasonPlan = readPlan(join(folder, 'plan.json'));

const byId = new Map(season.machines.map((machine) => [machine.id, machine]));

/**
 * One machine's plan as the household's has it: without the daily battery paths, which only the machine's own page draws.
 * @param id - machine id
 */
export function machineOf(id: string): MachinePlan {
  return byId.get(id)!;
}

/**
 * One machine's plan with its daily battery paths, read from a file of its own.
 * @param id - machine id
 */
export function machinePlan(id: string): MachinePlan {
  return JSON.parse(readFileSync(join(folder as string, 'machines', id, 'plan.json'), 'utf8'));
}

/** Paths of `getStaticPaths` for the pages of each machine. */
export const machinePaths = () => season.machines.map(({ id }) => ({ params: { id } }));
