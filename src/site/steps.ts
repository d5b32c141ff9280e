/** Names of machines and steps for pages that speak of many machines. */
import type { PlanStep } from '../planner/season-plan.ts';
import { fillIn } from './format.ts';
import { season } from './season.ts';

const machines = new Map(season.machines.map((m) => [m.id, m]));
const steps = new Map<string, PlanStep>(
  season.machines.flatMap((m) => m.steps.map((s) => [`${m.id}/${s.id}`, s] as const)),
);

/** A machine's name; its id where the plan has no such machine. */
export const machineName = (id: string) => machines.get(id)?.name ?? id;

/** A step's title with its amounts. */
export function stepTitle(machine: string, step: string): string {
  const found = steps.get(`${machine}/${step}`);
  return found ? fillIn(found.title, found.amounts) : step;
}

/** Steps under their machines, in the order in which the machines first come. */
export function byMachine(refs: readonly { machine: string; step: string }[]): { machine: string; titles: string[] }[] {
  const out: { machine: string; titles: string[] }[] = [];
  for (const { machine, step } of refs) {
    const title = stepTitle(machine, step);
    const last = out.find((entry) => entry.machine === machine);
    if (last) last.titles.push(title);
    else out.push({ machine, titles: [title] });
  }
  return out;
}
