/**
 * Content files -> Household, or every problem of every file.
 *
 * Pure: files are handed over as bytes, so the build, the tests and the page read content by the same code.
 */
import { withRecords } from '../planner/bench-record.ts';
import type { Climate } from '../planner/climate/index.ts';
import type { Household, Machine, Place, Procedure } from '../planner/household.ts';
import { ledgerProblems } from '../planner/ledger/index.ts';
import { mergeProcedures } from '../planner/tasks/index.ts';
import { check } from './check.ts';
import type { ClimateLibrary } from './climate-library.ts';
import { climateOfPlace, climateProblems } from './climates.ts';
import { householdProblems } from './cross-household.ts';
import { machineProblems } from './cross-machine.ts';
import { type ContentFile, type Sorted, sortFiles } from './files.ts';
import type { Loaded } from './loaded.ts';
import { type Problem, sortProblems } from './problem.ts';
import { recordOfFile, recordProblems } from './records.ts';
import { resolveMachine } from './resolve.ts';
import { resolveHousehold, resolvePlace } from './resolve-place.ts';
import { climate as climateSchema } from './schemas/climate.ts';
import { household as householdSchema } from './schemas/household.ts';
import { machine as machineSchema } from './schemas/machine.ts';
import { place as placeSchema } from './schemas/place.ts';
import { procedureSchema, toProcedure } from './schemas/procedure.ts';
import { record as recordSchema } from './schemas/record.ts';
import { readSource } from './source.ts';

export type { ContentFile } from './files.ts';

export interface ReadOptions {
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
  const { sorted, problems } = sortFiles(files);
  const load = <S extends Parameters<typeof check>[1]>(kind: Sorted['kind'], schema: S) =>
    sorted
      .filter((f) => f.kind === kind)
      .map((f) => {
        const source = readSource(f.file.path, f.file.bytes);
        const checked = check(source, schema);
        problems.push(...source.problems, ...checked.problems);
        return { id: f.id, source, checked };
      });

  const [home] = load('household', householdSchema);
  const climates = load('climate', climateSchema);
  const places = load('place', placeSchema);
  const machines = load('machine', machineSchema);
  const records = load('record', recordSchema);
  const own = load('procedure', procedureSchema);
  const bundle: Bundle = options.readProcedures
    ? { procedures: [...options.readProcedures], problems: [], ledger: [] }
    : bundleOf(options.procedures ?? []);
  problems.push(...bundle.problems);
  const procedures = mergeProcedures(bundle.procedures, soundProcedures(own));

  if (!home)
    problems.push(
      missing('household.yaml', 'found no household.yaml', 'Copy the one of the demo household and change it.'),
    );
  if (places.length === 0)
    problems.push(missing('places', 'found no place', 'Write places/<id>.yaml: where the machines rest.'));
  if (machines.length === 0)
    problems.push(missing('machines', 'found no machine', 'Write machines/<id>.yaml, or run: npm run new.'));

  const zone = home?.checked.sound.timeZone ?? 'UTC';
  const asOf = typeof options.asOf === 'string' ? options.asOf : options.asOf(zone);
  if (home)
    problems.push(
      ...householdProblems(
        home,
        places.map((p) => p.id),
      ),
    );
  problems.push(...climates.flatMap(climateProblems));
  const context = {
    asOf,
    household: home?.checked.sound ?? {},
    places: new Map(places.map((p) => [p.id, p.checked.sound])),
    openItems: new Set(procedures.flatMap((p) => p.steps.flatMap((s) => s.opens.map((o) => o.item)))),
  };
  for (const machine of machines) problems.push(...machineProblems(machine, context));
  problems.push(...recordProblems(records, machines, context));
  if (own.every((p) => p.checked.value))
    problems.push(...(own.length === 0 ? bundle.ledger : withoutItem(ledgerProblems(procedures))));

  const weather = new Map<string, { climate: Climate; station: Place['station'] }>();
  for (const place of places) {
    const found = climateOfPlace(place, climates, files, options.library);
    problems.push(...found.problems);
    if (found.climate) weather.set(place.id, { climate: found.climate, station: found.station });
  }
  if (problems.length > 0 || !home?.checked.value) return { problems: sortProblems(problems) };

  const resolved = places.map((p) => {
    const { climate, station } = weather.get(p.id)!;
    return resolvePlace(p.id, p.checked.value!, climate, station);
  });
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
  };
  // What the season's dates are proposed from is known only now.
  const late = household.machines.flatMap((m) => seasonProblem(m, machines));
  return late.length > 0 ? { problems: sortProblems(late) } : { household, problems: [] };
}

function seasonProblem(machine: Machine, machines: readonly Loaded<unknown>[]): Problem[] {
  if (machine.season.firstUse > machine.season.lastUse) return [];
  const source = machines.find((m) => m.id === machine.id)!.source;
  return [
    {
      file: source.file,
      ...source.at([]),
      field: 'firstUse',
      what: `found ${machine.season.firstUse} as first use, proposed from the climate, and ${machine.season.lastUse} as last use, expected first use after it`,
      fix: 'Write both lastUse and firstUse.',
    },
  ];
}

/**
 * Procedure files alone: the sound ones, and what is wrong with the others.
 * @param files - paths as in a content folder: "procedures/…"
 */
export function readProcedures(files: readonly ContentFile[]): { procedures: Procedure[]; problems: Problem[] } {
  const { procedures, problems } = bundleOf(files);
  return { procedures, problems };
}

interface Bundle {
  procedures: Procedure[];
  problems: Problem[];
  /** What the procedures leave open among themselves. */
  ledger: Problem[];
}

/** Bundles met already: a page reads its household at every change, with the same list of bundled files each time. */
const bundles = new WeakMap<readonly ContentFile[], Bundle>();

function bundleOf(files: readonly ContentFile[]): Bundle {
  const known = bundles.get(files);
  if (known) return known;
  const { sorted, problems } = sortFiles(files);
  const procedures = soundProcedures(
    sorted.map((f) => {
      const source = readSource(f.file.path, f.file.bytes);
      const checked = check(source, procedureSchema);
      problems.push(...source.problems, ...checked.problems);
      return { id: f.id, source, checked };
    }),
  );
  const bundle = { procedures, problems, ledger: withoutItem(ledgerProblems(mergeProcedures(procedures, []))) };
  bundles.set(files, bundle);
  return bundle;
}

function withoutItem(problems: ReturnType<typeof ledgerProblems>): Problem[] {
  return problems.map(({ item: _, ...rest }) => rest);
}

function soundProcedures(loaded: readonly Loaded<Parameters<typeof toProcedure>[1]>[]): Procedure[] {
  return loaded.flatMap(({ id, source, checked }) => (checked.value ? [toProcedure(id, checked.value, source)] : []));
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
