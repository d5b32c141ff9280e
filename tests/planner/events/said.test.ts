/** What each reminder says, whole: the words that a person reads on the day, with the figures of a plan made up for it. */
import { expect, test } from 'vitest';
import { chargeHoursText, chargeTimeText } from '../../../src/planner/charging-time.ts';
import { householdYear } from '../../../src/planner/events/identity.ts';
import { makeEvents } from '../../../src/planner/events/index.ts';
import {
  ampHoursText,
  clockText,
  fillIn,
  hourText,
  lines,
  shortCautions,
  stepLines,
} from '../../../src/planner/events/words.ts';
import type {
  BatteryPlan,
  Charge,
  ChargeTrip,
  MachinePlan,
  PlanEvent,
  PlanStep,
  SupplyLine,
} from '../../../src/planner/season-plan.ts';
import { aBattery, aCharge, aMachine, aStep, planParts } from '../../fixtures/plan.ts';

const REST = ['2026-10-25', '2027-04-10'] as const;
const NONE = { sessions: [], trips: [], supplies: [], ledger: [] };
const moth = (over: Partial<MachinePlan>) => aMachine('moth', 'Moth', ...REST, over);
const wren = (over: Partial<MachinePlan>) => aMachine('wren', 'Wren', ...REST, over);

function events(machines: MachinePlan[], over: Partial<ReturnType<typeof planParts>> = {}): PlanEvent[] {
  return makeEvents({ ...planParts(), ...NONE, machines, ...over });
}

function one(all: readonly PlanEvent[], title: RegExp): PlanEvent {
  const found = all.filter((event) => title.test(event.title));
  expect(found, all.map((event) => event.title).join(' | ')).toHaveLength(1);
  return found[0]!;
}

const charged = (charge: Partial<Charge> = {}, battery: Partial<BatteryPlan> = {}) =>
  aBattery([aCharge('2026-12-05', 3.1, { hours: 4.6, hoursMost: 6.2, ...charge })], {
    chemistry: 'lifepo4',
    ...battery,
  });
const COLD =
  '! No lithium charging below freezing: A lithium iron phosphate battery charged below 0 °C (32 °F) is damaged for good.';

test('a charge that must not simply be made says so in its title and before all else', () => {
  const before = { kind: 'frozen' as const, text: 'It may be frozen. Bulged, or ice in it: do not charge.' };
  const event = one(events([moth({ battery: charged({ before }, { chemistry: 'agm' }) })]), /^Charge/);
  expect(event.title).toBe("Charge Moth's battery (it may be frozen: look first): about 3 Ah, 5 h");
  expect(event.text.split('\n')[0]).toBe('! Moth: It may be frozen. Bulged, or ice in it: do not charge.');
  const ask = { kind: 'run-down' as const, text: 'Do not charge it before its maker has said that it may be.' };
  const run = one(events([moth({ battery: charged({ before: ask }) })]), /^Charge/);
  expect(run.title).toMatch(/\(not before its maker or a workshop says so\)/);
});

test('a charge by itself says where, how much, how long, when it is due, why, and what can hurt', () => {
  const event = one(events([moth({ battery: charged() })]), /^Charge/);
  expect(event).toMatchObject({
    title: "Charge Moth's battery: about 3 Ah, 5 h",
    label: 'Charge Moth',
    category: 'charge',
  });
  expect(event.text.split('\n')).toEqual([
    'Moth (Tin shed): put back 3.1 Ah (at most 4.3 Ah), 5 h (at most 6.5 h).',
    'The battery reaches 75 % between Tue, Dec 8, 2026, if it loses fast, and Thu, Jan 14, 2027, as expected.',
    'The shed is cold, so it loses little; the date is the one of a battery that loses fast.',
    COLD,
  ]);
});

test('a charge that is expected on the day it is due at the earliest does not name that day twice', () => {
  const { text } = one(events([moth({ battery: charged({ expected: '2026-12-08' }) })]), /^Charge/);
  expect(text).not.toMatch(/The battery (?:may )?reach/);
});

test('a battery in the warm room is charged there, and one without a charger says so in the title', () => {
  const inside = one(events([moth({ battery: charged({}, { keptAt: 'room' }) })]), /^Charge/);
  expect(inside.text).toMatch(/^Moth \(in the warm room\): put back /);
  const without = one(events([moth({ battery: charged({ noCharger: 'None is listed.' }) })]), /^Charge/);
  expect(without.title).toBe("Charge Moth's battery (no charger for it): about 3 Ah, 5 h");
  expect(without.text.split('\n')[1]).toBe(
    '! No charger serves it. None is listed. The hours are those on one that would.',
  );
});

function tripOf(charges: ChargeTrip['charges'], over: Partial<ChargeTrip> = {}): ChargeTrip {
  return { id: 't', date: '2026-12-05', machines: charges.map((c) => c.machine), charges, ...over };
}
const PAIR = [
  { machine: 'moth', chargeIndex: 0, hours: 4.6 },
  { machine: 'wren', chargeIndex: 0, hours: 4.6 },
];

test('a trip names its machines, its chargers and hours, and what goes wrong on it', () => {
  const pair = [moth({ battery: charged() }), wren({ battery: charged({ ampHours: 1.25 }) })];
  const trips = [
    tripOf([
      { ...PAIR[0]!, chargerId: 'small', chargerName: 'Small charger', startHour: 9.5 },
      { ...PAIR[1]!, chargerId: 'small', startHour: 14.1 },
    ]),
  ];
  const event = one(events(pair, { trips }), /^Charge/);
  // 14.1 h + 4.6 h − 9.5 h = 9.2 h, said up to the next half hour.
  expect(event.title).toBe('Charge the batteries of Moth and Wren: about 3 + 1.3 Ah, 9.5 h');
  expect(event).toMatchObject({
    label: 'Charge Moth and Wren',
    path: '/agenda/',
    machine: 'moth',
    machines: ['moth', 'wren'],
  });
  expect(event.text).toContain('5 h (at most 6.5 h), from 09:30, on "Small charger".');
  expect(event.text).toContain('5 h (at most 6.5 h), from 14:06, on "small".');
  expect(event.text.split('\n').filter((line) => line === COLD)).toHaveLength(1);
  const late = one(events(pair, { trips: [{ ...trips[0]!, problem: 'It is late.' }] }), /^Charge/);
  expect(late.text).toContain('\nProblem: It is late.\n');
});

test('without hours of the day a trip lasts as long as its busiest charger', () => {
  const trips = (a: string, b: string) => [
    tripOf([
      { ...PAIR[0]!, chargerId: a },
      { ...PAIR[1]!, chargerId: b },
    ]),
  ];
  const pair = [moth({ battery: charged() }), wren({ battery: charged({ hours: 2.1 }) })];
  expect(one(events(pair, { trips: trips('small', 'small') }), /^Charge/).title).toMatch(/, 7 h$/);
  expect(one(events(pair, { trips: trips('small', 'big') }), /^Charge/).title).toMatch(/, 5 h$/);
});

test('a trip says which of its batteries have no charger: one by its name, all in a word', () => {
  const titled = (first: string | undefined, second: string | undefined) =>
    one(
      events([moth({ battery: charged({ noCharger: first }) }), wren({ battery: charged({ noCharger: second }) })], {
        trips: [tripOf(PAIR)],
      }),
      /^Charge/,
    ).title;
  expect(titled('None.', 'None.')).toMatch(/^Charge the batteries of Moth and Wren \(no charger for them\): about /);
  expect(titled(undefined, 'None.')).toMatch(/^Charge the batteries of Moth and Wren \(no charger for Wren\): about /);
  expect(titled(undefined, undefined)).toMatch(/^Charge the batteries of Moth and Wren: about /);
});

test('a charge that is overdue says so in its title, by itself and on a trip; of two, whose it is', () => {
  const due = (overdue: boolean) => ({ battery: charged({ overdue }) });
  const alone = (overdue: boolean) => one(events([moth(due(overdue))]), /^Charge/).title;
  expect(alone(true)).toMatch(
    /^Charge Moth’s battery, overdue: |^Charge Moth's battery, overdue: |^Charge Moth, overdue: /,
  );
  expect(alone(false)).not.toContain('overdue');
  const both = (a: boolean, b: boolean) =>
    one(events([moth(due(a)), wren(due(b))], { trips: [tripOf(PAIR)] }), /^Charge/).title;
  expect(both(true, true)).toMatch(/^Charge the batteries of Moth and Wren, overdue: /);
  expect(both(false, true)).toMatch(/^Charge the batteries of Moth and Wren \(overdue: Wren\): /);
  expect(both(false, false)).not.toContain('overdue');
});

test('a charge on the day of first use is told, one after it is not, by itself and on a trip', () => {
  const titles = (date: string, trips: ChargeTrip[]) =>
    events([moth({ battery: charged({ date }) })], { trips }).filter((event) => event.category === 'charge').length;
  for (const [date, count] of [
    ['2027-04-10', 1],
    ['2027-04-11', 0],
  ] as const) {
    expect(titles(date, []), date).toBe(count);
    expect(titles(date, [tripOf([PAIR[0]!], { date })]), date).toBe(count);
  }
});

test('trips of one battery and reminders of machines lead to the page of that machine', () => {
  const event = one(events([moth({ battery: charged() })], { trips: [tripOf([PAIR[0]!])] }), /^Charge/);
  expect(event.path).toBe('/machines/moth/');
});

test('a trip keeps its identity when trips before it are done and gone', () => {
  const at = (date: string, occurrence: number) => charged({ date, occurrence }).charges[0]!;
  const both = moth({ battery: aBattery([at('2026-12-05', 1), at('2027-02-20', 2)], { chemistry: 'lifepo4' }) });
  const later = moth({ battery: aBattery([at('2027-02-20', 2)], { chemistry: 'lifepo4' }) });
  const second = { ...tripOf([{ ...PAIR[0]!, chargeIndex: 1 }]), id: 'u', date: '2027-02-20' };
  const before = events([both], { trips: [second, tripOf([PAIR[0]!])] }).filter((e) => e.category === 'charge');
  const after = events([later], { trips: [{ ...second, charges: [PAIR[0]!] }] }).filter((e) => e.category === 'charge');
  expect(after.map((e) => e.uid)).toEqual([before[1]!.uid]);
  const alone = (battery: BatteryPlan) => events([moth({ battery })]).filter((e) => e.category === 'charge');
  expect(alone(later.battery!).map((e) => e.uid)).toEqual([alone(both.battery!)[1]!.uid]);
});

const coolant = (over: Partial<NonNullable<MachinePlan['coolant']>>) =>
  ({
    needC: -36,
    enough: null,
    text: 'Nobody knows its strength.',
    derivations: [],
    ...over,
  }) as MachinePlan['coolant'];
const FROST = { firstFrostInStore: '2026-11-20' };

test('coolant that must be tested says by when, against what, and from when on it can freeze', () => {
  const event = one(events([moth({ ...FROST, coolant: coolant({ testBy: '2026-11-19' }) })]), /coolant/);
  expect(event).toMatchObject({
    date: '2026-11-19',
    title: "Test Moth's coolant: today at the latest",
    label: "Test Moth's coolant",
    category: 'lay-up',
  });
  expect(event.text.split('\n')).toEqual([
    'Nobody knows its strength.',
    'The store can reach frost from Fri, Nov 20, 2026 on.',
  ]);
  expect(one(events([moth({ coolant: coolant({ testBy: '2026-11-19' }) })]), /coolant/).text).not.toMatch(/frost/);
});

test('weak coolant is renewed by the day before the cold can reach what it stands, with the litres where they are known', () => {
  const renewed = (replaceL?: number) =>
    one(events([moth({ ...FROST, coolant: coolant({ enough: false, replaceL, changeBy: '2026-11-19' }) })]), /coolant/);
  expect(renewed(2)).toMatchObject({
    date: '2026-11-19',
    title: "Renew Moth's coolant, 2.0 L: today at the latest",
    label: "Renew Moth's coolant",
    category: 'lay-up',
  });
  expect(renewed().title).toBe("Renew Moth's coolant: today at the latest");
  expect(renewed(0).title).toBe("Renew Moth's coolant: today at the latest");
  expect(renewed().text).toMatch(/\nThe cold .* near what it stands from Fri, Nov 20, 2026 on\.$/);
  expect(events([moth({ ...FROST, coolant: coolant({ enough: true }) })]).join()).not.toMatch(/coolant/);
  expect(
    events([moth({ ...FROST, coolant: coolant({ enough: false }) })]).filter((e) => /coolant/.test(e.title)),
  ).toEqual([]);
});

test('coolant that reaches its age from the last use on is told, one that was due before is a matter of the lay-up', () => {
  const due = (ageDue: string) =>
    events([moth({ coolant: coolant({ enough: true, ageDue }) })]).filter((e) => /coolant/.test(e.title));
  expect(due('2026-10-24')).toEqual([]);
  expect(due('2026-10-25')).toHaveLength(1);
  expect(due('2027-04-10')).toHaveLength(1);
  expect(due('2027-04-11')).toEqual([]);
  expect(due('2027-01-05')[0]).toMatchObject({
    date: '2027-01-05',
    title: "Change Moth's coolant: it reaches its age today",
    label: "Change Moth's coolant",
    category: 'winter',
    text: 'Old coolant no longer keeps metal from rusting, however little it freezes.\nNobody knows its strength.',
  });
});

const FUEL = planParts().machines.find((m) => m.id === 'sleet')!.fuel!;

test('drained fuel has its last day, with the litres where they are known, until it is used up', () => {
  const drained = { ...FUEL, drainedUseBy: '2026-12-24' };
  const told = (over: Partial<MachinePlan>) =>
    events([moth({ fuel: drained, ...over })]).filter((e) => /drained/.test(e.title));
  const [event] = told({});
  expect(event).toMatchObject({
    date: '2026-12-24',
    title: 'Use up the fuel drained from Moth, 12.0 L: today at the latest',
    label: "Use up Moth's fuel",
    category: 'lay-up',
  });
  expect(event!.text.split('\n')).toEqual([
    'Use it fresh in a running engine that can take it; what is left goes to the local collection point.',
    'Check your local fire code.',
    '! Approved, labelled can; no flame, no pilot light, no charger beside it.',
  ]);
  expect(told({ fuel: { ...drained, drainedL: undefined } })[0]!.title).toBe(
    'Use up the fuel drained from Moth: today at the latest',
  );
  const step = (done: boolean) => [aStep('disposal.petrol', 'lay-up', 'Use up the petrol', { done })];
  expect(told({ steps: step(false) })).toHaveLength(1);
  expect(told({ steps: step(true) })).toEqual([]);
  expect(told({ steps: [aStep('disposal.oil', 'lay-up', 'Take the oil away', { done: true })] })).toHaveLength(1);
  expect(told({ fuel: { ...FUEL, drainedUseBy: undefined } })).toEqual([]);
});

test('fuel that stays in the tank says between which days it grows stale, drained fuel does not', () => {
  const filled = { ...FUEL, choice: 'fill' as const, useBy: { earliest: '2027-03-01', latest: '2027-08-01' } };
  const told = (fuel: MachinePlan['fuel']) => events([moth({ fuel })]).filter((e) => /stale/.test(e.title));
  expect(told(filled)[0]).toMatchObject({
    date: '2027-03-01',
    title: "Moth's fuel: from today it may be stale",
    label: "Moth's fuel ages",
    category: 'start-up',
    text: 'It lasts until some day between Mon, Mar 1, 2027 and Sun, Aug 1, 2027.\nFresh fuel.',
  });
  expect(told(FUEL)).toEqual([]);
});

const late = (id: string, over: Partial<PlanStep> = {}) =>
  aStep(id, 'lay-up', `Do ${id}`, { latest: '2026-11-05', ...over });
const leftOver = (steps: PlanStep[]) =>
  events([moth({ steps })]).filter((e) => e.title.endsWith('today at the latest'));

test('a step without a session is told on its last day, unless it is done, overdue, has no last day or is told elsewhere', () => {
  expect(
    leftOver([
      late('a.b', { cautions: ['Mind the edge.'], amounts: [{ name: 'n', value: 2, unit: 'L' }], title: 'Fill {n}' }),
    ]),
  ).toMatchObject([
    {
      date: '2026-11-05',
      title: 'Moth: Fill 2.0 L: today at the latest',
      label: 'Moth: last day',
      text: '- Fill 2.0 L\nNo session had room for it.\n! Mind the edge.',
      category: 'lay-up',
      path: '/machines/moth/lay-up/',
    },
  ]);
  expect(leftOver([late('a.b', { done: true })])).toEqual([]);
  expect(leftOver([late('a.b', { latest: undefined })])).toEqual([]);
  // The plan is of 1 October.
  expect(leftOver([late('a.b', { latest: '2026-09-30' })])).toEqual([]);
  expect(leftOver([late('a.b', { latest: '2026-10-01' })])).toHaveLength(1);
  expect(leftOver([late('disposal.petrol')])).toEqual([]);
  expect(leftOver([late('a.b', { stage: 'first-ride' })])).toEqual([]);
  expect(leftOver([late('a.b', { date: '2026-11-01' })])).toEqual([]);
  expect(leftOver([late('a.b', { latest: '2027-04-11' })])).toEqual([]);
});

test('what is left over is gathered by day and phase, and one alone keeps the identity of its step', () => {
  const three = leftOver([
    late('a.b'),
    late('a.c'),
    late('a.d', { phase: 'winter' }),
    late('a.e', { latest: '2026-11-06' }),
  ]);
  expect(three.map((e) => [e.date, e.title])).toEqual([
    ['2026-11-05', 'Moth: 2 steps of lay-up: today at the latest'],
    ['2026-11-05', 'Moth: Do a.d: today at the latest'],
    ['2026-11-06', 'Moth: Do a.e: today at the latest'],
  ]);
  expect(three[0]!.text).toMatch(/\nNo session had room for them\.$/);
  const [alone] = leftOver([late('a.e', { latest: '2026-11-20' })]);
  expect(alone!.uid).toBe(three[2]!.uid);
  // Of two gathered days the first is done and gone: the second stays the one that it was.
  const pair = (day: string) => [late(`${day}.a`, { latest: day }), late(`${day}.b`, { latest: day })];
  const both = leftOver([...pair('2026-11-05'), ...pair('2026-11-06')]);
  expect(leftOver(pair('2026-11-06')).map((e) => e.uid)).toEqual([both[1]!.uid]);
  for (const told of [three, both]) expect(new Set(told.map((e) => e.uid)).size).toBe(told.length);
});

const session = (date: string, ...steps: string[]) => ({
  id: `s-${date}`,
  date,
  start: '13:00',
  hours: 2,
  title: 'Work',
  steps: steps.map((id) => {
    const [machine = '', ...rest] = id.split('/');
    return { machine, step: rest.join('/') };
  }),
});

test('work says its steps, that it is overdue, by when the rest is to be done, and with whom it shares the bench', () => {
  const steps = [
    aStep('wash.wash', 'lay-up', 'Wash it', { overdue: '2026-10-20', latest: '2026-10-20', why: 'Salt draws water.' }),
    aStep('oil.drain', 'lay-up', 'Drain it!', {
      latest: '2026-11-02',
      why: 'Acid.',
      needs: { ...aStep('', 'winter', '').needs, stand: true, dryDay: true },
    }),
    aStep('oil.fill', 'lay-up', 'Fill it', { latest: '2026-11-01' }),
  ];
  const all = events([moth({ steps }), wren({ steps: [aStep('x.y', 'winter', 'Sort it')] })], {
    sessions: [session('2026-10-27', 'moth/wash.wash', 'moth/oil.drain', 'moth/oil.fill', 'wren/x.y')],
  });
  const event = one(all, /^Lay up/);
  expect(event.title).toMatch(/^Lay up Moth \(.+\), overdue: 13:00, 1 h 30 min$/);
  expect(event.text.split('\n')).toEqual([
    '- Wash it. Salt draws water.',
    '- Drain it! (needs a dry day above 5 °C, the stand). Acid.',
    '- Fill it',
    'It was due by Tue, Oct 20, 2026: do it now, tick what is done, or leave it out on purpose.',
    'To be done by Sun, Nov 1, 2026.',
    'The session is 2 h in all, with Wren.',
  ]);
  const winter = one(all, /^Winter work on Wren/);
  expect(winter).toMatchObject({
    path: '/jobs/',
    category: 'winter',
    text: '- Sort it\nThe session is 2 h in all, with Moth.',
  });
});

test('a step that the agenda put on a day without a session is told by itself, those of the first ride are not', () => {
  const steps = [
    aStep('a.b', 'lay-up', 'Do it', { date: '2026-11-01', latest: '2026-10-31' }),
    aStep('r.a', 'start-up', 'Ride', { date: '2027-04-10', latest: '2027-04-10', stage: 'first-ride' }),
  ];
  const all = events([moth({ steps })]);
  expect(all.filter((e) => e.category === 'lay-up').map((e) => [e.date, e.title])).toEqual([
    ['2026-11-01', 'Lay up Moth (do it): 30 min'],
  ]);
  expect(one(all, /first use/).text).toContain('- Ride');
  expect(all.filter((e) => /re-check/.test(e.title))).toEqual([]);
});

test('a first use whose start-up has found no day says that it is not before that', () => {
  const steps = [
    aStep('s.a', 'start-up', 'Brakes', { stage: 'controls' }),
    aStep('s.b', 'start-up', 'Lights', { stage: 'controls' }),
    aStep('r.a', 'start-up', 'Ride', { latest: '2027-04-10', stage: 'first-ride' }),
  ];
  const text = one(events([moth({ steps })]), /first use/).text;
  expect(text).toContain('! Not before its start-up is done: 2 steps of it have found no day yet.');
  const placed = steps.map((step) => ({ ...step, date: '2027-04-10' }));
  expect(one(events([moth({ steps: placed })]), /first use/).text).not.toContain('Not before');
});

test('a re-check in the session of the day of first use is told by its own reminder, not as work before it', () => {
  const steps = [
    aStep('s.a', 'start-up', 'Brakes', { stage: 'controls' }),
    aStep('r.b', 'start-up', 'Go round it', { stage: 'first-ride' }),
  ];
  const all = events([moth({ steps })], { sessions: [session('2027-04-10', 'moth/s.a', 'moth/r.b')] });
  expect(one(all, /^Start up Moth/).text).not.toContain('Go round it');
  expect(one(all, /re-check/).text).toContain('- Go round it');
});

test('a season swap near the first use is filed under start-up, one near the last use under lay-up', () => {
  // 168 d from the last to the first use: the middle is 16 January, 84 d from each.
  const season = { lastUse: '2026-10-24', firstUse: '2027-04-10', proposed: false, reasons: [] };
  const steps = [aStep('swap.a', 'swap', 'Take the sheets out')];
  const swap = (date: string) =>
    one(events([moth({ season, steps })], { sessions: [session(date, 'moth/swap.a')] }), /^Swap seasons with Moth/)
      .category;
  expect(swap('2026-11-01')).toBe('lay-up');
  expect(swap('2027-01-16')).toBe('lay-up');
  expect(swap('2027-01-17')).toBe('start-up');
  expect(swap('2027-04-03')).toBe('start-up');
});

test('ready, first use and re-check say what is open, what stops the ride, and what is looked at again', () => {
  const steps = [
    aStep('p.out', 'start-up', 'Plugs out', { doNotRide: 'a plug is missing', date: '2027-04-03' }),
    aStep('p.in', 'start-up', 'Look', { doNotRide: 'a plug is missing', date: '2027-04-03' }),
    aStep('r.again', 'start-up', 'Torque again', { stage: 'first-ride', date: '2027-04-15', cautions: ['Hot.'] }),
  ];
  const tyres = planParts().machines.find((m) => m.id === 'juniper')!.tyres;
  const all = events([moth({ steps, tyres, fuel: FUEL })], {
    ledger: [
      { machine: 'moth', item: 'a', state: 'plugged', openedBy: '', closedBy: '', safetyCritical: true, where: 'box' },
      { machine: 'moth', item: 'b', state: 'tap shut', openedBy: '', closedBy: '', safetyCritical: true },
      { machine: 'wren', item: 'c', state: 'lead off', openedBy: '', closedBy: '', safetyCritical: true },
    ],
  });
  expect(one(all, /ready/)).toMatchObject({
    date: '2027-04-03',
    label: 'Moth ready',
    category: 'start-up',
    path: '/machines/moth/start-up/',
    text: 'Nothing of this may be open any more:\n- plugged (box)\n- tap shut\nFirst use is on Sat, Apr 10, 2027.',
  });
  expect(one(all, /first use/)).toMatchObject({
    date: '2027-04-10',
    label: 'Moth: first use',
    category: 'start-up',
    path: '/machines/moth/start-up/',
  });
  expect(one(all, /first use/).text.split('\n')).toEqual([
    'It has rested since Sun, Oct 25, 2026.',
    'Tyres: front 220 kPa (32 psi).',
    'Fuel: Fresh fuel.',
    'Leave it standing if:',
    '! a plug is missing',
  ]);
  expect(one(all, /re-check/)).toMatchObject({
    date: '2027-04-15',
    label: 'Re-check Moth',
    category: 'start-up',
    path: '/machines/moth/start-up/',
    text: '- Torque again\n! Hot.',
  });
  const bare = events([moth({})]);
  expect(one(bare, /ready/).text).toBe('First use is on Sat, Apr 10, 2027.');
  expect(one(bare, /first use/).text).toBe('It has rested since Sun, Oct 25, 2026.');
});

test('a machine that is ready on the day of its first use has one reminder for both', () => {
  const startUp = { start: '2027-04-10', ready: '2027-04-10', firstUse: '2027-04-10' };
  expect(events([moth({ startUp })]).map((e) => e.title)).toEqual(['Moth: first use after the rest']);
});

test('reminders of one day stand in the order in which they are wanted, then by machine', () => {
  const day = '2026-11-02';
  const steps = (name: string) => [
    aStep(`${name}.a`, 'winter', 'Do it', { date: day }),
    aStep(`${name}.b`, 'lay-up', 'Lay it', { date: day }),
  ];
  const paperwork = [{ id: 'i', what: 'Insurance', date: day, kind: 'insurance' as const, pausedOverRest: false }];
  const all = events([
    wren({ steps: steps('w'), paperwork, battery: charged({ date: day }) }),
    moth({ steps: steps('m') }),
  ]);
  expect(all.filter((e) => e.date === day).map((e) => [e.category, e.machine])).toEqual([
    ['paperwork', 'wren'],
    ['charge', 'wren'],
    ['lay-up', 'wren'],
    ['lay-up', 'moth'],
    ['winter', 'wren'],
    ['winter', 'moth'],
  ]);
});

test('papers say the day they run out, and what to do about those that are suspended', () => {
  const paper = (date: string, pausedOverRest = false) => [
    { id: 'i', what: 'Insurance', date, kind: 'insurance' as const, pausedOverRest },
  ];
  const told = (date: string, paused = false) =>
    events([moth({ paperwork: paper(date, paused) })]).filter((e) => e.category === 'paperwork');
  expect(told('2027-02-01')).toMatchObject([
    {
      title: "Moth's insurance: last day",
      label: 'Moth: insurance',
      text: 'It runs out or is due on Mon, Feb 1, 2027, before the first use on Sat, Apr 10, 2027.',
    },
  ]);
  expect(['2026-10-24', '2026-10-25', '2027-04-10', '2027-04-11'].map((date) => told(date).length)).toEqual([
    0, 1, 1, 0,
  ]);
  expect(told('2027-09-01', true).map(({ date, title, text }) => [date, title, text])).toEqual([
    [
      '2026-11-02',
      "Moth's insurance: suspend it for the rest",
      'The machine is laid up until Sat, Apr 10, 2027. Ask what stays covered while it stands.',
    ],
    [
      '2027-04-03',
      "Moth's insurance: put it in force again",
      'It has to be in force before the first use on Sat, Apr 10, 2027.',
    ],
  ]);
});

test.each([
  [clockText('13:00', '24h'), '13:00'],
  [clockText('13:00', '12h'), '1 pm'],
  [clockText('00:05', '12h'), '12:05 am'],
  [clockText('12:30', '12h'), '12:30 pm'],
  [clockText('11:59', '12h'), '11:59 am'],
  [hourText(13.5, '24h'), '13:30'],
  [hourText(24.25, '24h'), '00:15'],
  [hourText(9.999, '24h'), '10:00'],
  [chargeHoursText(4, 'en'), '4 h'],
  [chargeHoursText(4.01, 'en'), '4.5 h'],
  [chargeHoursText(4.51, 'en'), '5 h'],
  [chargeTimeText(13.4, 13.5, 'de'), '13,5 h'],
  [chargeTimeText(12.1, 13.6, 'en'), '12.5 h (at most 14 h)'],
  [ampHoursText(1.94, 'metric'), '1.9 Ah'],
  [ampHoursText(2, 'metric'), '2 Ah'],
  [ampHoursText(7.6, 'us'), '8 Ah'],
])('a span, an hour or a charge is said as %s', (said, expected) => {
  expect(said).toBe(expected);
});

test('less than nothing is refused wherever it is said', () => {
  for (const say of [() => hourText(-1, '24h'), () => chargeHoursText(Number.NaN, 'en'), () => ampHoursText(-1, 'us')])
    expect(say).toThrow(/^found (-1|NaN), expected a number of 0 or more$/);
});

test('a caution of the table is said by its title and first sentence, one of the user by its own words, each once', () => {
  expect(shortCautions(['starter-stud', 'Mind it.', 'starter-stud'])).toEqual([
    '! Starter stud is live: The starter stud is live as long as the battery is connected: battery out first.',
    '! Mind it.',
  ]);
});

test('{names} that have no amount stay, every one that has is filled in, and a line for nothing is none', () => {
  const amounts = [{ name: 'oil', value: 2, unit: 'L' }];
  expect(fillIn('{oil} and {oil}, {grease}', amounts, 'metric')).toBe('2.0 L and 2.0 L, {grease}');
  expect(lines('a', undefined, '', false, 'b')).toBe('a\nb');
  const needs = { ...aStep('', 'winter', '').needs };
  const line = (over: Partial<PlanStep>) => stepLines([aStep('a.b', 'winter', 'Fill {oil}', over)], 'us')[0];
  // 2 L of 0.946353 L a US quart: 2.11.
  expect(line({ amounts, why: 'It holds {oil}.' })).toBe('- Fill 2.1 US qt. It holds 2.1 US qt.');
  expect(line({ needs: { ...needs, stand: true }, title: 'Lift it', why: 'So.' })).toBe(
    '- Lift it (needs the stand). So.',
  );
  expect(line({ needs: { ...needs, dryDay: true }, title: 'Wash it' })).toBe('- Wash it (needs a dry day above 41 °F)');
  for (const title of ['Done.', 'Done?', 'Done!']) expect(line({ title, why: 'So.' })).toBe(`- ${title} So.`);
});

test('trips stand in the order of their days, in whatever order they were planned', () => {
  const at = (date: string, occurrence: number) => charged({ date, occurrence }).charges[0]!;
  const three = aBattery([at('2026-12-05', 1), at('2027-01-10', 2), at('2027-02-20', 3)], { chemistry: 'lifepo4' });
  const trip = (date: string, chargeIndex: number) => ({ ...tripOf([{ ...PAIR[0]!, chargeIndex }]), id: date, date });
  const all = [trip('2027-02-20', 2), trip('2026-12-05', 0), trip('2027-01-10', 1)];
  const uids = (trips: ChargeTrip[]) =>
    events([moth({ battery: three })], { trips })
      .filter((e) => e.category === 'charge')
      .map((e) => [e.date, e.uid]);
  expect(uids(all)).toEqual(uids(all.toSorted((a, b) => (a.date < b.date ? -1 : 1))));
  expect(uids(all).map(([date]) => date)).toEqual(['2026-12-05', '2027-01-10', '2027-02-20']);
});

test('a trip leaves out what the plan has not: a machine, its battery, a charge', () => {
  const trips = [
    tripOf([{ ...PAIR[0]!, chargeIndex: 1 }, { ...PAIR[0]!, machine: 'heron' }, { ...PAIR[1]! }, PAIR[0]!]),
  ];
  const event = one(events([moth({ battery: charged() }), wren({})], { trips }), /^Charge/);
  expect(event.machines).toEqual(['moth']);
  expect(event.title).toBe("Charge Moth's battery: about 3 Ah, 5 h");
});

test('on a trip with a charge at a known hour and one without, the busiest charger counts', () => {
  const trips = [
    tripOf([
      { ...PAIR[0]!, chargerId: 'a', startHour: 10 },
      { ...PAIR[1]!, chargerId: 'b' },
    ]),
  ];
  const pair = [moth({ battery: charged() }), wren({ battery: charged({ hours: 2.1 }) })];
  expect(one(events(pair, { trips }), /^Charge/).title).toMatch(/, 5 h$/);
});

test('a look-in of another machine, or of another day, stays a reminder of its own beside a charge', () => {
  const looked = (id: string, date: string) => [aStep(`look-in.${id}.1`, 'look-in', 'Look', { date })];
  const all = events([
    moth({ battery: charged(), steps: looked('a', '2026-12-05') }),
    wren({ steps: looked('b', '2026-12-05') }),
  ]);
  expect(all.filter((e) => e.category === 'look-in').map((e) => e.machine)).toEqual(['wren']);
  expect(one(all, /^Charge/).text).toContain('\nMoth, step by step:\n- Look\n');
  // A look-in whose steps are all done is told nowhere.
  const done = looked('a', '2026-12-05').map((step) => ({ ...step, done: true }));
  expect(one(events([moth({ battery: charged(), steps: done })]), /^Charge/).text).not.toMatch(/step by step/);
});

const supply = (over: Partial<SupplyLine>, use: Partial<SupplyLine['for'][number]> = {}): SupplyLine => ({
  what: 'Seal',
  amount: 1,
  unit: 'pieces',
  orderBy: '2026-12-01',
  needBy: '2026-12-15',
  inStock: false,
  for: [{ machine: 'moth', step: 'a.b', amount: 2, ...use }],
  ...over,
});
const orders = (supplies: SupplyLine[], over: Partial<MachinePlan> = {}) =>
  events([moth({ steps: [aStep('a.b', 'lay-up', 'Do it')], ...over })], { supplies }).filter(
    (e) => e.category === 'order',
  );

test('an order says what, how much, by when and for when, and what comes of ordering late', () => {
  expect(orders([supply({})])).toMatchObject([
    {
      date: '2026-12-01',
      title: 'Order for Moth, lay-up: Seal',
      label: 'Order for Moth',
      path: '/shopping/',
      text: '- Seal, 2 pieces: order by Tue, Dec 1, 2026, needed on Tue, Dec 15, 2026\nOrdered later, it may not be there on the day of the work.',
    },
  ]);
  expect(orders([supply({ inStock: true })])).toEqual([]);
  expect(orders([supply({}, { machine: 'heron' })])).toEqual([]);
});

test('the lead time goes before the day of the step itself, where that is later than the line’s; what has none is not ordered', () => {
  const dated = (date: string) => ({ steps: [aStep('a.b', 'lay-up', 'Do it', { date })] });
  expect(orders([supply({})], dated('2027-01-15'))[0]!.date).toBe('2027-01-01');
  expect(orders([supply({})], dated('2026-12-10'))[0]!.date).toBe('2026-12-01');
  // Petrol, for one: it is bought on the day of the fill.
  expect(orders([supply({ orderBy: '2026-12-15' })])).toEqual([]);
  // A part that is noted at an assembly has no lead time written down: it is told all the same.
  expect(orders([supply({ orderBy: '2026-12-15', for: [{ machine: 'moth', amount: 1 }] })])).toHaveLength(1);
});

test('what would be ordered after the first use is left out, on its day it is not', () => {
  const on = (orderBy: string) => orders([supply({ orderBy, needBy: '2027-04-20' })]).length;
  expect([on('2027-04-10'), on('2027-04-11')]).toEqual([1, 0]);
});

test('things of one purpose are one order on the earliest of their days, whichever comes first', () => {
  const late = supply({ what: 'Oil', orderBy: '2026-12-10', needBy: '2026-12-24' });
  for (const both of [
    [supply({}), late],
    [late, supply({})],
  ])
    expect(orders(both)).toMatchObject([{ date: '2026-12-01', title: 'Order for Moth, lay-up: 2 items' }]);
});

test('an order is for its job by name, for the phase of its step, and for winter work where neither is known', () => {
  const strip = { jobs: [{ id: 'valves', name: 'Valve clearances', assemblies: [], minutes: 1 }] };
  const titled = (use: Partial<SupplyLine['for'][number]>) =>
    orders([supply({}, { step: undefined, ...use })], { strip: strip as unknown as MachinePlan['strip'] })[0]?.title;
  expect(titled({ job: 'valves' })).toBe('Order for Moth, valve clearances: Seal');
  expect(titled({ job: 'carburettor' })).toBe('Order for Moth, carburettor: Seal');
  expect(titled({ step: 'a.b' })).toBe('Order for Moth, lay-up: Seal');
  expect(titled({})).toBe('Order for Moth, winter work: Seal');
  expect(orders([supply({}, { step: undefined, job: 'valves' })])[0]!.title).toBe('Order for Moth, valves: Seal');
  const done = { steps: [aStep('a.b', 'lay-up', 'Do it', { done: true })] };
  expect(orders([supply({})], done)).toEqual([]);
});

test('the year of a household is that of most of its rests, of as many the earlier', () => {
  const rest = (lastUse: string, firstUse: string) => aMachine('m', 'M', lastUse, firstUse);
  const [first, second] = [rest('2025-10-25', '2026-04-10'), rest('2026-10-25', '2027-04-10')];
  expect(householdYear([])).toBe('');
  expect(householdYear([first, second, second])).toBe('2026');
  expect(householdYear([second, second, first])).toBe('2026');
  expect(householdYear([second, first])).toBe('2025');
  expect(householdYear([first, second])).toBe('2025');
});

test('what is left over of several days is told by day, in whatever order the steps stand, and counted from the end', () => {
  const pair = (day: string) => [late(`${day}.a`, { latest: day }), late(`${day}.b`, { latest: day })];
  const days = ['2026-11-05', '2026-11-06', '2026-11-07'];
  const forward = leftOver(days.flatMap(pair));
  const backward = leftOver(days.toReversed().flatMap(pair));
  expect(backward.map((e) => [e.date, e.uid])).toEqual(forward.map((e) => [e.date, e.uid]));
  expect(forward.map((e) => e.date)).toEqual(days);
  // Two steps of another phase have a count of their own.
  const winter = pair('2026-11-08').map((step) => ({ ...step, phase: 'winter' as const }));
  expect(
    leftOver([...days.flatMap(pair), ...winter])
      .slice(0, 3)
      .map((e) => e.uid),
  ).toEqual(forward.map((e) => e.uid));
});

test('a step that a session holds is not left over', () => {
  const steps = [late('a.b'), late('a.c')];
  const titles = events([moth({ steps })], { sessions: [session('2026-10-27', 'moth/a.b')] })
    .filter((e) => e.title.endsWith('today at the latest'))
    .map((e) => e.title);
  expect(titles).toEqual(['Moth: Do a.c: today at the latest']);
});

test('two sessions of one day go by the clock, and a dated step without one goes before them', () => {
  const day = '2026-10-27';
  const steps = ['a.a', 'a.b', 'a.c'].map((id) => aStep(id, 'winter', `Do ${id}`, id === 'a.c' ? { date: day } : {}));
  const at = (start: string, step: string) => ({ ...session(day, step), id: start, start });
  const all = events([moth({ steps })], { sessions: [at('17:00', 'moth/a.b'), at('09:00', 'moth/a.a')] });
  expect(all.filter((e) => e.date === day).map((e) => e.title)).toEqual([
    'Winter work on Moth (do a.c): 30 min',
    'Winter work on Moth (do a.a): 09:00, 2 h',
    'Winter work on Moth (do a.b): 17:00, 2 h',
  ]);
});

test('work on the day of first use is told, work planned after it is not', () => {
  const on = (date: string) =>
    events([moth({ steps: [aStep('a.b', 'winter', 'Do it', { date })] })]).filter((e) => e.category === 'winter')
      .length;
  expect([on('2027-04-10'), on('2027-04-11')]).toEqual([1, 0]);
});

test('of a shared session each machine has its own time, alone the session’s', () => {
  const steps = (id: string) => [aStep(id, 'winter', 'Do it', { minutes: 90 })];
  const shared = session('2026-11-14', 'moth/m.a', 'wren/w.a');
  const both = events([moth({ steps: steps('m.a') }), wren({ steps: steps('w.a') })], { sessions: [shared] });
  expect(one(both, /on Moth/).title).toBe('Winter work on Moth (do it): 13:00, 1 h 30 min');
  const alone = events([moth({ steps: steps('m.a') })], { sessions: [shared] });
  expect(one(alone, /on Moth/).title).toBe('Winter work on Moth (do it): 13:00, 2 h');
  expect(one(alone, /on Moth/).text).not.toMatch(/The session/);
  const onTop = 'The steps take 1 h 30 min; the way there and waiting come on top.';
  expect([alone, both].map((all) => one(all, /on Moth/).text.includes(onTop))).toEqual([true, false]);
});

// The lay-up's own time ends eight days after the last use or as tests/planner/tasks/when.test.ts has it; oil goes to the tip later.
test('what of the lay-up has its time after it is called by its name', () => {
  const titled = (steps: PlanStep[]) => one(events([moth({ steps })]), /oil/).title;
  const oil = (latest: string | undefined, date = '2026-12-12') =>
    aStep('disposal.oil', 'lay-up', 'Take the oil away', { latest, date });
  expect(titled([oil('2026-12-31')])).toBe('Moth: take the oil away: 30 min');
  expect(titled([oil('2026-10-26', '2026-10-26')])).toBe('Lay up Moth (take the oil away): 30 min');
  expect(titled([oil(undefined)])).toBe('Lay up Moth (take the oil away): 30 min');
});

test('the re-check is on the day after the first ride at the earliest, else on the last day that the agenda gave', () => {
  const ride = (id: string, date?: string) => aStep(id, 'start-up', 'Look again', { stage: 'first-ride', date });
  const on = (steps: PlanStep[], sessions: ReturnType<typeof session>[] = []) =>
    one(events([moth({ steps })], { sessions }), /re-check/).date;
  expect(on([ride('r.a')])).toBe('2027-04-11');
  expect(on([ride('r.a', '2027-04-09')])).toBe('2027-04-11');
  expect(on([ride('r.a', '2027-04-20'), ride('r.b', '2027-04-15')])).toBe('2027-04-20');
  expect(on([ride('r.a', '2027-04-15')], [session('2027-04-18', 'moth/r.a')])).toBe('2027-04-18');
  expect(on([ride('r.a', '2027-04-15')], [session('2027-04-18', 'wren/r.a')])).toBe('2027-04-15');
});

test('what belongs to the day before the first use is told on that day, and neither with the ride nor with the re-check', () => {
  const eve = '2027-04-09';
  const ride = (id: string, title: string, date: string) =>
    aStep(id, 'start-up', title, { stage: 'first-ride', date, earliest: date, latest: date, why: 'It is so.' });
  const steps = [
    ride('drive.lithium', 'Charge the drive battery full', eve),
    ride('ride.loop', 'Ride round', '2027-04-10'),
    ride('ride.recheck', 'Look again', '2027-04-12'),
  ];
  const all = events([moth({ steps })]);
  const told = one(all, /drive battery/);
  expect([told.date, told.title]).toEqual([eve, 'Moth: charge the drive battery full']);
  expect(told.text).toBe('- Charge the drive battery full. It is so.');
  expect(one(all, /first use after/).text).toContain('- Ride round');
  expect(one(all, /re-check/).text).toBe('- Look again. It is so.');
  for (const event of all.filter((e) => e !== told)) expect(event.text).not.toContain('drive battery');
  const done = steps.map((step) => ({ ...step, done: step.latest === eve }));
  expect(events([moth({ steps: done })]).map((e) => e.date)).not.toContain(eve);
});

test('reminders of every kind on one day: what is to be got first, then papers, charges and work, the start-up last', () => {
  const day = '2027-04-03';
  const steps = (['start-up', 'winter', 'lay-up', 'look-in'] as const).map((phase) =>
    aStep(`${phase}.a`, phase, `Do ${phase}`, { date: day }),
  );
  const paperwork = [{ id: 'i', what: 'Tax', date: day, kind: 'other' as const, pausedOverRest: false }];
  const supplies = [supply({ orderBy: day, needBy: '2027-04-10' }, { step: 'winter.a' })];
  const all = events([moth({ steps, paperwork }), wren({ battery: charged({ date: day }) })], { supplies });
  const kinds = all.filter((e) => e.date === day).map((e) => e.category);
  expect([...new Set(kinds)]).toEqual(['order', 'paperwork', 'charge', 'look-in', 'lay-up', 'winter', 'start-up']);
  expect(kinds).toEqual(kinds.toSorted((a, b) => kinds.indexOf(a) - kinds.indexOf(b)));
});

test('the key of what is left over names its phase, and of an order what it is for', () => {
  const left = (phase: PlanStep['phase']) => ['a', 'b'].map((id) => late(`${phase}.${id}`, { phase }));
  const both = leftOver([...left('lay-up'), ...left('winter')]);
  expect(new Set(both.map((e) => e.uid)).size).toBe(2);
  const steps = [aStep('a.b', 'lay-up', 'Do it'), aStep('a.c', 'winter', 'Do that')];
  const alone = (step: string) => orders([supply({}, { step })], { steps })[0]!.uid;
  const together = orders([supply({}), supply({ what: 'Oil' }, { step: 'a.c' })], { steps }).map((e) => e.uid);
  expect(new Set(together).size).toBe(2);
  expect(together.toSorted()).toEqual([alone('a.b'), alone('a.c')].toSorted());
});

test('the page of each phase is its sheet, or the machine’s own', () => {
  const path = (phase: PlanStep['phase']) =>
    one(events([moth({ steps: [aStep('x.y', phase, 'Do it', { date: '2026-12-12' })] })]), /do it|Look in/).path;
  expect((['lay-up', 'look-in', 'winter', 'start-up', 'swap'] as const).map(path)).toEqual([
    '/machines/moth/lay-up/',
    '/machines/moth/',
    '/jobs/',
    '/machines/moth/start-up/',
    '/machines/moth/',
  ]);
});
