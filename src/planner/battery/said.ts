/** What is to be warned of at a battery besides its cold and its maintainer: its charger, and what its log tells. */
import type { Household } from '../household.ts';
import type { BatteryPlan, Warning } from '../season-plan.ts';
import { LEAD_DAYS } from '../tasks/parts.ts';
import { writtenDate } from '../written.ts';
import { OUT_OF_REACH_ACT } from './charge.ts';
import { batteryName } from './name.ts';
import type { BatteryUnit } from './unit.ts';

/**
 * Nothing of the household can charge the battery: a warning where charges are due or the chargers at hand are made for another
 * kind; a note where it is only charged at lay-up and start-up, and a charger has to be got for that.
 */
export function chargerWarnings(unit: BatteryUnit, plan: BatteryPlan, household: Household): Warning[] {
  const { machine, battery, care } = unit;
  if (unit.outOfReach) return [outOfReachWarning(unit, plan, household)];
  const {
    charges: [first],
    chargeWithoutDay,
    chargeAtStartUp,
  } = plan;
  const { chargers, locale } = household;
  const { none } = care.chargers;
  // That a maintainer is lacking is told already.
  if (!none || (care.care === 'maintainer' && !first)) return [];
  const own = batteryName(machine);
  const isOther = chargers.length > 0 && chargers.every((c) => !c.chemistries.includes(battery.chemistry));
  const isDue = first !== undefined || (chargeWithoutDay ?? chargeAtStartUp) !== undefined;
  // What was charged for the start-up, or is out of its rest, needs none any more.
  const isOver =
    machine.chargedAtStartUp !== undefined || unit.firstDay > unit.rest.firstDay + unit.rest.days + LEAD_DAYS;
  if (!isDue && isOver) return [];
  const when = machine.chargedAtLayUp === undefined ? 'at lay-up and before the first start' : 'before the first start';
  const need = first
    ? `${own} has to be charged, first on ${writtenDate(first.date, locale)}`
    : isDue
      ? `${own} has to be charged`
      : `No charge falls due while it rests, but ${own} is charged ${when}`;
  return [
    {
      machine: machine.id,
      level: isDue || isOther ? 'warning' : 'note',
      text: `${need}, and no charger serves it. ${none.why}`,
      act: none.act,
      about: 'charger',
    },
  ];
}

/**
 * A battery that nothing can charge where it rests: by when it runs down, and what can be done. A note where it lasts the rest.
 */
function outOfReachWarning(
  { machine, place, row }: BatteryUnit,
  { chargeWithoutDay, chargeAtStartUp }: BatteryPlan,
  { locale }: Household,
): Warning {
  const due = chargeWithoutDay ?? chargeAtStartUp?.due;
  const need =
    due === undefined
      ? 'It lasts the rest by itself, but has to be charged before the rest and before the first start.'
      : `At its fastest loss it is down to ${row.thresholdPct} % on ${writtenDate(due, locale)}: below that ${row.acid ? 'it sulphates, and freezes sooner' : 'its own electronics may shut it off for good'}.`;
  return {
    machine: machine.id,
    level: due === undefined ? 'note' : 'warning',
    text: `Nothing can charge ${batteryName(machine)} where it rests: it does not come out of the machine, and there is no electricity at ${place.name}. ${need}`,
    act: OUT_OF_REACH_ACT,
    about: 'battery',
  };
}

/** What is wrong in the log of a battery, and what its readings suggest. */
export function logWarnings(unit: BatteryUnit): Warning[] {
  const { machine, calibration } = unit;
  const common = { machine: machine.id, about: 'battery' };
  const found: Warning[] = (calibration.result?.problems ?? []).map((text) => ({
    ...common,
    level: 'note' as const,
    text: `${batteryName(machine)}, reading of ${text}`,
    act: 'Correct the log, or add the charge that was left out.',
  }));
  const suggests = calibration.result?.suggests;
  if (suggests)
    found.push({
      ...common,
      level: 'warning',
      text: `${batteryName(machine)}: ${suggests}`,
      act: 'Check the battery before the machine is relied on.',
    });
  return found;
}
