import { expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { readContent } from '../../src/content/read.ts';
import { KINDS } from '../../src/content/schemas/household.ts';
import type { AssumedField, Machine } from '../../src/planner/household.ts';
import { household, readWith, SMALLEST } from './helpers.ts';

const own = (m: Machine) => m.assumptions.filter((a) => !a.field.startsWith('places/'));
const at = (object: unknown, path: string) =>
  path.split('.').reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], object);

function machineOf(yaml: string): Machine {
  const { household: found, problems } = readWith({ 'machines/one.yaml': yaml });
  expect(problems).toEqual([]);
  return found!.machines.find((m) => m.id === 'one')!;
}

test('the smallest file gives a whole machine, with what it says and nothing else as given', () => {
  const m = machineOf(SMALLEST);
  expect(m.battery).toMatchObject({ chemistry: 'flooded-antimony', capacityAh: 12 });
  expect(m.fuel).toMatchObject({
    delivery: 'carburettor',
    tankL: 17,
    blend: 'E10',
    taps: { kind: 'vacuum', count: 1 },
  });
  expect(m.cooling).toEqual({ kind: 'air' });
  expect(m.season).toMatchObject({ lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false });
  const fields = m.assumptions.map((a) => a.field);
  for (const given of ['battery.capacity', 'fuel.tank', 'fuel.delivery', 'fuel.blend', 'cooling.kind', 'lastUse']) {
    expect(fields).not.toContain(given);
  }
  for (const assumed of [
    'battery.chemistry',
    'battery.selfDischarge',
    'battery.drain',
    'battery.health',
    'fuel.inTank',
  ]) {
    expect(fields).toContain(assumed);
  }
});

test('"flooded" alone is taken as the alloy with the faster loss, and says so', () => {
  const assumed = machineOf(SMALLEST).assumptions.find((a) => a.field === 'battery.chemistry')!;
  expect(assumed).toMatchObject({ value: 'flooded-antimony', low: 'flooded-calcium', high: 'flooded-antimony' });
  expect(machineOf(SMALLEST.replace('flooded', 'flooded-antimony')).assumptions.map((a) => a.field)).not.toContain(
    'battery.chemistry',
  );
});

/** Every kind as it usually is, and as an electric machine. */
const BARE = KINDS.flatMap((kind) => {
  const bare = `name: One\nkind: ${kind}\nplace: tin-shed\n`;
  return [
    [kind, bare],
    [`electric ${kind}`, `${bare}engine: { cycle: electric }\n`],
  ] as const;
});

test.each(BARE)(
  'a %s told by name, kind and place alone has no assumption without range, reason and line to write',
  (_, bare) => {
    const m = machineOf(bare);
    expect(m.season.proposed).toBe(true);
    for (const a of m.assumptions) {
      expect(a.reason, a.field).not.toBe('');
      expect(a.settle, a.field).toContain(':');
      if (typeof a.value === 'number') {
        expect(a.low, a.field).toBeLessThanOrEqual(a.value);
        expect(a.high, a.field).toBeGreaterThanOrEqual(a.value);
      }
    }
    expect(new Set(m.assumptions.map((a) => a.field)).size).toBe(m.assumptions.length);
  },
);

test.each(BARE)('each assumption about a %s is where its target says, with its value', (_, bare) => {
  const { household: found } = readWith({ 'machines/one.yaml': bare });
  const m = found!.machines.find((x) => x.id === 'one')!;
  const place = found!.places.find((p) => p.id === m.placeId)!;
  for (const a of m.assumptions) {
    const value = a.target.startsWith('place.') ? at(place, a.target.slice('place.'.length)) : at(m, a.target);
    if (a.value === 'unknown' || (a.field === 'battery' && a.value === 'none')) expect(value, a.field).toBeUndefined();
    else expect(String(value), a.field).toBe(String(a.value));
  }
});

/** Writes a settling line into a file's text: groups are joined, lists and values replaced. */
function settled(text: string, line: string): string {
  const join = (a: unknown, b: unknown): unknown =>
    isGroup(a) && isGroup(b)
      ? Object.fromEntries(
          [...new Set([...Object.keys(a), ...Object.keys(b)])].map((k) => [k, k in b ? join(a[k], b[k]) : a[k]]),
        )
      : b;
  return stringify(join(parse(text), parse(line)), { defaultStringType: 'QUOTE_DOUBLE', defaultKeyType: 'PLAIN' });
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

test.each(BARE)('writing the line that settles it takes each assumption about a %s off the list', (_, bare) => {
  const assumed = own(machineOf(bare));
  const { household: found, problems } = readWith(
    Object.fromEntries(assumed.map((a, i) => [`machines/m${i}.yaml`, settled(bare, a.settle)])),
  );
  expect(problems).toEqual([]);
  for (const [i, a] of assumed.entries()) {
    const after = found!.machines.find((m) => m.id === `m${i}`)!;
    expect(
      after.assumptions.map((x) => x.field),
      a.settle,
    ).not.toContain(a.field);
  }
});

test('writing the line into the place takes its assumptions off the list', () => {
  const files = household();
  const place = files.find((f) => f.path === 'places/tin-shed.yaml')!;
  const text = new TextDecoder().decode(place.bytes as Uint8Array);
  const about = (m: Machine): AssumedField[] => m.assumptions.filter((a) => a.field.startsWith('places/'));
  const before = about(machineOf(SMALLEST));
  expect(before.map((a) => a.field)).toContain('places/tin-shed: enclosure.timeConstant');
  for (const a of before) {
    const { household: found } = readContent(
      [...files.filter((f) => f !== place), { path: place.path, bytes: settled(text, a.settle) }],
      { asOf: '2026-11-25' },
    );
    expect(about(found!.machines[0]!).map((x) => x.field)).not.toContain(a.field);
  }
});

test('a range that is given is kept and not listed', () => {
  const m = machineOf(
    SMALLEST.replace('capacity: 12 Ah', 'capacity: 12 Ah, drain: { value: 3 mA, low: 1 mA, high: 8 mA }'),
  );
  expect(m.battery!.drainMA).toEqual({ value: 3, low: 1, high: 8 });
  expect(m.assumptions.map((a) => a.field)).not.toContain('battery.drain');
});

test('a battery that stays connected by choice is told so to the planner', () => {
  const connected = (words: string) =>
    machineOf(SMALLEST.replace('capacity: 12 Ah', `capacity: 12 Ah${words}`)).battery!.connected;
  expect([connected(''), connected(', connected: true'), connected(', connected: false')]).toEqual([
    undefined,
    true,
    false,
  ]);
});

test('a battery in its fourth year is taken to have lost capacity', () => {
  const aged = (year: number) =>
    machineOf(SMALLEST.replace('capacity: 12 Ah', `capacity: 12 Ah, boughtYear: ${year}`)).battery!.health;
  expect(aged(2026).value).toBe(1);
  expect(aged(2022).value).toBe(0.85);
});

// Ride-on mowers, from memory of their makers' data: one or two cylinders, a plastic tank of 5 to 15 L, a battery of the size U1
// (BCI, 18 to 35 Ah), two to six nipples. A compact tractor lies within the ranges.
test('a tractor of which nothing else is said is taken to be a ride-on mower, and may be a tractor', () => {
  const m = machineOf('name: One\nkind: tractor\nplace: tin-shed\n');
  expect(m.engine.cylinders).toBeLessThanOrEqual(2);
  expect(m.fuel!.tankMaterial).toBe('plastic');
  expect(m.fuel!.tankL).toBeGreaterThanOrEqual(5);
  expect(m.fuel!.tankL).toBeLessThanOrEqual(15);
  expect(m.battery!.capacityAh).toBeGreaterThanOrEqual(18);
  expect(m.battery!.capacityAh).toBeLessThanOrEqual(35);
  expect(m.chassis.greasePoints).toBeGreaterThanOrEqual(2);
  expect(m.chassis.greasePoints).toBeLessThanOrEqual(6);
  const highest = (field: string) => Number(m.assumptions.find((a) => a.field === field)!.high);
  expect(highest('engine.cylinders')).toBeGreaterThanOrEqual(4);
  expect(highest('battery.capacity')).toBeGreaterThanOrEqual(100);
  expect(highest('fuel.tank')).toBeGreaterThanOrEqual(60);
});

// Common practice: lithium iron phosphate is laid up half full, and so its own sheet says; lead–acid is laid up as full as it gets.
test.each([
  ['lifepo4', 50, 60],
  ['agm', 80, 100],
] as const)('a battery of %s rests from what its lay-up leaves it at', (chemistry, low, high) => {
  const m = machineOf(`name: One\nkind: motorcycle\nplace: tin-shed\nbattery: { chemistry: ${chemistry} }\n`);
  expect(m.battery!.startPct).toMatchObject({ low, high });
  const given = machineOf(
    `name: One\nkind: motorcycle\nplace: tin-shed\nbattery: { chemistry: ${chemistry}, chargeAtLayUp: 70 % }\n`,
  );
  expect(given.battery!.startPct.value).toBe(70);
});

// Common practice: most drive batteries are lithium-ion; a scooter's and a mower's come out, a car's does not, and a car has a 12 V
// battery beside it.
test.each([
  ['scooter', true, false],
  ['mower', true, false],
  ['car', false, true],
] as const)('an electric %s of which nothing else is said has a drive battery', (kind, removable, twelveVolts) => {
  const m = machineOf(`name: One\nkind: ${kind}\nplace: tin-shed\nengine: { cycle: electric }\n`);
  expect(m.driveBattery).toEqual({ chemistry: 'lithium-ion', removable, lowestStorageC: -20 });
  expect(m.battery !== undefined).toBe(twelveVolts);
  expect([m.fuel, m.engine.cylinders, m.chassis.exhaustOutlets, m.chassis.clutch]).toEqual([undefined, 0, 0, 'none']);
  const fields = m.assumptions.map((a) => a.field);
  for (const name of ['chemistry', 'removable', 'lowestStorage']) expect(fields).toContain(`driveBattery.${name}`);
  expect(fields.includes('battery')).toBe(!twelveVolts);
});

test('what is said of a drive battery is taken, and a machine that burns fuel has none', () => {
  const m = machineOf(
    'name: One\nkind: car\nplace: tin-shed\nengine: { cycle: electric }\nbattery: { chemistry: agm }\n' +
      'driveBattery: { chemistry: lead-acid, removable: true, lowestStorage: -4 °F }\n',
  );
  // −4 °F are −20 °C, by definition of the two scales.
  expect(m.driveBattery).toEqual({ chemistry: 'lead-acid', removable: true, lowestStorageC: expect.closeTo(-20, 9) });
  expect(m.battery?.chemistry).toBe('agm');
  expect(m.assumptions.filter((a) => /^driveBattery|^battery$/.test(a.field))).toEqual([]);
  expect(machineOf(SMALLEST).driveBattery).toBeUndefined();
});

test('none means none', () => {
  const m = machineOf(
    'name: One\nkind: mower\nplace: tin-shed\nbattery: none\nfuel: none\ncooling: none\ntyres: []\nengine: { cycle: electric }\n',
  );
  expect(m.battery).toBeUndefined();
  expect(m.fuel).toBeUndefined();
  expect(m.cooling).toEqual({ kind: 'none' });
  expect(m.tyres).toEqual([]);
});

test('units of any system come out the same', () => {
  const si = machineOf(SMALLEST.replace('17 L', '18.92705892 L')).fuel!.tankL;
  expect(machineOf(SMALLEST.replace('17 L', '5 US gal')).fuel!.tankL).toBeCloseTo(si, 9);
});
