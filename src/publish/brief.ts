/**
 * The household's plan as the pages that speak of many machines read it: a part of each machine's plan, so that a thousand are at
 * hand and quickly read. For the building of pages; it is not published.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BatteryPlan, MachinePlan, PlanStep, SeasonPlan } from '../planner/season-plan.ts';
import { stringSharing } from './shared-strings.ts';
import { writeFile } from './write-file.ts';

/** Its file in the folder of the plan. */
export const BRIEF = 'brief.json';

const OF_MACHINE = [
  'id',
  'name',
  'kind',
  'place',
  'placeName',
  'spot',
  'season',
  'layUp',
  'startUp',
  'strip',
  'warnings',
] as const satisfies (keyof MachinePlan)[];
const OF_STEP = [
  'id',
  'title',
  'amounts',
  'part',
  'minutes',
  'date',
  'done',
  'overdue',
] as const satisfies (keyof PlanStep)[];

export interface MachineInBrief extends Pick<MachinePlan, (typeof OF_MACHINE)[number]> {
  battery?: Pick<BatteryPlan, 'charges'> | undefined;
  steps: Pick<PlanStep, (typeof OF_STEP)[number]>[];
}

/** A household's plan with something of each machine. */
export type PlanWith<Part> = Omit<SeasonPlan, 'machines'> & { machines: Part[] };

/**
 * Writes the plan in brief.
 * @param plan - the plan
 * @param folder - of the plan
 */
export function writeBrief(plan: SeasonPlan, folder: string): void {
  const brief: PlanWith<MachineInBrief> = { ...plan, machines: plan.machines.map(inBrief) };
  writeFile(join(folder, BRIEF), JSON.stringify(brief), '\n');
}

/**
 * Reads the plan in brief.
 * @param folder - of the plan
 */
export function readBrief(folder: string): PlanWith<MachineInBrief> {
  return stringSharing()(JSON.parse(readFileSync(join(folder, BRIEF), 'utf8')));
}

function inBrief(machine: MachinePlan): MachineInBrief {
  return {
    ...picked(machine, OF_MACHINE),
    battery: machine.battery && picked(machine.battery, ['charges']),
    steps: machine.steps.map((step) => picked(step, OF_STEP)),
  };
}

function picked<T, K extends keyof T>(from: T, keys: readonly K[]): Pick<T, K> {
  const part = {} as Pick<T, K>;
  for (const key of keys) part[key] = from[key];
  return part;
}
