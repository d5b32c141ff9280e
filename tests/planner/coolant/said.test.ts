/**
 * What is said of coolant, case by case and at its borders. Strengths are rows of the ASHRAE table of ethylene glycol, so that
 * freezing points are read off it: 22 % −10.2 °C, 49.6 % −36.4 °C, 57.8 % (its last) −48.3 °C. 5 K are wanted to spare.
 */
import { expect, test } from 'vitest';
import type { ColdOfRest } from '../../../src/planner/coolant/case.ts';
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
  /** What is left of the rest; all of it where it is not said. */
  ahead?: Partial<ColdOfRest>;
  /** When a typical year can get down to so many °C; with the first frost where nothing else is said. */
  firstColdOf?: ColdOfRest['firstColdOf'];
  /** A heater alone keeps the store at `designLowC`; outdoors it gets this cold [°C]. */
  heaterFailsC?: number;
  tested?: boolean;
  strengthened?: boolean;
}

/** The fixture rests from 25 October 2026 to 10 April 2027; asked for −36.4 °C where nothing else is said. */
function told(own: Own | undefined, { machine: more, heaterFailsC, ahead, ...at }: At = {}) {
  const cooling = { kind: 'liquid' as const, ...(own && { coolant: coolant({ lastChanged: '2026-10-01', ...own }) }) };
  const { designLowC, firstFrostInStore, asOf } = {
    designLowC: -31.4,
    firstFrostInStore: heaterFailsC === undefined ? '2026-11-02' : undefined,
    asOf: '2026-10-01',
    ...at,
  };
  const cold = { designLowC, outdoorLowC: heaterFailsC ?? designLowC, firstFrost: firstFrostInStore };
  const reached = (of: Partial<ColdOfRest>) => ({ firstColdOf: at.firstColdOf ?? (() => of.firstFrost), ...of });
  const rest = { ...cold, ...reached(cold) };
  const { enclosure } = place();
  const { plan, warnings } = planCoolant({
    machine: machine({ cooling, ...more }),
    place: place({ enclosure: heaterFailsC === undefined ? enclosure : { ...enclosure, setpointC: designLowC } }),
    household: household(),
    rest,
    ahead: { ...cold, ...reached({ ...cold, ...ahead }) },
    asOf,
    tested: at.tested,
    strengthened: at.strengthened,
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
    text: '50 % freezes at −36 °C, −36 °C is needed: protected from frost.',
  });
  expect(warnings).toEqual([]);
  expect(told({ strength: 0.495 }).plan.enough).toBe(false);
});

/**
 * No less than a third of glycol for its rust inhibitors, half and half as a rule: common practice, from memory. A third lies
 * between the rows of 32.6 % (−17.9 °C) and 33.5 % (−18.6 °C).
 */
const A_THIRD =
  'It is to hold a third of ethylene glycol or more, which freezes at −18 °C: the cold asks for less, but below a third its rust inhibitors do not protect. Half and half is usual.';

// 2.5 L, 13.6 % (−5.4 °C) where −9 °C is needed: 2.5 · (1/3 − 0.136)/(1 − 0.136) = 0.571 L.
test('where the cold asks for little, a third is aimed at all the same', () => {
  const { plan, warnings } = told({ strength: 0.136 }, { designLowC: -4 });
  expect(plan).toMatchObject({ needC: -9, enough: false, freezeC: -5.4 });
  expect(plan.targetStrength).toBeCloseTo(1 / 3, 12);
  expect(plan.aimC).toBeGreaterThan(-18.6);
  expect(plan.aimC).toBeLessThan(-17.9);
  expect(plan.replaceL).toBeCloseTo((2.5 * (1 / 3 - 0.136)) / 0.864, 9);
  expect(plan.text).toBe(
    '14 % freezes at −5 °C, −9 °C is needed; a third (33 %) is aimed at, for its rust inhibitors. Drain 0.6 L and refill with 100 %.',
  );
  expect(warnings).toMatchObject([
    {
      level: 'danger',
      text: 'The coolant freezes at −5 °C; in the coldest to be reckoned with the store reaches −4 °C.',
    },
  ]);
});

// 2.5 L, 4.4 % (−1.4 °C), −3 °C is needed in a store that stays at 2 °C: 2.5 · (1/3 − 0.044)/(1 − 0.044) = 0.757 L.
test('where nothing freezes, weak coolant is a note, and a third is aimed at', () => {
  const { plan, warnings } = told({ strength: 0.044 }, { designLowC: 2, firstFrostInStore: undefined });
  expect(plan.replaceL).toBeCloseTo((2.5 * (1 / 3 - 0.044)) / 0.956, 9);
  expect(warnings).toMatchObject([{ level: 'note', act: 'Drain 0.8 L and refill with 100 %.' }]);
});

test('coolant that does not freeze and is below a third is told of its rust inhibitors', () => {
  const { plan, warnings } = told({ strength: 0.22 }, { designLowC: -5 });
  expect(plan).toMatchObject({
    enough: true,
    replaceL: 0,
    text: '22 % freezes at −10 °C, −10 °C is needed: protected from frost. Its rust inhibitors want a third of glycol or more; half and half is usual.',
  });
  expect(warnings).toMatchObject([
    {
      level: 'note',
      text: 'The coolant holds 22 % glycol: it does not freeze here, but below about a third its rust inhibitors do not protect.',
      act: 'Bring it to a third or more at the next change; half and half is usual.',
    },
  ]);
  expect(told({ strength: 1 / 3 }, { designLowC: -5 }).warnings).toEqual([]);
});

// A heater can fail: the cold of outdoors is reckoned with, −31.4 − 5 = −36.4 °C, so 49.6 %.
test('where only a heater keeps the store warm, the cold of outdoors is reckoned with, and that is said', () => {
  const heated = { designLowC: 8, heaterFailsC: -31.4 };
  const { plan, warnings } = told({ strength: 0.22 }, heated);
  expect(plan).toMatchObject({ needC: -36.4, aimC: -36.4, enough: false });
  expect(plan.replaceL).toBeCloseTo((2.5 * 0.276) / 0.78, 6);
  expect(warnings).toMatchObject([
    {
      level: 'warning',
      text: 'The coolant freezes at −10 °C; only a heater keeps Tin shed at 8 °C: where it fails, the cold of outdoors comes in, −31 °C in the coldest to be reckoned with.',
      act: 'Strengthen it by 25 October 2026. Drain 0.9 L and refill with 100 %.',
    },
  ]);
  expect(inputs(plan, 'need').slice(0, 2)).toEqual([
    ['coldest to be reckoned with in the store over the rest', 8, '°C'],
    ['outdoors, where the heater fails', -31.4, '°C'],
  ]);
  const unknown = told({ strength: undefined }, heated);
  expect(unknown.plan.text).toBe(
    'Strength unknown: test it with a refractometer by 25 October 2026. It must not freeze above −36 °C (50 % ethylene glycol). A heater can fail, so the cold of outdoors is reckoned with, −31 °C.',
  );
  expect(unknown.plan.testBy).toBe('2026-10-25');
  expect(told({ strength: undefined }, { ...heated, asOf: '2026-12-01' }).warnings).toMatchObject([
    { level: 'warning', act: 'Test it now; plain water cracks the block from −1 °C down.' },
  ]);
  // Mild outdoors, a heater changes nothing.
  expect(told({ strength: 0.496 }, { designLowC: 8, heaterFailsC: 8 }).plan.needC).toBe(3);
});

const SUMMER = { season: { lastUse: '2026-04-10', firstUse: '2026-11-20', proposed: false, reasons: [] } };

test('in August a test is wanted by the next frost, and by none where no frost is to come', () => {
  const at = { machine: SUMMER, firstFrostInStore: '2026-04-09', asOf: '2026-08-01' };
  const before = told({ strength: undefined }, { ...at, ahead: { firstFrost: '2026-10-20' } });
  expect(before.plan.testBy).toBe('2026-10-19');
  expect(before.warnings).toMatchObject([
    { level: 'warning', act: 'Test it by 19 October 2026; plain water cracks the block from −1 °C down.' },
  ]);
  const weak = told({ strength: 0.22 }, { ...at, ahead: { firstFrost: '2026-10-20' } });
  expect(weak.warnings[0]!.act).toMatch(/^Strengthen it by 19 October 2026\. /);
  const over = { ...at, ahead: { firstFrost: undefined, designLowC: 3 } };
  const done = told({ strength: undefined }, over);
  expect([done.warnings, done.plan.testBy]).toEqual([[], undefined]);
  expect(done.plan.text).toMatch(/^Strength unknown, and the frost of this rest is over: test it before the next\. /);
  for (const strength of [0.22, 0.05]) expect(told({ strength }, over).warnings).toEqual([]);
  expect(told({ strength: 0.22 }, { ...over, designLowC: -44 }).warnings).toEqual([]);
  // Frost takes a hard year from here on: no day of it is known.
  const hard = told({ strength: undefined }, { ...at, ahead: { firstFrost: undefined, designLowC: -1.1 } });
  expect(hard.warnings).toMatchObject([{ level: 'warning', act: expect.stringMatching(/^Test it now; plain water/) }]);
  expect(hard.plan.text).toMatch(/^Strength unknown: test it with a refractometer now\. /);
});

test('a ticked test is a danger no more, and asks for what it showed; so does a ticked refill', () => {
  const late = { asOf: '2026-12-01' };
  const { plan, warnings } = told({ strength: undefined }, { ...late, tested: true });
  expect(plan.testBy).toBeUndefined();
  expect(plan.text).toMatch(
    /^Tested, and what the tester showed is not written down\. It must not freeze above −36 °C/,
  );
  const act =
    'Write down the freezing point that the tester showed: "Coolant tested, freezes at" in the form, cooling.freezesAt in machines/juniper.yaml.';
  expect(warnings).toMatchObject([
    {
      // As long as nobody has said that it holds, the cold that is to come is no note.
      level: 'warning',
      text: 'The coolant is ticked as tested, what it showed is not written down, and in the coldest to be reckoned with the store reaches −31 °C.',
      act: `${act} The plan then says whether it is enough.`,
    },
  ]);
  expect(told({ strength: 0.22 }, { ...late, tested: true }).warnings).toMatchObject([{ level: 'danger' }]);
  expect(told({ strength: 0.22 }, late).warnings[0]!.act).toBe('Strengthen it now. Drain 0.9 L and refill with 100 %.');
  expect(plan.unwritten).toBe('tested');
  const over = { ...late, tested: true, ahead: { firstFrost: undefined, designLowC: 3 } };
  expect(told({ strength: undefined }, over).warnings).toEqual([]);
  const refilled = told({ strength: 0.22 }, { ...late, strengthened: true });
  expect(refilled.warnings).toMatchObject([
    {
      level: 'warning',
      text: 'The coolant is ticked as strengthened, and what is written down, −10 °C, is too weak still: its old strength, or one refill was too little.',
      act: `Test it again before you drain more. ${act}`,
    },
  ]);
  expect(refilled.plan).toMatchObject({ unwritten: 'strengthened', enough: false });
  expect(refilled.plan.changeBy).toBeUndefined();
});

// Drained a second time by the same litres, 22 % would go on from about 58 % to about 74 %, which freezes earlier again.
test('a ticked refill is not asked for again where no mixture reaches the cold', () => {
  const cold = { designLowC: -44, asOf: '2026-12-01' };
  expect(told({ strength: 0.22 }, cold).warnings[0]!.act).toMatch(/Drain 1\.1 L and refill with 100 %/);
  const { plan, warnings } = told({ strength: 0.22 }, { ...cold, strengthened: true });
  expect([plan.text, ...warnings.flatMap(({ text, act }) => [text, act])].join()).not.toMatch(/Drain \d|refill with/);
  expect(warnings).toMatchObject([{ level: 'warning', text: expect.stringMatching(/only a warmer store does\.$/) }]);
  // Tested again and as strong as helps: what is left to do is said.
  const strongest = told({ strength: 0.578 }, { ...cold, strengthened: true });
  expect(strongest.warnings[0]!.act).toBe('It is as strong as helps: store the machine warmer.');
});

// 43.5 % freezes at −28.8 °C (ASHRAE), so with 5 K to spare it waits for −23.8 °C.
test('coolant that stands some cold is strengthened before that cold, not before the first frost', () => {
  const asked: [string, number][] = [];
  const firstColdOf = (where: string, coldC: number) => {
    asked.push([where, coldC]);
    return '2026-12-05';
  };
  const at = (asOf: string, strength = 0.435) =>
    told({ strength }, { asOf, firstFrostInStore: '2026-09-12', firstColdOf });
  const before = at('2026-10-03');
  expect(before.plan.changeBy).toBe('2026-12-04');
  expect(before.warnings[0]!.act).toMatch(/^Strengthen it by 4 December 2026\. /);
  expect(asked.map(([where, coldC]) => [where, Math.round(coldC * 10) / 10])).toContainEqual(['store', -23.8]);
  expect(at('2026-12-06').warnings[0]!.act).toMatch(/^Strengthen it now\. /);
  // Water waits for frost itself, −1 °C.
  at('2026-10-03', 0);
  expect(asked.at(-1)).toEqual(['store', -1]);
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
      text: 'The coolant freezes at −10 °C; in the coldest to be reckoned with the store reaches −31 °C.',
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
  expect(warnings[0]!.act).toBe(
    'Strengthen it by 1 November 2026. A refill of 40 % cannot get there (one draining reaches 37 %): drain 2.0 L and refill with 55 % or stronger.',
  );
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

// The strongest of the table is aimed at: 2.5 · (0.578 − 0.22)/(1 − 0.22) = 1.147 L.
test('a cold that no mixture reaches', () => {
  const { plan, warnings } = told({ strength: 0.22 }, { designLowC: -44 });
  expect(plan).toMatchObject({
    enough: false,
    freezeC: -10.2,
    targetStrength: 0.578,
    aimC: -48.3,
    text: 'No mixture of ethylene glycol reaches −49 °C; 58 %, the strongest of the table, freezes at −48 °C. Bring it to 58 %, or store the machine warmer. Drain 1.1 L and refill with 100 %.',
  });
  expect(warnings).toMatchObject([
    {
      level: 'danger',
      text: 'The store can reach colder than any mixture of ethylene glycol protects with 5 degrees to spare.',
      act: 'Bring it to 58 %, or store the machine warmer. Drain 1.1 L and refill with 100 %.',
    },
  ]);
  expect(plan.replaceL).toBeCloseTo((2.5 * 0.358) / 0.78, 9);
  const strongest = told({ strength: 0.578 }, { designLowC: -44 });
  expect(strongest.plan.replaceL).toBeUndefined();
  expect(strongest.warnings[0]!.act).toBe('It is as strong as helps: store the machine warmer.');
  expect(told({ strength: undefined }, { designLowC: -44 }).plan.aimC).toBe(-48.3);
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
      text: 'Nobody knows whether the coolant freezes, and in the coldest to be reckoned with the store reaches −31 °C.',
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

test('the test is late from the day after it until the frost is over or the season is given up', () => {
  const level = (asOf: string) => told({ strength: undefined }, { asOf }).warnings[0]!;
  expect(level('2026-11-01').level).toBe('warning');
  expect(level('2026-11-02')).toMatchObject({
    level: 'danger',
    act: 'Test it now: the store can freeze already; plain water cracks the block from −1 °C down.',
  });
  expect(level('2027-04-09').level).toBe('danger');
  // A machine of the winter is used in the frost. Three weeks after the first use its season is given up.
  expect(level('2027-05-01').level).toBe('danger');
  expect(told({ strength: undefined }, { asOf: '2027-05-02' }).warnings).toEqual([]);
  const warm = { firstFrost: undefined, designLowC: 3 };
  expect(told({ strength: undefined }, { asOf: '2027-04-10', ahead: warm }).warnings).toEqual([]);
});

test('a store that stays above −1 °C freezes nothing; one that may be colder is tested by the last day of use', () => {
  const at = (designLowC: number, firstFrostInStore?: string) =>
    told({ strength: undefined }, { designLowC, firstFrostInStore });
  // Nothing can freeze it, so what it holds is enough: the lay-up has no test of it beside the one at the next service.
  expect(at(-1).plan).toMatchObject({
    enough: true,
    text: `Strength unknown. The store does not get below −1 °C during the rest, so nothing freezes; test it at the next service. ${A_THIRD}`,
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
  expect(plan.derivations.map((d) => d.method)).toEqual(['coolant.need', 'coolant.aim', 'coolant.test-by']);
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
    'coolant.aim',
    'coolant.freezing-point',
    'coolant.replace',
    'coolant.age',
  ]);
  expect(inputs(plan, 'need')).toEqual([
    ['coldest to be reckoned with in the store over the rest', -31.4, '°C'],
    ['margin', 5, 'K'],
    [-36.4, '°C'],
  ]);
  expect(inputs(plan, 'aim')).toEqual([
    ['needed freezing point', -36.4, '°C'],
    ['strength that freezes there', close(49.6), '% by volume'],
    ['least that its inhibitors ask', close(100 / 3), '% by volume'],
    [close(0.496), 'volume fraction'],
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
    ['strength aimed at, Ct', close(49.6), '%'],
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
    ['coldest to be reckoned with in the store over the rest', -31.4, '°C'],
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
