/** The bench record as data: single entries as the device keeps them, and together as `content/records/` takes them. */

/** Together, in the units of the fields. */
export interface RecordEntries {
  readings: { date: string; volts: number; temperatureC: number; restedH: number }[];
  charged: { date: string; toPct: number }[];
  done: { date: string; step: string }[];
  notes: { date: string; text: string; assembly?: string | undefined }[];
  asLeft: { item: string; where?: string | undefined; since?: string | undefined }[];
}

type Lists = { [K in keyof RecordEntries]: { kind: K } & RecordEntries[K][number] };

/** What one entry says. */
export type Said = Lists[keyof Lists];

/** One entry as it is kept; `id` is its own, so that two tabs never write over each other. */
export type Entry = { format: 1; id: string; machine: string } & Said;

const isDate = (value: unknown): value is string => typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);
const isText = (value: unknown, most: number): value is string =>
  typeof value === 'string' && value.trim() !== '' && value.length <= most;
const isNumber = (value: unknown, low: number, high: number): value is number =>
  typeof value === 'number' && value >= low && value <= high;
const maybe = <T>(value: unknown, is: (value: unknown) => value is T): value is T | undefined =>
  value === undefined || is(value);

/** What each kind of entry must be; the bounds are those of the record's schema. */
const SOUND: Record<Said['kind'], (e: Record<string, unknown>) => boolean> = {
  readings: (e) =>
    isDate(e.date) && isNumber(e.volts, 5, 16) && isNumber(e.temperatureC, -60, 60) && isNumber(e.restedH, 0, 20000),
  charged: (e) => isDate(e.date) && isNumber(e.toPct, 1, 100),
  done: (e) => isDate(e.date) && isText(e.step, 160),
  notes: (e) => isDate(e.date) && isText(e.text, 2000) && maybe(e.assembly, (v) => isText(v, 60)),
  asLeft: (e) => isText(e.item, 100) && maybe(e.where, (v) => isText(v, 120)) && maybe(e.since, isDate),
};

/**
 * An entry from whatever a device gives back.
 * @param kept - anything
 * @returns the entry, or undefined where it is none that this version knows
 */
export function entryOf(kept: unknown): Entry | undefined {
  if (typeof kept !== 'object' || kept === null) return undefined;
  const e = kept as Record<string, unknown>;
  if (e.format !== 1 || typeof e.id !== 'string' || typeof e.machine !== 'string') return undefined;
  const sound = typeof e.kind === 'string' && Object.hasOwn(SOUND, e.kind) ? SOUND[e.kind as Said['kind']] : undefined;
  return sound?.(e) ? (e as unknown as Entry) : undefined;
}

/** What an entry says, in one text: entries that say the same are the same. */
export const saidKey = ({ kind, ...rest }: Said): string =>
  JSON.stringify([
    kind,
    Object.entries({ ...rest, id: 0, format: 0, machine: 0 })
      .filter(([, v]) => v !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  ]);

/** Entries as a record: each thing once, what lies where as it was said last. */
export function recordOf(entries: readonly Entry[]): RecordEntries {
  const out: RecordEntries = { readings: [], charged: [], done: [], notes: [], asLeft: [] };
  const met = new Set<string>();
  for (const entry of entries) {
    const key = saidKey(entry);
    if (met.has(key)) continue;
    met.add(key);
    const { kind, id: _, machine: __, format: ___, ...said } = entry;
    (out[kind] as unknown[]).push(said);
  }
  const byDate = (a: { date: string }, b: { date: string }) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0);
  out.readings.sort(byDate);
  out.charged.sort(byDate);
  out.done.sort(byDate);
  out.notes.sort(byDate);
  return out;
}
