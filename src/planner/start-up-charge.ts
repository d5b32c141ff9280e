/** A charge of the rest that falls on the days of the start-up is the start-up's own: nobody charges twice in a week. */
import { lookFirst } from './battery/index.ts';
import { daysBetween } from './dates.ts';
import type { IsoDate } from './household.ts';
import type { BatteryPlan, ChargeTrip, PlanStep } from './season-plan.ts';

/** Of two charges within a week one is enough. Common practice. */
const SAME_DAYS = 7;

/** Whether a step of the start-up charges the battery full: it reads the volts, and needs the charger. */
export const isStartUpCharge = (step: Pick<PlanStep, 'phase' | 'needs' | 'reading'>): boolean =>
  step.phase === 'start-up' && step.needs.charger && step.reading === 'V';

/**
 * The day from which a charge is the start-up's own: its first day, at most a week before it charges.
 * @param steps - all steps of a machine, with their days
 * @returns undefined where the start-up charges no more, or its charge has no day
 */
export function startUpChargeFrom(steps: readonly PlanStep[]): IsoDate | undefined {
  const charge = steps.find((step) => isStartUpCharge(step) && !step.done)?.date;
  if (charge === undefined) return undefined;
  return steps
    .filter(({ phase, done }) => phase === 'start-up' && !done)
    .flatMap(({ date }) => date ?? [])
    .filter((date) => date <= charge && daysBetween(date, charge) <= SAME_DAYS)
    .sort()[0];
}

/**
 * The steps without the charges that are the start-up's own. What was to be settled before the first of them, its step says.
 * @param steps - all steps of a machine, with their days
 * @param from - the day from which charges are the start-up's own
 * @param battery - its plan, with all charges
 * @param isCharge - whether a step is a charge of the rest
 */
export function withoutStartUpChargeSteps(
  steps: readonly PlanStep[],
  from: IsoDate,
  battery: BatteryPlan | undefined,
  isCharge: (step: PlanStep) => boolean,
): PlanStep[] {
  // What its last reading asks for, the step says already.
  const before = battery?.before ? undefined : battery?.charges.find(({ date }) => date >= from)?.before;
  return steps
    .filter((step) => !(isCharge(step) && !step.done && step.date! >= from))
    .map((step) => (before && isStartUpCharge(step) && !step.done ? { ...step, ...lookFirst(step, before) } : step));
}

/**
 * A battery's plan without the charges that are the start-up's own.
 * @param battery - its plan
 * @param from - the day from which they are
 */
export function withoutStartUpCharges(battery: BatteryPlan, from: IsoDate): BatteryPlan {
  const charges = battery.charges.filter(({ date }) => date < from);
  const next = battery.charges[charges.length];
  return next === undefined
    ? battery
    : {
        ...battery,
        charges,
        chargeAtStartUp: { due: next.earliest, overdue: next.overdue },
        before: battery.before ?? next.before,
      };
}

/**
 * The trips without those charges; one that served nothing else is none.
 * @param trips - of the household
 * @param from - by machine, the day from which charges are the start-up's own
 */
export function withoutStartUpTrips(trips: readonly ChargeTrip[], from: ReadonlyMap<string, IsoDate>): ChargeTrip[] {
  return trips.flatMap((trip) => {
    const isTrip = (machine: string) => trip.date < (from.get(machine) ?? '9999');
    const charges = trip.charges.filter(({ machine }) => isTrip(machine));
    return charges.length > 0 ? [{ ...trip, charges, machines: trip.machines.filter(isTrip) }] : [];
  });
}
