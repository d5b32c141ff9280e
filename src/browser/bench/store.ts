/**
 * Where the bench record is kept: IndexedDB, one row for each entry.
 *
 * A row is written once and never changed, so tabs cannot overwrite each other; a row that cannot be read is left where it is
 * and told of. Where the browser keeps nothing, the entries live as long as the page, and that is told too.
 */
import { type IDBPDatabase, openDB } from 'idb';
import { type Entry, entryOf } from './entries.ts';

const NAME = 'idle-season';
const VERSION = 1;
const ROWS = 'entries';
const CHANNEL = 'idle-season.bench';

/** What the person has to know about the place of the record. */
export type Trouble = 'unavailable' | 'newer' | 'full';

export interface Kept {
  entries: Entry[];
  /** Rows of another format, or damaged; untouched. */
  unread: unknown[];
}

export class BenchStore {
  readonly trouble: Trouble | undefined;
  private readonly db: IDBPDatabase | undefined;
  private readonly channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(CHANNEL);
  /** What could not be written down; lost with the page. */
  private readonly loose = new Map<string, Entry>();

  private constructor(db: IDBPDatabase | undefined, trouble: Trouble | undefined) {
    this.db = db;
    this.trouble = trouble;
  }

  static async open(): Promise<BenchStore> {
    try {
      return new BenchStore(await openRows(VERSION), undefined);
    } catch (error) {
      if ((error as DOMException | undefined)?.name !== 'VersionError') return new BenchStore(undefined, 'unavailable');
    }
    try {
      // Written by a newer version of the site: what this one understands is read, and nothing is rebuilt.
      const db = await openRows(undefined);
      return db.objectStoreNames.contains(ROWS) ? new BenchStore(db, 'newer') : new BenchStore(undefined, 'newer');
    } catch {
      return new BenchStore(undefined, 'unavailable');
    }
  }

  /** All that is kept of a machine, the oldest first, with what is only in this page. */
  async of(machine: string): Promise<Kept> {
    const kept: Kept = { entries: [], unread: [] };
    const rows: unknown[] = this.db ? await this.db.getAll(ROWS) : [];
    for (const row of rows) {
      const entry = entryOf(row);
      if (!entry) {
        const owner = (row as { machine?: unknown } | null)?.machine;
        if (owner === machine || typeof owner !== 'string') kept.unread.push(row);
      } else if (entry.machine === machine) kept.entries.push(entry);
    }
    kept.entries.push(...[...this.loose.values()].filter((e) => e.machine === machine));
    return kept;
  }

  /**
   * Writes an entry down.
   * @returns why it is only in this page, where it could not be
   */
  async add(entry: Entry): Promise<Trouble | undefined> {
    try {
      if (!this.db) throw new DOMException('', 'InvalidStateError');
      await this.db.add(ROWS, entry);
      this.channel?.postMessage(entry.machine);
      return undefined;
    } catch (error) {
      this.loose.set(entry.id, entry);
      return (error as DOMException).name === 'QuotaExceededError' ? 'full' : 'unavailable';
    }
  }

  async remove(entry: Entry): Promise<void> {
    if (this.loose.delete(entry.id)) return;
    await this.db?.delete(ROWS, entry.id);
    this.channel?.postMessage(entry.machine);
  }

  /** Hears of entries that other tabs write. */
  onChange(act: (machine: string) => void): void {
    this.channel?.addEventListener('message', ({ data }) => {
      if (typeof data === 'string') act(data);
    });
  }
}

function openRows(version: number | undefined): Promise<IDBPDatabase> {
  return openDB(NAME, version, {
    upgrade: (db) => {
      if (version === VERSION && !db.objectStoreNames.contains(ROWS)) db.createObjectStore(ROWS, { keyPath: 'id' });
    },
    // Another tab wants a newer layout: this one lets go, and asks again when the page is opened next.
    blocking: (_, __, event) => (event.target as IDBDatabase).close(),
  });
}
