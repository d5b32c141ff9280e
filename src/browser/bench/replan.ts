/** The charges of one machine, worked out again with what the bench record holds. */
import { batteryPicture } from '../../figures/index.ts';
import { planBatteries } from '../../planner/battery/index.ts';
import type { Household, Machine } from '../../planner/household.ts';
import { placeContext } from '../../planner/place-context.ts';
import type { BatteryPlan } from '../../planner/season-plan.ts';
import { formatOf } from '../../site/formats.ts';
import { languageOf } from '../../site/language.ts';
import { WORDS } from '../../site/words.ts';
import type { MachineCharges } from '../planner/messages.ts';
import { chargeTable } from '../planner/show/battery.ts';
import type { RecordEntries } from './entries.ts';

/**
 * Plans the battery anew.
 * @param household - as the build published it
 * @param id - the machine
 * @param entries - of the device's record
 * @param asOf - today
 */
export function replan(household: Household, id: string, entries: RecordEntries, asOf: string): MachineCharges {
  const { battery, name } = batteryWith(household, id, entries, asOf);
  const format = formatOf({ ...household, asOf });
  if (!battery) return { charges: '', first: '', picture: '' };
  const words = WORDS.figures.battery;
  const pct = format.amount(battery.thresholdPct, '%', 0);
  const margin = format.amount(battery.freezingMargin.minK, 'K');
  const picture = batteryPicture(
    { name, asOf, battery },
    {
      id: 'battery-picture',
      title: words.title(name),
      description: words.description(battery.charges.length, pct, margin),
    },
    languageOf(format),
  );
  const first = battery.charges[0];
  return {
    charges: chargeTable(battery, format).text,
    first: first ? format.shortDay(first.date) : WORDS.machine.numbers.noCharge,
    picture,
  };
}

/** The battery's plan with the readings and charges of the record beside those of the content. */
export function batteryWith(
  household: Household,
  id: string,
  entries: RecordEntries,
  asOf: string,
): { battery: BatteryPlan | undefined; name: string } {
  const machines = household.machines.map((m) => (m.id === id ? withRecord(m, entries) : m));
  const places = new Map(household.places.map((p) => [p.id, placeContext(p, household.seed)]));
  const contexts = new Map(machines.map((m) => [m.id, places.get(m.placeId)!]));
  const { plans } = planBatteries({ ...household, machines }, asOf, contexts);
  return { battery: plans.get(id), name: machines.find((m) => m.id === id)?.name ?? id };
}

function withRecord(machine: Machine, entries: RecordEntries): Machine {
  return {
    ...machine,
    readings: joined(machine.readings, entries.readings),
    charged: joined(machine.charged, entries.charged),
  };
}

/** Entries that the content has already, since they were exported into it, stand once. */
function joined<T extends { date: string }>(content: readonly T[], device: readonly T[]): T[] {
  const key = (item: T) => JSON.stringify(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1)));
  const all = new Map([...content, ...device].map((item) => [key(item), item]));
  return [...all.values()].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}
