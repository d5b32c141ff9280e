/** What a fuel plan is made from, and what its parts hand on to one another. */
import type { Fuel, Household, IsoDate, Machine, Place } from '../household.ts';
import type { StoreYear } from '../storage/types.ts';
import type { verdictOn } from './age.ts';
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
  /** The day on which the lay-up's work on the petrol is ticked: the tank was filled, drained or left low. */
  doneOn?: IsoDate | undefined;
  /** It is ticked that the drained petrol is used up. */
  usedUp?: boolean | undefined;
  /** The day on which the start-up's work on the petrol that stood was ticked. */
  seenTo?: IsoDate | undefined;
}

/** Where the petrol's lay-up stands: still to come, in its days after the last use, done or past, or the rest is over. */
export type FuelStage = 'before' | 'lay-up' | 'resting' | 'over';

/** What the parts of the fuel plan hand on to the warnings. */
export interface FuelFacts extends FuelInput {
  fuel: Fuel;
  restDays: number;
  advised: ReturnType<typeof adviseChoice>;
  /** With stabiliser at hand the tank would be filled. */
  fillsWithDose: boolean;
  /** What becomes of the petrol that is in the tank, untreated, by the day of the plan. */
  untreatedNow: ReturnType<typeof verdictOn>;
  stage: FuelStage;
  amounts?: FillAmounts | undefined;
  takers: string[];
  bought: IsoDate;
}
