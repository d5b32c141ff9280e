/** How many rows the store of the bench record had when it was last seen, kept apart from it. */
const KEY = 'idle-season.bench';

export class Counts {
  /** 0 where nothing is known. */
  get known(): number {
    try {
      return Number(/^rows:(\d+)$/.exec(localStorage.getItem(KEY) ?? '')?.[1] ?? 0);
    } catch {
      return 0;
    }
  }

  /** A record from now on: pages that are opened load it at once. */
  set(rows: number): void {
    try {
      if (rows > 0 || localStorage.getItem(KEY) !== null) localStorage.setItem(KEY, `rows:${rows}`);
    } catch {
      // A window that keeps nothing has been told of already.
    }
  }

  add(rows: number): void {
    this.set(Math.max(0, this.known + rows));
  }
}
