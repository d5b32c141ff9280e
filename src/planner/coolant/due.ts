import { addDays, later } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { CoolantInput } from './case.ts';

/** Water begins to freeze; the store below this cracks a block that holds water [°C]. */
export const FROST_C = -1;

/** By when coolant must be seen to. */
export interface Due {
  by: IsoDate;
  /** That day is gone. */
  isPast: boolean;
  /** The store of a typical year can reach frost today. */
  canFreeze: boolean;
}

/**
 * The day by which coolant must be tested or strengthened: the one before the next frost that the store can have, or the last
 * day of use where frost takes a hard year or a heater that fails.
 * @param input - the rest's cold and what is left of it
 * @returns undefined where no frost is to come any more, or none at all
 */
export function dueOf({
  machine: { season },
  rest,
  ahead,
  asOf,
  isHeated,
}: Pick<CoolantInput, 'machine' | 'rest' | 'ahead' | 'asOf'> & { isHeated: boolean }): Due | undefined {
  if (asOf >= season.firstUse) return undefined;
  const next = ahead.firstFrost && later(ahead.firstFrost, asOf);
  if (next !== undefined) {
    const canFreeze = next === asOf;
    return { by: addDays(canFreeze ? (rest.firstFrost ?? next) : next, -1), isPast: canFreeze, canFreeze };
  }
  const lowestC = isHeated ? ahead.outdoorLowC : ahead.designLowC;
  return lowestC < FROST_C ? { by: season.lastUse, isPast: asOf > season.lastUse, canFreeze: false } : undefined;
}
