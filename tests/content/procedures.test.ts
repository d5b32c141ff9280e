/** Procedure files: what the reader accepts, and how it says what is wrong, with file, line and item. */
import { expect, test } from 'vitest';
import { z } from 'zod';
import { formatProblem } from '../../src/content/problem.ts';
import { procedureSchema } from '../../src/content/schemas/procedure.ts';
import type { Procedure } from '../../src/planner/household.ts';
import { ledgerProblems } from '../../src/planner/ledger/index.ts';
import { mergeProcedures } from '../../src/planner/tasks/index.ts';
import { library, readProcedure } from '../planner/tasks/library.ts';

const LIBRARY = library();
const HEAD = 'title: Sidecar\nphase: lay-up\nsteps:\n';

function said(text: string): string[] {
  return readProcedure('sidecar', text).problems.map((problem) => formatProblem(problem));
}

function against(text: string, name = 'sidecar'): string[] {
  const { procedure, problems } = readProcedure(name, text);
  expect(problems).toEqual([]);
  return ledgerProblems(mergeProcedures(LIBRARY, [procedure as Procedure])).map(
    (problem) => `${problem.file}:${problem.line} ${problem.item}: ${problem.what}`,
  );
}

test('the library is sound by itself', () => {
  expect(ledgerProblems(LIBRARY)).toEqual([]);
});

test('the smallest procedure is five lines', () => {
  const { procedure, problems } = readProcedure(
    'sidecar',
    `${HEAD}  - { id: bolt, title: Grease the bolts, minutes: 5, why: They rust. }\n`,
  );
  expect(problems).toEqual([]);
  expect(procedure).toMatchObject({ id: 'sidecar', order: 500, when: {}, file: 'procedures/sidecar.yaml' });
  expect(procedure!.steps[0]).toMatchObject({ source: 'common practice', opens: [], closes: [], waitH: 0 });
});

test('an item that nothing closes is refused with file, line and item', () => {
  const text = `${HEAD}  - id: 'off'
    title: Take the sidecar off
    minutes: 20
    why: It stands better.
    opens:
      - { item: sidecar-off, state: sidecar off }
`;
  expect(against(text)).toEqual([
    'procedures/sidecar.yaml:9 sidecar-off: found that it opens "sidecar-off" and no start-up step closes it',
  ]);
});

test('an item that is closed on some machines only is refused, and the machine that is left over is named', () => {
  const opens = `${HEAD}  - id: 'off'
    title: Take the sidecar off
    when: { kind: [motorcycle, scooter] }
    minutes: 20
    why: It stands better.
    opens:
      - { item: sidecar-off, state: sidecar off }
`;
  const closes = readProcedure(
    'sidecar-on',
    'title: On\nphase: start-up\nsteps:\n  - { id: fit, title: Fit it, when: { kind: motorcycle }, stage: refit, minutes: 5, why: So., closes: [sidecar-off] }\n',
  );
  const off = readProcedure('sidecar', opens);
  const found = ledgerProblems(mergeProcedures(LIBRARY, [off.procedure!, closes.procedure!]));
  expect(found.map((problem) => [problem.file, problem.line, problem.item])).toEqual([
    ['procedures/sidecar.yaml', 10, 'sidecar-off'],
  ]);
  expect(found[0]!.what).toContain('kind: scooter; closed by sidecar-on.fit');
});

test('a step that closes what is never opened is refused with its line', () => {
  const text =
    'title: On\nphase: start-up\nsteps:\n  - id: fit\n    title: Fit it\n    stage: refit\n    minutes: 5\n    why: So.\n    closes: [sidecar-of]\n';
  expect(against(text)).toEqual([
    'procedures/sidecar.yaml:9 sidecar-of: found that it closes "sidecar-of" and no step opens it',
  ]);
});

test('an item opened once for each tyre is not closed by a step that stands once', () => {
  const text = `${HEAD}  - id: caps
    title: Take the valve cap off {position}
    each: tyre
    minutes: 1
    why: So.
    opens: [{ item: cap-off, state: cap off }]
`;
  expect(against(text).length).toBe(1);
});

test('a shorter lay-up procedure of the user leaves closing steps without an item, which is no fault', () => {
  const text = 'title: Own\nphase: lay-up\nsteps:\n  - { id: cover, title: No cover, minutes: 1, why: Dry barn. }\n';
  const own = readProcedure('cover', text).procedure!;
  const merged = mergeProcedures(LIBRARY, [own]);
  expect(ledgerProblems(merged)).toEqual([]);
  const unknown = ledgerProblems(merged.map((one) => ({ ...one, replaces: undefined })));
  expect(unknown.map((problem) => problem.item)).toEqual(['cover-on', 'bag-closed', 'dehumidifier-on']);
});

test('a start-up procedure of the user that forgets what the library opens is refused at the step that opens it', () => {
  const text = 'title: Own\nphase: start-up\nsteps:\n  - { id: a, title: A, stage: plugs-out, minutes: 1, why: So. }\n';
  const own = readProcedure('start-up-plugs', text).procedure!;
  const found = ledgerProblems(mergeProcedures(LIBRARY, [own]));
  expect(found.map((problem) => `${problem.file} ${problem.item}`)).toContain(
    'procedures/plugs-in.yaml exhaust-plugged',
  );
});

test('an amount is refused where the step applies to machines that have none', () => {
  const text = `${HEAD}  - { id: a, title: "Pour in {oil}", minutes: 5, why: So. }\n`;
  expect(against(text)[0]).toContain(
    'found the amount {oil} in a step that also applies where there is none (engine.oil: false)',
  );
});

test('a name in "after" that is nowhere, and a ring, are refused', () => {
  const text = `${HEAD}  - { id: a, title: A, minutes: 5, why: So., after: [sidecar.b, washing] }
  - { id: b, title: B, minutes: 5, why: So. }
`;
  const found = against(text).join('\n');
  expect(found).toContain('found "washing" in "after"');
  expect(found).toMatch(/found a ring: sidecar\.(a|b) after sidecar\.(a|b) after/);
});

test('a mistyped fact is answered with the nearest one, at its own place', () => {
  const text = `title: A\nphase: lay-up\nwhen:\n  engine: { cylce: two-stroke }\nsteps:\n  - { id: a, title: A, minutes: 5, why: So. }\n`;
  expect(said(text)).toEqual([
    'content/procedures/sidecar.yaml:4:13  when.engine.cylce: found the unknown field "cylce", expected "cycle". Write "cycle", or delete the line.',
  ]);
});

test('a value that a fact cannot have is answered with those it can have', () => {
  const text = `title: A\nphase: lay-up\nwhen: { kind: motorbike }\nsteps:\n  - { id: a, title: A, minutes: 5, why: So. }\n`;
  expect(said(text)[0]).toMatch(
    /procedures\/sidecar\.yaml:3:15 {2}when\.kind: found "motorbike", expected .*motorcycle/,
  );
});

test('a mistyped amount and a mistyped caution are answered with the nearest ones', () => {
  const text = `${HEAD}  - id: a
    title: "Fill {oli}"
    minutes: 5
    why: So.
    cautions: [petrol-vapor]
`;
  const found = said(text).join('\n');
  expect(found).toContain('found "petrol-vapor", expected "petrol-vapour"');
  expect(said(text.replace('petrol-vapor', 'petrol-vapour')).join('\n')).toContain('found {oli}, expected {oil}');
});

test('an amount of a tyre outside a step for tyres is refused with what to add', () => {
  const text = `${HEAD}  - { id: a, title: "Set {setPressure}", minutes: 5, why: So. }\n`;
  expect(said(text)[0]).toContain('Add each: tyre.');
});

test('a start-up step needs its stage, and no other phase may have one', () => {
  const step = (stage: string) => `  - { id: a, title: A, minutes: 5, why: So.${stage} }\n`;
  expect(said(`title: A\nphase: start-up\nsteps:\n${step('')}`)[0]).toContain('found no stage');
  expect(said(`title: A\nphase: lay-up\nsteps:\n${step(', stage: fuel')}`)[0]).toContain(
    'found "stage" in a lay-up procedure',
  );
});

test('a step id that stands twice is refused at the second', () => {
  const step = '  - { id: a, title: A, minutes: 5, why: So. }\n';
  expect(said(`${HEAD}${step}${step}`)).toEqual([
    'content/procedures/sidecar.yaml:5:11  steps.a.id: found "a" a second time, expected each step id once. Give the step a name of its own.',
  ]);
});

test('the schema can be written out for editors, each field with its meaning', () => {
  const schema = z.toJSONSchema(procedureSchema, { io: 'input', unrepresentable: 'any' }) as {
    properties: Record<
      string,
      { description?: string; items?: { properties: Record<string, { description?: string }> } }
    >;
  };
  const fields = { ...schema.properties, ...schema.properties.steps!.items!.properties };
  expect(Object.entries(fields).filter(([, field]) => !field.description)).toEqual([]);
  expect(Object.keys(schema.properties.when as object)).toContain('properties');
});

test('what is used up is counted in the unit of the computed amount, or as it is written', () => {
  const used = (amount: string) =>
    readProcedure(
      'sidecar',
      `${HEAD}  - { id: bolt, title: Grease, minutes: 5, why: They rust., supplies: [{ what: A, amount: ${amount} }] }\n`,
    );
  const taken = (amount: string) => used(amount).procedure!.steps[0]!.supplies[0];
  // Oil is poured by the litre, plugs are counted.
  expect(taken('"{oil}"')).toMatchObject({ amountOf: 'oil', unit: 'L' });
  expect(taken('"{cylinders}"')).toMatchObject({ amountOf: 'cylinders', unit: 'pieces' });
  expect(taken('"2,5 mL"')).toMatchObject({ amount: 2.5, unit: 'mL', amountOf: undefined });
  for (const wrong of ['"0 pieces"', '"100001 pieces"', '"two"', '"{oyl}"', '"{serviceWhy}"', '5'])
    expect(used(wrong).problems, wrong).toHaveLength(1);
});

test('a step keeps the deadline that its file gives it, and needs nothing of which it says nothing', () => {
  const step = (more: string) =>
    readProcedure('sidecar', `${HEAD}  - { id: bolt, title: Grease, minutes: 5, why: They rust.${more} }\n`).procedure!
      .steps[0]!;
  expect(step(', deadline: first-frost-in-store').deadline).toEqual({ before: 'first-frost-in-store' });
  expect(step('').deadline).toBeUndefined();
  expect(Object.values(step('').needs).every((need) => need === false)).toBe(true);
});
