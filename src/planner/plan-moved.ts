/** One machine planned anew while the others keep their days: what a slider shows between two frames. */
import type { Household, IsoDate } from './household.ts';
import { planSeason } from './plan.ts';
import type { SeasonPlan } from './season-plan.ts';

/**
 * The plan of a household of which one machine has other dates now.
 *
 * Batteries are planned for all machines, since charges share trips; the machine's own work is put into the hours that the
 * work of the others leaves. Reminders, misfits and supplies stay those of the plan before, and what a longer season would
 * cost is left out: a whole plan follows when the slider is let go.
 * @param household - with the machine's new dates
 * @param before - the household's plan with the dates before
 * @param machine - the one that has moved
 * @returns the plan before with this machine's part made anew
 */
export function planMoved(household: Household, before: SeasonPlan, machine: string): SeasonPlan {
  const others = before.machines.filter((m) => m.id !== machine);
  const taken = new Map<IsoDate, number>();
  for (const { steps } of others)
    for (const { date, done, minutes } of steps)
      if (date !== undefined && !done) taken.set(date, (taken.get(date) ?? 0) + minutes / household.hands);
  const { plan } = planSeason(household, {
    asOf: before.asOf,
    quick: { machine, taken },
    withoutReminders: true,
  });
  if (others.length === 0) return plan;
  const [own] = plan.machines;
  const ofOthers = before.sessions.flatMap((session) => {
    const steps = session.steps.filter((step) => step.machine !== machine);
    return steps.length > 0 ? [{ ...session, steps }] : [];
  });
  return {
    ...before,
    machines: before.machines.map((m) => (m.id === machine ? own! : m)),
    ledger: [...before.ledger.filter((item) => item.machine !== machine), ...plan.ledger],
    sessions: [...ofOthers, ...plan.sessions],
    trips: plan.trips,
  };
}
