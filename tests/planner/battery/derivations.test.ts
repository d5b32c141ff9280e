/**
 * How the figures of a battery are said to have come about, worked by hand. It rests eighty days in a room of 20 °C, where it loses
 * 6 % in thirty days, 15 % at its fastest: 0.2 and 0.5 % a day. It begins at 99.9 %, and 24.9 % are gone on the fiftieth day.
 */
import { expect, test } from 'vitest';
import {
  freezingPointC,
  openCircuitVoltage,
  planBatteries,
  specificGravity,
} from '../../../src/planner/battery/index.ts';
import type { Battery, Household, Machine } from '../../../src/planner/household.ts';
import type { Derivation } from '../../../src/planner/season-plan.ts';
import { battery, COLD_LOW, COLD_STORE, contexts, exactly, household, LEAD, machine, sineStore } from './world.ts';

const EIGHTY = { lastUse: '2026-11-01', firstUse: '2027-01-20', proposed: false, reasons: [] };
const OWN = battery('flooded-antimony', 12, { startPct: exactly(99.9), care: 'carry-in', drainMA: exactly(4) });
const ROOM = { batteryRoom: { name: 'the warm room', temperatureC: 20 } };

function derived(own: Battery = OWN, more: Partial<Machine> = {}, home: Partial<Household> = {}, store = COLD_STORE) {
  const all = household([machine('Moth', 'shed', { battery: own, season: EIGHTY, ...more })], { ...ROOM, ...home });
  const plan = planBatteries(all, '2026-10-01', contexts(all, store, COLD_LOW)).plans.get('Moth')!;
  return { plan, of: (method: string) => plan.derivations.find((d) => d.method === `battery.${method}`)! };
}
const inputs = (d: Derivation) => d.inputs.map(({ name, value, unit }) => [name, value, unit]);

test('the loss: what goes in, and what comes out at the mean temperature', () => {
  const found = derived().of('self-discharge');
  expect(found.equation).toBe(
    'dS/dt = −[ r20·2^((T − 20)/θ) + 100·I/(C·h) ], summed hour by hour; times the multiplier from readings',
  );
  expect(inputs(found)).toEqual([
    ['r20, self-discharge at 20 °C: expected', 6, '% in 30 d'],
    ['r20: low', 3, '% in 30 d'],
    ['r20: high', 15, '% in 30 d'],
    ['θ, step that doubles it', 9.1, 'K'],
    ['mean temperature of the rest', 20, '°C'],
    ['I, key-off drain', 0, 'mA'],
    ['drain of the battery’s own circuit', 0, 'mA'],
    ['C, capacity', 12, 'Ah'],
    ['h, health', 1, ''],
    ['multiplier from readings', 1, ''],
    ['loss in 30 d at 20 °C', 6, '%'],
  ]);
  expect(found.result).toEqual({ value: 6, unit: '% in 30 d at the mean temperature of the rest' });
  expect(found.caveat).toBe(
    'The path sums the real hours of 80 days, and warm hours count for more than the mean temperature says.',
  );
});

test('a step warmer doubles the loss by itself, and a drain with the lead on comes on top', () => {
  const warm = { batteryRoom: { name: 'attic', temperatureC: 29.1 } };
  expect(derived(OWN, {}, warm).of('self-discharge').result.value).toBe(12);
  // In the store, leads on: 4 mA of 12 Ah over 720 h are 2.88 Ah, 24 %. A store of 29.1 °C all year.
  const on = derived({ ...OWN, care: 'visits', connected: true }, {}, {}, sineStore(29.1, 0, 0)).of('self-discharge');
  expect(inputs(on)).toContainEqual(['I, key-off drain', 4, 'mA']);
  expect(inputs(on)).toContainEqual(['loss in 30 d at 20 °C', 30, '%']);
  expect(on.result.value).toBe(36);
});

test('the first charge: from where, down to what, when at the fastest and when as expected', () => {
  const found = derived().of('first-charge');
  expect(inputs(found)).toEqual([
    ['S at the end of the last day of use', 99.9, '%'],
    ['last day of use', '2026-11-01', ''],
    ['threshold', 75, '%'],
    ['high-loss date', '2026-12-21', ''],
    ['expected date', 'not before first use', ''],
    ['moved earlier by', 0, 'd'],
  ]);
  expect(found.result).toEqual({ value: '2026-12-21', unit: '' });
  expect(found.sources).toEqual(['threshold: TM 5-3820-256-24-4 (SG 1.225), TM 5-3805-262-20 (12.4 V)']);
  expect(found.caveat).toBe('Placed on the high-loss path: it is likelier early than late.');
});

test('a charge moved earlier says by how many days, and one expected within the rest its date', () => {
  const away = { away: [{ from: '2026-12-19', to: '2026-12-31' }] };
  // Six hours and a half on the charger run past the four of the day: somebody must be there on the 18th to take it off.
  expect(inputs(derived(OWN, {}, away).of('first-charge'))).toContainEqual(['moved earlier by', 4, 'd']);
  // 24.9 % at 0.2 % a day: on day 125 of a rest of 150.
  const long = { season: { ...EIGHTY, firstUse: '2027-03-31' } };
  expect(inputs(derived(OWN, long).of('first-charge'))).toContainEqual(['expected date', '2027-03-06', '']);
});

// On day 50 it is at 89.9 % as expected and at 74.9 % at the fastest: 12·0.101/0.85 = 1.43 Ah and 12·0.251/0.85 = 3.54 Ah.
test('the charge: ampere-hours and hours on the charger of 1 A', () => {
  const found = derived().of('charge');
  expect(inputs(found)).toEqual([
    ['C, capacity', 12, 'Ah'],
    ['h, health', 1, ''],
    ['S_target', 100, '%'],
    ['η, charge efficiency', 0.85, ''],
    ['absorption', 3, 'h'],
    ['largest current reckoned with', 1.2, 'A'],
    ['at most (high-loss path)', 3.5, 'Ah'],
    ['hours', 4.4, 'h'],
    ['hours at most', 6.5, 'h'],
    ['day of the charge', '2026-12-21', ''],
  ]);
  expect(found.result).toEqual({ value: 1.4, unit: 'Ah' });
  expect(found.sources).toEqual([
    'charge efficiency and absorption: common practice',
    'largest current, a tenth of the capacity: common practice',
  ]);
});

// Lowest at the end of day 49, 20 December: 99.9 − 24.5 = 75.4 %. 1.12 + 0.145·0.754 = 1.229.
test('freezing: the month it comes nearest, its lowest charge, the acid’s strength and its freezing point', () => {
  const found = derived().of('freezing');
  const freezes = freezingPointC('flooded-antimony', 75.4);
  const tenth = (x: number) => Number(x.toFixed(1));
  expect(inputs(found)).toEqual([
    ['month', 'December', ''],
    ['S, lowest of that month on the high-loss path', 75.4, '%'],
    ['SG at 26.7 °C', 1.229, ''],
    ['freezing point', tenth(freezes), '°C'],
    ['coldest to be reckoned with', 20, '°C'],
  ]);
  expect(found.result).toEqual({ value: tenth(20 - freezes), unit: 'K' });
  expect(found.sources.slice(1)).toEqual([
    'density of sulfuric acid: NCAR CARMA sulfate_utils',
    'TM 5-3820-256-24-4, table 2 (80 °F)',
    'the room’s temperature as given',
  ]);
  expect(found.caveat).toBeUndefined();
  expect(
    derived({ ...OWN, care: 'visits' })
      .of('freezing')
      .sources.at(-1),
  ).toBe('made up for the test');
});

test('a strong acid has a bound for its freezing point, and the margin is at least that', () => {
  const kept = derived(battery('agm', 12, { care: 'visits', selfDischargePctPerMonth: exactly(0) })).of('freezing');
  // Full throughout: 1.297, and of the months of the rest January has the lowest design low, −34 °C.
  expect(specificGravity('agm', 100)).toBeCloseTo(1.297, 9);
  expect(inputs(kept)).toEqual([
    ['month', 'January', ''],
    ['S, lowest of that month on the high-loss path', 100, '%'],
    ['SG at 26.7 °C', 1.297, ''],
    ['freezing point', 'below −50 °C', ''],
    ['coldest to be reckoned with', -34, '°C'],
  ]);
  expect(kept.result).toMatchObject({ value: expect.stringMatching(/^at least \d+(?:\.\d)? degrees$/), unit: '' });
  expect(kept.caveat).toBe(
    'Acid above 34 % by mass: no published freezing point is used, only that it lies below −50 °C.',
  );
});

test('without acid the margin is to the lowest storage temperature', () => {
  const lithium = battery('lifepo4', 12, {
    care: 'visits',
    startPct: exactly(55),
    selfDischargePctPerMonth: exactly(1),
  });
  const found = derived(lithium).of('freezing');
  expect(found.equation).toBe('margin = coldest to be reckoned with − lowest storage temperature');
  expect(inputs(found)).toEqual([
    ['coldest to be reckoned with', -34, '°C'],
    ['lowest storage temperature', -40, '°C'],
    ['month', 'January', ''],
  ]);
  expect(found.result).toEqual({ value: 6, unit: 'K' });
  expect(found.caveat).toMatch(/^There is no water in it to freeze and burst the case; /);
});

// Wet table at 26.7 °C: 12.65 V full, 12.45 V at 75 %. At 20 °C, 4.4 of the 11.1 K from 15.6 to 26.7 °C: −16 + 6.3 = −9.7 mV.
test('the voltage: at full and at the threshold, and what is open about a reading', () => {
  const found = derived().of('voltage');
  expect(inputs(found)).toEqual([
    ['temperature', 20, '°C'],
    ['full', 12.64, 'V'],
    ['at the threshold of 75 %', 12.44, 'V'],
  ]);
  expect(found.result).toEqual({ value: '± 6', unit: '% for a rested reading' });
  expect(found.sources[1]).toBe('rest before a reading, 3 h, better 8 h: TM 9-6115-730-24, WP 0050');
  expect(found.caveat).toBeUndefined();
  const lithium = battery('lifepo4', 12, { care: 'visits', startPct: exactly(55) });
  expect(derived(lithium).of('voltage').caveat).toMatch(/^The voltage is flat over most of the charge: /);
});

test('the voltage of the last reading that is used, with what it left open', () => {
  const read = (date: string, pct: number, restedH = 12) => ({
    date,
    volts: openCircuitVoltage('flooded-antimony', pct, 5),
    temperatureC: 5,
    restedH,
  });
  const log = [read('2026-11-20', 80), read('2026-11-25', 79), read('2026-11-28', 70, 1)];
  const all = household([machine('Moth', 'shed', { battery: OWN, season: EIGHTY, readings: log })], ROOM);
  const plan = planBatteries(all, '2026-12-01', contexts(all)).plans.get('Moth')!;
  const found = plan.derivations.find((d) => d.method === 'battery.voltage')!;
  expect(inputs(found)[0]).toEqual(['temperature', 5, '°C']);
  expect(inputs(found).slice(3)).toEqual([
    ['last reading', log[1]!.volts, 'V'],
    ['read on', '2026-11-25', ''],
  ]);
  expect(found.result).toEqual({ value: '79 ± 6', unit: '%' });
  const multiplier = inputs(plan.derivations[0]!).find(([name]) => name === 'multiplier from readings')![1];
  expect(multiplier).toBe(Number(plan.calibration!.multiplier.toFixed(3)));
});

test('what is not charged has no first charge and no amount to derive', () => {
  const keeper = { id: 'k', name: 'k', currentA: 0.8, chemistries: LEAD, maintainer: true };
  const kept = derived({ ...OWN, care: 'maintainer' }, { placeId: 'garage' }, { chargers: [keeper] });
  expect(kept.plan.derivations.map((d) => d.method)).toEqual([
    'battery.self-discharge',
    'battery.freezing',
    'battery.voltage',
  ]);
});
