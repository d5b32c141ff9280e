/** Machines of every kind, as content files that the reader must take. */
import fc from 'fast-check';
import { CHEMISTRY_NAMES, KINDS } from '../../src/content/schemas/household.ts';
import { addDays } from '../../src/planner/dates.ts';
import { lineArb, paragraphArb, quantityArb, rangedArb, some } from './text.ts';

type Kind = (typeof KINDS)[number];

/** What a machine can refer to. */
export interface Surroundings {
  asOf: string;
  places: readonly { id: string; power: boolean }[];
  maintainers: boolean;
  batteryRoom: boolean;
  /** Items and steps of the library of procedures. */
  openItems: readonly string[];
  stepIds: readonly string[];
}

/** Figures that the reader takes for a kind, with room to both sides. */
const LIMITS: Record<
  Kind,
  {
    ah: [number, number];
    tankL: number;
    oilL: number;
    cylinders: number;
    coolantL: number;
    kPa: [number, number];
    tyres: number;
  }
> = {
  motorcycle: { ah: [1, 40], tankL: 60, oilL: 10, cylinders: 8, coolantL: 10, kPa: [21, 500], tyres: 4 },
  scooter: { ah: [1, 30], tankL: 30, oilL: 5, cylinders: 4, coolantL: 6, kPa: [81, 500], tyres: 4 },
  'snow-machine': { ah: [3, 60], tankL: 100, oilL: 10, cylinders: 6, coolantL: 25, kPa: [11, 700], tyres: 8 },
  quad: { ah: [3, 60], tankL: 60, oilL: 10, cylinders: 4, coolantL: 12, kPa: [11, 350], tyres: 8 },
  'side-by-side': { ah: [5, 120], tankL: 120, oilL: 12, cylinders: 6, coolantL: 25, kPa: [11, 500], tyres: 8 },
  car: { ah: [10, 250], tankL: 200, oilL: 25, cylinders: 16, coolantL: 40, kPa: [81, 700], tyres: 12 },
  tractor: { ah: [10, 400], tankL: 400, oilL: 60, cylinders: 12, coolantL: 60, kPa: [11, 700], tyres: 12 },
  mower: { ah: [1, 120], tankL: 60, oilL: 10, cylinders: 4, coolantL: 20, kPa: [11, 500], tyres: 8 },
};

const year = (iso: string) => Number(iso.slice(0, 4));

/** A day up to the day of the plan. */
const pastArb = (asOf: string, days = 900) => fc.nat(days).map((n) => addDays(asOf, -n));

function seasonArb(asOf: string) {
  const length = fc.oneof(
    { arbitrary: fc.integer({ min: 7, max: 21 }), weight: 1 },
    { arbitrary: fc.integer({ min: 22, max: 300 }), weight: 5 },
    { arbitrary: fc.integer({ min: 301, max: 1096 }), weight: 1 },
  );
  const begins = fc.oneof(
    { arbitrary: fc.integer({ min: -60, max: 60 }), weight: 4 },
    { arbitrary: fc.integer({ min: -1200, max: 700 }), weight: 1 },
  );
  const both = fc.tuple(begins, length).map(([from, days]) => {
    const lastUse = addDays(asOf, from);
    return { lastUse, firstUse: addDays(lastUse, days) };
  });
  return fc.oneof({ arbitrary: both, weight: 12 }, { arbitrary: fc.constant({}), weight: 1 });
}

function batteryArb(kind: Kind, around: Surroundings, place: { power: boolean }) {
  const [low, high] = LIMITS[kind].ah;
  const cares = [
    'visits',
    ...(place.power && around.maintainers ? ['maintainer'] : []),
    ...(around.batteryRoom ? ['carry-in'] : []),
  ];
  const battery = some({
    chemistry: fc.constantFrom(...CHEMISTRY_NAMES),
    capacity: quantityArb(low, high, 'Ah', 1),
    health: rangedArb(10, 110, '%'),
    boughtYear: fc.integer({ min: year(around.asOf) - 12, max: year(around.asOf) }),
    selfDischarge: rangedArb(0.1, 60, '%'),
    doubling: rangedArb(5, 30, 'K'),
    drain: fc.oneof(rangedArb(0, 40, 'mA'), rangedArb(0, 500, 'mA')),
    memoryCircuits: fc.boolean(),
    chargeAtLayUp: rangedArb(1, 100, '%'),
    care: fc.constantFrom(...cares),
    connected: fc.boolean(),
    removable: fc.boolean(),
  }).map((b) => (b.care === 'carry-in' ? { ...b, removable: true, connected: undefined } : b));
  return fc.oneof(
    { arbitrary: battery, weight: 8 },
    { arbitrary: fc.constant('none' as const), weight: 1 },
    { arbitrary: fc.constant(undefined), weight: 1 },
  );
}

function fuelArb(kind: Kind, asOf: string, engine: EngineContent) {
  const bowls = engine.cylinders === undefined ? 12 : Math.min(12, 2 * engine.cylinders);
  const options = some({
    blend: fc.constantFrom('E0', 'E5', 'E10', 'E15', 'E20', 'E85'),
    tankMaterial: fc.constantFrom('steel', 'plastic', 'aluminium'),
    lined: fc.boolean(),
    boughtOn: pastArb(asOf),
    choice: fc.constantFrom('fill', 'drain'),
    densityKgPerM3: fc.integer({ min: 650, max: 850 }),
    ...premixOf(engine),
  });
  const system = fc.oneof(
    fc.record({ delivery: fc.constant('injection') }),
    fc.record({ delivery: fc.constant('injection'), tap: fc.constantFrom('manual', 'none') }),
    fc.record({ delivery: fc.constant('carburettor'), bowls: fc.integer({ min: 1, max: bowls }) }),
    fc.record({
      delivery: fc.constant('carburettor'),
      tap: fc.constantFrom('vacuum', 'manual'),
      taps: fc.integer({ min: 1, max: 4 }),
    }),
    fc.record({ tap: fc.constant('none') }),
    fc.constant({}),
  );
  const tank = fc
    .tuple(fc.integer({ min: 2, max: LIMITS[kind].tankL * 10 }), fc.nat(100), fc.nat(100))
    .chain(([tenths, share, line]) => {
      const tankL = tenths / 10;
      return some({
        inTank: fc.constant(`${((tankL * share) / 100).toFixed(3)} L`),
        // A line as large as its tank is refused.
        lineAndBowls: fc.constant(`${Math.min(10, (tankL * Math.min(line, 99)) / 100).toFixed(3)} L`),
      }).map((more) => ({ tank: `${tankL} L`, ...more }));
    });
  return fc.oneof(
    {
      arbitrary: fc.tuple(options, system, fc.oneof(tank, fc.constant({}))).map(([a, b, c]) => ({ ...a, ...b, ...c })),
      weight: 8,
    },
    // Without fuel nothing burns: of such a machine no cycle is given.
    { arbitrary: fc.constant(engine.cycle === undefined ? ('none' as const) : undefined), weight: 1 },
    { arbitrary: fc.constant(undefined), weight: 1 },
  );
}

/** Oil is mixed into the tank where the engine is said to want it so, and nowhere else. */
function premixOf({ cycle, twoStrokeOil }: EngineContent): { premix?: fc.Arbitrary<boolean> } {
  if (cycle !== 'two-stroke') return {};
  return { premix: twoStrokeOil === undefined ? fc.boolean() : fc.constant(twoStrokeOil === 'premix') };
}

function coolingArb(kind: Kind, asOf: string) {
  const liquid = fc
    .tuple(
      some({
        glycol: fc.constantFrom('ethylene', 'propylene'),
        strength: fc.oneof(fc.constant('unknown'), quantityArb(0, 100, '%', 0)),
        refillStrength: quantityArb(5, 100, '%', 0),
        lastChanged: pastArb(asOf, 3000),
        life: fc.constantFrom('6 months', '2 years', '5 years', '20 years'),
      }),
      fc.option(fc.tuple(fc.integer({ min: 1, max: LIMITS[kind].coolantL * 10 }), fc.integer({ min: 50, max: 100 }))),
    )
    .map(([more, volume]) => ({
      kind: 'liquid',
      ...more,
      ...(volume
        ? {
            volume: `${volume[0] / 10} L`,
            drainable: `${Math.max(0.05, Math.floor(volume[0] * volume[1]) / 1000)} L`,
          }
        : {}),
    }));
  return fc.oneof(fc.constantFrom('air', 'oil', 'liquid', 'none'), liquid, fc.constant(undefined));
}

interface EngineContent {
  cycle?: string;
  cylinders?: number;
  twoStrokeOil?: string;
}

function engineArb(kind: Kind) {
  const oil = fc.constantFrom('0 L', '0.6 L', '3.2 L', `${LIMITS[kind].oilL} L`);
  const start = fc.constantFrom('electric', 'pull', 'kick', 'electric-and-pull', 'electric-and-kick');
  const common = {
    start,
    cylinders: fc.integer({ min: 1, max: LIMITS[kind].cylinders }),
    idleFlow: quantityArb(0.05, 10, 'L/h'),
    oilFilter: fc.boolean(),
  };
  const choices = [
    some({ cycle: fc.constant('four-stroke'), oil, ...common }).map((e) => ({ cycle: 'four-stroke', ...e })),
    some({ twoStrokeOil: fc.constantFrom('premix', 'injected'), ...common }).map((e) => ({
      cycle: 'two-stroke',
      ...e,
    })),
    some({ start }).map((e) => ({ cycle: 'electric', ...e })),
    // A snow machine of whose engine nothing is said is a two-stroke.
    ...(kind === 'snow-machine' ? [] : [some({ ...common, oil })]),
    fc.constant({}),
  ];
  return fc.oneof(...choices) as fc.Arbitrary<EngineContent>;
}

const driveBatteryArb = some({
  chemistry: fc.constantFrom('lithium-ion', 'lead-acid'),
  removable: fc.boolean(),
  lowestStorage: quantityArb(-60, 20, '°C'),
});

const tyresArb = (kind: Kind) =>
  fc
    .uniqueArray(fc.constantFrom('front', 'rear', 'all', 'left', 'right', 'sidecar', 'trailer 1'), { maxLength: 4 })
    .chain((positions) =>
      fc.tuple(
        ...positions.map((position) =>
          fc
            .tuple(
              fc.integer({ min: LIMITS[kind].kPa[0], max: LIMITS[kind].kPa[1] - 10 }),
              fc.option(fc.nat(200), { nil: undefined }),
              fc.option(fc.integer({ min: 1, max: LIMITS[kind].tyres }), { nil: undefined }),
              fc.constantFrom('kPa', 'psi', 'bar'),
            )
            .map(([kPa, more, count, unit]) => {
              const text = (value: number) =>
                unit === 'kPa'
                  ? `${value} kPa`
                  : unit === 'bar'
                    ? `${value / 100} bar`
                    : `${(value / 6.894).toFixed(2)} psi`;
              return {
                position,
                count,
                pressure: text(kPa),
                sidewallMax: more === undefined ? undefined : text(kPa + more),
              };
            }),
        ),
      ),
    );

const chassisArb = fc
  .tuple(
    some({
      clutch: fc.constantFrom('cable', 'hydraulic', 'automatic', 'none'),
      throttle: fc.constantFrom('cable', 'wire'),
      offGround: fc.boolean(),
      skis: fc.boolean(),
      greasePoints: fc.integer({ min: 0, max: 60 }),
      centreStand: fc.boolean(),
      airbox: fc.boolean(),
      exhaustOutlets: fc.integer({ min: 0, max: 8 }),
      lights: fc.boolean(),
    }),
    fc.oneof(
      some({ brakes: fc.constantFrom('cable', 'none') }),
      some({
        brakes: fc.constantFrom('hydraulic', 'mixed'),
        brakeFluid: fc.constantFrom('DOT3', 'DOT4', 'DOT5', 'DOT5.1', 'mineral'),
      }).map((b) => (b.brakeFluid === undefined ? b : { brakes: 'hydraulic', ...b })),
    ),
    fc.oneof(
      some({ drive: fc.constantFrom('chain', 'belt', 'shaft', 'variator', 'gearbox', 'hub'), track: fc.boolean() }),
      fc.constant({ drive: 'track' }),
    ),
  )
  .map(([a, b, c]) => ({ ...a, ...b, ...c }));

const supplyArb = fc
  .tuple(
    lineArb,
    some({
      amount: fc.constantFrom('1 piece', '2 pieces', '0.5 L', '30 mL', '100000 g'),
      leadDays: fc.integer({ min: 0, max: 730 }),
      inStock: fc.boolean(),
    }),
  )
  .map(([what, more]) => ({ what, ...more }));

function workArb() {
  const names = ['seat', 'tank', 'airbox', 'carburettors', 'left-fairing', 'exhaust'] as const;
  const fastener = fc
    .tuple(
      lineArb,
      fc.integer({ min: 1, max: 200 }),
      some({
        size: fc.constant('M6 × 25'),
        torque: fc.constantFrom('0.2 N·m', '10 N·m', '18 lbf·ft', '1000 N·m'),
        condition: fc.constantFrom('dry', 'lubricated', 'unstated'),
        threadlock: fc.constantFrom('low', 'medium', 'high'),
        antiSeize: fc.boolean(),
        banjo: fc.boolean(),
      }),
    )
    .map(([what, count, more]) => ({ what, count, head: 'hex 10 mm', ...more }));
  const assembly = (id: string, earlier: readonly string[]) =>
    fc
      .tuple(
        lineArb,
        fc.constantFrom(0, 5, 10, 90, 6000),
        some({
          behind: fc.subarray([...earlier]),
          onMinutes: fc.constantFrom(0, 15, 120, 6000),
          fasteners: fc.array(fastener, { maxLength: 2 }),
          singleUse: fc.array(
            fc
              .tuple(
                lineArb,
                some({ count: fc.integer({ min: 1, max: 200 }), leadDays: fc.nat(730), inStock: fc.boolean() }),
              )
              .map(([what, more]) => ({ what, ...more })),
            { maxLength: 2 },
          ),
          cautions: fc.array(paragraphArb, { maxLength: 1 }),
          opensFluid: fc.constantFrom('fuel', 'oil', 'coolant', 'brake-fluid'),
          replaceNextTime: fc.array(supplyArb, { maxLength: 1 }),
          safetyCritical: fc.boolean(),
        }),
      )
      .map(([name, offMinutes, more]) => ({ id, name, offMinutes, ...more }));
  return fc.integer({ min: 0, max: names.length }).chain((count) => {
    const ids = names.slice(0, count);
    const job = (id: string, earlier: readonly string[]) =>
      fc
        .tuple(
          lineArb,
          fc.subarray([...ids]),
          fc.constantFrom(0, 30, 120, 900, 6000),
          some({
            parts: fc.array(supplyArb, { maxLength: 2 }),
            tools: fc.array(lineArb, { maxLength: 2 }),
            after: fc.subarray([...earlier]),
            stand: fc.boolean(),
            bench: fc.boolean(),
            done: fc.boolean(),
          }),
        )
        .map(([name, assemblies, minutes, more]) => ({ id, name, assemblies, minutes, ...more }));
    return fc.record({
      assemblies: fc.tuple(...ids.map((id, i) => assembly(id, ids.slice(0, i)))),
      jobs: fc
        .integer({ min: 0, max: 3 })
        .chain((n) => fc.tuple(...['one', 'two', 'three'].slice(0, n).map((id, i, all) => job(id, all.slice(0, i))))),
    });
  });
}

function servicesArb(asOf: string) {
  const service = (id: string) =>
    fc
      .tuple(
        lineArb,
        fc.oneof(
          fc.constantFrom('1 month', '12 months', '2 years', '50 years').map((time) => ({ time })),
          fc.constantFrom('10 km', '6000 km', '1000 mi').map((distance) => ({ distance })),
          fc.record({ time: fc.constant('24 months'), hours: fc.constantFrom('1 h', '100 h') }),
        ),
        some({
          lastDone: some({ date: pastArb(asOf, 4000), odometer: quantityArb(0, 1000, 'km', 0) }),
          cameBackAfter: fc.constantFrom('1 month', '14 months'),
          minutes: fc.constantFrom(0, 30, 6000),
          supplies: fc.array(supplyArb, { maxLength: 1 }),
        }),
      )
      .map(([what, every, more]) => ({ id, what, every, ...more }));
  return fc
    .subarray(['brake-fluid', 'engine-oil', 'bushings', 'chain', 'coolant'])
    .chain((ids) => fc.tuple(...ids.map(service)));
}

const papersArb = (asOf: string) =>
  fc
    .subarray(['insurance', 'registration', 'inspection', 'club-card'])
    .chain((ids) =>
      fc.tuple(
        ...ids.map((id) =>
          fc
            .tuple(lineArb, fc.integer({ min: -800, max: 1200 }), fc.boolean())
            .map(([what, days, pausedOverRest]) => ({ id, what, date: addDays(asOf, days), pausedOverRest })),
        ),
      ),
    );

/** What somebody wrote down: readings, charges, ticked steps, notes, what lies where. */
function recordArb(around: Surroundings, assemblies: readonly string[], battery: boolean) {
  const { asOf } = around;
  const reading = fc
    .tuple(pastArb(asOf, 400), fc.integer({ min: 500, max: 1600 }), fc.integer({ min: -40, max: 40 }), fc.nat(500))
    .map(([date, cV, t, rested]) => ({
      date,
      voltage: `${(cV / 100).toFixed(2)} V`,
      temperature: `${t} °C`,
      rested: `${rested} h`,
    }));
  const plausible = fc
    .tuple(pastArb(asOf, 400), fc.integer({ min: 1200, max: 1285 }), fc.integer({ min: -20, max: 20 }))
    .map(([date, cV, t]) => ({ date, voltage: `${(cV / 100).toFixed(2)} V`, temperature: `${t} °C`, rested: '12 h' }));
  const open = [...assemblies, ...around.openItems];
  return some({
    ...(battery
      ? {
          readings: fc.uniqueArray(fc.oneof(plausible, plausible, reading), {
            maxLength: 6,
            selector: (r) => JSON.stringify(r),
          }),
        }
      : {}),
    charged: fc.array(
      fc
        .tuple(pastArb(asOf, 400), fc.option(quantityArb(1, 100, '%', 0), { nil: undefined }))
        .map(([date, to]) => ({ date, to })),
      { maxLength: 3 },
    ),
    done: fc.array(fc.record({ step: fc.constantFrom(...around.stepIds), date: pastArb(asOf, 300) }), { maxLength: 8 }),
    notes: fc.array(
      fc
        .tuple(
          pastArb(asOf),
          paragraphArb,
          assemblies.length > 0
            ? fc.option(fc.constantFrom(...assemblies), { nil: undefined })
            : fc.constant(undefined),
        )
        .map(([date, text, assembly]) => ({ date, text, assembly })),
      { maxLength: 2 },
    ),
    asLeft: fc.uniqueArray(
      fc
        .tuple(fc.constantFrom(...open), some({ where: lineArb, since: pastArb(asOf) }))
        .map(([item, more]) => ({ item, ...more })),
      { maxLength: 3, selector: (left) => left.item },
    ),
  });
}

/** A machine as its file, and what was recorded of it beside the file. */
export interface MachineContent {
  file: Record<string, unknown>;
  record?: Record<string, unknown> | undefined;
}

/**
 * A machine of any kind in one of the household's places.
 * @param around - what it can refer to
 */
export function machineArb(around: Surroundings): fc.Arbitrary<MachineContent> {
  const { asOf } = around;
  return fc.tuple(fc.constantFrom(...KINDS), fc.constantFrom(...around.places)).chain(([kind, place]) =>
    fc.tuple(engineArb(kind), workArb(), batteryArb(kind, around, place)).chain(([engine, work, battery]) => {
      const ids = work.assemblies.map((a) => a.id);
      const record = recordArb(around, ids, battery !== 'none');
      return fc
        .record({
          name: lineArb,
          season: seasonArb(asOf),
          fuel: engine.cycle === 'electric' ? fc.constantFrom('none', undefined) : fuelArb(kind, asOf, engine),
          driveBattery:
            engine.cycle === 'electric' ? fc.option(driveBatteryArb, { nil: undefined }) : fc.constant(undefined),
          cooling: coolingArb(kind, asOf),
          rest: some({
            use: fc.constantFrom('road', 'snow', 'trail', 'work'),
            // Services and readings reach back by eleven years.
            year: fc.integer({ min: 1930, max: year(asOf) - 11 }),
            nextSeason: some({ distance: quantityArb(0, 20000, 'km', 0), hours: quantityArb(0, 500, 'h', 0) }),
            engineHours: quantityArb(0, 5000, 'h', 1),
            tyres: tyresArb(kind),
            chassis: chassisArb,
            roadSalt: some({ exposed: fc.boolean(), washed: fc.boolean() }),
            services: servicesArb(asOf),
            paperwork: papersArb(asOf),
            remarks: paragraphArb,
          }),
          recorded: fc.option(record, { freq: 3, nil: undefined }),
          inFile: fc.boolean(),
          odometer: fc.option(quantityArb(1000, 200_000, 'km', 0), { nil: undefined }),
        })
        .map(({ name, season, fuel, driveBattery, cooling, rest, recorded, inFile, odometer }) => ({
          file: {
            name,
            kind,
            place: place.id,
            ...season,
            engine,
            battery,
            driveBattery,
            fuel,
            cooling,
            odometer,
            ...rest,
            ...(work.assemblies.length > 0 || work.jobs.length > 0 ? work : {}),
            ...(inFile ? recorded : {}),
          },
          record: inFile ? undefined : recorded,
        }));
    }),
  );
}
