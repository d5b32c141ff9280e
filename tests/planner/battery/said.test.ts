/** What is said of a battery, case by case: chargers, charges, readings and the record, each at its borders. */
import { expect, test } from 'vitest';
import {
  chargeAh,
  chargeHours,
  chargersFor,
  largestChargerA,
  planBatteries,
} from '../../../src/planner/battery/index.ts';
import { judgeReading } from '../../../src/planner/battery/readings.ts';
import { restOf } from '../../../src/planner/battery/rest.ts';
import { loggedCharges } from '../../../src/planner/battery/unit.ts';
import { openCircuitVoltage } from '../../../src/planner/battery/voltage.ts';
import type { Battery, Charger, Household, Machine, Place } from '../../../src/planner/household.ts';
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

const SUMMER = { lastUse: '2026-04-05', firstUse: '2026-11-20', proposed: false, reasons: [] };
const CHARGER: Charger = { id: 'c', name: 'Blue', currentA: 1, chemistries: LEAD, maintainer: false };
const FLOODED = battery('flooded-antimony', 12);

function chosen(own: Partial<Battery>, chargers: Charger[], at: Partial<Place> = {}, home: Partial<Household> = {}) {
  const moth = machine('Moth', 'Barn', { battery: { ...FLOODED, ...own } });
  const barn = place('Barn', at);
  return chargersFor(
    moth,
    moth.battery!,
    barn,
    household([moth], { chargers, places: [barn, place('House', { power: true })], ...home }),
  );
}

test.each<[string, Parameters<typeof chosen>, number, number, RegExp | undefined]>([
  // A quarter above a tenth of the capacity: 1.25 · 12 / 10 = 1.5 A (common practice, from memory).
  ['one of an eighth of the capacity', [{}, [{ ...CHARGER, currentA: 1.5 }]], 1, 0, undefined],
  [
    'one of more than that',
    [
      {},
      [
        { ...CHARGER, currentA: 1.51 },
        { ...CHARGER, name: 'Red', currentA: 6 },
      ],
    ],
    0,
    0,
    /^"Blue" gives 1\.5 A, "Red" gives 6 A; this battery should have no more than 1\.5 A\.$/,
  ],
  ['none', [{}, []], 0, 0, /^You have given no charger\.$/],
  ['one for another kind', [{}, [{ ...CHARGER, chemistries: ['lifepo4'] }]], 0, 0, /^None of your chargers is for /],
  ['a maintainer where there is no power', [{}, [{ ...CHARGER, maintainer: true }]], 1, 0, undefined],
  ['a maintainer where there is power', [{}, [{ ...CHARGER, maintainer: true }], { power: true }], 1, 1, undefined],
  [
    'a maintainer that stands elsewhere',
    [{}, [{ ...CHARGER, maintainer: true, placeId: 'House' }], { power: true }],
    1,
    0,
    undefined,
  ],
  [
    'one that stands elsewhere, for a battery that does not come out',
    [{ removable: false }, [{ ...CHARGER, placeId: 'House' }], { power: true }],
    0,
    0,
    /^Moth's battery does not come out, and none of the fitting chargers is at Barn\.$/,
  ],
  [
    'one of that place, for a battery that does not come out',
    [{ removable: false }, [{ ...CHARGER, placeId: 'Barn' }], { power: true }],
    1,
    0,
    undefined,
  ],
  [
    'one of that place without power',
    [{}, [{ ...CHARGER, placeId: 'Barn' }]],
    0,
    0,
    /^A fitting charger is at hand, but no place with power to use it\.$/,
  ],
  [
    'no power anywhere',
    [{}, [CHARGER], {}, { places: [place('Barn')], batteryRoom: undefined }],
    0,
    0,
    /no place with power to use it\.$/,
  ],
  ['no power but a warm room', [{}, [CHARGER], {}, { places: [place('Barn')] }], 1, 0, undefined],
])('of chargers, %s', (_, given, chargers, maintainers, why) => {
  const found = chosen(...given);
  expect([found.chargers.length, found.maintainers.length]).toEqual([chargers, maintainers]);
  if (why)
    expect(found.none).toMatchObject({ why: expect.stringMatching(why), act: expect.stringMatching(/^[A-Z].*\.$/) });
  else expect(found.none).toBeUndefined();
});

test('what to get says the current and the kind, and where no power is, what would bring it', () => {
  expect(chosen({}, []).none!.act).toMatch(
    /^Get or borrow a charger of at most 1\.5 A with a programme for .+, or one that can be set so low\. Then say so: "Your charger gives" in the form, chargers in household\.yaml\.$/,
  );
  const elsewhere = [{ ...CHARGER, placeId: 'House' }];
  expect(chosen({ removable: false }, elsewhere, { power: true }).none!.act).toBe(
    'Bring one there, or a charger that can be carried.',
  );
  expect(chosen({ removable: false }, [CHARGER]).none!.act).toMatch(
    /^Let the machine rest where there is electricity, /,
  );
  expect(chosen({}, [{ ...CHARGER, placeId: 'Barn' }]).none!.act).toMatch(
    /^Find a place with a socket, .*batteryRoom in the files\.$/,
  );
});

// A maintainer regulates its voltage: its current has no limit of its own, but that of any charger. Common practice: an eighth of the
// capacity for a flooded battery, a fifth for a sealed one.
test.each([
  ['flooded-antimony', 1.5],
  ['agm', 2.4],
  ['gel', 2.4],
] as const)(
  'the maintainer that is advised for a %s battery of 12 Ah is one that the plan then uses',
  (chemistry, most) => {
    const moth = machine('Moth', 'garage', { battery: battery(chemistry, 12, { care: 'maintainer' }), season: SUMMER });
    const maintainer = (currentA: number) => ({ ...CHARGER, currentA, maintainer: true });
    const said = (chargers: Charger[]) => one(household([moth], { chargers })).warnings.map(({ act }) => act ?? '');
    expect(said([])[0]).toMatch(new RegExp(`no more than ${String(most).replace('.', '\\.')} A\\.$`));
    expect(said([maintainer(most)])).toEqual([]);
    expect(said([maintainer(most * 1.01)])).toHaveLength(1);
  },
);

// 12 Ah from 75 to 100 % at 0.85 of what the charger gives: 12 · 0.25 / 0.85 = 3.53 Ah; at 1 A that is 3.53 h and the absorption.
test('ampere-hours and hours of a charge', () => {
  expect(chargeAh(FLOODED, 75)).toBeCloseTo((12 * 0.25) / 0.85, 9);
  expect(chargeAh({ ...FLOODED, health: exactly(0.8) }, 75)).toBeCloseTo((12 * 0.8 * 0.25) / 0.85, 9);
  expect(chargeAh(FLOODED, 100)).toBe(0);
  expect(() => chargeAh(FLOODED, 100.1)).toThrow('found state of charge 100.1 %, expected 0 to 100 %');
  expect(() => chargeAh(FLOODED, -0.1)).toThrow(/expected 0 to 100 %/);
  const hours = (currentA: number) => chargeHours(FLOODED, 3, currentA) - chargeHours(FLOODED, 0, currentA);
  expect(hours(1)).toBeCloseTo(3, 9);
  // No more than a tenth of the capacity is reckoned.
  expect(hours(6)).toBeCloseTo(2.5, 9);
  expect(() => chargeHours(FLOODED, 3, 0)).toThrow('found charger current 0 A, expected more than 0');
});

const DAYS = 229;
const full = (temperatureC = 20) => openCircuitVoltage('flooded-antimony', 100, temperatureC);
const judged = (over: Partial<Machine['readings'][number]>, index = 30, asOf = '2026-12-01', own = FLOODED) =>
  judgeReading(
    own,
    { date: '2026-05-05', volts: 12.5, temperatureC: 20, restedH: 24, ...over },
    index,
    DAYS,
    asOf,
    'en',
  );

/** TM 9-6115-730-24, WP 0050: at least 3 h at rest, better 8 h. */
test.each<[string, ReturnType<typeof judged>, boolean, RegExp | undefined]>([
  ['after a day of rest', judged({}), true, undefined],
  ['after eight hours', judged({ restedH: 8 }), true, undefined],
  ['after less than eight', judged({ restedH: 7.9 }), true, /^rested under 8 h: less sure\.$/],
  ['after three', judged({ restedH: 3 }), true, /^rested under 8 h/],
  [
    'after less than three',
    judged({ restedH: 2.9 }),
    false,
    /^rested 2\.9 h; at least 3 h are needed, better 8 h, before the voltage tells the charge\.$/,
  ],
  ['on the first day of the rest', judged({}, 0), true, undefined],
  ['on its last day', judged({}, DAYS), true, undefined],
  ['before it', judged({}, -1), false, /^taken outside this rest\.$/],
  ['after it', judged({}, DAYS + 1), false, /^taken outside this rest\.$/],
  ['today', judged({}, 30, '2026-05-05'), true, undefined],
  ['tomorrow', judged({}, 30, '2026-05-04'), false, /^its date lies in the future\.$/],
  [
    'of a battery on its charger',
    judged({ volts: full() + 0.16 }),
    false,
    /V above full: charge still sits on the plates, or a charger is on; rest it 8 h and read again\.$/,
  ],
  ['just above full', judged({ volts: full() + 0.14 }), true, undefined],
  [
    'of no 12 V battery',
    judged({ volts: 5.99 }),
    false,
    /^5\.99 V is not the voltage of a resting 12 V battery \(6 to 15 V\); read it again\.$/,
  ],
  ['at the highest of a 12 V battery', judged({ volts: 15 }), false, /^15 V is 2\.36 V above full: /],
  ['at the lowest of one', judged({ volts: 6 }), true, /^below the empty end of the table/],
  ['at the greatest heat of one', judged({ temperatureC: 60 }), true, undefined],
  ['at the greatest cold of one', judged({ temperatureC: -60 }), true, undefined],
  ['of no 12 V battery either', judged({ volts: 15.01 }), false, /^15\.01 V is not the voltage/],
  [
    'at a heat no battery has',
    judged({ temperatureC: 60.1 }),
    false,
    /^60\.1 °C is no temperature a battery is read at; write the battery's own temperature\.$/,
  ],
  ['at a cold no battery has', judged({ temperatureC: -60.1 }), false, /^−60\.1 °C is no temperature/],
  [
    'one cell short',
    judged({ volts: full() - 2.1 }),
    false,
    /V is about one cell \(2\.1 V\) short of a charged battery; it says nothing of the loss rate\.$/,
  ],
  [
    'a third of a volt from that',
    judged({ volts: full() - 2.1 - 0.36 }),
    true,
    /^below the empty end of the table: at most that much is left\.$/,
  ],
])('a reading %s', (_, reading, usable, why) => {
  expect(reading.usable).toBe(usable);
  if (why) expect(reading.why).toMatch(why);
  else expect(reading.why).toBeUndefined();
});

test('a reading after a short rest leaves half as much again open, never more than all', () => {
  expect(judged({ restedH: 7 }).spreadPct).toBeCloseTo(judged({}).spreadPct * 1.5, 9);
  expect(judged({ restedH: 8 }).spreadPct).toBe(judged({}).spreadPct);
  expect(judged({ volts: 1 })).toMatchObject({ stateOfChargePct: 0, spreadPct: 100, cellShort: false });
  expect(judged({ volts: full() - 2.1 }).cellShort).toBe(true);
  expect(judged({ volts: full() - 2.1 }, 30, '2026-12-01', battery('lifepo4', 4)).cellShort).toBe(false);
});

test('charges of the record count from the day after the last use to the first use, and up to today', () => {
  const rest = restOf(SUMMER.lastUse, SUMMER.firstUse);
  const logged = (date: string, asOf = '2027-01-01') =>
    loggedCharges(machine('a', 'shed', { season: SUMMER, charged: [{ date, toPct: 90 }] }), rest, asOf);
  expect(logged('2026-04-05')).toEqual([]);
  expect(logged('2026-04-06')).toEqual([{ index: 1, pct: 90, kind: 'charge' }]);
  expect(logged('2026-11-20')).toHaveLength(1);
  expect(logged('2026-11-21')).toEqual([]);
  expect(logged('2026-06-01', '2026-06-01')).toHaveLength(1);
  expect(logged('2026-06-01', '2026-05-31')).toEqual([]);
  const two = machine('a', 'shed', {
    season: SUMMER,
    charged: [
      { date: '2026-08-01', toPct: 100 },
      { date: '2026-06-01', toPct: 80 },
    ],
  });
  expect(loggedCharges(two, rest, '2027-01-01').map(({ pct }) => pct)).toEqual([80, 100]);
});

const one = (home: Household, asOf = '2026-04-01', store = COLD_STORE, low = COLD_LOW) => {
  const result = planBatteries(home, asOf, contexts(home, store, low));
  const plan = result.plans.get(home.machines[0]!.id) as BatteryPlan;
  return { ...result, plan };
};
const MOTH = machine('Moth', 'shed', { battery: FLOODED, season: SUMMER });

test('why a charge falls on its day is said: due, shared, no open day, no power', () => {
  const alone = one(household([MOTH])).plan.charges[0]!;
  expect(alone.why).toMatch(
    /^At its fastest loss it is down to 75 % on \d+ \w+ 2026\. No power at shed: take the battery to the charger\.$/,
  );
  expect(alone.date).toBe(alone.earliest);
  const powered = one(household([{ ...MOTH, placeId: 'garage' }])).plan.charges[0]!;
  expect(powered.why).toMatch(/^At its fastest loss it is down to 75 % on \d+ \w+ 2026\.$/);
  const closed = one(household([MOTH], { away: [{ from: '2026-05-25', to: alone.date }] })).plan.charges[0]!;
  expect(closed.date < '2026-05-25').toBe(true);
  expect(closed.why).toMatch(/ 2026\. Charged earlier: no day from then to that date has time for it. No power/);
  const wren = machine('Wren', 'shed', {
    battery: { ...FLOODED, selfDischargePctPerMonth: ranged(6, 3, 13) },
    season: SUMMER,
  });
  const shared = one(household([MOTH, wren]));
  const second = shared.plans.get('Wren')!.charges[0]!;
  expect(second.date).toBe(alone.date);
  expect(second.why).toMatch(/ Charged earlier to share the trip with Moth\. /);
});

test('a battery that waits at the bench is told the day of its turn', () => {
  const wren = { ...MOTH, id: 'Wren', name: 'Wren' };
  const hours = { ...household([]).hoursByWeekday, monday: 1, tuesday: 1, wednesday: 1, thursday: 1, friday: 1 };
  const { plans } = one(household([MOTH, wren], { hoursByWeekday: { ...hours, saturday: 1, sunday: 1 } }));
  const [first, second] = ['Moth', 'Wren'].map((id) => plans.get(id)!.charges[0]!);
  expect(second!.date).toBe(first!.date);
  expect(first!.why).not.toMatch(/turn/);
  expect(second!.why).toMatch(/ Its turn on the charger comes on \d+ \w+ 2026\.$/);
});

test('a trip of many names four and counts the rest, where that is more than one', () => {
  const why = (ids: string) => {
    const many = [...ids].map((id) =>
      machine(id, 'shed', {
        battery: { ...FLOODED, selfDischargePctPerMonth: ranged(6, 3, id === 'A' ? 15 : 14) },
        season: SUMMER,
      }),
    );
    const chargers = [...ids].map((id) => ({ ...CHARGER, id, name: id }));
    return one(household(many, { chargers })).plans.get('B')!.charges[0]!.why;
  };
  expect(why('ABCDEF')).toContain('Charged earlier to share the trip with A, C, D, E and F.');
  expect(why('ABCDEFG')).toContain('Charged earlier to share the trip with A, C, D, E and 2 more.');
});

test('lithium that is charged in the cool is warmed first, and no further than its target', () => {
  const cool = { store: sineStore(3, 2.5, 0.2), low: { ...COLD_LOW, designC: COLD_LOW.designC.map(() => 1) } };
  const lithium = battery('lifepo4', 4, { startPct: exactly(45), selfDischargePctPerMonth: ranged(8, 6, 12) });
  const home = household(
    [
      machine('Moth', 'shed', {
        battery: lithium,
        season: { ...SUMMER, lastUse: '2026-10-25', firstUse: '2027-04-10' },
      }),
    ],
    {
      chargers: [{ ...CHARGER, currentA: 0.4, chemistries: ['lifepo4'] }],
    },
  );
  const { charges } = one(home, '2026-10-01', cool.store, cool.low).plan;
  const cold = charges.filter(({ why }) =>
    /bring it into the warm and let it warm through before charging\./.test(why),
  );
  expect(cold.length).toBeGreaterThan(0);
  for (const { why } of cold) expect(why).toMatch(/ About \d °C at shed that day: /);
  for (const { why } of charges) expect(why).toMatch(/ Stop at \d+ %, by the ampere-hours\.$/);
});

test('a battery that no charger serves is warned of with the first day and the remedy, one without charges is noted', () => {
  const { warnings, plan } = one(household([MOTH], { chargers: [] }));
  expect(warnings).toContainEqual({
    machine: 'Moth',
    level: 'warning',
    text: expect.stringMatching(
      /^Moth's battery has to be charged, first on \d+ \w+ 2026, and no charger serves it\. You have given no charger\.$/,
    ),
    act: expect.stringMatching(/^Get or borrow a charger of at most 1\.5 A/),
    about: 'charger',
  });
  expect(plan.charges[0]!.noCharger).toBe('You have given no charger.');
  const lasting = { ...FLOODED, selfDischargePctPerMonth: ranged(1, 0.5, 1.2) };
  const noted = (own: Battery, chargers: Charger[]) =>
    one(household([{ ...MOTH, battery: own }], { chargers })).warnings.filter(({ about }) => about === 'charger');
  const need =
    "No charge falls due while it rests, but Moth's battery is charged at lay-up and before the first start, and no charger serves it.";
  expect(noted(lasting, [])).toMatchObject([{ level: 'note', text: `${need} You have given no charger.` }]);
  expect(noted(lasting, [CHARGER])).toEqual([]);
  // One that is at hand and made for another kind would be taken: that is more than a note.
  // 4 Ah at half the capacity, C/2: 2 A (cell data sheets, from memory).
  const lithium = battery('lifepo4', 4, { selfDischargePctPerMonth: ranged(2, 1, 3), startPct: exactly(95) });
  expect(noted(lithium, [CHARGER])).toMatchObject([
    {
      level: 'warning',
      text: `${need} None of your chargers is for lithium iron phosphate.`,
      act: 'Get or borrow a charger of at most 2 A with a programme for lithium iron phosphate, or one that can be set so low. One for another kind of battery can ruin it.',
    },
  ]);
  // A household that chose a maintainer and has none is told so already.
  const chosen = { ...FLOODED, care: 'maintainer' as const };
  expect(one(household([{ ...MOTH, placeId: 'garage', battery: chosen }], { chargers: [] })).warnings).toHaveLength(1);
});

test('a wrong reading is noted with its day and what to do, a suspicion is warned of', () => {
  const read = (volts: number, restedH = 24) =>
    one(household([{ ...MOTH, readings: [{ date: '2026-05-05', volts, temperatureC: 10, restedH }] }]), '2026-05-06')
      .warnings;
  expect(read(12.5, 1)).toContainEqual({
    machine: 'Moth',
    about: 'battery',
    level: 'note',
    text: expect.stringMatching(/^Moth's battery, reading of 5 May 2026: rested 1 h; at least 3 h are needed/),
    act: 'Correct the log, or add the charge that was left out.',
  });
  expect(read(full(10) - 2.1)).toContainEqual({
    machine: 'Moth',
    about: 'battery',
    level: 'warning',
    text: expect.stringMatching(
      /^Moth's battery: 5 May 2026: \d+\.\d+ V is about one cell \(2\.1 V\) short of a charged battery: a cell may be dead/,
    ),
    act: 'Check the battery before the machine is relied on.',
  });
});

test('a battery low within days of a full charge is suspected of sulphate, later or less full it is not', () => {
  const suspected = (days: number, volts: number, toPct = 100) => {
    const date = new Date(Date.parse('2026-05-01') + days * 86_400_000).toISOString().slice(0, 10);
    const readings = [{ date, volts, temperatureC: 20, restedH: 24 }];
    const charged = [{ date: '2026-05-01', toPct }];
    return one(household([{ ...MOTH, readings, charged }]), '2026-07-01').warnings.some(({ text }) =>
      /sulphated/.test(text),
    );
  };
  const low = openCircuitVoltage('flooded-antimony', 60, 20);
  expect(suspected(2, low)).toBe(true);
  expect(suspected(2, low, 95)).toBe(true);
  expect(suspected(2, low, 94)).toBe(false);
  expect(suspected(0, low)).toBe(false);
  expect(suspected(40, low)).toBe(false);
  expect(suspected(2, openCircuitVoltage('flooded-antimony', 95, 20))).toBe(false);
});

// 6 Ah: a standard charge of C/2 is 3 A (cell data sheets of lithium iron phosphate, from memory), so that a charger of 2 A serves.
test('lithium takes a charger of half its capacity, and its hours are reckoned with it', () => {
  const own = battery('lifepo4', 6, { care: 'carry-in' });
  expect(largestChargerA(own)).toBe(3);
  // 1 Ah at 2 A, nothing for absorption.
  expect(chargeHours(own, 1, 2)).toBeCloseTo(0.5, 9);
  const moth = machine('Moth', 'garage', { battery: own });
  const with2 = household([moth], {
    chargers: [{ id: 'two', name: 'Two', currentA: 2, chemistries: ['lifepo4'], maintainer: false }],
  });
  const texts = planBatteries(with2, '2026-10-01', contexts(with2)).warnings.map(({ text, act }) => `${text} ${act}`);
  expect(texts.filter((text) => /no charger|no more than/i.test(text))).toEqual([]);
});
