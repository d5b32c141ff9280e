import { addDays, later } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import { windowsOf } from '../tasks/parts.ts';
import type { CoolantInput } from './case.ts';
import { MARGIN_K } from './derivations.ts';

/** Water begins to freeze; the store below this cracks a block that holds water [°C]. */
export const FROST_C = -1;

/** By when coolant must be seen to. */
export interface Due {
  by: IsoDate;
  /** That day is gone. */
  isPast: boolean;
  /** The cold that it waits for can come today: frost in the store of a typical year, or what the coolant stands. */
  canFreeze: boolean;
}

/**
 * The day by which coolant must be tested or strengthened: the one before the next frost that the store can have, or the last
 * day of use where frost takes a hard year or a heater that fails. Coolant that is known waits for the day, no sooner, from which a
 * typical year can come within the margin of what it stands: what a colder year has in store is the margin's matter.
 * @param input - the rest's cold and what is left of it, until the season is given up; what the coolant stands [°C], where it is known
 * @returns undefined where no such cold is to come any more, or none at all
 */
export function dueOf({
  machine: { season },
  rest,
  ahead,
  asOf,
  isHeated,
  freezeC,
}: Pick<CoolantInput, 'machine' | 'rest' | 'ahead' | 'asOf'> & {
  isHeated: boolean;
  freezeC?: number | undefined;
}): Due | undefined {
  if (asOf > windowsOf(season).rideEnd) return undefined;
  const coldC = freezeC === undefined ? FROST_C : Math.min(FROST_C, freezeC + MARGIN_K);
  const firstIn = ({ firstFrost, firstColdOf }: CoolantInput['rest']) =>
    freezeC === undefined ? firstFrost : firstColdOf(isHeated ? 'outdoors' : 'store', coldC);
  const found = firstIn(ahead);
  if (found !== undefined) {
    const next = later(found, asOf);
    const canFreeze = next === asOf;
    return { by: addDays(canFreeze ? (firstIn(rest) ?? next) : next, -1), isPast: canFreeze, canFreeze };
  }
  const lowestC = isHeated ? ahead.outdoorLowC : ahead.designLowC;
  return lowestC < coldC ? { by: season.lastUse, isPast: asOf > season.lastUse, canFreeze: false } : undefined;
}
