import { expect, test } from 'vitest';
import { freezingPointC, openCircuitVoltage, planBatteries } from '../../../src/planner/battery/index.ts';
import { addDays } from '../../../src/planner/dates.ts';
import type { Household } from '../../../src/planner/household.ts';
import type { BatteryPlan } from '../../../src/planner/season-plan.ts';
import {
  battery,
  COLD_LOW,
  COLD_STORE,
  contexts,
  exactly,
  household,
  LEAD,
  machine,
  place,
  ranged,
  sineStore,
} from './world.ts';

const ASOF = '2026-04-01';
const one = (home: Household, asOf = ASOF, store = COLD_STORE, low = COLD_LOW) => {
  const result = planBatteries(home, asOf, contexts(home, store, low));
  return { ...result, plan: result.plans.get(home.machines[0]!.id) as BatteryPlan };
};
const summer = { lastUse: '2026-04-05', firstUse: '2026-11-20', proposed: false, reasons: [] };
const at = (plan: BatteryPlan, path: 'low' | 'expected' | 'high', date: string) =>
  plan.paths![path].find((day) => day.date === date)!;

test('the paths run from the last use to the first use and start at the given charge', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('agm', 14, { startPct: exactly(93) }) })]));
  for (const path of Object.values(plan.paths!)) {
    expect(path[0]).toMatchObject({ date: '2026-10-25', stateOfChargePct: 93 });
    expect(path.at(-1)!.date).toBe('2027-04-10');
    expect(path).toHaveLength(168);
  }
});

test('more loss is never more charge: low over expected over high on every day until the first charge', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('agm', 14), season: summer })]));
  const { low, expected, high } = plan.paths!;
  const until = plan.charges[0]!.date;
  low.forEach((day, i) => {
    if (day.date >= until) return;
    expect(day.stateOfChargePct).toBeGreaterThanOrEqual(expected[i]!.stateOfChargePct);
    expect(expected[i]!.stateOfChargePct).toBeGreaterThanOrEqual(high[i]!.stateOfChargePct);
  });
});

test('a reminder stands on the high-loss date, and the charge fills the path on that day', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })]));
  const [charge] = plan.charges;
  expect(charge!.date).toBe(charge!.earliest);
  expect(at(plan, 'high', addDays(charge!.date, -1)).stateOfChargePct).toBeGreaterThan(75);
  expect(at(plan, 'high', charge!.date).stateOfChargePct).toBe(100);
  expect(charge!.expected! > charge!.earliest).toBe(true);
  // At the threshold a quarter of 12 Ah is missing: 3 Ah / 0.85, on the 1 A charger, and 3 h more.
  expect(charge!.ampHoursMost).toBeGreaterThan(3 / 0.85 - 0.05);
  expect(charge!.ampHoursMost).toBeLessThan(3.8);
  expect(charge!.hoursMost).toBeCloseTo(charge!.ampHoursMost + 3, 8);
  expect(charge!.ampHours).toBeLessThan(charge!.ampHoursMost);
});

test('no charge falls before the rest, after it, or in the last week of it', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })]));
  expect(plan.charges.length).toBeGreaterThan(1);
  for (const charge of plan.charges) {
    expect(charge.date > summer.lastUse).toBe(true);
    expect(charge.date < addDays(summer.firstUse, -7)).toBe(true);
  }
});

test('two batteries share the trips that one would need, and the second is moved earlier', () => {
  const home = household([
    machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer }),
    machine('b', 'garage', {
      battery: battery('flooded-antimony', 12, { selfDischargePctPerMonth: ranged(5, 3, 12) }),
      season: summer,
    }),
  ]);
  const alone = one(household([home.machines[0]!])).trips.length;
  const { trips, plans } = one(home);
  expect(trips).toHaveLength(alone);
  const shared = plans.get('b')!.charges[0]!;
  expect(shared.date < shared.earliest).toBe(true);
  expect(shared.why).toMatch(/share the trip with a/);
});

test('a far place is a yard of its own', () => {
  const home = household(
    [
      machine('a', 'shed', { battery: battery('flooded-antimony', 12, { care: 'visits' }), season: summer }),
      machine('b', 'lake', { battery: battery('flooded-antimony', 12, { care: 'visits' }), season: summer }),
    ],
    { places: [place('shed'), place('lake', { tripMinutes: 150, power: true })] },
  );
  expect(one(home).trips.every((trip) => trip.machines.length === 1)).toBe(true);
});

test('a maintainer with power keeps the battery full and needs no trip', () => {
  const home = household(
    [machine('a', 'garage', { battery: battery('flooded-antimony', 12, { drainMA: exactly(5) }), season: summer })],
    {
      chargers: [{ id: 'keeper', name: 'keeper', currentA: 0.8, chemistries: LEAD, maintainer: true }],
    },
  );
  const { plan, trips } = one(home);
  expect(plan).toMatchObject({ care: 'maintainer', connected: true, keptAt: 'machine', charges: [] });
  expect(plan.paths!.high.every((day) => day.stateOfChargePct === 100)).toBe(true);
  expect(trips).toEqual([]);
});

test('a battery that would last only with its lead off goes on the maintainer where there is one', () => {
  const drained = battery('agm', 14, { drainMA: exactly(14), selfDischargePctPerMonth: ranged(3, 1.5, 5) });
  const keeper = { id: 'keeper', name: 'keeper', currentA: 0.8, chemistries: LEAD, maintainer: true };
  const home = (placeId: string) => household([machine('a', placeId, { battery: drained })], { chargers: [keeper] });
  expect(one(home('garage')).plan).toMatchObject({ care: 'maintainer', connected: true });
  expect(one(home('shed')).plan).toMatchObject({ care: 'visits', connected: false, charges: [] });
});

test('one maintainer goes to the battery that would need most visits', () => {
  const slow = battery('flooded-antimony', 12, { selfDischargePctPerMonth: ranged(4, 3, 8) });
  const home = household(
    [
      machine('a', 'garage', { battery: slow, season: summer }),
      machine('b', 'garage', { battery: battery('flooded-antimony', 12), season: summer }),
    ],
    { chargers: [{ id: 'keeper', name: 'keeper', currentA: 0.8, chemistries: LEAD, maintainer: true }] },
  );
  const { plans } = one(home);
  expect(plans.get('a')!.care).toBe('visits');
  expect(plans.get('b')!.care).toBe('maintainer');
});

test('two batteries that rest one after the other share a maintainer', () => {
  const drained = battery('flooded-antimony', 12, { drainMA: exactly(5) });
  const home = household(
    [
      machine('a', 'garage', { battery: drained, season: { ...summer, firstUse: '2026-10-20' } }),
      machine('b', 'garage', { battery: drained }),
    ],
    { chargers: [{ id: 'keeper', name: 'keeper', currentA: 0.8, chemistries: LEAD, maintainer: true }] },
  );
  expect([...one(home).plans.values()].map((p) => p.care)).toEqual(['maintainer', 'maintainer']);
});

test('a maintainer chosen where there is no power is warned of, and its battery is charged on trips', () => {
  const home = household([
    machine('a', 'shed', { battery: battery('flooded-antimony', 12, { care: 'maintainer' }), season: summer }),
  ]);
  const { plan, warnings } = one(home);
  expect(plan.care).toBe('maintainer');
  expect(plan.charges.length).toBeGreaterThan(0);
  expect(warnings).toContainEqual(
    expect.objectContaining({ level: 'warning', text: expect.stringMatching(/no power/) }),
  );
});

const ARCTIC = { ...COLD_LOW, designC: COLD_LOW.designC.map((c) => c - 14) };

test('a battery whose acid could freeze comes in, at the room’s temperature', () => {
  const { plan } = one(
    household([machine('a', 'shed', { battery: battery('flooded-antimony', 12, { startPct: exactly(80) }) })]),
    ASOF,
    COLD_STORE,
    ARCTIC,
  );
  expect(plan).toMatchObject({ care: 'carry-in', keptAt: 'room', connected: false });
  expect(plan.careReason).toMatch(
    /would come (?:within \d+ degrees of|\d+ degrees beyond) freezing \(the limit is 3 degrees\)/,
  );
  expect(plan.paths!.expected.every((day) => day.temperatureC === 18)).toBe(true);
  expect(plan.freezingMargin.minK).toBeGreaterThan(40);
});

test('the same battery left outside by choice is a danger that is told', () => {
  const home = household([
    machine('a', 'shed', { battery: battery('flooded-antimony', 12, { startPct: exactly(80), care: 'visits' }) }),
  ]);
  const { plan, warnings } = one(home, ASOF, COLD_STORE, ARCTIC);
  expect(plan.care).toBe('visits');
  expect(plan.freezingMargin.minK).toBeLessThan(3);
  expect(warnings).toContainEqual(
    expect.objectContaining({ level: 'danger', act: expect.stringMatching(/Carry it to the warm room/) }),
  );
});

test('the margin is the smallest over the months, on the high-loss path', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('flooded-antimony', 12) })]));
  const worst = plan.freezingByMonth.find((m) => m.month === plan.freezingMargin.month)!;
  expect(worst.marginK).toBe(Math.min(...plan.freezingByMonth.map((m) => m.marginK)));
  expect(worst.marginK).toBeCloseTo(worst.designLowC - worst.freezingPointC, 10);
  const days = plan.paths!.high.filter((d) => Number(d.date.slice(5, 7)) === worst.month);
  expect(worst.freezingPointC).toBeCloseTo(Math.max(...days.map((d) => d.freezingPointC)), 8);
  expect(plan.freezingByMonth.map((m) => m.month)).toEqual([10, 11, 12, 1, 2, 3, 4]);
});

test('a lithium battery that must be charged where it freezes is carried in, and without a room is never put on a charger below 0 °C', () => {
  const lithium = battery('lifepo4', 4, {
    startPct: exactly(55),
    selfDischargePctPerMonth: ranged(8, 6, 12),
    doublingK: exactly(15),
  });
  const chargers = [{ id: 'l', name: 'l', currentA: 0.4, chemistries: ['lifepo4' as const], maintainer: true }];
  const inside = one(household([machine('a', 'shed', { battery: lithium })], { chargers }));
  expect(inside.plan.care).toBe('carry-in');

  const home = household([machine('a', 'shed', { battery: { ...lithium, removable: false } })], {
    chargers,
    batteryRoom: undefined,
    places: [place('shed', { power: true })],
  });
  const { plan } = one(home);
  expect(plan.care).toBe('visits');
  for (const charge of plan.charges) {
    const day = (Date.parse(charge.date) - Date.parse(`${charge.date.slice(0, 4)}-01-01`)) / 86_400_000;
    expect(COLD_STORE.dayMinC[day]).toBeGreaterThanOrEqual(0);
  }
});

test('a charger of more than an eighth of the capacity of a flooded battery is not used, and what is needed is said', () => {
  const home = household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })], {
    chargers: [{ id: 'big', name: 'big', currentA: 6, chemistries: LEAD, maintainer: false }],
  });
  const { plan, warnings } = one(home);
  expect(plan.charges[0]!.chargerId).toBeUndefined();
  expect(warnings).toContainEqual(
    expect.objectContaining({
      level: 'warning',
      text: expect.stringMatching(/no charger serves it.*"big" gives 6 A/),
      act: expect.stringMatching(/at most 1.5 A/),
    }),
  );
});

test('the lead comes off where its drain would matter, and stays on where the household says', () => {
  const drained = battery('agm', 14, { drainMA: ranged(3, 1, 10) });
  const off = one(household([machine('a', 'shed', { battery: drained })])).plan;
  expect(off.connected).toBe(false);
  expect(off.careReason).toMatch(/lead comes off/);
  const on = one(household([machine('a', 'shed', { battery: { ...drained, care: 'visits', connected: true } })])).plan;
  expect(on.connected).toBe(true);
  expect(on.charges.length).toBeGreaterThan(off.charges.length);
});

test('a logged charge resets the paths and counts as the first', () => {
  const base = machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer });
  const plain = one(household([base]), '2026-06-01').plan;
  const logged = one(household([{ ...base, charged: [{ date: '2026-05-20', toPct: 100 }] }]), '2026-06-01').plan;
  expect(at(logged, 'high', '2026-05-20').stateOfChargePct).toBe(100);
  expect(logged.charges[0]!.occurrence).toBe(2);
  expect(logged.charges[0]!.date > plain.charges[0]!.date).toBe(true);
});

test('with a record, a charge that was not made falls on the day of the plan and says it is late', () => {
  const base = machine('a', 'shed', {
    battery: battery('flooded-antimony', 12),
    season: summer,
    doneSteps: [{ stepId: 'lay-up.wash', date: '2026-04-10' }],
  });
  const { plan, trips } = one(household([base]), '2026-09-15');
  expect(plan.charges[0]!.date).toBe('2026-09-15');
  expect(plan.charges[0]!.earliest < '2026-09-15').toBe(true);
  expect(trips[0]!.problem).toMatch(/was due by/);
});

test('a charge that no record holds was not made: it is due at once, and said to be late', () => {
  const home = household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })]);
  const early = one(home, '2026-01-01').plan.charges;
  expect(one(home, '2026-06-30').plan.charges).toEqual(early);
  const late = one(home, '2026-09-15');
  expect(late.plan.charges[0]).toMatchObject({ date: '2026-09-15', earliest: early[0]!.date });
  expect(late.warnings.map((w) => w.text)).toContainEqual(
    expect.stringMatching(/was due by 2 July 2026, and none is logged/),
  );
  // Once the first use was to be, the charge is the start-up's own: no day gone by is proposed, and it is overdue until it is logged.
  const over = one(home, '2027-02-01');
  expect(over.plan.charges).toEqual([]);
  expect(over.plan.chargeAtStartUp).toEqual({ due: '2026-07-02', overdue: true });
  expect(over.warnings.map((w) => w.text)).toContainEqual(
    expect.stringMatching(/was due by 2 July 2026, and none is logged: charge it full now/),
  );
  const since = { ...home, machines: [{ ...home.machines[0]!, charged: [{ date: '2027-01-30', toPct: 100 }] }] };
  expect(one(since, '2027-01-29').plan.chargeAtStartUp).toMatchObject({ overdue: true });
  expect(one(since, '2027-01-30').plan.chargeAtStartUp).toBeUndefined();
});

test('a reading under the path brings the high-loss path down and the charge forward', () => {
  const base = machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer });
  const volts = openCircuitVoltage('flooded-antimony', 70, 10);
  const read = one(
    household([{ ...base, readings: [{ date: '2026-05-10', volts, temperatureC: 10, restedH: 12 }] }]),
    '2026-05-10',
  );
  expect(at(read.plan, 'high', '2026-05-10').stateOfChargePct).toBeLessThanOrEqual(100);
  expect(read.plan.charges[0]!.date).toBe('2026-05-10');
  expect(read.plan.calibration!.readings).toBe(1);
});

test.each([
  ['a week', '2026-11-01', '2026-11-08'],
  ['three years', '2026-04-01', '2029-04-01'],
])('a rest of %s is planned', (_, lastUse, firstUse) => {
  const season = { lastUse, firstUse, proposed: false, reasons: [] };
  const { plan } = one(household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season })]));
  expect(plan.paths!.high.at(-1)!.date).toBe(firstUse);
  expect(Math.min(...plan.paths!.high.map((d) => d.stateOfChargePct))).toBeGreaterThan(70);
});

test('in the south the summer months lose most', () => {
  const season = { lastUse: '2026-04-20', firstUse: '2027-03-01', proposed: false, reasons: [] };
  const south = sineStore(14, 9, 5, true);
  const { plan } = one(
    household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season })]),
    ASOF,
    south,
  );
  const gaps = plan.charges.map((c, i) => Date.parse(c.date) - Date.parse(plan.charges[i - 1]?.date ?? season.lastUse));
  const january = plan.charges.findIndex((c) => c.date > '2027-01-01');
  expect(gaps[january]).toBe(Math.min(...gaps));
});

test('a machine without a battery has no plan and costs nothing', () => {
  const { plans, trips, warnings } = one(household([machine('a', 'shed')]));
  expect([plans.size, trips, warnings]).toEqual([0, [], []]);
});

test('the same household gives the same plan', () => {
  const home = () => household([machine('a', 'shed', { battery: battery('gel', 9), season: summer })]);
  expect(one(home()).plan).toEqual(one(home()).plan);
});

test('every figure of a battery says its equation, inputs, result and source', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })]));
  expect(plan.derivations.map((d) => d.method)).toEqual([
    'battery.self-discharge',
    'battery.first-charge',
    'battery.charge',
    'battery.freezing',
    'battery.voltage',
  ]);
  for (const d of plan.derivations) {
    expect(d.sources.length).toBeGreaterThan(0);
    expect(d.inputs.length).toBeGreaterThan(1);
    expect(d.equation).not.toBe('');
  }
});

test('every number of a plan is finite', () => {
  const machines = (['flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4'] as const).map((c) =>
    machine(c, 'shed', { battery: battery(c, 10), season: summer }),
  );
  const { plans } = one(household(machines));
  expect(plans.size).toBe(5);
  JSON.stringify([...plans], (_, value) => {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    return value;
  });
});

test('the loss of the first month is that of thirty days, of a shorter rest that of all its days', () => {
  const inside = (firstUse: string) =>
    one(
      household(
        [
          machine('a', 'shed', {
            battery: battery('flooded-antimony', 12, { care: 'carry-in' }),
            season: { ...summer, firstUse },
          }),
        ],
        { batteryRoom: { name: 'hall', temperatureC: 20 } },
      ),
    ).plan.firstMonthLossPct!;
  // 3, 6 and 15 % in thirty days at 20 °C.
  const close = (low: number, expected: number, high: number) => ({
    low: expect.closeTo(low, 9),
    expected: expect.closeTo(expected, 9),
    high: expect.closeTo(high, 9),
  });
  expect(inside('2026-11-20')).toEqual(close(3, 6, 15));
  expect(inside('2026-05-05')).toEqual(close(3, 6, 15));
  expect(inside('2026-04-15')).toEqual(close(1, 2, 5));
  const kept = household([
    machine('a', 'garage', { battery: battery('flooded-antimony', 12, { care: 'maintainer' }), season: summer }),
  ]);
  expect(one(kept).plan.firstMonthLossPct).toEqual({ low: 0, expected: 0, high: 0 });
});

test('no battery loses more in a month than all of its charge', () => {
  const dying = battery('flooded-antimony', 12, { care: 'visits', selfDischargePctPerMonth: ranged(80, 40, 3000) });
  const { firstMonthLossPct } = one(household([machine('a', 'garage', { battery: dying })])).plan;
  expect(firstMonthLossPct.high).toBe(100);
  expect(firstMonthLossPct.low).toBeLessThan(100);
});

test('one that would last by its kind alone, and by what was measured does not, says so', () => {
  const lasting = battery('flooded-antimony', 12, { selfDischargePctPerMonth: ranged(1, 0.5, 1.2) });
  const base = machine('a', 'shed', { battery: lasting, season: summer });
  expect(one(household([base])).plan.careReason).toMatch(/^It lasts the rest by itself/);
  const volts = openCircuitVoltage('flooded-antimony', 78, 10);
  const read = { ...base, readings: [{ date: '2026-05-20', volts, temperatureC: 10, restedH: 12 }] };
  const { plan } = one(household([read]), '2026-05-20');
  expect(plan.charges.length).toBeGreaterThan(0);
  expect(plan.careReason).toBe(
    'Reckoned from its kind alone it would last the rest by itself; by what was measured it has to be charged.',
  );
});

const KEEPER = { id: 'keeper', name: 'keeper', currentA: 0.8, chemistries: LEAD, maintainer: true };
const kept = (seasons: Record<string, [string, string]>, own: Record<string, object> = {}) => {
  const machines = Object.entries(seasons).map(([id, [lastUse, firstUse]]) =>
    machine(id, 'garage', {
      battery: battery('flooded-antimony', 12, { drainMA: exactly(5), ...own[id] }),
      season: { ...summer, lastUse, firstUse },
    }),
  );
  const found = planBatteries(household(machines, { chargers: [KEEPER] }), ASOF, contexts(household(machines)));
  return {
    care: Object.fromEntries([...found.plans].map(([id, plan]) => [id, plan.care])),
    warnings: found.warnings,
  };
};

test('a maintainer is free again on the day that a rest ends, and not a day before', () => {
  // The longer rest needs more visits and is served first; the other lies before it or after it.
  const long: [string, string] = ['2026-06-01', '2026-12-01'];
  expect(kept({ a: ['2026-04-05', '2026-06-01'], b: long }).care).toEqual({ a: 'maintainer', b: 'maintainer' });
  expect(kept({ a: ['2026-04-05', '2026-06-02'], b: long }).care).toEqual({ a: 'visits', b: 'maintainer' });
  expect(kept({ a: ['2026-12-01', '2027-04-01'], b: long }).care).toEqual({ a: 'maintainer', b: 'maintainer' });
  expect(kept({ a: ['2026-11-30', '2027-04-01'], b: long }).care).toEqual({ a: 'visits', b: 'maintainer' });
});

test('a maintainer goes where the household put it, then to the greater drain, then to the first by name', () => {
  const season: [string, string] = ['2026-04-05', '2026-11-20'];
  const both = { b: season, a: season };
  expect(kept(both).care).toEqual({ a: 'maintainer', b: 'visits' });
  expect(kept(both, { b: { drainMA: exactly(9) } }).care).toEqual({ a: 'visits', b: 'maintainer' });
  expect(kept(both, { a: { drainMA: exactly(9) }, b: { care: 'maintainer' } }).care).toEqual({
    a: 'visits',
    b: 'maintainer',
  });
  const twice = kept(both, { a: { care: 'maintainer' }, b: { care: 'maintainer' } });
  expect(twice.care).toEqual({ a: 'maintainer', b: 'maintainer' });
  expect(twice.warnings.map((w) => [w.machine, w.about, w.text])).toEqual([
    ['b', 'battery', "The maintainer that suits b's battery is on another battery already."],
  ]);
});

test('asked for one machine, its plan alone is made, as it is among the others', () => {
  const home = household([
    machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer }),
    machine('b', 'shed', {
      battery: battery('flooded-antimony', 12, { selfDischargePctPerMonth: ranged(5, 3, 12) }),
      season: summer,
    }),
  ]);
  const all = planBatteries(home, ASOF, contexts(home));
  const some = planBatteries(home, ASOF, contexts(home), 'b');
  expect([...some.plans.keys()]).toEqual(['b']);
  expect(some.plans.get('b')).toEqual(all.plans.get('b'));
  expect(some.trips).toEqual(all.trips);
});

test('a machine whose place or weather is not known is refused', () => {
  const lost = household([machine('a', 'moon', { battery: battery('agm', 12) })]);
  expect(() => planBatteries(lost, ASOF, contexts(lost))).toThrow(
    'a: found place "moon", expected one of the household\'s',
  );
  const here = household([machine('a', 'shed', { battery: battery('agm', 12) })]);
  expect(() => planBatteries(here, ASOF, new Map())).toThrow('a: no store was worked out for its place');
});

test('a charge that comes late is warned of with the last day for it', () => {
  const home = household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })]);
  expect(one(home, '2026-09-15').warnings).toContainEqual({
    machine: 'a',
    level: 'warning',
    text: "The charge of a's battery was due by 2 July 2026, and none is logged: charge it on 15 September 2026.",
    act: 'Do it then at the latest: below its threshold a battery ages, and freezes sooner. If it was charged, say so: "Battery charged full" under "Done and measured" on the form, or a charge in the bench record.',
    about: 'battery',
  });
  const gone = { ...home, away: [{ from: '2026-01-01', to: '2027-12-31' }] };
  const noDay = one(gone).warnings.find((w) => /no day from/.test(w.text));
  expect(noDay).toMatchObject({ machine: 'a', level: 'warning', about: 'battery' });
});

test('a charge is overdue once the day it was due by is past, whatever day it is put on', () => {
  const base = machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer });
  const home = household([base]);
  // Due by 2 July, and by then the last day is no day late.
  expect(one(home, '2026-07-02').plan.charges[0]).toMatchObject({ date: '2026-07-02', overdue: undefined });
  expect(one(home, '2026-07-03').plan.charges[0]).toMatchObject({ date: '2026-07-03', overdue: true });
  // Away over the due day and all days before it: late, but not overdue while the day is still to come.
  const away = { ...home, away: [{ from: '2026-04-01', to: '2026-07-10' }] };
  const late = one(away, '2026-06-01');
  expect(late.plan.charges[0]).toMatchObject({ date: '2026-07-11', earliest: '2026-07-02', overdue: undefined });
  expect(late.warnings.map(({ text }) => text)).toContain(
    "The charge of a's battery is due by 2 July 2026, and is put on 11 July 2026, the first day it can be.",
  );
  expect(one(away, '2026-07-05').plan.charges[0]).toMatchObject({ date: '2026-07-11', overdue: true });
});

test('a charge that is overdue in the last week is still made, up to the first use', () => {
  const home = household([machine('a', 'shed', { battery: battery('flooded-antimony', 12), season: summer })]);
  const on = (asOf: string, more = {}) => one({ ...home, ...more }, asOf).plan;
  expect(on('2026-11-14').charges).toMatchObject([{ date: '2026-11-14', earliest: '2026-07-02', overdue: true }]);
  expect(on('2026-11-20').charges).toMatchObject([{ date: '2026-11-20', overdue: true }]);
  const none = on('2026-11-14', { away: [{ from: '2026-11-14', to: '2026-11-20' }] });
  expect([none.charges, none.chargeWithoutDay]).toEqual([[], '2026-07-02']);
  expect(on('2026-11-14').chargeWithoutDay).toBeUndefined();
});

test('the days of a path say its temperature, its resting voltage and where it would freeze', () => {
  const { plan } = one(household([machine('a', 'shed', { battery: battery('gel', 12), season: summer })]));
  for (const day of plan.paths!.expected.slice(0, 3)) {
    expect(day.openCircuitV).toBe(openCircuitVoltage('gel', day.stateOfChargePct, day.temperatureC));
    expect(day.freezingPointC).toBe(freezingPointC('gel', day.stateOfChargePct));
  }
  // 5 April is the 95th day of the year.
  expect(plan.paths!.expected[0]!.temperatureC).toBe(COLD_STORE.dayMeanC[94]);
});

// The made-up store is coldest in January, at −34 °C, and reaches no less than −15 °C in April.
test('a cold is warned of as long as it is to come, and not once it is past', () => {
  const own = battery('flooded-antimony', 12, {
    care: 'visits',
    startPct: exactly(78),
    selfDischargePctPerMonth: exactly(0.2),
  });
  const home = household([machine('a', 'shed', { battery: own })]);
  const cold = (asOf: string) => one(home, asOf).warnings.filter(({ text }) => text.includes('In the coldest that'));
  expect(cold('2026-11-01')).toHaveLength(1);
  expect(cold('2027-04-02')).toEqual([]);
});
