/** Writes what the planner made into folders: the files the pages are built from, and the files that are published. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { calendarWriter } from '../calendar/index.ts';
import type { SeasonPlan } from '../planner/season-plan.ts';
import { writePlan } from './plan-file.ts';
import { planJsonSchema } from './plan-schema.ts';
import { writeFile } from './write-file.ts';

/**
 * Writes `plan.json` (the household, without the battery's daily paths) and `machines/<id>/plan.json` (each machine whole).
 * @param plan - the plan
 * @param folder - made when it is not there
 */
export function writePlanFiles(plan: SeasonPlan, folder: string): void {
  mkdirSync(folder, { recursive: true });
  writePlan(plan, join(folder, 'plan.json'), (id, json) =>
    writeFile(join(folder, 'machines', id, 'plan.json'), ...json, '\n'),
  );
}

/**
 * Adds to a built site everything that is not a page: plan files, their schema, calendar files.
 * @param plan - the plan the pages were built from
 * @param folder - the built site
 */
export function publish(plan: SeasonPlan, folder: string): void {
  writePlanFiles(plan, folder);
  writeFile(join(folder, 'plan.schema.json'), `${JSON.stringify(planJsonSchema(), null, 2)}\n`);
  const calendar = calendarWriter(plan);
  writeFile(join(folder, 'calendar', 'all.ics'), calendar());
  for (const { id } of plan.machines) writeFile(join(folder, 'calendar', `${id}.ics`), calendar(id));
}
