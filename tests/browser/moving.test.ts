import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Shown, type Slot, show } from '../../src/browser/planner/show.ts';
import { readFolder } from '../../src/content/read-folder.ts';
import { addDays } from '../../src/planner/dates.ts';
import type { Household } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { planMoved } from '../../src/planner/plan-moved.ts';
import { PROJECT, TODAY } from './site.ts';

const ID = 'juniper';
const { household: demo } = readFolder(join(PROJECT, 'content'), { asOf: TODAY });

const lastUseOn = (household: Household, lastUse: string): Household => ({
  ...household,
  machines: household.machines.map((m) => (m.id === ID ? { ...m, season: { ...m.season, lastUse } } : m)),
});

const HOW = { methods: {}, form: false };

/** What the slider shows on that day between two frames, and what is shown when it is let go there. */
function shownOn(household: Household, lastUse: string): { moving: Shown; whole: Shown } {
  const before = planSeason(household, { asOf: TODAY, quick: true }).plan;
  const moved = lastUseOn(household, lastUse);
  return {
    moving: show(planMoved(moved, before, ID), ID, { ...HOW, moving: 'plan' }),
    whole: show(planSeason(moved, { asOf: TODAY, withoutWhatIf: true }).plan, ID, HOW),
  };
}

const days = [-14, -3, 1, 12, 30].map((d) => addDays('2026-10-25', d));

test.each(days)('on %s a machine alone shows, while it moves, all but the days of work as when it is let go', (day) => {
  const alone = { ...demo!, machines: demo!.machines.filter((m) => m.id === ID) };
  const { moving, whole } = shownOn(alone, day);
  const inSight = Object.keys(moving.slots) as Slot[];
  expect(inSight).toEqual(['warnings', 'dates', 'ring', 'battery', 'fluids', 'air', 'days', 'assumed']);
  for (const slot of inSight) {
    if (slot === 'days' || slot === 'ring' || slot === 'dates') continue;
    expect(moving.slots[slot], slot).toBe(whole.slots[slot]);
    expect(moving.folds[slot], slot).toEqual(whole.folds[slot]);
  }
});

test.each(days)('on %s a machine among others shows the charges and amounts of all planned together', (day) => {
  const { moving, whole } = shownOn(demo!, day);
  for (const slot of ['battery', 'fluids', 'air', 'assumed'] as const) {
    expect(moving.slots[slot], slot).toBe(whole.slots[slot]);
    expect(moving.folds[slot], slot).toEqual(whole.folds[slot]);
  }
});

test('while a sheet is in sight it moves, and nothing else is made', () => {
  const before = planSeason(demo!, { asOf: TODAY, quick: true }).plan;
  const plan = planMoved(lastUseOn(demo!, '2026-11-01'), before, ID);
  expect(Object.keys(show(plan, ID, { ...HOW, moving: 'start-up' }).slots)).toEqual(['start-up']);
  expect(plan.machines).toHaveLength(demo!.machines.length);
  expect(plan.sessions.some((s) => s.steps.some((step) => step.machine !== ID))).toBe(true);
});
