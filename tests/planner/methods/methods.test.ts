import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { CHECKS, runChecks } from '../../../src/planner/methods/checks.ts';
import { METHODS, methodOf } from '../../../src/planner/methods/index.ts';

const PUBLISHED = join(import.meta.dirname, '../../published');
const files = Object.fromEntries(
  readdirSync(PUBLISHED)
    .filter((file) => file.endsWith('.json'))
    .map((file) => [file.replace(/\.json$/, ''), JSON.parse(readFileSync(join(PUBLISHED, file), 'utf8'))]),
);

test('every published value that the methods page prints is met, and says where it comes from', () => {
  const results = runChecks(files);
  expect(results.filter((r) => !r.met)).toEqual([]);
  for (const r of results) {
    expect(r.source, r.what).toMatch(/\w/);
    expect(r.status, r.what).toMatch(/\w/);
    expect(r.reason, r.what).toMatch(/\w/);
  }
  for (const check of CHECKS)
    expect(
      results.some((r) => r.method === check.method),
      check.method,
    ).toBe(true);
});

test('a value that has drifted is reported as not met', () => {
  const drifted = structuredClone(files);
  (drifted.fuel as { alpha: { alphaPerK: number }[] }).alpha[0]!.alphaPerK *= 1.01;
  expect(
    runChecks(drifted)
      .filter((r) => !r.met)
      .map((r) => r.method),
  ).toEqual(['fuel.expansion']);
});

test('a list that has gone from its file is a fault, a file that is not there is none', () => {
  expect(() => runChecks({ fuel: {} })).toThrow(/fuel\.json: expected a list/);
  expect(runChecks({})).toEqual([]);
});

test('every key that a derivation names stands in the register', () => {
  const planner = join(import.meta.dirname, '../../../src/planner');
  const keys = readdirSync(planner, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.startsWith('methods'))
    .flatMap((file) => [...readFileSync(join(planner, file), 'utf8').matchAll(/\bmethod: ['`]([\w.-]+)(\.?\$\{)?/g)])
    .map((match) => match[1]!);
  expect(keys.length).toBeGreaterThan(20);
  for (const key of keys) expect(methodOf(key) ?? METHODS.find((m) => m.key.startsWith(key)), key).toBeDefined();
});

test('each method has its own key, an equation, a source', () => {
  expect(new Set(METHODS.map((m) => m.key)).size).toBe(METHODS.length);
  for (const m of METHODS) {
    expect(m.equation, m.key).not.toBe('');
    expect(m.sources.length, m.key).toBeGreaterThan(0);
  }
});
