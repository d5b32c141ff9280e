/** The bench record as single entries, as a device keeps them, and back into a record. */
import { type BenchRecord, emptyRecord, sameKey } from '../../planner/bench-record.ts';

type Lists = { [K in keyof BenchRecord]: { kind: K } & BenchRecord[K][number] };

/** What one entry says. */
export type Said = Lists[keyof Lists];

/** One entry as it is kept; `id` is its own, so that two tabs never write over each other. */
export type Entry = { format: 1; id: string; machine: string } & Said;

let made = 0;

/** A new entry's id. A store gives its rows back in the order of their ids: it is that in which they were written. */
export function newId(): string {
  made += 1;
  return [Date.now().toString(36).padStart(9, '0'), String(made).padStart(6, '0'), crypto.randomUUID()].join('-');
}

type Is = (value: unknown) => boolean;

const date: Is = (value) => typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);
const season: Is = (value) => typeof value === 'string' && /^\d{4}-(05|11)$/.test(value);
const text =
  (most: number): Is =>
  (value) =>
    typeof value === 'string' && value.trim() !== '' && value.length <= most;
const number =
  (low: number, high: number): Is =>
  (value) =>
    typeof value === 'number' && value >= low && value <= high;
const maybe =
  (is: Is): Is =>
  (value) =>
    value === undefined || is(value);

/** What each kind of entry must be; the bounds are those of the record's schema. */
const SOUND: { [K in keyof BenchRecord]: Record<keyof BenchRecord[K][number], Is> } = {
  readings: { date, volts: number(0, 16), temperatureC: number(-60, 60), restedH: number(0, 20000) },
  charged: { date, toPct: number(1, 100) },
  done: { step: text(160), date, season: maybe(season) },
  skipped: { step: text(160), date, season: maybe(season), why: maybe(text(200)) },
  notes: { date, text: text(2000), assembly: maybe(text(60)) },
  asLeft: { item: text(100), where: maybe(text(120)), since: maybe(date) },
  finishedJobs: { job: text(60) },
  odometer: { km: number(0, 3e6) },
  engineHours: { h: number(0, 1e5) },
};

/**
 * An entry from whatever a device gives back. A field that this version does not know makes it none: it would be lost where the
 * entry is exported.
 * @param kept - anything
 * @returns the entry, or undefined where it is none that this version knows
 */
export function entryOf(kept: unknown): Entry | undefined {
  if (typeof kept !== 'object' || kept === null) return undefined;
  const { format, id, machine, ...said } = kept as Record<string, unknown>;
  if (format !== 1 || typeof id !== 'string' || typeof machine !== 'string') return undefined;
  return saidSoundly(said) && (kept as Entry);
}

/** What an entry says, from anything; undefined where it is nothing that this version knows. */
export function saidSoundly(value: unknown): Said | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { kind, ...said } = value as Record<string, unknown>;
  if (typeof kind !== 'string' || !Object.hasOwn(SOUND, kind)) return undefined;
  const sound: Record<string, Is> = SOUND[kind as keyof BenchRecord];
  const known = Object.keys(said).every((key) => Object.hasOwn(sound, key));
  return known && Object.entries(sound).every(([key, is]) => is(said[key])) ? (value as Said) : undefined;
}

/** What an entry says, without what it is kept by. */
function saidOf(entry: Entry | Said): Said {
  const { id: _, machine: __, format: ___, ...said } = entry as Entry;
  return said;
}

/** What an entry says, in one text: entries that say the same are the same. */
export const saidKey = (entry: Entry | Said): string => sameKey(saidOf(entry));

/** Entries as a record: each thing once, by date where there is one. */
export function recordOf(entries: readonly (Entry | Said)[]): BenchRecord {
  const record = emptyRecord();
  const once = new Map(entries.map((entry) => [saidKey(entry), saidOf(entry)]));
  for (const { kind, ...said } of once.values()) (record[kind] as object[]).push(said);
  for (const list of [record.readings, record.charged, record.done, record.skipped, record.notes])
    list.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  return record;
}

/** A record as what its entries say. */
export function entriesOf(record: BenchRecord): Said[] {
  return Object.entries(record).flatMap(([kind, list]) => list.map((item: object) => ({ kind, ...item }) as Said));
}
