import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Desk } from '../../src/browser/planner/desk.ts';
import { emptyRecord } from '../../src/planner/bench-record.ts';
import type { Household } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { publishInputs } from '../../src/publish/inputs.ts';
import { readWith } from '../content/helpers.ts';
import { library } from '../planner/tasks/library.ts';

const TODAY = '2026-11-25';
let folder: string;
let plan: SeasonPlan;

/** So many machines as the workshop's bike in one shed, every second with a battery that has been read as low. */
function club(machines: number): Household {
  const { household } = readWith({}, 'workshop');
  const [bike] = household!.machines;
  const low = [{ date: '2026-11-21', volts: 12.25, temperatureC: 4, restedH: 400 }];
  return {
    ...household!,
    procedures: library(),
    machines: Array.from({ length: machines }, (_, i) => ({
      ...bike!,
      id: `bike-${i}`,
      name: `Bike ${i}`,
      readings: i % 2 === 0 ? low : [],
      jobs: [],
    })),
  };
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'idle-inputs-'));
  const household = club(26);
  plan = planSeason(household, { asOf: TODAY, withoutWhatIf: true }).plan;
  publishInputs(household, plan, folder, []);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('of a large household each machine has a file of those that share its trips, and what is worked out from it is the build’s', async () => {
  expect(readdirSync(folder).sort()).toEqual(['machines', 'plan', 'procedures.json']);
  const desk = new Desk({ base: '', methods: {} }, async (path) =>
    JSON.parse(readFileSync(join(folder, path), 'utf8')),
  );
  const charged = plan.machines.filter((m) => m.battery!.charges.length > 0);
  expect(charged.length).toBeGreaterThan(1);
  for (const machine of [charged[0]!, charged.at(-1)!]) {
    const record = {
      input: `machines/${machine.id}/input.json`,
      machine: machine.id,
      asOf: TODAY,
      now: `${TODAY}T19:00:00Z`,
    };
    const { charges, sections, steps } = await desk.record({ ...record, records: {} });
    expect(charges).toEqual(machine.battery!.charges.map((c) => c.date));
    const days = new Map(machine.steps.map((s) => [s.id, s.date]));
    for (const step of steps.rest) expect([step.id, step.date]).toEqual([step.id, days.get(step.id)]);
    // The days of work depend on machines that are not in the file: nothing is said of them.
    expect(Object.keys(sections)).toEqual(['battery']);
    expect([...steps['lay-up'], ...steps['start-up']]).toEqual([]);
    const given = { ...emptyRecord(), charged: [{ date: TODAY, toPct: 100 }] };
    expect((await desk.record({ ...record, records: { [machine.id]: given } })).charges).not.toEqual(charges);
  }
}, 120_000);
