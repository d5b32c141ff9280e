/** What going on riding for some more days would cost: the same plan made again with a later last day of use. */
import { whatChanges } from './agenda/index.ts';
import { visitMinutes } from './agenda-tasks.ts';
import { planBatteries } from './battery/index.ts';
import { addDays } from './dates.ts';
import type { Household, IsoDate, Machine } from './household.ts';
import { householdAgenda } from './household-agenda.ts';
import { type DraftMachine, draftMachine } from './machine-plan.ts';
import type { PlaceContext } from './place-context.ts';
import { withTickedCharges } from './recorded.ts';
import type { Misfit, WhatIf } from './season-plan.ts';

/** Days more that are tried. */
const TRIALS = [7, 14, 28];

/** A machine with its own agenda, as if nothing else waited for the bench. */
export interface Trial {
  draft: DraftMachine;
  misfits: Misfit[];
  dateOf: ReadonlyMap<string, IsoDate>;
}

/**
 * Tries longer seasons for one machine, those that would not be over already. Other machines are left out of account: the
 * trial says what gets tighter for this one even with the whole bench to itself.
 * @param asWritten - the machine as the household has it
 * @param household - whose machine it is
 * @param context - what the weather makes of its place
 * @param asOf - the day the plan is made for
 */
export function whatIfLater(asWritten: Machine, household: Household, context: PlaceContext, asOf: IsoDate): WhatIf[] {
  const machine = withTickedCharges(asWritten, household.procedures);
  const tried = TRIALS.map((days) => ({ days, lastUse: addDays(machine.season.lastUse, days) })).filter(
    ({ lastUse }) => lastUse >= asOf && lastUse < machine.season.firstUse,
  );
  if (tried.length === 0) return [];
  const now = alone(machine, context, household, asOf);
  return tried.map(({ days, lastUse }) => {
    const season = { ...machine.season, lastUse };
    const then = alone({ ...machine, season }, context, household, asOf);
    const changes = whatChanges(now, then, household.locale);
    return {
      days,
      lastUse,
      text: changes.text,
      missed: changes.missed,
      firstChargeDate: then.draft.battery?.charges[0]?.date,
      misfitHours: changes.misfitHours,
      coldestNightC: coldestNight(machine, context, days),
    };
  });
}

function alone(machine: Machine, context: PlaceContext, household: Household, asOf: IsoDate): Trial {
  const single: Household = { ...household, machines: [machine] };
  const { plans } = planBatteries(single, asOf, new Map([[machine.id, context]]));
  const draft = draftMachine(machine, single, context, plans.get(machine.id), asOf);
  const { misfits, dateOf } = householdAgenda([draft], single, {
    asOf,
    places: [context.place],
    busy: visitMinutes([draft]),
    quick: true,
  });
  return { draft, misfits, dateOf };
}

/** The typical low outdoors between the planned and the tried last day. */
function coldestNight(machine: Machine, context: PlaceContext, days: number): number {
  const from = machine.season.lastUse;
  const months = new Set<number>();
  for (let d = 0; d <= days; d++) months.add(Number(addDays(from, d).slice(5, 7)));
  return Math.min(...[...months].map((month) => context.outdoors.typicalC[month - 1]!));
}
