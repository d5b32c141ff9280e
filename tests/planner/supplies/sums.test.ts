/** Sums of what is used up and the days by which it is ordered, each worked out by hand. */
import { expect, test } from 'vitest';
import type { Machine, Procedure, ServiceItem, Supply } from '../../../src/planner/household.ts';
import type { PlanStep } from '../../../src/planner/season-plan.ts';
import { planStrip } from '../../../src/planner/strip/index.ts';
import { sumSupplies } from '../../../src/planner/supplies/index.ts';
import { household, machine } from '../fluids/fixture.ts';
import { plainStep } from '../plain-step.ts';
import { assembly, job } from '../strip/workshop.ts';

const oil = { what: 'Engine oil', amount: 3, unit: 'L' };
const used = (date: string | undefined, over: Partial<PlanStep> = {}) =>
  plainStep('oil.fill', { date, supplies: [oil], ...over });
const supply = (over: Partial<Supply>): Supply => ({
  what: 'Engine oil',
  amount: 1,
  unit: 'L',
  leadDays: 4,
  inStock: false,
  ...over,
});
const practice = (...supplies: Partial<Supply>[]) =>
  household({ procedures: [{ steps: [{ supplies: supplies.map(supply) }] } as unknown as Procedure] });
const NOTHING_SAID = household({ procedures: [] });
const lines = (own: Machine, steps: PlanStep[], home = NOTHING_SAID) => sumSupplies([{ machine: own, steps }], home);
const orderBy = (home = NOTHING_SAID, own = machine()) => lines(own, [used('2026-11-08')], home)[0]!.orderBy;

test('nothing used up is nothing to buy', () => {
  expect(sumSupplies([], NOTHING_SAID)).toEqual([]);
  expect(lines(machine(), [plainStep('wash')])).toEqual([]);
  expect(lines(machine(), [used('2026-11-08', { supplies: [{ ...oil, amount: 0 }] })])).toEqual([]);
});

test('a supply is ordered a week ahead where nothing is said, else as the practice says, the longest time of several', () => {
  expect(orderBy()).toBe('2026-11-01');
  expect(orderBy(practice({}))).toBe('2026-11-04');
  expect(orderBy(practice({}, { leadDays: 20 }, { leadDays: 2 }))).toBe('2026-10-19');
  // What is said of another thing, or of the thing in another unit, is not said of it.
  expect(orderBy(practice({ what: 'Gear oil' }, { unit: 'can' }))).toBe('2026-11-01');
  expect(orderBy(practice({ what: '  engine   OIL ' }))).toBe('2026-11-04');
});

test('what the machine’s own services say goes before what the practice says', () => {
  const services = [{ id: 'oil', supplies: [supply({ leadDays: 30 })] }] as unknown as ServiceItem[];
  expect(orderBy(practice({ leadDays: 2 }), machine({ services }))).toBe('2026-10-09');
});

test('a thing is on the shelf only where all that is said of it says so', () => {
  const shelf = (...said: boolean[]) =>
    lines(machine(), [used('2026-11-08')], practice(...said.map((inStock) => ({ inStock }))))[0]!.inStock;
  expect([shelf(true), shelf(true, true), shelf(true, false), shelf(false, true)]).toEqual([true, true, false, false]);
});

test('a step without a day is reckoned to its last one, else to the edge of the season that it belongs to', () => {
  const season = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] };
  const needBy = (over: Partial<PlanStep>) => lines(machine({ season }), [used(undefined, over)])[0]!.needBy;
  expect(needBy({ latest: '2026-11-15' })).toBe('2026-11-15');
  expect(needBy({ latest: undefined })).toBe('2026-10-25');
  expect(needBy({ latest: undefined, phase: 'start-up' })).toBe('2027-04-10');
});

test('lines stand by the day on which they are ordered, then by name and unit; what is on the shelf stands last', () => {
  const supplies = (...named: [string, string][]) => named.map(([what, unit]) => ({ what, amount: 1, unit }));
  const home = practice({ what: 'Rags', unit: 'piece', inStock: true }, { what: 'Wax', unit: 'can', leadDays: 30 });
  const found = lines(
    machine(),
    [
      used('2026-11-08', {
        supplies: supplies(['Rags', 'piece'], ['Tape', 'roll'], ['Grease', 'tube'], ['Grease', 'can'], ['Wax', 'can']),
      }),
    ],
    home,
  );
  expect(found.map(({ what, unit }) => `${what}, ${unit}`)).toEqual([
    'Wax, can',
    'Grease, can',
    'Grease, tube',
    'Tape, roll',
    'Rags, piece',
  ]);
  expect(found.at(-1)).toMatchObject({ inStock: true, orderBy: undefined });
});

test('a line has the first need and the first order of all that it sums, in whatever order they come', () => {
  const days = (...dates: string[]) =>
    lines(
      machine(),
      dates.map((date, n) => ({ ...used(date), id: `oil.${n}` })),
    )[0]!;
  for (const found of [days('2026-11-08', '2026-11-15'), days('2026-11-15', '2026-11-08')])
    expect(found).toMatchObject({ amount: 6, needBy: '2026-11-08', orderBy: '2026-11-01' });
});

test('parts of a strip-down are needed on the day on which the machine is opened for them', () => {
  const own = machine({
    assemblies: [assembly('seat'), assembly('tank', ['seat'])],
    jobs: [job('valves', ['tank'], { parts: [supply({ what: 'Gasket', unit: 'piece', leadDays: 10 })] })],
  });
  const { strip } = planStrip(own);
  const off = (id: string, date: string) => plainStep(`strip.off.${id}`, { phase: 'winter', date });
  const needBy = (steps: PlanStep[]) =>
    sumSupplies([{ machine: own, steps, strip }], NOTHING_SAID).find(({ what }) => what === 'Gasket');
  // The seat comes off first, for the same job.
  expect(needBy([off('tank', '2026-12-20'), off('seat', '2026-12-19')])).toMatchObject({
    needBy: '2026-12-19',
    orderBy: '2026-12-09',
    for: [{ machine: 'juniper', job: 'valves', amount: 1 }],
  });
  // Where nothing comes off on a day, the job itself has one, or the first use is the last.
  expect(needBy([plainStep('job.valves', { phase: 'winter', date: '2027-01-10' })])?.needBy).toBe('2027-01-10');
  expect(needBy([])?.needBy).toBe(own.season.firstUse);
  expect(sumSupplies([{ machine: own, steps: [] }], NOTHING_SAID)).toEqual([]);
});

test('a washer of an assembly is there when that assembly is opened, by itself where no job asks for it', () => {
  const washer = { what: 'Sealing washer', count: 2, leadDays: 3, inStock: false };
  const own = machine({
    assemblies: [assembly('seat'), assembly('tank', ['seat'], { singleUse: [washer] })],
    jobs: [job('valves', ['tank'])],
  });
  const { strip } = planStrip(own);
  const off = (id: string, date: string) => plainStep(`strip.off.${id}`, { phase: 'winter', date });
  const found = (steps: PlanStep[]) =>
    sumSupplies([{ machine: own, steps, strip }], NOTHING_SAID).find(({ what }) => what === 'Sealing washer');
  // Of the tank, not of the seat before it.
  expect(found([off('seat', '2026-12-01'), off('tank', '2026-12-20')])).toMatchObject({
    needBy: '2026-12-20',
    amount: 2,
  });
  // Where it comes off on no day that is known, the day on which it goes on again.
  expect(found([plainStep('strip.on.tank', { phase: 'winter', date: '2027-02-01' })])?.needBy).toBe('2027-02-01');
});

test('a sum is about right where any of what it sums is', () => {
  const sum = (...about: (boolean | undefined)[]) =>
    lines(
      machine(),
      about.map((one, n) => ({ ...used('2026-11-08', { supplies: [{ ...oil, about: one }] }), id: `oil.${n}` })),
    )[0]!.about;
  expect([sum(true), sum(true, undefined), sum(undefined, true)]).toEqual([true, true, true]);
  expect([sum(undefined), sum(undefined, undefined)]).toEqual([undefined, undefined]);
});

test('steps of the strip-down and of its jobs bring no supplies of their own', () => {
  const steps = [
    { ...used('2026-12-20'), id: 'strip.off.tank' },
    { ...used('2026-12-20'), id: 'job.valves' },
    { ...used('2026-12-20'), id: 'jobbing.oil' },
  ];
  expect(lines(machine(), steps)[0]).toMatchObject({ amount: 3, for: [{ step: 'jobbing.oil' }] });
});

test.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('an amount of %s is refused with what it is of', (amount) => {
  const steps = [used('2026-11-08', { supplies: [{ ...oil, amount }] })];
  expect(() => lines(machine(), steps)).toThrow(`found ${amount} L of "Engine oil", expected an amount of 0 or more`);
});
