/** What a record may call a step: the naming is this project's own, as `content/procedures/` and the README have it. */
import { expect, test } from 'vitest';
import { isStepName } from '../../src/planner/step-names.ts';
import { library } from './tasks/library.ts';

const LIBRARY = library();

test.each([
  'oil.drain',
  'lay-up',
  'look-in',
  'start-up',
  'job.gone-since',
  'strip.off.tank',
  'strip.on.tank',
  'strip.check.tank',
  'strip.order.1',
])('%s is the name of a step', (id) => {
  expect(isStepName(id, LIBRARY)).toBe(true);
});

test.each(['oil', 'oil.', 'oil.drian', 'oil.drain.1', 'layup', 'job', 'job.a.b', 'strip.tank', 'strip.of.tank', ''])(
  '%j is the name of no step',
  (id) => {
    expect(isStepName(id, LIBRARY)).toBe(false);
  },
);

test('a repeated step has one number behind its name, and no more', () => {
  const name = repeated();
  expect(['', '.1', '.12', '.one', '.1.2'].map((end) => isStepName(`${name}${end}`, LIBRARY))).toEqual([
    true,
    true,
    true,
    false,
    false,
  ]);
});

test('a step of a procedure that was replaced is still a name', () => {
  const oil = LIBRARY.find(({ id }) => id === 'oil')!;
  const own = { ...oil, steps: oil.steps.map((step) => ({ ...step, id: 'change' })), replaces: oil };
  expect(['oil.change', 'oil.drain', 'oil.other'].map((id) => isStepName(id, [own]))).toEqual([true, true, false]);
});

function repeated(): string {
  const procedure = LIBRARY.find(({ steps }) => steps.some(({ each }) => each === 'tyre'))!;
  return `${procedure.id}.${procedure.steps.find(({ each }) => each === 'tyre')!.id}`;
}
