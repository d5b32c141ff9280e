/** Charges that come after their day, or that no charger has room for: what is said of them. */
import { isoOfDay } from '../dates.ts';
import type { Household } from '../household.ts';
import type { BatteryPlan, Charge, Warning } from '../season-plan.ts';
import { writtenDate } from '../written.ts';
import { batteryName } from './name.ts';
import { IF_CHARGED, type Rota, type RotaCharge } from './rota.ts';
import type { BatteryUnit } from './unit.ts';

/** So many late charges of a battery are said one by one. */
const LATE_SAID = 3;

/** Whether a charge was due before any day that it can still fall on. */
export const isOverdue = ({ day, due }: RotaCharge, { firstDay }: Pick<BatteryUnit, 'firstDay'>): boolean =>
  day > due && due < firstDay;

/**
 * The warnings of a battery's late charges: each by itself, or all in one where they are many.
 * @param unit - the battery
 * @param rota - of the household
 * @param plan - of the battery; none where only another's is asked for
 * @param household - its chargers' owner, and reader
 */
export function lateWarnings(
  unit: BatteryUnit,
  rota: Rota,
  plan: BatteryPlan | undefined,
  household: Household,
): Warning[] {
  const { id } = unit.machine;
  const late = rota.charges
    .filter(({ machine, problem }) => machine === id && problem !== undefined)
    .sort((a, b) => a.day - b.day);
  const beforeOf = ({ day }: RotaCharge) => plan?.charges.find(({ date }) => date === isoOfDay(day))?.before;
  if (late.length > LATE_SAID) return [manyLate(unit, late, household, beforeOf(late[0]!))];
  return late.map((charge) => {
    const before = beforeOf(charge);
    const act = actOn(charge, unit, household, before);
    return { machine: id, level: levelOf(before), text: charge.problem!, act, about: 'battery' };
  });
}

/** A battery that may be frozen bursts on the charger, one that was run down burns: to be settled before it is charged. */
const levelOf = (before: Charge['before']): Warning['level'] =>
  before === undefined || before.kind === 'low' ? 'warning' : 'danger';

/** Many charges that come late are one matter: it loses too fast for the days there are. */
function manyLate(
  { machine, leadOn }: BatteryUnit,
  late: readonly RotaCharge[],
  { locale }: Household,
  before: Charge['before'],
): Warning {
  const day = (charge: RotaCharge) => writtenDate(isoOfDay(charge.day), locale);
  return {
    machine: machine.id,
    level: levelOf(before),
    text: `${late.length} charges of ${batteryName(machine)}, from ${day(late[0]!)} to ${day(late.at(-1)!)}, come late or find no charger free: it loses too fast for the days there are.`,
    act: `${said(before)}So many charges are no plan: ${leadOn ? 'take its negative lead off, or ' : ''}keep it on a maintainer that works, or free more days.`,
    about: 'battery',
  };
}

/** What to do about a charge that is late, or that no charger has room for. */
function actOn(charge: RotaCharge, unit: BatteryUnit, { locale }: Household, before: Charge['before']): string {
  const act = isOverdue(charge, unit)
    ? `Do it then at the latest: ${unit.row.acid ? 'below its threshold a battery ages, and freezes sooner' : 'below its threshold its own electronics may shut it off for good'}. ${IF_CHARGED}`
    : `Charge on ${writtenDate(isoOfDay(charge.day), locale)} at the latest; any earlier day on which there is time and a charger for it is better.`;
  return `${said(before)}${act}`;
}

const said = (before: Charge['before']) => (before ? `${before.text} ` : '');
