/**
 * Times a household of batteries: three paths, shared charges, margins, derivations; and the ranking of assumptions.
 *
 * Run: npx node src/cli/bench-battery.ts
 */
import { planBatteries, rankAssumptions } from '../planner/battery/index.ts';
import type { NormalsClimate } from '../planner/climate/types.ts';
import type { AssumedField, Household, Machine, Place, Ranged } from '../planner/household.ts';
import { type Enclosure, storeDesignLow, storeNormalYear } from '../planner/storage/index.ts';

const MACHINES = 8;
const TURNS = 200;

/** A cold inland climate of no real place. */
const climate: NormalsClimate = {
  kind: 'normals',
  id: 'bench',
  name: 'bench',
  latitudeDeg: 60,
  elevationM: 200,
  normals: {
    meanC: [-14, -12, -5, 3, 10, 15, 17, 15, 9, 3, -6, -12],
    minC: [-19, -18, -11, -3, 3, 8, 11, 9, 4, -1, -10, -17],
    maxC: [-9, -6, 1, 9, 17, 22, 23, 21, 14, 7, -2, -7],
    rhPct: [84, 80, 72, 64, 58, 62, 68, 74, 78, 82, 87, 86],
  },
  source: 'made up',
  attribution: '',
};
const shed: Enclosure = {
  id: 'shed',
  timeConstantH: 0.4,
  houseCoupling: 0,
  houseC: 20,
  gainK: 0,
  airChangesPerH: 2,
};
const ranged = (value: number, low: number, high: number): Ranged => ({ value, low, high });
const assume = (target: string, value: number, low: number, high: number): AssumedField => ({
  field: target,
  target,
  value,
  low,
  high,
  unit: '',
  reason: '',
  settle: '',
});

const machines = Array.from({ length: MACHINES }, (_, i) => ({
  id: `machine-${i}`,
  name: `Machine ${i}`,
  placeId: 'shed',
  season: { lastUse: i % 2 ? '2026-04-05' : '2026-09-20', firstUse: i % 2 ? '2026-11-20' : '2027-05-10' },
  battery: {
    chemistry: i % 2 ? 'agm' : 'flooded-antimony',
    capacityAh: 10 + i,
    health: ranged(1, 0.7, 1),
    selfDischargePctPerMonth: i % 2 ? ranged(3, 1.5, 5) : ranged(6, 3, 15),
    doublingK: i % 2 ? ranged(12.4, 10, 15) : ranged(9.1, 8, 10.5),
    drainMA: ranged(3, 1, 30),
    startPct: ranged(95, 80, 100),
    removable: true,
    memoryCircuits: true,
  },
  readings: [],
  charged: [],
  doneSteps: [],
  assumptions: [
    assume('battery.startPct.value', 95, 80, 100),
    assume('battery.selfDischargePctPerMonth.value', 6, 3, 15),
    assume('battery.doublingK.value', 9.1, 8, 10),
    assume('battery.drainMA.value', 3, 1, 30),
    assume('battery.health.value', 1, 0.7, 1),
    assume('battery.capacityAh', 12, 4, 20),
  ],
})) as unknown as Machine[];

const household = {
  id: 'bench',
  hoursByWeekday: { monday: 0, tuesday: 2, wednesday: 2, thursday: 2, friday: 0, saturday: 6, sunday: 6 },
  away: [{ from: '2026-12-20', to: '2027-01-06' }],
  chargers: [
    { id: 'c', name: 'c', currentA: 0.8, chemistries: ['agm', 'flooded-antimony'], maintainer: false },
    { id: 'd', name: 'd', currentA: 1, chemistries: ['agm', 'flooded-antimony'], maintainer: false },
  ],
  batteryRoom: { name: 'room', temperatureC: 18 },
  places: [{ id: 'shed', name: 'shed', power: false, tripMinutes: 8, enclosure: shed, climate } as unknown as Place],
  machines,
} as unknown as Household;

const storeFor = (enclosure: Enclosure) => ({
  store: storeNormalYear(climate, enclosure),
  designLow: storeDesignLow(climate, enclosure),
});
const context = { ...storeFor(shed), storeFor };
const contexts = new Map(machines.map((machine) => [machine.id, context]));

function time(what: string, each: number, act: () => void): void {
  for (let i = 0; i < TURNS; i++) act();
  const start = performance.now();
  for (let i = 0; i < TURNS; i++) act();
  console.log(`${what}: ${((performance.now() - start) / TURNS / each).toFixed(3)} ms a machine`);
}

const found = planBatteries(household, '2026-03-01', contexts);
const charges = [...found.plans.values()].reduce((sum, plan) => sum + plan.charges.length, 0);
console.log(`battery: ${MACHINES} machines, ${charges} charges on ${found.trips.length} trips`);
time('battery plan (three paths, charges, margins, derivations)', MACHINES, () => {
  planBatteries(household, '2026-03-01', contexts);
});
time('assumptions ranked (six, two trials each)', MACHINES, () => {
  for (const machine of machines)
    rankAssumptions(machine, { ...context, plan: found.plans.get(machine.id) }, household);
});
const place = { ...machines[0]!, assumptions: [assume('place.enclosure.timeConstantH', 0.4, 0.25, 0.5)] };
time('one assumption of the place (two store years run again)', 1, () => {
  rankAssumptions(place, { ...context, plan: found.plans.get(place.id) }, household);
});
