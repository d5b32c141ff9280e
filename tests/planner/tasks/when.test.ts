import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { When } from '../../../src/planner/household.ts';
import {
  FACT_NAMES,
  FACTS,
  machineFacts,
  matches,
  unknownFacts,
  unknownValues,
} from '../../../src/planner/tasks/index.ts';
import type { Facts } from '../../../src/planner/tasks/when.ts';
import { asked, compatible, uncovered } from '../../../src/planner/tasks/when-table.ts';
import { caseArb, caseOf } from './generate.ts';

function leaves(facts: Facts, prefix = ''): [string, unknown][] {
  return Object.entries(facts).flatMap(([name, value]) =>
    typeof value === 'object' ? leaves(value, `${prefix}${name}.`) : [[`${prefix}${name}`, value] as [string, unknown]],
  );
}

test('the table of facts names exactly the facts that machines have, with every value they can take', () => {
  fc.assert(
    fc.property(caseArb, ({ machine, place, household, parts }) => {
      const found = leaves(machineFacts(machine, place, household, parts));
      expect(found.map(([path]) => path).sort()).toEqual([...FACT_NAMES].sort());
      for (const [path, value] of found) {
        const { values } = FACTS.find((row) => row.path === path)!;
        if (values === 'yes or no') expect(typeof value, path).toBe('boolean');
        else expect(values, path).toContain(value);
      }
    }),
    { numRuns: 300, seed: 1 },
  );
});

test('an empty when matches every machine', () => {
  expect(matches({}, { kind: 'car' })).toBe(true);
});

test('every fact asked for must hold, and a list means any of its values', () => {
  const facts: Facts = { kind: 'quad', fuel: { tap: 'manual', twoTaps: true } };
  expect(matches({ kind: ['quad', 'car'], fuel: { tap: 'manual' } }, facts)).toBe(true);
  expect(matches({ kind: 'car', fuel: { tap: 'manual' } }, facts)).toBe(false);
  expect(matches({ fuel: { tap: 'manual', twoTaps: false } }, facts)).toBe(false);
});

test('a fact that the machine has not does not match, and a group is not a value', () => {
  expect(matches({ wings: 'two' }, { kind: 'car' })).toBe(false);
  expect(matches({ kind: { wheels: 'four' } }, { kind: 'car' })).toBe(false);
  expect(matches({ fuel: 'manual' }, { fuel: { tap: 'manual' } })).toBe(false);
});

test('facts that do not exist are named with their whole path', () => {
  const when: When = { engine: { cylce: 'two-stroke', cycle: 'two-stroke' }, colour: 'red' };
  expect(unknownFacts(when)).toEqual(['engine.cylce', 'colour']);
});

test('values that a fact cannot have are found, also within a list and for yes or no', () => {
  const found = unknownValues({ engine: { cycle: ['2-stroke', 'two-stroke'] }, fuel: { premix: 'yes' } });
  expect(found).toEqual([
    { path: 'engine.cycle', found: '2-stroke', expected: expect.arrayContaining(['two-stroke', 'four-stroke']) },
    { path: 'fuel.premix', found: 'yes', expected: ['true', 'false'] },
  ]);
});

test('a case that nothing covers is found and named', () => {
  const gap = uncovered([{ fuel: { tap: ['manual', 'vacuum'] } }], [[{ fuel: { tap: 'manual' } }]]);
  expect(gap).toEqual(new Map([['fuel.tap', 'vacuum']]));
});

test('what asks for a fact that there is not covers nothing', () => {
  expect(uncovered([{ kind: 'car' }], [[{ wings: 'two' }]])).toBeDefined();
});

test('alternatives can cover a case together', () => {
  const covers = [[{ rest: ['short', 'season'] }], [{ rest: 'long' }]];
  expect(uncovered([{ kind: 'car' }], covers)).toBeUndefined();
});

test('a fuel choice implies a tank, and two taps imply a tap of some kind', () => {
  expect(uncovered([{ fuel: { choice: 'drain' } }], [[{ fuel: { present: true } }]])).toBeUndefined();
  expect(uncovered([{ fuel: { twoTaps: true } }], [[{ fuel: { tap: ['vacuum', 'manual'] } }]])).toBeUndefined();
  expect(uncovered([{ fuel: { choice: 'none' } }], [[{ fuel: { present: true } }]])).toBeDefined();
});

test('conditions that exclude each other need no cover and are not compatible', () => {
  expect(uncovered([{ kind: 'car' }, { kind: 'quad' }], [])).toBeUndefined();
  expect(compatible([{ kind: 'car' }], [{ kind: ['quad', 'car'] }])).toBe(true);
  expect(compatible([{ kind: 'car' }], [{ kind: 'quad' }])).toBe(false);
});

test('covers found without a machine hold for every generated machine', () => {
  const when = fc.constantFrom<When>(
    {},
    { rest: ['season', 'long'] },
    { fuel: { choice: 'fill' } },
    { fuel: { choice: 'drain' } },
    { fuel: { twoTaps: true } },
    { battery: { care: ['visits', 'carry-in'] } },
    { battery: { present: true } },
    { coolant: { swap: true } },
    { fuel: { present: true } },
  );
  fc.assert(
    fc.property(
      caseArb,
      when,
      fc.array(when, { maxLength: 3 }),
      ({ machine, place, household, parts }, given, covers) => {
        const facts = machineFacts(machine, place, household, parts);
        fc.pre(matches(given, facts));
        const gap = uncovered(
          [given],
          covers.map((one) => [one]),
        );
        if (gap === undefined) expect(covers.some((one) => matches(one, facts))).toBe(true);
      },
    ),
    { numRuns: 2000, seed: 4 },
  );
});

test('the leaves of a when are its paths with their values', () => {
  expect([...asked({ fuel: { tap: 'manual', twoTaps: true }, kind: ['car', 'quad'] })]).toEqual([
    ['fuel.tap', ['manual']],
    ['fuel.twoTaps', [true]],
    ['kind', ['car', 'quad']],
  ]);
});

test.each([
  [27, 'short'],
  [28, 'season'],
  [365, 'season'],
  [366, 'long'],
] as const)('a rest of %i days is %s', (restDays, rest) => {
  const { machine, place, household, parts } = caseOf({ restDays });
  expect(machineFacts(machine, place, household, parts)).toMatchObject({ rest });
});

test('oil changed within sixty days of the last use is fresh, unless it is due all the same', () => {
  const facts = (lastDone: number, pulledIn: boolean) => {
    const { machine, place, household, parts } = caseOf({ services: [{ id: 'engine-oil', lastDone, pulledIn }] });
    return (machineFacts(machine, place, household, parts).engine as Facts).oilChange;
  };
  expect(facts(30, false)).toBe('fresh');
  expect(facts(61, false)).toBe('advised');
  expect(facts(30, true)).toBe('advised');
});

test('a machine that starts up three days after the last use of this one makes a swap', () => {
  const swap = (on: boolean) => {
    const { machine, place, household, parts } = caseOf({ flags: { swap: on } });
    return machineFacts(machine, place, household, parts).swap;
  };
  expect(swap(true)).toBe(true);
  expect(swap(false)).toBe(false);
});
