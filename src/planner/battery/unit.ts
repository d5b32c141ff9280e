/** One battery with its care, its loss rates and what the log says of it: what the rota and the plan are made from. */
import { dayNumber, earlier, later } from '../dates.ts';
import type { Battery, Charger, Household, IsoDate, Machine, Place } from '../household.ts';
import type { StoreDesignLow, StoreYear } from '../storage/types.ts';
import { windowsOf } from '../tasks/parts.ts';
import type { Manner } from '../written.ts';
import { type Calibration, calibrate, calibratedRates } from './calibrate.ts';
import { type Care, FAR_MINUTES, surroundings } from './care.ts';
import { chargeAh, chargeHours, isOutOfReach, largestChargeA } from './charge.ts';
import { type ChemistryRow, chemistryRow } from './chemistries.ts';
import {
  dayReached,
  type LossCurve,
  type LossRate,
  type LossRates,
  lossCurve,
  lossPct,
  lossRates,
  type Reset,
  statePath,
} from './loss.ts';
import { batteryName } from './name.ts';
import { type JudgedReading, judgeReadings } from './readings.ts';
import type { Rest } from './rest.ts';
import type { RotaBattery } from './rota-battery.ts';
import { firstTripEnd } from './run.ts';
import { isLeadOn, readingText, type Upkeep, unanswered, upkeepOf } from './upkeep.ts';

/** A reading surer than this tells the state of charge by itself; of a vaguer one its upper end is what is left at most [%]. */
const SURE_PCT = 15;

export interface BatteryUnit {
  machine: Machine;
  battery: Battery;
  place: Place;
  rest: Rest;
  store: StoreYear;
  designLow: StoreDesignLow;
  care: Care;
  row: ChemistryRow;
  curve: LossCurve;
  /** Leads on, as its loss is reckoned. */
  leadOn: boolean;
  /** A lead that is to come off is on to this day, as far as the record tells. */
  stillOn: boolean;
  rates: LossRates;
  /** The rates before anything was read. */
  tableRates: LossRates;
  calibration: Calibration;
  /** Kept full by a charger that stays on, as far as readings tell. */
  maintained: boolean;
  /** It stays in the machine, and nothing can charge it there. */
  outOfReach: boolean;
  /** How it was kept; undefined where no maintainer can be on it. */
  upkeep?: Upkeep | undefined;
  /** Charges that the record holds, that of the lay-up among them. */
  logged: Reset[];
  /** How many of them are charges of the rest. */
  chargesMade: number;
  /** Those, and readings that lower the high-loss path. */
  loggedHigh: Reset[];
  firstDay: number;
  /** Charged after the first use was to be: nothing is due any more. */
  chargedSince: boolean;
  /** Language and units of its texts. */
  manner: Manner;
}

/**
 * Puts a battery together.
 * @param base - machine, battery, place, rest, store and care
 * @param manner - language and units of what is said of it
 * @param asOf - the day the plan is made for
 */
export function batteryUnit(
  base: Pick<BatteryUnit, 'machine' | 'battery' | 'place' | 'rest' | 'store' | 'designLow' | 'care'>,
  manner: Manner,
  asOf: IsoDate,
): BatteryUnit {
  const { machine, battery, place, rest, care } = base;
  const row = chemistryRow(battery.chemistry);
  const leadOffAt = leadOffIndex(machine, rest, asOf);
  const curve = lossCurve(rest, surroundings(care, base.store), battery.doublingK.value, leadOffAt);
  const log = { readings: machine.readings, charged: chargesKnown(machine), asOf, locale: manner.locale };
  const made = loggedCharges(machine, rest, asOf);
  const logged = withLayUpCharge(made, machine, rest, asOf, battery);
  const upkeep = isOnMaintainer(care, place)
    ? upkeepOf(row, judgeReadings(battery, log, rest), logged, rest.days)
    : undefined;
  // While nobody took it off, what was read was read with it on.
  const wasOn = care.connected || isStillOn(leadOffAt, rest, asOf);
  const calibration = calibrationOf(upkeep, (from) =>
    calibrate(battery, { ...log, from }, curve, lossRates(battery, wasOn), wasOn),
  );
  const leadOn = isLeadOn(battery, care.connected, upkeep?.lapse !== undefined);
  const tableRates = lossRates(battery, leadOn);
  const low: Reset[] = calibration.readings
    .filter((r) => r.usable && r.index > 0)
    .map((r) => ({ index: r.index, pct: mostPct(r, upkeep !== undefined), kind: 'at-most' as const }));
  const lastLogged = logged[logged.length - 1]?.index ?? 0;
  return {
    ...base,
    manner,
    row,
    curve,
    leadOn,
    stillOn: !care.connected && !upkeep?.lapse && isStillOn(leadOffAt, rest, asOf) && machine.leadOffOn === undefined,
    rates: calibratedRates(tableRates, calibration, wasOn),
    tableRates,
    calibration,
    maintained: upkeep !== undefined && upkeep.lapse === undefined,
    outOfReach: care.keptAt === 'machine' && isOutOfReach(battery, place),
    upkeep,
    logged,
    chargesMade: made.length,
    // What is read on the day of a charge was read before it.
    loggedHigh: [...low, ...logged].sort((a, b) => a.index - b.index),
    // Nobody charges on a day gone by.
    firstDay: Math.max(rest.firstDay + lastLogged + 1, dayNumber(asOf)),
    chargedSince: machine.charged.some(({ date }) => date > machine.season.firstUse && date <= asOf),
  };
}

/** What a reading leaves on the high-loss path at most: a lithium battery's flat curve can surely tell low, and little else. */
function mostPct({ stateOfChargePct, spreadPct }: JudgedReading, onMaintainer: boolean): number {
  return onMaintainer || spreadPct <= SURE_PCT ? stateOfChargePct : Math.min(100, stateOfChargePct + spreadPct);
}

/** A maintainer that the battery is to stay on, and power for it. */
const isOnMaintainer = ({ care }: Pick<Care, 'care'>, { power }: Pick<Place, 'power'>) =>
  care === 'maintainer' && power;

/** Of a battery on a maintainer the days of a lapse alone tell of its loss: else the voltage is the charger's. */
function calibrationOf(upkeep: Upkeep | undefined, found: (from: number | undefined) => Calibration): Calibration {
  if (!upkeep) return found(undefined);
  const { readings, lapse } = upkeep;
  return lapse ? { ...found(lapse.from), readings } : { readings, widthLeft: 1 };
}

/** State of charge by day, as logged and as it loses. */
export function pathOf(unit: BatteryUnit, rate: LossRate, resets: readonly Reset[]): Float64Array {
  const { curve, battery, upkeep } = unit;
  return statePath(curve, rate, battery.startPct.value, resets, upkeep?.kept);
}

/**
 * Until when a lead that comes off over the rest is on: the day on which that is ticked; while it is not, and the days of the lay-up
 * are past, today.
 * @param machine - with what its ticks say
 * @param rest - days of the rest
 * @param asOf - the day the plan is made for
 * @returns index in the rest; 0 where it is taken to come off with the last use
 */
export function leadOffIndex({ season, leadOffOn }: Machine, rest: Rest, asOf: IsoDate): number {
  const day = leadOffOn ?? (asOf > windowsOf(season).layUpEnd ? asOf : season.lastUse);
  return Math.min(rest.days, Math.max(0, dayNumber(earlier(day, season.firstUse)) - rest.firstDay));
}

/** The charges of a machine's log, and that of its lay-up: made while it was still in use, it counts on the last day of use. */
export function chargesKnown({ charged, chargedAtLayUp: date, season, battery }: Machine): Machine['charged'] {
  // How near to half a lithium battery was left is not told.
  const isFull = date !== undefined && battery !== undefined && chemistryRow(battery.chemistry).acid !== undefined;
  return isFull ? [{ date: later(date, season.lastUse), toPct: 100 }, ...charged] : charged;
}

/**
 * Resets of the charges of the rest, with that of the lay-up among them: a lead–acid battery is full then, a lithium one left as the
 * rest begins with it.
 * @param made - those of the rest, by rising day
 */
export function withLayUpCharge(
  made: readonly Reset[],
  { chargedAtLayUp: date, season }: Machine,
  rest: Rest,
  asOf: IsoDate,
  { chemistry, startPct }: Battery,
): Reset[] {
  if (date === undefined || date > asOf || date > season.firstUse) return [...made];
  const index = Math.max(0, dayNumber(date) - rest.firstDay);
  const pct = chemistryRow(chemistry).acid ? 100 : startPct.value;
  return [{ index, pct, kind: 'charge' as const }, ...made].sort((a, b) => a.index - b.index);
}

/** Whether the lead that comes off over the rest is on to this day. */
export const isStillOn = (leadOffAt: number, rest: Rest, asOf: IsoDate): boolean =>
  leadOffAt > 0 && leadOffAt >= Math.min(rest.days, dayNumber(asOf) - rest.firstDay);

/** The charges that a machine's log holds for this rest, up to a day, as resets by rising day. */
export function loggedCharges(machine: Machine, rest: Rest, asOf: IsoDate): Reset[] {
  return machine.charged
    .filter((c) => c.date > machine.season.lastUse && c.date <= machine.season.firstUse && c.date <= asOf)
    .map((c) => ({ index: dayNumber(c.date) - rest.firstDay, pct: c.toPct, kind: 'charge' as const }))
    .sort((a, b) => a.index - b.index);
}

/** The first reading that found the battery not to be kept, and that no charge has followed. */
export function foundLow({ upkeep }: Pick<BatteryUnit, 'upkeep'>): JudgedReading | undefined {
  return upkeep?.lapse && unanswered(upkeep.lapse)[0];
}

/** Its chargers: where the maintainer does not keep it, another one if there is one. */
function chargersOf({ care: { chargers: choice }, upkeep }: BatteryUnit): Charger[] {
  const others = choice.chargers.filter((charger) => !choice.maintainers.includes(charger));
  return upkeep && others.length > 0 ? others : choice.chargers;
}

/** The day of the rest by which a battery is to be charged, and the reading that says so; Infinity where none is. */
export interface Due {
  index: number;
  reading?: JudgedReading | undefined;
}

/**
 * When a battery is due that is not charged.
 *
 * One that was found not to be kept is charged at once: only full does it tell whether it holds. What a reading teaches of the
 * loss makes no charge due on a day before it: nobody could know.
 */
export function dueOf(unit: BatteryUnit): Due {
  const low = foundLow(unit);
  if (low) return { index: low.index, reading: low };
  const { row, rates, tableRates, loggedHigh, upkeep } = unit;
  const from = unit.logged.at(-1)?.index ?? 0;
  const readings = unit.calibration.readings.filter((r) => r.usable && r.index > from);
  const belowBy = (rate: LossRate) => {
    const found = pathOf(unit, rate, loggedHigh).findIndex((pct, i) => i > from && pct <= row.thresholdPct);
    return found === -1 ? Number.POSITIVE_INFINITY : found;
  };
  const learnt = readings.at(-1)?.index ?? 0;
  const below = belowBy(rates.high);
  const index = below < learnt ? Math.min(learnt, belowBy(tableRates.high)) : below;
  const reading = readings.find((r) => r.index === index && mostPct(r, upkeep !== undefined) <= row.thresholdPct);
  return { index, reading };
}

/** The unit as the rota sees it. */
export function rotaBattery(unit: BatteryUnit, household: Household): RotaBattery {
  const { battery, curve, rest, row, care, place, store } = unit;
  const { high } = unit.rates;
  const index = (day: number) => day - rest.firstDay;
  const uncharged = pathOf(unit, high, unit.loggedHigh);
  const { index: due, reading } = dueOf(unit);
  const firstDue = unit.chargedSince ? Number.POSITIVE_INFINITY : rest.firstDay + due;
  // Nor does one that a maintainer was to keep full, however much it has left.
  const leftPct = foundLow(unit) ? 0 : uncharged[rest.days]!;
  const fromTarget = (day: number) =>
    rest.firstDay + dayReached(curve, high, index(day), row.chargeToPct, row.thresholdPct);
  const stateOn = (day: number, since: number | undefined) =>
    since === undefined
      ? uncharged[index(day)]!
      : Math.max(0, row.chargeToPct - lossPct(curve, high, index(since), index(day)));
  const warmth =
    battery.removable &&
    (household.batteryRoom !== undefined || household.places.some((p) => p.power && p.id !== place.id));
  return {
    machine: unit.machine.id,
    name: batteryName(unit.machine),
    yard: care.keptAt === 'room' || place.tripMinutes <= FAR_MINUTES ? 'home' : place.id,
    firstDay: unit.firstDay,
    endDay: rest.firstDay + firstTripEnd(row, curve, high, due, leftPct),
    lastDay: rest.firstDay + rest.days,
    firstDue,
    found: reading && { said: readingText(reading, unit.manner.locale), told: foundLow(unit) !== undefined },
    // A battery that stands above its target is not made due earlier by a charge that adds nothing.
    dueAfter: (day, since) => Math.max(since === undefined ? firstDue : fromTarget(since), fromTarget(day)),
    atHome: care.keptAt === 'room' || place.tripMinutes === 0,
    maintainable: care.keptAt === 'machine' && place.power,
    canCharge: (day) =>
      row.minChargeC === undefined ||
      care.keptAt === 'room' ||
      warmth ||
      store.dayMinC[rest.dayOfYear[index(day)]!]! >= row.minChargeC,
    worthIt: (day, since) => stateOn(day, since) <= row.chargeToPct - 0.2 * (row.chargeToPct - row.thresholdPct),
    waits: battery.removable || place.tripMinutes <= FAR_MINUTES,
    chargers: chargersOf(unit),
    hoursOn: (charger, day, since) =>
      chargeHours(battery, chargeAh(battery, stateOn(day, since)), charger?.currentA ?? largestChargeA(battery)),
  };
}
