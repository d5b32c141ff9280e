/**
 * What the bench record of a machine says, and the machine with it: the same for a file in `content/records/` and for what a
 * page keeps on its device.
 */
import type { AsLeft, IsoDate, Machine, Reading } from './household.ts';

/** Lists of things measured and done, each with its day where it has one. */
export interface BenchRecord {
  readings: Reading[];
  charged: { date: IsoDate; toPct: number }[];
  /** `season` as `restKey` names it; where it is absent, the date tells. */
  done: { step: string; date: IsoDate; season?: string | undefined }[];
  skipped: { step: string; date: IsoDate; season?: string | undefined; why?: string | undefined }[];
  notes: { date: IsoDate; text: string; assembly?: string | undefined }[];
  asLeft: AsLeft[];
  finishedJobs: { job: string }[];
  odometer: { km: number }[];
  engineHours: { h: number }[];
}

/** A record that says nothing. */
export const emptyRecord = (): BenchRecord => ({
  readings: [],
  charged: [],
  done: [],
  skipped: [],
  notes: [],
  asLeft: [],
  finishedJobs: [],
  odometer: [],
  engineHours: [],
});

/**
 * A machine with its records in it: lists joined by date, each thing once, what lies where as last told, the highest counts of
 * the meters.
 * @param machine - as its own file has it
 * @param records - in any order
 */
export function withRecords(machine: Machine, records: readonly BenchRecord[]): Machine {
  if (records.length === 0) return machine;
  const all = <K extends keyof BenchRecord>(key: K) => records.flatMap((r): BenchRecord[K][number][] => r[key]);
  const finished = new Set(all('finishedJobs').map(({ job }) => job));
  const left = byDay([...machine.asLeft, ...all('asLeft')], ({ since = '' }) => since);
  const ticked = <T extends { step: string }>({ step, ...rest }: T) => ({ stepId: step, ...rest });
  return {
    ...machine,
    readings: joined(machine.readings, all('readings')),
    charged: joined(machine.charged, all('charged')),
    doneSteps: joined(machine.doneSteps, all('done').map(ticked)),
    skippedSteps: joined(machine.skippedSteps ?? [], all('skipped').map(ticked)),
    notes: joined(
      machine.notes,
      all('notes').map(({ assembly, ...note }) => ({ ...note, assemblyId: assembly })),
    ),
    asLeft: [...new Map(left.map((l) => [l.item, l])).values()],
    jobs: machine.jobs.map((job) => (finished.has(job.id) ? { ...job, done: true } : job)),
    odometerKm: highest([machine.odometerKm, ...all('odometer').map(({ km }) => km)]),
    engineHours: highest([machine.engineHours, ...all('engineHours').map(({ h }) => h)]),
  };
}

/** Two lists in the order of their days; what both have stands once. */
function joined<T extends { date: IsoDate }>(own: readonly T[], more: readonly T[]): T[] {
  const once = new Map([...own, ...more].map((item) => [sameKey(item), item]));
  return byDay([...once.values()], ({ date }) => date);
}

/** In the order of the days; of one day as they come. */
function byDay<T>(items: readonly T[], day: (item: T) => string): T[] {
  return [...items].sort((a, b) => (day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : 0));
}

/**
 * A text that is the same for things that say the same, whatever the order of their fields.
 * @param item - plain values by name; what is undefined is not said
 */
export function sameKey(item: object): string {
  const said = Object.entries(item).filter(([, value]) => value !== undefined);
  return JSON.stringify(said.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function highest(values: readonly (number | undefined)[]): number | undefined {
  const given = values.filter((value) => value !== undefined);
  return given.length > 0 ? Math.max(...given) : undefined;
}
