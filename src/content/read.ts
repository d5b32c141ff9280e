/**
 * Content files -> Household, or every problem of every file.
 *
 * Pure: files are handed over as bytes, so the build, the tests and the page read content by the same code.
 */
import { withRecords } from '../planner/bench-record.ts';
import type { Climate } from '../planner/climate/index.ts';
import type { Household, Machine, Place, Procedure } from '../planner/household.ts';
import { mergeProcedures } from '../planner/tasks/index.ts';
import { check } from './check.ts';
import type { ClimateLibrary } from './climate-library.ts';
import { climateOfPlace, climateProblems } from './climates.ts';
import { householdProblems } from './cross-household.ts';
import { machineProblems } from './cross-machine.ts';
import { placeDoubts } from './cross-place.ts';
import { procedureProblems } from './cross-procedure.ts';
import { type ContentFile, type Kind, type Sorted, sortFiles } from './files.ts';
import type { Loaded } from './loaded.ts';
import { type Problem, sortProblems } from './problem.ts';
import { type Bundle, bundleOf, inOwnFiles, ledgerBeside, soundProcedures } from './read-procedures.ts';
import { recordOfFile, recordProblems } from './records.ts';
import { resolveMachine } from './resolve.ts';
import { resolveHousehold, resolvePlace } from './resolve-place.ts';
import { climate as climateSchema } from './schemas/climate.ts';
import { household as householdSchema } from './schemas/household.ts';
import { machine as machineSchema } from './schemas/machine.ts';
import { place as placeSchema } from './schemas/place.ts';
import { procedureSchema } from './schemas/procedure.ts';
import { record as recordSchema } from './schemas/record.ts';
import { readSource } from './source.ts';

export type { ContentFile } from './files.ts';

export interface ReadOptions {
  /** Paths of files that are there and were refused already: what names them is not told to dangle. */
  unread?: readonly string[] | undefined;
  /** The day of the plan, or how to tell it from the household's time zone. */
  asOf: string | ((zone: string) => string);
  /** Instant of the last change, where household.yaml does not give one; ISO 8601 in UTC. */
  revised?: string | undefined;
  /** The bundled stations, for places that ask for them. */
  library?: ClimateLibrary | undefined;
  /** The bundled procedures ("procedures/…"); a file of the same name in the household's own folder takes the place of one. */
  procedures?: readonly ContentFile[] | undefined;
  /** The bundled procedures read already, in place of their files: what a page has. */
  readProcedures?: readonly Procedure[] | undefined;
}

export interface ReadResult {
  /** Present only where nothing is wrong. */
  household?: Household | undefined;
  /** By file, then line. */
  problems: Problem[];
}

/** Nothing was revised before this; the day calendars count from where nothing better is known. */
const EPOCH = '2026-01-01T00:00:00Z';

/**
 * Reads a household.
 * @param files - all files of the content folder, paths inside it
 * @param options - day of the plan, and what is bundled
 * @returns the household, or all problems of all files
 */
export function readContent(files: readonly ContentFile[], options: ReadOptions): ReadResult {
  const { sorted, problems, refused } = sortFiles(files, options.unread);
  /** Ids of the files of a kind that are there and are not read: what names them dangles no more than what names the others. */
  const unread = (kind: Kind) => refused.filter((r) => r.kind === kind).map((r) => r.id);
  const load = <S extends Parameters<typeof check>[1]>(kind: Sorted['kind'], schema: S) =>
    sorted
      .filter((f) => f.kind === kind)
      .map((f) => {
        const source = readSource(f.file.path, f.file.bytes);
        const checked = check(source, schema);
        problems.push(...source.problems.filter(notSaidIn(checked.problems)), ...checked.problems);
        return { id: f.id, source, checked };
      });

  const [home] = load('household', householdSchema);
  const climates = load('climate', climateSchema);
  const places = load('place', placeSchema);
  const machines = load('machine', machineSchema);
  const records = load('record', recordSchema);
  const own = load('procedure', procedureSchema);
  problems.push(...own.flatMap(procedureProblems));
  const bundle: Bundle = options.readProcedures
    ? { procedures: [...options.readProcedures], problems: [], ledger: [] }
    : bundleOf(options.procedures ?? []);
  problems.push(...bundle.problems);
  const procedures = mergeProcedures(bundle.procedures, soundProcedures(own));

  if (!home && unread('household').length === 0)
    problems.push(
      missing('household.yaml', 'found no household.yaml', 'Copy the one of the demo household and change it.'),
    );
  const isUnread = (folder: string) => options.unread?.includes(folder) ?? false;
  if (places.length === 0 && unread('place').length === 0 && !isUnread('places'))
    problems.push(missing('places', 'found no place', 'Write places/<id>.yaml: where the machines rest.'));
  if (machines.length === 0 && unread('machine').length === 0 && !isUnread('machines'))
    problems.push(missing('machines', 'found no machine', 'Write machines/<id>.yaml, or run: npm run new.'));

  const zone = home?.checked.sound.timeZone ?? 'UTC';
  const asOf = typeof options.asOf === 'string' ? options.asOf : options.asOf(zone);
  const ownSound =
    own.every((p) => p.checked.value && procedureProblems(p).length === 0) && unread('procedure').length === 0;
  const context = {
    asOf,
    household: home?.checked,
    places: new Map([
      ...unread('place').map((id) => [id, {}] as const),
      ...places.map((p) => [p.id, p.checked.sound] as const),
    ]),
    openItems: ownSound
      ? new Set(procedures.flatMap((p) => p.steps.flatMap((s) => s.opens.map((o) => o.item))))
      : undefined,
    procedures: ownSound && procedures.length > 0 ? procedures : undefined,
  };
  if (home) problems.push(...householdProblems(home, [...context.places.keys()], asOf));
  problems.push(...climates.flatMap(climateProblems));
  for (const machine of machines) problems.push(...machineProblems(machine, context));
  problems.push(...recordProblems(records, machines, unread('machine'), context));
  if (unread('procedure').length === 0) {
    const broken = own.filter((p) => !p.checked.value).map(({ id, source: { file } }) => ({ id, file }));
    const written = broken.map(({ id, file }) => ({ id, ...sorted.find((f) => f.file.path === file)!.file }));
    const ledger = own.length === 0 ? bundle.ledger : ledgerBeside(procedures, written);
    problems.push(...inOwnFiles(ledger, own, bundle.procedures));
  }

  const weatherFiles = { files, unread: options.unread ?? [] };
  const weather = new Map<string, { climate: Climate; station: Place['station'] }>();
  for (const place of places) {
    const found = climateOfPlace(
      place,
      [...climates, ...unread('climate').map((id) => ({ id }))],
      weatherFiles,
      options.library,
    );
    problems.push(...found.problems);
    if (found.climate) weather.set(place.id, { climate: found.climate, station: found.station });
  }
  // What could not be read is told elsewhere; a household without it is not the one that was written.
  const isWhole = (options.unread ?? []).length === 0;
  if (problems.length > 0 || !isWhole || !home?.checked.value) return { problems: sortProblems(problems) };

  const resolved = places.map((p) => {
    const { climate, station } = weather.get(p.id)!;
    return resolvePlace(p.id, p.checked.value!, climate, station);
  });
  const doubts = places.flatMap((p) => placeDoubts(p.id, p.checked.value!, weather.get(p.id)!.station, zone, asOf));
  const household: Household = {
    ...resolveHousehold(home.checked.value, revisedAt(home.checked.value.revised, records, options.revised)),
    places: resolved.map((r) => r.place),
    machines: machines.map((m): Machine => {
      const raw = m.checked.value!;
      const machine = resolveMachine(m.id, raw, resolved.find((r) => r.place.id === raw.place)!, asOf);
      const own = records.filter((r) => r.id === m.id);
      return withRecords(
        machine,
        own.map((r) => recordOfFile(r.checked.value!)),
      );
    }),
    procedures,
    ...(doubts.length > 0 && { doubts }),
  };
  return { household, problems: [] };
}

/** A day that the calendar has not, without quotes: what to write instead is said with its quotes. */
function notSaidIn(said: readonly Problem[]): (problem: Problem) => boolean {
  return ({ what, line, column }) =>
    !what.includes('without quotes') || !said.some((other) => other.line === line && other.column === column);
}

function missing(file: string, what: string, fix: string): Problem {
  return { file, line: 1, column: 1, field: '', what: `${what}, expected one`, fix };
}

/** The newest of what the content itself says; only where it says nothing, what the files' times say. */
function revisedAt(
  written: string | undefined,
  records: readonly Loaded<{ exported?: string | undefined }>[],
  fallback: string | undefined,
): string {
  const exported = records.map((r) => r.checked.value?.exported).filter((e) => e !== undefined);
  const instants = [written ?? fallback ?? EPOCH, ...exported].map((text) => Date.parse(text));
  return new Date(Math.max(...instants)).toISOString();
}
