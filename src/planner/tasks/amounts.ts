import { batteryWord, largestChargerA, surelyBelowV } from '../battery/index.ts';
import { daysBetween } from '../dates.ts';
import { lowTankL } from '../fuel/fill.ts';
import type { Household, IsoDate, Machine, Place, Procedure, ProcedureStep } from '../household.ts';
import type { Quantity } from '../season-plan.ts';
import { decimalsIn, formatOne, formatQuantity, type Reader, unitFor } from '../units/index.ts';
import { writtenDate } from '../written.ts';
import { AMOUNTS, namesIn } from './amount-table.ts';
import { startingMachine } from './facts.ts';
import type { PlanParts } from './parts.ts';

/** A value of the plan with its unit and whether it rests on what was assumed, or words. */
export type Amount = { value: number; unit: string; assumed?: true } | { text: string };
export type Amounts = Record<string, Amount>;

/**
 * Everything that {names} in procedures can stand for on one machine, apart from what belongs to a repetition.
 * @param machine - the machine
 * @param place - where it rests
 * @param household - whose machine it is
 * @param parts - what the calculations found
 * @returns amounts by name, in the units of amount-table.ts; names that this machine has no value for are absent
 */
export function machineAmounts(machine: Machine, place: Place, household: Household, parts: PlanParts): Amounts {
  const isOilAssumed = isAssumed(machine, 'engine.oilL');
  const values: Record<string, number | string | undefined> = {
    machine: machine.name,
    battery: batteryWord(machine),
    place: place.name,
    lastUse: writtenDate(machine.season.lastUse, household.locale),
    firstUse: writtenDate(machine.season.firstUse, household.locale),
    restDays: daysBetween(machine.season.lastUse, machine.season.firstUse),
    washAbove: 5,
    zero: 0,
    ...ROUND[household.units],
    otherMachine: startingMachine(machine, household)?.name,
    oil: machine.engine.oilL > 0 ? machine.engine.oilL : undefined,
    oilBy: isOilAssumed
      ? 'Fill a little, wait, read the mark, and go on so'
      : 'Fill nine tenths, wait, then to the mark',
    cylinders: machine.engine.cylinders,
    outlets: machine.chassis.exhaustOutlets,
    greasePoints: machine.chassis.greasePoints,
    ...fuelAmounts(machine, household, parts),
    ...coolantAmounts(machine, parts),
    ...batteryAmounts(household, parts),
    driveLow: parts.driveBattery?.keepPct.low,
    driveHigh: parts.driveBattery?.keepPct.high,
    driveRecharge: parts.driveBattery?.rechargeBelowPct,
    desiccant: desiccantToBuy(parts.corrosion.desiccant),
    desiccantDin: parts.corrosion.desiccant?.din55474Units,
    desiccantMil: parts.corrosion.desiccant?.milStd2073Units,
    dryLow: parts.corrosion.dehumidifierRhPct?.low,
    dryHigh: parts.corrosion.dehumidifierRhPct?.high,
  };
  return withUnits(
    values,
    FILLED_IN.flatMap(([name, target]) => (isAssumed(machine, target) ? [name] : [])),
  );
}

/** Amounts that say so where the reader filled their field in: an owner counts or measures what is there. */
const FILLED_IN = [
  ['oil', 'engine.oilL'],
  ['cylinders', 'engine.cylinders'],
  ['outlets', 'chassis.exhaustOutlets'],
  ['greasePoints', 'chassis.greasePoints'],
  ['bowls', 'fuel.bowls'],
] as const;

/** Figures of common practice, round in each system: 50 km or 30 mi, 6 mm or 1/4 in. */
const ROUND: Record<Household['units'], { recheck: number; mouseGap: number }> = {
  metric: { recheck: 50, mouseGap: 6 },
  us: { recheck: 30 * 1.609344, mouseGap: 25.4 / 4 },
  imperial: { recheck: 30 * 1.609344, mouseGap: 6 },
};

/** Whether a field of the machine was filled in by the reader. */
export const isAssumed = ({ assumptions }: Pick<Machine, 'assumptions'>, target: string): boolean =>
  assumptions.some((field) => field.target === target);

const UNIT_OF = new Map(AMOUNTS.map((row) => [row.name, row.unit]));
const ASSUMED_AS = new Map(AMOUNTS.flatMap((row) => (row.assumed === undefined ? [] : [[row.name, row.assumed]])));

/**
 * Puts the unit of the table to each value; leaves out what is undefined.
 * @param values - by name, numbers in the unit of amount-table.ts
 * @param assumed - names of those that rest on what was assumed
 */
export function withUnits(
  values: Record<string, number | string | undefined>,
  assumed: readonly string[] = [],
): Amounts {
  const amounts: Amounts = {};
  for (const [name, value] of Object.entries(values)) {
    if (value === undefined) continue;
    const unit = UNIT_OF.get(name);
    if (unit === undefined) throw new RangeError(`found the amount "${name}", expected a name of the table of amounts`);
    amounts[name] =
      typeof value === 'string' ? { text: value } : { value, unit, ...(assumed.includes(name) && { assumed: true }) };
  }
  return amounts;
}

/**
 * A text with every {name} written out in the household’s units.
 * @param text - with {names}
 * @param amounts - by name
 * @param reader - whose units and language
 * @returns the text, the quantities used, and the names that had no value (their place says where to look instead)
 */
export function fill(
  text: string,
  amounts: Amounts,
  reader: Reader,
): { text: string; used: Quantity[]; missing: string[] } {
  const used: Quantity[] = [];
  const missing: string[] = [];
  const own = decimalsIn(text, reader);
  if (!own.includes('{')) return { text: own, used, missing };
  const filled = own.replace(/\{([^{}]*)\}/g, (_, name: string) => {
    const amount = amounts[name];
    if (!amount) {
      missing.push(name);
      return '(see the service manual)';
    }
    if ('text' in amount) return amount.text;
    if (!used.some((quantity) => quantity.name === name)) used.push({ name, ...amount });
    const figure = printed(amount.value, unitFor(amount.unit, name), reader);
    return amount.assumed ? ASSUMED_AS.get(name)!.replace('{}', figure) : figure;
  });
  return { text: filled, used, missing };
}

/**
 * The {names} of a procedure that no row of the table of amounts gives, or that belong to another kind of repetition.
 * @param procedure - as read
 * @returns names, each once
 */
export function unknownAmounts(procedure: Pick<Procedure, 'steps'>): string[] {
  return [...new Set(procedure.steps.flatMap(unknownAmountsOf))];
}

/**
 * The {names} of one step that no row of the table gives, or that belong to another kind of repetition.
 * @param step - as read
 */
export function unknownAmountsOf(
  step: Pick<ProcedureStep, 'title' | 'detail' | 'why' | 'doNotRide' | 'each' | 'supplies'>,
): string[] {
  return amountsOf(step).filter(
    (name) => !AMOUNTS.some((row) => row.name === name && (row.each === undefined || row.each === step.each)),
  );
}

/** Every amount that a step names, in texts and supplies. */
export function amountsOf(step: Pick<ProcedureStep, 'title' | 'detail' | 'why' | 'doNotRide' | 'supplies'>): string[] {
  return [
    ...[step.title, step.detail, step.why, step.doNotRide].flatMap((text) => (text ? namesIn(text) : [])),
    ...step.supplies.flatMap((supply) => (supply.amountOf === undefined ? [] : [supply.amountOf])),
  ];
}

/** Minutes, hours and counts are the same in every system and read best rounded up to what a hand can do. */
function printed(value: number, unit: string, reader: Reader): string {
  if (unit === 'min') return `${Math.ceil(value)} min`;
  if (unit === 'd') return `${Math.round(value)} days`;
  if (unit === '') return String(Math.round(value));
  return formatQuantity(value, unit, reader);
}

function fuelAmounts(machine: Machine, household: Household, { fuel: plan }: PlanParts) {
  const { fuel } = machine;
  if (!fuel) return {};
  const date = (iso: IsoDate) => writtenDate(iso, household.locale);
  return {
    tank: fuel.tankL,
    bowls: fuel.bowls > 0 ? fuel.bowls : undefined,
    taps: fuel.taps?.count,
    can: household.fuelCare.canL,
    addFuel: plan?.choice === 'fill' ? (plan.addL ?? 0) : undefined,
    planFuel: plan?.choice === 'fill' ? plan.levelL : undefined,
    drawOffFuel: plan?.choice === 'fill' ? plan.drawOffL : undefined,
    stabiliserDose: plan?.choice === 'fill' && (plan.doseML ?? 0) > 0 ? plan.doseML : undefined,
    runMinutes: plan?.choice === 'fill' ? (plan.runMinutes ?? 0) : undefined,
    lowFuel: plan?.choice === 'leave' ? lowTankL(fuel) : undefined,
    drained: plan?.choice === 'drain' ? (plan.drainedL ?? 0) : undefined,
    cans: plan?.choice === 'drain' ? (plan.cans ?? 0) : undefined,
    drainedUseBy: plan?.choice === 'drain' ? date(plan.drainedUseBy ?? plan.useBy.earliest) : undefined,
    fuelUseBy: plan ? `between ${date(plan.useBy.earliest)} and ${date(plan.useBy.latest)}` : undefined,
    springFuel: plan?.atFirstUse.text,
    fuelLimit: plan ? plan.localLimit.text : undefined,
  };
}

function coolantAmounts(machine: Machine, { coolant: plan }: PlanParts) {
  const { coolant } = machine.cooling;
  if (!coolant || !plan) return {};
  return {
    coolantVolume: coolant.volumeL,
    coolantNeed: plan.aimC,
    coolantSwap: (plan.replaceL ?? 0) > 0 ? plan.replaceL : undefined,
    coolantRefill: coolant.refillStrength * 100,
  };
}

function batteryAmounts(household: Household, { battery: plan }: PlanParts) {
  if (!plan) return {};
  return {
    batteryCapacity: plan.capacityAh,
    chargeCurrent: largestChargerA(plan),
    threshold: plan.thresholdPct,
    thresholdVolts: formatOne(surelyBelowV(plan.chemistry), 'V', household, 2),
    batteryRoom: plan.keptAt === 'room' ? (household.batteryRoom?.name ?? 'a warm, dry room') : undefined,
  };
}

/** The two standards disagree; the larger number is the safe one. */
function desiccantToBuy(bag: PlanParts['corrosion']['desiccant']): number | undefined {
  return bag && Math.max(bag.din55474Units, bag.milStd2073Units);
}
