/** What reading and planning cost: a household, a machine of it, a page between two frames. */
import { join } from 'node:path';
import { readFolder } from '../../content/read-folder.ts';
import { planBatteries, rankAssumptions } from '../../planner/battery/index.ts';
import type { Household } from '../../planner/household.ts';
import { draftMachine } from '../../planner/machine-plan.ts';
import { placeContext } from '../../planner/place-context.ts';
import { planSeason } from '../../planner/plan.ts';
import { PROJECT } from '../paths.ts';
import type { Row } from './row.ts';
import { time } from './timing.ts';

/**
 * Plan times.
 * @param folder - content of a few machines
 * @param asOf - the day of the plan
 */
export function planRows(folder: string, asOf: string): Row[] {
  const { household } = readFolder(folder, { asOf, procedures: join(PROJECT, 'content/procedures') });
  if (!household) throw new Error(`${folder} cannot be read`);
  const count = household.machines.length;
  const ms = (what: string, found: { median: number; least: number }, each = 1): Row => ({
    what,
    value: found.median / each,
    unit: 'ms',
    note: `least ${(found.least / each).toFixed(2)}`,
  });
  const fresh = (): Household => ({
    ...household,
    places: household.places.map((place) => ({ ...place, climate: { ...place.climate } })),
  });
  const one: Household = { ...household, machines: household.machines.slice(0, 1) };
  return [
    ms(
      'a machine: battery, fluids, steps, strip, ledger, assumptions ranked',
      time(() => machines(household, asOf), 40),
      count,
    ),
    ms(
      'a machine with its agenda searched and longer seasons tried',
      time(() => planSeason(household, { asOf }), 10),
      count,
    ),
    ms(
      're-plan of the page: one machine, no trials',
      time(() => planSeason(one, { asOf, quick: true }), 60),
    ),
    ms(
      'first plan of the page: weather of two places drawn',
      time(() => planSeason(fresh(), { asOf, quick: true }), 10),
    ),
  ];
}

/** Everything that is one machine's own. */
function machines(household: Household, asOf: string): unknown {
  const contextOf = (placeId: string) => placeContext(household.places.find((p) => p.id === placeId)!, household.seed);
  const contexts = new Map(household.machines.map((m) => [m.id, contextOf(m.placeId)]));
  const { plans } = planBatteries(household, asOf, contexts);
  return household.machines.map((machine) => {
    const context = contexts.get(machine.id)!;
    const plan = plans.get(machine.id);
    return [
      draftMachine(machine, household, context, plan, asOf),
      rankAssumptions(machine, { ...context, plan, asOf }, household),
    ];
  });
}
