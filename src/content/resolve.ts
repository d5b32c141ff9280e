/** A machine's file as written -> the planner's machine, with every default filled in and listed. */

import { proposeSeason } from '../planner/climate/index.ts';
import { addDays } from '../planner/dates.ts';
import type { Engine, Machine, Place, Season, Tyre } from '../planner/household.ts';
import { Assumptions } from './assume.ts';
import { idleFlowPreset, TYRE_PRESETS } from './presets.ts';
import { resolveBattery } from './resolve-battery.ts';
import { resolveDriveBattery } from './resolve-drive-battery.ts';
import { resolveCooling, resolveFuel } from './resolve-fuel.ts';
import { resolveWork } from './resolve-work.ts';
import type { MachineFile } from './schemas/machine.ts';

/**
 * Completes one machine.
 * @param id - the file's name
 * @param raw - the file, sound
 * @param place - where it rests, completed, with what was assumed of it
 * @param asOf - the day of the plan: a proposed rest is the one under way or the next
 */
export function resolveMachine(
  id: string,
  raw: MachineFile,
  place: { place: Place; assumptions: Machine['assumptions'] },
  asOf: string,
): Machine {
  const electric = raw.engine?.cycle === 'electric';
  const assume = new Assumptions(raw.kind, electric);
  const use = assume.fill<Machine['use']>(raw.use, 'use', 'use');
  const season = resolveSeason(raw, use, place.place, asOf, assume);
  const engine = resolveEngine(raw, assume);
  const fuel = resolveFuel(raw, raw.kind, engine, assume);
  const battery = resolveBattery(
    raw,
    {
      kind: raw.kind,
      electric,
      injected: fuel?.delivery === 'injection',
      electricStart: !electric && engine.start.startsWith('electric'),
      restBegins: season.lastUse,
    },
    assume,
  );
  return {
    id,
    name: raw.name,
    kind: raw.kind,
    use,
    year: raw.year,
    placeId: place.place.id,
    spot: raw.spot,
    season,
    engine,
    battery,
    driveBattery: resolveDriveBattery(raw, engine, assume),
    fuel,
    cooling: resolveCooling(raw, engine, assume),
    tyres: resolveTyres(raw, assume),
    chassis: resolveChassis(raw, engine, assume),
    roadSalt: resolveSalt(raw, assume),
    ...resolveWork(raw),
    paperwork: (raw.paperwork ?? []).map((p) => ({
      ...p,
      kind: p.kind ?? paperKind(p.id),
      pausedOverRest: p.pausedOverRest ?? false,
    })),
    asLeft: raw.asLeft ?? [],
    odometerKm: raw.odometer,
    engineHours: raw.engineHours,
    seasonKm: raw.nextSeason?.distance,
    seasonHours: raw.nextSeason?.hours,
    readings: (raw.readings ?? []).map((r) => ({
      date: r.date,
      volts: r.voltage,
      temperatureC: r.temperature,
      restedH: r.rested,
    })),
    charged: (raw.charged ?? []).map((c) => ({ date: c.date, toPct: c.to ?? 100 })),
    doneSteps: (raw.done ?? []).map((d) => ({ stepId: d.step, date: d.date, season: d.season })),
    skippedSteps: (raw.skipped ?? []).map(({ step, ...rest }) => ({ stepId: step, ...rest })),
    assumptions: [...assume.list, ...place.assumptions],
    file: `machines/${id}.yaml`,
  };
}

function resolveSeason(raw: MachineFile, use: Machine['use'], place: Place, asOf: string, assume: Assumptions): Season {
  if (raw.lastUse !== undefined && raw.firstUse !== undefined) {
    return {
      lastUse: raw.lastUse,
      firstUse: raw.firstUse,
      proposed: false,
      reasons: ['Dates given in the machine’s file.'],
    };
  }
  const machineUse = use === 'work' ? 'trail' : use;
  // A date that is given fixes the year; the proposal fills in the other end of the same rest.
  const after = raw.lastUse ?? (raw.firstUse === undefined ? asOf : addDays(raw.firstUse, -300));
  const proposal = proposeSeason(place.climate, machineUse, after);
  const lastUse = raw.lastUse ?? endBefore(proposal.lastUse, raw.firstUse);
  const firstUse = raw.firstUse ?? proposal.firstUse;
  for (const [field, given, day] of [
    ['lastUse', raw.lastUse, lastUse],
    ['firstUse', raw.firstUse, firstUse],
  ] as const) {
    if (given !== undefined) continue;
    assume.word({
      field,
      target: `season.${field}`,
      range: [day, addDays(day, -21), addDays(day, 21)],
      unit: '',
      reason: 'proposed from the climate; a year may be three weeks early or late',
    });
  }
  return { lastUse, firstUse, proposed: true, reasons: proposal.reasons };
}

/** The proposed day in the year that puts it before the given first use. */
function endBefore(day: string, firstUse: string | undefined): string {
  if (firstUse === undefined) return day;
  const inYear = (year: number) => addDays(`${year}-${day.slice(5, 7)}-01`, Number(day.slice(8)) - 1);
  const year = Number(firstUse.slice(0, 4));
  return inYear(year) < firstUse ? inYear(year) : inYear(year - 1);
}

function resolveEngine(raw: MachineFile, assume: Assumptions): Engine {
  const e = raw.engine ?? {};
  const cycle = assume.fill<Engine['cycle']>(e.cycle, 'engine.cycle', 'engine.cycle');
  if (cycle === 'electric') {
    return { cycle, cylinders: 0, start: e.start ?? 'electric', oilL: 0, oilFilter: false, idleFlowLPerH: 0 };
  }
  const cylinders = assume.fillNumber(e.cylinders, 'engine.cylinders', 'engine.cylinders');
  const start = assume.fill<Engine['start']>(e.start, 'engine.start', 'engine.start');
  const idleFlowLPerH =
    e.idleFlow ??
    assume.number({
      field: 'engine.idleFlow',
      target: 'engine.idleFlowLPerH',
      unit: 'L/h',
      range: idleFlowPreset(cylinders),
      reason: 'by number of cylinders (common practice)',
    }).value;
  if (cycle === 'two-stroke') {
    const twoStrokeOil =
      e.twoStrokeOil ??
      (assume.word({
        field: 'engine.twoStrokeOil',
        target: 'engine.twoStrokeOil',
        unit: '',
        range:
          raw.fuel !== 'none' && raw.fuel?.premix
            ? ['premix', 'premix', 'injected']
            : ['injected', 'premix', 'injected'],
        reason: 'usual for this kind (common practice)',
      }) as 'premix' | 'injected');
    return { cycle, cylinders, start, oilL: 0, oilFilter: false, twoStrokeOil, idleFlowLPerH };
  }
  return {
    cycle,
    cylinders,
    start,
    oilL: assume.fillNumber(e.oil, 'engine.oil', 'engine.oilL'),
    oilFilter: assume.fill<boolean>(e.oilFilter, 'engine.oilFilter', 'engine.oilFilter'),
    idleFlowLPerH,
  };
}

function resolveTyres(raw: MachineFile, assume: Assumptions): Tyre[] {
  if (raw.tyres) {
    return raw.tyres.map((t) => ({
      position: t.position,
      count: t.count ?? 1,
      pressureKPa: t.pressure,
      sidewallMaxKPa: t.sidewallMax,
      madeYear: t.madeYear,
    }));
  }
  return TYRE_PRESETS[raw.kind].map(({ tyre, low, high }, i) => {
    assume.number({
      field: `tyres.${tyre.position}.pressure`,
      target: `tyres.${i}.pressureKPa`,
      unit: 'kPa',
      range: [tyre.pressureKPa, low, high],
      reason: 'usual for this kind (common practice); the plate or the handbook says',
      settle: `tyres: [{ position: ${tyre.position}, count: ${tyre.count}, pressure: ${tyre.pressureKPa} kPa }]`,
    });
    return { ...tyre };
  });
}

function resolveChassis(raw: MachineFile, engine: Engine, assume: Assumptions): Machine['chassis'] {
  const c = raw.chassis ?? {};
  const fill = <T extends string | number | boolean>(name: keyof typeof c & string) =>
    assume.fill<T>(c[name] as T | undefined, `chassis.${name}`, `chassis.${name === 'lights' ? 'hasLights' : name}`);
  const number = (name: 'greasePoints' | 'exhaustOutlets') =>
    assume.fillNumber(c[name], `chassis.${name}`, `chassis.${name}`);
  const brakes = fill<Machine['chassis']['brakes']>('brakes');
  const wet = brakes === 'hydraulic' || brakes === 'mixed';
  const electric = engine.cycle === 'electric';
  return {
    drive: fill('drive'),
    brakes,
    brakeFluid: wet ? fill('brakeFluid') : c.brakeFluid,
    clutch: electric ? (c.clutch ?? 'none') : fill('clutch'),
    throttle: electric ? (c.throttle ?? 'wire') : fill('throttle'),
    offGround: fill('offGround'),
    skis: fill('skis'),
    track: fill('track'),
    greasePoints: number('greasePoints'),
    centreStand: fill('centreStand'),
    airbox: electric ? (c.airbox ?? false) : fill('airbox'),
    exhaustOutlets: electric ? (c.exhaustOutlets ?? 0) : number('exhaustOutlets'),
    hasLights: fill('lights'),
  };
}

function resolveSalt(raw: MachineFile, assume: Assumptions): Machine['roadSalt'] {
  const exposed = assume.fill<boolean>(raw.roadSalt?.exposed, 'roadSalt.exposed', 'roadSalt.exposed');
  if (!exposed) return { exposed, washed: raw.roadSalt?.washed ?? true };
  return { exposed, washed: assume.fill<boolean>(raw.roadSalt?.washed, 'roadSalt.washed', 'roadSalt.washed') };
}

function paperKind(id: string): Machine['paperwork'][number]['kind'] {
  const kinds = ['insurance', 'registration', 'inspection'] as const;
  return kinds.find((k) => id.includes(k)) ?? 'other';
}
