/** A record file read back, by the schema of `content/records/`. Apart, since it needs the YAML and schema libraries. */
import { check } from '../../content/check.ts';
import type { Problem } from '../../content/problem.ts';
import { measuredProblems, recordOfFile } from '../../content/records.ts';
import { record } from '../../content/schemas/record.ts';
import { readSource } from '../../content/source.ts';
import type { BenchRecord } from '../../planner/bench-record.ts';

export function readRecord(
  file: { path: string; bytes: Uint8Array },
  asOf: string,
): { machine?: string | undefined; record?: BenchRecord; problems: Problem[] } {
  const source = readSource(file.path, file.bytes);
  const { value, problems } = check(source, record);
  const all = [...source.problems, ...problems];
  if (!value || all.length > 0) return { problems: all };
  const late = measuredProblems(source, value, asOf);
  if (late.length > 0) return { problems: late };
  return { machine: value.machine, problems: [], record: recordOfFile(value) };
}
