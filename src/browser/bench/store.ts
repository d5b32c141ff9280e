/**
 * Where the bench record is kept: IndexedDB, one row for each entry.
 *
 * A row is written once and never changed, so tabs cannot overwrite each other; a row that cannot be read is left where it is
 * and told of. Where the browser keeps nothing, the entries live as long as the page, and that is told too. How many rows there
 * are is also kept beside them: a browser that finds its store damaged begins a new one and says nothing.
 */
import { type IDBPDatabase, openDB } from 'idb';
import { Counts } from './counts.ts';
import { type Entry, entryOf } from './entries.ts';

const NAME = 'idle-season';
const VERSION = 1;
const ROWS = 'entries';
const CHANNEL = 'idle-season.bench';

/** What the person has to know about the place of the record. */
export type Trouble = 'unavailable' | 'newer' | 'full' | 'lost';

export interface Kept {
  entries: Entry[];
  /** Rows of another format, or damaged; untouched. */
  unread: unknown[];
}

export class BenchStore {
  trouble: Trouble | undefined;
  private db: IDBPDatabase | undefined;
  private readonly counts = new Counts();
  private readonly channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(CHANNEL);
  /** What could not be written down; lost with the page. */
  private readonly loose = new Map<string, Entry>();

  private constructor() {
    // Where a page is left with things that are nowhere else, the browser asks first.
    addEventListener('beforeunload', (event) => {
      if (this.loose.size > 0) event.preventDefault();
    });
  }

  static async open(): Promise<BenchStore> {
    const store = new BenchStore();
    await store.connect();
    return store;
  }

  /** All that is kept, with what is only in this page. */
  async all(): Promise<Kept> {
    const kept: Kept = { entries: [], unread: [] };
    const rows = await this.rows();
    for (const row of rows) {
      const entry = entryOf(row);
      if (entry) kept.entries.push(entry);
      else kept.unread.push(row);
    }
    if (this.db && rows.length === 0 && this.counts.known > 0) this.trouble = 'lost';
    else if (this.db) this.counts.set(rows.length);
    kept.entries.push(...this.loose.values());
    return kept;
  }

  /**
   * Writes an entry down.
   * @returns why it is only in this page, where it could not be
   */
  async add(entry: Entry): Promise<Trouble | undefined> {
    try {
      if (!this.db) await this.connect();
      if (!this.db) throw new DOMException('', 'InvalidStateError');
      await this.db.add(ROWS, entry);
    } catch (error) {
      this.loose.set(entry.id, entry);
      return (error as DOMException).name === 'QuotaExceededError' ? 'full' : (this.trouble ?? 'unavailable');
    }
    this.counts.add(1);
    this.channel?.postMessage(entry.machine);
    await this.writeLoose();
    return undefined;
  }

  /**
   * Takes an entry out.
   * @returns why it could not be
   */
  async remove(entry: Entry): Promise<Trouble | undefined> {
    if (this.loose.delete(entry.id)) return undefined;
    try {
      if (!this.db) await this.connect();
      this.counts.add(-1);
      await this.db!.delete(ROWS, entry.id);
    } catch {
      this.counts.add(1);
      return this.trouble ?? 'unavailable';
    }
    this.channel?.postMessage(entry.machine);
    await this.writeLoose();
    return undefined;
  }

  /** Whether something is nowhere but in this page. */
  get hasLoose(): boolean {
    return this.loose.size > 0;
  }

  /** Hears of entries that other tabs write. */
  onChange(act: (machine: string) => void): void {
    this.channel?.addEventListener('message', ({ data }) => {
      if (typeof data === 'string') act(data);
    });
  }

  /** There may be room again for what there was none for. */
  private async writeLoose(): Promise<void> {
    for (const entry of this.loose.values())
      try {
        await this.db!.add(ROWS, entry);
        this.loose.delete(entry.id);
        this.counts.add(1);
        this.channel?.postMessage(entry.machine);
      } catch {
        return;
      }
  }

  private async rows(): Promise<unknown[]> {
    try {
      if (!this.db) await this.connect();
      return this.db ? await this.db.getAll(ROWS) : [];
    } catch {
      // The store was there and cannot be read: nothing is rebuilt in its place.
      this.trouble ??= 'unavailable';
      return [];
    }
  }

  private async connect(): Promise<void> {
    try {
      this.db = await this.openRows(VERSION);
      this.trouble = undefined;
      return;
    } catch (error) {
      if ((error as DOMException | undefined)?.name !== 'VersionError') {
        this.trouble = 'unavailable';
        return;
      }
    }
    try {
      // Written by a newer version of the site: what this one understands is read, and nothing is rebuilt.
      this.trouble = 'newer';
      const db = await this.openRows(undefined);
      this.db = db.objectStoreNames.contains(ROWS) ? db : undefined;
    } catch {
      this.trouble = 'unavailable';
    }
  }

  private openRows(version: number | undefined): Promise<IDBPDatabase> {
    return openDB(NAME, version, {
      upgrade: (db) => {
        if (version === VERSION && !db.objectStoreNames.contains(ROWS)) db.createObjectStore(ROWS, { keyPath: 'id' });
      },
      // Another tab wants a newer layout: this one lets go, and asks again when it needs to.
      blocking: (_, __, event) => {
        (event.target as IDBDatabase).close();
        this.db = undefined;
      },
      terminated: () => {
        this.db = undefined;
      },
    });
  }
}
