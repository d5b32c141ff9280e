/**
 * The batteries of a household over the rest: care, charges shared into trips, paths, freezing margins.
 *
 *   care.ts       maintainer, carry-in or visits          (power, freezing margin, chargers, number of visits)
 *   unit.ts       loss rates, readings, what the log holds
 *   rota.ts       trips
 *   said.ts       what its charger and its log want said
 *   late.ts       what is said of charges that come late
 *   planned-charge.ts   each charge: how much, how long, why on its day
 *   here          paths, margins
 */
import { dayNumber, isoOfDay } from '../dates.ts';
import type { Household, IsoDate, Machine } from '../household.ts';
import type { BatteryDay, BatteryPlan, Charge, ChargeTrip, Warning } from '../season-plan.ts';
import type { StoreDesignLow, StoreYear } from '../storage/types.ts';
import { writtenDate } from '../written.ts';
import { beforeChargeWarnings, beforeNextCharge, foundBefore } from './before-charge.ts';
import { type CareCase, chooseCare, MARGIN_K, marginWarning, type Outlook, outlookAtMachine } from './care.ts';
import { derivationsOf } from './derivations.ts';
import { freezingPointC } from './freezing.ts';
import { lateWarnings } from './late.ts';
import { type LossRate, lossPct, type Reset } from './loss.ts';
import { chargeOf } from './planned-charge.ts';
import { restOf } from './rest.ts';
import { chargeRota, type Rota } from './rota.ts';
import type { RotaBattery } from './rota-battery.ts';
import { freezingMonths, smallestMargin } from './run.ts';
import { chargerWarnings, logWarnings } from './said.ts';
import { type BatteryUnit, batteryUnit, pathOf, rotaBattery } from './unit.ts';
import { lapseWarnings } from './upkeep.ts';
import { openCircuitVoltage } from './voltage.ts';

/** What the weather makes of the place a machine stands in. */
export interface BatteryContext {
  store: StoreYear;
  designLow: StoreDesignLow;
}

/** Every battery's plan, the trips they share, and what is to be warned of. */
export interface BatteriesPlan {
  plans: Map<string, BatteryPlan>;
  trips: ChargeTrip[];
  warnings: Warning[];
}

/**
 * Plans all batteries of a household.
 *
 * A battery on a maintainer is taken as full until a reading says that it is not; from then on, and without power at its place,
 * it is charged on trips like the others. For one that nothing can charge where it rests no charge is planned: by when it is due is
 * said, and what can be done.
 * A charge that the record does not hold was not made, and falls on `asOf` or later; once the first use was to be, it is the
 * start-up's own.
 * @param household - the household
 * @param asOf - the day the plan is made for
 * @param contexts - store and design low by machine id, for every machine with a battery
 * @param only - the machine whose battery is asked for, where the others matter for the trips alone
 */
export function planBatteries(
  household: Household,
  asOf: IsoDate,
  contexts: ReadonlyMap<string, BatteryContext>,
  only?: string,
): BatteriesPlan {
  const warnings: Warning[] = [];
  const cases = household.machines.flatMap((machine) => careCase(machine, household, contexts) ?? []);
  const units = withMaintainers(cases).map(({ c, outlook }) => {
    const care = chooseCare(c, outlook);
    for (const w of care.warnings) warnings.push({ ...w, machine: c.machine.id, about: 'battery' });
    return batteryUnit({ ...c, care }, household, asOf);
  });
  const rota = chargeRota(
    units.filter((unit) => !unit.maintained && !unit.outOfReach).map((unit) => rotaBattery(unit, household)),
    household,
  );
  const plans = new Map<string, BatteryPlan>();
  for (const unit of units) {
    if (only !== undefined && unit.machine.id !== only) continue;
    const { plan, margin } = finish(unit, rota, household, asOf);
    plans.set(unit.machine.id, plan);
    for (const w of margin) warnings.push({ ...w, machine: unit.machine.id, about: 'battery' });
    for (const w of [
      ...beforeChargeWarnings(unit),
      ...lapseWarnings(unit, household, foundBefore(unit)),
      ...logWarnings(unit),
      ...chargerWarnings(unit, plan, household),
    ])
      warnings.push(w);
  }
  for (const { machine, text, act } of rota.problems)
    warnings.push({ machine, level: 'warning', text, act, about: 'battery' });
  for (const unit of units) warnings.push(...lateWarnings(unit, rota, plans.get(unit.machine.id), household));
  return { plans, trips: rota.trips, warnings };
}

/** A machine's battery as `chooseCare` takes it; undefined where there is none. */
export function careCase(
  machine: Machine,
  household: Household,
  contexts: ReadonlyMap<string, BatteryContext>,
): CareCase | undefined {
  const { battery } = machine;
  if (!battery) return undefined;
  const place = household.places.find((p) => p.id === machine.placeId);
  const context = contexts.get(machine.id);
  if (!place) throw new RangeError(`${machine.id}: found place "${machine.placeId}", expected one of the household's`);
  if (!context) throw new RangeError(`${machine.id}: no store was worked out for its place`);
  const rest = restOf(machine.season.lastUse, machine.season.firstUse);
  return { machine, battery, place, rest, ...context, household, maintainerFree: true };
}

/** Gives each maintainer to one battery at a time: first as the household chose, then to the battery that would need most visits, with its lead on where that is equal. */
function withMaintainers(cases: readonly CareCase[]): { c: CareCase; outlook: Outlook }[] {
  const all = cases.map((c) => ({ c, outlook: outlookAtMachine(c) }));
  const taken: { id: string; from: number; to: number }[] = [];
  const wants = (x: { c: CareCase; outlook: Outlook }) =>
    x.c.battery.care === 'maintainer' ? Number.POSITIVE_INFINITY : x.outlook.visits + x.outlook.visitsLeadOn / 1000;
  const order = [...all].sort((a, b) => {
    const [va, vb] = [wants(a), wants(b)];
    return va === vb ? (a.c.machine.id < b.c.machine.id ? -1 : 1) : vb - va;
  });
  for (const item of order) {
    const care = chooseCare(item.c, item.outlook);
    if (care.care !== 'maintainer') continue;
    const span = { from: item.c.rest.firstDay, to: item.c.rest.firstDay + item.c.rest.days };
    const free = care.chargers.maintainers.find(({ id }) =>
      taken.every((t) => t.id !== id || t.to <= span.from || t.from >= span.to),
    );
    if (free) taken.push({ id: free.id, ...span });
    else item.c = { ...item.c, maintainerFree: false };
  }
  return all;
}

function finish(unit: BatteryUnit, rota: Rota, household: Household, asOf: IsoDate) {
  const { machine, battery, rest, row, curve, rates, care, calibration } = unit;
  const planned = rota.charges.filter((c) => c.machine === machine.id).sort((a, b) => a.day - b.day);
  const resets: Reset[] = planned.map((c) => ({ index: c.day - rest.firstDay, pct: row.chargeToPct, kind: 'charge' }));
  const run = (rate: LossRate, logged: readonly Reset[]) =>
    pathOf(
      unit,
      rate,
      [...logged, ...resets].sort((a, b) => a.index - b.index),
    );
  // Where a battery that should be kept full stands is known from its readings alone, whatever its loss.
  const logged = unit.upkeep ? unit.loggedHigh : unit.logged;
  const low = run(rates.low, logged);
  const expected = run(rates.expected, logged);
  const high = run(rates.high, unit.loggedHigh);
  const charges = planned.map((charge, i) => chargeOf(unit, charge, i, planned, { expected, high }, rota, household));
  const due = unit.outOfReach
    ? dueWithin(rotaBattery(unit, household))
    : rota.problems.find((problem) => problem.machine === machine.id)?.due;
  const noDay = due === undefined ? undefined : isoOfDay(due);
  const isPast = unit.firstDay > rest.firstDay + rest.days;
  const where = care.keptAt === 'room' ? { roomC: care.roomC } : { designLow: unit.designLow };
  const freezingByMonth = freezingMonths(battery.chemistry, rest, high, where);
  const freezingMargin = smallestMargin(freezingByMonth);
  // A cold that is past is no reason for a warning.
  const toCome = new Set(rest.month.slice(Math.max(0, dayNumber(asOf) - rest.firstDay)));
  const ahead = freezingByMonth.filter((of) => toCome.has(of.month));
  const month = Math.min(30, rest.days);
  const firstMonth = (rate: LossRate) => (unit.maintained ? 0 : Math.min(100, lossPct(curve, rate, 0, month)));
  const plan: BatteryPlan = {
    chemistry: battery.chemistry,
    capacityAh: battery.capacityAh,
    care: care.care,
    careReason: reasonNow(unit, charges, household, freezingMargin.minK),
    keptAt: care.keptAt,
    connected: care.connected,
    leadStillOn: unit.stillOn || undefined,
    outOfReach: unit.outOfReach || undefined,
    notKeptSince: unit.upkeep?.lapse && rest.dates[unit.upkeep.lapse.from],
    thresholdPct: row.thresholdPct,
    paths: { low: daysOf(unit, low), expected: daysOf(unit, expected), high: daysOf(unit, high) },
    charges,
    chargeWithoutDay: isPast ? undefined : noDay,
    before: charges.length > 0 ? foundBefore(unit) : beforeNextCharge(unit, high),
    chargeAtStartUp: isPast && noDay !== undefined ? { due: noDay, overdue: true } : undefined,
    freezingMargin,
    freezingByMonth,
    calibration: calibration.result,
    readings: calibration.readings.map(
      ({ index: _, inRest: __, sound: ___, cellShort: ____, shutOff: _____, ...reading }) => reading,
    ),
    firstMonthLossPct: {
      low: firstMonth(rates.low),
      expected: firstMonth(rates.expected),
      high: firstMonth(rates.high),
    },
    derivations: derivationsOf(unit, charges, freezingByMonth, high),
  };
  const kept = { keptAt: care.keptAt, isKept: unit.maintained };
  return { plan, margin: ahead.length > 0 ? marginWarning({ ...unit, household }, kept, smallestMargin(ahead)) : [] };
}

/** Why it is kept as it is, and what readings say against it. */
function reasonNow(
  { care, upkeep, rest, leadOn, stillOn }: BatteryUnit,
  charges: readonly Charge[],
  { locale }: Household,
  marginK: number,
): string {
  // Known before anything was measured, or late.
  const reason = care.clear && marginK < MARGIN_K.warn ? care.reason.replace(care.clear, '') : care.reason;
  if (care.lasts && charges.length > 0)
    return 'Reckoned from its kind alone it would last the rest by itself; by what was measured it has to be charged.';
  if (!upkeep?.lapse) return `${reason}${stillOn ? ' Nothing says that it is off: until now it is reckoned on.' : ''}`;
  const since = writtenDate(rest.dates[upkeep.lapse.from]!, locale);
  return `${reason} By what was read, the maintainer does not keep it full: from ${since} on it is reckoned without one${care.connected && !leadOn ? ' and with its negative lead off' : ''}, until a rested reading shows it full.`;
}

/** The day by which a battery is to be charged before its start-up; undefined where none is. */
const dueWithin = ({ firstDue, endDay }: RotaBattery) => (firstDue < endDay ? firstDue : undefined);

function daysOf(unit: BatteryUnit, path: Float64Array): BatteryDay[] {
  const { rest, curve, battery } = unit;
  return rest.dates.map((date, i) => ({
    date,
    temperatureC: curve.temperatureC[i]!,
    stateOfChargePct: path[i]!,
    openCircuitV: openCircuitVoltage(battery.chemistry, path[i]!, curve.temperatureC[i]!),
    freezingPointC: freezingPointC(battery.chemistry, path[i]!),
  }));
}
