/** The record as a file for `content/records/<machine>/`. */
import { scalar } from '../../content/write.ts';
import type { RecordEntries } from './entries.ts';

/**
 * A record file.
 * @param machine - id
 * @param record - what to write
 * @param exported - this instant, ISO 8601 in UTC
 * @returns YAML that the reader takes
 */
export function recordFile(machine: string, record: RecordEntries, exported: string): string {
  const text = (value: string) => (value.includes('\n') ? JSON.stringify(value) : quoted(value));
  const list = <T>(name: string, items: readonly T[], line: (item: T) => string) =>
    items.length === 0 ? [] : [`${name}:`, ...items.map((item) => `  - { ${line(item)} }`)];
  return `${[
    `# Bench record of ${machine}. Put this file into records/${machine}/ of your content folder, under any name.`,
    '',
    `machine: ${machine}`,
    `exported: "${exported}"`,
    ...list(
      'readings',
      record.readings,
      (r) => `date: "${r.date}", voltage: ${r.volts} V, temperature: ${r.temperatureC} °C, rested: ${r.restedH} h`,
    ),
    ...list('charged', record.charged, (c) => `date: "${c.date}", to: ${c.toPct} %`),
    ...list('done', record.done, (d) => `step: ${text(d.step)}, date: "${d.date}"`),
    ...list(
      'notes',
      record.notes,
      (n) => `date: "${n.date}", text: ${text(n.text)}${n.assembly === undefined ? '' : `, assembly: ${n.assembly}`}`,
    ),
    ...list('asLeft', record.asLeft, (l) =>
      [
        `item: ${text(l.item)}`,
        l.where === undefined ? '' : `where: ${text(l.where)}`,
        l.since === undefined ? '' : `since: "${l.since}"`,
      ]
        .filter(Boolean)
        .join(', '),
    ),
  ].join('\n')}\n`;
}

/** Between braces a comma ends a value: such text is quoted. */
const quoted = (value: string) => (/[,{}[\]]/.test(value) ? JSON.stringify(value) : scalar(value));
