import { expect, test } from 'vitest';
import type { Machine } from '../../../src/planner/household.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { planStrip, refitSteps, winterSteps } from '../../../src/planner/strip/index.ts';
import { machine } from '../fluids/fixture.ts';
import { assembly, FIFTEEN, FIVE, fastener, job } from './workshop.ts';

function stepsOf(over: Partial<Machine>): { winter: PlanStep[]; startUp: PlanStep[] } {
  const m = machine(over);
  const { strip } = planStrip(m);
  return { winter: winterSteps(m, strip), startUp: refitSteps(m, strip) };
}

/** Everything a step waits for, and what that waits for. */
function before(steps: readonly PlanStep[], id: string): Set<string> {
  const found = new Set<string>();
  const queue = [id];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    for (const other of steps.find((s) => s.id === next)?.after ?? []) {
      if (!found.has(other)) queue.push(other);
      found.add(other);
    }
  }
  return found;
}

test('what is taken off is refitted: opened and closed items are the same', () => {
  const { winter, startUp } = stepsOf({ assemblies: FIFTEEN, jobs: FIVE });
  const steps = [...winter, ...startUp];
  expect(steps.flatMap((s) => s.opens).toSorted()).toEqual(FIFTEEN.map((a) => `assembly:${a.id}`).toSorted());
  expect(steps.flatMap((s) => s.closes).toSorted()).toEqual(steps.flatMap((s) => s.opens).toSorted());
  expect(new Set(steps.map((s) => s.id)).size).toBe(steps.length);
});

test('steps stand in an order that breaks none of what they wait for', () => {
  const { winter, startUp } = stepsOf({ assemblies: FIFTEEN, jobs: FIVE });
  const ids = [...winter, ...startUp].map((s) => s.id);
  [...winter, ...startUp].forEach((s, i) => {
    for (const other of s.after) {
      expect(ids).toContain(other);
      expect(ids.indexOf(other), `${other} before ${s.id}`).toBeLessThan(i);
    }
  });
});

test('a job waits for all it lies behind to come off, and a refit for every job that needs it off', () => {
  const { winter } = stepsOf({ assemblies: FIFTEEN, jobs: FIVE });
  for (const id of ['seat', 'tank', 'coils', 'rocker-covers'])
    expect(before(winter, 'job.valves')).toContain(`strip.off.${id}`);
  const seat = before(winter, 'strip.on.seat');
  for (const id of ['valves', 'carburettor-clean', 'new-cables', 'head-gasket']) expect(seat).toContain(`job.${id}`);
  expect(seat).not.toContain('job.fork-oil');
  expect(seat).toContain('strip.on.cylinder-heads');
});

test('nothing is opened before the slowest part has come of all the jobs that share what comes off', () => {
  const part = (leadDays: number, inStock = false) => ({
    what: `p${leadDays}`,
    amount: 1,
    unit: 'piece',
    leadDays,
    inStock,
  });
  const { winter } = stepsOf({
    assemblies: [assembly('seat'), assembly('tank', ['seat']), assembly('wheel'), assembly('fork')],
    jobs: [
      job('lamp', ['seat'], { parts: [part(3)] }),
      job('fork-oil', ['fork'], { parts: [part(10)] }),
      job('cables', ['tank'], { parts: [part(56)] }),
      job('bearing', ['wheel'], { parts: [part(90, true)] }),
    ],
  });
  const after = (id: string) => winter.find((s) => s.id === id)!.after;
  expect(winter.filter((s) => s.id.startsWith('strip.order.')).map((s) => [s.id, s.title, s.waitH])).toEqual([
    ['strip.order.lamp', 'Order parts for: lamp, cables', 56 * 24],
    ['strip.order.fork-oil', 'Order parts for: fork-oil', 10 * 24],
  ]);
  expect(after('strip.off.seat')).toEqual(['strip.order.lamp']);
  expect(after('strip.off.fork')).toEqual(['strip.order.fork-oil']);
  expect(after('strip.off.wheel')).toEqual([]);
});

test('a job that brings two others together has them wait for one order', () => {
  const gasket = [{ what: 'gasket', count: 1, leadDays: 7, inStock: false }];
  const { winter } = stepsOf({
    assemblies: [assembly('tank', [], { singleUse: gasket }), assembly('wheel', [], { singleUse: gasket })],
    jobs: [job('a', ['tank']), job('b', ['wheel']), job('c', ['tank', 'wheel'])],
  });
  expect(winter.filter((s) => s.id.startsWith('strip.order.')).map((s) => s.title)).toEqual([
    'Order parts for: a, b, c',
  ]);
});

test('what is only to be refitted waits for its own parts', () => {
  const { winter, startUp } = stepsOf({
    assemblies: [assembly('exhaust', [], { singleUse: [{ what: 'gasket', count: 2, leadDays: 14, inStock: false }] })],
    asLeft: [{ item: 'exhaust' }],
  });
  expect(winter.map((s) => [s.id, s.waitH])).toEqual([['strip.order.refit', 14 * 24]]);
  expect(startUp[0]!.after).toEqual(['strip.order.refit']);
});

test('what was left off has no removal, and is refitted at start-up where no job needs it off', () => {
  const { winter, startUp } = stepsOf({
    assemblies: [
      assembly('seat'),
      assembly('tank', ['seat']),
      assembly('exhaust', [], { fasteners: [fastener({ torqueNm: 20 })] }),
    ],
    jobs: [job('cables', ['tank'])],
    asLeft: [
      { item: 'tank', where: 'shelf' },
      { item: 'assembly:exhaust', since: '2026-09-01' },
    ],
  });
  expect(winter.map((s) => s.id)).toEqual(['strip.off.seat', 'job.cables', 'strip.on.tank', 'strip.on.seat']);
  expect(startUp.map((s) => [s.id, s.stage, s.closes])).toEqual([['strip.on.exhaust', 'refit', ['assembly:exhaust']]]);
  expect(startUp[0]!.torques).toMatchObject([{ torqueNm: 20 }]);
});

test('what was left off is refitted in winter where something refitted then stands in front of it', () => {
  const { winter, startUp } = stepsOf({
    assemblies: [assembly('seat'), assembly('tank', ['seat'])],
    jobs: [job('lamp', ['seat'])],
    asLeft: [{ item: 'tank' }],
  });
  expect(startUp).toEqual([]);
  expect(winter.find((s) => s.id === 'strip.on.seat')!.after).toContain('strip.on.tank');
});

test('what is off now is told with where it lies, from the content and from the record', () => {
  const { strip } = planStrip(
    machine({
      assemblies: [assembly('seat'), assembly('tank', ['seat']), assembly('airbox', ['tank'])],
      jobs: [job('cables', ['airbox'])],
      asLeft: [{ item: 'seat', where: 'bench', since: '2026-11-01' }],
      doneSteps: [
        { stepId: 'strip.off.tank', date: '2026-11-08' },
        { stepId: 'strip.off.airbox', date: '2026-11-08' },
        { stepId: 'strip.on.airbox', date: '2026-11-15' },
      ],
    }),
  );
  expect(strip.nowOff).toEqual([
    { assembly: 'seat', name: 'seat', where: 'bench', since: '2026-11-01' },
    { assembly: 'tank', name: 'tank', where: undefined, since: '2026-11-08' },
  ]);
  expect(strip.off.map((s) => s.minutes)).toEqual([0, 0, 10]);
  expect(strip.on.map((s) => s.assembly)).toEqual(['airbox', 'tank', 'seat']);
});

test('a removal that the record has is done, and still opens what its refit closes', () => {
  const { winter } = stepsOf({
    assemblies: [assembly('seat')],
    jobs: [job('lamp', ['seat'])],
    doneSteps: [{ stepId: 'strip.off.seat', date: '2026-11-08' }],
  });
  expect(winter.map((s) => [s.id, s.done])).toEqual([
    ['strip.off.seat', true],
    ['job.lamp', false],
    ['strip.on.seat', false],
  ]);
});

test('a safety-critical refit of the winter is checked at start-up, and stops the ride', () => {
  const { startUp } = stepsOf({ assemblies: FIFTEEN, jobs: FIVE });
  expect(startUp.map((s) => s.id)).toEqual(['strip.check.calipers']);
  expect(startUp[0]).toMatchObject({ phase: 'start-up', stage: 'refit', safetyCritical: true, closes: [] });
  expect(startUp[0]!.doNotRide).toContain('calipers');
});

test('a job that needs the stand needs it from the first removal to the last refit', () => {
  const { winter } = stepsOf({ assemblies: FIFTEEN, jobs: FIVE });
  const onStand = winter.filter((s) => s.needs.stand).map((s) => s.id);
  expect(onStand.toSorted()).toEqual(
    ['front-wheel', 'calipers', 'fork']
      .flatMap((a) => [`strip.off.${a}`, `strip.on.${a}`])
      .concat('job.fork-oil')
      .toSorted(),
  );
});
