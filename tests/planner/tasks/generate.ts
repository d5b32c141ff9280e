/** Machines, places and what the calculations might say of them, drawn at random but always consistent. */
import fc from 'fast-check';
import { addDays } from '../../../src/planner/dates.ts';
import type {
  Battery,
  Cooling,
  Fuel,
  Household,
  Machine,
  Paperwork,
  Place,
  Procedure,
  ServiceItem,
  Tyre,
} from '../../../src/planner/household.ts';
import type { BatteryPlan, CorrosionPlan, FuelPlan } from '../../../src/planner/season-plan.ts';
import type { PlanParts } from '../../../src/planner/tasks/index.ts';

export interface Case {
  machine: Machine;
  place: Place;
  household: Household;
  parts: PlanParts;
}

const range = (value: number) => ({ value, low: value, high: value });
const dates = fc.integer({ min: 0, max: 3000 }).map((n) => addDays('2024-01-01', n));

const fuelArb = fc.record({
  delivery: fc.constantFrom('carburettor', 'injection'),
  tankL: fc.double({ min: 2, max: 70, noNaN: true }),
  tankMaterial: fc.constantFrom('steel', 'plastic', 'aluminium'),
  lined: fc.boolean(),
  taps: fc.oneof(
    fc.constant(null),
    fc.record({ kind: fc.constantFrom('vacuum', 'manual'), count: fc.integer({ min: 1, max: 2 }) }),
  ),
  bowls: fc.integer({ min: 0, max: 4 }),
  premix: fc.boolean(),
});

const batteryArb = fc.record(
  {
    chemistry: fc.constantFrom('flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4'),
    care: fc.constantFrom('maintainer', 'carry-in', 'visits'),
    keptAt: fc.constantFrom('machine', 'room'),
    connected: fc.boolean(),
    capacityAh: fc.integer({ min: 4, max: 90 }),
    charges: fc.integer({ min: 0, max: 4 }),
    removable: fc.boolean(),
  },
  { requiredKeys: ['chemistry', 'care', 'keptAt', 'connected', 'capacityAh', 'charges'] },
);

const coolantArb = fc.record({
  strength: fc.oneof(fc.constant(undefined), fc.double({ min: 0, max: 0.6, noNaN: true })),
  replaceL: fc.oneof(fc.constant(undefined), fc.constant(0), fc.double({ min: 0.1, max: 5, noNaN: true })),
  enough: fc.constantFrom(true, false, null),
  old: fc.boolean(),
});

const tyreArb = fc.record({
  count: fc.integer({ min: 1, max: 2 }),
  raised: fc.boolean(),
  pressureKPa: fc.integer({ min: 40, max: 300 }),
});

const paperArb = fc.record({
  kind: fc.constantFrom('insurance', 'registration', 'inspection', 'other'),
  pausedOverRest: fc.boolean(),
});

const serviceArb = fc.record({
  id: fc.constantFrom('engine-oil', 'brake-fluid', 'coolant', 'air-filter', 'valves'),
  pulledIn: fc.boolean(),
  lastDone: fc.oneof(fc.constant(undefined), fc.integer({ min: 1, max: 600 })),
});

const machineArb = fc.record({
  kind: fc.constantFrom('motorcycle', 'scooter', 'snow-machine', 'quad', 'side-by-side', 'car', 'tractor', 'mower'),
  use: fc.constantFrom('road', 'snow', 'trail', 'work'),
  lastUse: dates,
  restDays: fc.oneof(fc.integer({ min: 1, max: 45 }), fc.integer({ min: 46, max: 1095 })),
  cycle: fc.constantFrom('four-stroke', 'two-stroke', 'electric'),
  cylinders: fc.integer({ min: 1, max: 6 }),
  start: fc.constantFrom('electric', 'pull', 'kick', 'electric-and-pull', 'electric-and-kick'),
  oilL: fc.constantFrom<number[]>(0, 0.6, 1.2, 3.5, 5),
  oilFilter: fc.boolean(),
  twoStrokeOil: fc.constantFrom('premix', 'injected'),
  drive: fc.constantFrom('chain', 'belt', 'shaft', 'variator', 'track', 'gearbox', 'hub'),
  brakes: fc.constantFrom('hydraulic', 'cable', 'mixed', 'none'),
  clutch: fc.constantFrom('cable', 'hydraulic', 'automatic', 'none'),
  throttle: fc.constantFrom('cable', 'wire'),
  flags: fc.record({
    offGround: fc.boolean(),
    centreStand: fc.boolean(),
    skis: fc.boolean(),
    track: fc.boolean(),
    airbox: fc.boolean(),
    lights: fc.boolean(),
    exposed: fc.boolean(),
    washed: fc.boolean(),
    power: fc.boolean(),
    rodents: fc.boolean(),
    bench: fc.boolean(),
    open: fc.boolean(),
    room: fc.boolean(),
    stabiliser: fc.boolean(),
    bag: fc.boolean(),
    dry: fc.boolean(),
    drain: fc.boolean(),
    drainedOld: fc.boolean(),
    leave: fc.boolean(),
    swap: fc.boolean(),
    us: fc.boolean(),
  }),
  outlets: fc.integer({ min: 0, max: 4 }),
  greasePoints: fc.integer({ min: 0, max: 12 }),
  level: fc.integer({ min: 1, max: 5 }),
  frost: fc.oneof(fc.constant(undefined), fc.integer({ min: -20, max: 120 })),
  verdict: fc.constantFrom('use', 'mix', 'dispose'),
  room: fc.constantFrom('add', 'full', 'over'),
  fuel: fc.option(fuelArb, { nil: undefined }),
  battery: fc.option(batteryArb, { nil: undefined }),
  driveBattery: fc.record({ chemistry: fc.constantFrom('lithium-ion', 'lead-acid'), removable: fc.boolean() }),
  coolant: fc.option(coolantArb, { nil: undefined }),
  tyres: fc.array(tyreArb, { maxLength: 3 }),
  papers: fc.array(paperArb, { maxLength: 3 }),
  services: fc.uniqueArray(serviceArb, { maxLength: 4, selector: (service) => service.id }),
});

type Drawn = typeof machineArb extends fc.Arbitrary<infer T> ? T : never;

/** One household with one machine of interest. */
export const caseArb: fc.Arbitrary<Case> = machineArb.map(build);

/** One case with chosen traits and otherwise the plainest machine: for tests of one thing. */
export function caseOf(change: Partial<Omit<Drawn, 'flags'>> & { flags?: Partial<Drawn['flags']> } = {}): Case {
  const off: Drawn['flags'] = {
    offGround: false,
    centreStand: false,
    skis: false,
    track: false,
    airbox: true,
    lights: true,
    exposed: false,
    washed: false,
    power: false,
    rodents: false,
    bench: false,
    open: false,
    room: false,
    stabiliser: true,
    bag: false,
    dry: false,
    drain: false,
    drainedOld: false,
    leave: false,
    swap: false,
    us: false,
  };
  const { flags, ...rest } = change;
  return build({
    kind: 'motorcycle',
    use: 'road',
    lastUse: '2026-10-25',
    restDays: 167,
    cycle: 'four-stroke',
    cylinders: 2,
    start: 'electric',
    oilL: 3,
    oilFilter: true,
    twoStrokeOil: 'injected',
    drive: 'chain',
    brakes: 'hydraulic',
    clutch: 'cable',
    throttle: 'cable',
    outlets: 2,
    greasePoints: 0,
    level: 2,
    frost: 20,
    verdict: 'mix',
    room: 'add',
    fuel: {
      delivery: 'carburettor',
      tankL: 17,
      tankMaterial: 'steel',
      lined: false,
      taps: { kind: 'vacuum', count: 1 },
      bowls: 2,
      premix: false,
    },
    battery: {
      chemistry: 'flooded-antimony',
      care: 'visits',
      keptAt: 'machine',
      connected: false,
      capacityAh: 12,
      charges: 2,
    },
    driveBattery: { chemistry: 'lithium-ion', removable: true },
    coolant: undefined,
    tyres: [
      { count: 1, raised: true, pressureKPa: 220 },
      { count: 1, raised: true, pressureKPa: 250 },
    ],
    papers: [{ kind: 'insurance', pausedOverRest: true }],
    services: [],
    ...rest,
    flags: { ...off, ...flags },
  });
}

function build(drawn: Drawn): Case {
  const { flags, lastUse } = drawn;
  const firstUse = addDays(lastUse, drawn.restDays);
  const electric = drawn.cycle === 'electric';
  const fuel = electric ? undefined : drawn.fuel;
  const place: Place = {
    id: 'shed',
    name: 'Tin shed',
    enclosure: {
      id: 'shed',
      timeConstantH: flags.open ? 0 : 7,
      houseCoupling: 0,
      houseC: 20,
      gainK: 0,
      airChangesPerH: 1,
    },
    power: flags.power,
    climate: { id: 'tarn-hollow' } as unknown as Place['climate'],
    sulphurDioxideMgM2D: 1,
    chlorideMgM2D: 1,
    tripMinutes: 10,
    rodents: flags.rodents,
    bench: flags.bench,
  };
  const services = drawn.services.map(
    (service): ServiceItem => ({
      id: service.id,
      what: service.id.replace('-', ' '),
      lastDone: service.lastDone === undefined ? undefined : { date: addDays(lastUse, -service.lastDone) },
      interval: { months: 12 },
      minutes: 40,
      source: 'service manual',
      supplies: [],
      assemblies: [],
    }),
  );
  const machine: Machine = {
    id: 'machine',
    name: 'Juniper',
    kind: drawn.kind,
    use: drawn.use,
    placeId: place.id,
    season: { lastUse, firstUse, proposed: false, reasons: [] },
    engine: {
      cycle: drawn.cycle,
      cylinders: electric ? 0 : drawn.cylinders,
      start: drawn.start,
      oilL: drawn.cycle === 'four-stroke' ? drawn.oilL : 0,
      oilFilter: drawn.oilFilter,
      twoStrokeOil: drawn.cycle === 'two-stroke' ? drawn.twoStrokeOil : undefined,
      idleFlowLPerH: 0.6,
    },
    battery: drawn.battery && batteryOf(drawn.battery),
    driveBattery: electric ? { ...drawn.driveBattery, lowestStorageC: -20 } : undefined,
    fuel: fuel && fuelOf(fuel),
    cooling: drawn.coolant ? coolingOf(drawn.coolant) : { kind: electric ? 'none' : 'air' },
    tyres: drawn.tyres.map(
      (tyre, n): Tyre => ({ position: `position ${n + 1}`, count: tyre.count, pressureKPa: tyre.pressureKPa }),
    ),
    chassis: {
      drive: drawn.drive,
      brakes: drawn.brakes,
      clutch: drawn.clutch,
      throttle: drawn.throttle,
      offGround: flags.offGround,
      skis: flags.skis,
      track: flags.track,
      greasePoints: drawn.greasePoints,
      centreStand: flags.centreStand,
      airbox: flags.airbox && !electric,
      exhaustOutlets: electric ? 0 : drawn.outlets,
      hasLights: flags.lights,
    },
    roadSalt: { exposed: flags.exposed, washed: flags.washed },
    services,
    paperwork: drawn.papers.map(
      (paper, n): Paperwork => ({ id: `paper-${n}`, what: `Paper ${n}`, date: addDays(lastUse, 30), ...paper }),
    ),
    assemblies: [],
    jobs: [],
    asLeft: [],
    readings: [],
    charged: [],
    doneSteps: [],
    notes: [],
    assumptions: [],
    file: 'machines/machine.yaml',
  };
  const other: Machine = {
    ...machine,
    id: 'other',
    name: 'Sleet',
    season: { ...machine.season, firstUse: addDays(lastUse, flags.swap ? 3 : 100) },
  };
  return {
    machine,
    place,
    household: {
      id: 'household',
      name: 'Tarn Hollow',
      zone: 'Europe/Helsinki',
      locale: 'en-GB',
      clock: '24h',
      units: flags.us ? 'us' : 'metric',
      hoursByWeekday: { monday: 0, tuesday: 0, wednesday: 0, thursday: 0, friday: 0, saturday: 4, sunday: 4 },
      away: [],
      hands: 1,
      chargers: [],
      stands: [{ id: 'stand', name: 'Stand', kinds: ['motorcycle'] }],
      fuelCare: { stabiliserDoseMLPerL: flags.stabiliser ? 4 : undefined, canL: 5, cans: 2 },
      batteryRoom: flags.room ? { name: 'the boiler room', temperatureC: 18 } : undefined,
      places: [place],
      machines: [machine, other],
      procedures: [],
      revised: '2026-01-01T00:00:00Z',
      seed: 1,
      siteUrl: '',
    },
    parts: partsOf(drawn, machine),
  };
}

function batteryOf(battery: NonNullable<Drawn['battery']>): Battery {
  return {
    chemistry: battery.chemistry,
    capacityAh: battery.capacityAh,
    health: range(1),
    selfDischargePctPerMonth: range(5),
    doublingK: range(10),
    drainMA: range(1),
    startPct: range(95),
    removable: battery.removable ?? true,
    memoryCircuits: battery.connected,
  };
}

function fuelOf(fuel: NonNullable<Drawn['fuel']>): Fuel {
  return {
    ...fuel,
    taps: fuel.delivery === 'injection' ? null : fuel.taps,
    bowls: fuel.delivery === 'injection' ? 0 : fuel.bowls,
    inTankL: range(fuel.tankL / 2),
    blend: 'E10',
    lineAndBowlsL: 0.15,
    densityKgM3: 740,
  };
}

function coolingOf(coolant: NonNullable<Drawn['coolant']>): Cooling {
  return {
    kind: 'liquid',
    coolant: {
      glycol: 'ethylene',
      strength: coolant.strength,
      volumeL: 3,
      drainableL: 2.4,
      refillStrength: 0.5,
      lifeYears: 4,
    },
  };
}

function partsOf(drawn: Drawn, machine: Machine): PlanParts {
  const { lastUse } = machine.season;
  const choice = drawn.flags.drain ? 'drain' : drawn.flags.leave ? 'leave' : 'fill';
  const fuel: FuelPlan | undefined = machine.fuel && {
    choice,
    reason: 'because',
    levelL: choice === 'drain' ? 0 : 16,
    addL: { drain: undefined, leave: 0, fill: drawn.room === 'add' ? 6.3 : 0 }[choice],
    drawOffL: choice === 'fill' && drawn.room === 'over' ? 0.4 : undefined,
    doseML: choice === 'fill' && drawn.flags.stabiliser ? 68 : undefined,
    runMinutes: choice === 'fill' ? 9 : undefined,
    drainedL: drawn.flags.drain ? 8.5 : undefined,
    cans: drawn.flags.drain ? 2 : undefined,
    waterToleranceML: 30,
    breathingWaterML: 4,
    fullAtHottestPct: 97,
    useBy: { earliest: addDays(lastUse, 90), latest: addDays(lastUse, 360) },
    drainedUseBy: drawn.flags.drain ? addDays(lastUse, 30) : undefined,
    drainedOld: drawn.flags.drain && drawn.flags.drainedOld ? true : undefined,
    atFirstUse: { verdict: drawn.verdict, text: 'Use it mixed with at least two parts fresh.' },
    tap: 'vacuum',
    localLimit: { where: 'here', text: 'Check the local code.', exceeded: null },
    derivations: [],
  };
  const corrosion: CorrosionPlan = {
    category: 'C2',
    steelUmPerYear: 10,
    zincUmPerYear: 0.5,
    uncertainty: { low: 0.5, high: 2 },
    caveats: [],
    protection: { level: drawn.level, name: 'level', measures: [], reason: 'because' },
    desiccant: drawn.flags.bag
      ? { areaM2: 14, volumeM3: 3, din55474Units: 62.4, milStd2073Units: 276, note: '' }
      : undefined,
    dehumidifierRhPct: drawn.flags.dry ? { low: 40, high: 50 } : undefined,
    derivations: [],
  };
  const { coolant } = drawn;
  const { driveBattery } = machine;
  const lithium = driveBattery?.chemistry === 'lithium-ion';
  return {
    battery: drawn.battery && batteryPlanOf(drawn.battery, lastUse, drawn.restDays, drawn.flags.power),
    driveBattery: driveBattery && {
      ...driveBattery,
      keepPct: lithium ? { low: 40, high: 60 } : { low: 100, high: 100 },
      chargeToPct: lithium ? 50 : 100,
      rechargeBelowPct: lithium ? 33 : 75,
      lossPctPerMonth: { low: 1, expected: 3, high: 6 },
      storeLowC: -25,
      derivations: [],
    },
    fuel,
    coolant:
      machine.cooling.coolant && coolant
        ? {
            needC: -28.4,
            aimC: -28.4,
            targetStrength: 0.5,
            replaceL: coolant.replaceL,
            enough: coolant.enough,
            ageDue: coolant.old ? lastUse : undefined,
            text: 'text',
            derivations: [],
          }
        : undefined,
    tyres: machine.tyres.map((tyre, n) => ({
      position: tyre.position,
      count: tyre.count,
      normalKPa: tyre.pressureKPa,
      setKPa: tyre.pressureKPa + (drawn.tyres[n]!.raised ? 40 : 0),
      expectedAtStartUpKPa: tyre.pressureKPa,
      lookIn: [],
      standsOnTyres: !machine.chassis.offGround,
      derivations: [],
    })),
    corrosion,
    services: drawn.services.map((service) => ({
      id: service.id,
      what: service.id.replace('-', ' '),
      by: 'calendar',
      pulledIn: service.pulledIn,
      text: 'Due in March.',
    })),
    firstFrost: drawn.frost === undefined || drawn.frost > drawn.restDays ? undefined : addDays(lastUse, drawn.frost),
  };
}

function batteryPlanOf(
  battery: NonNullable<Drawn['battery']>,
  lastUse: string,
  restDays: number,
  power: boolean,
): BatteryPlan {
  const keptAt = battery.care === 'carry-in' ? 'room' : battery.care === 'visits' ? 'machine' : battery.keptAt;
  const outOfReach = keptAt === 'machine' && battery.removable === false && !power;
  return {
    chemistry: battery.chemistry,
    capacityAh: battery.capacityAh,
    care: battery.care,
    careReason: 'because',
    keptAt,
    connected: keptAt === 'machine' && battery.connected,
    thresholdPct: battery.chemistry === 'lifepo4' ? 40 : 75,
    charges: Array.from({ length: outOfReach ? 0 : battery.charges }, (_, n) => {
      const day = addDays(lastUse, Math.floor((restDays * (n + 1)) / (battery.charges + 1)));
      return { date: day, earliest: addDays(day, 4), ampHours: 3, ampHoursMost: 4, hours: 6, hoursMost: 8, why: 'due' };
    }),
    freezingMargin: { minK: 12, month: 1 },
    freezingByMonth: [],
    readings: [],
    firstMonthLossPct: { low: 3, expected: 6, high: 15 },
    derivations: [],
  };
}

/** A procedure with nothing but what is given. */
export function procedureOf(change: Partial<Procedure> & Pick<Procedure, 'id' | 'phase' | 'steps'>): Procedure {
  return { title: change.id, order: 500, when: {}, file: `procedures/${change.id}.yaml`, at: {}, ...change };
}

/** A step with nothing but what is given. */
export function stepOf(change: Partial<Procedure['steps'][number]> & { id: string }): Procedure['steps'][number] {
  return {
    title: change.id,
    when: {},
    covers: [],
    minutes: 5,
    tools: [],
    supplies: [],
    cautions: [],
    why: 'because',
    source: 'common practice',
    opens: [],
    closes: [],
    after: [],
    safetyCritical: false,
    needs: { dryDay: false, warmEngine: false, stand: false, charger: false, bench: false, power: false },
    waitH: 0,
    sameSession: false,
    ...change,
  };
}
