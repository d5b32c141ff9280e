/** Coolant in the plan of a whole season: what the file says of it, what is ticked, and the day of the plan. */
import { expect, test } from 'vitest';
import { planSeason } from '../../../src/planner/plan.ts';
import { readWith } from '../../content/helpers.ts';
import { library } from '../tasks/library.ts';

/** The car in the shed of the valley, whose winters are well below −1 °C. */
function carAt(asOf: string, cooling: string, more = '') {
  const car = `name: Car\nkind: car\nplace: shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\ncooling: ${cooling}\n${more}`;
  const { household, problems } = readWith({ 'machines/car.yaml': car }, 'workshop');
  expect(problems).toEqual([]);
  const { plan } = planSeason({ ...household!, procedures: library() }, { asOf, quick: true });
  const machine = plan.machines.find(({ id }) => id === 'car')!;
  const about = machine.warnings.filter((w) => w.about === 'coolant' && !/last changed/.test(w.text));
  return {
    coolant: machine.coolant!,
    steps: machine.steps.map(({ id }) => id),
    /** Days on which the agenda asks for it, as a list of the day shows them. */
    days: (step: string) =>
      plan.sessions
        .filter(({ steps }) => steps.some((one) => one.machine === 'car' && one.step === step))
        .map(({ date }) => date),
    levels: about.map(({ level }) => level),
  };
}

test('coolant that nobody tested is a danger in the frost, until the test is ticked or the rest is over', () => {
  const done = 'done:\n  - { step: coolant.test, date: "2026-10-30" }\n';
  expect(carAt('2026-08-20', 'liquid').levels).toEqual(['warning']);
  expect(carAt('2027-01-10', 'liquid').levels).toEqual(['danger']);
  expect(carAt('2027-01-10', 'liquid', done).levels).toEqual(['warning']);
  expect(carAt('2027-08-10', 'liquid').levels).toEqual([]);
});

test('what the plan calls a danger has a day on which it is done, however late', () => {
  // The start-up begins on 20 March, and on 2 April the store of the valley can still freeze.
  const { levels, days } = carAt('2027-04-02', 'liquid');
  expect(levels).toEqual(['danger']);
  const found = days('coolant.test');
  expect(found).toHaveLength(1);
  expect(found[0]! >= '2027-04-02' && found[0]! <= '2027-05-01').toBe(true);
});

// Table of ASHRAE, ethylene glycol: 43.5 % freezes at −28.8 °C, 20.1 % at −8.9 °C; beyond its end, 57.8 %.
test('a freezing point that a tester showed is the strength of it', () => {
  const strength = (freezesAt: string) => carAt('2026-10-01', `{ freezesAt: ${freezesAt} }`).coolant.strength!;
  expect(strength('-28.8 °C')).toBeCloseTo(0.435, 6);
  expect(strength('-8.9 °C')).toBeCloseTo(0.201, 6);
  // −19.84 °F.
  expect(strength('-19.84 °F')).toBeCloseTo(0.435, 6);
  expect(strength('-60 °C')).toBe(0.578);
  expect(strength('0 °C')).toBe(0);
});

test('coolant that is tested too weak is strengthened, and asks for no test', () => {
  const { steps, levels } = carAt('2026-10-01', '{ freezesAt: -8.9 °C }');
  expect(steps).toContain('coolant.swap');
  expect(steps).not.toContain('coolant.test');
  expect(levels).toEqual(['danger']);
});

test('a strength and a freezing point at once are one too many', () => {
  const car = 'name: Car\nkind: car\nplace: shed\ncooling: { strength: 50 %, freezesAt: -30 °C }\n';
  const { problems } = readWith({ 'machines/car.yaml': car }, 'workshop');
  expect(problems.map(({ what }) => what)).toEqual(['found a strength and a freezing point, expected one of them']);
});
