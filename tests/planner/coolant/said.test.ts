/**
 * What is said of coolant, case by case and at its borders. Strengths are rows of the ASHRAE table of ethylene glycol, so that
 * freezing points are read off it: 22 % −10.2 °C, 49.6 % −36.4 °C, 57.8 % (its last) −48.3 °C. 5 K are wanted to spare.
 */
import { expect, test } from 'vitest';
import { glycolRow } from '../../../src/planner/coolant/glycols.ts';
import { drainAndReplace, freezingPointC, planCoolant, strengthFor } from '../../../src/planner/coolant/index.ts';
import type { Machine } from '../../../src/planner/household.ts';
import { coolant, household, machine, place } from '../fluids/fixture.ts';

type Own = Parameters<typeof coolant>[0];
interface At {
  designLowC?: number;
  firstFrostInStore?: string | undefined;
  asOf?: string;
  machine?: Partial<Machine>;
}

/** The fixture rests from 25 October 2026 to 10 April 2027; asked for −36.4 °C where nothing else is said. */
function told(own: Own | undefined, { machine: more, ...at }: At = {}) {
  const cooling = { kind: 'liquid' as const, ...(own && { coolant: coolant({ lastChanged: '2026-10-01', ...own }) }) };
  const { plan, warnings } = planCoolant({
    machine: machine({ cooling, ...more }),
    place: place(),
    household: household(),
    designLowC: -31.4,
    firstFrostInStore: '2026-11-02',
    asOf: '2026-10-01',
    ...at,
  })!;
  return {
    plan: { ...plan, text: metric(plan.text) },
    warnings: warnings.map((w) => ({ ...w, text: metric(w.text), act: metric(w.act) })),
  };
}

/** Without the second unit in brackets, which tests/planner/units hold. */
const metric = (text: string) => text.replace(/ \([−\d.]+ (?:°F|US gal)\)/g, '');

test('strong enough, to the row: nothing to do', () => {
  const { plan, warnings } = told({ strength: 0.496 });
  expect(plan).toMatchObject({
    needC: -36.4,
    strength: 0.496,
    freezeC: -36.4,
    enough: true,
    replaceL: 0,
    swaps: 0,
    text: '50 % freezes at −36 °C, −36 °C is needed: protected.',
  });
  expect(warnings).toEqual([]);
  expect(told({ strength: 0.495 }).plan.enough).toBe(false);
});

// x = V·(Ct − C0)/(Cc − C0): 2.5 · 0.276/0.78 = 0.885 L.
test('too weak, with one draining', () => {
  const { plan, warnings } = told({ strength: 0.22 });
  expect(plan).toMatchObject({ enough: false, swaps: 1, freezeC: -10.2 });
  expect(plan.replaceL).toBeCloseTo((2.5 * 0.276) / 0.78, 6);
  expect(plan.targetStrength).toBeCloseTo(0.496, 9);
  expect(plan.text).toBe('22 % freezes at −10 °C, −36 °C is needed (50 %). Drain 0.9 L and refill with 100 %.');
  expect(warnings).toEqual([
    {
      level: 'danger',
      text: 'The coolant freezes at −10 °C; the store can reach −31 °C.',
      act: 'Strengthen it by 1 November 2026. Drain 0.9 L and refill with 100 %.',
      machine: 'juniper',
      about: 'coolant',
    },
  ]);
  // Without a frost in the store, by the last day of use.
  expect(told({ strength: 0.22 }, { firstFrostInStore: undefined }).warnings[0]!.act).toMatch(
    /^Strengthen it by 25 October 2026\. /,
  );
});

// 3 L, 1 L drains, refill of 70 %: 22 → 38 → 48.7 %, then 3 · 0.00933/0.2133 = 0.13 L.
test('too weak, with three drainings', () => {
  const { plan } = told({ strength: 0.22, volumeL: 3, drainableL: 1, refillStrength: 0.7 });
  expect(plan.swaps).toBe(3);
  expect(plan.replaceL).toBeCloseTo(2.13125, 5);
  expect(plan.text).toMatch(
    / One draining is not enough: drain and refill with 70 % 3 times \(1\.0 L, then 1\.0 L, then 0\.1 L\), running the engine warm in between\.$/,
  );
});

// 2.4 L, 2 L drain: a refill of 40 % reaches 22 + 18/1.2 = 37 %; 22 + 27.6 · 1.2 = 55.1 % would do.
test('a refill that cannot get there says what would', () => {
  const { plan, warnings } = told({ strength: 0.22, volumeL: 2.4, drainableL: 2, refillStrength: 0.4 });
  expect([plan.replaceL, plan.swaps]).toEqual([undefined, undefined]);
  expect(plan.text).toBe(
    '22 % freezes at −10 °C, −36 °C is needed (50 %). A refill of 40 % cannot get there (one draining reaches 37 %): drain 2.0 L and refill with 55 % or stronger.',
  );
  expect(warnings[0]!.act).toBe('Strengthen it by 1 November 2026. See the coolant plan for the refill.');
  expect(told({ strength: 0.22, volumeL: 2.4, drainableL: 2, refillStrength: 0.22 }).plan.text).toMatch(
    / A refill of 22 % cannot get there: drain 2\.0 L and refill with 55 % or stronger\.$/,
  );
});

// 4 L, 1 L drains: 22 + 27.6 · 4 = 132 %. What drains can be no more than all.
test('where no refill gets there by one draining, the system is emptied', () => {
  expect(told({ strength: 0.22, volumeL: 4, drainableL: 1, refillStrength: 0.4 }).plan.text).toMatch(
    / \(one draining reaches 27 %\): empty and flush the system, and fill it with the right mixture\.$/,
  );
  // All of 2.4 L drains, however much the file says: the refill is the mixture.
  expect(told({ strength: 0.22, volumeL: 2.4, drainableL: 9, refillStrength: 0.4 }).plan.text).toMatch(
    / \(one draining reaches 40 %\): drain 2\.4 L and refill with 50 % or stronger\.$/,
  );
});

test('beyond 65 % no figure is given, up to there that of the table’s end', () => {
  expect(told({ strength: 0.65 }).plan).toMatchObject({ freezeC: -48.3, enough: true });
  const { plan, warnings } = told({ strength: 0.66 });
  expect(plan).toMatchObject({
    enough: null,
    text: '66 % ethylene glycol is beyond what protects best (up to 65 %): stronger coolant freezes earlier again and cools worse. Thin it to about 50 % with water.',
  });
  expect(plan.freezeC).toBeUndefined();
  expect(warnings).toMatchObject([
    {
      level: 'warning',
      text: 'Coolant of 66 % glycol: its freezing point is not in the table.',
      act: 'Thin it with distilled water to about 50 % and test it.',
    },
  ]);
});

test('a cold that no mixture reaches', () => {
  const { plan, warnings } = told({ strength: 0.22 }, { designLowC: -44 });
  expect(plan).toMatchObject({
    enough: false,
    freezeC: -10.2,
    targetStrength: undefined,
    text: 'No mixture of ethylene glycol reaches −49 °C; 58 %, the strongest of the table, freezes at −48 °C. Bring it to that, or store the machine warmer.',
  });
  expect(warnings).toMatchObject([
    {
      level: 'danger',
      text: 'The store can reach colder than any mixture of ethylene glycol protects with 5 degrees to spare.',
      act: 'Bring it to 58 %, or store the machine warmer.',
    },
  ]);
  // Down to −48.3 °C there is one.
  expect(told({ strength: 0.22 }, { designLowC: -43.3 }).plan.targetStrength).toBeCloseTo(0.578, 6);
});

test('unknown strength in a store that freezes: a test with its day and what it must show', () => {
  const { plan, warnings } = told({ strength: undefined });
  expect(plan).toMatchObject({
    enough: null,
    testBy: '2026-11-01',
    text: 'Strength unknown: test it with a refractometer by 1 November 2026, before the store can reach −1 °C. It must not freeze above −36 °C (50 % ethylene glycol).',
  });
  expect(warnings).toMatchObject([
    {
      level: 'warning',
      text: 'Nobody knows whether the coolant freezes, and the store can reach −31 °C.',
      act: 'Test it by 1 November 2026; plain water cracks the block from −1 °C down.',
    },
  ]);
  expect(told({ strength: undefined, glycol: 'propylene' }, { designLowC: -40 }).plan.text).toMatch(
    / \(\d\d % propylene glycol\)\.$/,
  );
  expect(told({ strength: undefined }, { designLowC: -44 }).plan.text).toMatch(
    / No mixture of ethylene glycol reaches −49 °C, as would be needed; the strongest, 58 %, freezes at −48 °C\.$/,
  );
});

test('the test is late from the day after it to the day before first use', () => {
  const level = (asOf: string) => told({ strength: undefined }, { asOf }).warnings[0]!;
  expect(level('2026-11-01').level).toBe('warning');
  expect(level('2026-11-02')).toMatchObject({
    level: 'danger',
    act: 'Test it today: the day before the first frost in the store has passed.',
  });
  expect(level('2027-04-09').level).toBe('danger');
  expect(level('2027-04-10').level).toBe('warning');
});

test('a store that stays above −1 °C freezes nothing; one that may be colder is tested by the last day of use', () => {
  const at = (designLowC: number, firstFrostInStore?: string) =>
    told({ strength: undefined }, { designLowC, firstFrostInStore });
  expect(at(-1).plan).toMatchObject({
    enough: null,
    text: 'Strength unknown. The store does not get below −1 °C during the rest, so nothing freezes; test it at the next service.',
  });
  expect(at(-1).plan.testBy).toBeUndefined();
  expect(at(-1).warnings).toEqual([]);
  expect(at(-1.1).plan.testBy).toBe('2026-10-25');
  expect(at(3, '2026-11-02').plan.testBy).toBe('2026-11-01');
});

test('coolant of which nothing is known is taken as ethylene glycol of unknown strength and has no age', () => {
  const { plan, warnings } = told(undefined);
  expect(plan.text).toMatch(/ \(50 % ethylene glycol\)\.$/);
  expect(plan.ageDue).toBeUndefined();
  expect(plan.derivations.map((d) => d.method)).toEqual(['coolant.need', 'coolant.test-by']);
  expect(warnings).toHaveLength(1);
});

test('age: due within the year after first use is noted, later is not, and a day that nobody knows is asked for', () => {
  const notes = (lastChanged: string | undefined) =>
    told({ strength: 0.5, lastChanged, lifeYears: 4 }).warnings.map(({ level, text, act }) => [level, text, act]);
  expect(notes('2024-04-10')).toEqual([]);
  expect(notes('2024-04-09')).toEqual([
    [
      'note',
      'The coolant is due by age on 9 April 2028, before or during next season.',
      'Change it at this lay-up, so that fresh inhibitor stands in the block over the rest.',
    ],
  ]);
  expect(notes(undefined)).toEqual([
    [
      'note',
      'Nobody knows when the coolant was last changed; its rust inhibitor wears out by age.',
      'Write the date down at the next change.',
    ],
  ]);
  // Two years and a half are thirty months.
  expect(told({ strength: 0.5, lastChanged: '2026-01-31', lifeYears: 2.5 }).plan.ageDue).toBe('2028-07-31');
});

test('a machine that works in the snow is told that its season is colder', () => {
  expect(told({ strength: 0.5 }, { machine: { use: 'snow' } }).warnings).toEqual([
    {
      level: 'note',
      text: 'This plan protects over the rest; in its season this machine meets colder.',
      act: 'Test the coolant against the coldest day of use at start-up.',
      machine: 'juniper',
      about: 'coolant',
    },
  ]);
});

test('a design low that no store has is refused', () => {
  for (const ok of [-149, 59]) expect(() => told({ strength: 0.5 }, { designLowC: ok })).not.toThrow();
  for (const wrong of [-150, 60, Number.NaN])
    expect(() => told({ strength: 0.5 }, { designLowC: wrong })).toThrow(
      `design low: found ${wrong} °C, expected a temperature of the store`,
    );
});

const inputs = (plan: ReturnType<typeof told>['plan'], method: string) => {
  const found = plan.derivations.find((d) => d.method === `coolant.${method}`)!;
  return [...found.inputs.map(({ name, value, unit }) => [name, value, unit]), [found.result.value, found.result.unit]];
};
const close = (value: number) => expect.closeTo(value, 6);

test('each figure is derived from what went into it', () => {
  const { plan } = told({ strength: 0.22, volumeL: 2.4, drainableL: 2, refillStrength: 0.8, lifeYears: 4 });
  expect(plan.derivations.map((d) => d.method)).toEqual([
    'coolant.need',
    'coolant.freezing-point',
    'coolant.replace',
    'coolant.age',
  ]);
  expect(inputs(plan, 'need')).toEqual([
    ['design low of the store over the rest', -31.4, '°C'],
    ['margin', 5, 'K'],
    [-36.4, '°C'],
  ]);
  expect(inputs(plan, 'freezing-point')).toEqual([
    ['glycol', 'ethylene', ''],
    ['strength', 22, '% by volume'],
    [-10.2, '°C'],
  ]);
  // 2.4 · 0.276/0.58 = 1.142 L; one draining reaches 22 + 58/1.2 = 70.3 %.
  expect(inputs(plan, 'replace')).toEqual([
    ['coolant in the system, V', 2.4, 'L'],
    ['one draining lets out, Vd', 2, 'L'],
    ['strength now, C0', 22, '%'],
    ['strength needed, Ct', close(49.6), '%'],
    ['strength of the refill, Cc', 80, '%'],
    ['one draining reaches', close(22 + 58 / 1.2), '%'],
    [close((2.4 * 0.276) / 0.58), 'L'],
  ]);
  expect(inputs(plan, 'age')).toEqual([
    ['last changed', '2026-10-01', ''],
    ['life', 4, 'years'],
    ['2030-10-01', ''],
  ]);
  const cannot = told({ strength: 0.22, volumeL: 2.4, drainableL: 2, refillStrength: 0.1 }).plan;
  // A refill that thins reaches no more than there is.
  expect(inputs(cannot, 'replace').slice(-2)).toEqual([
    ['one draining reaches', 22, '%'],
    ['not with this refill', ''],
  ]);
  expect(inputs(told({ strength: undefined }).plan, 'test-by')).toEqual([
    ['first day the store can reach −1 °C', '2026-11-02', ''],
    ['design low of the store over the rest', -31.4, '°C'],
    ['2026-11-01', ''],
  ]);
  expect(inputs(told({ strength: undefined }, { firstFrostInStore: undefined }).plan, 'test-by')[0]).toEqual([
    'first day the store can reach −1 °C',
    'not within the rest',
    '',
  ]);
  for (const d of [...plan.derivations, ...told({ strength: undefined }).plan.derivations]) {
    expect(d.equation).toMatch(/\w/);
    expect(d.sources.join()).toMatch(/\w{3}/);
    if (d.method !== 'coolant.age' && d.method !== 'coolant.test-by') expect(d.caveat).toMatch(/\.$/);
  }
});

test('water freezes at 0 °C, concentrate is not in the table, and a glycol that is none is refused', () => {
  expect(freezingPointC('propylene', 0)).toBe(0);
  expect(strengthFor('ethylene', 0)).toBe(0);
  expect(strengthFor('ethylene', 0.1)).toBe(0);
  expect(strengthFor('ethylene', -0.1)).toBeGreaterThan(0);
  expect(strengthFor('ethylene', -273.15)).toBeUndefined();
  expect(strengthFor('ethylene', -48.3)).toBeCloseTo(0.578, 9);
  expect(strengthFor('ethylene', -48.4)).toBeUndefined();
  expect(() => glycolRow('methanol' as never)).toThrow('glycol: found "methanol", expected one of ethylene, propylene');
  expect(() => freezingPointC('ethylene', 1.1)).toThrow(
    'coolant strength: found 1.1, expected a volume fraction of 0 to 1',
  );
  expect(() => freezingPointC('ethylene', 1)).toThrow('table: found 1, expected 0 to 0.578, the range of the table');
});

// 1 L of 2 L drains each time, refill of 100 %: 0 → 50 → 75 → 87.5 → 93.75 %.
test('four drainings at most, each of all that drains but the last', () => {
  expect(drainAndReplace(2, 1, 0, 0.5, 1)).toEqual({ totalL: 1, swaps: 1, each: [1] });
  expect(drainAndReplace(2, 1, 0, 0.75, 1)).toEqual({ totalL: 2, swaps: 2, each: [1, 1] });
  expect(drainAndReplace(2, 1, 0, 0.9375, 1)).toEqual({ totalL: 4, swaps: 4, each: [1, 1, 1, 1] });
  expect(drainAndReplace(2, 1, 0, 0.94, 1)).toBeUndefined();
  expect(drainAndReplace(2, 1, 0, 0.6, 1)).toEqual({ totalL: close(1.4), swaps: 2, each: [1, close(0.4)] });
  expect(() => drainAndReplace(2, 2.1, 0, 0.5, 1)).toThrow(
    'coolant: found 2.1 L drainable of 2 L, expected more than 0 and no more than all',
  );
});
