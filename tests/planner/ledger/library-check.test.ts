/** What is said against a library of procedures, word by word; each case is small enough to be judged by eye. */
import { expect, test } from 'vitest';
import type { Procedure, ProcedureStep, When } from '../../../src/planner/household.ts';
import { ledgerProblems } from '../../../src/planner/ledger/index.ts';
import { mergeProcedures } from '../../../src/planner/tasks/index.ts';
import { procedureOf, stepOf } from '../tasks/generate.ts';

type Own = Partial<ProcedureStep> & { id: string };
type Over = Partial<Omit<Procedure, 'steps'>>;
const layUp = (id: string, steps: Own[], over: Over = {}) =>
  procedureOf({ id, phase: 'lay-up', steps: steps.map(stepOf), ...over });
const startUp = (id: string, steps: Own[], over: Over = {}) =>
  procedureOf({ id, phase: 'start-up', steps: steps.map((one) => stepOf({ stage: 'fuel', ...one })), ...over });
const opens = (...items: string[]) => items.map((item) => ({ item, state: item, safetyCritical: false }));
const said = (...procedures: Procedure[]) => ledgerProblems(procedures).map(({ field, what }) => `${field}: ${what}`);

const PETROL: When = { fuel: { present: true } };

test('a library that opens nothing has nothing to close', () => {
  expect(said()).toEqual([]);
  expect(said(layUp('wash', [{ id: 'rinse' }, { id: 'dry' }]))).toEqual([]);
});

test('what is opened is closed by a start-up step alone, and by its own item', () => {
  const tap = layUp('tap', [{ id: 'shut', opens: opens('tap-shut') }]);
  const never = 'steps.1 (shut).opens: found that it opens "tap-shut" and no start-up step closes it';
  expect(said(tap, startUp('fuel', [{ id: 'open', closes: ['tap-shut'] }]))).toEqual([]);
  expect(said(tap)).toEqual([never]);
  expect(said(tap, layUp('other', [{ id: 'open', closes: ['tap-shut'] }]))).toEqual([never]);
  expect(said(tap, startUp('fuel', [{ id: 'open', closes: ['tap'] }]))[0]).toBe(
    'steps.1 (open).closes: found that it closes "tap" and no step opens it',
  );
});

test('each item of a step is looked at, and told at its own place in the file', () => {
  const at = {
    'steps.1': { line: 9, column: 3 },
    'steps.1.opens.1': { line: 14, column: 9 },
    'steps.0.closes.0': { line: 5, column: 7 },
  };
  const two = layUp('two', [{ id: 'first' }, { id: 'second', opens: opens('one', 'other') }], { at });
  const close = startUp('close', [{ id: 'one', closes: ['one'] }], { at });
  expect(ledgerProblems([two, close])).toEqual([
    {
      file: 'procedures/two.yaml',
      line: 14,
      column: 9,
      field: 'steps.2 (second).opens',
      item: 'other',
      what: 'found that it opens "other" and no start-up step closes it',
      fix: 'Add "closes: [other]" to a start-up step that applies wherever this step does.',
    },
  ]);
});

test('a step that is repeated is closed by one that is repeated for the same', () => {
  const tyres = layUp('tyres', [{ id: 'lift', each: 'tyre', opens: opens('lifted') }]);
  expect(said(tyres, startUp('down', [{ id: 'down', each: 'tyre', closes: ['lifted'] }]))).toEqual([]);
  const [once, unopened] = ledgerProblems([tyres, startUp('down', [{ id: 'down', closes: ['lifted'] }])]);
  // By file: down.yaml stands before tyres.yaml.
  expect(once!.what).toBe('found that it closes "lifted" and no step opens it');
  expect(unopened!.fix).toBe(
    'Add "closes: [lifted]" to a start-up step that applies wherever this step does and has each: tyre.',
  );
});

test('a closing step that does not apply everywhere leaves a case, which is named', () => {
  const tap = layUp('tap', [{ id: 'shut', opens: opens('tap-shut') }], { when: PETROL });
  const close = (when: When) => startUp('fuel', [{ id: 'open', closes: ['tap-shut'], when }]);
  expect(said(tap, close(PETROL))).toEqual([]);
  expect(said(tap, close({ fuel: { tap: 'manual' } }))).toEqual([
    'steps.1 (shut).opens: found that it opens "tap-shut" in a case in which no start-up step closes it (fuel.tap: vacuum; closed by fuel.open)',
  ]);
  // A tap is vacuum, manual or none: three steps cover all cases, two of them do not.
  const by = (...taps: string[]) =>
    startUp(
      'fuel',
      taps.map((kind) => ({ id: kind, closes: ['tap-shut'], when: { fuel: { tap: kind } } })),
    );
  expect(said(tap, by('vacuum', 'manual', 'none'))).toEqual([]);
  expect(said(tap, by('vacuum', 'manual'))).toEqual([
    expect.stringMatching(/\(fuel\.tap: none; closed by fuel\.vacuum, fuel\.manual\)$/),
  ]);
});

test('what a closing step closes has to be opened on some machine that the step is for', () => {
  const close = startUp('fuel', [{ id: 'open', closes: ['tap-shut'], when: { fuel: { tap: 'manual' } } }]);
  const tap = (kind: string) => layUp('tap', [{ id: 'shut', opens: opens('tap-shut'), when: { fuel: { tap: kind } } }]);
  expect(said(tap('manual'), close)).toEqual([]);
  const [nothing] = ledgerProblems([tap('vacuum'), close]);
  expect(nothing).toMatchObject({
    file: 'procedures/fuel.yaml',
    field: 'steps.1 (open).closes',
    item: 'tap-shut',
    what: 'found that it closes "tap-shut" and no step opens it',
    fix: 'Write the item as the step that opens it does, or take it out of "closes".',
  });
});

test('what the machine’s own assemblies open is closed without a step that opens it', () => {
  expect(said(startUp('refit', [{ id: 'tank', closes: ['assembly:tank'] }]))).toEqual([]);
});

test('a closing step may stand for what a replaced procedure opened', () => {
  const library = [
    layUp('tap', [{ id: 'shut', opens: opens('tap-shut') }]),
    startUp('fuel', [{ id: 'open', closes: ['tap-shut'] }]),
  ];
  expect(ledgerProblems(mergeProcedures(library, [layUp('tap', [{ id: 'leave' }])]))).toEqual([]);
});

test('an amount is named only where every machine has it, and said once for a step', () => {
  const oil = { id: 'fill', title: 'Fill {oil}', detail: 'All {oil} of it.' };
  expect(said(layUp('oil', [oil], { when: { engine: { oil: true } } }))).toEqual([]);
  expect(said(layUp('oil', [{ ...oil, when: { engine: { oil: true } } }]))).toEqual([]);
  const [problem, more] = ledgerProblems([layUp('oil', [oil], { at: { 'steps.0': { line: 4, column: 5 } } })]);
  expect(more).toBeUndefined();
  expect(problem).toEqual({
    file: 'procedures/oil.yaml',
    line: 4,
    column: 5,
    field: 'steps.1 (fill)',
    item: '',
    what: 'found the amount {oil} in a step that also applies where there is none (engine.oil: false)',
    fix: `Add to the step's "when": {"engine":{"oil":true}}.`,
  });
  // The name of the machine is everywhere; what no table has, the reader of the file tells.
  expect(said(layUp('tag', [{ id: 'tag', title: '{machine} {nothing}' }]))).toEqual([]);
});

test('after names a procedure or a step, and neither the step itself nor its own procedure', () => {
  const wash = layUp('wash', [{ id: 'rinse' }, { id: 'dry' }]);
  const oil = (...after: string[]) => layUp('oil', [{ id: 'drain', after }]);
  expect(said(wash, oil('wash', 'wash.rinse'))).toEqual([]);
  const unknown = (name: string) =>
    `steps.1 (drain).after: found "${name}" in "after", expected the id of a procedure or of a step (procedure.step)`;
  const own = (name: string) =>
    `steps.1 (drain).after: found "${name}" in "after", which the step itself is or belongs to, expected what comes before it`;
  expect(said(wash, oil('rinse', 'wash', 'wash.wet'))).toEqual([unknown('rinse'), unknown('wash.wet')]);
  expect(said(wash, oil('oil', 'oil.drain'))).toEqual([own('oil'), own('oil.drain')]);
  expect(ledgerProblems([wash, oil('nothing')])[0]).toMatchObject({
    item: 'nothing',
    fix: 'Correct the name, or take it away.',
  });
});

test('steps that wait for one another are a ring, told once, as far as they can meet on a machine', () => {
  const a = (after: string[], when: When = {}) => layUp('a', [{ id: 'one' }, { id: 'two', after, when }]);
  const b = (after: string[], when: When = {}) => layUp('b', [{ id: 'one', after, when }]);
  expect(said(a([]), b(['a']))).toEqual([]);
  const [ring, more] = ledgerProblems([a(['b.one']), b(['a.two'])]);
  expect(more).toBeUndefined();
  expect(ring).toMatchObject({ item: '', fix: 'Take one of these out of "after".' });
  expect(ring!.what).toBe('found a ring: a.two after b.one after a.two');
  // A procedure that is named stands for each of its steps.
  expect(said(a(['b']), b(['a']))).toHaveLength(1);
  // The second step of a procedure comes after its first.
  expect(said(layUp('a', [{ id: 'one', after: ['b'] }, { id: 'two' }]), b(['a.two']))).toEqual([
    expect.stringContaining('found a ring: a.one after b.one after a.two after a.one'),
  ]);
  // No machine is both.
  expect(said(a(['b.one'], { kind: 'car' }), b(['a.two'], { kind: 'mower' }))).toEqual([]);
});

test('problems stand by file, then by line', () => {
  const at = { 'steps.0': { line: 30, column: 1 }, 'steps.1': { line: 7, column: 1 } };
  const two = (id: string) =>
    layUp(
      id,
      [
        { id: 'x', opens: opens(`${id}-x`) },
        { id: 'y', opens: opens(`${id}-y`) },
      ],
      { at },
    );
  const places = ledgerProblems([two('b'), two('a')]).map(({ file, line }) => `${file}:${line}`);
  expect(places).toEqual([
    'procedures/a.yaml:7',
    'procedures/a.yaml:30',
    'procedures/b.yaml:7',
    'procedures/b.yaml:30',
  ]);
});
