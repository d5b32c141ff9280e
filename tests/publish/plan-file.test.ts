/** The household's plan as files: what was written is read, whoever reads it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readBrief, writeBrief } from '../../src/publish/brief.ts';
import { writePlan } from '../../src/publish/plan-file.ts';
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
const read = () => JSON.parse(readFileSync(path, 'utf8'));

test('is JSON, with each machine on a line of its own; each machine is given whole', () => {
  const given: unknown[] = [];
  writePlan({ ...season, machines: withPaths }, path, (id, json) =>
    given.push([id, JSON.parse(Buffer.concat(json).toString())]),
  );
  expect(given).toEqual(withPaths.map((machine) => [machine.id, asJson(machine)]));
  expect(withPaths.some(({ battery }) => battery)).toBe(true);
  expect(withPaths.some(({ battery }) => !battery)).toBe(true);
  expect(read()).toEqual(asJson(withoutPaths(season)));
  const lines = readFileSync(path, 'utf8').split('\n');
  expect(lines.filter((line) => line.startsWith('{"id"'))).toHaveLength(season.machines.length);
});

test('without machines', () => {
  writePlan({ ...season, machines: [] }, path, nothing);
  expect(read()).toEqual(asJson({ ...season, machines: [] }));
});

test('with line breaks, brackets, quotes and letters of several bytes in its texts', () => {
  const names = ['a\n{"id":1}', '"machines":[', ']}\r\n', '\u2028', '  {', 'Älg – 40 °C', '🚜'];
  const machines = names.map((name) => ({ ...withPaths[0]!, name }));
  const given: string[] = [];
  writePlan({ ...season, machines }, path, (_, json) => given.push(JSON.parse(Buffer.concat(json).toString()).name));
  expect(given).toEqual(names);
  expect(read().machines.map(({ name }: { name: string }) => name)).toEqual(names);
});

test('in brief it has nothing that the plan has not, all of the household and every step of a machine', () => {
  writeBrief(season, folder);
  const { machines, ...rest } = readBrief(folder);
  expect(rest).toEqual(asJson({ ...season, machines: undefined }));
  expect(asJson(season.machines)).toMatchObject(machines);
  expect(machines.map(({ steps }) => steps.map(({ id }) => id))).toEqual(
    season.machines.map(({ steps }) => steps.map(({ id }) => id)),
  );
});
