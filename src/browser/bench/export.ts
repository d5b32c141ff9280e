/** The record as a file for `content/records/<machine>/`. */
import { scalar } from '../../content/write.ts';
import type { BenchRecord } from '../../planner/bench-record.ts';

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
 * A record file.
 * @param machine - id
 * @param record - what to write
 * @param exported - this instant, ISO 8601 in UTC
 * @returns YAML that the reader takes
 */
export function recordFile(machine: string, record: BenchRecord, exported: string): string {
  const lists = Object.entries(LINES).flatMap(([name, line]) => {
    const items: readonly object[] = record[name as keyof BenchRecord];
    return items.length === 0 ? [] : [`${name}:`, ...items.map((item) => `  - { ${fields(line(item as never))} }`)];
  });
  const highest = (values: readonly number[], name: string, unit: string) =>
    values.length === 0 ? [] : [`${name}: ${Math.max(...values)} ${unit}`];
  return `${[
    `# Bench record of ${machine}. Put this file into records/${machine}/ of your content folder, under any name.`,
    '',
    'format: 1',
    `machine: ${machine}`,
    `exported: "${exported}"`,
    ...lists,
    ...(record.finishedJobs.length > 0
      ? [`finishedJobs: [${record.finishedJobs.map(({ job }) => job).join(', ')}]`]
      : []),
    ...highest(
      record.odometer.map(({ km }) => km),
      'odometer',
      'km',
    ),
    ...highest(
      record.engineHours.map(({ h }) => h),
      'engineHours',
      'h',
    ),
  ].join('\n')}\n`;
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
