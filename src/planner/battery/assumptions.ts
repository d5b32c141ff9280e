/**
 * Which assumption is worth a measurement: each is settled at its low and at its high end, as if it had been measured there,
 * the others left as they stand, and the battery is run again by the rule that the plan's reminders follow.
 */
import { daysBetween } from '../dates.ts';
import type { AssumedField, Battery, BatteryChemistry, Household, IsoDate, Machine, Ranged } from '../household.ts';
import type { Assumption, BatteryPlan } from '../season-plan.ts';
import type { Enclosure, StoreDesignLow, StoreYear } from '../storage/types.ts';
import { type BatteryLog, calibrate, calibratedRates } from './calibrate.ts';
import { chooseCare, roomTemperatureC, surroundings } from './care.ts';
import { CHEMISTRIES, chemistryRow } from './chemistries.ts';
import { lossCurve, lossRates, statePath } from './loss.ts';
import { type BatteryContext, careCase } from './plan.ts';
import type { Rest } from './rest.ts';
import { chargesOn, dueDays, freezingMonths, smallestMargin } from './run.ts';
import { chargesKnown, isStillOn, leadOffIndex, loggedCharges, withLayUpCharge } from './unit.ts';
import { isLeadOn } from './upkeep.ts';

/** The place of the machine, the means to try another enclosure, and the plan whose care is kept. */
export interface TrialContext extends BatteryContext {
  storeFor?: ((enclosure: Enclosure) => { store: StoreYear; designLow: StoreDesignLow }) | undefined;
  plan?: BatteryPlan | undefined;
  asOf?: IsoDate | undefined;
}

interface Setting {
  battery: Battery;
  store: StoreYear;
  designLow: StoreDesignLow;
}

interface Outcome {
  firstCharge: IsoDate | null;
  marginK: number;
  visits: number;
}

type Kept = Pick<BatteryPlan, 'care' | 'connected' | 'keptAt' | 'notKeptSince'> & {
  roomC: number;
  power: boolean;
  /** Index of the day until which a lead stayed on that comes off. */
  leadOffAt: number;
};

/**
 * Ranks a machine's assumptions by how far they move its first charge.
 *
 * The first charge is the next high-loss date of the battery by itself after the charges logged so far; a date that does not fall before first use counts as first
 * use. The shifts are against the same run with nothing settled. Care and lead stay as planned: only dates move.
 * @param machine - the machine; each entry of `assumptions` gives one row
 * @param context - store and design low of its place, `storeFor` to try another enclosure, the plan made for the battery
 * @param household - the household
 * @returns all assumptions, the one that moves the first charge most first; those that do not touch the battery have zero shifts
 */
export function rankAssumptions(machine: Machine, context: TrialContext, household: Household): Assumption[] {
  const c = careCase(machine, household, new Map([[machine.id, context]]));
  if (!c) return machine.assumptions.map((field) => row(field, machine, undefined, undefined, undefined));

  const { rest, place } = c;
  const base = { battery: c.battery, store: context.store, designLow: context.designLow };
  const kept: Kept = {
    ...(context.plan ?? chooseCare(c)),
    roomC: roomTemperatureC(household),
    power: place.power,
    leadOffAt: leadOffIndex(machine, rest, context.asOf ?? machine.season.lastUse),
  };
  const asOf = context.asOf ?? machine.season.firstUse;
  const run = (setting: Setting) => outcome(machine, setting, rest, kept, { asOf, locale: household.locale });
  const now = run(base);
  const rows = machine.assumptions.map((field) => {
    const settings = [field.low, field.high].map((end) => settle(base, place.enclosure, context, field, end));
    const [low, high] = settings.map((setting) => (setting ? run(setting) : undefined));
    return row(field, machine, now, low, high);
  });
  return rows.sort(
    (a, b) =>
      Math.abs(b.firstChargeShiftDays) - Math.abs(a.firstChargeShiftDays) ||
      largest(b.marginShiftK) - largest(a.marginShiftK),
  );
}

const largest = (shift: { low: number; high: number }) => Math.max(Math.abs(shift.low), Math.abs(shift.high));

/** The battery and the store with one value settled; undefined where the assumption does not touch them. */
function settle(
  base: Setting,
  enclosure: Enclosure,
  context: TrialContext,
  field: AssumedField,
  end: number | string,
): Setting | undefined {
  const [root, key = '', last = ''] = field.target.split('.');
  if (root === 'battery' && key === 'chemistry') {
    const chemistry = CHEMISTRIES[end as BatteryChemistry];
    if (!chemistry) return undefined;
    const { id, selfDischargePctPerMonth, doublingK } = chemistry;
    return { ...base, battery: { ...base.battery, chemistry: id, selfDischargePctPerMonth, doublingK } };
  }
  if (typeof end !== 'number') return undefined;
  if (root === 'battery') {
    const old: unknown = base.battery[key as keyof Battery];
    const ranged: Ranged = { value: end, low: end, high: end };
    if (last === 'value') return { ...base, battery: { ...base.battery, [key]: ranged } };
    return typeof old === 'number' ? { ...base, battery: { ...base.battery, [key]: end } } : undefined;
  }
  if (root === 'place' && key === 'enclosure' && context.storeFor)
    return { ...base, ...context.storeFor({ ...enclosure, [last]: end }) };
  return undefined;
}

function outcome(
  machine: Machine,
  setting: Setting,
  rest: Rest,
  kept: Kept,
  read: Pick<BatteryLog, 'asOf' | 'locale'>,
): Outcome {
  const { battery, store, designLow } = setting;
  const chemistry = chemistryRow(battery.chemistry);
  const curve = lossCurve(rest, surroundings(kept, store), battery.doublingK.value, kept.leadOffAt);
  // Of a battery on a maintainer that does not keep it, what is measured of the loss begins on the day it was found so.
  const found = kept.notKeptSince === undefined ? undefined : daysBetween(machine.season.lastUse, kept.notKeptSince);
  const log = { readings: machine.readings, charged: chargesKnown(machine), from: found, ...read };
  const wasOn = kept.connected || isStillOn(kept.leadOffAt, rest, read.asOf);
  const before = lossRates(battery, isLeadOn(battery, kept.connected, found !== undefined));
  const rates =
    machine.readings.length > 0
      ? calibratedRates(before, calibrate(battery, log, curve, lossRates(battery, wasOn), wasOn), wasOn)
      : before;
  const onMaintainer = kept.care === 'maintainer' && kept.power;
  const full = onMaintainer ? new Uint8Array(rest.days + 1).fill(1, 0, found) : undefined;
  const logged = withLayUpCharge(loggedCharges(machine, rest, read.asOf), machine, rest, read.asOf, battery);
  const last = logged.at(-1);
  const due = (pct: number, from: number) => dueDays(chemistry, curve, rates.high, pct, from);
  const days =
    onMaintainer && found === undefined
      ? []
      : found !== undefined && (last?.index ?? 0) < found
        ? [found, ...due(chemistry.chargeToPct, found)]
        : due(last?.pct ?? battery.startPct.value, last?.index ?? 0);
  const path = statePath(curve, rates.high, battery.startPct.value, [...logged, ...chargesOn(chemistry, days)], full);
  const months = freezingMonths(
    battery.chemistry,
    rest,
    path,
    kept.keptAt === 'room' ? { roomC: kept.roomC } : { designLow },
  );
  return {
    firstCharge: days[0] === undefined ? null : rest.dates[days[0]]!,
    marginK: smallestMargin(months).minK,
    visits: days.length,
  };
}

function row(
  field: AssumedField,
  machine: Machine,
  now: Outcome | undefined,
  low: Outcome | undefined,
  high: Outcome | undefined,
): Assumption {
  const { value, unit, reason, settle: line } = field;
  const none: Outcome = now ?? { firstCharge: null, marginK: 0, visits: 0 };
  const [atLow, atHigh] = [low ?? none, high ?? none];
  const shift = (end: Outcome) =>
    daysBetween(none.firstCharge ?? machine.season.firstUse, end.firstCharge ?? machine.season.firstUse);
  const [a, b] = [shift(atLow), shift(atHigh)];
  return {
    field: field.field,
    value,
    low: field.low,
    high: field.high,
    unit,
    reason,
    settle: line,
    firstChargeShiftDays: Math.abs(b) > Math.abs(a) ? b : a,
    firstChargeAt: { low: atLow.firstCharge, high: atHigh.firstCharge },
    marginShiftK: { low: atLow.marginK - none.marginK, high: atHigh.marginK - none.marginK },
    visitsShift: { low: atLow.visits - none.visits, high: atHigh.visits - none.visits },
  };
}
