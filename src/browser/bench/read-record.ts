/** A record file read back, by the schema of `content/records/`. Apart, since it needs the YAML and schema libraries. */
import { check } from '../../content/check.ts';
import type { Problem } from '../../content/problem.ts';
import { futureProblems, readingProblems } from '../../content/records.ts';
import { record } from '../../content/schemas/record.ts';
import { readSource } from '../../content/source.ts';
import type { RecordEntries } from './entries.ts';

export function readRecord(
  file: { path: string; bytes: Uint8Array },
  asOf: string,
): { machine?: string | undefined; entries?: RecordEntries; problems: Problem[] } {
  const source = readSource(file.path, file.bytes);
  const { value, problems } = check(source, record);
  const all = [...source.problems, ...problems];
  if (!value || all.length > 0) return { problems: all };
  const late = [...futureProblems(source, value, asOf), ...readingProblems(source, value.readings)];
  if (late.length > 0) return { problems: late };
  return {
    machine: value.machine,
    problems: [],
    entries: {
      readings: (value.readings ?? []).map((r) => ({
        date: r.date,
        volts: r.voltage,
        temperatureC: r.temperature,
        restedH: r.rested,
      })),
      charged: (value.charged ?? []).map((c) => ({ date: c.date, toPct: c.to ?? 100 })),
      done: value.done ?? [],
      notes: value.notes ?? [],
      asLeft: value.asLeft ?? [],
    },
  };
}
