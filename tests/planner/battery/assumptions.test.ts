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
