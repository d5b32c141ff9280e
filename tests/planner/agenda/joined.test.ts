/** What becomes of steps that go on from one another: one piece of work in the search, and steps of their own afterwards. */
import { expect, test } from 'vitest';
import type { Activity, Problem, Schedule } from '../../../src/planner/agenda/problem.ts';
import { apart, joined, wholeOf } from '../../../src/planner/agenda/unbroken.ts';
import { plainActivity } from './small-cases.ts';

const problemOf = (activities: Activity[]): Problem => ({
  capacity: [1, 1],
  days: [0, 1, 2].map((d) => ({ start: d * 1440 + 600, length: 120 })),
  tripMinutes: [0, 0],
  activities,
});
const follows = (of: number, lag = 0) => [{ of, lag }];
const members = (...activities: Activity[]) => joined(problemOf(activities)).members;

test('a run asks for what any of its steps asks for, and has the days that all of them have', () => {
  const wet = (...days: number[]) => Uint8Array.from([0, 1, 2], (d) => (days.includes(d) ? 0 : 1));
  const {
    problem,
    members: of,
    partOf,
  } = joined(
    problemOf([
      plainActivity({ minutes: 5, to: 2 }),
      plainActivity({
        minutes: 10,
        from: 0,
        to: 2,
        demand: [1, 0],
        after: follows(0, 30),
        ready: 700,
        splittable: true,
        fit: wet(0),
      }),
      plainActivity({
        minutes: 20,
        from: 1,
        to: 2,
        demand: [1, 1],
        after: follows(1),
        goesOnFrom: 1,
        ready: 710,
        stands: [3],
        fit: wet(1),
      }),
      plainActivity({
        minutes: 40,
        from: 0,
        to: 1,
        after: [...follows(2), ...follows(0, 60)],
        goesOnFrom: 2,
        stands: [4],
      }),
      plainActivity({ minutes: 80, after: [...follows(1, 15), ...follows(3, 45), ...follows(2)] }),
    ]),
  );
  expect(of).toEqual([[0], [1, 2, 3], [4]]);
  expect([...partOf]).toEqual([0, 1, 1, 1, 2]);
  expect(problem.activities[1]).toMatchObject({
    minutes: 70,
    demand: [1, 1],
    after: follows(0, 60),
    from: 1,
    to: 1,
    fit: wet(0, 1),
    ready: 710,
    stands: [3],
    splittable: false,
  });
  expect(problem.activities[2]!.after).toEqual(follows(1, 45));
});

test('what one of a run has and the other has not, the run has', () => {
  const one = (first: Partial<Activity>, then: Partial<Activity>) =>
    joined(problemOf([plainActivity(first), plainActivity({ after: follows(0), goesOnFrom: 0, ...then })])).problem
      .activities[0]!;
  const fit = Uint8Array.from([0, 1, 1]);
  expect(one({ fit }, {}).fit).toEqual(fit);
  expect(one({}, { fit }).fit).toEqual(fit);
  expect(one({ ready: 650 }, {}).ready).toBe(650);
  expect(one({}, { ready: 650 }).ready).toBe(650);
  expect(one({ ready: 660 }, { ready: 650 }).ready).toBe(660);
  expect(one({}, {}).ready).toBeUndefined();
  expect(one({ stands: [1] }, {}).stands).toEqual([1]);
  expect(one({}, { stands: [1] }).stands).toEqual([1]);
});

test('steps stay apart where a wait, other work, a charger, another place or another machine is between them', () => {
  const first = plainActivity({});
  const then = (own: Partial<Activity> = {}) => plainActivity({ after: follows(0), goesOnFrom: 0, ...own });
  expect(members(first, then())).toEqual([[0, 1]]);
  expect(members(first, then({ after: follows(0, 1) }))).toEqual([[0], [1]]);
  expect(members(first, then({ chargers: [0] }))).toEqual([[0], [1]]);
  expect(members({ ...first, chargers: [0] }, then())).toEqual([[0], [1]]);
  expect(members(first, then({ place: 1 }))).toEqual([[0], [1]]);
  expect(members(first, then({ group: 1 }))).toEqual([[0], [1]]);
  // Not the one before it; and the one before it, behind which it waits for another as well.
  expect(members(first, plainActivity({}), then())).toEqual([[0], [1], [2]]);
  expect(members(first, plainActivity({ after: follows(0) }), then({ after: [...follows(0), ...follows(1)] }))).toEqual(
    [[0], [1], [2]],
  );
  expect(members(first, plainActivity({}), plainActivity({ after: follows(1), goesOnFrom: 1 }))).toEqual([[0], [1, 2]]);
  expect(
    members(first, plainActivity({}), plainActivity({ after: [...follows(1), ...follows(0)], goesOnFrom: 1 })),
  ).toEqual([[0], [1, 2]]);
  // What it waits for on its list stands behind the first of the run: the run would wait for itself.
  const late = [first, then(), plainActivity({ after: [], goesOnFrom: 1 }), plainActivity({})];
  expect(members(...late)).toEqual([[0, 1, 2], [3]]);
  expect(members(...late.map((a, i) => (i === 2 ? { ...a, after: follows(3) } : a)))).toEqual([[0, 1], [2], [3]]);
});

test('without any run the problem is left as it is', () => {
  const problem = problemOf([plainActivity({}), plainActivity({ after: follows(0) })]);
  const unbroken = joined(problem);
  expect(unbroken.problem).toBe(problem);
  expect(unbroken.members).toEqual([[0], [1]]);
  expect([...unbroken.partOf]).toEqual([0, 1]);
  const schedule: Schedule = {
    day: new Int32Array(2),
    start: new Float64Array(2),
    end: new Float64Array(2),
    pieces: [],
    missing: [],
    sessions: 1,
  };
  expect(apart(schedule, unbroken, problem.activities)).toBe(schedule);
});

test('the steps of a run follow one another within its time; one that found no place has none in any of its steps', () => {
  const activities = [
    plainActivity({ minutes: 5 }),
    plainActivity({ minutes: 10, after: follows(0) }),
    plainActivity({ minutes: 20, after: follows(1), goesOnFrom: 1 }),
    plainActivity({ minutes: 30 }),
    plainActivity({ minutes: 40, goesOnFrom: 3 }),
    plainActivity({ minutes: 150, splittable: true }),
  ];
  const unbroken = joined(problemOf(activities));
  expect(unbroken.members).toEqual([[0], [1, 2], [3, 4], [5]]);
  const found = apart(
    {
      day: Int32Array.of(0, 1, -1, 0),
      start: Float64Array.of(600, 2060, Number.NaN, 605),
      end: Float64Array.of(605, 2090, Number.NaN, 3515),
      pieces: [
        { activity: 0, day: 0, start: 0, minutes: 5 },
        { activity: 1, day: 1, start: 20, minutes: 30 },
        { activity: 3, day: 0, start: 5, minutes: 115 },
        { activity: 3, day: 2, start: 0, minutes: 35 },
      ],
      missing: [2],
      sessions: 3,
    },
    unbroken,
    activities,
  );
  expect(found).toEqual({
    day: Int32Array.of(0, 1, 1, -1, -1, 0),
    start: Float64Array.of(600, 2060, 2070, Number.NaN, Number.NaN, 605),
    end: Float64Array.of(605, 2070, 2090, Number.NaN, Number.NaN, 3515),
    pieces: [
      { activity: 0, day: 0, start: 0, minutes: 5 },
      { activity: 1, day: 1, start: 20, minutes: 10 },
      { activity: 2, day: 1, start: 30, minutes: 20 },
      { activity: 5, day: 0, start: 5, minutes: 115 },
      { activity: 5, day: 2, start: 0, minutes: 35 },
    ],
    missing: [3, 4],
    sessions: 3,
  });
});

test('the whole of which a step is part follows what any of its steps follows, but none of its own', () => {
  const activities = [
    plainActivity({ minutes: 5 }),
    plainActivity({ minutes: 10, after: follows(0, 30) }),
    plainActivity({ minutes: 20, after: follows(1), goesOnFrom: 1 }),
  ];
  const unbroken = joined(problemOf(activities));
  for (const i of [1, 2])
    expect(wholeOf(i, unbroken, activities)).toMatchObject({ minutes: 30, after: follows(0, 30) });
  expect(wholeOf(0, unbroken, activities)).toMatchObject({ minutes: 5, after: [] });
});
