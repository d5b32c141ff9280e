/** A battery that must not simply be charged says so wherever it is charged: the trip, the lay-up, the start-up, their sheets. */
import { expect, test } from 'vitest';
import type { Machine } from '../../../src/planner/household.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import { readWith } from '../../content/helpers.ts';
import { library } from '../tasks/library.ts';

/** The charging steps of a motorcycle's season on a day: id, title and detail of each. */
function chargesOf(asOf: string, battery: string, record: Partial<Machine> = {}) {
  const bike = `name: Wren\nkind: motorcycle\nplace: shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\nbattery: { ${battery} }\n`;
  const { household, problems } = readWith({ 'machines/wren.yaml': bike }, 'workshop');
  expect(problems).toEqual([]);
  const machines = household!.machines.filter(({ id }) => id === 'wren').map((m) => ({ ...m, ...record }));
  const { plan } = planSeason({ ...household!, machines, procedures: library() }, { asOf, quick: true });
  return plan.machines[0]!.steps.filter(({ needs }) => needs.charger);
}

const LAID_UP: Partial<Machine> = { doneSteps: [{ stepId: 'lay-up', date: '2026-11-01' }] };
const read = (date: string, volts: number, temperatureC: number): Partial<Machine> => ({
  ...LAID_UP,
  readings: [{ date, volts, temperatureC, restedH: 48 }],
});
const WITHOUT_CHARGE =
  /\((?:it may be frozen: look first|look at it first|not before its maker or a workshop says so)\)$/;

// Source: OD1002 and common practice: a frozen battery is thawed before it is charged, a bulged one not charged at all.
test('a lead–acid battery that may be frozen is looked at first, on its trip as at the start-up', () => {
  const steps = chargesOf('2027-01-10', 'chemistry: agm, capacity: 12 Ah', read('2027-01-09', 11.8, -12));
  const open = steps.filter(({ done }) => !done);
  expect(open.map(({ phase }) => phase)).toEqual(expect.arrayContaining(['look-in', 'start-up']));
  const first = open.find(({ phase }) => phase === 'look-in')!;
  for (const step of [first, open.find(({ phase }) => phase === 'start-up')!]) {
    expect(step.title).toMatch(/\(it may be frozen: look first\)$/);
    expect(step.detail).toMatch(
      /^It may be frozen\. Bulged, or ice in it: do not charge; thaw it at room temperature first/,
    );
  }
  // What is done is done.
  expect(steps.filter(({ done, title }) => done && WITHOUT_CHARGE.test(title))).toEqual([]);
});

// Lithium iron phosphate under its knee may catch fire on the charger: common practice, from memory.
test('a lithium battery that has run down is charged at no step before its maker has a say', () => {
  const own = 'chemistry: lifepo4, capacity: 6 Ah';
  const told = chargesOf('2027-04-01', own, read('2027-03-30', 3.1, 8)).filter(({ done }) => !done);
  expect(told.length).toBeGreaterThan(0);
  for (const { title, detail } of told) {
    expect(title).toMatch(/\(not before its maker or a workshop says so\)$/);
    expect(detail).toMatch(/^Do not charge it before its maker or a workshop/);
  }
});

test('nothing is said at the steps of a battery of which nothing bad is known', () => {
  for (const asOf of ['2026-10-01', '2026-10-30', '2027-04-05']) {
    const steps = chargesOf(asOf, 'chemistry: agm, capacity: 12 Ah', asOf > '2026-11-01' ? LAID_UP : {});
    expect(steps.length).toBeGreaterThan(1);
    expect(steps.filter(({ title }) => WITHOUT_CHARGE.test(title))).toEqual([]);
  }
});

// A brush at the posts of a battery that is being charged makes a spark beside its gas; common practice.
test.each(['maintainer', 'visits', 'carry-in'] as const)('the posts are cleaned before a charger is on: %s', (care) => {
  const { household } = readWith({}, 'workshop');
  const home = {
    ...household!,
    places: household!.places.map((place) => ({ ...place, power: true })),
    chargers: household!.chargers.map((charger) => ({ ...charger, maintainer: true })),
    batteryRoom: { name: 'hall', temperatureC: 15 },
    machines: household!.machines.map((m) => ({ ...m, battery: { ...m.battery!, care } })),
    procedures: library(),
  };
  const { plan } = planSeason(home, { asOf: '2026-10-01', quick: true });
  const steps = plan.machines[0]!.steps.map(({ id }) => id);
  const charge = steps.findIndex((id) => /^battery\.(?:maintainer|charge|charge-away)$/.test(id));
  expect(steps.indexOf('battery.terminals')).toBeGreaterThan(-1);
  expect(charge).toBeGreaterThan(steps.indexOf('battery.terminals'));
});
