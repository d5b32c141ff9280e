/** The household's plan as a file: what was written is read, whoever laid the lines out. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readPlan, writePlan } from '../../src/publish/plan-file.ts';
import { demoMachines, sitePlan } from '../fixtures/site-plan.ts';
import { withoutPaths } from '../fixtures/without-paths.ts';

const folder = mkdtempSync(join(tmpdir(), 'plan-file-'));
const path = join(folder, 'plan.json');
afterAll(() => rmSync(folder, { recursive: true }));

const { season } = sitePlan(demoMachines());
const asJson = (value: unknown) => JSON.parse(JSON.stringify(value));

const paths = { low: [], expected: [], high: [] };
const withPaths = season.machines.map((machine) =>
  machine.battery ? { ...machine, battery: { ...machine.battery, paths } } : machine,
);
const nothing = () => undefined;

test('is JSON, with each machine on a line of its own, and is read again; each machine is given whole', () => {
  const given: unknown[] = [];
  writePlan({ ...season, machines: withPaths }, path, (id, json) => given.push([id, JSON.parse(json)]));
  expect(given).toEqual(withPaths.map((machine) => [machine.id, asJson(machine)]));
  expect(withPaths.some(({ battery }) => battery)).toBe(true);
  const text = readFileSync(path, 'utf8');
  expect(JSON.parse(text)).toEqual(asJson(withoutPaths(season)));
  expect(text.split('\n').filter((line) => line.startsWith('{"id"'))).toHaveLength(season.machines.length);
  expect(readPlan(path)).toEqual(asJson(withoutPaths(season)));
});

test('without machines', () => {
  writePlan({ ...season, machines: [] }, path, nothing);
  expect(readPlan(path)).toEqual(asJson({ ...season, machines: [] }));
});

test('of one line, or of many', () => {
  for (const indent of [0, 2]) {
    writeFileSync(path, JSON.stringify(season, null, indent));
    expect(readPlan(path)).toEqual(asJson(season));
  }
});

test('with line breaks, brackets and quotes in its texts', () => {
  const names = ['a\n{"id":1}', '"machines":[', ']}\r\n', '\u2028', '  {'];
  const machines = names.map((name) => ({ ...season.machines[0]!, name }));
  writePlan({ ...season, machines }, path, nothing);
  expect(readPlan(path).machines.map(({ name }) => name)).toEqual(names);
});
