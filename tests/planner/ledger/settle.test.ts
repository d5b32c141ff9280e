import { expect, test } from 'vitest';
import { buildLedger, settleSteps } from '../../../src/planner/ledger/index.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { concreteSteps } from '../../../src/planner/tasks/index.ts';
import { caseOf, procedureOf, stepOf } from '../tasks/generate.ts';
import { library } from '../tasks/library.ts';

const LIBRARY = library();
const drawn = caseOf();
const { machine } = drawn;
const BLANK: PlanStep = {
  ...concreteSteps({ ...drawn, procedures: LIBRARY })[0]!,
  phase: 'lay-up',
  stage: undefined,
  opens: [],
  closes: [],
  after: [],
};
const step = (id: string, over: Partial<PlanStep> = {}): PlanStep => ({ ...BLANK, id, ...over });
const sheetStep = (id: string, over: Partial<PlanStep> = {}) =>
  step(id, { phase: 'start-up', stage: 'controls', ...over });
const settle = (steps: PlanStep[], over: Partial<typeof machine> = {}) =>
  settleSteps({ ...machine, asLeft: [], assemblies: [], skippedSteps: [], ...over }, steps);
const afterOf = (steps: readonly PlanStep[]) => Object.fromEntries(steps.map(({ id, after }) => [id, after]));

test('the start-up is one row, each step behind the one before it; paper waits for nobody and holds nobody up', () => {
  const steps = settle([
    step('wash'),
    sheetStep('brakes'),
    sheetStep('paper', { stage: 'paperwork' }),
    sheetStep('lights'),
    sheetStep('horn', { after: ['lights'] }),
  ]);
  expect(afterOf(steps)).toEqual({ wash: [], paper: [], brakes: [], lights: ['brakes'], horn: ['lights'] });
});

test('lay-up and swap stand before look-ins and winter work, and these before the start-up', () => {
  const steps = settle([
    sheetStep('ride'),
    step('bench', { phase: 'winter' }),
    step('look', { phase: 'look-in' }),
    step('swap', { phase: 'swap' }),
    step('wash', { phase: 'lay-up' }),
  ]);
  const phases = steps.map((one) => one.phase);
  expect(new Set(phases.slice(0, 2))).toEqual(new Set(['lay-up', 'swap']));
  expect(new Set(phases.slice(2, 4))).toEqual(new Set(['look-in', 'winter']));
  expect(phases[4]).toBe('start-up');
});

test('what came after a step that is left out comes after what that step came after', () => {
  const steps = settle(
    [
      step('wash'),
      step('rinse', { after: ['wash'] }),
      step('dry', { after: ['rinse', 'wash'] }),
      step('cover', { after: ['dry'] }),
    ],
    { skippedSteps: ['rinse', 'dry'].map((stepId) => ({ stepId, date: '2026-10-25' })) },
  );
  expect(afterOf(steps)).toEqual({ wash: [], cover: ['wash'] });
});

test('a ladder of steps that are left out is climbed once, however many ways lead up it', () => {
  // Each rung comes after the two below it: of sixty there are more than 10¹² ways (Fibonacci numbers).
  const rungs = Array.from({ length: 60 }, (_, i) =>
    step(`rung${i}`, { after: [i > 0 ? `rung${i - 1}` : 'wash', i > 1 ? `rung${i - 2}` : 'wash'] }),
  );
  const steps = settle([step('wash'), ...rungs, step('cover', { after: ['rung59'] })], {
    skippedSteps: rungs.map(({ id }) => ({ stepId: id, date: '2026-10-25' })),
  });
  expect(afterOf(steps)).toEqual({ wash: [], cover: ['wash'] });
});

test('a start-up step that opens something is on the sheet unless all of it is open already', () => {
  const steps = settle([
    step('plugs', { opens: ['lead-off'] }),
    sheetStep('look', { opens: ['lead-off', 'guard-off'] }),
    sheetStep('again', { opens: ['lead-off', 'guard-off'] }),
    sheetStep('close', { closes: ['lead-off', 'guard-off'] }),
  ]);
  expect(steps.map(({ id }) => id)).toEqual(['plugs', 'look', 'close']);
});

test('a step closes only what is open by then, and one that closes nothing is not on the sheet', () => {
  const steps = settle([
    step('plug', { opens: ['exhaust-plugged'] }),
    sheetStep('unplug', { closes: ['exhaust-plugged', 'intake-plugged'] }),
    sheetStep('unplug-again', { closes: ['exhaust-plugged'] }),
    sheetStep('refit', { closes: ['assembly:seat'] }),
  ]);
  expect(steps.map(({ id, closes }) => [id, closes])).toEqual([
    ['plug', []],
    ['unplug', ['exhaust-plugged']],
  ]);
  const left = settle([sheetStep('refit', { closes: ['assembly:seat'] }), sheetStep('other', { closes: ['seat'] })], {
    asLeft: [{ item: 'seat' }],
    assemblies: [{ ...machine.assemblies[0]!, id: 'seat' }],
  });
  expect(left.map(({ id }) => id)).toEqual(['refit']);
});

test('no step is due after what follows it, nor begins before what it follows', () => {
  const days = (earliest?: string, latest?: string) => ({ earliest, latest });
  const steps = settle([
    step('a', days('2026-11-01', '2026-12-31')),
    step('b', { ...days('2026-10-01', '2026-11-20'), after: ['a'] }),
    step('c', { ...days('2026-09-01', '2026-12-24'), after: ['b'] }),
    step('free', { earliest: undefined, latest: undefined, after: ['a'] }),
    step('past', { ...days('2026-09-01', '2026-10-15'), after: ['late'] }),
    step('late', days('2026-10-20', '2026-10-30')),
  ]);
  const of = Object.fromEntries(steps.map(({ id, earliest, latest }) => [id, [earliest, latest]]));
  expect(of).toMatchObject({
    a: ['2026-11-01', '2026-11-20'],
    b: ['2026-11-01', '2026-11-20'],
    c: ['2026-11-01', '2026-12-24'],
    free: [undefined, undefined],
    late: ['2026-10-15', '2026-10-15'],
    past: ['2026-10-15', '2026-10-15'],
  });
});

test('an item opened twice, closed unopened, or never closed is told with its step and what to do', () => {
  const own = [
    procedureOf({
      id: 'own',
      phase: 'lay-up',
      file: 'procedures/own.yaml',
      at: { 'steps.1': { line: 9, column: 5 }, 'steps.1.opens.0': { line: 12, column: 9 } },
      steps: [
        stepOf({ id: 'plug', opens: [{ item: 'plugged', state: 'plugged', safetyCritical: true }] }),
        stepOf({ id: 'plug-too', opens: [{ item: 'plugged', state: 'plugged', safetyCritical: true }] }),
        stepOf({ id: 'take', opens: [{ item: 'taken', state: 'taken out', safetyCritical: false }] }),
      ],
    }),
  ];
  const steps = [
    step('own.plug', { opens: ['plugged'] }),
    step('own.plug-too', { opens: ['plugged'] }),
    step('own.take', { opens: ['taken'] }),
    sheetStep('free', { closes: ['plugged'] }),
    sheetStep('free-too', { closes: ['plugged'] }),
  ];
  const { items, problems } = buildLedger({ ...machine, asLeft: [] }, steps, own);
  expect(problems.map(({ file, line, item, what }) => ({ file, line, item, what }))).toEqual([
    { file: 'procedures/own.yaml', line: 12, item: 'plugged', what: expect.stringContaining('own.plug has opened') },
    { file: machine.file, line: 1, item: 'plugged', what: expect.stringContaining('which is not open at that point') },
    { file: 'procedures/own.yaml', line: 1, item: 'taken', what: expect.stringContaining('no step that closes it') },
  ]);
  expect(problems.every((problem) => problem.fix.endsWith('.'))).toBe(true);
  expect(items.find((item) => item.item === 'plugged')).toMatchObject({
    state: 'plugged',
    safetyCritical: true,
    openedBy: 'own.plug',
    closedBy: 'free',
  });
});

test('an item of a step that is repeated has the words of that step and of what it is repeated for', () => {
  const lift = (over: { id: string }) =>
    stepOf({ opens: [{ item: 'off-ground', state: 'lifted', safetyCritical: true }], ...over });
  const state = (over: object) => {
    const own = [procedureOf({ id: 'own', phase: 'lay-up', steps: [lift({ id: 'lift', ...over })] })];
    const steps = [
      step('own.lift', { opens: ['off-ground:front'] }),
      sheetStep('down', { closes: ['off-ground:front'] }),
    ];
    return buildLedger({ ...machine, asLeft: [] }, steps, own).items.map((item) => [item.state, item.safetyCritical]);
  };
  expect(state({ each: 'tyre' })).toEqual([['lifted (front)', true]]);
  // Of a step that stands once it is another item, of which no more is known than its id.
  expect(state({})).toEqual([['off ground:front', false]]);
});

test('an assembly in the ledger goes by its name, and is as safety-critical as it is', () => {
  const assemblies = ['seat', 'caliper'].map((id) => ({
    ...machine.assemblies[0]!,
    id,
    name: `The ${id}`,
    safetyCritical: id === 'caliper',
  }));
  const steps = ['seat', 'caliper'].flatMap((id) => [
    step(`off.${id}`, { opens: [`assembly:${id}`] }),
    sheetStep(`on.${id}`, { stage: 'refit', closes: [`assembly:${id}`] }),
  ]);
  const { items } = buildLedger({ ...machine, asLeft: [], assemblies }, settle(steps, { assemblies }), []);
  expect(items.map(({ state, safetyCritical }) => [state, safetyCritical])).toEqual([
    ['The seat: off', false],
    ['The caliper: off', true],
  ]);
});
