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
const whole = (file: string) => readPlan(file, (machine) => machine);

test('is JSON, with each machine on a line of its own, and is read again; each machine is given whole', () => {
  const given: unknown[] = [];
  writePlan({ ...season, machines: withPaths }, path, (id, json) =>
    given.push([id, JSON.parse(Buffer.concat(json).toString())]),
  );
  expect(given).toEqual(withPaths.map((machine) => [machine.id, asJson(machine)]));
  expect(withPaths.some(({ battery }) => battery)).toBe(true);
  const text = readFileSync(path, 'utf8');
  expect(JSON.parse(text)).toEqual(asJson(withoutPaths(season)));
  expect(text.split('\n').filter((line) => line.startsWith('{"id"'))).toHaveLength(season.machines.length);
  expect(whole(path)).toEqual(asJson(withoutPaths(season)));
});

test('without machines', () => {
  writePlan({ ...season, machines: [] }, path, nothing);
  expect(whole(path)).toEqual(asJson({ ...season, machines: [] }));
});

test('of one line, or of many', () => {
  for (const indent of [0, 2]) {
    writeFileSync(path, JSON.stringify(season, null, indent));
    expect(whole(path)).toEqual(asJson(season));
  }
});

test('with line breaks, brackets and quotes in its texts', () => {
  const names = ['a\n{"id":1}', '"machines":[', ']}\r\n', '\u2028', '  {'];
  const machines = names.map((name) => ({ ...season.machines[0]!, name }));
  writePlan({ ...season, machines }, path, nothing);
  expect(whole(path).machines.map(({ name }) => name)).toEqual(names);
});

test('of each machine what is asked for, however the lines are laid out', () => {
  const expected = season.machines.map(({ name }) => ({ name }));
  const written = [() => writePlan(season, path, nothing), () => writeFileSync(path, JSON.stringify(season))];
  for (const write of written) {
    write();
    const { machines, ...rest } = readPlan(path, ({ name }) => ({ name }));
    expect(machines).toEqual(expected);
    expect(rest).toEqual(asJson({ ...season, machines: undefined }));
  }
});

test('with a machine longer than what is read of the file at once, and letters that lie over that border', () => {
  const name = 'é'.repeat(1_200_000);
  for (const before of ['', 'a']) {
    writePlan({ ...season, machines: [{ ...season.machines[0]!, id: `m${before}`, name }] }, path, nothing);
    expect(whole(path).machines.map((machine) => machine.name)).toEqual([name]);
  }
});
