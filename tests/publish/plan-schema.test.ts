import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { readFolder } from '../../src/content/read-folder.ts';
import { daysBetween } from '../../src/planner/dates.ts';
import { planSeason } from '../../src/planner/plan.ts';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { machinePlanSchema, planJsonSchema, seasonPlanSchema } from '../../src/publish/plan-schema.ts';
import { withoutPaths } from '../fixtures/without-paths.ts';

let plan: SeasonPlan;

beforeAll(() => {
  const { household, problems } = readFolder('content', { asOf: '2026-11-25', procedures: 'content/procedures' });
  expect(problems).toEqual([]);
  plan = planSeason(household!, { asOf: '2026-11-25' }).plan;
});

test('the demo household is planned without an open item left open', () => {
  expect(plan.ledger.length).toBeGreaterThan(0);
  for (const item of plan.ledger) expect(item.closedBy, `${item.machine} ${item.item}`).not.toBe('');
});

test('a published plan is what its schema says, after a trip through JSON', () => {
  const published: unknown = JSON.parse(JSON.stringify(withoutPaths(plan)));
  expect(z.prettifyError(seasonPlanSchema.safeParse(published).error ?? new z.ZodError([]))).toBe('');
});

test("a machine's own file is what its schema says and has the battery's daily paths", () => {
  for (const machine of plan.machines) {
    const published: unknown = JSON.parse(JSON.stringify(machine));
    expect(z.prettifyError(machinePlanSchema.safeParse(published).error ?? new z.ZodError([]))).toBe('');
    const days = daysBetween(machine.season.lastUse, machine.season.firstUse) + 1;
    for (const path of Object.values(machine.battery?.paths ?? {})) expect(path).toHaveLength(days);
    expect(machine.battery?.paths).toBeDefined();
  }
});

test('the JSON Schema describes every field that the household plan has', () => {
  const schema = planJsonSchema() as { properties: Record<string, unknown> };
  expect(Object.keys(schema.properties).sort()).toEqual(Object.keys(plan).sort());
});

test('there are as many machines in the plan as machine files in the content', () => {
  const files = readdirSync(join('content', 'machines')).filter((name) => name.endsWith('.yaml'));
  expect(plan.machines.map((machine) => `${machine.id}.yaml`).sort()).toEqual(files.sort());
  expect(readFileSync(join('content', 'household.yaml'), 'utf8')).toContain('Tarn Hollow');
});

test('the same household and day give the same plan', () => {
  const again = readFolder('content', { asOf: '2026-11-25', procedures: 'content/procedures' }).household!;
  expect(JSON.stringify(planSeason(again, { asOf: '2026-11-25' }).plan)).toBe(JSON.stringify(plan));
});
