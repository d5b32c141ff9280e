/** Which machines' charges have moved by readings of this device since the build: what other pages have to say of it. */
const KEY = 'idle-season.moved';

export interface Moved {
  name: string;
  /** Day of the next charge, or empty. */
  next: string;
  /** The same as the page of the machine prints it. */
  said: string;
}

/** All that have moved, by machine; nothing where the device keeps nothing. */
export function movedMachines(): Record<string, Moved> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}');
  } catch {
    return {};
  }
}

/** Notes that a machine's charges have moved, or that they have not. */
export function setMoved(machine: string, moved: Moved | undefined): void {
  const { [machine]: _, ...others } = movedMachines();
  try {
    localStorage.setItem(KEY, JSON.stringify(moved ? { ...others, [machine]: moved } : others));
  } catch {
    // A window that keeps nothing has been told of already.
  }
}
