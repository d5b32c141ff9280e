/** Bench records: what was measured and done, held against the machine they are about. */
import type { BenchRecord } from '../planner/bench-record.ts';
import type { CrossContext } from './cross-context.ts';
import { stepProblems } from './cross-steps.ts';
import { type Dated, recordedProblems } from './cross-years.ts';
import { idsOf, type Loaded, problemAt } from './loaded.ts';
import { nearest, type Problem } from './problem.ts';
import type { MachineFile } from './schemas/machine.ts';
import type { RecordFile } from './schemas/record.ts';
import { type Known, knownEntries } from './sound.ts';
import type { Source } from './source.ts';

/** What cannot have been measured and ticked, whatever the machine. */
export function measuredProblems(source: Source, data: Known<Dated>, asOf: string): Problem[] {
  const problems = readingProblems(source, data.readings);
  recordedProblems(data, asOf, (path, what, fix) => problems.push(problemAt(source, path, what, fix)));
  return problems;
}

/** Readings that no 12 V battery gives: a lithium one that has shut itself off reads next to nothing. */
function readingProblems(source: Source, readings: Known<RecordFile>['readings']): Problem[] {
  return knownEntries(readings).flatMap(([i, r]) => {
    if (r.voltage !== undefined && !(r.voltage <= 16)) {
      return [
        problemAt(
          source,
          ['readings', i, 'voltage'],
          `found ${r.voltage} V, expected 0 to 16 V at the posts of a 12 V battery`,
          'Check the figure and the meter’s range.',
        ),
      ];
    }
    const same = (o: typeof r | undefined) =>
      (['date', 'voltage', 'temperature', 'rested'] as const).every((k) => r[k] !== undefined && o?.[k] === r[k]);
    const twice = readings!.findIndex(same);
    return twice === i || twice < 0
      ? []
      : [
          problemAt(
            source,
            ['readings', i],
            `found the reading of ${r.date} a second time, expected it once`,
            'Delete one of the two.',
          ),
        ];
  });
}

/**
 * What is said to be open, and is no assembly of the machine nor anything that a procedure opens.
 * @param own - ids of the machine's assemblies; undefined where they are not all known, and so `openItems`
 */
export function asLeftProblems(
  source: Source,
  left: Known<RecordFile>['asLeft'],
  own: readonly string[] | undefined,
  openItems: ReadonlySet<string> | undefined,
): Problem[] {
  if (own === undefined || openItems === undefined) return [];
  return knownEntries(left).flatMap(([i, one]) => {
    if (one.item === undefined) return [];
    const item = one.item.replace(/^assembly:/, '');
    if (own.includes(item) || openItems.has(item) || openItems.has(item.split(':')[0]!)) return [];
    const near = nearest(item, [...own, ...openItems]);
    const such = near ? `, such as "${near}"` : own.length > 0 ? ` (${own.join(', ')})` : '';
    return [
      problemAt(
        source,
        ['asLeft', i, 'item'],
        `found "${item}", expected an assembly of this machine${such}, or an open item of its plan`,
        near ? `Write ${near}.` : own.length > 0 ? 'Write one of these.' : 'Write the item as the plan names it.',
      ),
    ];
  });
}

/**
 * Problems of the records, held against their machines.
 * @param unread - ids of machines whose files could not be read
 */
export function recordProblems(
  records: readonly Loaded<RecordFile>[],
  machines: readonly Loaded<MachineFile>[],
  unread: readonly string[],
  { asOf, openItems, procedures }: Pick<CrossContext, 'asOf' | 'openItems' | 'procedures'>,
): Problem[] {
  const ids = [...machines.map((m) => m.id), ...unread];
  // Where there is none at all, that is said, and nothing is wrong with the records.
  if (ids.length === 0 && unread.length === 0) return [];
  return records.flatMap(({ id, source, checked }) => {
    const data = checked.sound;
    const problems = measuredProblems(source, data, asOf);
    const machine = machines.find((m) => m.id === id);
    if (!machine) {
      if (unread.includes(id)) return problems;
      const near = nearest(id, ids);
      problems.push(
        problemAt(
          source,
          [],
          `found a record of "${id}", expected one of ${ids.join(', ')}`,
          near ? `Move it to records/${near}/.` : 'Move it to the folder of its machine.',
        ),
      );
      return problems;
    }
    if (data.machine !== undefined && data.machine !== id) {
      problems.push(
        problemAt(
          source,
          ['machine'],
          `found "${data.machine}" in the folder of "${id}", expected "${id}"`,
          ids.includes(data.machine)
            ? `Move the file to records/${data.machine}/, or correct the line.`
            : `Write ${id}, or delete the line.`,
        ),
      );
    }
    if (machine.checked.sound.battery === 'none' && data.readings !== undefined && data.readings.length > 0)
      problems.push(problemAt(source, ['readings'], ...READINGS_OF_NONE));
    const jobs = idsOf(machine.checked, 'jobs');
    const assemblies = idsOf(machine.checked, 'assemblies');
    problems.push(...asLeftProblems(source, data.asLeft, assemblies, openItems));
    stepProblems(data, { procedures, jobs, assemblies }, (path, what, fix) =>
      problems.push(problemAt(source, path, what, fix)),
    );
    for (const [i, job] of knownEntries(data.finishedJobs)) {
      if (jobs === undefined || jobs.includes(job)) continue;
      problems.push(
        problemAt(
          source,
          ['finishedJobs', i],
          `found the job "${job}", expected ${jobs.length > 0 ? `one of ${jobs.join(', ')}` : 'none, since the machine has no jobs'}`,
          writeNear(job, jobs, 'Write a job of this machine.'),
        ),
      );
    }
    for (const [i, { assembly }] of knownEntries(data.notes)) {
      if (assembly === undefined || assemblies === undefined || assemblies.includes(assembly)) continue;
      problems.push(
        problemAt(
          source,
          ['notes', i, 'assembly'],
          `found the assembly "${assembly}", expected ${assemblies.length > 0 ? `one of ${assemblies.join(', ')}` : 'none, since the machine has no assemblies'}`,
          writeNear(assembly, assemblies, 'Write an assembly of this machine, or delete the line.'),
        ),
      );
    }
    return problems;
  });
}

/** What is found where a machine without battery has readings of one, and what to do. */
export const READINGS_OF_NONE: [what: string, fix: string] = [
  'found battery readings of a machine with battery: none, expected none',
  'Delete the readings, or describe the battery in the machine’s file.',
];

function writeNear(word: string, known: readonly string[], other: string): string {
  const near = nearest(word, known);
  return near ? `Write ${near}.` : other;
}

/**
 * What a record file says, in the units of the planner.
 * @param file - sound
 */
export function recordOfFile(file: RecordFile): BenchRecord {
  const { season } = file;
  return {
    readings: (file.readings ?? []).map((r) => ({
      date: r.date,
      volts: r.voltage,
      temperatureC: r.temperature,
      restedH: r.rested,
    })),
    charged: (file.charged ?? []).map((c) => ({ date: c.date, toPct: c.to ?? 100 })),
    // Where a file names its season, so does each of its ticks.
    done: (file.done ?? []).map((tick) => ({ season, ...tick })),
    skipped: (file.skipped ?? []).map((tick) => ({ season, ...tick })),
    notes: file.notes ?? [],
    asLeft: file.asLeft ?? [],
    finishedJobs: (file.finishedJobs ?? []).map((job) => ({ job })),
    odometer: file.odometer === undefined ? [] : [{ km: file.odometer }],
    engineHours: file.engineHours === undefined ? [] : [{ h: file.engineHours }],
  };
}
