/** What a person tells the form of the season: entries as the bench record has them. A draft keeps them as text. */
import { type Said, saidSoundly } from '../bench/entries.ts';

export interface Log {
  entries: Said[];
  /** What this version cannot read: it stays as it is kept. */
  unread: unknown[];
}

/** A log as a draft keeps it. */
export function textOfLog({ entries, unread }: Log): string {
  return entries.length + unread.length === 0 ? '' : JSON.stringify([...entries, ...unread]);
}

/** The log of a draft, those of the first format too. */
export function logOf(text: string): Log {
  const log: Log = { entries: [], unread: [] };
  for (const value of listIn(text)) {
    const said = saidSoundly(value) ?? saidSoundly(fromFirstFormat(value));
    if (said) log.entries.push(said);
    else log.unread.push(value);
  }
  return log;
}

function listIn(text: string): unknown[] {
  try {
    const found: unknown = text === '' ? [] : JSON.parse(text);
    return Array.isArray(found) ? found : [found];
  } catch {
    return [text];
  }
}

/** The first format had kinds of its own, and knew full charges and whole sheets only. */
function fromFirstFormat(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const { kind, date } = value as Record<string, unknown>;
  if (kind === 'reading') return { ...value, kind: 'readings' };
  if (kind === 'charged') return { kind, date, toPct: 100 };
  return kind === 'lay-up' || kind === 'start-up' ? { kind: 'done', step: kind, date } : value;
}
