/** A household's hours, places, stands and chargers as a scheduling problem. 2026-10-31 is a Saturday. */
import { expect, test } from 'vitest';
import { buildProblem } from '../../../src/planner/agenda/build.ts';
import { dayNumber } from '../../../src/planner/dates.ts';
import type { Household, MachineKind } from '../../../src/planner/household.ts';
import { machine, place } from '../fluids/fixture.ts';
import { task, yard } from './world.ts';

const FROM = '2026-10-26';
const TO = '2026-11-08';
const HOURS = { wednesday: 1, saturday: 3, sunday: 2 };

test('the days are those with hours between the first and the last day of any step, the days away left out', () => {
  const dates = (away: Household['away']) =>
    buildProblem([task('a', 10, FROM, '2026-11-04'), task('b', 10, '2026-10-28', TO)], yard(HOURS, { away })).dates;
  expect(dates([])).toEqual(['2026-10-28', '2026-10-31', '2026-11-01', '2026-11-04', '2026-11-07', '2026-11-08']);
  expect(dates([{ from: '2026-10-31', to: '2026-11-04' }])).toEqual(['2026-10-28', '2026-11-07', '2026-11-08']);
});

test('a session begins at six in the evening or at ten of a weekend, or so early that it ends by midnight', () => {
  const starts = (hours: Parameters<typeof yard>[0], busy?: Map<string, number>) => {
    const { problem, dates } = buildProblem([task('a', 10, FROM, '2026-11-01')], yard(hours), [place()], busy);
    return problem.days.map(({ start, length }, d) => [start - dayNumber(dates[d]!) * 1440, length]);
  };
  expect(starts({ friday: 6, saturday: 3, sunday: 14 })).toEqual([
    [18 * 60, 360],
    [10 * 60, 180],
    [10 * 60, 840],
  ]);
  expect(starts({ friday: 6.5, sunday: 24 })).toEqual([
    [17.5 * 60, 390],
    [0, 1440],
  ]);
  // A charging trip takes its minutes from the hours; a day without any left is none.
  const busy = new Map([
    ['2026-10-30', 45],
    ['2026-10-31', 180],
    ['2026-11-01', 200],
  ]);
  expect(starts({ friday: 1, saturday: 3, sunday: 3 }, busy)).toEqual([[18 * 60, 15]]);
});

test('a step has the days of its window, as positions among those with hours', () => {
  const windows = [
    task('all', 10, FROM, TO),
    task('one', 10, '2026-10-31', '2026-10-31'),
    task('between', 10, '2026-10-29', '2026-11-06'),
    task('none', 10, '2026-11-05', '2026-11-06'),
  ];
  const { problem } = buildProblem(windows, yard({ saturday: 3, sunday: 2 }));
  expect(problem.activities.map(({ from, to }) => [from, to])).toEqual([
    [0, 3],
    [0, 0],
    [0, 1],
    [2, 1],
  ]);
});

test('what follows a step waits for the longer of both waits, once for each; what is not in the agenda is left out', () => {
  const steps = [
    task('soak', 10, FROM, TO, { waitH: 2 }),
    task('rinse', 10, FROM, TO, { after: ['soak', 'soak', 'polish'] }),
    task('dry', 10, FROM, TO, { after: ['soak', 'rinse'], behindH: 1.5, goesOnFrom: 'juniper/rinse' }),
  ];
  const { activities } = buildProblem(steps, yard(HOURS)).problem;
  expect(activities.map(({ after }) => after)).toEqual([
    [],
    [{ of: 0, lag: 120 }],
    [
      { of: 0, lag: 120 },
      { of: 1, lag: 90 },
    ],
  ]);
  expect(activities.map(({ goesOnFrom }) => goesOnFrom)).toEqual([undefined, undefined, 1]);
});

test('each step has its machine and its place, with the way to it', () => {
  const steps = [
    task('a', 10, FROM, TO),
    task('b', 10, FROM, TO, { machine: 'magpie', placeId: 'hall' }),
    task('c', 10, FROM, TO, { machine: 'magpie', placeId: 'gone' }),
  ];
  const places = [place({ id: 'hall', tripMinutes: 25 }), place({ tripMinutes: 5 })];
  const { problem } = buildProblem(steps, yard(HOURS, { places, hands: 2 }));
  expect(problem.activities.map((a) => [a.group, a.place])).toEqual([
    [0, 0],
    [1, 1],
    [1, 2],
  ]);
  expect(problem.tripMinutes).toEqual([5, 25, 0]);
  expect(problem.capacity).toEqual([2, 1]);
});

test('a machine is put on the stand that carries the fewest kinds, of equal ones on the first', () => {
  const stand = (...kinds: MachineKind[]) => ({ id: kinds.join(), name: '', kinds });
  const stands = [
    stand('car', 'quad', 'motorcycle'),
    stand('quad'),
    stand('motorcycle', 'car'),
    stand('motorcycle', 'quad'),
    stand('motorcycle'),
  ];
  const needs = { stand: true };
  const steps = [
    task('a', 10, FROM, TO, { needs }),
    task('b', 10, FROM, TO, { needs, kind: 'car' }),
    task('c', 10, FROM, TO),
  ];
  const { activities } = buildProblem(steps, yard(HOURS, { stands })).problem;
  expect(activities.map((a) => a.stands)).toEqual([[4, 2, 3, 0], [2, 0], []]);
});

test('a charger has to suit the battery and to stand where the machine does, or anywhere', () => {
  const charger = (chemistries: Household['chargers'][number]['chemistries'], placeId?: string) => ({
    id: '',
    name: '',
    currentA: 1,
    chemistries,
    maintainer: false,
    placeId,
  });
  const chargers = [charger(['agm']), charger(['gel']), charger(['gel', 'agm'], 'shed'), charger(['agm'], 'hall')];
  const needs = { charger: true };
  const steps = [
    task('a', 10, FROM, TO, { needs, waitH: 8 }),
    task('b', 10, FROM, TO, { needs, chemistry: undefined, placeId: 'hall' }),
    task('c', 10, FROM, TO),
  ];
  const { activities } = buildProblem(steps, yard(HOURS, { chargers })).problem;
  expect(activities.map((a) => a.chargers)).toEqual([[0, 2], [0, 1, 3], []]);
  expect(activities.map((a) => a.chargeMinutes)).toEqual([480, 0, 0]);
});

test('a bench is asked for where the household has one', () => {
  const steps = [task('a', 10, FROM, TO, { needs: { bench: true } }), task('b', 10, FROM, TO)];
  const demand = (bench: boolean) => {
    const { problem, notes } = buildProblem(
      steps,
      yard(HOURS, { places: [place({ bench: false }), place({ id: 'hall', bench })] }),
    );
    return [problem.activities.map((a) => a.demand), notes.length];
  };
  expect(demand(true)).toEqual([
    [
      [1, 1],
      [1, 0],
    ],
    0,
  ]);
  expect(demand(false)).toEqual([
    [
      [1, 0],
      [1, 0],
    ],
    1,
  ]);
});

test('what was taken for granted is said once for a machine, by its name', () => {
  const needs = { stand: true, bench: true, dryDay: true };
  const winter = ['2026-12-01', '2027-01-31'] as const;
  const sleet = { needs, machine: 'sleet', kind: 'snow-machine' as const };
  const steps = [
    task('a', 10, ...winter, { needs }),
    task('b', 10, ...winter, { needs }),
    task('c', 10, ...winter, sleet),
  ];
  const home = yard(HOURS, { stands: [], places: [place()], machines: [machine()] });
  const { notes, problem } = buildProblem(steps, home);
  const dry = 'a dry day above 5 °C is not usual between 1 December 2026 and 31 January 2027.';
  expect(notes.map(({ machine, text }) => [machine, text])).toEqual([
    ['juniper', `juniper: a: ${dry}`],
    ['juniper', 'Juniper needs a stand, and none of the household carries a motorcycle.'],
    ['juniper', 'Juniper needs a bench, and no place has one.'],
    ['sleet', `sleet: c: ${dry}`],
    ['sleet', 'sleet needs a stand, and none of the household carries a snow machine.'],
    ['sleet', 'sleet needs a bench, and no place has one.'],
  ]);
  expect(new Set(notes.map(({ level, about }) => `${level} ${about}`))).toEqual(new Set(['note agenda']));
  expect(notes.every((n) => n.act !== '')).toBe(true);
  expect(problem.activities.map((a) => a.fit)).toEqual([undefined, undefined, undefined]);
});

test('a step for a dry day is held to those of its place', () => {
  // The invented place has its warm days between April and October.
  const steps = [
    task('a', 10, '2026-10-05', '2026-12-31', { needs: { dryDay: true } }),
    task('b', 10, '2026-10-05', '2026-12-31'),
    task('c', 10, '2026-12-06', '2026-12-08', { needs: { dryDay: true } }),
    task('d', 10, '2026-10-05', '2026-12-31', { needs: { dryDay: true }, placeId: 'gone' }),
  ];
  const { problem, dates, notes } = buildProblem(steps, yard({ monday: 1 }));
  const [a, b, c, d] = problem.activities.map(({ fit }) => fit);
  expect(dates.filter((_, i) => a![i] === 1).at(0)).toBe('2026-10-05');
  expect(dates.filter((_, i) => a![i] === 1).every((date) => date < '2026-11-15')).toBe(true);
  expect(a).toHaveLength(dates.length);
  expect([b, c, d]).toEqual([undefined, undefined, undefined]);
  expect(notes).toHaveLength(1);
});

test('minutes, waits and hours that are none are refused, none at all are not', () => {
  const build =
    (minutes: number, waitH = 0, saturday = 3, hands = 1) =>
    () =>
      buildProblem([task('a', minutes, FROM, TO, { waitH })], yard({ saturday }, { hands }));
  for (const none of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(build(none)).toThrow(`found ${none} min and a wait of 0 h for "juniper/a"`);
    expect(build(1, none)).toThrow(`found 1 min and a wait of ${none} h for "juniper/a"`);
    expect(build(1, 0, none)).toThrow(`found ${none} h on saturday, expected 0 to 24`);
  }
  expect(build(1, 0, 24.1)).toThrow('found 24.1 h on saturday');
  expect(build(1, 0, 3, 0.5)).toThrow('found 0.5 pairs of hands, expected 1 or more');
  expect(build(0, 0, 24)().problem.activities[0]).toMatchObject({ minutes: 0, from: 0, to: 1 });
  expect(build(0, 0, 0)().problem.days).toEqual([]);
});
