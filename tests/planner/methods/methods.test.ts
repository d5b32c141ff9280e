import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Case, CHECKS, type Check, runChecks } from '../../../src/planner/methods/checks.ts';
import { METHODS } from '../../../src/planner/methods/index.ts';
import { SHORT_REST_DAYS } from '../../../src/planner/rest-length.ts';
import { planTyres } from '../../../src/planner/tyres/index.ts';
import { household, machine, place, storeYear } from '../fluids/fixture.ts';

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
  const hasRow = (key: string) =>
    METHODS.some((m) => key === m.key || key.startsWith(`${m.key}.`) || m.key.startsWith(key));
  expect(keys.filter((key) => !hasRow(key))).toEqual([]);
});

test('each method has its own key, an equation, a source', () => {
  expect(new Set(METHODS.map((m) => m.key)).size).toBe(METHODS.length);
  for (const m of METHODS) {
    expect(m.equation, m.key).not.toBe('');
    expect(m.sources.length, m.key).toBeGreaterThan(0);
  }
});

test('the page says of standing tyres what their derivation says: four weeks', () => {
  const { plan } = planTyres({ machine: machine(), place: place(), store: storeYear(), household: household() });
  const row = METHODS.find((m) => m.key === 'tyres.set')!;
  expect(plan[0]!.derivations[0]!.equation).toBe(row.equation);
  expect(row.equation).toContain('for four weeks or more');
  expect(SHORT_REST_DAYS).toBe(4 * 7);
});

const check = (file: string, list: string, nth = 0): Check =>
  CHECKS.filter((c) => c.file === file && c.list === list)[nth]!;
const given = (fields: Record<string, unknown>): Case => ({ ...fields, source: 'a handbook', status: 'SEEN' });

test.each<[string, Check, Record<string, unknown>, number]>([
  [
    'a laboratory table of whole °F',
    check('battery', 'gravityFreezing'),
    { table: 'OD1002', specificGravity: 1.22 },
    0.6,
  ],
  ['the same above its fit', check('battery', 'gravityFreezing'), { table: 'OD1002', specificGravity: 1.23 }, 1.5],
  ['a table in steps of 5 °F', check('battery', 'gravityFreezing'), { table: 'TM', specificGravity: 1.2 }, 2.1],
  ['a small pressure, printed to 0.01 Pa', check('psychrometrics', 'saturation'), { overWaterPa: 50 }, 0.01],
  ['a pressure printed to five digits', check('psychrometrics', 'saturation'), { overWaterPa: 2000 }, 0.2],
  ['a small pressure over ice', check('psychrometrics', 'saturation', 1), { overIcePa: 50 }, 0.01],
  ['a pressure over ice', check('psychrometrics', 'saturation', 1), { overIcePa: 500 }, 0.05],
  ['a standard that rounds three ways', check('desiccant', 'milBarrier'), { units: 100 }, 1.1],
  ['an older determination', check('coolant', 'lange'), {}, 1.2],
  ['one that says it disagrees', check('coolant', 'lange'), { disagrees: 'weak end' }, 1.5],
  ['points that scatter by a tenth', check('fuel', 'e10'), { volPct: 0.5 }, 0.05],
  ['what is exact, to rounding', check('units', 'exact'), { si: -2 }, 2e-9],
  ['a fit, to its own residual', check('battery', 'acidFreezing'), {}, 0.13],
])('how far off counts as met: %s', (_, one, fields, tolerance) => {
  expect(one.tolerance(given(fields))).toBeCloseTo(tolerance, 12);
});

test.each<[string, Check, Record<string, unknown>, boolean]>([
  ['no load at 0 %, printed "or less"', check('battery', 'voltageNoLoad'), { stateOfChargePct: 0 }, true],
  ['no load at 25 %', check('battery', 'voltageNoLoad'), { stateOfChargePct: 25 }, false],
  ['acid that is only known to freeze below', check('battery', 'gravityFreezing'), { specificGravity: 1.3 }, true],
  ['acid that has a freezing point', check('battery', 'gravityFreezing'), { specificGravity: 1.2 }, false],
  ['ice where none is printed', check('psychrometrics', 'saturation', 1), { temperatureC: -5 }, true],
  ['ice above 0 °C', check('psychrometrics', 'saturation', 1), { temperatureC: 0.01, overIcePa: 612 }, true],
  ['ice at 0 °C', check('psychrometrics', 'saturation', 1), { temperatureC: 0, overIcePa: 611 }, false],
  ['no dew point', check('psychrometrics', 'points'), { dewPointC: null }, true],
  ['a dew point', check('psychrometrics', 'points'), { dewPointC: 3 }, false],
  ['another dimension', check('units', 'exact'), { dimension: 'mass' }, true],
  ['a torque', check('units', 'exact'), { dimension: 'torque' }, false],
])('what a list holds for another purpose is left out: %s', (_, one, fields, out) => {
  expect(one.leaveOut!(given(fields))).toBe(out);
});

test('a figure that is missing or no number is named with its source', () => {
  for (const [massPct, found] of [
    [undefined, 'undefined'],
    ['5', '5'],
    [Number.NaN, 'NaN'],
  ] as const)
    expect(() => check('battery', 'acidFreezing').ours(given({ massPct }))).toThrow(
      `published case: found massPct = ${found}, expected a number (a handbook)`,
    );
});

test('a case is met up to its tolerance and not beyond, and is printed as its file has it', () => {
  const at = (freezeC: number) =>
    runChecks({ coolant: { ashrae: [], swaps: [], lange: [given({ volPct: 0, freezeC })] } })[0]!;
  // Water freezes at 0 °C.
  expect(at(1.2)).toEqual({
    method: 'coolant.freezing-point',
    what: 'propylene glycol, 0 % by volume (Lange)',
    unit: '°C',
    published: 1.2,
    ours: 0,
    tolerance: 1.2,
    reason: 'whole °F of an older determination of pure glycol',
    source: 'a handbook',
    status: 'SEEN',
    met: true,
  });
  expect([at(-1.2).met, at(1.21).met, at(-1.21).met]).toEqual([true, false, false]);
});

test('each case is said with its own figures', () => {
  const said = runChecks(files).map((r) => r.what);
  for (const what of [
    'acid of 5 % by mass freezes at',
    'acid of specific gravity 1.1 freezes at (OD1002)',
    'saturation over water at −20 °C',
    'saturation over ice at −20 °C',
    'dew point of air at −10 °C and 80 %',
    'barrier of 336 square inches, 0 lb of wood',
    'propylene glycol, 5 % by volume (Lange)',
    'E10 at 15.6 °C holds',
    '100 kPa at 20 °C, read at −20 °C',
    '1 lbf·ft',
  ])
    expect(said).toContain(what);
  for (const what of said) expect(what).not.toMatch(/undefined|NaN|\[object| -\d/);
});

test('every method says what its symbols stand for and what it does not know, but those of arithmetic and of words', () => {
  const without = (list: 'symbols' | 'weaknesses') => METHODS.filter((m) => m[list].length === 0).map((m) => m.key);
  expect(without('weaknesses')).toEqual(['fuel.cans', 'fuel.drained-use-by', 'coolant.age', 'tyres.set']);
  expect(without('symbols')).toEqual(['fuel.choice', 'fuel.drained-use-by', 'work.ledger']);
  for (const m of METHODS) for (const line of [...m.sources, ...m.symbols, ...m.weaknesses]) expect(line).toMatch(/\w/);
});

test('a symbol of one letter that is explained stands in its equation', () => {
  for (const m of METHODS)
    for (const symbol of m.symbols.flatMap((line) => /^(\S{1,2}): /.exec(line)?.[1] ?? []))
      expect(m.equation, `${symbol} of ${m.key}`).toContain(symbol);
});
