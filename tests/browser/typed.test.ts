import { expect, test } from 'vitest';
import { decimal } from '../../src/browser/decimal.ts';
import {
  answersOf,
  draftsOf,
  emptyMachine,
  machineIds,
  newDrafts,
  nextRest,
} from '../../src/browser/planner/drafts.ts';
import { pointIn } from '../../src/browser/planner/point.ts';
import { parseQuantity } from '../../src/planner/units/index.ts';

test.each([
  ['52.4, -113.8', [52.4, -113.8]],
  ['52,4; -113,8', [52.4, -113.8]],
  ['52,4 -113,8', [52.4, -113.8]],
  ['52,4, -113,8', [52.4, -113.8]],
  ['-43,53 172,62', [-43.53, 172.62]],
  ['−43.53 172.62', [-43.53, 172.62]],
  ['52.4° N, 113.8° W', [52.4, -113.8]],
  ['33.87 S, 151.21 E', [-33.87, 151.21]],
  ['33,87°S 151,21°E', [-33.87, 151.21]],
  ['52,4,-113,8', [52.4, -113.8]],
  ['0 0', [0, 0]],
  ['90, 180', [90, 180]],
  ['91, 10', undefined],
  ['10, 181', undefined],
  ['52.4', undefined],
  ['Duluth', undefined],
  ['', undefined],
])('coordinates written %s', (text, point) => {
  expect(pointIn(text)).toEqual(point);
});

test.each([
  ['2.5', 2.5],
  ['2,5', 2.5],
  [' 0,8 ', 0.8],
  ['−12', -12],
  ['-12,5', -12.5],
  ['7', 7],
  ['1,234.5', Number.NaN],
  ['1.234,5', Number.NaN],
  ['1e3', Number.NaN],
  ['0x10', Number.NaN],
  ['five', Number.NaN],
  ['', Number.NaN],
])('a number typed %s', (text, value) => {
  expect(decimal(text)).toBe(value);
});

const DEVICE = { timeZone: 'America/Winnipeg', locale: 'en-CA' };
const drafts = (...machines: Partial<ReturnType<typeof emptyMachine>>[]) => ({
  ...newDrafts('en-CA', 'home-0123'),
  machines: machines.map((m, i) => ({ ...emptyMachine(i + 1), station: '71852', ...m })),
});

test('a machine keeps its id through a new name once something of it was taken along', () => {
  const before = drafts({ name: 'Crow' }, { name: 'Crow' });
  expect(machineIds(before.machines)).toEqual(['crow', 'crow-2']);
  const later = drafts({ name: 'Jackdaw', id: 'crow' }, { name: 'Crow' }, { name: 'Jackdaw' });
  expect(machineIds(later.machines)).toEqual(['crow', 'crow-2', 'jackdaw']);
  expect(machineIds(drafts({ name: 'Crow', id: '../etc' }).machines)).toEqual(['crow']);
});

test('the weather is that of the station chosen, or of the nearest to coordinates', () => {
  const climate = (m: object) => answersOf(drafts(m), DEVICE).places[0]!.climate;
  expect(climate({ station: '71852', point: '' })).toEqual({ station: '71852' });
  expect(climate({ station: '71852', point: '52.4,-113.8' })).toEqual({ near: [52.4, -113.8] });
  // As an earlier version kept it.
  expect(climate({ station: '71852', point: '52,4,-113,8' })).toEqual({ near: [52.4, -113.8] });
});

test.each([
  ['us', '-29,2', '-29.2 °F'],
  ['imperial', '−34', '-34 °C'],
  ['metric', '', undefined],
])('tested coolant is asked in the degrees of the tester: %s', (units, coolant, freezesAt) => {
  const { machines } = answersOf({ ...drafts({ coolant }), home: { ...drafts().home, units } }, DEVICE);
  expect(machines[0]!.coolantFreezesAt).toBe(freezesAt);
});

test('no petrol is no engine, and a charger has the settings that it was given', () => {
  const { machines, household } = answersOf(
    {
      ...drafts({ engine: 'electric' }, {}),
      home: { ...drafts().home, charger: '0,8', keeper: 'true', lithium: 'true' },
    },
    DEVICE,
  );
  expect(machines.map(({ engine, fuel }) => [engine?.cycle, fuel === false])).toEqual([
    ['electric', true],
    [undefined, false],
  ]);
  expect(household.charger).toEqual({ current: '0.8 A', maintainer: true, lithium: true });
});

test('a two-stroke is answered with the way of its oil, and answers of the earlier form keep their engine', () => {
  const { machines } = answersOf(
    drafts({ engine: 'premix' }, { engine: 'injected' }, { engine: 'four-stroke' }, { engine: '' }),
    DEVICE,
  );
  expect(machines.map(({ engine }) => engine)).toEqual([
    { cycle: 'two-stroke', twoStrokeOil: 'premix' },
    { cycle: 'two-stroke', twoStrokeOil: 'injected' },
    { cycle: 'four-stroke' },
    { cycle: undefined },
  ]);
  const earlier = draftsOf({
    ...drafts(),
    machines: [{ delivery: 'none' }, { delivery: 'diesel' }, { delivery: 'injection' }],
  });
  expect(earlier?.machines.map(({ engine, delivery }) => [engine, delivery])).toEqual([
    ['electric', ''],
    ['diesel', ''],
    ['', 'injection'],
  ]);
});

test('a battery that cannot be taken out is written as that, whatever is said of the house', () => {
  const answers = answersOf(
    drafts({ batteryOut: 'false' }, { batteryOut: 'true' }, {}, { chemistry: 'none', batteryOut: 'false' }),
    DEVICE,
  );
  const taken = answers.machines.map(({ battery }) => (battery === false ? false : battery?.removable));
  expect(taken).toEqual([false, true, undefined, false]);
  expect(answers.machines[3]!.battery).toBe(false);
});

test('a drive battery is answered of an electric machine, salted roads of one for the road', () => {
  const said = { drive: 'lead-acid', driveOut: 'false', salt: 'true' };
  const { machines } = answersOf(
    drafts(
      { ...said, kind: 'scooter', engine: 'electric' },
      { ...said, kind: 'quad', delivery: 'injection' },
      { kind: 'car', engine: 'electric' },
      { kind: 'motorcycle', salt: 'false', driveOut: 'true' },
    ),
    DEVICE,
  );
  expect(machines.map(({ driveBattery, salted }) => [driveBattery, salted])).toEqual([
    [{ chemistry: 'lead-acid', removable: false }, true],
    [undefined, undefined],
    [{ chemistry: undefined, removable: undefined }, undefined],
    [undefined, false],
  ]);
});

test.each([
  ['us', '4 US gal', '0.4 US fl oz/US gal'],
  ['imperial', '4 imp gal', '0.4 mL/L'],
  ['metric', '4 L', '0.4 mL/L'],
])('tank and stabiliser are asked in the units of pump and label: %s', (units, tank, dose) => {
  const { machines, household } = answersOf(
    { ...drafts({ tank: '4' }), home: { ...drafts().home, units, dose: '0.4' } },
    DEVICE,
  );
  expect(machines[0]!.fuel).toMatchObject({ tank });
  expect(household.stabiliserDose).toBe(dose);
  // An ounce for two and a half gallons, as labels have it, is 29.6 mL for 9.46 L: 3.1 mL/L.
  if (units === 'us') expect(parseQuantity(dose, 'dose')).toBeCloseTo(29.5735 / 9.46353, 3);
});

test.each([
  ['ends today', '2026-10-25', '2027-04-10', '2027-04-10', undefined],
  ['ended yesterday, not yet started up', '2026-10-25', '2027-04-10', '2027-04-11', undefined],
  ['ended three weeks ago, not yet started up', '2026-10-25', '2027-04-10', '2027-05-01', undefined],
  ['ended more than three weeks ago', '2026-10-25', '2027-04-10', '2027-05-02', ['2027-10-25', '2028-04-10']],
  ['ended, and the next lay-up is near', '2026-10-25', '2027-04-10', '2027-09-20', ['2027-10-25', '2028-04-10']],
  ['ended two years ago', '2026-10-25', '2027-04-10', '2029-04-10', ['2028-10-25', '2029-04-10']],
  ['ended on a leap day', '2027-11-01', '2028-02-29', '2028-06-01', ['2028-11-01', '2029-02-28']],
  ['began on a day left open', '', '2027-04-10', '2027-06-01', ['', '2028-04-10']],
  ['ends on a day left open', '2026-10-25', '', '2027-06-01', undefined],
])('a rest that %s', (_, lastUse, firstUse, day, next) => {
  const found = nextRest({ lastUse, firstUse, log: '' }, day);
  expect(found && [found.lastUse, found.firstUse]).toEqual(next);
});

test('a rest that ended yesterday, with the start-up ticked, is followed by the next', () => {
  const log = JSON.stringify([{ kind: 'done', step: 'start-up', date: '2027-04-09' }]);
  const rest = { lastUse: '2026-10-25', firstUse: '2027-04-10' };
  expect(nextRest({ ...rest, log }, '2027-04-11')?.firstUse).toBe('2028-04-10');
  const layUp = log.replace('start-up', 'lay-up');
  expect(nextRest({ ...rest, log: layUp }, '2027-04-11')).toBeUndefined();
});

test('every machine that a device kept is there again, with all of its log', () => {
  const many = drafts(...Array.from({ length: 60 }, (_, i) => ({ name: `M ${i}`, log: `[${'1,'.repeat(20_000)}1]` })));
  const again = draftsOf(JSON.parse(JSON.stringify(many)))!;
  expect(again).toEqual(many);
});

test('a name loses what no file would take', () => {
  expect(answersOf(drafts({ name: ' A\u202eB\u0007 ' }), DEVICE).machines[0]!.name).toBe('AB');
});
