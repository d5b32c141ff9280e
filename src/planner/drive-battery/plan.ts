/** How the drive battery of an electric machine is kept over the rest, by when it may want a charge, and what cold may do to it. */
import { isOutOfReach } from '../battery/index.ts';
import { addDays, daysBetween } from '../dates.ts';
import type { Household, IsoDate, Machine, Place } from '../household.ts';
import type { Derivation, DriveBatteryPlan, Warning } from '../season-plan.ts';
import { formatOne } from '../units/index.ts';
import { writtenDate } from '../written.ts';
import { DRIVE_CHEMISTRIES, type DriveChemistryRow } from './chemistries.ts';

export interface DriveBatteryInput {
  machine: Machine;
  place: Place;
  household: Pick<Household, 'units' | 'locale'>;
  /** The coldest that the store must be reckoned with over the rest [°C]. */
  designLowC: number;
}

/** Days to which a monthly loss is stated [d]. */
const MONTH_DAYS = 30;

/**
 * The plan of a drive battery; undefined where the machine has none.
 *
 * By when it may have to be charged again is a plain sum of a monthly loss: from the least it is left at by the fastest loss, and
 * from what a charge brings it to by the expected loss. Its own display, read at the look-ins, goes before both.
 * @param input - machine, its place, the coldest of the store
 * Source: rows of DRIVE_CHEMISTRIES; common practice.
 * Error: the loss is known within a factor of three; no temperature, age or electronics of the very battery is in it.
 */
export function planDriveBattery(
  input: DriveBatteryInput,
): { plan: DriveBatteryPlan; warnings: Warning[] } | undefined {
  const { driveBattery: battery, season } = input.machine;
  if (!battery) return undefined;
  const row = DRIVE_CHEMISTRIES[battery.chemistry];
  const { lossPctPerMonth: loss, keepPct } = row;
  const restDays = daysBetween(season.lastUse, season.firstUse);
  /** The day on which it is down to where it is charged again; undefined where that is not before the first use. */
  const dayFrom = (pct: number, monthly: number): IsoDate | undefined => {
    const days = Math.floor((MONTH_DAYS * (pct - row.rechargeBelowPct)) / monthly);
    return days < restDays ? addDays(season.lastUse, days) : undefined;
  };
  const plan: DriveBatteryPlan = {
    chemistry: battery.chemistry,
    removable: battery.removable,
    keepPct,
    chargeToPct: row.chargeToPct,
    rechargeBelowPct: row.rechargeBelowPct,
    lossPctPerMonth: { low: loss.low, expected: loss.value, high: loss.high },
    rechargeBy: dayFrom(keepPct.low, loss.high),
    rechargeExpected: dayFrom(row.chargeToPct, loss.value),
    lowestStorageC: battery.lowestStorageC,
    storeLowC: input.designLowC,
    derivations: [],
  };
  plan.derivations.push(derivationOf(plan, row, season.lastUse));
  return { plan, warnings: warningsOf(input, plan, row) };
}

function derivationOf(plan: DriveBatteryPlan, row: DriveChemistryRow, lastUse: IsoDate): Derivation {
  return {
    method: 'drive-battery.recharge',
    equation: 'day = last use + 30 d·(S0 − S1)/loss: S0 as it is left at the least with the fastest loss',
    inputs: [
      { name: 'last use', value: lastUse, unit: '' },
      { name: 'left at the least, S0', value: plan.keepPct.low, unit: '%' },
      { name: 'charged again at, S1', value: plan.rechargeBelowPct, unit: '%' },
      { name: 'fastest loss in 30 days', value: plan.lossPctPerMonth.high, unit: '%' },
      { name: 'expected loss in 30 days', value: plan.lossPctPerMonth.expected, unit: '%' },
    ],
    result: { value: plan.rechargeBy ?? 'not before first use', unit: '' },
    sources: [...row.sources],
    caveat: 'Temperature and age are not in it: its display and its manual go before it.',
  };
}

function warningsOf({ machine, place, household }: DriveBatteryInput, plan: DriveBatteryPlan, row: DriveChemistryRow) {
  // One that comes out is carried out of the cold.
  if (plan.removable) return [];
  const say = (value: number) => formatOne(value, '°C', household.units);
  const warnings: Warning[] = [];
  const common = { machine: machine.id, about: 'drive-battery' };
  const outOfReach = isOutOfReach(plan, place);
  if (outOfReach)
    warnings.push({
      ...common,
      level: plan.rechargeBy === undefined ? 'note' : 'warning',
      text: `Nothing can charge ${machine.name}'s drive battery where it rests: it does not come out, and there is no electricity at ${place.name}.${plan.rechargeBy === undefined ? '' : ` It may want a charge by ${writtenDate(plan.rechargeBy, household.locale)}.`}`,
      act: 'Let the machine rest where there is electricity, bring electricity to it, or take it to some when a look-in finds it low.',
    });
  const { storeLowC, lowestStorageC } = plan;
  if (storeLowC < lowestStorageC)
    warnings.push({
      ...common,
      level: 'warning',
      text: `${place.name} can fall to ${say(storeLowC)} in the coldest to be reckoned with: ${machine.name}'s drive battery may be kept down to ${say(lowestStorageC)}, and does not come out.`,
      act: 'Look that figure up in its manual; if it holds, rest the machine where it is milder.',
    });
  if (!outOfReach && row.minChargeC !== undefined && storeLowC < row.minChargeC)
    warnings.push({
      ...common,
      level: 'note',
      text: `${place.name} gets below ${say(row.minChargeC)}, too cold to charge ${machine.name}'s drive battery, which does not come out.`,
      act: 'When a look-in finds it low, charge it on a milder day, or bring the machine into the warm first.',
    });
  return warnings;
}
