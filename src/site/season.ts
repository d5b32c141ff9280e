/**
 * The plan that the pages show, read from the folder that the build wrote. Pages read nothing else and compute no number.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MachinePlan } from '../planner/season-plan.ts';
import { readBrief } from '../publish/brief.ts';

const folder = process.env.IDLE_PLAN;
if (!folder) throw new Error('IDLE_PLAN is not set, expected the folder with plan.json. Run "npm run build".');

/** What the build tells its pages: the plan is still being made; undefined where it cannot be. */
export interface PlanToCome {
  idleSeasonPlanning?: Promise<number | undefined>;
}

const { idleSeasonPlanning: planning } = globalThis as PlanToCome;
// Without a plan there are no pages; the build says why and ends.
if (planning && (await planning) === undefined) await new Promise<never>(() => {});

/** The household's whole plan, of its machines what pages that speak of many of them show. */
export const season = readBrief(folder);

/** The machine that was asked for last: its pages are made one after the other. */
let last: MachinePlan | undefined;

/**
 * One machine's whole plan, read from a file of its own.
 * @param id - machine id
 */
export function machinePlan(id: string): MachinePlan {
  if (last?.id !== id) last = JSON.parse(readFileSync(join(folder as string, 'machines', id, 'plan.json'), 'utf8'));
  return last as MachinePlan;
}
