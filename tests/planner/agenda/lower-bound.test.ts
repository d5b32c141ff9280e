/** Sessions that a problem asks for at the least: counted by hand, or found by trying everything. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastSessions } from '../../../src/planner/agenda/lower-bound.ts';
import { possible } from '../../../src/planner/agenda/possible.ts';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';
import { solve } from '../../../src/planner/agenda/solve.ts';
import { exhaustive } from './exhaustive.ts';
import { plainActivity, without } from './small-cases.ts';

const TEN_DAYS = Array.from({ length: 10 }, (_, d) => ({ start: d * 1440 + 600, length: 120 }));

function least(activities: Activity[], problem: Partial<Problem> = {}): number {
  const whole: Problem = { capacity: [1, 1], days: TEN_DAYS, tripMinutes: [0, 0], activities, ...problem };
  return leastSessions(whole, possible(whole));
}

test('work that fits one session asks for one; twice as much for two', () => {
  expect(least([plainActivity({ minutes: 60 }), plainActivity({ minutes: 60 })])).toBe(1);
  expect(least([plainActivity({ minutes: 60 }), plainActivity({ minutes: 61 })])).toBe(2);
});

test('the way to a place takes its part of each session', () => {
  // 3 × 60 min; sessions of 120 min, of which 30 min are the way: 90 min each, so two hold no more than 180.
  const three = [1, 2, 3].map(() => plainActivity({ minutes: 60 }));
  expect(least(three, { tripMinutes: [30] })).toBe(2);
  expect(least(three, { tripMinutes: [31] })).toBe(3);
});

test('each wait overnight asks for a session more, however wide the windows', () => {
  const chain = [
    plainActivity({}),
    plainActivity({ after: [{ of: 0, lag: 720 }] }),
    plainActivity({ after: [{ of: 1, lag: 720 }] }),
  ];
  expect(least(chain)).toBe(3);
});

test('a wait that a session can hold asks for none; two of them that it cannot hold together for one', () => {
  // 10 + 45 + 10 = 65 min; with the second wait 10 + 45 + 10 + 45 + 11 = 121 min, of sessions of 120.
  const short = [plainActivity({}), plainActivity({ after: [{ of: 0, lag: 45 }] })];
  expect(least(short)).toBe(1);
  expect(least([...short, plainActivity({ minutes: 10, after: [{ of: 1, lag: 45 }] })])).toBe(1);
  expect(least([...short, plainActivity({ minutes: 11, after: [{ of: 1, lag: 45 }] })])).toBe(2);
});

test('of two that follow, the one that takes the session longer counts, whichever comes first', () => {
  // 40 + 10 + 30 of wait + 50 = 130 min of a session of 120, though there are 110 min of work in all.
  const soaked = plainActivity({ minutes: 50, after: [{ of: 1, lag: 30 }] });
  const rinsed = plainActivity({ after: [{ of: 1, lag: 0 }] });
  const first = [plainActivity({ minutes: 40 }), plainActivity({ after: [{ of: 0, lag: 0 }] })];
  expect(least([...first, rinsed])).toBe(1);
  expect(least([...first, soaked, rinsed])).toBe(2);
  expect(least([...first, rinsed, soaked])).toBe(2);
  // A wait overnight counts more than any length: the session of the first holds it alone.
  const overnight = plainActivity({ after: [{ of: 1, lag: 720 }] });
  expect(least([...first, rinsed, overnight])).toBe(2);
  expect(least([...first, overnight, rinsed])).toBe(2);
});

test('what follows shares a session only on days that both may be done on, and that are long enough for both', () => {
  // 40 + 30 min are more than the sessions of 60 min from the sixth day on, and before the sixth of the others.
  const days = TEN_DAYS.map((day, d) => ({ ...day, length: d < 5 ? 240 : 60 }));
  const pair = (first: Partial<Activity>, then: Partial<Activity>, on = days) =>
    least(
      [plainActivity({ minutes: 40, ...first }), plainActivity({ minutes: 30, after: [{ of: 0, lag: 0 }], ...then })],
      { days: on },
    );
  expect(pair({}, {})).toBe(1);
  expect(pair({}, { from: 5 })).toBe(2);
  expect(pair({ from: 5 }, {})).toBe(2);
  expect(pair({ from: 4 }, {})).toBe(1);
  const mirrored = days.toReversed().map(({ length }, d) => ({ ...TEN_DAYS[d]!, length }));
  const late = (first: Partial<Activity>, then: Partial<Activity>) =>
    least(
      [plainActivity({ minutes: 40, ...first }), plainActivity({ minutes: 30, after: [{ of: 0, lag: 0 }], ...then })],
      { days: mirrored },
    );
  expect(late({ to: 4 }, {})).toBe(2);
  expect(late({}, { to: 4 })).toBe(2);
  expect(late({}, { to: 5 })).toBe(1);
  // The long days are unfit for the one or for the other, and lie between days that are not.
  const between = TEN_DAYS.map((day, d) => ({ ...day, length: d > 0 && d < 5 ? 240 : 60 }));
  const fit = Uint8Array.from(between, ({ length }) => (length === 60 ? 1 : 0));
  expect(pair({}, {}, between)).toBe(1);
  expect(pair({ fit }, {}, between)).toBe(2);
  expect(pair({}, { fit }, between)).toBe(2);
});

test('what follows at another place takes both ways out of the session that they share', () => {
  // 40 + 40 min and the ways of 20 and of 21 min are 121 of 120; at one place 100.
  const pair = (place: number, tripMinutes: number[]) =>
    least([plainActivity({ minutes: 40 }), plainActivity({ minutes: 40, place, after: [{ of: 0, lag: 0 }] })], {
      tripMinutes,
    });
  expect(pair(1, [20, 21])).toBe(2);
  expect(pair(1, [21, 20])).toBe(2);
  expect(pair(1, [20, 20])).toBe(1);
  expect(pair(0, [40, 99])).toBe(1);
  expect(pair(0, [41, 99])).toBe(2);
});

test('among more spans than can be looked at, the bound is still made of some of them and of the whole', () => {
  // 2,000 days with a step of its own on each of 150 of them, a whole session each.
  const days = Array.from({ length: 2000 }, (_, d) => ({ start: d * 1440 + 600, length: 120 }));
  const own = Array.from({ length: 150 }, (_, i) => plainActivity({ minutes: 120, from: 13 * i, to: 13 * i }));
  expect(least(own, { days })).toBe(150);
});

test('what follows on days that are dry alone cannot share a session with what is done on the others', () => {
  const dry = Uint8Array.from(TEN_DAYS, (_, d) => (d === 4 ? 1 : 0));
  const wet = Uint8Array.from(dry, (is) => 1 - is);
  expect(least([plainActivity({ fit: dry }), plainActivity({ after: [{ of: 0, lag: 0 }], fit: dry })])).toBe(1);
  expect(least([plainActivity({ fit: wet }), plainActivity({ after: [{ of: 0, lag: 0 }], fit: dry })])).toBe(2);
});

test('machines that share a stand need a session each', () => {
  const machines = [0, 1, 2].map((group) => plainActivity({ group, stands: [0] }));
  expect(least(machines)).toBe(3);
  expect(least(machines.map((a) => ({ ...a, stands: [0, 1] })))).toBe(2);
});

test('two pairs of hands wait for one bench', () => {
  // 3 × 50 min: two pairs of hands have 240 min a session, the bench 120.
  const hands = { capacity: [2, 1] };
  const three = [1, 2, 3].map(() => plainActivity({ minutes: 50 }));
  expect(least(three, hands)).toBe(1);
  expect(least(three.map((a) => ({ ...a, demand: [1, 1] })))).toBe(2);
});

test('what must be done in time for what follows it cannot wait for a later session', () => {
  // The second has the first four days, so the first is done on the third at the latest; the last has the days from the fifth on.
  const second = plainActivity({ to: 3, after: [{ of: 0, lag: 720 }] });
  expect(least([plainActivity({}), second, plainActivity({ from: 4 })])).toBe(3);
});

test('two spans that share no day add up', () => {
  const early = [plainActivity({ to: 3 }), plainActivity({ to: 3, after: [{ of: 0, lag: 720 }] })];
  const late = [plainActivity({ from: 4 }), plainActivity({ from: 4, after: [{ of: 2, lag: 720 }] })];
  expect(least([...early, ...late])).toBe(4);
});

test('a job that may be spread need not be held whole by the session of what follows it', () => {
  // 200 min on two sessions of 120; what follows fits behind its last 80 min.
  expect(
    least([plainActivity({ minutes: 200, splittable: true }), plainActivity({ after: [{ of: 0, lag: 0 }] })]),
  ).toBe(2);
});

test('what can have no place narrows nothing for what it follows', () => {
  // The second has no day at all; the first still has all ten, and shares the last with the third.
  const activities = [
    plainActivity({}),
    plainActivity({ from: 1, to: 0, after: [{ of: 0, lag: 0 }] }),
    plainActivity({ from: 9 }),
  ];
  expect(least(activities)).toBe(1);
});

test('impossible is what has no fit day, no session long enough, no time behind what it follows, or follows such', () => {
  // The first ends 110 min after the beginning of the first day's session of 120; the last begins as late nine days after.
  const activities = [
    plainActivity({ minutes: 110 }),
    plainActivity({ minutes: 111 }),
    plainActivity({ minutes: 111, splittable: true }),
    plainActivity({ fit: new Uint8Array(10) }),
    plainActivity({ after: [{ of: 3, lag: 0 }] }),
    plainActivity({ after: [{ of: 0, lag: 9 * 1440 + 1 }], place: 1 }),
    plainActivity({ after: [{ of: 0, lag: 9 * 1440 }], place: 1 }),
  ];
  expect(possible({ capacity: [1, 1], days: TEN_DAYS, tripMinutes: [10, 0], activities })).toEqual([0, 2, 6]);
});

/** Steps of equal length, as many of which a session holds as are given, each with days of its own. */
const equalSteps: fc.Arbitrary<Problem> = fc
  .record({
    hold: fc.integer({ min: 1, max: 3 }),
    way: fc.constantFrom(0, 15),
    days: fc.integer({ min: 1, max: 8 }),
    windows: fc.array(fc.tuple(fc.nat(7), fc.nat(7)), { minLength: 1, maxLength: 9 }),
  })
  .map(({ hold, way, days, windows }) => ({
    capacity: [1, 1],
    days: TEN_DAYS.slice(0, days).map((day) => ({ ...day, length: hold * 20 + way })),
    tripMinutes: [way],
    activities: windows.map(([from, span]) =>
      plainActivity({ minutes: 20, from: Math.min(from, days - 1), to: Math.min(from + span, days - 1) }),
    ),
  }));

test('for steps of equal length the bound is the least number of sessions itself', () => {
  // By the theorem of Hall some choice of days holds them all as soon as each span of days holds those that must lie in it.
  fc.assert(
    fc.property(equalSteps, (problem) => {
      const all = without(problem, solve(problem, 1).missing);
      expect(leastSessions(all, [...all.activities.keys()])).toBe(exhaustive(all).sessions);
    }),
    { numRuns: 300 },
  );
});

/** Each step follows the one before it, at once or the day after. */
const chain: fc.Arbitrary<Problem> = fc
  .array(
    fc.record({
      minutes: fc.constantFrom(10, 60, 110, 130),
      waits: fc.boolean(),
      from: fc.nat(4),
      to: fc.nat(5),
      wet: fc.option(fc.nat(4)),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((steps) => ({
    capacity: [1, 1],
    days: TEN_DAYS.slice(0, 5),
    tripMinutes: [10],
    activities: steps.map(({ minutes, waits, from, to, wet }, i) =>
      plainActivity({
        minutes,
        after: i > 0 ? [{ of: i - 1, lag: waits ? 720 : 0 }] : [],
        from,
        to: Math.min(to, 4),
        fit: wet === null ? undefined : Uint8Array.from({ length: 5 }, (_, d) => (d === wet ? 0 : 1)),
      }),
    ),
  }));

test('of a chain just so much is possible as can be done when nothing else is', () => {
  fc.assert(
    fc.property(chain, (problem) => {
      const done = problem.activities.findIndex((_, i) => {
        const head = { ...problem, activities: problem.activities.slice(0, i + 1) };
        return exhaustive(head).missing > 0;
      });
      const count = done < 0 ? problem.activities.length : done;
      expect(possible(problem)).toEqual([...Array(count).keys()]);
    }),
    { numRuns: 300 },
  );
});
