import { expect, test } from 'vitest';
import { addDays } from '../../../src/planner/dates.ts';
import type { Machine, Procedure, Supply } from '../../../src/planner/household.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { planStrip, winterSteps } from '../../../src/planner/strip/index.ts';
import { orderWarnings, type SupplyMachine, sumSupplies, supplyNeeds } from '../../../src/planner/supplies/index.ts';
import { household, machine } from '../fluids/fixture.ts';
import { assembly, fastener, job } from '../strip/workshop.ts';

const supply = (what: string, over: Partial<Supply> = {}): Supply => ({
  what,
  amount: 1,
  unit: 'L',
  leadDays: 4,
  inStock: false,
  ...over,
});

/** A household whose one procedure says lead time and stock of these. */
function householdWith(supplies: Supply[]) {
  return household({ procedures: [{ steps: [{ supplies }] } as unknown as Procedure] });
}

/** A step that uses things on a day. */
function step(
  id: string,
  date: string | undefined,
  supplies: PlanStep['supplies'],
  over: Partial<PlanStep> = {},
): PlanStep {
  const [blank] = winterSteps(machine({ jobs: [job('x')] }), planStrip(machine({ jobs: [job('x')] })).strip);
  return { ...blank!, id, phase: 'lay-up', date, supplies, ...over };
}

const oil = (amount: number) => ({ what: 'engine oil', amount, unit: 'L' });

test('the same supply of two machines is one line, ordered for the first of them', () => {
  const a = machine({ id: 'a' });
  const b = machine({ id: 'b' });
  const lines = sumSupplies(
    [
      { machine: a, steps: [step('oil.fill', '2026-11-08', [oil(3)])] },
      { machine: b, steps: [step('oil.fill', '2026-11-01', [oil(2.5)])] },
    ],
    householdWith([supply('engine oil')]),
  );
  expect(lines).toEqual([
    {
      what: 'engine oil',
      amount: 5.5,
      unit: 'L',
      orderBy: '2026-10-28',
      needBy: '2026-11-01',
      inStock: false,
      for: [
        { machine: 'a', step: 'oil.fill', amount: 3 },
        { machine: 'b', step: 'oil.fill', amount: 2.5 },
      ],
    },
  ]);
});

test('what is in stock stands apart and last, with nothing to order', () => {
  const steps = [step('s', '2026-11-01', [oil(3), { what: 'stabiliser', amount: 60, unit: 'mL' }])];
  const lines = sumSupplies(
    [{ machine: machine(), steps }],
    householdWith([supply('engine oil', { inStock: true }), supply('stabiliser', { unit: 'mL' })]),
  );
  expect(lines.map((l) => [l.what, l.inStock, l.orderBy])).toEqual([
    ['stabiliser', false, '2026-10-28'],
    ['engine oil', true, undefined],
  ]);
});

test('one thing in two units stays two lines', () => {
  const steps = [step('s', '2026-11-01', [oil(3), { ...oil(1), unit: 'can' }])];
  expect(sumSupplies([{ machine: machine(), steps }], household())).toHaveLength(2);
});

test('a step that is done needs nothing, and one without a day is reckoned to its latest', () => {
  const steps = [
    step('a', '2026-11-01', [oil(3)], { done: true }),
    step('b', undefined, [oil(2)], { latest: '2026-11-20' }),
  ];
  const [line] = sumSupplies([{ machine: machine(), steps }], household());
  expect([line!.amount, line!.needBy]).toEqual([2, '2026-11-20']);
});

function opened(m: Machine, dates: Record<string, string>) {
  const { strip } = planStrip(m);
  const steps = winterSteps(m, strip).map((s) => ({ ...s, date: dates[s.id] }));
  return sumSupplies([{ machine: m, steps, strip }], household());
}

test('a part with eight weeks of lead time is ordered eight weeks before its machine is opened', () => {
  const cable = { what: 'throttle cable', amount: 2, unit: 'piece', leadDays: 56, inStock: false };
  const m = machine({
    assemblies: [assembly('seat'), assembly('tank', ['seat'])],
    jobs: [job('cables', ['tank'], { parts: [cable] })],
  });
  const lines = opened(m, {
    'strip.off.seat': '2027-01-16',
    'strip.off.tank': '2027-01-17',
    'job.cables': '2027-01-23',
  });
  expect(lines).toMatchObject([
    { what: 'throttle cable', amount: 2, needBy: '2027-01-16', orderBy: addDays('2027-01-16', -56) },
  ]);
});

test('parts of the strip-down are counted once, washers by the bolts that need them', () => {
  const lines = assembly('lines', [], {
    fasteners: [fastener({ banjo: true, count: 2 })],
    singleUse: [{ what: 'gasket', count: 1, leadDays: 10, inStock: false }],
  });
  const m = machine({ assemblies: [lines], jobs: [job('a', ['lines']), job('b', ['lines'])] });
  const sums = opened(m, { 'strip.off.lines': '2027-01-16' });
  expect(sums.map((l) => [l.what, l.amount])).toEqual([
    ['gasket', 1],
    ['sealing washer', 4],
  ]);
});

const NAMES = new Map([
  ['juniper', 'Juniper'],
  ['magpie', 'Magpie'],
]);
const late = (
  machines: SupplyMachine[],
  asOf: string,
  home = householdWith([supply('engine oil', { leadDays: 14 })]),
) => orderWarnings(supplyNeeds(machines, home), asOf, { names: NAMES, locale: 'en-GB' });

/** Fourteen days before 10 November is 27 October; on the 30th that is three days ago. */
test('what a step uses up and no post brings in time is a note that names machine, thing and day, and sends to a shop', () => {
  const machines = [{ machine: machine(), steps: [step('s', '2026-11-10', [oil(3)])] }];
  expect(late(machines, '2026-10-27')).toEqual([]);
  expect(late(machines, '2026-11-11')).toEqual([]);
  expect(late(machines, '2026-10-30')).toEqual([
    {
      machine: 'juniper',
      level: 'note',
      text: 'For Juniper: engine oil. The first of the work with it is on 10 November 2026; ordered today it may be up to 3 days late.',
      act: 'Where it is not at hand, buy in a shop.',
      about: 'supplies',
    },
  ]);
});

test('one note says all that the steps of a machine use up, by the first day and the longest delay', () => {
  const steps = [
    step('a', '2026-11-10', [oil(3)]),
    step('b', '2026-11-08', [{ what: 'Engine coolant', amount: 1, unit: 'L' }]),
    step('c', '2026-11-09', [oil(1)]),
  ];
  const home = householdWith([
    supply('engine oil', { leadDays: 14 }),
    supply('engine coolant', { unit: 'L', leadDays: 10 }),
  ]);
  // Oil for the 9th was to be ordered on 26 October, four days before the 30th; coolant for the 8th on the 29th.
  expect(late([{ machine: machine(), steps }], '2026-10-30', home).map((w) => w.text)).toEqual([
    'For Juniper: engine oil; engine coolant. The first of the work with them is on 8 November 2026; ordered today they may be up to 4 days late.',
  ]);
});

test('each machine is told of its own needs alone, on its own days', () => {
  const two = [
    { machine: machine(), steps: [step('s', '2026-11-10', [oil(3)])] },
    { machine: { ...machine(), id: 'magpie' }, steps: [step('s', '2027-03-20', [oil(3)])] },
  ];
  expect(late(two, '2026-10-30').map((w) => w.machine)).toEqual(['juniper']);
  expect(late(two, '2027-03-10').map((w) => [w.machine, w.text.slice(0, 11)])).toEqual([['magpie', 'For Magpie:']]);
});

test('a part that a repair waits for is a warning, and the machine stays shut without it', () => {
  const cable = { what: 'Throttle cable', amount: 2, unit: 'piece', leadDays: 56, inStock: false };
  const m = machine({ assemblies: [assembly('tank')], jobs: [job('cables', ['tank'], { parts: [cable] })] });
  const { strip } = planStrip(m);
  const steps = winterSteps(m, strip).map((s) => ({ ...s, date: '2027-01-16' }));
  // Eight weeks before 16 January 2027 is 21 November 2026.
  expect(late([{ machine: m, steps, strip }], '2026-11-28')).toEqual([
    {
      machine: 'juniper',
      level: 'warning',
      text: 'For Juniper: throttle cable. To be here on 16 January 2027 it should have been ordered by 21 November 2026; ordered today it comes 7 days late.',
      act: 'Order today, find a quicker source, or leave the machine shut until the parts are here.',
      about: 'supplies',
    },
  ]);
  expect(late([{ machine: m, steps, strip }], '2026-11-21')).toEqual([]);
});

test('parts of two days are told apart, each with its own; what is needed today is still told', () => {
  const part = (what: string, leadDays: number) => ({ what, amount: 1, unit: 'piece', leadDays, inStock: false });
  const m = machine({
    assemblies: [assembly('tank')],
    jobs: [
      job('cables', ['tank'], {
        parts: [part('Throttle cable', 56), part('Clutch cable', 56), part('Choke cable', 60)],
      }),
    ],
  });
  const { strip } = planStrip(m);
  const steps = winterSteps(m, strip).map((s) => ({ ...s, date: '2027-01-16' }));
  const told = (asOf: string) =>
    late([{ machine: m, steps, strip }], asOf).map(({ text }) => text.replace(/\. To.*by/, ' by'));
  // 60 days before 16 January 2027 is 17 November 2026, 56 days 21 November.
  expect(told('2026-11-28')).toEqual([
    'For Juniper: throttle cable; clutch cable by 21 November 2026; ordered today they come 7 days late.',
    'For Juniper: choke cable by 17 November 2026; ordered today it comes 11 days late.',
  ]);
  expect(told('2027-01-16')).toHaveLength(2);
  expect(told('2027-01-17')).toEqual([]);
});

test('what is on the shelf, and what comes to nothing, is late for nobody', () => {
  const machines = [{ machine: machine(), steps: [step('s', '2026-11-10', [oil(3)])] }];
  expect(late(machines, '2026-10-30', householdWith([supply('engine oil', { leadDays: 14, inStock: true })]))).toEqual(
    [],
  );
  const none = [{ machine: machine(), steps: [step('s', '2026-11-10', [oil(0)])] }];
  expect(late(none, '2026-10-30')).toEqual([]);
});

test('an amount that is no amount is refused', () => {
  const steps = [step('s', '2026-11-01', [oil(Number.NaN)])];
  expect(() => sumSupplies([{ machine: machine(), steps }], household())).toThrow(/NaN L of "engine oil"/);
});
