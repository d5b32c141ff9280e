/** A small world for battery tests: weather by formula, a household with defaults, no climate model. */
import type { Battery, BatteryChemistry, Household, Machine, Place, Ranged } from '../../../src/planner/household.ts';
import type { StoreDesignLow, StoreYear } from '../../../src/planner/storage/types.ts';

/** A year of sine waves: mean, half the yearly range, half the daily range, coldest in January (or July). */
export function sineStore(meanC: number, yearK: number, dayK: number, south = false): StoreYear {
  const airC = Float64Array.from({ length: 8760 }, (_, h) => {
    const season = Math.cos((2 * Math.PI * (h / 24 - (south ? 200 : 18))) / 365);
    return meanC - yearK * season - dayK * Math.cos((2 * Math.PI * ((h % 24) - 4)) / 24);
  });
  const byDay = (pick: (hours: number[]) => number) =>
    Float64Array.from({ length: 365 }, (_, d) => pick([...airC.slice(d * 24, d * 24 + 24)]));
  return {
    airC,
    vapourPa: new Float64Array(8760).fill(500),
    dayMeanC: byDay((hours) => hours.reduce((a, b) => a + b) / 24),
    dayMinC: byDay((hours) => Math.min(...hours)),
    dayMaxC: byDay((hours) => Math.max(...hours)),
  };
}

export const COLD_STORE = sineStore(4, 16, 4);
export const COLD_LOW: StoreDesignLow = {
  designC: [-34, -33, -27, -15, -5, 0, 3, 1, -5, -12, -22, -31],
  typicalC: [-25, -24, -18, -8, -1, 3, 6, 4, 0, -5, -14, -22],
  basis: 'made up for the test',
};

export const exactly = (value: number): Ranged => ({ value, low: value, high: value });
export const ranged = (value: number, low: number, high: number): Ranged => ({ value, low, high });

export function battery(chemistry: BatteryChemistry, capacityAh: number, more: Partial<Battery> = {}): Battery {
  return {
    chemistry,
    capacityAh,
    health: exactly(1),
    selfDischargePctPerMonth: ranged(6, 3, 15),
    doublingK: exactly(9.1),
    drainMA: exactly(0),
    startPct: exactly(100),
    removable: true,
    memoryCircuits: false,
    ...more,
  };
}

export function place(id: string, more: Partial<Place> = {}): Place {
  return { id, name: id, power: false, tripMinutes: 5, ...more } as Place;
}

export function machine(id: string, placeId: string, more: Partial<Machine> = {}): Machine {
  return {
    id,
    name: id,
    placeId,
    season: { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] },
    readings: [],
    charged: [],
    doneSteps: [],
    assumptions: [],
    ...more,
  } as unknown as Machine;
}

const EVERY_DAY = { monday: 4, tuesday: 4, wednesday: 4, thursday: 4, friday: 4, saturday: 4, sunday: 4 };
export const LEAD: BatteryChemistry[] = ['flooded-antimony', 'flooded-calcium', 'agm', 'gel'];

export function household(machines: Machine[], more: Partial<Household> = {}): Household {
  return {
    id: 'test',
    locale: 'en-GB',
    units: 'metric',
    hoursByWeekday: EVERY_DAY,
    away: [],
    chargers: [{ id: 'charger', name: 'charger', currentA: 1, chemistries: LEAD, maintainer: false }],
    batteryRoom: { name: 'the warm room', temperatureC: 18 },
    places: [place('garage', { power: true }), place('shed')],
    machines,
    ...more,
  } as unknown as Household;
}

export const contexts = (home: Household, store = COLD_STORE, designLow = COLD_LOW) =>
  new Map(home.machines.map((m) => [m.id, { store, designLow }]));
