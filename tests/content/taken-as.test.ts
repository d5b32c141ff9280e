/**
 * What a file is taken to say where it says little, and that what it says is taken as it stands. Expected values are common
 * practice, from memory, unless a source stands beside them.
 */
import { expect, test } from 'vitest';
import { KINDS } from '../../src/content/kinds.ts';
import type { Household, Machine, Place } from '../../src/planner/household.ts';
import { readWith } from './helpers.ts';

const DAYS = 'lastUse: "2026-10-25"\nfirstUse: "2027-04-10"\n';

function read(files: Record<string, string>): Household {
  const { household, problems } = readWith(files);
  expect(problems).toEqual([]);
  return household!;
}

function machine(yaml: string, kind = 'motorcycle', days = DAYS): Machine {
  const files = { 'machines/one.yaml': `name: One\nkind: ${kind}\nplace: tin-shed\n${days}${yaml}\n` };
  return read(files).machines.find(({ id }) => id === 'one')!;
}

const assumed = (m: Machine) => m.assumptions.map(({ field }) => field);

const home = (yaml: string) => read({ 'household.yaml': `id: a\nname: A\ntimeZone: Europe/Oslo\n${yaml}\n` });

const place = (yaml: string): Place =>
  read({ 'places/tin-shed.yaml': `name: A\npower: false\nclimate: valley\n${yaml}\n` }).places[0]!;

test('a household that says no more works at the weekend, with two hands and cans of the usual size', () => {
  const metric = home('units: metric');
  expect(metric).toMatchObject({
    locale: 'en-GB',
    clock: '24h',
    hands: 1,
    chargers: [],
    stands: [],
    away: [],
    siteUrl: '',
  });
  const { saturday, sunday, ...week } = metric.hoursByWeekday;
  expect(saturday > 0 && sunday > 0).toBe(true);
  expect(Object.values(week)).toEqual([0, 0, 0, 0, 0]);
  expect(metric.fuelCare).toEqual({ stabiliserDoseMLPerL: undefined, canL: 10, cans: 0 });
  expect(metric.batteryRoom).toBeUndefined();
  const us = home('units: us');
  expect(us).toMatchObject({ locale: 'en-US', clock: '12h' });
  // A US gallon is 231 cubic inches of 25.4 mm, by definition.
  expect(us.fuelCare.canL).toBeCloseTo(5 * 231 * 0.254 ** 3, 9);
  expect(home('units: imperial')).toMatchObject({ locale: 'en-GB', clock: '24h' });
});

test('what a household says is taken', () => {
  const said = home(
    [
      'units: us\nlocale: nb-NO\nclock: 24h\nhands: 2\nseed: 7\nsiteUrl: https://garage.example\ncountry: "NO"',
      'hours: { wednesday: 2 }\nfuelCare: { stabiliserDose: 4 mL/L, can: 20 L, cans: 3 }',
      'batteryRoom: { name: Hall, temperature: 61 °F }',
      'chargers: [{ id: a, name: A, current: 2 A, chemistries: [flooded, agm, flooded-calcium], place: tin-shed }, { id: b, name: B, current: 900 mA, chemistries: [gel], maintainer: true }]',
    ].join('\n'),
  );
  expect(said).toMatchObject({
    locale: 'nb-NO',
    clock: '24h',
    hands: 2,
    seed: 7,
    siteUrl: 'https://garage.example',
    country: 'NO',
  });
  expect(said.hoursByWeekday).toEqual({
    monday: 0,
    tuesday: 0,
    wednesday: 2,
    thursday: 0,
    friday: 0,
    saturday: 0,
    sunday: 0,
  });
  expect(said.fuelCare).toEqual({ stabiliserDoseMLPerL: 4, canL: 20, cans: 3 });
  // 61 °F are (61 − 32) / 1.8 °C, by definition.
  expect(said.batteryRoom).toEqual({ name: 'Hall', temperatureC: expect.closeTo(16.111, 3) });
  const [a, b] = said.chargers;
  // A setting for flooded batteries is one for both alloys of their plates.
  expect(new Set(a!.chemistries)).toEqual(new Set(['flooded-antimony', 'flooded-calcium', 'agm']));
  expect(a!.chemistries).toHaveLength(3);
  expect([a!.currentA, a!.maintainer, a!.placeId]).toEqual([2, false, 'tin-shed']);
  expect([b!.currentA, b!.maintainer, b!.placeId]).toEqual([0.9, true, undefined]);
});

// ISO 9223:2012, from memory: chloride S0 to 3 mg/(m² d), S1 to 60, S2 to 300, S3 beyond; sulphur dioxide P0 to 4.
test('what is near a place is the salt in its air, by the classes of ISO 9223', () => {
  const of = (yaml: string) => place(`enclosure: attached-garage\n${yaml}`);
  expect(of('').chlorideMgM2D).toBeLessThanOrEqual(3);
  expect(of('salt: none').chlorideMgM2D).toBe(of('').chlorideMgM2D);
  const road = of('salt: salted-road').chlorideMgM2D;
  expect(road > 3 && road <= 60).toBe(true);
  const coast = of('salt: coast').chlorideMgM2D;
  expect(coast > road && coast <= 300).toBe(true);
  const surf = of('salt: surf').chlorideMgM2D;
  expect(surf > coast && surf >= 300).toBe(true);
  expect(of('salt: surf\nchlorideMgM2D: 12').chlorideMgM2D).toBe(12);
  expect(of('').sulphurDioxideMgM2D).toBeLessThanOrEqual(4);
  expect(of('sulphurDioxideMgM2D: 30').sulphurDioxideMgM2D).toBe(30);
});

test('a place of which no more is said has mice and no bench, and is some minutes away', () => {
  const bare = place('enclosure: attached-garage');
  expect(bare).toMatchObject({ power: false, rodents: true, bench: false });
  expect(bare.tripMinutes > 0 && bare.tripMinutes <= 30).toBe(true);
  expect(place('enclosure: attached-garage\ntrip: 2 h\nrodents: false\nbench: true')).toMatchObject({
    tripMinutes: 120,
    rodents: false,
    bench: true,
  });
});

test('what was measured in a place goes before the row of its enclosure', () => {
  const own = place(
    'enclosure: { like: attached-garage, timeConstant: 30 h, airChangesPerHour: 0.7, houseShare: 25 %, houseTemperature: 19 °C, gain: 1.5 K, dampFloorPa: 90 }',
  ).enclosure;
  expect(own).toMatchObject({
    timeConstantH: 30,
    airChangesPerH: 0.7,
    houseCoupling: 0.25,
    houseC: 19,
    gainK: 1.5,
    dampFloorPa: 90,
  });
});

// Common practice: a car with clock, alarm and control units draws 20 to 50 mA with the key off; an old machine without any draws
// next to nothing.
test('what draws current with the key off is what keeps something alive', () => {
  const car = machine('fuel: { delivery: carburettor }', 'car').battery!;
  expect(car.memoryCircuits).toBe(true);
  expect(car.drainMA.value >= 20 && car.drainMA.value <= 50).toBe(true);
  const old = machine('fuel: { delivery: carburettor }').battery!;
  expect(old.memoryCircuits).toBe(false);
  expect(old.drainMA.value).toBeLessThanOrEqual(1);
  const injected = machine('fuel: { delivery: injection }').battery!;
  expect(injected.memoryCircuits).toBe(true);
  expect(injected.drainMA.value > old.drainMA.value && injected.drainMA.value < car.drainMA.value).toBe(true);
  const said = machine('fuel: { delivery: injection }\nbattery: { memoryCircuits: false }');
  expect(said.battery!.drainMA.value).toBe(old.drainMA.value);
  expect(assumed(said)).not.toContain('battery.memoryCircuits');
});

test('a battery is old from its fourth year on', () => {
  const health = (year: number) => machine(`battery: { boughtYear: ${year} }`).battery!.health;
  // The rest begins in 2026: of 2023 the fourth year has begun.
  for (const year of [2026, 2025, 2024]) expect(health(year).value).toBe(1);
  for (const year of [2023, 2010]) expect(health(year).value).toBeLessThan(1);
  // Of one whose age is known less can be lost than of one whose age nobody knows.
  expect(health(2025).low).toBeGreaterThan(machine('').battery!.health.low);
  expect(machine('battery: { boughtYear: 2010, health: 90 % }').battery!.health).toEqual({
    value: 0.9,
    low: 0.9,
    high: 0.9,
  });
});

test('what starts by electricity has a battery', () => {
  for (const start of ['electric', 'electric-and-pull', 'electric-and-kick'])
    expect(machine(`engine: { start: ${start} }`, 'mower').battery, start).toBeDefined();
  for (const start of ['pull', 'kick']) expect(machine(`engine: { start: ${start} }`, 'mower').battery).toBeUndefined();
  expect(machine('engine: { start: kick }').battery).toBeDefined();
  expect(machine('engine: { start: electric }\nbattery: none').battery).toBeUndefined();
});

test('a motorcycle has a carburettor for each cylinder, a car one for all, injection none', () => {
  const bowls = (kind: string, cylinders: number, delivery = 'carburettor') =>
    machine(`engine: { cycle: four-stroke, cylinders: ${cylinders} }\nfuel: { delivery: ${delivery} }`, kind).fuel!
      .bowls;
  expect([bowls('motorcycle', 1), bowls('motorcycle', 4), bowls('quad', 2)]).toEqual([1, 4, 2]);
  expect([bowls('car', 4), bowls('tractor', 2), bowls('mower', 2)]).toEqual([1, 1, 1]);
  expect(bowls('motorcycle', 4, 'injection')).toBe(0);
});

test('a fuel tap is where there is a carburettor, and of the kind that is usual', () => {
  const taps = (kind: string, fuel: string) => machine(`fuel: { ${fuel} }`, kind).fuel!.taps;
  expect(taps('motorcycle', 'delivery: carburettor')).toEqual({ kind: 'vacuum', count: 1 });
  expect(taps('scooter', 'delivery: carburettor')).toEqual({ kind: 'vacuum', count: 1 });
  expect(taps('mower', 'delivery: carburettor')).toEqual({ kind: 'manual', count: 1 });
  expect(taps('car', 'delivery: carburettor')).toBeNull();
  expect(taps('motorcycle', 'delivery: injection')).toBeNull();
  expect(taps('motorcycle', 'delivery: carburettor, tap: none')).toBeNull();
  expect(taps('car', 'delivery: carburettor, tap: manual')).toEqual({ kind: 'manual', count: 1 });
  expect(taps('motorcycle', 'delivery: carburettor, taps: 2')).toEqual({ kind: 'manual', count: 2 });
});

test('fuel of which the amount is not said is half a tank, and could be nearly all or nearly none', () => {
  const { tankL, inTankL } = machine('fuel: { tank: 20 L }').fuel!;
  expect([tankL, inTankL.value]).toEqual([20, 10]);
  expect(inTankL.low > 0 && inTankL.low < 5 && inTankL.high > 15 && inTankL.high <= 20).toBe(true);
  expect(machine('fuel: { tank: 20 L, inTank: 3 L }').fuel!.inTankL).toEqual({ value: 3, low: 3, high: 3 });
});

// A bowl holds some 60 mL, line and filter some 100 mL; injection has a rail and a filter instead.
test('what line and bowls hold grows with the bowls, and injection has its line alone', () => {
  const held = (fuel: string, cylinders = 1) =>
    machine(`engine: { cycle: four-stroke, cylinders: ${cylinders} }\nfuel: { ${fuel} }`).fuel!.lineAndBowlsL;
  expect(held('delivery: carburettor')).toBeCloseTo(0.16, 9);
  expect(held('delivery: carburettor', 4)).toBeCloseTo(0.34, 9);
  const injected = held('delivery: injection', 4);
  expect(injected).toBe(held('delivery: injection', 1));
  expect(injected > 0.1 && injected < 1).toBe(true);
  expect(held('delivery: carburettor, lineAndBowls: 0.5 L')).toBe(0.5);
  const why = (fuel: string) =>
    machine(`fuel: { ${fuel} }`).assumptions.find(({ field }) => field === 'fuel.lineAndBowls')!.reason;
  expect(why('delivery: carburettor')).toMatch(/each bowl/);
  expect(why('delivery: injection')).toMatch(/rail/);
});

// EN 228:2012, table 1, from memory: 720 to 775 kg/m³ at 15 °C.
test('petrol weighs what its standard allows', () => {
  for (const blend of ['E0', 'E5', 'E10']) {
    const weighs = machine(`fuel: { blend: ${blend} }`).fuel!.densityKgM3;
    expect(weighs >= 720 && weighs <= 775).toBe(true);
  }
  expect(machine('fuel: { densityKgPerM3: 761 }').fuel!.densityKgM3).toBe(761);
});

test('a two-stroke has no oil to change, and its oil is where its file says', () => {
  const apart = machine('engine: { cycle: two-stroke }');
  expect(apart.engine).toMatchObject({ oilL: 0, oilFilter: false });
  expect(apart.fuel!.premix).toBe(apart.engine.twoStrokeOil === 'premix');
  const mixed = machine('engine: { cycle: two-stroke }\nfuel: { premix: true }');
  expect([mixed.engine.twoStrokeOil, mixed.fuel!.premix]).toEqual(['premix', true]);
  const said = machine('engine: { cycle: two-stroke, twoStrokeOil: premix }');
  expect(said.fuel!.premix).toBe(true);
  expect(assumed(said)).not.toContain('engine.twoStrokeOil');
  expect(machine('engine: { cycle: four-stroke, oil: 2 L, oilFilter: false }').engine).toEqual({
    cycle: 'four-stroke',
    cylinders: expect.any(Number),
    start: 'electric',
    oilL: 2,
    oilFilter: false,
    idleFlowLPerH: expect.any(Number),
  });
});

test('an engine idles on the more fuel the more cylinders it has', () => {
  const flow = (cylinders: number) => machine(`engine: { cylinders: ${cylinders} }`).engine.idleFlowLPerH;
  expect([flow(2) > flow(1), flow(3) === flow(2), flow(4) > flow(3), flow(8) === flow(4)]).toEqual(Array(4).fill(true));
  expect(machine('engine: { idleFlow: 0.9 L/h }').engine.idleFlowLPerH).toBe(0.9);
});

test('coolant is taken as it is said, in shares and years', () => {
  const coolant = machine(
    'cooling: { volume: 2 L, strength: 50 %, glycol: propylene, refillStrength: 40 %, life: 30 months, lastChanged: "2024-10-05" }',
  ).cooling.coolant!;
  expect(coolant).toMatchObject({
    glycol: 'propylene',
    strength: 0.5,
    volumeL: 2,
    refillStrength: 0.4,
    lifeYears: 2.5,
    lastChanged: '2024-10-05',
  });
  // A drain plug leaves some in the block: a part, not all, comes out.
  expect(coolant.drainableL > 1 && coolant.drainableL < 2).toBe(true);
  const untested = machine('cooling: liquid');
  expect(untested.cooling).toMatchObject({ kind: 'liquid', coolant: { strength: undefined, refillStrength: 1 } });
  for (const name of ['strength', 'volume', 'drainable', 'refillStrength', 'life', 'glycol'])
    expect(assumed(untested)).toContain(`cooling.${name}`);
});

test('an electric machine has neither airbox, exhaust nor clutch, unless its file says so', () => {
  expect(machine('engine: { cycle: electric }').chassis).toMatchObject({
    airbox: false,
    exhaustOutlets: 0,
    clutch: 'none',
    throttle: 'wire',
  });
  expect(machine('engine: { cycle: electric }').cooling).toEqual({ kind: 'none' });
  expect(machine('engine: { cycle: electric }').engine).toEqual({
    cycle: 'electric',
    cylinders: 0,
    start: 'electric',
    oilL: 0,
    oilFilter: false,
    idleFlowLPerH: 0,
  });
  expect(machine('engine: { cycle: electric }\ncooling: liquid').cooling.kind).toBe('liquid');
  expect(machine('engine: { cycle: electric }\nchassis: { clutch: hydraulic, throttle: cable }').chassis).toMatchObject(
    {
      clutch: 'hydraulic',
      throttle: 'cable',
    },
  );
  expect(machine('').chassis).toMatchObject({ airbox: true, throttle: 'cable', clutch: 'cable' });
});

test('brake fluid is in brakes that have any', () => {
  const fluid = (chassis: string) => machine(`chassis: { ${chassis} }`).chassis.brakeFluid;
  expect(fluid('brakes: hydraulic')).toBe('DOT4');
  expect(fluid('brakes: mixed')).toBe('DOT4');
  expect(fluid('brakes: cable')).toBeUndefined();
  expect(fluid('brakes: none')).toBeUndefined();
  expect(fluid('brakes: hydraulic, brakeFluid: DOT5')).toBe('DOT5');
});

test('a machine that is driven on salt and is not said to be washed is salted', () => {
  const car = machine('', 'car');
  expect(car.roadSalt).toEqual({ exposed: true, washed: false });
  expect(assumed(car)).toEqual(expect.arrayContaining(['roadSalt.exposed', 'roadSalt.washed']));
  expect(machine('roadSalt: { exposed: true, washed: true }').roadSalt).toEqual({ exposed: true, washed: true });
  expect(machine('roadSalt: { exposed: true }').roadSalt).toEqual({ exposed: true, washed: false });
  const dry = machine('roadSalt: { exposed: false }');
  expect(dry.roadSalt.exposed).toBe(false);
  expect(assumed(dry)).not.toContain('roadSalt.washed');
});

test('papers are what their short name says', () => {
  const kinds = machine(
    'paperwork: [{ id: insurance-b, what: A, date: "2027-01-01" }, { id: registration, what: A, date: "2027-01-01", pausedOverRest: true }, { id: inspection, what: A, date: "2027-01-01" }, { id: club, what: A, date: "2027-01-01" }, { id: road, what: A, date: "2027-01-01", kind: insurance }]',
  ).paperwork.map(({ kind, pausedOverRest }) => [kind, pausedOverRest]);
  expect(kinds).toEqual([
    ['insurance', false],
    ['registration', true],
    ['inspection', false],
    ['other', false],
    ['insurance', false],
  ]);
});

test('of a rest with one day given the other lies on its right side, within a year', () => {
  const last = machine('', 'motorcycle', 'lastUse: "2026-10-25"\n').season;
  expect([last.lastUse, last.proposed]).toEqual(['2026-10-25', true]);
  expect(last.firstUse > '2027-01-01' && last.firstUse < '2027-10-25').toBe(true);
  for (const firstUse of ['2027-04-10', '2027-02-01', '2027-01-05', '2027-09-01']) {
    const first = machine('', 'motorcycle', `firstUse: "${firstUse}"\n`).season;
    expect(first.firstUse).toBe(firstUse);
    expect(first.lastUse < firstUse && first.lastUse > `2026-${firstUse.slice(5)}`, firstUse).toBe(true);
  }
  // Whatever the day, whatever ends the use; a leap day among them.
  const days = [...Array(24).keys()].map(
    (n) => `${2027 + (n % 2)}-${String(1 + (n >> 1)).padStart(2, '0')}-${n % 2 ? '29' : '10'}`,
  );
  for (const day of days.filter((one) => one !== '2027-02-29'))
    for (const kind of ['car', 'tractor', 'snow-machine']) {
      const { firstUse } = machine('', kind, `lastUse: "${day}"\n`).season;
      expect(firstUse > day, `${kind}: last use ${day}, first use ${firstUse}`).toBe(true);
      const { lastUse } = machine('', kind, `firstUse: "${day}"\n`).season;
      expect(lastUse < day, `${kind}: first use ${day}, last use ${lastUse}`).toBe(true);
    }
  expect(machine('').season.proposed).toBe(false);
});

// Frost ends the riding on roads, frozen ground the work on it, and lack of snow the snow machine's season: common practice.
test('a rest is proposed by what ends the use of the machine', () => {
  const why = (kind: string) => machine('', kind, '').season.reasons.join(' ');
  for (const kind of ['motorcycle', 'scooter', 'car']) expect(why(kind), kind).toMatch(/frost in fewer than/);
  for (const kind of ['quad', 'tractor', 'mower']) expect(why(kind), kind).toMatch(/ground not frozen/);
  expect(why('snow-machine')).toMatch(/daily mean under/);
  expect(machine('use: work', 'motorcycle', '').season.reasons.join(' ')).toMatch(/ground not frozen/);
});

test('work of which little is said needs nothing more', () => {
  const m = machine(
    [
      'services: [{ id: a, what: A, every: { time: 2 years } }]',
      'assemblies: [{ id: seat, name: Seat, offMinutes: 10, fasteners: [{ what: Bolt, count: 2, head: hex 10 mm }], singleUse: [{ what: Washer }] }]',
      'jobs: [{ id: b, name: B, assemblies: [], minutes: 5, parts: [{ what: Gasket }, { what: Oil, amount: "2,5 L", leadDays: 3, inStock: true }] }]',
      'tyres: [{ position: all, pressure: 2 bar }]\ncharged: [{ date: "2026-11-01" }, { date: "2026-11-02", to: 90 % }]',
    ].join('\n'),
  );
  expect(m.services[0]).toMatchObject({ interval: { months: 24 }, supplies: [], assemblies: [], lastDone: undefined });
  expect(m.assemblies[0]).toMatchObject({
    behind: [],
    cautions: [],
    refitNotes: [],
    replaceNextTime: [],
    safetyCritical: false,
    fasteners: [{ torqueNm: undefined, condition: 'unstated', antiSeize: false, banjo: false }],
    singleUse: [{ what: 'Washer', count: 1, leadDays: 0, inStock: false }],
  });
  // Putting back takes longer than taking off.
  expect(m.assemblies[0]!.onMinutes).toBeGreaterThan(10);
  expect(m.jobs[0]).toMatchObject({
    parts: [
      { what: 'Gasket', amount: 1, unit: 'piece', leadDays: 0, inStock: false },
      { what: 'Oil', amount: 2.5, unit: 'L', leadDays: 3, inStock: true },
    ],
    tools: [],
    after: [],
    needs: { stand: false, bench: false },
    done: false,
  });
  expect(m.tyres).toEqual([
    { position: 'all', count: 1, pressureKPa: 200, sidewallMaxKPa: undefined, madeYear: undefined },
  ]);
  expect(m.charged.map(({ toPct }) => toPct)).toEqual([100, 90]);
});

/** What each kind has and is, where nothing is said; in the order of `KINDS`. */
const [YES, NO] = [true, false];
// biome-ignore format: a table is read by its columns
const USUAL: Record<string, readonly [of: (m: Machine) => unknown, values: readonly unknown[]]> = {
  //                                                     motorcycle scooter   snow     quad     side-by-side car   tractor   mower
  use: [(m) => m.use,                                   ['road', 'road', 'snow', 'trail', 'trail', 'road', 'work', 'work']],
  skis: [(m) => m.chassis.skis,                         [NO, NO, YES, NO, NO, NO, NO, NO]],
  track: [(m) => m.chassis.track,                       [NO, NO, YES, NO, NO, NO, NO, NO]],
  'its tail raised': [(m) => m.chassis.offGround,       [NO, NO, YES, NO, NO, NO, NO, NO]],
  'a centre stand': [(m) => m.chassis.centreStand,      [NO, YES, NO, NO, NO, NO, NO, NO]],
  lights: [(m) => m.chassis.hasLights,                  [YES, YES, YES, YES, YES, YES, YES, NO]],
  'a battery': [(m) => m.battery !== undefined,         [YES, YES, YES, YES, YES, YES, YES, NO]],
  'an oil filter': [(m) => m.engine.oilFilter,          [YES, NO, NO, YES, YES, YES, YES, NO]],
  'a rope to pull': [(m) => /pull/.test(m.engine.start), [NO, NO, YES, NO, NO, NO, NO, YES]],
  'an electric starter': [(m) => /electric/.test(m.engine.start), [YES, YES, YES, YES, YES, YES, YES, NO]],
  'water around its engine': [(m) => m.cooling.kind === 'liquid', [NO, NO, YES, YES, YES, YES, YES, NO]],
  drive: [(m) => m.chassis.drive,                       ['chain', 'variator', 'track', 'shaft', 'variator', 'gearbox', 'gearbox', 'belt']],
  brakes: [(m) => m.chassis.brakes !== 'none',          [YES, YES, YES, YES, YES, YES, YES, NO]],
  wheels: [(m) => m.tyres.reduce((n, t) => n + t.count, 0), [2, 2, 0, 4, 4, 4, 4, 0]],
  'a two-stroke engine': [(m) => m.engine.cycle === 'two-stroke', [NO, NO, YES, NO, NO, NO, NO, NO]],
  'driven on salt': [(m) => m.roadSalt.exposed,         [NO, NO, NO, NO, NO, YES, NO, NO]],
};

test.each(Object.entries(USUAL))('by its kind alone: %s', (_, [of, values]) => {
  expect(KINDS.map((kind) => of(machine('', kind)))).toEqual(values);
});

// Cold pressures as plates and handbooks have them: road two-wheelers and cars 1.75 to 2.9 bar, low-pressure tyres of quads under
// 0.5 bar, of side-by-sides under 1.5 bar.
test('tyres of which nothing is said have a pressure that is usual for the kind', () => {
  const pressures = (kind: string) => machine('', kind).tyres.map(({ pressureKPa }) => pressureKPa);
  for (const kind of ['motorcycle', 'scooter', 'car'])
    for (const kPa of pressures(kind)) expect(kPa >= 175 && kPa <= 290, kind).toBe(true);
  expect(pressures('quad')[0]).toBeLessThan(50);
  expect(pressures('side-by-side')[0]).toBeLessThan(150);
});
