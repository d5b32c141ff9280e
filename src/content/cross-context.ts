/** What a machine's file and its records are held against. */
import type { Procedure } from '../planner/household.ts';
import type { Checked } from './check.ts';
import type { HouseholdFile } from './schemas/household.ts';
import type { PlaceFile } from './schemas/place.ts';
import type { Known } from './sound.ts';

export interface CrossContext {
  asOf: string;
  /** The household's own file; undefined where there is none. */
  household: Pick<Checked<HouseholdFile>, 'sound' | 'isWhole'> | undefined;
  /** What is known of each place that there is. */
  places: ReadonlyMap<string, Known<PlaceFile>>;
  /** Items that the procedures open; undefined where a procedure was refused. */
  openItems: ReadonlySet<string> | undefined;
  /** The procedures that steps are named after; undefined where one was refused, or none are at hand. */
  procedures: readonly Procedure[] | undefined;
}
