/** What the device keeps as text. A window that keeps nothing has nothing, and says so to who wants to keep. */

/** What was kept; undefined where nothing was, or nothing may be. */
export function stored(key: string): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a text; false where the device does not let it. */
export function store(key: string, text: string): boolean {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

/** Lets go of what was kept. */
export function forget(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
}

/** The members of an object that was kept, as they were found; none where no object was. */
export function storedMembers(key: string): [string, unknown][] {
  try {
    const kept: unknown = JSON.parse(stored(key) ?? '{}');
    return typeof kept === 'object' && kept !== null ? Object.entries(kept) : [];
  } catch {
    return [];
  }
}
