import { expect, test } from 'vitest';
import type { Machine, Tyre } from '../../../src/planner/household.ts';
import { planTyres, pressureAt, shareLeft } from '../../../src/planner/tyres/index.ts';
import { household, machine, place, storeYear } from '../fluids/fixture.ts';

const chassis = (over: Partial<Machine['chassis']>) => ({ ...machine().chassis, ...over });
const tyre = (over: Partial<Tyre> = {}): Tyre => ({
  position: 'front',
  count: 1,
  pressureKPa: 220,
  sidewallMaxKPa: 290,
  ...over,
});
const rest = (lastUse: string, firstUse: string) => ({ season: { lastUse, firstUse, proposed: false, reasons: [] } });

function plan(over: Partial<Machine> = {}, store = storeYear(), where = place()) {
  return planTyres({ machine: machine(over), place: where, store, household: household() });
}

test('a machine that stands on its tyres is pumped up to the sidewall maximum and moved every three months', () => {
  const {
    plan: [front],
  } = plan();
  expect(front).toMatchObject({ setKPa: 290, normalKPa: 220, standsOnTyres: true, moveEveryMonths: 3 });
});

test('on a stand the normal pressure is kept and nothing is moved', () => {
  const {
    plan: [front],
    warnings,
  } = plan({ chassis: chassis({ offGround: true }) });
  expect(front).toMatchObject({ setKPa: 220, standsOnTyres: false });
  expect(front!.moveEveryMonths).toBeUndefined();
  expect(warnings).toEqual([]);
});

test('without a known sidewall maximum the normal pressure is kept, and the sidewall is to be read', () => {
  const {
    plan: [front],
    warnings,
  } = plan({ tyres: [tyre({ sidewallMaxKPa: undefined })] });
  expect(front!.setKPa).toBe(220);
  expect(warnings.some((w) => w.act.includes('sidewall'))).toBe(true);
});

test('three weeks change neither pressure nor place', () => {
  const {
    plan: [front],
    warnings,
  } = plan(rest('2026-10-25', '2026-11-15'));
  expect(front!.setKPa).toBe(220);
  expect(front!.moveEveryMonths).toBeUndefined();
  expect(warnings).toEqual([]);
});

test('three years leak away most of what three winters do', () => {
  const one = plan(rest('2026-10-25', '2027-10-25')).plan[0]!;
  const three = plan(rest('2026-10-25', '2029-10-25')).plan[0]!;
  const left = (p: typeof one) => p.expectedAtStartUpKPa / p.setKPa;
  expect(left(three)).toBeCloseTo(left(one) ** 3, 2);
});

test('in a store of one temperature the start-up pressure is the set pressure less the leakage', () => {
  const flat = storeYear(20, 0, 0);
  const {
    plan: [front],
  } = plan({ chassis: chassis({ offGround: true }), ...rest('2026-10-25', '2027-10-25') }, flat);
  // 1 % a month for twelve months.
  expect(front!.expectedAtStartUpKPa).toBeCloseTo(220 * Math.exp(-0.01 * (365 / 30.4375)), 6);
});

test('the look-in table covers the store from its coldest to its hottest hour and rises with temperature', () => {
  const {
    plan: [front],
  } = plan();
  const temperatures = front!.lookIn.map((row) => row.temperatureC);
  expect(temperatures[0]!).toBeLessThanOrEqual(-17);
  expect(temperatures.at(-1)!).toBeGreaterThanOrEqual(5);
  const pressures = front!.lookIn.map((row) => row.expectedKPa);
  expect(pressures.slice(1).every((p, i) => p > pressures[i]!)).toBe(true);
  expect(new Set(temperatures.slice(1).map((t, i) => t - temperatures[i]!)).size).toBe(1);
});

test('a soft tyre that the cold empties is a warning', () => {
  const quad = { kind: 'quad' as const, tyres: [tyre({ pressureKPa: 30, sidewallMaxKPa: undefined })] };
  expect(plan(quad, storeYear(3, 30, 15)).warnings.some((w) => w.text.includes('bead'))).toBe(true);
  expect(plan(quad, storeYear(15, 3, 5)).warnings.some((w) => w.text.includes('bead'))).toBe(false);
});

test('a tyre of ten years is replaced, one of six is looked at', () => {
  expect(plan({ tyres: [tyre({ madeYear: 2017 })] }).warnings.some((w) => w.act.startsWith('Replace'))).toBe(true);
  expect(plan({ tyres: [tyre({ madeYear: 2021 })] }).warnings.some((w) => w.act.startsWith('Look'))).toBe(true);
  expect(plan({ tyres: [tyre({ madeYear: 2024 })] }).warnings.some((w) => /years old/.test(w.text))).toBe(false);
});

test('a machine on a track has no tyre plan', () => {
  expect(plan({ kind: 'snow-machine', tyres: [], chassis: chassis({ track: true }) })).toEqual({
    plan: [],
    warnings: [],
  });
});

test('high up the air outside is thinner, so the gauge falls less with the cold', () => {
  const high = place();
  const climate = { ...high.climate, elevationM: 2000 };
  const atSea = plan().plan[0]!.lookIn[0]!.expectedKPa;
  const above = plan({}, storeYear(), { ...high, climate } as typeof high).plan[0]!.lookIn[0]!.expectedKPa;
  expect(above).toBeGreaterThan(atSea);
});

test('nonsense is refused in words', () => {
  expect(() => pressureAt(Number.NaN, 20, 0)).toThrow(/expected/);
  expect(() => pressureAt(200, -300, 0)).toThrow(/temperature/);
  expect(() => shareLeft([Number.NaN])).toThrow(/temperature/);
  expect(() => plan(rest('2026-10-25', '2026-10-25'))).toThrow(/at least one day/);
});

test('set and expected pressure have their derivations', () => {
  const {
    plan: [front],
  } = plan();
  const results = front!.derivations.map((d) => d.result.value);
  expect(results).toEqual([front!.setKPa, front!.expectedAtStartUpKPa]);
  expect(front!.derivations.filter((d) => d.sources.length === 0)).toEqual([]);
});

test('what holds for both tyres is said once, with both positions', () => {
  const pair = ['front', 'rear'].map((position) => tyre({ position, madeYear: 2018 }));
  const texts = plan({ tyres: pair }).warnings.map((w) => w.text);
  expect(texts.filter((text) => /years old/.test(text))).toEqual(['Tyres front and rear: 9 years old at first use.']);
  const one = plan({ tyres: [tyre({ position: 'front', madeYear: 2018 }), tyre({ position: 'rear' })] });
  expect(one.warnings.map((w) => w.text)).toContain('Tyres front: 9 years old at first use.');
});
