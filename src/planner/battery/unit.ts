/** One battery with its care, its loss rates and what the log says of it: what the rota and the plan are made from. */
import { dayNumber } from '../dates.ts';
import type { Battery, Household, IsoDate, Machine, Place } from '../household.ts';
import type { StoreDesignLow, StoreYear } from '../storage/types.ts';
import type { Manner } from '../written.ts';
import { type Calibration, calibrate, calibratedRates } from './calibrate.ts';
import { type Care, FAR_MINUTES, surroundings } from './care.ts';
import { chargeAh, chargeHours, largestChargeA } from './charge.ts';
import { type ChemistryRow, chemistryRow } from './chemistries.ts';
import {
  dayReached,
  type LossCurve,
  type LossRates,
  lossCurve,
  lossPct,
  lossRates,
  type Reset,
  statePath,
} from './loss.ts';
import type { Rest } from './rest.ts';
import type { RotaBattery } from './rota-battery.ts';
import { lastTripIndex } from './run.ts';

/** A reading surer than this lowers the high-loss path where it lies under it [%]. */
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
  rates: LossRates;
  calibration: Calibration;
  /** Kept full by a charger that stays on. */
  maintained: boolean;
  /** Charges that the log holds. */
  logged: Reset[];
  /** Those, and readings that lower the high-loss path. */
  loggedHigh: Reset[];
  firstDay: number;
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
  const maintained = care.care === 'maintainer' && place.power;
  const curve = lossCurve(rest, surroundings(care, base.store), battery.doublingK.value);
  const before = lossRates(battery, care.connected);
  const log = { readings: machine.readings, charged: machine.charged, asOf, locale: manner.locale };
  const judged = calibrate(battery, log, curve, before, care.connected);
  // On a maintainer the voltage is the charger's, and says nothing of the loss.
  const calibration = maintained ? { readings: judged.readings, widthLeft: 1 } : judged;
  const logged = loggedCharges(machine, rest, asOf);
  const low: Reset[] = calibration.readings
    .filter((r) => r.usable && r.spreadPct <= SURE_PCT && r.index > 0)
    .map((r) => ({ index: r.index, pct: r.stateOfChargePct, kind: 'at-most' as const }));
  const lastLogged = logged[logged.length - 1]?.index ?? 0;
  return {
    ...base,
    manner,
    row,
    curve,
    rates: calibratedRates(before, calibration),
    calibration,
    maintained,
    logged,
    // What is read on the day of a charge was read before it.
    loggedHigh: [...low, ...logged].sort((a, b) => a.index - b.index),
    // Nobody charges on a day gone by; of a rest that is over the plan stands as it was.
    firstDay: Math.max(rest.firstDay + lastLogged + 1, asOf <= machine.season.firstUse ? dayNumber(asOf) : 0),
  };
}

/** The charges that a machine's log holds for this rest, up to a day, as resets by rising day. */
export function loggedCharges(machine: Machine, rest: Rest, asOf: IsoDate): Reset[] {
  return machine.charged
    .filter((c) => c.date > machine.season.lastUse && c.date <= machine.season.firstUse && c.date <= asOf)
    .map((c) => ({ index: dayNumber(c.date) - rest.firstDay, pct: c.toPct, kind: 'charge' as const }))
    .sort((a, b) => a.index - b.index);
}

/** The unit as the rota sees it. */
export function rotaBattery(unit: BatteryUnit, household: Household): RotaBattery {
  const { battery, curve, rest, row, care, place, store } = unit;
  const { high } = unit.rates;
  const index = (day: number) => day - rest.firstDay;
  const uncharged = statePath(curve, high, battery.startPct.value, unit.loggedHigh);
  const lastLogged = unit.logged[unit.logged.length - 1]?.index ?? 0;
  const below = uncharged.findIndex((pct, i) => i > lastLogged && pct <= row.thresholdPct);
  const firstDue = below === -1 ? Number.POSITIVE_INFINITY : rest.firstDay + below;
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
    name: unit.machine.name,
    yard: care.keptAt === 'room' || place.tripMinutes <= FAR_MINUTES ? 'home' : place.id,
    firstDay: unit.firstDay,
    endDay: rest.firstDay + lastTripIndex(rest),
    firstDue,
    // A battery that stands above its target is not made due earlier by a charge that adds nothing.
    dueAfter: (day, since) => Math.max(since === undefined ? firstDue : fromTarget(since), fromTarget(day)),
    canCharge: (day) =>
      row.minChargeC === undefined ||
      care.keptAt === 'room' ||
      warmth ||
      store.dayMinC[rest.dayOfYear[index(day)]!]! >= row.minChargeC,
    worthIt: (day, since) => stateOn(day, since) <= row.chargeToPct - 0.2 * (row.chargeToPct - row.thresholdPct),
    waits: battery.removable || place.tripMinutes <= FAR_MINUTES,
    chargers: care.chargers.chargers,
    hoursOn: (charger, day, since) =>
      chargeHours(battery, chargeAh(battery, stateOn(day, since)), charger?.currentA ?? largestChargeA(battery)),
  };
}
