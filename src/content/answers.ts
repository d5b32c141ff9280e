/**
 * Answers of a form -> Household, without a file and without the validation library, so that a page can plan with little
 * code. The same answers written into files (write.ts) and read by the reader give the same household; a test holds the two
 * together.
 */
import { withRecords } from '../planner/bench-record.ts';
import type { Climate } from '../planner/climate/index.ts';
import type { Household, Place, Procedure } from '../planner/household.ts';
import { mergeProcedures } from '../planner/tasks/procedures.ts';
import { type Dimension, parseQuantity } from '../planner/units/index.ts';
import { chargerSettings } from './charger-settings.ts';
import { type ClimateLibrary, nearestStations, stationClimate, stationOf } from './climate-library.ts';
import { answerProblems, type Say } from './cross-answers.ts';
import { seasonProblems } from './cross-season.ts';
import { resolveMachine } from './resolve.ts';
import { resolveHousehold, resolvePlace } from './resolve-place.ts';
import type { MachineFile } from './schemas/machine.ts';
import type { PlaceFile } from './schemas/place.ts';
import { typedIn } from './typed.ts';
import type { HouseholdAnswers, MachineAnswers, PlaceAnswers } from './write.ts';

/** All that was answered; machines name their place by its id. */
export interface Answers {
  household: HouseholdAnswers & { revised: string };
  places: ({ id: string } & PlaceAnswers)[];
  machines: ({ id: string } & MachineAnswers)[];
}

/** What is bundled with the project. */
export interface Bundled {
  procedures: readonly Procedure[];
  library: ClimateLibrary;
}

/**
 * Plans' input from answers.
 * @param answers - each within the bounds of its field
 * @param bundled - procedures and stations
 * @param asOf - the day of the plan
 * Error: RangeError for a quantity that is none, or a place that is not there.
 */
export function householdOf(answers: Answers, bundled: Bundled, asOf: string): Household {
  const { charger, stabiliserDose, batteryRoom, ...home } = answers.household;
  const raw = {
    ...home,
    fuelCare:
      stabiliserDose === undefined
        ? undefined
        : { stabiliserDose: quantity(stabiliserDose, 'dose'), can: undefined, cans: undefined },
    batteryRoom: batteryRoom && {
      name: batteryRoom.name,
      temperature: quantity(batteryRoom.temperature, 'temperature'),
    },
    chargers: charger && [
      {
        id: 'charger',
        name: 'Charger',
        current: quantity(charger.current, 'current'),
        chemistries: [...chargerSettings(charger)],
        maintainer: charger.maintainer,
      },
    ],
  };
  const inOrder = <T extends { id: string }>(list: readonly T[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  const places = inOrder(answers.places).map(({ id, climate, ...place }) => {
    const found = climateOf(climate, bundled.library);
    return resolvePlace(id, place as PlaceFile, found.climate, found.station);
  });
  return {
    ...resolveHousehold(raw, new Date(home.revised).toISOString()),
    places: places.map((p) => p.place),
    machines: inOrder(answers.machines).map(({ id, ...machine }) => {
      const place = places.find((p) => p.place.id === machine.place);
      if (!place) throw new RangeError(`found the place "${machine.place}", expected one that was described`);
      const resolved = resolveMachine(id, machineFile(machine), place, asOf);
      return machine.record ? withRecords(resolved, [machine.record]) : resolved;
    }),
    procedures: mergeProcedures(bundled.procedures, []),
  };
}

/** What is wrong with an answer, in the words of the reader. */
export interface AnswerProblem {
  machine: string;
  /** As in the file: "battery.capacity". */
  field: string;
  what: string;
  fix: string;
}

/** What only shows when answers are held against each other: the same rules as for files. */
export function problemsOf(answers: Answers): AnswerProblem[] {
  return answers.machines.flatMap(({ id, ...machine }) => {
    const problems: AnswerProblem[] = [];
    const say: Say = (path, what, fix) => problems.push({ machine: id, field: path.join('.'), what, fix });
    const file = machineFile(machine);
    seasonProblems(file, say);
    answerProblems(file, say, typedIn(machine));
    return problems;
  });
}

function climateOf(
  wanted: PlaceAnswers['climate'],
  library: ClimateLibrary,
): { climate: Climate; station: Place['station'] } {
  if ('near' in wanted) {
    const near = nearestStations(library, wanted.near[0], wanted.near[1])[0]!;
    return { climate: near.climate, station: stationOf(near) };
  }
  const at = library.file.id.indexOf(wanted.station);
  if (at < 0) throw new RangeError(`found the station "${wanted.station}", expected one of the bundled library`);
  return { climate: stationClimate(library, at), station: undefined };
}

function machineFile(answers: MachineAnswers): MachineFile {
  const { battery, fuel, engine, driveBattery, cooling, coolantFreezesAt, salted, record: _, ...rest } = answers;
  const file = {
    ...rest,
    cooling:
      coolantFreezesAt === undefined
        ? cooling
        : defined({ kind: cooling, freezesAt: maybe(coolantFreezesAt, 'temperature') }),
    engine: engine && defined(engine),
    driveBattery: driveBattery && defined(driveBattery),
    roadSalt: salted === undefined ? undefined : { exposed: salted },
    battery:
      battery === false
        ? 'none'
        : battery &&
          defined({
            ...battery,
            capacity: maybe(battery.capacity, 'charge'),
            drain: exact(maybe(battery.drain, 'smallCurrent')),
          }),
    fuel:
      fuel === false
        ? 'none'
        : fuel && defined({ ...fuel, tank: maybe(fuel.tank, 'volume'), inTank: exact(maybe(fuel.inTank, 'volume')) }),
  };
  return file as MachineFile;
}

/** A group that answers nothing is left out of the file, and so it is here. */
function defined<T extends object>(group: T): T | undefined {
  return Object.values(group).some((value) => value !== undefined) ? group : undefined;
}

function quantity(text: string, dimension: Dimension): number {
  const value = parseQuantity(text, dimension);
  if (typeof value !== 'number') throw new RangeError(value.problem);
  return value;
}

const maybe = (text: string | undefined, dimension: Dimension) =>
  text === undefined ? undefined : quantity(text, dimension);

const exact = (value: number | undefined) => (value === undefined ? undefined : { value, low: value, high: value });
