import { expect, test } from 'vitest';
import type { Machine } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { readWith } from '../content/helpers.ts';
import { library } from './tasks/library.ts';

/** The plan of the workshop's bike with this in its record. */
function planWith(record: Partial<Machine> = {}) {
  const { household } = readWith({}, 'workshop');
  const machines = household!.machines.map((m) => (m.id === 'bike' ? { ...m, ...record } : m));
  const { plan, problems } = planSeason({ ...household!, machines, procedures: library() }, { asOf: '2026-11-25' });
  expect(problems).toEqual([]);
  const bike = plan.machines.find((m) => m.id === 'bike')!;
  return { bike, open: plan.ledger.filter((l) => l.machine === 'bike').map((l) => l.item), warnings: bike.warnings };
}

const on = '2026-11-21';

test('what a step left out on purpose would have opened is not open, and the start-up sheet does not close it', () => {
  const as = planWith();
  expect(as.open).toContain('exhaust-plugged');
  const closes = as.bike.steps.find((s) => s.closes.includes('exhaust-plugged'))!.id;
  const { bike, open } = planWith({ skippedSteps: [{ stepId: 'plugs-in.exhaust', date: on, why: 'No plug' }] });
  expect(open).toEqual(as.open.filter((item) => item !== 'exhaust-plugged'));
  expect(bike.steps.map((s) => s.id)).toEqual(
    as.bike.steps.map((s) => s.id).filter((id) => id !== 'plugs-in.exhaust' && id !== closes),
  );
  expect(bike.notes.at(-1)).toMatchObject({
    date: on,
    text: expect.stringMatching(/^Left out on purpose: .*\(No plug\)$/),
  });
});

test('a check before the ride cannot be left out, and the record is told so', () => {
  const stepId = 'start-up-controls.hydraulic-brakes';
  const { bike, warnings } = planWith({ skippedSteps: [{ stepId, date: on }] });
  expect(bike.steps.find((s) => s.id === stepId)?.doNotRide).toBeTruthy();
  expect(warnings.filter((w) => w.about === 'record').map((w) => w.text)).toEqual([
    expect.stringContaining('which cannot be left out'),
  ]);
});

test('a step that there is not is not ticked in silence', () => {
  const { warnings } = planWith({
    doneSteps: [
      { stepId: 'plugs-in.exhausts', date: on },
      { stepId: 'wash.wash', date: on },
      // Of another season's plan: its fuel is not drained in this one, or its tyres were three.
      { stepId: 'fuel-drain.tank', date: on },
      { stepId: 'tyres.pressure.3', date: on },
      { stepId: 'job.gone', date: on },
    ],
  });
  expect(warnings.filter((w) => w.about === 'record').map((w) => w.text)).toEqual([
    expect.stringContaining('"plugs-in.exhausts"'),
  ]);
});
