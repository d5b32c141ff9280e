/**
 * What the page of a machine needs to plan it anew when something is written into its record there: the household as the planner
 * took it, whole, or of a large one the part that decides the machine's charges.
 */
import { join } from 'node:path';
import type { Household, IsoDate, Machine, Procedure } from '../planner/household.ts';
import type { SeasonPlan } from '../planner/season-plan.ts';
import { startUpChargeFrom } from '../planner/start-up-charge.ts';
import { inputPath, WHOLE_AT_MOST } from './input-path.ts';
import { writeFile } from './write-file.ts';

/** A household as it is published. */
export interface PublishedInput extends Omit<Household, 'procedures'> {
  /** False where machines are left out, so that sessions and the numbers of trips are not those of the household. */
  whole: boolean;
  /** Where machines are left out: by machine, the day from which a charge is its start-up's own. */
  chargedFrom?: Record<string, IsoDate> | undefined;
  /** Path of its procedures: those that come with the program, or the household's own with them. */
  procedures: string;
}

/** The procedures that come with the program: the planner page has no others. */
const BUNDLED = 'plan/procedures.json';
const OWN = 'procedures.json';

/**
 * Writes what the machines' pages plan from.
 * @param household - as it was planned
 * @param plan - its plan
 * @param folder - the built site
 * @param bundled - the procedures that come with the program; undefined where the household has no others
 */
export function publishInputs(
  household: Household,
  plan: SeasonPlan,
  folder: string,
  bundled: readonly Procedure[] | undefined,
): void {
  const write = (path: string, data: unknown) => writeFile(join(folder, path), JSON.stringify(data), '\n');
  write(BUNDLED, bundled ?? household.procedures);
  if (bundled) write(OWN, household.procedures);
  const procedures = bundled ? OWN : BUNDLED;
  const { machines } = household;
  if (machines.length <= WHOLE_AT_MOST) {
    const input: PublishedInput = { ...household, procedures, whole: true };
    write('household.json', input);
    return;
  }
  const chargedFrom = Object.fromEntries(
    plan.machines.flatMap(({ id, steps }) => {
      const from = startUpChargeFrom(steps);
      return from === undefined ? [] : [[id, from]];
    }),
  );
  for (const machine of machines) {
    const path = inputPath(machines.length, machine.id, machine.battery !== undefined);
    if (path === undefined) continue;
    const part = partFor(machine, household, plan);
    const own = part.machines.flatMap(({ id }) => (chargedFrom[id] === undefined ? [] : [[id, chargedFrom[id]]]));
    const input: PublishedInput = { ...part, procedures, whole: false, chargedFrom: Object.fromEntries(own) };
    write(path, input);
  }
}

/** The part of a household that decides one machine's charges. */
function partFor(machine: Machine, household: Household, plan: SeasonPlan): Household {
  const sharing = new Set(plan.trips.filter((t) => t.machines.includes(machine.id)).flatMap((t) => t.machines));
  const machines = household.machines.flatMap((m) =>
    m.id === machine.id ? [m] : sharing.has(m.id) ? [batteryPart(m)] : [],
  );
  return { ...household, machines, places: household.places.filter((p) => machines.some((m) => m.placeId === p.id)) };
}

/** Jobs, assemblies, papers, notes and assumptions move no charge. */
function batteryPart(machine: Machine): Machine {
  return { ...machine, jobs: [], assemblies: [], services: [], paperwork: [], notes: [], asLeft: [], assumptions: [] };
}
