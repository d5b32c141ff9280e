import { daysBetween } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { SupplyLine, Warning } from '../season-plan.ts';
import { counted, writtenDate } from '../written.ts';

/**
 * A warning for each line whose order-by day has passed while its day of use is still to come.
 * @param lines - from `sumSupplies`
 * @param asOf - the day the plan is made for
 * @param locale - language of the dates
 * @returns one warning a line, in the order of the lines
 */
export function orderWarnings(lines: readonly SupplyLine[], asOf: IsoDate, locale: string): Warning[] {
  return lines
    .filter((l) => !l.inStock && l.orderBy !== undefined && l.orderBy < asOf && l.needBy >= asOf)
    .map((l) => {
      const late = daysBetween(l.orderBy!, asOf);
      const machines = new Set(l.for.map((f) => f.machine));
      return {
        machine: machines.size === 1 ? l.for[0]!.machine : undefined,
        level: 'warning' as const,
        text: `${l.what}: to be here on ${writtenDate(l.needBy, locale)} it should have been ordered by ${writtenDate(l.orderBy!, locale)}; ordered today it comes ${counted(late, 'day')} late.`,
        act: 'Order it today, find a quicker source, or leave the machine shut until it is here.',
        about: 'supplies',
      };
    });
}
