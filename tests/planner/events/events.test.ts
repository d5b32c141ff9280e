import { expect, test } from 'vitest';
import { addDays } from '../../../src/planner/dates.ts';
import { makeEvents } from '../../../src/planner/events/index.ts';
import type { BatteryPlan, PlanEvent } from '../../../src/planner/season-plan.ts';
import { aBattery, aCharge, aMachine, aStep, changeMachine, planParts } from '../../fixtures/plan.ts';

const titles = (events: PlanEvent[]) => events.map((event) => event.title);
const find = (events: PlanEvent[], title: string | RegExp) => {
  const found = events.filter((event) => (typeof title === 'string' ? event.title === title : title.test(event.title)));
  expect(found, `one of ${titles(events).join(' | ')}`).toHaveLength(1);
  return found[0]!;
};
const only = (machine: ReturnType<typeof aMachine>, over: Partial<ReturnType<typeof planParts>> = {}) => ({
  ...planParts(),
  machines: [machine],
  sessions: [],
  trips: [],
  supplies: [],
  ledger: [],
  ...over,
});
const rest = ['2026-10-25', '2027-04-10'] as const;

test('a charge says machine, act, amount and hours in its title', () => {
  const battery = aBattery([aCharge('2026-12-05', 3.1, { hours: 4.6, hoursMost: 6.2 })]);
  const event = find(makeEvents(only(aMachine('juniper', 'Juniper', ...rest, { battery }))), /^Charge/);
  expect(event.title).toBe("Charge Juniper's battery: about 3 Ah, 5 h");
  expect(event.date).toBe('2026-12-05');
  expect(event.category).toBe('charge');
  expect(event.path).toBe('/machines/juniper/');
});

test('a charge tells the band of dates, the most it can need, why, and the cautions of its chemistry', () => {
  const text = (chemistry: BatteryPlan['chemistry'], expected?: string) => {
    const charge = aCharge('2026-12-05', 3.1, { hours: 4.6, hoursMost: 6.2, expected });
    const battery = aBattery([charge], { chemistry });
    return find(makeEvents(only(aMachine('juniper', 'Juniper', ...rest, { battery }))), /^Charge/).text;
  };
  const lead = text('agm', '2027-01-14');
  expect(lead).toContain('between Tue, Dec 8, 2026, if it loses fast, and Thu, Jan 14, 2027, as expected');
  expect(lead).toContain('3.1 Ah (at most 4.3 Ah), 5 h (at most 6.5 h)');
  expect(lead).toContain('The shed is cold');
  expect(lead).toContain('hydrogen');
  expect(lead).toContain('frozen');
  const lithium = text('lifepo4');
  expect(lithium).toContain('as expected, not before first use');
  expect(lithium).toContain('charged below 0 °C (32 °F) is damaged for good');
  expect(lithium).not.toContain('hydrogen');
  expect(lead).not.toContain('battery-acid-gas');
});

test('a trip is one reminder for all its machines', () => {
  const trips = makeEvents(planParts()).filter((e) => e.category === 'charge' && e.machines.length > 1);
  expect(trips.map((e) => e.date)).toEqual(['2026-12-05', '2027-02-20']);
  expect(trips[0]).toMatchObject({
    title: 'Charge the batteries of Juniper and Old Fern: about 3 + 8 Ah, 10.5 h',
    label: 'Charge Juniper and Old Fern',
    machine: 'juniper',
    machines: ['juniper', 'old-fern'],
  });
  expect(trips[0]!.text).toContain('Juniper (Tin shed)');
  expect(trips[0]!.text).toContain('Old Fern (Tin shed)');
});

test('every charge of the plan is told once', () => {
  const parts = planParts();
  const charges = parts.machines.flatMap((m) => (m.battery?.charges ?? []).map((c) => `${m.id} ${c.date}`));
  const told = makeEvents(parts)
    .filter((e) => e.category === 'charge')
    .flatMap((e) => e.machines.map((m) => `${m} ${e.date}`));
  expect(told.sort()).toEqual(charges.sort());
});

test('a charge that names a trip which does not have it is told by itself', () => {
  const events = makeEvents({ ...planParts(), trips: [] });
  expect(events.filter((e) => e.category === 'charge').map((e) => e.machines.join())).toEqual([
    'sleet',
    'juniper',
    'old-fern',
    'juniper',
    'old-fern',
  ]);
});

test('a look-in on the day of a charge is told with the charge, on another day by itself', () => {
  const on = (date: string) => {
    const battery = aBattery([aCharge('2026-12-05', 3)]);
    const steps = [aStep('look-in.tyres.1', 'look-in', 'Look at the tyres', { date })];
    return makeEvents(only(aMachine('juniper', 'Juniper', ...rest, { battery, steps })));
  };
  expect(titles(on('2026-12-05')).filter((t) => t.startsWith('Look'))).toEqual([]);
  expect(find(on('2026-12-05'), /^Charge/).text).toContain('Look at the tyres');
  expect(find(on('2026-12-06'), 'Look in on Juniper: 30 min').date).toBe('2026-12-06');
  expect(find(on('2026-12-06'), /^Charge/).text).not.toContain('Look at the tyres');
});

test('a session says its time and hours, and only its own part of a shared one', () => {
  const events = makeEvents(planParts({ clock: '12h' }));
  const layUps = events.filter((e) => e.title.startsWith('Lay up'));
  expect(layUps.map((e) => [e.date, e.title])).toEqual([
    ['2026-10-31', 'Lay up Juniper (wash; fuel-fill): 1 pm, 2 h'],
    ['2026-11-07', 'Lay up Juniper (battery; plugs): 1 pm, 1 h'],
    ['2026-11-07', 'Lay up Old Fern (test the coolant): 1 pm, 15 min'],
  ]);
  expect(layUps[1]!.text).toContain('with Old Fern');
  expect(find(events, 'Winter work on Juniper (valve clearances): 1 pm, 2 h').category).toBe('winter');
  expect(find(events, 'Start up Juniper (plugs; battery): 1 pm, 1 h').path).toBe('/machines/juniper/start-up/');
});

test('amounts stand in the text in the units of the household', () => {
  const text = (units: 'metric' | 'us') => find(makeEvents(planParts({ units })), /^Lay up Juniper .*2 h/).text;
  expect(text('metric')).toContain('Add 64 mL of stabiliser and 9.2 L of fuel');
  expect(text('us')).toContain('Add 2.2 US fl oz of stabiliser and 2.43 US gal of fuel');
  expect(text('us')).toContain('a dry day above 41 °F');
});

test('done steps leave, and a session of done steps leaves no reminder', () => {
  const done = (ids: string[]) =>
    makeEvents(
      changeMachine(planParts(), 'juniper', (m) => ({
        ...m,
        steps: m.steps.map((s) => ({ ...s, done: ids.includes(s.id) })),
      })),
    );
  expect(find(done(['wash.wash']), /^Lay up Juniper .*2 h/).text).not.toContain('Wash');
  const layUps = titles(done(['wash.wash', 'fuel-fill.dose'])).filter((t) => t.startsWith('Lay up Juniper'));
  expect(layUps).toEqual(['Lay up Juniper (battery; plugs): 13:00, 1 h']);
});

test('steps that only order parts leave that to the reminders to order', () => {
  const parts = planParts();
  const steps = [aStep('strip.order.21d', 'winter', 'Order parts that take 21 days')];
  const order = {
    ...parts.sessions[0]!,
    id: 'o',
    date: '2026-12-12',
    steps: [{ machine: 'juniper', step: steps[0]!.id }],
  };
  const withOrder = changeMachine(parts, 'juniper', (m) => ({ ...m, steps: [...m.steps, ...steps] }));
  expect(makeEvents({ ...withOrder, sessions: [...parts.sessions, order] })).toEqual(makeEvents(parts));
});

test('cautions of a session stand once, in short, in words and not by their ids', () => {
  const parts = changeMachine(planParts(), 'juniper', (m) => ({
    ...m,
    steps: m.steps.map((s) => ({ ...s, cautions: ['petrol-vapour', 'Mark the vacuum hose.'] })),
  }));
  const text = find(makeEvents(parts), /^Lay up Juniper .*2 h/).text.split('\n');
  const cautions = text.filter((line) => line.startsWith('!'));
  expect(cautions).toHaveLength(2);
  expect(cautions[0]).toMatch(/^! Petrol vapour: .*lights far below freezing.*\.$/);
  expect(cautions[1]).toBe('! Mark the vacuum hose.');
});

test('orders are gathered by job and phase, on the earliest order-by date, without what is in stock', () => {
  const parts = planParts();
  const gasket = parts.supplies[0]!;
  const orders = makeEvents({
    ...parts,
    supplies: [...parts.supplies, { ...gasket, what: 'feeler gauge', orderBy: '2026-12-01' }],
  }).filter((e) => e.category === 'order');
  expect(orders.map((e) => [e.date, e.title])).toEqual([
    ['2026-10-31', 'Order for Juniper, lay-up: exhaust plug'],
    ['2026-12-01', 'Order for Juniper, valve clearances: 2 items'],
  ]);
  expect(orders[1]!.text).toContain(
    'valve cover gasket, 1 piece: order by Sat, Dec 26, 2026, needed on Sat, Jan 16, 2027',
  );
  expect(orders.map((e) => e.text).join()).not.toContain('stabiliser');
});

test('what another machine needs half a year later is not ordered with the first', () => {
  const parts = planParts();
  const layUp = parts.supplies.find((s) => s.for.some((f) => f.step !== undefined) && !s.inStock)!;
  const juniper = parts.machines.find((m) => m.id === 'juniper')!;
  const other = {
    ...juniper,
    id: 'other',
    name: 'Other',
    startUp: { ...juniper.startUp, firstUse: '2027-12-05' },
    steps: juniper.steps.map((s) => (s.id === layUp.for[0]!.step ? { ...s, date: '2027-04-03' } : s)),
  };
  const orders = makeEvents({
    ...parts,
    machines: [...parts.machines, other],
    supplies: [{ ...layUp, for: [...layUp.for, { ...layUp.for[0]!, machine: 'other' }] }],
  }).filter((e) => e.category === 'order');
  const lead = (Date.parse(layUp.needBy) - Date.parse(layUp.orderBy!)) / 86_400_000;
  const day = new Date(Date.parse('2027-04-03') - lead * 86_400_000).toISOString().slice(0, 10);
  expect(orders.map((e) => [e.date, e.title.split(',')[0]])).toEqual([
    [layUp.orderBy, 'Order for Juniper'],
    [day, 'Order for Other'],
  ]);
});

test('what a done step would have needed is not ordered', () => {
  const parts = changeMachine(planParts(), 'juniper', (m) => ({
    ...m,
    steps: m.steps.map((s) => ({ ...s, done: s.id === 'plugs.fit' })),
  }));
  expect(titles(makeEvents(parts)).join()).not.toContain('exhaust plug');
});

test('coolant and fuel have their last days', () => {
  const events = makeEvents(planParts());
  expect(find(events, "Test Old Fern's coolant: today at the latest").date).toBe('2026-11-19');
  expect(find(events, /^Use up the fuel drained from Sleet, 12.0 L/).date).toBe('2026-06-20');
  expect(find(events, "Juniper's fuel: from today it may be stale").date).toBe('2027-03-20');
  const weak = changeMachine(planParts(), 'old-fern', (m) => ({
    ...m,
    coolant: {
      needC: -36,
      aimC: -36,
      targetStrength: 0.5,
      freezeC: -15,
      enough: false,
      changeBy: '2026-11-19',
      replaceL: 2,
      text: 'It freezes at −15 °C.',
      derivations: [],
    },
  }));
  expect(find(makeEvents(weak), /^Renew Old Fern's coolant, 2.0 L/).date).toBe('2026-11-19');
});

test('a step with a latest date that found no session is told on that date', () => {
  const event = find(makeEvents(planParts()), 'Old Fern: Film on the sills: today at the latest');
  expect(event.date).toBe('2026-12-01');
  expect(event.text).toContain('No session had room for it.');
});

test('steps that one phase leaves over on one day are told together, and keep their UID when the day moves', () => {
  const twoLeft = (latest: string) =>
    changeMachine(planParts(), 'old-fern', (m) => ({
      ...m,
      steps: m.steps.flatMap((s) =>
        s.title === 'Film on the sills'
          ? [
              { ...s, latest },
              { ...s, id: 'film.doors', title: 'Film in the doors', latest },
            ]
          : [s],
      ),
    }));
  const title = 'Old Fern: 2 steps of lay-up: today at the latest';
  const event = find(makeEvents(twoLeft('2026-12-01')), title);
  expect(event.date).toBe('2026-12-01');
  expect(event.text).toContain('- Film on the sills');
  expect(event.text).toContain('- Film in the doors');
  expect(find(makeEvents(twoLeft('2026-12-05')), title).uid).toBe(event.uid);
});

test('papers that run out during the rest are told, and those suspended are put in force before first use', () => {
  const papers = makeEvents(planParts()).filter((e) => e.category === 'paperwork');
  expect(papers.map((e) => [e.date, e.title])).toEqual([
    ['2026-11-02', "Juniper's insurance: suspend it for the rest"],
    ['2027-03-01', "Juniper's insurance: last day"],
    ['2027-04-03', "Juniper's insurance: put it in force again"],
  ]);
});

test('the end of the rest has ready, first use with what stops it, and the re-check', () => {
  const events = makeEvents(planParts());
  expect(find(events, 'Juniper ready: start-up is done by today').text).toContain('exhaust plugged (red box)');
  const first = find(events, 'Juniper: first use after the rest');
  expect(first.date).toBe('2027-04-10');
  expect(first.text).toContain('! a plug or rag is missing from the box');
  expect(first.text).toContain('front 220 kPa (32 psi)');
  expect(find(events, 'Juniper: re-check after the first ride').date).toBe('2027-04-11');
});

test.each([
  ['snow-machine', 'ride'],
  ['quad', 'ride'],
  ['side-by-side', 'drive'],
  ['car', 'drive'],
  ['tractor', 'use'],
  ['mower', 'use'],
] as const)('the re-check of a %s follows its first %s', (kind, word) => {
  const events = makeEvents(changeMachine(planParts(), 'juniper', (m) => ({ ...m, kind })));
  expect(events.filter(({ title }) => title === `Juniper: re-check after the first ${word}`)).toHaveLength(1);
});

test('a re-check that is done leaves', () => {
  const parts = changeMachine(planParts(), 'juniper', (m) => ({
    ...m,
    steps: m.steps.map((s) => ({ ...s, done: s.stage === 'first-ride' })),
  }));
  expect(titles(makeEvents(parts)).filter((t) => t.includes('re-check'))).toEqual([]);
});

test('nothing but the re-check lies after the first use, wherever the first use lies', () => {
  for (let days = -150; days <= 30; days += 10) {
    const parts = changeMachine(planParts(), 'juniper', (m) => {
      const firstUse = addDays(m.season.firstUse, days);
      return {
        ...m,
        season: { ...m.season, firstUse },
        startUp: { start: addDays(firstUse, -7), ready: addDays(firstUse, -7), firstUse },
        battery: aBattery([aCharge('2026-12-05', 3), aCharge('2027-02-20', 3)]),
      };
    });
    const firstUse = parts.machines.find((m) => m.id === 'juniper')!.startUp.firstUse;
    const late = makeEvents(parts).filter((e) => e.machines.includes('juniper') && e.date > firstUse);
    expect(titles(late)).toEqual(['Juniper: re-check after the first ride']);
  }
});

test('reminders stand in order of date and are the same for the same plan', () => {
  const parts = planParts();
  const before = structuredClone(parts);
  const events = makeEvents(parts);
  expect(events.map((e) => e.date)).toEqual(events.map((e) => e.date).sort());
  expect(makeEvents(parts)).toEqual(events);
  expect(parts).toEqual(before);
});

test('a machine without battery, fuel, coolant, tyres and steps is still brought back', () => {
  expect(titles(makeEvents(only(aMachine('mower', 'Mower', ...rest))))).toEqual([
    'Mower ready: start-up is done by today',
    'Mower: first use after the rest',
  ]);
});

test('rests of a week and of three years have their reminders', () => {
  for (const firstUse of ['2026-11-01', '2029-10-25']) {
    const battery = aBattery([aCharge('2026-10-30', 2)]);
    const events = makeEvents(only(aMachine('juniper', 'Juniper', '2026-10-25', firstUse, { battery })));
    expect(events.map((e) => e.category)).toContain('charge');
    expect(events.at(-1)!.date).toBe(firstUse);
  }
});

test('a session or trip that names what is not in the plan is passed over', () => {
  const parts = planParts();
  const strange = {
    ...parts,
    sessions: [...parts.sessions, { ...parts.sessions[0]!, id: 'x', steps: [{ machine: 'nobody', step: 'no.step' }] }],
    trips: [
      ...parts.trips,
      { id: 'x', date: '2026-12-24', machines: ['nobody'], charges: [{ machine: 'nobody', chargeIndex: 0, hours: 1 }] },
    ],
  };
  expect(makeEvents(strange)).toEqual(makeEvents(parts));
});

test('a number that is none is refused by name', () => {
  const battery = aBattery([aCharge('2026-12-05', Number.NaN)]);
  expect(() => makeEvents(only(aMachine('juniper', 'Juniper', ...rest, { battery })))).toThrow(
    'found NaN, expected a number of 0 or more',
  );
});
