/** Petrol and coolant in the five figures and in their part of the page: to be done, done, and too late. */
import { expect, test } from 'vitest';
import type { CoolantPlan, FuelPlan } from '../../src/planner/season-plan.ts';
import { fiveNumbersOf } from '../../src/site/numbers.ts';
import { fluids } from '../../src/site/show/fluids.ts';
import { showingOf } from '../../src/site/show/showing.ts';
import { aMachine, planParts } from '../fixtures/plan.ts';

const FUEL: FuelPlan = {
  choice: 'fill',
  reason: 'Why.',
  levelL: 16.2,
  addL: 9.2,
  doseML: 64,
  waterToleranceML: 40,
  breathingWaterML: 3,
  fullAtHottestPct: 97.4,
  useBy: { earliest: '2027-03-20', latest: '2027-10-01' },
  atFirstUse: { verdict: 'use', text: 'Within its age, use it.' },
  tap: 'Manual tap: OFF.',
  localLimit: { where: 'here', text: 'Check.', exceeded: null },
  derivations: [],
};

function shown({
  fuel = FUEL,
  coolant,
  asOf = '2026-10-01',
  late,
}: {
  fuel?: FuelPlan;
  coolant?: CoolantPlan;
  asOf?: string;
  late?: true;
}) {
  const moth = aMachine('moth', 'Moth', '2026-10-25', '2027-04-10', { fuel, coolant });
  moth.layUp.late = late;
  const plan = { ...planParts(), units: 'metric' as const, asOf, machines: [moth], events: [] };
  const showing = showingOf(plan, moth, {});
  const figures = fiveNumbersOf(moth, showing.format).map(({ name, value, note }) => `${name} ${value}: ${note}`);
  return { fuel: figures.find((f) => f.startsWith('Fuel'))!, page: fluids(showing).text.replaceAll(/<[^>]+>/g, ' ') };
}

test('petrol to add is told until it is in the tank, and then what is in it', () => {
  const before = shown({});
  expect(before.fuel).toBe('Fuel to add 9.2 L: with 64 mL of stabiliser');
  expect(shown({ late: true }).fuel).toBe(
    'Fuel to add 9.2 L: with 64 mL of stabiliser, if the lay-up is done as planned',
  );
  expect(before.page).toMatch(/Fill and stabilise\. .*Add +9\.2 L/);
  const done = shown({ fuel: { ...FUEL, settled: 'done' } });
  expect(done.fuel).toBe('Fuel in the tank 16.2 L: with 64 mL of stabiliser');
  expect(done.page).toMatch(/Filled and stabilised\. .*In the tank +16\.2 L/);
  expect(done.page).not.toMatch(/9\.2 L|Manual tap/);
  const past = shown({ fuel: { ...FUEL, settled: 'past' } });
  expect(past.fuel).toBe('Fuel in the tank ?: the lay-up is not ticked');
  expect(past.page).toMatch(/What was done with the petrol is not ticked\./);
  expect(past.page).not.toMatch(/9\.2 L|64 mL/);
});

test('a tank that is left low has nothing to add, a drained one tells what came out', () => {
  const leave: FuelPlan = { ...FUEL, choice: 'leave', addL: 0, levelL: 5, doseML: undefined };
  expect(shown({ fuel: leave }).fuel).toBe('Fuel to add none: what is in the tank stays');
  expect(shown({ fuel: leave }).page).toMatch(/Leave what is in the tank\. /);
  expect(shown({ fuel: { ...leave, settled: 'done' } }).fuel).toBe('Fuel in the tank 5.0 L: or less');
  expect(shown({ fuel: { ...leave, choice: 'fill' } }).page).toMatch(/ Fill\. /);
  const drain: FuelPlan = {
    ...FUEL,
    choice: 'drain',
    addL: undefined,
    doseML: undefined,
    levelL: 0,
    drainedL: 6,
    cans: 1,
  };
  expect(shown({ fuel: drain }).fuel).toBe('Fuel to drain 6.0 L: 1 can');
  const done = shown({ fuel: { ...drain, settled: 'done' } });
  expect(done.fuel).toBe('Fuel drained 6.0 L: ');
  expect(done.page).toMatch(/Drained +6\.0 L/);
  expect(done.page).not.toMatch(/In the tank/);
  // How long a can would keep it is no answer to when it is used up, nor is a verdict on it one to what the tank gets.
  const page = shown({
    fuel: { ...drain, drainedUseBy: '2026-11-25', atFirstUse: { verdict: 'dispose', text: 'Fill.' } },
  }).page;
  expect(page).toMatch(/Use the drained fuel by +Nov 25, 2026 +At first use +Fill\./);
  expect(page).not.toMatch(/Fuel keeps until|collection point/);
});

// The fixture's store gets to 33 °C at its warmest.
test('how full a tank gets is a share, or the brim with what it must not be filled over', () => {
  expect(shown({}).page).toMatch(/Tank at its warmest +97 % full at 33 °C/);
  expect(shown({ fuel: { ...FUEL, fullAtHottestPct: 100 } }).page).toMatch(
    /Tank at its warmest +full to the brim at 33 °C: filled cold to more than 16\.2 L, it would run over as it warms/,
  );
});

test('a day of a coolant test that is past is told as now', () => {
  const coolant: CoolantPlan = {
    needC: -30,
    aimC: -30,
    targetStrength: 0.45,
    enough: null,
    testBy: '2026-11-01',
    text: 'Test it.',
    derivations: [],
  };
  expect(shown({ coolant, asOf: '2026-11-01' }).page).toMatch(/Test by +Nov 1, 2026/);
  expect(shown({ coolant, asOf: '2026-11-02' }).page).toMatch(/Test by +now: its day is past/);
});
