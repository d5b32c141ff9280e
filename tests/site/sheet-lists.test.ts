import { expect, test } from 'vitest';
import type { LedgerItem, MachinePlan, PlanStep } from '../../src/planner/season-plan.ts';
import { formatOf } from '../../src/site/formats.ts';
import { sheetGroups } from '../../src/site/sheet-groups.ts';
import { openOfSheet, restSteps, stepsOfSheet } from '../../src/site/sheet-lists.ts';
import { aStep } from '../fixtures/plan.ts';
import { demoMachines } from '../fixtures/site-plan.ts';

const item = (over: Partial<LedgerItem>): LedgerItem => ({
  machine: 'mower',
  item: 'x',
  state: 'x',
  openedBy: 'lay.up',
  closedBy: 'start.close',
  safetyCritical: true,
  ...over,
});

// By definition: open when the sheet is taken up is what was opened before it and is still to be closed by it.
test('what a sheet opens itself is not open when it is taken up, nor what is closed already or is of another machine', () => {
  const steps = [
    aStep('start.lead-off', 'start-up', 'Lead off'),
    aStep('start.close', 'start-up', 'Close'),
    aStep('start.done', 'start-up', 'Done', { done: true }),
  ];
  const ledger = [
    item({ item: 'from-the-lay-up' }),
    item({ item: 'from-the-sheet', openedBy: 'start.lead-off' }),
    item({ item: 'closed-already', closedBy: 'start.done' }),
    item({ item: 'of-another', machine: 'car' }),
  ];
  expect(openOfSheet(ledger, 'mower', steps).map((one) => one.item)).toEqual(['from-the-lay-up']);
});

test('of look-ins and winter work, what is still to be done comes first, then what is done or past, each by day', () => {
  const look = (id: string, date?: string, done = false) => aStep(id, 'look-in', id, { date, done });
  const steps = [
    look('past', '2026-12-16'),
    look('done', '2027-01-16', true),
    look('today', '2026-12-20'),
    aStep('winter', 'winter', 'No day yet'),
    look('next', '2027-02-14'),
    aStep('lay-up', 'lay-up', 'Of a sheet'),
  ];
  expect(restSteps({ steps }, '2026-12-20').map(({ id }) => id)).toEqual(['today', 'next', 'winter', 'past', 'done']);
});

test('a lay-up sheet goes by days, on a day by what is done, then by the session, then by the plan', () => {
  const step = (id: string, date?: string, done = false) => aStep(id, 'lay-up', id, { date, done });
  const steps = [
    step('no-day'),
    step('wash', '2026-11-01'),
    step('oil', '2026-11-01'),
    step('papers', '2026-11-01', true),
    step('dry', '2026-11-01', true),
    step('before', '2026-10-25', true),
    step('of-no-session', '2026-11-01'),
  ];
  const [machine] = demoMachines();
  const session = (ids: string[]) => ({
    id: 'session-2026-11-01',
    date: '2026-11-01',
    start: '10:00',
    hours: 2,
    title: '',
    steps: ids.map((id) => ({ machine: machine!.id, step: id })),
  });
  const shown = stepsOfSheet({ ...machine!, steps }, 'lay-up', [session(['oil', 'wash'])]);
  expect(shown.map(({ id }) => id)).toEqual(['before', 'papers', 'dry', 'oil', 'wash', 'of-no-session', 'no-day']);
});

const format = formatOf({ locale: 'en-GB', clock: '24h', units: 'metric', asOf: '2026-11-29' });
const withSteps = (steps: PlanStep[]) =>
  ({ id: 'car', steps, startUp: { start: '2027-04-03', firstUse: '2027-04-10' } }) as unknown as MachinePlan;
const headings = (steps: readonly PlanStep[], kind: 'lay-up' | 'start-up') =>
  sheetGroups(steps, kind, 'car', format).map(({ heading, runs }) => [
    heading,
    runs.flatMap((run) => run.steps.map(({ step }) => step.id)),
  ]);

// Common practice: a tank is run down before the last use, not when all else is put away.
test('on a sheet by days, what has found no day stands where it would be late', () => {
  const steps = [
    aStep('wash', 'lay-up', 'Wash', { date: '2026-10-25' }),
    aStep('cover', 'lay-up', 'Cover', { date: '2026-11-15' }),
    aStep('low-tank', 'lay-up', 'Run the tank down', { latest: '2026-10-20' }),
    aStep('oil-away', 'lay-up', 'Used oil away'),
  ];
  const sheet = stepsOfSheet(withSteps(steps), 'lay-up', []);
  expect(headings(sheet, 'lay-up')).toEqual([
    [expect.stringMatching(/^Without a day yet: to be done by .*20 Oct/), ['low-tank']],
    [expect.stringContaining('25 Oct'), ['wash']],
    [expect.stringContaining('15 Nov'), ['cover']],
    ['Without a day yet', ['oil-away']],
  ]);
  // Where no step has a day, they stand as they were given.
  const undated = steps.map((step) => ({ ...step, date: undefined }));
  const plain = stepsOfSheet(withSteps(undated), 'lay-up', []);
  expect(headings(plain, 'lay-up')).toEqual([['In this order', ['wash', 'cover', 'low-tank', 'oil-away']]]);
});

// Source: ASTM D3321 practice; a coolant of unknown strength is tested as long as the cold is to come.
test('a coolant test that the lay-up left undone is a line of the start-up sheet, with the fluids', () => {
  const late = (over: Partial<PlanStep>) =>
    aStep('coolant.test', 'lay-up', 'Test it', { useUntil: '2027-05-01', ...over });
  const start = [
    aStep('cover-off', 'start-up', 'Cover off', { stage: 'refit' }),
    aStep('oil', 'start-up', 'Oil', { stage: 'fluids' }),
  ];
  const sheet = (test: PlanStep) => stepsOfSheet(withSteps([test, ...start]), 'start-up', []).map(({ id }) => id);
  expect(sheet(late({ date: '2027-04-03' }))).toEqual(['cover-off', 'coolant.test', 'oil']);
  expect(
    headings(stepsOfSheet(withSteps([late({ date: '2027-04-04' }), ...start]), 'start-up', []), 'start-up'),
  ).toEqual([
    [expect.any(String), ['cover-off']],
    [expect.stringMatching(/fluid/i), ['coolant.test', 'oil']],
  ]);
  // Done, or with a day of its own before: the lay-up's sheet has it.
  expect(sheet(late({ date: '2027-04-03', done: true }))).toEqual(['cover-off', 'oil']);
  expect(sheet(late({ date: '2027-02-03' }))).toEqual(['cover-off', 'oil']);
  expect(sheet(late({ date: '2027-04-03', useUntil: undefined }))).toEqual(['cover-off', 'oil']);
});
