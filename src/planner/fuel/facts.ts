/** What a fuel plan is made from, and what its parts hand on to one another. */
import type { Fuel, Household, IsoDate, Machine, Place } from '../household.ts';
import type { StoreYear } from '../storage/types.ts';
import type { adviseChoice } from './choice.ts';
import type { FillAmounts } from './fill.ts';

export interface FuelInput {
  machine: Machine;
  place: Place;
  household: Household;
  store: StoreYear;
  /** Lowest and highest hour of the store over the rest [°C]. */
  lowestStoreC: number;
  highestStoreC: number;
  asOf: IsoDate;
}

/** What the parts of the fuel plan hand on to the warnings. */
export interface FuelFacts extends FuelInput {
  fuel: Fuel;
  restDays: number;
  advised: ReturnType<typeof adviseChoice>;
  amounts?: FillAmounts | undefined;
  treated: boolean;
  takers: string[];
  bought: IsoDate;
}
