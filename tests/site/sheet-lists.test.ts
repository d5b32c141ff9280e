import { expect, test } from 'vitest';
import type { LedgerItem } from '../../src/planner/season-plan.ts';
import { openOfSheet } from '../../src/site/sheet-lists.ts';
import { aStep } from '../fixtures/plan.ts';

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
