/** Tyres at their borders: lengths of rest, ages, pressures, the look-in table, and what is said at each. */
import { expect, test } from 'vitest';
import { addDays } from '../../../src/planner/dates.ts';
import type { Machine, Tyre } from '../../../src/planner/household.ts';
import { planTyres, pressureAt } from '../../../src/planner/tyres/index.ts';
import { household, machine, place, storeYear } from '../fluids/fixture.ts';

const tyre = (over: Partial<Tyre> = {}): Tyre => ({
  position: 'front',
  count: 1,
  pressureKPa: 220,
  sidewallMaxKPa: 290,
  ...over,
});

/** Rests from 25 October 2026, in a store of 20 °C all year unless another is given. */
function told(days: number, over: Partial<Machine> = {}, store = storeYear(20, 0, 0)) {
  const season = { lastUse: '2026-10-25', firstUse: addDays('2026-10-25', days), proposed: false, reasons: [] };
  const found = planTyres({
    machine: machine({ season, tyres: [tyre()], ...over }),
    place: place(),
    store,
    household: household(),
  });
  return { first: found.plan[0]!, ...found };
}
const OFF_GROUND = { chassis: { ...machine().chassis, offGround: true } };
const STANDS = 'The machine stands on its tyres over the rest.';

test('four weeks are long enough to pump up and to lift, a day less is not', () => {
  expect(told(28).first).toMatchObject({ setKPa: 290, standsOnTyres: true });
  expect(told(27).first).toMatchObject({ setKPa: 220, standsOnTyres: true });
  expect(told(28).warnings.map((w) => [w.level, w.text, w.act, w.machine, w.about])).toEqual([
    ['note', STANDS, 'Better on a stand with the weight off.', 'juniper', 'tyres'],
  ]);
  expect(told(27).warnings).toEqual([]);
  expect(told(28, OFF_GROUND).first).toMatchObject({ setKPa: 220, standsOnTyres: false });
  expect(told(1).first.setKPa).toBe(220);
});

test('more than ninety days are long enough to be moved every three months', () => {
  expect(told(90).first.moveEveryMonths).toBeUndefined();
  expect(told(91).first.moveEveryMonths).toBe(3);
  expect(told(91, OFF_GROUND).first.moveEveryMonths).toBeUndefined();
  const act = (days: number) => told(days).warnings[0]!.act;
  expect(act(90)).toBe('Better on a stand with the weight off.');
  expect(act(91)).toBe(
    'Better on a stand with the weight off; else move it every 3 months, so that it stands on another part.',
  );
});

// Ideal gas, by hand: 20 kPa set at −9 °C are (20 + 101)·213/264 − 101 = −3 kPa at −60 °C; no tyre holds less than the air outside.
test('a soft tyre in a bitter cold stands flat, and never under the air outside', () => {
  const soft = { tyres: [tyre({ pressureKPa: 20, sidewallMaxKPa: undefined })] };
  const { first } = told(182, soft, storeYear(0, 60, 0));
  expect(Math.min(...first.lookIn.map((row) => row.expectedKPa))).toBe(0);
  expect(first.expectedAtStartUpKPa).toBeGreaterThanOrEqual(0);
});

test('a sidewall maximum under the normal pressure does not lower it', () => {
  expect(told(60, { tyres: [tyre({ sidewallMaxKPa: 200 })] }).first.setKPa).toBe(220);
});

test('a sidewall that nobody has read is asked for where it would be pumped up to', () => {
  const unread = { tyres: [tyre({ sidewallMaxKPa: undefined })] };
  const asked = (days: number, over: Partial<Machine> = {}) =>
    told(days, { ...unread, ...over }).warnings.filter((w) => /sidewall/.test(w.text));
  expect(asked(28)).toMatchObject([
    {
      level: 'note',
      text: 'Tyres front: the maximum on the sidewall is not known, so the normal pressure is kept.',
      act: 'Read it off the sidewall and stay below it (sidewallMax in the machine’s file).',
    },
  ]);
  expect(asked(27)).toEqual([]);
  expect(asked(28, OFF_GROUND)).toEqual([]);
});

// BRMA 2001: looked at from six years, replaced at ten. First use lies in 2027.
test('age counts in years at first use: five nothing, six to nine looked at, ten replaced', () => {
  const age = (madeYear: number) =>
    told(200, { tyres: [tyre({ madeYear })], ...OFF_GROUND }).warnings.map((w) => [w.level, w.text, w.act]);
  const source = '(BRMA (2001): unused tyres not into service after 6 years, replaced at 10).';
  expect(age(2022)).toEqual([]);
  const look = `Look for cracks in the sidewall and between the blocks ${source}`;
  expect(age(2021)).toEqual([['note', 'Tyres front: 6 years old at first use.', look]]);
  expect(age(2018)).toEqual([['note', 'Tyres front: 9 years old at first use.', look]]);
  expect(age(2017)).toEqual([
    ['warning', 'Tyres front: 10 years old at first use.', `Replace them before first use ${source}`],
  ]);
});

test('three positions of one age are named in one sentence, a position given twice once', () => {
  const of = (...positions: string[]) =>
    told(200, { ...OFF_GROUND, tyres: positions.map((position) => tyre({ position, madeYear: 2021 })) }).warnings.map(
      (w) => w.text,
    );
  expect(of('front', 'rear', 'spare')).toEqual(['Tyres front, rear and spare: 6 years old at first use.']);
  expect(of('front', 'front')).toEqual(['Tyres front: 6 years old at first use.']);
});

// 1 % in 30.4375 days at 20 °C.
const left = (days: number) => Math.exp((-0.01 * days) / 30.4375);

test('at start-up all days have leaked, in the look-in table half of them', () => {
  const { first } = told(200);
  expect(first.expectedAtStartUpKPa).toBeCloseTo(290 * left(200), 9);
  expect(first.lookIn).toEqual([{ temperatureC: 20, expectedKPa: expect.closeTo(290 * left(100), 9) }]);
  expect(told(201).first.lookIn[0]!.expectedKPa).toBeCloseTo(290 * left(101), 9);
});

test('the look-in table runs from under the coldest to over the hottest, by 5 K up to a range of 40 K', () => {
  const rows = (mean: number, swing: number) =>
    told(60, {}, storeYear(mean, 0, swing)).first.lookIn.map((row) => row.temperatureC);
  expect(rows(20, 10)).toEqual([15, 20, 25]);
  expect(rows(20, 11)).toEqual([10, 15, 20, 25, 30]);
  expect(rows(0, 40)).toEqual([-20, -15, -10, -5, 0, 5, 10, 15, 20]);
  expect(rows(0, 42)).toEqual([-30, -20, -10, 0, 10, 20, 30]);
  const { lookIn } = told(200, {}, storeYear(20, 0, 10)).first;
  expect(lookIn.map((row) => row.expectedKPa)).toEqual(
    [15, 20, 25].map((c) => expect.closeTo(pressureAt(290 * left(100), 20, c, 101.325), 9)),
  );
});

test('only the days of the rest count for the coldest and the hottest, over the turn of the year and beyond a year', () => {
  const store = storeYear(20, 0, 0);
  const day = (index: number, c: number) => {
    store.dayMinC[index] = Math.min(c, 20);
    store.dayMaxC[index] = Math.max(c, 20);
  };
  // 25 October is day 297: the day before the rest, its last day (31 December, 364) and the day of first use (1 January).
  day(296, -40);
  day(0, 60);
  const rows = (days: number) => told(days, {}, store).first.lookIn.map((row) => row.temperatureC);
  expect(rows(68)).toEqual([20]);
  expect(rows(69)).toEqual([20, 25, 30, 35, 40, 45, 50, 55, 60]);
  expect(rows(364)).toEqual([20, 25, 30, 35, 40, 45, 50, 55, 60]);
  expect(rows(365)[0]).toBe(-40);
  expect(rows(800)[0]).toBe(-40);
});

// From 20 °C, 290 kPa and the air's 101.3: a tenth more, 319 kPa, stands at 41.7 °C: 420.3/391.3 of 293.15 K is 314.9 K.
test('a tyre set to its maximum is told where the hottest day brings more than a tenth above it', () => {
  const hot = (c: number, over: Partial<Machine> = {}) =>
    told(60, over, storeYear(20, 0, 2 * (c - 20))).warnings.filter((w) => /hottest/.test(w.text));
  expect(hot(41.6)).toEqual([]);
  const [note] = hot(42);
  expect(note).toMatchObject({ level: 'note' });
  // At 42 °C: 391.325 · 315.15/293.15 − 101.325 = 319.4 kPa, 3.19 bar.
  expect(note!.text).toMatch(
    /^Tyres front: set to the sidewall maximum in the cool, they stand at 3\.19 bar .* on the hottest day\.$/,
  );
  expect(note!.act).toMatch(/^Set them 0\.29 bar .* lower; the maximum is meant for a cold tyre\.$/);
  expect(hot(42, OFF_GROUND)).toEqual([]);
});

// 60 kPa at 20 °C, 1 % in a month lost: half of it, 30 kPa, stands where 161.3 kPa less the loss have become 131.3: near −54 °C.
test('a tyre that the cold brings under half of its pressure is warned of, one at half is not', () => {
  const soft = (mean: number, swing: number, kPa = 60) =>
    told(
      28,
      { ...OFF_GROUND, tyres: [tyre({ pressureKPa: kPa, sidewallMaxKPa: undefined })] },
      storeYear(mean, 0, swing),
    ).warnings;
  // 20 °C by day and −50 °C at night is 28 K to half; leaking a half month takes 0.3 kPa: (59.7 + 101.3)·223.15/293.15 − 101.3 = 21.2 kPa.
  expect(soft(20, 140)).toMatchObject([
    {
      level: 'warning',
      text: expect.stringMatching(
        /^Tyres front: in the coldest hour they stand at 0\.21 bar .*, less than half of normal, and the bead can let go\.$/,
      ),
      act: 'Take the weight off, or pump them up before the cold comes.',
    },
  ]);
  expect(soft(20, 100)).toEqual([]);
  // Less than nothing is said as nothing.
  expect(soft(20, 160, 20)[0]!.text).toMatch(/ they stand at 0\.00 bar /);
});

test('a machine with no day of rest is refused with its days', () => {
  expect(() => told(0)).toThrow('found a rest from 2026-10-25 to 2026-10-25, expected at least one day');
});

test('the derivations name what went in, and which practice holds', () => {
  const store = storeYear();
  const { first } = told(167, {}, store);
  const inputs = (i: number) => first.derivations[i]!.inputs.map(({ name, value, unit }) => [name, value, unit]);
  expect(inputs(0)).toEqual([
    ['normal pressure', 220, 'kPa'],
    ['sidewall maximum', 290, 'kPa'],
    ['stands on its tyres', 'yes', ''],
    ['length of the rest', 167, 'd'],
  ]);
  expect(first.derivations[0]!.caveat).toMatch(/^Sources disagree: /);
  const unknown = told(60, { ...OFF_GROUND, tyres: [tyre({ sidewallMaxKPa: undefined })] }).first.derivations[0]!;
  expect(unknown.inputs.slice(1, 3)).toMatchObject([
    { value: 'not known', unit: '' },
    { value: 'no', unit: '' },
  ]);
  expect(unknown.caveat).toBe('Gauge pressure, cold, at the store temperature of the lay-up day.');
  // 25 October is day 297 of the year, 10 April day 99.
  const days = Array.from({ length: 167 }, (_, n) => store.dayMeanC[(297 + n) % 365]!);
  expect(inputs(1).map(([, , unit]) => unit)).toEqual(['kPa', '°C', '°C', '', '', '°C', 'kPa']);
  expect(inputs(1).map(([name, value]) => [name, value])).toEqual([
    ['set at lay-up, p1', 290],
    ['store on the lay-up day, T1', store.dayMeanC[297]],
    ['store on the day of first use, T2', store.dayMeanC[99]],
    [
      'share left after leaking, L',
      expect.closeTo(Math.exp(-days.reduce((a, c) => a + (0.01 / 30.4375) * 2 ** ((c - 20) / 11), 0)), 12),
    ],
    [
      'share left at the middle of the rest (look-in table)',
      expect.closeTo(Math.exp(-days.slice(0, 84).reduce((a, c) => a + (0.01 / 30.4375) * 2 ** ((c - 20) / 11), 0)), 12),
    ],
    ['mean store temperature', expect.closeTo(days.reduce((a, b) => a + b, 0) / 167, 9)],
    ['air pressure at this height, patm', 101.325],
  ]);
});
