import { addDays, daysBetween } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { Warning } from '../season-plan.ts';
import { counted, withinSentence, writtenDate } from '../written.ts';
import type { Need } from './sum-supplies.ts';

interface Late {
  need: Need;
  orderBy: IsoDate;
}

/**
 * What should have been ordered by now while its day of use is still to come, machine by machine.
 *
 * A part that a repair waits for is a warning: with the machine open and the part not there, it stands open. What a step uses up is
 * in shops, and a note says so.
 * @param needs - from `supplyNeeds`
 * @param asOf - the day the plan is made for
 * @param how - names of the machines by id, and the language of the dates
 * @returns one warning for the parts of a machine that are late alike, one note for all else that it needs
 */
export function orderWarnings(
  needs: readonly Need[],
  asOf: IsoDate,
  { names, locale }: { names: ReadonlyMap<string, string>; locale: string },
): Warning[] {
  const groups = new Map<string, Late[]>();
  for (const need of needs) {
    const orderBy = addDays(need.needBy, -need.leadDays);
    if (need.inStock || need.amount === 0 || !(orderBy < asOf && need.needBy >= asOf)) continue;
    const key = JSON.stringify([need.for.machine, isPart(need) ? [orderBy, need.needBy] : 'used up']);
    groups.set(key, [...(groups.get(key) ?? []), { need, orderBy }]);
  }
  return [...groups.values()].map((late) => {
    const { need, orderBy } = late.reduce((a, b) => (b.need.needBy < a.need.needBy ? b : a));
    const machine = need.for.machine;
    const things = [...new Set(late.map((one) => withinSentence(one.need.what)))];
    const [it, is, comes] = things.length === 1 ? ['it', 'is', 'comes'] : ['they', 'are', 'come'];
    const what = `For ${names.get(machine) ?? machine}: ${things.join('; ')}`;
    const needed = writtenDate(need.needBy, locale);
    const most = Math.max(...late.map((one) => daysBetween(one.orderBy, asOf)));
    if (isPart(need))
      return {
        machine,
        level: 'warning' as const,
        text: `${what}. To be here on ${needed} ${it} should have been ordered by ${writtenDate(orderBy, locale)}; ordered today ${it} ${comes} ${counted(most, 'day')} late.`,
        act: 'Order today, find a quicker source, or leave the machine shut until the parts are here.',
        about: 'supplies',
      };
    return {
      machine,
      level: 'note' as const,
      text: `${what}. The first of the work with ${it === 'it' ? 'it' : 'them'} is on ${needed}; ordered today ${it} may be up to ${counted(most, 'day')} late.`,
      act: `Where ${it} ${is} not at hand, buy in a shop.`,
      about: 'supplies',
    };
  });
}

/** A part of the strip-down, not what a step uses up. */
const isPart = (need: Need) => need.for.step === undefined;
