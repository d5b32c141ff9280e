import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planStrip, stripProblems } from '../../../src/planner/strip/index.ts';
import { machine } from '../fluids/fixture.ts';
import { assembly, FIFTEEN, FIVE, job } from './workshop.ts';

const off = (m: Parameters<typeof planStrip>[0]) => planStrip(m).strip.off.map((s) => s.assembly);

test('each assembly comes off after all it lies behind, and goes on in exactly the reverse order', () => {
  const { strip, problems } = planStrip(machine({ assemblies: FIFTEEN, jobs: FIVE }));
  expect(problems).toEqual([]);
  const order = strip.off.map((s) => s.assembly);
  expect(order.toSorted()).toEqual(FIFTEEN.map((a) => a.id).toSorted());
  for (const a of FIFTEEN) for (const b of a.behind) expect(order.indexOf(b)).toBeLessThan(order.indexOf(a.id));
  expect(strip.on.map((s) => s.assembly)).toEqual(order.toReversed());
});

test('what no open job needs stays on', () => {
  const jobs = [job('cables', ['throttle-cables']), job('heads', ['cylinder-heads'], { done: true })];
  expect(off(machine({ assemblies: FIFTEEN, jobs }))).toEqual(['seat', 'side-covers', 'tank', 'throttle-cables']);
});

test('handling is counted once for each assembly when bundled, and once for each job when separate', () => {
  const assemblies = [
    assembly('seat', [], { offMinutes: 2, onMinutes: 3 }),
    assembly('tank', ['seat'], { offMinutes: 10, onMinutes: 20 }),
    assembly('airbox', ['tank'], { offMinutes: 30, onMinutes: 40 }),
  ];
  const jobs = [job('valves', ['tank']), job('carburettor', ['airbox']), job('lamp', ['seat'])];
  const { strip } = planStrip(machine({ assemblies, jobs }));
  expect(strip.minutesBundled).toBe(2 + 3 + 10 + 20 + 30 + 40);
  expect(strip.minutesSeparate).toBe(2 + 3 + 10 + 20 + (2 + 3 + 10 + 20 + 30 + 40) + (2 + 3));
});

test('any order of the content gives a sound order, the same one each time, and bundling never costs more', () => {
  const graph = fc.array(fc.array(fc.nat(30), { maxLength: 4 }), { minLength: 1, maxLength: 15 }).chain((links) => {
    const nodes = links.map((behind, i) =>
      assembly(`a${i}`, i === 0 ? [] : [...new Set(behind.map((b) => `a${b % i}`))]),
    );
    const wanted = fc.array(fc.subarray(nodes.map((n) => n.id)), { minLength: 1, maxLength: 5 });
    return fc.tuple(fc.shuffledSubarray(nodes, { minLength: nodes.length }), wanted);
  });
  fc.assert(
    fc.property(graph, ([assemblies, wanted]) => {
      const m = machine({ assemblies, jobs: wanted.map((ids, i) => job(`j${i}`, ids)) });
      const { strip, problems } = planStrip(m);
      const order = strip.off.map((s) => s.assembly);
      expect(problems).toEqual([]);
      for (const id of wanted.flat()) expect(order).toContain(id);
      for (const id of order) {
        for (const b of assemblies.find((a) => a.id === id)!.behind) {
          expect(order.indexOf(b)).toBeGreaterThanOrEqual(0);
          expect(order.indexOf(b)).toBeLessThan(order.indexOf(id));
        }
      }
      for (const step of strip.off) expect(step.forJobs.length).toBeGreaterThan(0);
      expect(strip.minutesBundled).toBeLessThanOrEqual(strip.minutesSeparate);
      expect(planStrip(m).strip).toEqual(strip);
    }),
    { numRuns: 200 },
  );
});

test('a cycle is named from its first assembly round to it again', () => {
  const m = machine({
    assemblies: [assembly('seat', ['airbox']), assembly('tank', ['seat']), assembly('airbox', ['tank'])],
  });
  expect(stripProblems(m)).toEqual([
    {
      path: 'assemblies.0.behind',
      message:
        'found assemblies that lie behind one another: seat -> airbox -> tank -> seat, expected an order in which they come off',
    },
  ]);
  expect(planStrip(m).strip.off).toEqual([]);
});

test('each cycle is told once, also an assembly that lies behind itself and jobs that wait for one another', () => {
  const m = machine({
    assemblies: [assembly('a', ['b']), assembly('b', ['a']), assembly('c', ['c', 'a'])],
    jobs: [job('x', [], { after: ['y'] }), job('y', [], { after: ['x'] })],
  });
  const messages = stripProblems(m).map((p) => p.message);
  expect(messages).toHaveLength(3);
  expect(messages.join('\n')).toMatch(/a -> b -> a.*c -> c.*x -> y -> x/s);
});

test('names that lead nowhere and names given twice are told with their place', () => {
  const m = machine({
    assemblies: [assembly('seat'), assembly('seat'), assembly('tank', ['saet'])],
    jobs: [job('valves', ['tnak'], { after: ['nothing'] })],
    notes: [{ date: '2026-03-01', text: 'bolts worn', assemblyId: 'tonk' }],
  });
  expect(stripProblems(m).map((p) => p.path)).toEqual([
    'assemblies.1.id',
    'assemblies.2.behind.0',
    'jobs.0.assemblies.0',
    'jobs.0.after.0',
    'notes.0.assemblyId',
  ]);
  expect(stripProblems(m)[2]!.message).toContain('"tnak", expected one of seat, seat, tank');
});

test('a machine without assemblies and jobs has nothing to take off', () => {
  const { strip, problems } = planStrip(machine());
  expect(problems).toEqual([]);
  expect(strip).toMatchObject({ jobs: [], off: [], on: [], parts: [], tools: [], torques: [], minutesBundled: 0 });
});
