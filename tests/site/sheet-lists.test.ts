import { expect, test } from 'vitest';
import type { LedgerItem } from '../../src/planner/season-plan.ts';
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
