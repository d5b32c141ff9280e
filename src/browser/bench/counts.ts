/** How many rows the store of the bench record had when it was last seen, kept apart from it. */
import { store, stored } from '../stored.ts';

const KEY = 'idle-season.bench';

export class Counts {
  /** 0 where nothing is known. */
  get known(): number {
    return Number(/^rows:(\d+)$/.exec(stored(KEY) ?? '')?.[1] ?? 0);
  }

  /** A record from now on: pages that are opened load it at once. A window that keeps nothing has been told of already. */
  set(rows: number): void {
    if (rows > 0 || isRecorded()) store(KEY, `rows:${rows}`);
  }

  add(rows: number): void {
    this.set(Math.max(0, this.known + rows));
  }
}

/** Whether the device holds, or has held, a bench record. */
export const isRecorded = (): boolean => stored(KEY) !== undefined;
