import { expect, test } from 'vitest';
import type { Machine, Tyre } from '../../../src/planner/household.ts';
import { atmosphereKPa, planTyres, pressureAt, shareLeft } from '../../../src/planner/tyres/index.ts';
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

test('temperatures, pressures and heights beyond those of a tyre are refused on either side, and their ends are not', () => {
  for (const height of [-501, 11_001, Number.NaN]) expect(() => atmosphereKPa(height)).toThrow(/−500 to 11 000 m/);
  // ICAO standard atmosphere, table of pressures: 107.48 kPa and 22.63 kPa.
  expect(atmosphereKPa(-500)).toBeCloseTo(107.48, 1);
  expect(atmosphereKPa(11_000)).toBeCloseTo(22.63, 1);
  for (const gauge of [-102, 2001]) expect(() => pressureAt(gauge, 20, 0)).toThrow(/2000 kPa gauge/);
  expect(pressureAt(2000, 20, 20)).toBeCloseTo(2000, 9);
  expect(pressureAt(-100, 20, 20, 100)).toBeCloseTo(-100, 9);
  for (const [from, to] of [
    [-273.15, 0],
    [0, -273.15],
    [200, 0],
    [0, 200],
  ] as const)
    expect(() => pressureAt(200, from, to)).toThrow(/temperatures of a tyre/);
  for (const t of [-100, 100]) expect(() => shareLeft([t])).toThrow(/store temperature/);
});

test('a tyre set in the cool to its maximum is said to go beyond it on the hottest day, and by how much', () => {
  const warmer = (range: number) => plan(rest('2027-01-16', '2027-12-10'), storeYear(10, range, 0));
  const { plan: tyres, warnings } = warmer(30);
  // Gay-Lussac's law between the two days: some 60 K warmer, some 80 kPa more, over a tenth of 290 kPa.
  const [coolK, hotK] = [tyres[0]!.lookIn[0]!.temperatureC + 273.15, tyres[0]!.lookIn.at(-1)!.temperatureC + 273.15];
  expect(hotK - coolK).toBeGreaterThan(50);
  const hot = warnings.find((w) => /hottest day/.test(w.text))!;
  const [stands, more] = [hot.text, hot.act].map((text) => Math.round(100 * Number(/([\d.]+) bar/.exec(text)![1])));
  expect(Math.abs(stands! - more! - 290)).toBeLessThanOrEqual(1);
  expect((stands! + 101) / (290 + 101)).toBeGreaterThan(1.15);
  expect((stands! + 101) / (290 + 101)).toBeLessThan((hotK + 5) / (coolK - 5));
  expect(warmer(3).warnings.some((w) => /hottest day/.test(w.text))).toBe(false);
  const normal = plan(
    { ...rest('2027-01-16', '2027-12-10'), chassis: chassis({ offGround: true }) },
    storeYear(10, 30, 0),
  );
  expect(normal.warnings.some((w) => /hottest day/.test(w.text))).toBe(false);
});

test('the look-in table goes by 5 K, and by 10 K where the store runs through more than 40 K', () => {
  const steps = (range: number) => {
    const rows = plan(rest('2026-10-25', '2027-10-24'), storeYear(10, range, 0)).plan[0]!.lookIn;
    return new Set(rows.slice(1).map((row, i) => row.temperatureC - rows[i]!.temperatureC));
  };
  expect(steps(10)).toEqual(new Set([5]));
  expect(steps(30)).toEqual(new Set([10]));
});

test('what stands on its tyres is to be lifted, and moved where the rest is longer than three months', () => {
  const acts = (firstUse: string) =>
    plan(rest('2026-10-25', firstUse))
      .warnings.filter((w) => /stands on its tyres/.test(w.text))
      .map((w) => w.act);
  expect(acts('2027-01-10')).toEqual(['Better on a stand with the weight off.']);
  expect(acts('2027-04-10')).toEqual([expect.stringContaining('move it every 3 months')]);
  const known = plan({ tyres: [tyre({ sidewallMaxKPa: undefined })], chassis: chassis({ offGround: true }) });
  expect(known.warnings).toEqual([]);
});

test('set and expected pressure have their derivations', () => {
  const {
    plan: [front],
  } = plan();
  const results = front!.derivations.map((d) => d.result.value);
  expect(results).toEqual([front!.setKPa, front!.expectedAtStartUpKPa]);
  expect(front!.derivations.filter((d) => d.sources.length === 0)).toEqual([]);
  const inputs = front!.derivations.map((d) => new Map(d.inputs.map((input) => [input.name, input])));
  expect(inputs[0]!.get('normal pressure')).toMatchObject({ value: 220, unit: 'kPa' });
  expect(inputs[0]!.get('stands on its tyres')).toMatchObject({ value: 'yes' });
  expect(inputs[1]!.get('set at lay-up, p1')).toMatchObject({ value: 290, unit: 'kPa' });
  // Pressure at start-up by the equation it names, from the inputs it lists: ideal gas in kelvin, less the leakage.
  const of = (start: string) => Number([...inputs[1]!].find(([name]) => name.startsWith(start))![1].value);
  const kelvin = (start: string) => of(start) + 273.15;
  const absolute = of('set at lay-up') * of('share left after leaking') + of('air pressure');
  expect(
    (absolute * kelvin('store on the day of first use')) / kelvin('store on the lay-up day') - of('air pressure'),
  ).toBeCloseTo(front!.expectedAtStartUpKPa, 9);
});

test('what holds for both tyres is said once, with both positions', () => {
  const pair = ['front', 'rear'].map((position) => tyre({ position, madeYear: 2018 }));
  const texts = plan({ tyres: pair }).warnings.map((w) => w.text);
  expect(texts.filter((text) => /years old/.test(text))).toEqual(['Tyres front and rear: 9 years old at first use.']);
  const one = plan({ tyres: [tyre({ position: 'front', madeYear: 2018 }), tyre({ position: 'rear' })] });
  expect(one.warnings.map((w) => w.text)).toContain('Tyres front: 9 years old at first use.');
});
