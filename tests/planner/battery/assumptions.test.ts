import { expect, test } from 'vitest';
import { planBatteries, rankAssumptions } from '../../../src/planner/battery/index.ts';
import type { AssumedField, Machine } from '../../../src/planner/household.ts';
import type { Enclosure } from '../../../src/planner/storage/types.ts';
import {
  battery,
  COLD_LOW,
  COLD_STORE,
  contexts,
  exactly,
  household,
  machine,
  place,
  ranged,
  sineStore,
} from './world.ts';

const assume = (target: string, value: number | string, low: number | string, high: number | string): AssumedField => ({
  field: target.replace('.value', ''),
  target,
  value,
  low,
  high,
  unit: '',
  reason: 'not given',
  settle: '',
});

const base = machine('a', 'shed', {
  season: { lastUse: '2026-04-05', firstUse: '2026-11-20', proposed: false, reasons: [] },
  battery: battery('flooded-antimony', 12, {
    startPct: ranged(95, 80, 100),
    drainMA: ranged(0.5, 0, 1),
    care: 'visits',
  }),
  assumptions: [
    assume('fuel.tankL', 17, 8, 26),
    assume('battery.removable', 'true', 'true', 'true'),
    assume('battery.drainMA.value', 0.5, 0, 1),
    assume('battery.startPct.value', 95, 80, 100),
    assume('battery.selfDischargePctPerMonth.value', 6, 3, 15),
    assume('battery.capacityAh', 12, 4, 20),
    assume('battery.chemistry', 'flooded-antimony', 'flooded-calcium', 'flooded-antimony'),
    assume('place.enclosure.gainK', 0, 0, 8),
  ],
});
const enclosure: Enclosure = { id: 'x', timeConstantH: 1, houseCoupling: 0, houseC: 20, gainK: 0, airChangesPerH: 1 };
const home = (m: Machine) => household([m], { places: [place('shed', { enclosure })] });
const storeFor = (e: Enclosure) => ({ store: sineStore(4 + e.gainK, 16, 4), designLow: COLD_LOW });
const context = { store: COLD_STORE, designLow: COLD_LOW, storeFor };
const ranked = rankAssumptions(base, context, home(base));
const of = (field: string) => ranked.find((a) => a.field === field)!;

test('every assumption is listed once, the one that moves the first charge most first', () => {
  expect(ranked.map((a) => a.field).sort()).toEqual(base.assumptions.map((a) => a.field).sort());
  const shifts = ranked.map((a) => Math.abs(a.firstChargeShiftDays));
  expect(shifts).toEqual([...shifts].sort((a, b) => b - a));
  expect(shifts[0]).toBeGreaterThan(0);
});

test('what does not touch the battery moves nothing', () => {
  for (const field of ['fuel.tankL', 'battery.removable'])
    expect(of(field)).toMatchObject({
      firstChargeShiftDays: 0,
      marginShiftK: { low: 0, high: 0 },
      visitsShift: { low: 0, high: 0 },
    });
});

test('a lead that is off makes the drain and the capacity matter nothing to the date', () => {
  expect(of('battery.drainMA').firstChargeShiftDays).toBe(0);
  expect(of('battery.capacityAh').firstChargeShiftDays).toBe(0);
});

test('settling a value gives the date that the plan then has', () => {
  const settled = (change: Partial<NonNullable<Machine['battery']>>) => {
    const m = { ...base, battery: { ...base.battery!, ...change } };
    return planBatteries(home(m), '2026-04-01', contexts(home(m))).plans.get('a')!.charges[0]?.earliest ?? null;
  };
  expect(of('battery.selfDischargePctPerMonth').firstChargeAt).toEqual({
    low: settled({ selfDischargePctPerMonth: exactly(3) }),
    high: settled({ selfDischargePctPerMonth: exactly(15) }),
  });
  expect(of('battery.startPct').firstChargeAt).toEqual({
    low: settled({ startPct: exactly(80) }),
    high: settled({ startPct: exactly(100) }),
  });
});

test('a logged charge counts: the dates are those of the charge after it', () => {
  const charged = { ...base, charged: [{ date: '2026-06-10', toPct: 100 }] };
  const found = rankAssumptions(charged, { ...context, asOf: '2026-06-11' }, home(charged));
  const start = found.find((a) => a.field === 'battery.startPct')!;
  expect(start.firstChargeShiftDays).toBe(0);
  expect(start.firstChargeAt.low).toBe(
    planBatteries(home(charged), '2026-06-11', contexts(home(charged))).plans.get('a')!.charges[0]!.earliest,
  );
});

test('a lower loss moves the first charge later and saves visits', () => {
  const self = of('battery.selfDischargePctPerMonth');
  expect(self.firstChargeShiftDays).toBeGreaterThan(0);
  expect(self.visitsShift.low).toBeLessThan(0);
  expect(of('battery.chemistry').firstChargeShiftDays).toBeGreaterThan(0);
});

test('an assumption of the place is tried by running the store again', () => {
  expect(of('place.enclosure.gainK').firstChargeShiftDays).toBeLessThan(0);
  const without = rankAssumptions(base, { store: COLD_STORE, designLow: COLD_LOW }, home(base));
  expect(without.find((a) => a.field === 'place.enclosure.gainK')!.firstChargeShiftDays).toBe(0);
});

test('a date that does not come before first use is null and counts as first use', () => {
  const winter = { ...base, season: { ...base.season, lastUse: '2026-10-25', firstUse: '2027-04-10' } };
  const start = rankAssumptions(winter, context, home(winter)).find((a) => a.field === 'battery.startPct')!;
  expect(start.firstChargeAt.high).toBeNull();
  expect(start.firstChargeAt.low).not.toBeNull();
  expect(start.firstChargeShiftDays).toBeLessThan(-20);
});

test('a machine without a battery keeps its list', () => {
  const bare = { ...base, battery: undefined };
  expect(rankAssumptions(bare, context, home(bare)).map((a) => a.firstChargeShiftDays)).toEqual(
    base.assumptions.map(() => 0),
  );
});

/** The plan made with one value settled, against which the ranking is held. */
function planned(m: Machine, change: Partial<NonNullable<Machine['battery']>>, asOf = '2026-04-01') {
  const settled = { ...m, battery: { ...m.battery!, ...change } };
  const plan = planBatteries(home(settled), asOf, contexts(home(settled))).plans.get('a')!;
  return { charges: plan.charges.length, minK: plan.freezingMargin.minK, first: plan.charges[0]?.earliest ?? null };
}

test('margins and visits shift as those of the plans with the value settled', () => {
  const now = planned(base, {});
  for (const [field, low, high] of [
    [
      'battery.selfDischargePctPerMonth',
      { selfDischargePctPerMonth: exactly(3) },
      { selfDischargePctPerMonth: exactly(15) },
    ],
    ['battery.startPct', { startPct: exactly(80) }, { startPct: exactly(100) }],
    [
      'battery.chemistry',
      // The row of calcium grids: 2 to 5 % in thirty days, doubled by 12.4 K.
      {
        chemistry: 'flooded-calcium' as const,
        selfDischargePctPerMonth: ranged(3, 2, 5),
        doublingK: ranged(12.4, 10, 24),
      },
      {},
    ],
  ] as const) {
    const [atLow, atHigh] = [planned(base, low), planned(base, high)];
    expect(of(field).visitsShift, field).toEqual({
      low: atLow.charges - now.charges,
      high: atHigh.charges - now.charges,
    });
    expect(of(field).marginShiftK.low, field).toBeCloseTo(atLow.minK - now.minK, 9);
    expect(of(field).marginShiftK.high, field).toBeCloseTo(atHigh.minK - now.minK, 9);
    expect(of(field).firstChargeAt, field).toEqual({ low: atLow.first, high: atHigh.first });
  }
  // Dates are reckoned at the fastest loss, which is where the assumption's high end lies.
  expect(of('battery.selfDischargePctPerMonth').visitsShift.high).toBe(0);
  expect(of('battery.selfDischargePctPerMonth').visitsShift.low).toBeLessThan(0);
});

test('with the lead on, drain and capacity move the date as they do in the plan', () => {
  const on = { ...base, battery: { ...base.battery!, connected: true } };
  const found = rankAssumptions(on, context, home(on));
  const at = (field: string) => found.find((a) => a.field === field)!.firstChargeAt;
  expect(at('battery.drainMA')).toEqual({
    low: planned(on, { drainMA: exactly(0) }).first,
    high: planned(on, { drainMA: exactly(1) }).first,
  });
  expect(at('battery.capacityAh')).toEqual({
    low: planned(on, { capacityAh: 4 }).first,
    high: planned(on, { capacityAh: 20 }).first,
  });
  expect(at('battery.drainMA').low! > at('battery.drainMA').high!).toBe(true);
});

test('each row hands on what was assumed, and the greater of its two shifts', () => {
  const start = of('battery.startPct');
  expect(start).toMatchObject({ value: 95, low: 80, high: 100, unit: '', reason: 'not given', settle: '' });
  const days = (a: string, b: string) => (Date.parse(b) - Date.parse(a)) / 86_400_000;
  const now = planned(base, {}).first!;
  const [low, high] = [days(now, start.firstChargeAt.low!), days(now, start.firstChargeAt.high!)];
  expect(low).toBeLessThan(0);
  expect(high).toBeGreaterThan(0);
  expect(start.firstChargeShiftDays).toBe(Math.abs(high) > Math.abs(low) ? high : low);
});

test('of what moves the first charge alike, what moves the margin more goes first, then the order of the list', () => {
  const rows = [
    assume('fuel.tankL', 17, 8, 26),
    assume('tyres.0.pressureKPa', 200, 180, 220),
    assume('place.enclosure.gainK', 0, 0, 1),
    assume('battery.drainMA.value', 0.5, 0, 1),
  ];
  const lasting = {
    ...base,
    season: { ...base.season, lastUse: '2026-10-25', firstUse: '2027-04-10' },
    battery: { ...base.battery!, selfDischargePctPerMonth: exactly(0.1) },
    assumptions: rows,
  };
  const warmer = (e: Enclosure) => ({
    store: COLD_STORE,
    designLow: { ...COLD_LOW, designC: COLD_LOW.designC.map((c) => c + e.gainK) },
  });
  const found = rankAssumptions(lasting, { ...context, storeFor: warmer }, home(lasting));
  expect(found.map((a) => [a.field, a.firstChargeShiftDays])).toEqual([
    ['place.enclosure.gainK', 0],
    ['fuel.tankL', 0],
    ['tyres.0.pressureKPa', 0],
    ['battery.drainMA', 0],
  ]);
  expect(found[0]!.marginShiftK).toEqual({ low: 0, high: expect.closeTo(1, 9) });
});

test('a chemistry that is none moves nothing', () => {
  const odd = { ...base, assumptions: [assume('battery.chemistry', 'flooded-antimony', 'salt', 'agm')] };
  const [found] = rankAssumptions(odd, context, home(odd));
  expect(found!.firstChargeAt.low).toBe(planned(base, {}).first);
  expect(found!.firstChargeAt.high).not.toBe(planned(base, {}).first);
});

test('a battery on a maintainer is full at every end: no date, no visit, the margin of a full one', () => {
  const kept = { ...base, battery: { ...base.battery!, care: 'maintainer' as const } };
  const powered = household([kept], { places: [place('shed', { enclosure, power: true })] });
  for (const row of rankAssumptions(kept, { store: COLD_STORE, designLow: COLD_LOW }, powered))
    if (row.field !== 'battery.chemistry')
      expect(row, row.field).toMatchObject({
        firstChargeAt: { low: null, high: null },
        visitsShift: { low: 0, high: 0 },
        marginShiftK: { low: 0, high: 0 },
      });
  // Without power it is charged on trips like the others.
  const found = rankAssumptions(kept, context, home(kept)).find((a) => a.field === 'battery.startPct')!;
  expect(found.firstChargeAt.low).not.toBeNull();
});

test('a battery carried in is run in the warmth of its room, named or not', () => {
  const inside = { ...base, battery: { ...base.battery!, care: 'carry-in' as const } };
  for (const batteryRoom of [{ name: 'attic', temperatureC: 25 }, undefined]) {
    const all = household([inside], { places: [place('shed', { enclosure })], batteryRoom });
    const first = (m: Machine) =>
      planBatteries({ ...all, machines: [m] }, '2026-04-01', contexts(all)).plans.get('a')!.charges[0]!.earliest;
    const at = (pct: number) => first({ ...inside, battery: { ...inside.battery, startPct: exactly(pct) } });
    const start = rankAssumptions(inside, context, all).find((a) => a.field === 'battery.startPct')!;
    expect(start.firstChargeAt).toEqual({ low: at(80), high: at(100) });
    // The cold outside is nothing to it.
    expect(
      rankAssumptions(inside, context, all).find((a) => a.field === 'place.enclosure.gainK')!.marginShiftK,
    ).toEqual({
      low: 0,
      high: 0,
    });
  }
});

test('what was read of the battery counts as in the plan, and a plan that is handed in keeps its care', () => {
  const read = {
    ...base,
    readings: [{ date: '2026-05-20', volts: 12.3, temperatureC: 10, restedH: 12 }],
    season: { ...base.season, firstUse: '2027-04-01' },
  };
  const start = rankAssumptions(read, { ...context, asOf: '2026-05-20' }, home(read)).find(
    (a) => a.field === 'battery.selfDischargePctPerMonth',
  )!;
  const unread = rankAssumptions({ ...read, readings: [] }, { ...context, asOf: '2026-05-20' }, home(read)).find(
    (a) => a.field === 'battery.selfDischargePctPerMonth',
  )!;
  // 12.3 V is some 57 %, far less than expected after six weeks: it loses faster than its kind.
  expect(start.firstChargeAt.high! < unread.firstChargeAt.high!).toBe(true);
  const plan = planBatteries(home(base), '2026-04-01', contexts(home(base))).plans.get('a')!;
  const kept = rankAssumptions(base, { ...context, plan: { ...plan, keptAt: 'room' } }, home(base));
  expect(kept.find((a) => a.field === 'place.enclosure.gainK')!.firstChargeShiftDays).toBe(0);
  expect(
    kept.find((a) => a.field === 'battery.startPct')!.firstChargeAt.low! < of('battery.startPct').firstChargeAt.low!,
  ).toBe(true);
});
