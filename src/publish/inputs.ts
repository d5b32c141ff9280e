/**
 * What the page of a machine needs to plan it anew when something is written into its record there: the household as the planner
 * took it, whole, or of a large one the part that decides the machine's charges.
 */
import { join } from 'node:path';
import type { Household, IsoDate, Machine, Procedure } from '../planner/household.ts';
import type { ChargeTrip, SeasonPlan } from '../planner/season-plan.ts';
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
  const { machines: _, places, ...common } = household;
  const sharing = sharedTrips(plan.trips);
  // Each machine stands in the files of all that share a trip with it: made into text once.
  const parts = new Map(machines.map((machine) => [machine.id, Buffer.from(JSON.stringify(batteryPart(machine)))]));
  for (const machine of machines) {
    const path = inputPath(machines.length, machine.id, machine.battery !== undefined);
    if (path === undefined) continue;
    const shown = machines.filter(({ id }) => id === machine.id || sharing.get(machine.id)?.has(id));
    const input: Omit<PublishedInput, 'machines'> = {
      ...common,
      places: places.filter((p) => shown.some((m) => m.placeId === p.id)),
      procedures,
      whole: false,
      chargedFrom: Object.fromEntries(
        shown.flatMap(({ id }) => (chargedFrom[id] === undefined ? [] : [[id, chargedFrom[id]]])),
      ),
    };
    const texts = shown.flatMap((m, i) => [i === 0 ? '' : ',', m === machine ? JSON.stringify(m) : parts.get(m.id)!]);
    writeFile(join(folder, path), JSON.stringify(input).slice(0, -1), ',"machines":[', ...texts, ']}\n');
  }
}

/** By machine, those that are charged on one of its trips, itself among them. */
function sharedTrips(trips: readonly ChargeTrip[]): ReadonlyMap<string, ReadonlySet<string>> {
  const sharing = new Map<string, Set<string>>();
  for (const { machines } of trips)
    for (const id of machines) sharing.set(id, new Set([...(sharing.get(id) ?? []), ...machines]));
  return sharing;
}

/** Jobs, assemblies, papers, notes and assumptions move no charge. */
function batteryPart(machine: Machine): Machine {
  return { ...machine, jobs: [], assemblies: [], services: [], paperwork: [], notes: [], asLeft: [], assumptions: [] };
}
