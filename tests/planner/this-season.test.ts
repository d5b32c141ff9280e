/** What of a machine's record is of this season, and what outlasts one. */
import { expect, test } from 'vitest';
import type { Machine } from '../../src/planner/household.ts';
import { ofThisSeason, petrolSeenToOn, withOpened, withoutRefitted } from '../../src/planner/recorded.ts';
import type { StripPlan } from '../../src/planner/season-plan.ts';
import { assembly, job, machine } from './fluids/fixture.ts';
import { plainStep } from './plain-step.ts';
import { library } from './tasks/library.ts';

const procedures = library();
const NOW = '2026-11-20';
const tick = (stepId: string, date: string, season?: string) => ({ stepId, date, season });

/** A bike with a tank and a seat that come off, which rests from 25 October 2026. */
const bike = (record: Partial<Machine>) =>
  machine({ assemblies: [assembly({}), assembly({ id: 'seat', name: 'Seat' })], ...record });
const now = (record: Partial<Machine>) => ofThisSeason(bike(record), procedures);

test('what was left off is off until a refit of a season before, made on that day or later', () => {
  const tank = { item: 'tank', where: 'shelf', since: '2026-02-10' };
  const left = (item: Machine['asLeft'][number], ...doneSteps: Machine['doneSteps']) =>
    now({ asLeft: [item], doneSteps }).asLeft.length;
  const refit = (date: string, season?: string) => tick('strip.on.tank', date, season);
  expect(left(tank)).toBe(1);
  expect(left(tank, refit('2026-02-10'))).toBe(0);
  expect(left({ ...tank, item: 'assembly:tank' }, refit('2026-02-11'))).toBe(0);
  expect(left({ item: 'tank' }, refit('2020-02-11'))).toBe(0);
  expect(left(tank, refit('2026-02-09'))).toBe(1);
  // The strip-down of this season sees to a refit of its own.
  expect(left(tank, refit(NOW))).toBe(1);
  expect(left(tank, refit('2026-02-10', '2026-11'))).toBe(1);
  // Another part's refit says nothing of it, nor has what is no assembly any.
  expect(left(tank, tick('strip.on.seat', '2026-02-10'))).toBe(1);
  expect(left({ item: 'keys' }, refit('2026-02-10'), tick('strip.on.keys', '2026-02-10'))).toBe(1);
});

test('of earlier seasons only what is still off stays ticked, and jobs stay finished', () => {
  const found = now({
    jobs: [job({}), job({ id: 'chain' }), job({ id: 'cables' })],
    doneSteps: [
      tick('wash.wash', '2026-02-01'),
      tick('oil.change', NOW, '2025-11'),
      tick('battery.charge', NOW),
      tick('strip.off.tank', '2026-02-01'),
      tick('strip.off.seat', '2026-02-01'),
      tick('strip.on.seat', '2026-02-02'),
      tick('job.valves', '2026-02-01'),
      tick('job.chain', NOW),
    ],
    skippedSteps: [tick('wax.wax', '2026-02-01'), tick('cover.bag', NOW)],
  });
  expect(found.doneSteps.map(({ stepId }) => stepId)).toEqual(['battery.charge', 'strip.off.tank', 'job.chain']);
  expect(found.skippedSteps?.map(({ stepId }) => stepId)).toEqual(['cover.bag']);
  // What is done this season is ticked on its step, and the job still stands on its sheet.
  expect(found.jobs.map(({ id, done }) => [id, done])).toEqual([
    ['valves', true],
    ['chain', false],
    ['cables', false],
  ]);
  expect(now({}).skippedSteps).toBeUndefined();
});

test('fuel that was drained is drained, or filled, as the last of this season’s ticks has it', () => {
  const choice = (...doneSteps: Machine['doneSteps']) => now({ doneSteps }).fuel?.choice;
  expect(choice()).toBeUndefined();
  expect(choice(tick('fuel-drain.tank', NOW))).toBe('drain');
  expect(choice(tick('fuel-drain.tank', NOW), tick('fuel-fill.fill', NOW))).toBe('fill');
  expect(choice(tick('fuel-fill.fill', NOW), tick('wash.wash', NOW))).toBe('fill');
  expect(choice(tick('fuel-drain.tank', '2026-02-01'))).toBeUndefined();
  expect(choice(tick('start-up-fuel.stood', NOW), tick('gone.step', NOW))).toBeUndefined();
  const electric = ofThisSeason(
    { ...bike({}), fuel: undefined, doneSteps: [tick('fuel-drain.tank', NOW)] },
    procedures,
  );
  expect(electric.fuel).toBeUndefined();
});

test('an assembly that is back on is off no more, unless the strip-down takes it off again', () => {
  const asLeft = [{ item: 'tank' }, { item: 'assembly:seat' }, { item: 'keys' }];
  const items = (...off: string[]) => {
    const strip = { off: off.map((id) => ({ assembly: id })) } as unknown as StripPlan;
    return withoutRefitted(bike({ asLeft }), strip).asLeft.map(({ item }) => item);
  };
  expect(items()).toEqual(['keys']);
  expect(items('tank')).toEqual(['tank', 'keys']);
  expect(items('seat')).toEqual(['assembly:seat', 'keys']);
});

test('petrol that stood was seen to on the first of the days that are ticked', () => {
  const doneSteps = [tick('start-up-fuel.stood', '2027-04-02'), tick('start-up-fuel.old', '2027-04-01')];
  expect(petrolSeenToOn(bike({ doneSteps }), procedures)).toBe('2027-04-01');
  expect(petrolSeenToOn(bike({ doneSteps: doneSteps.toReversed() }), procedures)).toBe('2027-04-01');
});

test('what a done step opened is open once, where today’s plan neither has that step nor opens the same', () => {
  const closes = plainStep('plugs-out.exhaust', { phase: 'start-up', closes: ['exhaust-plugged'] });
  const open = (steps: Parameters<typeof withOpened>[1], asLeft: Machine['asLeft'] = []) =>
    withOpened(bike({ asLeft, doneSteps: [tick('plugs-in.exhaust', NOW)] }), steps, procedures).asLeft;
  expect(open([closes])).toEqual([{ item: 'exhaust-plugged', since: NOW }]);
  expect(open([])).toEqual([]);
  expect(open([closes, plainStep('plugs-in.exhaust')])).toEqual([]);
  expect(open([closes, plainStep('plugs-in.both', { opens: ['exhaust-plugged'] })])).toEqual([]);
  const left = { item: 'exhaust-plugged', since: '2026-01-01' };
  expect(open([closes], [left])).toEqual([left]);
});
