import { expect, test } from 'vitest';
import { addDays } from '../../../src/planner/dates.ts';
import type { Machine, Procedure, Supply } from '../../../src/planner/household.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { planStrip, winterSteps } from '../../../src/planner/strip/index.ts';
import { orderWarnings, sumSupplies } from '../../../src/planner/supplies/index.ts';
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

test('a line whose order-by day has passed is a warning that names the days', () => {
  const [line] = sumSupplies(
    [{ machine: machine(), steps: [step('s', '2026-11-10', [oil(3)])] }],
    householdWith([supply('engine oil', { leadDays: 14 })]),
  );
  expect(orderWarnings([line!], '2026-10-27', 'en-GB')).toEqual([]);
  expect(orderWarnings([line!], '2026-11-11', 'en-GB')).toEqual([]);
  const [warning] = orderWarnings([line!], '2026-10-30', 'en-GB');
  expect(warning!.machine).toBe('juniper');
  expect(warning!.text).toMatch(/here on 10 November 2026 .* by 27 October 2026; .* 3 days late/);
});

test('parts that are late alike are one warning', () => {
  const lines = sumSupplies(
    [
      {
        machine: machine(),
        steps: [step('s', '2026-11-10', [oil(3), { what: 'engine coolant', amount: 1, unit: 'L' }])],
      },
    ],
    householdWith([supply('engine oil', { leadDays: 14 }), supply('engine coolant', { leadDays: 14 })]),
  );
  const warnings = orderWarnings(lines, '2026-10-30', 'en-GB');
  expect(warnings).toHaveLength(1);
  expect(warnings[0]!.text).toMatch(/engine coolant; engine oil: .* they come 3 days late/i);
});

test('an amount that is no amount is refused', () => {
  const steps = [step('s', '2026-11-01', [oil(Number.NaN)])];
  expect(() => sumSupplies([{ machine: machine(), steps }], household())).toThrow(/NaN L of "engine oil"/);
});
