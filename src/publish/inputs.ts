/**
 * What the page of a machine needs to work its charges out again when a reading is logged there: the household as the planner
 * took it, without procedures, and with no other machine than those whose charges share its trips.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Household, Machine } from '../planner/household.ts';
import type { SeasonPlan } from '../planner/season-plan.ts';

/** A household as it is published: procedures are the same for everybody and lie in a file of their own. */
export type PublishedInput = Omit<Household, 'procedures'>;

/**
 * Writes `machines/<id>/input.json` for every machine with a battery.
 * @param household - as it was planned
 * @param plan - its plan
 * @param folder - the built site
 */
export function publishInputs(household: Household, plan: SeasonPlan, folder: string): void {
  for (const machine of household.machines) {
    if (!machine.battery) continue;
    const to = join(folder, 'machines', machine.id);
    mkdirSync(to, { recursive: true });
    writeFileSync(join(to, 'input.json'), `${JSON.stringify(inputOf(household, plan, machine))}\n`);
  }
}

/** The part of a household that decides one machine's charges. */
export function inputOf(household: Household, plan: SeasonPlan, machine: Machine): PublishedInput {
  const sharing = new Set([
    machine.id,
    ...plan.trips.filter((t) => t.machines.includes(machine.id)).flatMap((t) => t.machines),
  ]);
  const machines = household.machines.filter((m) => sharing.has(m.id)).map(batteryPart);
  const places = household.places.filter((p) => machines.some((m) => m.placeId === p.id));
  const { procedures: _, ...rest } = household;
  return { ...rest, places, machines };
}

/** Jobs, assemblies, papers, notes and assumptions move no charge. */
function batteryPart(machine: Machine): Machine {
  return { ...machine, jobs: [], assemblies: [], services: [], paperwork: [], notes: [], asLeft: [], assumptions: [] };
}
