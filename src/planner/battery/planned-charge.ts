/** The planned charges of a battery: how much, how long, and why on that day. */
import { isoOfDay } from '../dates.ts';
import type { Household } from '../household.ts';
import type { Charge } from '../season-plan.ts';
import { formatOne } from '../units/index.ts';
import { listText, writtenDate } from '../written.ts';
import { beforeCharge } from './before-charge.ts';
import { chargeAh, chargeHours, largestChargeA } from './charge.ts';
import { isOverdue } from './late.ts';
import { dayReached, type LossRate, lossPct } from './loss.ts';
import type { JudgedReading } from './readings.ts';
import type { Rota, RotaCharge } from './rota.ts';
import { type BatteryUnit, dueOf, foundLow } from './unit.ts';
import { readingText } from './upkeep.ts';

/**
 * One planned charge of a battery, with what it takes and why it is on its day.
 * @param unit - the battery
 * @param charge - as the rota has it
 * @param i - its number among the battery's own, from 0
 * @param all - the battery's charges, in order
 * @param paths - states of charge by day [%]
 * @param rota - of the household
 * @param household - chargers, names, reader
 */
export function chargeOf(
  unit: BatteryUnit,
  charge: RotaCharge,
  i: number,
  all: readonly RotaCharge[],
  paths: { expected: Float64Array; high: Float64Array },
  rota: Rota,
  household: Household,
): Charge {
  const { battery, curve, rates, rest, row } = unit;
  const at = charge.day - rest.firstDay;
  const from = i === 0 ? standsFrom(unit) : all[i - 1]!.day - rest.firstDay;
  const before = (path: Float64Array, rate: LossRate) =>
    Math.min(100, Math.max(0, path[at - 1]! - lossPct(curve, rate, at - 1, at)));
  const { index: due, reading } = charge.since === undefined ? dueOf(unit) : {};
  const reached = dayReached(curve, rates.expected, from, paths.expected[from]!, row.thresholdPct);
  const expectedAt = reading ? due! : Math.max(reached, due ?? 0);
  const charger = household.chargers.find((c) => c.id === charge.chargerId);
  const currentA = charger?.currentA ?? largestChargeA(battery);
  const ampHours = chargeAh(battery, before(paths.expected, rates.expected));
  const ampHoursMost = chargeAh(battery, before(paths.high, rates.high));
  return {
    occurrence: unit.chargesMade + i + 1,
    date: isoOfDay(charge.day),
    earliest: isoOfDay(charge.due),
    overdue: isOverdue(charge, unit) || undefined,
    expected: expectedAt < rest.days ? rest.dates[expectedAt] : undefined,
    ampHours,
    ampHoursMost,
    hours: chargeHours(battery, ampHours, currentA),
    hoursMost: chargeHours(battery, ampHoursMost, currentA),
    chargerId: charge.chargerId,
    tripId: charge.tripId,
    why: whyText(unit, charge, reading, rota, household),
    before: beforeCharge(unit, at, before(paths.high, rates.high), i === 0),
    noCharger: unit.care.chargers.none?.why,
  };
}

/** The day from which a battery loses what it had: the last that the log knows of, else the last day of use. */
function standsFrom(unit: BatteryUnit): number {
  return foundLow(unit)?.index ?? unit.logged.at(-1)?.index ?? 0;
}

/** So many names are said; a club's hall has hundreds. */
const NAMED = 4;
const few = (names: string[]) =>
  names.length <= NAMED + 1 ? names : [...names.slice(0, NAMED), `${names.length - NAMED} more`];

function whyText(
  unit: BatteryUnit,
  charge: RotaCharge,
  reading: JudgedReading | undefined,
  rota: Rota,
  household: Household,
): string {
  const { row, care, place, battery, store, rest, machine } = unit;
  const trip = rota.trips.find((t) => t.id === charge.tripId)!;
  const others = trip.machines
    .filter((id) => id !== machine.id)
    .map((id) => household.machines.find((m) => m.id === id)!.name);
  const parts = [
    reading && foundLow(unit)
      ? `It read ${formatOne(reading.volts, 'V', household, 2)} on ${writtenDate(reading.date, household.locale)}, and a maintainer is to keep it full: charge it to the end, and read it again once it has rested.`
      : reading
        ? `It read ${readingText(reading, household.locale)}: it is to be charged at ${row.thresholdPct} %.`
        : `At its fastest loss it is down to ${row.thresholdPct} % on ${writtenDate(isoOfDay(charge.due), household.locale)}.`,
  ];
  if (charge.day < charge.due)
    parts.push(
      others.length > 0
        ? `Charged earlier to share the trip with ${listText(few(others))}.`
        : 'Charged earlier: no day from then to that date has time for it.',
    );
  const meanC = store.dayMeanC[rest.dayOfYear[charge.day - rest.firstDay]!]!;
  if (care.keptAt === 'machine' && row.minChargeC !== undefined && meanC < row.minChargeC + 2)
    parts.push(
      `About ${formatOne(meanC, '°C', household)} at ${place.name} that day: bring it into the warm and let it warm through before charging.`,
    );
  else if (care.keptAt === 'machine' && !place.power && battery.removable)
    parts.push(`No power at ${place.name}: take the battery to the charger.`);
  if (charge.turnDay !== undefined)
    parts.push(`Its turn on the charger comes on ${writtenDate(isoOfDay(charge.turnDay), household.locale)}.`);
  if (row.chargeToPct < 100) parts.push(`Stop at ${row.chargeToPct} %, by the ampere-hours.`);
  return parts.join(' ');
}
