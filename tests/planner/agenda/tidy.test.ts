/** Order within a session: nobody likes to go to and fro between two machines. */
import { expect, test } from 'vitest';
import type { Activity, Problem, Schedule } from '../../../src/planner/agenda/problem.ts';
import { tidied } from '../../../src/planner/agenda/tidy.ts';
import { plainActivity } from './small-cases.ts';

const DAYS = [0, 1].map((d) => ({ start: d * 1440 + 600, length: 240 }));

/** The work of the second day, one after the other in the order of the list but for what is placed elsewhere, [day, minute]. */
function session(
  activities: Activity[],
  elsewhere: Record<number, [day: number, minute: number]> = {},
  over: Partial<Problem> = {},
) {
  const problem: Problem = { capacity: [1, 1], days: DAYS, tripMinutes: [0], activities, ...over };
  const pieces: Schedule['pieces'] = [];
  let at = 0;
  activities.forEach(({ minutes }, activity) => {
    const [day, start] = elsewhere[activity] ?? [1, at];
    if (!elsewhere[activity]) at += minutes;
    pieces.push({ activity, day, start, minutes });
  });
  const starts = pieces.map((p) => DAYS[p.day]!.start + p.start);
  const schedule: Schedule = {
    day: Int32Array.from(pieces, (p) => p.day),
    start: Float64Array.from(starts),
    end: Float64Array.from(pieces, (p, i) => starts[i]! + p.minutes),
    pieces,
    missing: [],
    sessions: 2,
  };
  return { problem, schedule, own: pieces.filter((_, i) => !elsewhere[i]) };
}

function order(...given: Parameters<typeof session>): [activity: number, start: number][] | undefined {
  const { problem, schedule, own } = session(...given);
  return tidied(problem, schedule, own)?.map((p) => [p.activity, p.start]);
}

const juniper = (own: Partial<Activity> = {}) => plainActivity({ minutes: 20, group: 0, ...own });
const magpie = (own: Partial<Activity> = {}) => plainActivity({ minutes: 30, group: 1, ...own });

test('the steps of a machine are done one after the other, the machine that comes first before the other', () => {
  const expected = [
    [0, 0],
    [2, 20],
    [1, 40],
    [3, 70],
  ];
  expect(order([juniper(), magpie(), juniper(), magpie()])).toEqual(expected);
  // Of the machine whose turn it is, the step that its sheet has first: not the one that the session had first.
  const { problem, schedule, own } = session([juniper(), magpie(), juniper(), magpie()]);
  const turned = own.map((p) => ({ ...p, start: [50, 70, 30, 0][p.activity]! }));
  expect(tidied(problem, schedule, turned)?.map((p) => p.activity)).toEqual([1, 3, 0, 2]);
});

test('what follows a step of the other machine waits for it', () => {
  expect(
    order([juniper(), magpie({ after: [{ of: 0, lag: 0 }] }), juniper({ after: [{ of: 1, lag: 0 }] }), magpie()]),
  ).toEqual([
    [0, 0],
    [1, 20],
    [3, 50],
    [2, 80],
  ]);
});

test('nothing is moved where there is a gap, a second pair of hands, or a step that is done in parts', () => {
  const some = [juniper(), magpie(), juniper()];
  expect(order(some)).toBeDefined();
  expect(order(some, {}, { capacity: [2, 1] })).toBeUndefined();
  const { problem, schedule, own } = session(some);
  expect(
    tidied(
      problem,
      schedule,
      own.map((p, i) => (i === 2 ? { ...p, start: p.start + 1 } : p)),
    ),
  ).toBeUndefined();
  expect(
    tidied(
      problem,
      schedule,
      own.map((p, i) => (i === 2 ? { ...p, minutes: 10 } : p)),
    ),
  ).toBeUndefined();
});

test('nothing is moved to before its time', () => {
  // The third begins 50 min after the start of the session, and would begin 20 min after it.
  const moved = (own: Partial<Activity>) => order([juniper(), magpie(), juniper(own)]);
  const start = DAYS[1]!.start;
  expect(moved({ ready: start + 20 })).toEqual([
    [0, 0],
    [2, 20],
    [1, 40],
  ]);
  expect(moved({ ready: start + 21 })).toBeUndefined();
  expect(moved({ after: [{ of: 0, lag: 0 }] })).toBeDefined();
  expect(moved({ after: [{ of: 0, lag: 1 }] })).toBeUndefined();
  // Another one ends 20 min after the start of the day before.
  const behind = (lag: number) =>
    order([juniper(), magpie(), juniper({ after: [{ of: 3, lag }] }), juniper()], { 3: [0, 0] });
  expect(behind(1440)).toBeDefined();
  expect(behind(1441)).toBeUndefined();
});

test('one charge may move, two of a session may not', () => {
  const charge = { chargers: [0], chargeMinutes: 60 };
  expect(order([juniper(), magpie(), juniper(charge)])).toBeDefined();
  expect(order([juniper(), magpie(charge), juniper(charge)])).toBeUndefined();
});

test('a charge moves only where no other one is near before and after it has moved', () => {
  // From minute 50 to minute 20 of the session, 20 min of work and 60 min of charge: from 20 to 130 all must be free.
  const charge = { chargers: [0], chargeMinutes: 60 };
  const start = DAYS[1]!.start;
  const near = (from: number, to: number) => {
    const other = { ...juniper({ ...charge, chargeMinutes: 0 }), minutes: to - from };
    return order([juniper(), magpie(), juniper(charge), other], { 3: [1, from] });
  };
  expect(near(-10, 20)).toBeDefined();
  expect(near(-10, 21)).toBeUndefined();
  expect(near(130, 140)).toBeDefined();
  expect(near(129, 140)).toBeUndefined();
  // The other charge itself counts, a step without one does not.
  const [other, plain] = [{ ...charge, chargeMinutes: start + 20 - DAYS[0]!.start - 20 }, {}].map((own) =>
    juniper(own),
  );
  expect(order([juniper(), magpie(), juniper(charge), other!], { 3: [0, 0] })).toBeDefined();
  expect(
    order([juniper(), magpie(), juniper(charge), { ...other!, chargeMinutes: other!.chargeMinutes + 1 }], {
      3: [0, 0],
    }),
  ).toBeUndefined();
  expect(order([juniper(), magpie(), juniper(charge), plain!], { 3: [1, 60] })).toBeDefined();
});
