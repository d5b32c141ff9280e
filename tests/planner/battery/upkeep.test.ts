/** A battery on a maintainer that does not read full: what is said, what its path does, and when the maintainer is trusted again. */
import { expect, test } from 'vitest';
import { planBatteries } from '../../../src/planner/battery/index.ts';
import type { Battery, Household, Machine, Reading } from '../../../src/planner/household.ts';
import type { BatteryPlan } from '../../../src/planner/season-plan.ts';
import { battery, COLD_LOW, contexts, household, LEAD, machine, ranged, sineStore } from './world.ts';

const SEASON = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] };
const KEEPER = { id: 'keeper', name: 'Keeper', currentA: 0.8, chemistries: LEAD, maintainer: true };
const BENCH = { id: 'bench', name: 'Bench', currentA: 1, chemistries: LEAD, maintainer: false };
/** Nothing freezes here, so that only the maintainer is told of. */
const MILD = {
  store: sineStore(15, 8, 3),
  low: { ...COLD_LOW, designC: COLD_LOW.designC.map(() => 5), typicalC: COLD_LOW.typicalC.map(() => 7) },
};

/** At 26.7 °C the table of a wet battery reads 12.65 V full, 12.45 V at 75 % and 12.24 V at 50 %. */
const read = (date: string, volts: number, restedH = 12): Reading => ({ date, volts, temperatureC: 26.7, restedH });

function planned(
  record: Partial<Machine>,
  asOf = '2026-12-20',
  own: Partial<Battery> = {},
  chargers = [KEEPER],
  more: Partial<Household> = {},
  weather = MILD,
) {
  const moth = machine('Moth', 'garage', {
    battery: battery('flooded-antimony', 12, { care: 'maintainer', ...own }),
    season: SEASON,
    ...record,
  });
  const home = household([moth], { chargers, ...more });
  const found = planBatteries(home, asOf, contexts(home, weather.store, weather.low));
  const plan = found.plans.get('Moth') as BatteryPlan;
  const on = (path: 'low' | 'expected' | 'high', date: string) =>
    plan.paths![path].find((day) => day.date === date)!.stateOfChargePct;
  const said = found.warnings.filter(({ text }) => /maintainer/.test(text));
  return { ...found, plan, on, said };
}

const FALLING = [read('2026-12-05', 12.38), read('2026-12-19', 12.3)];

test('readings that are low and fall are warned of, with what it may be and what to do', () => {
  const { said } = planned({ readings: FALLING });
  // 12.38 V: 50 + 25 · 0.14/0.21 = 66.7 %; 12.30 V: 50 + 25 · 0.06/0.21 = 57.1 %. A full one: 12.65 V.
  expect(said).toEqual([
    {
      machine: 'Moth',
      about: 'battery',
      level: 'warning',
      text: "Moth's battery is on a maintainer, and is not kept full: it read 12.38 V on 5 December 2026 (about 67 %) and 12.30 V on 19 December 2026 (about 57 %), and it falls; at or under 75 % a battery has to be charged. One that is kept reads about 12.65 V at that temperature. Either the maintainer gives nothing (switched off, unplugged, fuse or socket dead, faulty, a clip loose), or the battery fails.",
      act: 'Look today at mains, plug, lamp and clips, tight on clean posts: at work it holds the posts above 13 V. Charge the battery full with a proper charger, let it rest 8 h, read it again and write both down. Still low: have it load-tested, and replaced if it fails.',
    },
  ]);
});

test('its path is full up to the first low reading, goes through the readings and falls on to the charge', () => {
  const { plan, on } = planned({ readings: FALLING }, '2026-12-22');
  for (const path of ['low', 'expected', 'high'] as const) {
    expect(on(path, '2026-12-04')).toBe(100);
    expect(on(path, '2026-12-05')).toBeCloseTo(50 + (25 * 0.14) / 0.21, 9);
    expect(on(path, '2026-12-19')).toBeCloseTo(50 + (25 * 0.06) / 0.21, 9);
    expect(on(path, '2026-12-21')).toBeLessThan(50 + (25 * 0.06) / 0.21);
    expect(on(path, '2026-12-22')).toBe(100);
    expect(on(path, '2027-01-22')).toBeLessThan(100);
  }
  expect(plan.notKeptSince).toBe('2026-12-05');
  expect(plan.firstMonthLossPct.expected).toBeGreaterThan(0);
  expect(plan.careReason).toMatch(
    / By what was read, the maintainer does not keep it full: from 5 December 2026 on it is reckoned without one and with its negative lead off, until a rested reading shows it full\.$/,
  );
});

test('it is charged at once, on another charger where there is one', () => {
  const { plan, trips } = planned({ readings: FALLING }, '2026-12-22');
  expect(plan.charges[0]).toMatchObject({
    date: '2026-12-22',
    earliest: '2026-12-05',
    expected: '2026-12-05',
    chargerId: 'keeper',
    why: 'It read 12.38 V on 5 December 2026, and a maintainer is to keep it full: charge it to the end, and read it again once it has rested.',
  });
  expect(trips[0]!.date).toBe('2026-12-22');
  expect(planned({ readings: FALLING }, '2026-12-22', {}, [KEEPER, BENCH]).plan.charges[0]!.chargerId).toBe('bench');
});

// A wet reading leaves 6 % open, 9 % after a short rest. 12.482 V is 79 %: with 6 % the 85 % of one that was charged to the end.
test.each<[string, Reading, boolean]>([
  ['full', read('2026-12-05', 12.65), false],
  ['just full enough', read('2026-12-05', 12.49), false],
  ['just too low', read('2026-12-05', 12.48), true],
  ['the same after a short rest, which leaves more open', read('2026-12-05', 12.48, 4), false],
  ['the threshold after a short rest', read('2026-12-05', 12.45, 4), true],
  ['low without any rest: a charger only lifts a voltage', read('2026-12-05', 12.4, 0), true],
  ['under charge', read('2026-12-05', 13.5, 0), false],
  ['one cell short', read('2026-12-05', 10.55), true],
  ['no voltage of a battery', read('2026-12-05', 1.2), false],
  ['low on a day to come', read('2026-12-21', 12.3), false],
  ['low before the rest', read('2026-10-24', 12.3), false],
])('a reading %s', (_, reading, low) => {
  const { plan, said } = planned({ readings: [reading] });
  expect([plan.notKeptSince !== undefined, said.length > 0, plan.charges.length > 0]).toEqual([low, low, low]);
});

test('lithium is warned of where it surely reads less than it is best kept at', () => {
  const keeper = { ...KEEPER, chemistries: ['lifepo4' as const] };
  const lithium = (volts: number) => {
    const own = battery('lifepo4', 12, { care: 'maintainer' });
    return planned({ readings: [read('2026-12-05', volts)], battery: own }, '2026-12-20', {}, [keeper]).plan;
  };
  // 29.72 % is 4 · 3.2772 V, and 20 % are open: 49.72 % is under the 50 % it is kept at. 13.12 V is 32 %.
  expect(lithium(13.1).notKeptSince).toBe('2026-12-05');
  expect(lithium(13.12).notKeptSince).toBeUndefined();
});

test('a charge alone does not bring the trust back, a full reading does', () => {
  const charged = [{ date: '2026-12-22', toPct: 100 }];
  const after = planned({ readings: FALLING, charged }, '2026-12-28');
  expect(after.said).toEqual([
    expect.objectContaining({
      level: 'note',
      text: expect.stringMatching(
        /and read 12\.38 V on .* and 12\.30 V on .*; it was charged on 22 December 2026, and not read since\.$/,
      ),
      act: expect.stringMatching(/^A week later take the maintainer off, let the battery rest 8 h, read it/),
    }),
  ]);
  expect(after.plan.notKeptSince).toBe('2026-12-05');
  expect(after.on('expected', '2026-12-22')).toBe(100);
  expect(after.on('expected', '2027-02-20')).toBeLessThan(100);
  // Its next charge is the second of the rest, and by its loss.
  expect(after.plan.charges.every((c) => c.occurrence! > 1 && /^At its fastest loss/.test(c.why))).toBe(true);

  const full = planned({ readings: [...FALLING, read('2026-12-29', 12.63)], charged }, '2026-12-30');
  expect([full.said, full.plan.notKeptSince, full.plan.charges]).toEqual([[], undefined, []]);
  // What was is still so.
  expect(full.on('expected', '2026-12-19')).toBeCloseTo(50 + (25 * 0.06) / 0.21, 9);
  expect(full.on('expected', '2026-12-28')).toBeLessThan(100);
  expect(full.on('high', '2027-04-10')).toBe(100);

  const again = planned({ readings: [...FALLING, read('2026-12-29', 12.3)], charged }, '2026-12-30');
  expect(again.said[0]).toMatchObject({ level: 'warning' });
  expect(again.plan.charges[0]).toMatchObject({ date: '2026-12-30', earliest: '2026-12-29' });
});

test('in the first weeks the maintainer may be filling it still, and that is said', () => {
  const said = (date: string) => planned({ readings: [read(date, 12.3)] }).said[0]!.text;
  expect(said('2026-11-15')).toMatch(/If the maintainer has only just gone on, it is still to fill it/);
  expect(said('2026-11-16')).not.toMatch(/only just/);
});

test('a rate read while it was not kept is learnt from those days alone', () => {
  expect(planned({ readings: [read('2026-12-05', 12.38)] }).plan.calibration).toBeUndefined();
  const quick = planned({ readings: [read('2026-12-05', 12.45), read('2026-12-15', 12.0)] }).plan.calibration!;
  expect(quick.readings).toBe(2);
  expect(quick.multiplier).toBeGreaterThan(3);
});

// 30 mA take 0.72 Ah a day, a quarter of 12 Ah in four days: nobody charges twice a week what an open lead empties. Common practice.
test('one that is not kept is reckoned with its lead off, and that is asked for', () => {
  const drain = ranged(3, 1, 30);
  const { plan, warnings } = planned({ readings: [read('2027-01-18', 11.9)] }, '2027-01-20', { drainMA: drain });
  expect(plan.charges.length).toBeLessThanOrEqual(2);
  expect(warnings.filter(({ level }) => level !== 'note')).toHaveLength(1);
  expect(warnings[0]!.act).toMatch(/Until it holds, take the negative lead off: its later charges are reckoned so\.$/);
});

test('with a lead that has to stay on, the many charges that come late are told in one warning', () => {
  const drain = { drainMA: ranged(3, 1, 30), connected: true };
  const days = { monday: 0, tuesday: 0, wednesday: 0, thursday: 0, friday: 0, saturday: 4, sunday: 4 };
  const { plan, warnings } = planned({ readings: [read('2027-01-18', 11.9)] }, '2027-01-20', drain, [KEEPER], {
    hoursByWeekday: days,
  });
  expect(plan.charges.length).toBeGreaterThan(8);
  const late = warnings.filter(({ text }) => /is due by|come late/.test(text));
  expect(late).toHaveLength(1);
  expect(late[0]!.text).toMatch(/^\d+ charges of Moth's battery, from .* to .*, come late/);
  expect(late[0]!.act).toMatch(/take its negative lead off/);
  expect(warnings.find(({ text }) => /is not kept full/.test(text))!.act).toMatch(/lasts only days with the leads on/);
});

test('a battery that is not kept is not said to be full when its cold is warned of', () => {
  const cold = { ...COLD_LOW, designC: COLD_LOW.designC.map(() => -22), typicalC: COLD_LOW.typicalC.map(() => -15) };
  const at = (readings: Reading[]) =>
    planned({ readings }, '2026-12-20', {}, [KEEPER], undefined, { ...MILD, low: cold })
      .warnings.filter(({ text }) => /must be reckoned with/.test(text))
      .map(({ act }) => act)
      .join();
  expect(at([])).toBe('');
  expect(at([read('2026-12-19', 12.0)])).not.toMatch(/Only full|maintainer works/);
  expect(at([read('2026-12-19', 12.0)])).not.toBe('');
});
