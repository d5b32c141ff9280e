import fc from 'fast-check';
import { expect, test } from 'vitest';
import { largestChargerA } from '../../../src/planner/battery/index.ts';
import { addDays } from '../../../src/planner/dates.ts';
import { fill, machineAmounts, withUnits } from '../../../src/planner/tasks/amounts.ts';
import { machineFacts } from '../../../src/planner/tasks/facts.ts';
import { AMOUNTS, matches, mergeProcedures } from '../../../src/planner/tasks/index.ts';
import { occurrences } from '../../../src/planner/tasks/occurrences.ts';
import { inWorkOrder } from '../../../src/planner/tasks/procedures.ts';
import { caseArb, caseOf, procedureOf } from './generate.ts';

test('an amount is there for every machine for which the table says so, in the unit of the table', () => {
  fc.assert(
    fc.property(caseArb, ({ machine, place, household, parts }) => {
      const facts = machineFacts(machine, place, household, parts);
      const amounts = machineAmounts(machine, place, household, parts);
      for (const { name, unit, when, each } of AMOUNTS) {
        if (each !== undefined || !matches(when, facts)) continue;
        const amount = amounts[name];
        expect(amount, name).toBeDefined();
        expect('text' in amount! ? 'text' : amount!.unit, name).toBe(unit);
        if ('text' in amount!) expect(amount.text, name).not.toBe('');
        else expect(amount!.value, name).not.toBeNaN();
      }
    }),
    { numRuns: 400, seed: 11 },
  );
});

// A fifth of the capacity for sealed lead–acid, an eighth for flooded, half for lithium iron phosphate: common practice, from memory.
test('the highest current that the sheet gives is that by which a charger is chosen', () => {
  const shares = { agm: 0.2, gel: 0.2, 'flooded-antimony': 0.125, 'flooded-calcium': 0.125, lifepo4: 0.5 };
  let seen = 0;
  fc.assert(
    fc.property(caseArb, ({ machine, place, household, parts }) => {
      const { chargeCurrent } = machineAmounts(machine, place, household, parts);
      if (!parts.battery || !machine.battery) return;
      seen++;
      const least = { ...machine.battery, chemistry: parts.battery.chemistry, capacityAh: parts.battery.capacityAh };
      expect(chargeCurrent).toMatchObject({ value: shares[least.chemistry] * least.capacityAh });
      expect(largestChargerA(least)).toBeCloseTo(shares[least.chemistry] * least.capacityAh, 9);
    }),
    { numRuns: 100, seed: 3 },
  );
  expect(seen).toBeGreaterThan(0);
});

test('what a step is repeated for brings the amounts that the table has for such steps', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(caseArb, ({ machine, household, parts }) => {
      for (const each of ['tyre', 'charge', 'service', 'paper', 'paused-paper'] as const)
        for (const { amounts } of occurrences(each, machine, household, parts)) {
          const rows = AMOUNTS.filter((row) => row.each === each);
          expect(Object.keys(amounts)).toEqual(expect.arrayContaining(rows.map(({ name }) => name)));
          for (const { name, unit } of rows)
            expect('text' in amounts[name]! ? 'text' : amounts[name]!.unit, name).toBe(unit);
          seen.add(each);
        }
    }),
    { numRuns: 300, seed: 12 },
  );
  expect([...seen].sort()).toEqual(['charge', 'paper', 'paused-paper', 'service', 'tyre']);
});

test.each([
  ['runMinutes', 7.2, '8 min'],
  ['restDays', 168.4, '168 days'],
  ['cylinders', 2, '2'],
  ['tank', 17, '17.0 L'],
  ['setPressure', 225, '225 kPa (33 psi)'],
  ['zero', 0, '0 °C'],
])('the amount %s of %d is printed as %s', (name, value, printed) => {
  const filled = fill(`{${name}} and {${name}}`, withUnits({ [name]: value }), 'metric');
  expect(filled.text).toBe(`${printed} and ${printed}`);
  expect(filled.used).toHaveLength(1);
});

test('an amount that the table has not is refused, one without a value is left out', () => {
  expect(() => withUnits({ oill: 3 })).toThrow('found the amount "oill", expected a name of the table of amounts');
  expect(withUnits({ oil: undefined })).toEqual({});
});

test('a paper is asked for that runs out up to 31 days after the first use, and no later one', () => {
  const base = caseOf({});
  const { firstUse } = base.machine.season;
  const asked = (date: string) => {
    const paperwork = [{ id: 'i', kind: 'insurance' as const, what: 'Insurance', date, pausedOverRest: false }];
    return occurrences('paper', { ...base.machine, paperwork }, base.household, base.parts).length;
  };
  const last = [...Array(60).keys()].filter((days) => asked(addDays(firstUse, days)) === 1).at(-1);
  expect(last).toBe(31);
  expect(asked(addDays(firstUse, -200))).toBe(1);
});

test('procedures stand in the order of the work, those of one order by their ids, however the files lay', () => {
  const [a, b, c] = [
    procedureOf({ id: 'a', order: 20, phase: 'lay-up', steps: [] }),
    procedureOf({ id: 'b', order: 10, phase: 'lay-up', steps: [] }),
    procedureOf({ id: 'c', order: 10, phase: 'lay-up', steps: [] }),
  ];
  for (const files of [
    [a, b, c],
    [c, b, a],
    [b, a, c],
  ] as const)
    expect(inWorkOrder(files).map(({ id }) => id)).toEqual(['b', 'c', 'a']);
});

test("a user's procedure names the one whose place it takes, a new one names none", () => {
  const bundled = procedureOf({ id: 'fluids', order: 10, phase: 'lay-up', steps: [] });
  const own = procedureOf({ id: 'fluids', order: 30, phase: 'lay-up', steps: [] });
  const merged = mergeProcedures([bundled], [own, procedureOf({ id: 'mine', order: 20, phase: 'lay-up', steps: [] })]);
  expect(merged.map(({ id, replaces }) => [id, replaces])).toEqual([
    ['mine', undefined],
    ['fluids', bundled],
  ]);
});

test.each([
  ['fill', ['addFuel', 'stabiliserDose', 'runMinutes']],
  ['drain', ['drained', 'cans', 'drainedUseBy']],
  // A third of the tank is what a low one may hold.
  ['leave', ['lowFuel']],
] as const)('the amounts of petrol are those of its choice: %s', (choice, names) => {
  const { machine, place, household, parts } = caseOf({});
  const fuel = { ...parts.fuel!, choice, doseML: 40, addL: 5, runMinutes: 8, drainedL: 3, cans: 1 };
  const amounts = machineAmounts(machine, place, household, { ...parts, fuel });
  const all = ['addFuel', 'stabiliserDose', 'runMinutes', 'drained', 'cans', 'drainedUseBy', 'lowFuel'];
  expect(all.filter((name) => amounts[name] !== undefined).sort()).toEqual([...names].sort());
  const told = Object.fromEntries(names.map((name) => [name, amounts[name]]));
  expect(told).toMatchObject(
    {
      fill: { addFuel: { value: 5 }, stabiliserDose: { value: 40 }, runMinutes: { value: 8 } },
      drain: { drained: { value: 3 }, cans: { value: 1 } },
      leave: { lowFuel: { value: machine.fuel!.tankL / 3 } },
    }[choice],
  );
});

test('a service takes the minutes that its owner gave it, and what is not due takes none', () => {
  const { machine, household, parts } = caseOf({
    services: [
      { id: 'valves', lastDone: 400, pulledIn: true },
      { id: 'engine-oil', lastDone: 400, pulledIn: false },
    ],
  });
  const services = machine.services.map((service) => ({ ...service, minutes: service.id === 'valves' ? 95 : 25 }));
  const found = occurrences('service', { ...machine, services }, household, parts);
  expect(found.map(({ key, minutes }) => [key, minutes])).toEqual([['valves', 95]]);
});
