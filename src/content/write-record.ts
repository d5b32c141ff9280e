/** What was done and measured, as lines of a record's or a machine's file. */
import type { BenchRecord } from '../planner/bench-record.ts';
import { scalar } from './scalar.ts';

/** The line of one thing: its fields as the file names them, in the order in which they are read. */
const LINES: { [K in keyof BenchRecord]?: (item: BenchRecord[K][number]) => Record<string, string | undefined> } = {
  readings: (r) => ({
    date: day(r.date),
    voltage: `${r.volts} V`,
    temperature: `${r.temperatureC} °C`,
    rested: `${r.restedH} h`,
  }),
  charged: (c) => ({ date: day(c.date), to: `${c.toPct} %` }),
  done: (d) => ({ step: text(d.step), date: day(d.date), season: day(d.season) }),
  skipped: (s) => ({ step: text(s.step), date: day(s.date), season: day(s.season), why: text(s.why) }),
  notes: (n) => ({ date: day(n.date), text: text(n.text), assembly: n.assembly }),
  asLeft: (l) => ({ item: text(l.item), where: text(l.where), since: day(l.since) }),
};

/**
 * The lists that a machine's file and a record's have in common.
 * @param record - what was done and measured
 * @returns lines of YAML; none for a list without items
 */
export function recordLists(record: BenchRecord): string[] {
  return Object.entries(LINES).flatMap(([name, line]) => {
    const items: readonly object[] = record[name as keyof BenchRecord];
    return items.length === 0 ? [] : [`${name}:`, ...items.map((item) => `  - { ${fields(line(item as never))} }`)];
  });
}

const fields = (line: Record<string, string | undefined>) =>
  Object.entries(line)
    .flatMap(([name, value]) => (value === undefined ? [] : [`${name}: ${value}`]))
    .join(', ');

/** A date, or a season, is text: without quotes YAML would take some of them for numbers. */
const day = (value: string | undefined) => (value === undefined ? undefined : `"${value}"`);

/** Between braces a comma ends a value, and a new line any: such text is quoted. */
const text = (value: string | undefined) =>
  value === undefined ? undefined : /[,{}[\]\n]/.test(value) ? JSON.stringify(value) : scalar(value);
