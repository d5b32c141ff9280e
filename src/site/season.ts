/**
 * The plan that the pages show, read from the folder that the build wrote. Pages read nothing else and compute no number.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BatteryPlan, MachinePlan, PlanStep } from '../planner/season-plan.ts';
import { type PlanWith, readPlan } from '../publish/plan-file.ts';

const folder = process.env.IDLE_PLAN;
if (!folder) throw new Error('IDLE_PLAN is not set, expected the folder with plan.json. Run "npm run build".');

/** What the build tells its pages: the plan is still being made; undefined where it cannot be. */
export interface PlanToCome {
  idleSeasonPlanning?: Promise<number | undefined>;
}

const { idleSeasonPlanning: planning } = globalThis as PlanToCome;
// Without a plan there are no pages; the build says why and ends.
if (planning && (await planning) === undefined) await new Promise<never>(() => {});

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

/** What pages that speak of many machines show of each: a part of its plan, so that a thousand are at hand. */
export interface MachineInBrief extends Pick<MachinePlan, (typeof OF_MACHINE)[number]> {
  battery?: Pick<BatteryPlan, 'charges'> | undefined;
  steps: Pick<PlanStep, (typeof OF_STEP)[number]>[];
}

/** The household's whole plan, of its machines what such pages show. */
export const season: PlanWith<MachineInBrief> = readPlan(join(folder, 'plan.json'), (machine) => ({
  ...picked(machine, OF_MACHINE),
  battery: machine.battery && picked(machine.battery, ['charges']),
  steps: machine.steps.map((step) => picked(step, OF_STEP)),
}));

function picked<T, K extends keyof T>(from: T, keys: readonly K[]): Pick<T, K> {
  const part = {} as Pick<T, K>;
  for (const key of keys) part[key] = from[key];
  return part;
}

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
