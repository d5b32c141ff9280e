/** The reminders that were taken along from this device, by household: what falls away later can then be taken back. */
import { store, storedMembers } from '../stored.ts';

const KEY = 'idle-season.reminders';

export type Taken = Readonly<Record<string, string>>;

/** What was kept; nothing where none was, or none that can be read. */
export const takenReminders = (): Taken =>
  Object.fromEntries(storedMembers(KEY).filter((pair): pair is [string, string] => typeof pair[1] === 'string'));

/** Keeps them; false where the device does not let it. */
export const keepTaken = (taken: Taken): boolean => store(KEY, JSON.stringify(taken));
