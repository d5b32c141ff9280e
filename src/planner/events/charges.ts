import { batteryName, shortBefore } from '../battery/index.ts';
import { chargeAsked, chargeHoursText, chargeTimeText } from '../charging-time.ts';
import { daysBetween } from '../dates.ts';
import type { BatteryChemistry } from '../household.ts';
import type { BatteryPlan, Charge, ChargeTrip, MachinePlan } from '../season-plan.ts';
import { formatQuantity, type Reader } from '../units/index.ts';
import { listText, writtenDay } from '../written.ts';
import { type Draft, machineDraft, type PlanWithoutEvents } from './draft.ts';
import { householdYear } from './identity.ts';
import { ampHoursText, hourText, lines, readerOf, shortCautions, stepLines } from './words.ts';
import type { WorkBlock } from './work.ts';

const LEAD_ACID = ['battery-acid-gas', 'frozen-battery'];

/** Rows of the table of cautions that hold for a charge. */
const CAUTIONS: Record<BatteryChemistry, string[]> = {
  'flooded-antimony': LEAD_ACID,
  'flooded-calcium': LEAD_ACID,
  agm: LEAD_ACID,
  gel: LEAD_ACID,
  lifepo4: ['lithium-cold'],
};

/** One battery's part in a trip, or a charge by itself. */
interface Part {
  machine: MachinePlan;
  battery: BatteryPlan;
  charge: Charge;
  number: number;
  chargerId?: string | undefined;
  chargerName?: string | undefined;
  startHour?: number | undefined;
}

/**
 * Reminders to charge: one for each trip, whatever the number of machines, and one for each charge without a trip.
 *
 * Look-ins of a machine that is charged on the same day are told in that reminder.
 * @param plan - the plan
 * @param lookIns - all look-ins of the plan
 * @returns the drafts, and the look-ins that they tell already
 */
export function chargeDrafts(
  plan: PlanWithoutEvents,
  lookIns: readonly WorkBlock[],
): { drafts: Draft[]; told: Set<WorkBlock> } {
  const told = new Set<WorkBlock>();
  const inTrip = new Set<Charge>();
  const year = householdYear(plan.machines);
  const drafts: Draft[] = [];
  const lookInLines = (parts: readonly Part[], date: string) => {
    const same = lookIns.filter((b) => b.date === date && parts.some((p) => p.machine === b.machine));
    for (const block of same) told.add(block);
    return same.flatMap((b) => [`${b.machine.name}, step by step:`, ...stepLines(b.open, readerOf(plan))]);
  };

  let number = 0;
  for (const trip of plan.trips.toSorted((a, b) => daysBetween(b.date, a.date))) {
    const parts = partsOf(plan, trip);
    if (parts.length === 0) continue;
    for (const part of parts) inTrip.add(part.charge);
    // Charges that were done, and their trips with them, may be gone from the plan: the number never falls below theirs.
    number = Math.max(number + 1, ...parts.map((part) => part.number));
    const charged = [...new Set(parts.map((part) => part.machine))];
    const text = lines(
      ...parts.map((part) => partText(part, plan)),
      trip.problem && `Problem: ${trip.problem}`,
      ...lookInLines(parts, trip.date),
      ...cautions(parts),
    );
    const machines = [...new Set(parts.map((part) => part.machine.id))];
    drafts.push({
      key: [plan.household.id, 'trip', year, number],
      event: {
        date: trip.date,
        title: `${actOn(charged)}${lateText(parts)}${beforeText(parts)}${missingText(parts)}: about ${amounts(parts, readerOf(plan))}, ${chargeHoursText(duration(parts), plan.household.locale)}`,
        label: `Charge ${listText(charged.map(called))}`,
        text,
        category: 'charge',
        machine: machines[0]!,
        machines,
        path: machines.length === 1 ? `/machines/${machines[0]}/` : '/agenda/',
      },
    });
  }

  for (const machine of plan.machines) {
    const battery = machine.battery;
    battery?.charges.forEach((charge, index) => {
      if (inTrip.has(charge) || charge.date > machine.startUp.firstUse) return;
      const part: Part = { machine, battery, charge, number: charge.occurrence ?? index + 1 };
      drafts.push(
        machineDraft(plan, machine, ['charge', part.number], {
          date: charge.date,
          title: `${actOn([machine])}${lateText([part])}${beforeText([part])}${missingText([part])}: about ${amounts([part], readerOf(plan))}, ${chargeHoursText(chargeAsked(charge).hours, plan.household.locale)}`,
          label: `Charge ${called(machine)}`,
          text: lines(partText(part, plan), ...lookInLines([part], charge.date), ...cautions([part])),
          category: 'charge',
        }),
      );
    });
  }
  return { drafts, told };
}

/** The batteries of a trip that still rest on its day. */
function partsOf(plan: PlanWithoutEvents, trip: ChargeTrip): Part[] {
  return trip.charges.flatMap(({ machine: id, chargeIndex, chargerId, chargerName, startHour }) =>
    plan.machines.flatMap((machine) => {
      if (machine.id !== id || trip.date > machine.startUp.firstUse) return [];
      const charge = machine.battery?.charges[chargeIndex];
      if (!charge) return [];
      const number = charge.occurrence ?? chargeIndex + 1;
      return [{ machine, battery: machine.battery!, charge, number, chargerId, chargerName, startHour }];
    }),
  );
}

const actOn = (machines: readonly MachinePlan[]) =>
  machines.length === 1
    ? `Charge ${batteryName(machines[0]!)}`
    : `Charge the batteries of ${listText(machines.map(({ name }) => name))}`;

/** The machine, for its one battery; the battery, where it has two. */
const called = (machine: MachinePlan) => (machine.driveBattery ? batteryName(machine) : machine.name);

/** That a charge is overdue; of several, whose. */
function lateText(parts: readonly Part[]): string {
  const late = parts.filter((part) => part.charge.overdue);
  if (late.length === 0) return '';
  return late.length === parts.length ? ', overdue' : ` (overdue: ${listText(late.map((part) => part.machine.name))})`;
}

/** What has to be settled before a charge; of several, whose. */
function beforeText(parts: readonly Part[]): string {
  const texts = parts.flatMap(({ machine, charge: { before } }) =>
    before ? [parts.length === 1 ? shortBefore(before) : `${machine.name}: ${shortBefore(before)}`] : [],
  );
  return texts.length === 0 ? '' : ` (${texts.join('; ')})`;
}

/** That a battery has no charger, where the title would else be taken for granted. */
function missingText(parts: readonly Part[]): string {
  const without = parts.filter((part) => part.charge.noCharger !== undefined);
  if (without.length === 0) return '';
  return without.length === parts.length
    ? ` (no charger for ${parts.length === 1 ? 'it' : 'them'})`
    : ` (no charger for ${listText(without.map((part) => part.machine.name))})`;
}

/** "3 Ah", "3 + 8 Ah". */
function amounts(parts: readonly Part[], reader: Reader): string {
  const texts = parts.map((part) => ampHoursText(chargeAsked(part.charge).ampHours, reader));
  return [...texts.slice(0, -1).map((text) => text.replace(/ Ah$/, '')), texts.at(-1)].join(' + ');
}

/** From the first charger switched on to the last one done; without hours of the day, the busiest charger's hours [h]. */
function duration(parts: readonly Part[]): number {
  if (parts.every((part) => part.startHour !== undefined)) {
    const ends = parts.map((part) => part.startHour! + chargeAsked(part.charge).hours);
    return Math.max(...ends) - Math.min(...parts.map((part) => part.startHour!));
  }
  const byCharger = new Map<string, number>();
  for (const { chargerId = '', charge } of parts)
    byCharger.set(chargerId, (byCharger.get(chargerId) ?? 0) + chargeAsked(charge).hours);
  return Math.max(...byCharger.values());
}

function partText(
  { machine, battery, charge, chargerId, chargerName = chargerId, startHour }: Part,
  plan: PlanWithoutEvents,
): string {
  const amount = (value: number) => formatQuantity(Math.round(value * 10) / 10, 'Ah', readerOf(plan));
  const when = startHour === undefined ? '' : `, from ${hourText(startHour, plan.household.clock)}`;
  const charger = chargerName === undefined ? '' : `, on "${chargerName}"`;
  // Where both losses reach it on one day, the reason says the day.
  const expected =
    charge.expected === charge.earliest || charge.overdue
      ? undefined
      : charge.expected === undefined
        ? `The battery may reach ${battery.thresholdPct} % on ${writtenDay(charge.earliest, plan.household.locale)} if it loses fast; as expected, not before first use.`
        : `The battery reaches ${battery.thresholdPct} % between ${writtenDay(charge.earliest, plan.household.locale)}, if it loses fast, and ${writtenDay(charge.expected, plan.household.locale)}, as expected.`;
  return lines(
    charge.before && `! ${called(machine)}: ${charge.before.text}`,
    `${called(machine)} (${battery.keptAt === 'room' ? 'in the warm room' : machine.placeName}): ` +
      `put back ${amount(charge.ampHours)} (at most ${amount(charge.ampHoursMost)}), ` +
      `${chargeTimeText(charge.hours, charge.hoursMost, plan.household.locale)}${when}${charger}.`,
    charge.noCharger && `! No charger serves it. ${charge.noCharger} The hours are those on one that would.`,
    charge.overdue &&
      `Overdue since ${writtenDay(charge.earliest, plan.household.locale)}. If it was charged, write that down, and the days that follow are right.`,
    expected,
    charge.why,
  );
}

function cautions(parts: readonly Part[]): string[] {
  return shortCautions(parts.flatMap((part) => CAUTIONS[part.battery.chemistry]));
}
