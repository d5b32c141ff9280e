/** The record as a file for `content/records/<machine>/`. */
import { recordLists } from '../../content/write-record.ts';
import type { BenchRecord } from '../../planner/bench-record.ts';

/**
 * A record file.
 * @param machine - id
 * @param record - what to write
 * @param exported - this instant, ISO 8601 in UTC
 * @returns YAML that the reader takes
 */
export function recordFile(machine: string, record: BenchRecord, exported: string): string {
  const highest = (values: readonly number[], name: string, unit: string) =>
    values.length === 0 ? [] : [`${name}: ${Math.max(...values)} ${unit}`];
  return `${[
    `# Bench record of ${machine}. Put this file into records/${machine}/ of your content folder, under any name.`,
    '',
    'format: 1',
    `machine: ${machine}`,
    `exported: "${exported}"`,
    ...recordLists(record),
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
