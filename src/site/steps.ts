/** Names of machines and steps for pages that speak of many machines. */
import { partsText } from '../planner/written.ts';
import { groupedByMachine } from './by-machine.ts';
import { fillIn } from './format.ts';
import { type MachineInBrief, season } from './season.ts';

const machines = new Map(season.machines.map((m) => [m.id, m]));
const steps = new Map<string, MachineInBrief['steps'][number]>(
  season.machines.flatMap((m) => m.steps.map((s) => [`${m.id}/${s.id}`, s] as const)),
);

/** A machine's name; its id where the plan has no such machine. */
export const machineName = (id: string) => machines.get(id)?.name ?? id;

/** A step's title with its amounts. */
export function stepTitle(machine: string, step: string): string {
  const found = steps.get(`${machine}/${step}`);
  return found ? fillIn(found.title, found.amounts) : step;
}

/** What a session does on one machine. */
export interface MachineWork {
  machine: string;
  titles: string[];
  /** In words, the parts that take longest. */
  parts: string;
  /** The day by which the first of it was due, where that is past. */
  overdue: string | undefined;
}

/** Steps under their machines, in the order in which the machines first come. */
export function byMachine(refs: readonly { machine: string; step: string }[]): MachineWork[] {
  return groupedByMachine(refs).map(({ machine, steps: ids }) => {
    const own = ids.flatMap((id) => steps.get(`${machine}/${id}`) ?? []);
    return {
      machine,
      titles: ids.map((id) => stepTitle(machine, id)),
      parts: partsText(own),
      overdue: own.flatMap((step) => step.overdue ?? []).sort()[0],
    };
  });
}
