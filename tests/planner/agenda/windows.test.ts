/** Windows in working minutes, counted by hand: three sessions of 120 min, at ten in the morning of three days. */
import { expect, test } from 'vitest';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';
import { listBy, windowsOf } from '../../../src/planner/agenda/windows.ts';
import { plainActivity } from './small-cases.ts';

const DAYS = [0, 1, 2].map((d) => ({ start: d * 1440 + 600, length: 120 }));

const problemOf = (activities: Activity[], days = DAYS): Problem => ({
  capacity: [1, 1],
  days,
  tripMinutes: [0],
  activities,
});

function windows(activities: Activity[], days = DAYS) {
  const found = windowsOf(problemOf(activities, days));
  return activities.map((_, i) => ({
    minutes: [found.earliestStart[i], found.latestStart[i]],
    days: [found.earliestDay[i], found.latestDay[i]],
    tail: found.tail[i],
  }));
}

const hour = (own: Partial<Activity> = {}) => plainActivity({ minutes: 60, to: 2, ...own });

test('a chain runs on from session to session, forwards and backwards', () => {
  const chain = [hour(), hour({ after: [{ of: 0, lag: 0 }] }), hour({ after: [{ of: 1, lag: 0 }] })];
  // 360 min in all: the last begins 300 min before the end of them at the latest, and the first has two hours behind it.
  expect(windows(chain)).toEqual([
    { minutes: [0, 180], days: [0, 1], tail: 180 },
    { minutes: [60, 240], days: [0, 2], tail: 120 },
    { minutes: [120, 300], days: [1, 2], tail: 60 },
  ]);
});

test('a wait overnight takes what is left of the session', () => {
  // Over at 11:00 + 12 h = 23:00: the next session; begun at 11:00 on the last day, so the first is over at noon the day before.
  expect(windows([hour(), hour({ after: [{ of: 0, lag: 720 }] })])).toEqual([
    { minutes: [0, 180], days: [0, 1], tail: 120 },
    { minutes: [120, 300], days: [1, 2], tail: 60 },
  ]);
});

test('a wait within the session takes its minutes alone', () => {
  // 10 min of work, 20 min of wait: 10:30. Backwards from 12:00 on the last day: 11:00 less 20 min is 10:40, less 10 min 10:30.
  expect(windows([plainActivity({ to: 2 }), hour({ after: [{ of: 0, lag: 20 }] })])).toEqual([
    { minutes: [0, 270], days: [0, 2], tail: 70 },
    { minutes: [30, 300], days: [0, 2], tail: 60 },
  ]);
});

test('a wait that begins in a later session counts from that session', () => {
  // The second begins on the second day at 10:00 and ends at 11:00; 20 min later, at 11:20, are 120 + 80 min of work.
  const chain = [hour(), hour({ after: [{ of: 0, lag: 720 }] }), plainActivity({ to: 2, after: [{ of: 1, lag: 20 }] })];
  expect(windows(chain).map(({ minutes, days }) => [minutes[0], days[0]])).toEqual([
    [0, 0],
    [120, 1],
    [200, 1],
  ]);
});

test('what waits for the end and takes no time is waited for as any other', () => {
  // It is done at 12:00 of the last day at the latest: what it waits 30 min for is over at 11:30.
  const [first] = windows([hour(), hour({ minutes: 0, after: [{ of: 0, lag: 30 }] })]);
  expect(first).toEqual({ minutes: [0, 270], days: [0, 2], tail: 60 });
});

test('of several that follow, the one that must begin first and the longest way to the end count', () => {
  const activities = [
    hour(),
    hour({ after: [{ of: 0, lag: 0 }], to: 0 }),
    hour({ after: [{ of: 0, lag: 0 }] }),
    hour({ after: [{ of: 2, lag: 0 }] }),
  ];
  expect(windows(activities)[0]).toEqual({ minutes: [0, 0], days: [0, 0], tail: 180 });
});

test('what is given of its own days and of its first minute narrows it', () => {
  const [dayOne, ready] = windows([hour({ from: 1, to: 1 }), hour({ ready: 1440 + 630, to: 9 })]);
  expect(dayOne).toEqual({ minutes: [120, 180], days: [1, 1], tail: 60 });
  expect(ready).toEqual({ minutes: [150, 300], days: [1, 2], tail: 60 });
  // A minute before its first day moves nothing.
  expect(windows([hour({ from: 2, ready: 700 })])[0]!.minutes).toEqual([240, 300]);
});

test('days before the first and after the last session leave no room', () => {
  const [before, after] = windows([hour({ from: -2, to: -1 }), hour({ from: 3, to: 4 })]);
  expect(before!.minutes).toEqual([0, -60]);
  expect(after!.minutes).toEqual([360, 300]);
});

test('a wait without any session has no end, and narrows nothing', () => {
  expect(windows([hour(), hour({ after: [{ of: 0, lag: 720 }] })], []).map(({ tail }) => tail)).toEqual([120, 60]);
});

test('the more urgent goes first, behind what it waits for; equals keep their order', () => {
  const free = [3, 1, 2, 1].map((minutes) => plainActivity({ minutes }));
  const order = (activities: Activity[], ...rules: ((i: number) => number)[]) => [
    ...listBy(problemOf(activities), rules),
  ];
  const byMinutes = (activities: Activity[]) => (i: number) => activities[i]!.minutes;
  expect(order(free, byMinutes(free))).toEqual([1, 3, 2, 0]);
  expect(order(free, byMinutes(free), (i) => -i)).toEqual([3, 1, 2, 0]);
  expect(order(free)).toEqual([0, 1, 2, 3]);
  // The most urgent waits for two, one of which waits for a third: the more urgent of the two comes first.
  const waiting = [
    plainActivity({ minutes: 9 }),
    plainActivity({ minutes: 8, after: [{ of: 0, lag: 0 }] }),
    plainActivity({ minutes: 7 }),
    plainActivity({
      minutes: 1,
      after: [
        { of: 1, lag: 0 },
        { of: 2, lag: 0 },
      ],
    }),
    plainActivity({ minutes: 2 }),
  ];
  expect(order(waiting, byMinutes(waiting))).toEqual([2, 0, 1, 3, 4]);
});
