/** An invented machine, place, household and store for the tests of fuel, coolant, tyres, corrosion and service items. */
import type { Assembly, Household, Job, Machine, Place } from '../../../src/planner/household.ts';
import type { StoreMonth, StoreYear } from '../../../src/planner/storage/types.ts';

const NORMALS = [-12, -10, -4, 3, 10, 15, 18, 16, 11, 4, -3, -9];

export function place(over: Partial<Place> = {}): Place {
  return {
    id: 'shed',
    name: 'Tin shed',
    enclosure: { id: 'thin-metal-shed', timeConstantH: 0.3, houseCoupling: 0, houseC: 18, gainK: 0, airChangesPerH: 1 },
    power: false,
    climate: {
      kind: 'normals',
      id: 'tarn-hollow',
      name: 'Tarn Hollow',
      latitudeDeg: 50,
      elevationM: 0,
      normals: {
        meanC: NORMALS,
        minC: NORMALS.map((t) => t - 5),
        maxC: NORMALS.map((t) => t + 5),
        rhPct: NORMALS.map(() => 75),
      },
      source: 'invented',
      attribution: '',
    },
    sulphurDioxideMgM2D: 1,
    chlorideMgM2D: 2,
    tripMinutes: 10,
    rodents: true,
    bench: false,
    ...over,
  };
}

export function machine(over: Partial<Machine> = {}): Machine {
  return {
    id: 'juniper',
    name: 'Juniper',
    kind: 'motorcycle',
    use: 'road',
    placeId: 'shed',
    season: { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] },
    engine: { cycle: 'four-stroke', cylinders: 2, start: 'electric', oilL: 3, oilFilter: true, idleFlowLPerH: 1 },
    fuel: fuel(),
    cooling: { kind: 'air' },
    tyres: [{ position: 'front', count: 1, pressureKPa: 220, sidewallMaxKPa: 290, madeYear: 2024 }],
    chassis: {
      drive: 'chain',
      brakes: 'hydraulic',
      brakeFluid: 'DOT4',
      clutch: 'cable',
      throttle: 'cable',
      offGround: false,
      skis: false,
      track: false,
      greasePoints: 2,
      centreStand: true,
      airbox: true,
      exhaustOutlets: 2,
      hasLights: true,
    },
    roadSalt: { exposed: false, washed: true },
    services: [],
    paperwork: [],
    assemblies: [],
    jobs: [],
    asLeft: [],
    readings: [],
    charged: [],
    doneSteps: [],
    notes: [],
    assumptions: [],
    file: 'machines/juniper.yaml',
    ...over,
  };
}

type Fuel = NonNullable<Machine['fuel']>;

export function fuel(over: Partial<Fuel> = {}): Fuel {
  return {
    delivery: 'carburettor',
    tankL: 17,
    inTankL: { value: 6, low: 3, high: 12 },
    blend: 'E10',
    tankMaterial: 'steel',
    lined: false,
    taps: { kind: 'vacuum', count: 1 },
    bowls: 2,
    lineAndBowlsL: 0.2,
    premix: false,
    densityKgM3: 745,
    ...over,
  };
}

type Coolant = NonNullable<Machine['cooling']['coolant']>;

export function coolant(over: Partial<Coolant> = {}): Coolant {
  return { glycol: 'ethylene', strength: 0.35, volumeL: 2.5, drainableL: 2, refillStrength: 1, lifeYears: 4, ...over };
}

export function household(over: Partial<Household> = {}): Household {
  return {
    id: 'tarn-hollow',
    name: 'Tarn Hollow',
    zone: 'Etc/UTC',
    locale: 'en-GB',
    clock: '24h',
    units: 'metric',
    country: 'CA',
    hoursByWeekday: { monday: 0, tuesday: 0, wednesday: 0, thursday: 0, friday: 0, saturday: 4, sunday: 4 },
    away: [],
    hands: 1,
    chargers: [],
    stands: [],
    fuelCare: { stabiliserDoseMLPerL: 4, canL: 10, cans: 1 },
    places: [place()],
    machines: [],
    procedures: [],
    revised: '2026-10-01T00:00:00Z',
    seed: 1,
    siteUrl: '',
    ...over,
  };
}

/**
 * A store whose days all swing by the same and whose mean runs as a cosine, coldest in January.
 * @param meanC - mean of the year [°C]
 * @param amplitudeK - half of the yearly range [K]
 * @param swingK - daily range [K]
 * @param vapourPa - vapour pressure, the same in every hour [Pa]
 */
export function storeYear(meanC = 3, amplitudeK = 15, swingK = 10, vapourPa = 500): StoreYear {
  const day = (d: number) => meanC - amplitudeK * Math.cos((2 * Math.PI * (d - 15)) / 365);
  const days = Array.from({ length: 365 }, (_, d) => day(d));
  return {
    airC: Float64Array.from({ length: 8760 }, (_, h) => days[Math.floor(h / 24)]!),
    vapourPa: new Float64Array(8760).fill(vapourPa),
    dayMeanC: Float64Array.from(days),
    dayMinC: Float64Array.from(days, (t) => t - swingK / 2),
    dayMaxC: Float64Array.from(days, (t) => t + swingK / 2),
  };
}

export function airMonths(wetHours = 100, rhPct = 75): StoreMonth[] {
  return NORMALS.map((meanC, i) => ({
    month: i + 1,
    meanC,
    meanRhPct: rhPct,
    condensationHours: 10,
    condensationHoursP90: 20,
    frostHours: 10,
    frostHoursP90: 20,
    wetHours,
    wetHoursP90: wetHours * 1.5,
  }));
}

/** A fuel tank that comes off, unless said otherwise. */
export const assembly = (over: Partial<Assembly>): Assembly => ({
  id: 'tank',
  name: 'Fuel tank',
  behind: [],
  offMinutes: 10,
  onMinutes: 10,
  fasteners: [],
  singleUse: [],
  cautions: [],
  refitNotes: [],
  replaceNextTime: [],
  safetyCritical: false,
  ...over,
});

/** A job for which it comes off. */
export const job = (over: Partial<Job>): Job => ({
  id: 'valves',
  name: 'Valve clearances',
  assemblies: ['tank'],
  minutes: 60,
  parts: [],
  tools: [],
  cautions: [],
  notes: [],
  after: [],
  needs: { stand: false, bench: false },
  done: false,
  ...over,
});
