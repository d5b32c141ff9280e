import { daysBetween } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { SupplyLine, Warning } from '../season-plan.ts';
import { counted, writtenDate } from '../written.ts';

/**
 * Warnings of what should have been ordered by now while its day of use is still to come.
 * @param lines - from `sumSupplies`
 * @param asOf - the day the plan is made for
 * @param locale - language of the dates
 * @returns one warning for the lines of the same machine and days, in the order of the lines
 */
export function orderWarnings(lines: readonly SupplyLine[], asOf: IsoDate, locale: string): Warning[] {
  const groups = new Map<string, { machine: string | undefined; orderBy: IsoDate; needBy: IsoDate; names: string[] }>();
  for (const { what, inStock, orderBy, needBy, for: uses } of lines) {
    if (inStock || orderBy === undefined || !(orderBy < asOf && needBy >= asOf)) continue;
    const machines = new Set(uses.map((use) => use.machine));
    const machine = machines.size === 1 ? uses[0]!.machine : undefined;
    const key = JSON.stringify([machine, orderBy, needBy]);
    const group = groups.get(key) ?? { machine, orderBy, needBy, names: [] };
    group.names.push(what);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ machine, orderBy, needBy, names }) => {
    const it = names.length === 1 ? 'it' : 'they';
    const late = counted(daysBetween(orderBy, asOf), 'day');
    return {
      machine,
      level: 'warning' as const,
      text: `${names.join('; ')}: to be here on ${writtenDate(needBy, locale)} ${it} should have been ordered by ${writtenDate(orderBy, locale)}; ordered today ${it} ${it === 'it' ? 'comes' : 'come'} ${late} late.`,
      act: 'Order today, find a quicker source, or leave the machine shut until the parts are here.',
      about: 'supplies',
    };
  });
}
