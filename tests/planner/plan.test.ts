/** What the composition itself decides; each model has tests of its own. */
import { expect, test } from 'vitest';
import { addDays } from '../../src/planner/dates.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { startUpChargeFrom } from '../../src/planner/start-up-charge.ts';
import { readWith } from '../content/helpers.ts';
import { yard } from './agenda/world.ts';
import { COVER } from './cover.ts';
import { machine } from './fluids/fixture.ts';
import { library } from './tasks/library.ts';

test('of a machine’s warnings the gravest comes first', () => {
  const season = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: true, reasons: [] };
  const home = yard({}, { machines: [machine({ season })], procedures: COVER });
  const { plan } = planSeason(home, { asOf: '2026-10-01', quick: true });
  const levels = plan.machines[0]!.warnings.map(({ level }) => level);
  // Without an hour the lay-up is late (a warning), nothing makes the machine ready (a danger); proposed dates are a note.
  expect(new Set(levels)).toEqual(new Set(['danger', 'warning', 'note']));
  const grave = { danger: 0, warning: 1, note: 2 };
  expect(levels).toEqual(levels.toSorted((a, b) => grave[a] - grave[b]));
});

test('what is said of a machine stands with the machine, and with the household only what is of all', () => {
  const season = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: true, reasons: [] };
  const machines = ['juniper', 'magpie'].map((id) => machine({ id, name: id, season }));
  const { plan } = planSeason(yard({}, { machines, procedures: COVER }), { asOf: '2026-10-01', quick: true });
  expect(plan.warnings.every((warning) => warning.machine === undefined)).toBe(true);
  for (const { id, warnings } of plan.machines) {
    expect(warnings.length).toBeGreaterThan(1);
    expect(warnings.every((warning) => warning.machine === id)).toBe(true);
  }
});

test('no charge of the rest, and no trip for one, falls on the days of a start-up that charges', () => {
  const { machines, ...home } = readWith({}, 'workshop').household!;
  const merged = [3, 7, 8, 11].map((days) => {
    const season = { ...machines[0]!.season, firstUse: addDays('2027-08-06', days) };
    const household = { ...home, machines: [{ ...machines[0]!, season }], procedures: library() };
    const { plan } = planSeason(household, { asOf: '2026-11-25', quick: true, withoutReminders: true });
    const [bike] = plan.machines;
    const from = startUpChargeFrom(bike!.steps)!;
    const { charges, chargeAtStartUp } = bike!.battery!;
    expect(charges.length).toBeGreaterThan(0);
    for (const { date } of [...charges, ...plan.trips]) expect(date < from).toBe(true);
    return chargeAtStartUp !== undefined && chargeAtStartUp.due >= from;
  });
  // The interval between charges ends within some of these start-ups, and before others.
  expect(new Set(merged)).toEqual(new Set([true, false]));
});
