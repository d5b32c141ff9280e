/** The reminders that were taken along from this device, by household: what falls away later can then be taken back. */
const KEY = 'idle-season.reminders';

export type Taken = Readonly<Record<string, string>>;

/** What was kept; nothing where none was, or none that can be read. */
export function takenReminders(): Taken {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    const entries = Object.entries(typeof kept === 'object' && kept !== null ? kept : {});
    return Object.fromEntries(entries.filter(([, text]) => typeof text === 'string'));
  } catch {
    return {};
  }
}

/** Keeps them; false where the device does not let it. */
export function keepTaken(taken: Taken): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify(taken));
    return true;
  } catch {
    return false;
  }
}
