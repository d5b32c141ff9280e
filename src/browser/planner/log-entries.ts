/** What a person tells the form of the season: a reading, a charge, a sheet that is done. A draft keeps it as text. */
import type { MachineAnswers } from '../../content/write.ts';

export type LogEntry =
  | { kind: 'reading'; date: string; volts: number; temperatureC: number; restedH: number }
  | { kind: 'charged' | 'lay-up' | 'start-up'; date: string };

export const textOfLog = (entries: readonly LogEntry[]): string =>
  entries.length === 0 ? '' : JSON.stringify(entries);

/** The entries of a draft; what is none is passed over. */
export function logOf(text: string): LogEntry[] {
  try {
    const found: unknown = JSON.parse(text === '' ? '[]' : text);
    return Array.isArray(found) ? found.filter(isEntry) : [];
  } catch {
    return [];
  }
}

function isEntry(value: unknown): value is LogEntry {
  if (typeof value !== 'object' || value === null) return false;
  const { kind, date, volts, temperatureC, restedH } = value as Record<string, unknown>;
  if (typeof date !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(date)) return false;
  if (kind === 'reading') return [volts, temperatureC, restedH].every(Number.isFinite);
  return kind === 'charged' || kind === 'lay-up' || kind === 'start-up';
}

/** A log as the machine's file has it. */
export function answersOfLog(entries: readonly LogEntry[]): Pick<MachineAnswers, 'readings' | 'charged' | 'done'> {
  const readings = entries.flatMap((e) =>
    e.kind === 'reading'
      ? [{ date: e.date, voltage: `${e.volts} V`, temperature: `${e.temperatureC} °C`, rested: `${e.restedH} h` }]
      : [],
  );
  const charged = entries.flatMap((e) => (e.kind === 'charged' ? [{ date: e.date }] : []));
  const done = entries.flatMap((e) =>
    e.kind === 'lay-up' || e.kind === 'start-up' ? [{ step: e.kind, date: e.date }] : [],
  );
  return { readings, charged, done };
}
