import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chargeRota, type RotaBattery } from '../../../src/planner/battery/index.ts';
import { dayNumber } from '../../../src/planner/dates.ts';
import type { Charger } from '../../../src/planner/household.ts';

const START = dayNumber('2026-11-02');
const ANY_HOURS = { monday: 4, tuesday: 4, wednesday: 4, thursday: 4, friday: 4, saturday: 4, sunday: 4 };
const charger = (id: string, maintainer = false): Charger => ({
  id,
  name: id,
  currentA: 1,
  chemistries: ['agm'],
  maintainer,
});

/** A battery that loses `losses[d]` on day d (counted from START) and is due when `allowance` is gone. */
interface Small {
  losses: number[];
  allowance: number;
  first: number;
  end: number;
}

function rotaOf(small: Small, i: number, more: Partial<RotaBattery> = {}): RotaBattery {
  const due = (day: number) => {
    let left = small.allowance;
    for (let d = day + 1; d < small.losses.length; d++) {
      left -= small.losses[d]!;
      if (left <= 0) return START + d;
    }
    return Number.POSITIVE_INFINITY;
  };
  return {
    machine: `m${i}`,
    name: `m${i}'s battery`,
    yard: 'home',
    firstDay: START + small.first,
    endDay: START + small.end,
    lastDay: START + small.end + 7,
    firstDue: due(small.first - 1),
    dueAfter: (day) => due(day - START),
    canCharge: () => true,
    worthIt: () => true,
    waits: true,
    atHome: false,
    maintainable: true,
    chargers: Array.from({ length: 9 }, (_, k) => charger(`c${k}`)),
    hoursOn: () => 1,
    ...more,
  };
}

const DAYS = 11;
const smallBattery: fc.Arbitrary<Small> = fc.record({
  losses: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: DAYS + 1, maxLength: DAYS + 1 }),
  allowance: fc.integer({ min: 3, max: 12 }),
  first: fc.integer({ min: 1, max: 5 }),
  end: fc.integer({ min: 7, max: DAYS + 1 }),
});

/** Whether a battery can be kept by some of these days, tried one subset after the other. */
function canBeKept(small: Small, days: number[]): boolean {
  const own = days.filter((d) => d >= small.first && d < small.end);
  for (let mask = 0; mask < 1 << own.length; mask++) {
    let [left, ok] = [small.allowance, true];
    for (let d = small.first; d < small.end && ok; d++) {
      left -= small.losses[d]!;
      // Charged on or before the day on which it is used up.
      if (mask & (1 << own.indexOf(d)) && own.includes(d)) left = small.allowance;
      else if (left <= 0) ok = false;
    }
    if (ok) return true;
  }
  return false;
}

/** The fewest open days that keep every battery, over all subsets of days; undefined where none do. */
function fewest(batteries: Small[], open: number[]): number | undefined {
  let best: number | undefined;
  for (let mask = 0; mask < 1 << open.length; mask++) {
    const days = open.filter((_, i) => mask & (1 << i));
    if (best !== undefined && days.length >= best) continue;
    if (batteries.every((b) => canBeKept(b, days))) best = days.length;
  }
  return best;
}

test('no set of days keeps every battery with fewer trips, by exhaustive search', { timeout: 30_000 }, () => {
  let [shared, withAway] = [0, 0];
  fc.assert(
    fc.property(
      fc.array(smallBattery, { minLength: 1, maxLength: 4 }),
      fc.array(fc.boolean(), { minLength: DAYS + 1, maxLength: DAYS + 1 }),
      fc.boolean(),
      (batteries, awayFlags, someAway) => {
        const open = awayFlags.map((a, d) => ({ d, away: someAway && a })).filter((x) => x.d > 0);
        const iso = (d: number) => new Date((START + d) * 86_400_000).toISOString().slice(0, 10);
        const away = open.filter((x) => x.away).map((x) => ({ from: iso(x.d), to: iso(x.d) }));
        const rota = chargeRota(
          batteries.map((b, i) => rotaOf(b, i)),
          { away, hoursByWeekday: ANY_HOURS, locale: 'en-GB' },
        );
        const least = fewest(
          batteries,
          open.filter((x) => !x.away).map((x) => x.d),
        );
        const late = rota.charges.some((c) => c.day > c.due) || rota.problems.length > 0;
        expect(late).toBe(least === undefined);
        if (least === undefined) return;
        expect(rota.trips).toHaveLength(least);
        if (rota.trips.some((t) => t.machines.length > 1)) shared++;
        if (away.length > 0 && least > 0) withAway++;
      },
    ),
    { numRuns: 400, seed: 7 },
  );
  expect(shared).toBeGreaterThan(50);
  expect(withAway).toBeGreaterThan(30);
});

/** Loses the same every day and is due after so many days. */
const steady = (everyDays: number, days = 100): Small => ({
  losses: new Array(days + 1).fill(1),
  allowance: everyDays,
  first: 1,
  end: days,
});

test('a battery charged early on a shared trip is next due from that day', () => {
  const rota = chargeRota([rotaOf(steady(20), 0), rotaOf(steady(35), 1)], {
    away: [],
    hoursByWeekday: ANY_HOURS,
    locale: 'en-GB',
  });
  expect(rota.trips.map((t) => t.charges.length)).toEqual([2, 2, 2, 2]);
  expect(rota.charges.filter((c) => c.machine === 'm1').map((c) => c.due - START)).toEqual([35, 55, 75, 95]);
});

test('a trip that falls on days away moves earlier', () => {
  const rota = chargeRota([rotaOf(steady(30, 50), 0)], {
    away: [{ from: '2026-11-25', to: '2026-12-10' }],
    hoursByWeekday: ANY_HOURS,
    locale: 'en-GB',
  });
  expect(rota.trips.map((t) => t.date)).toEqual(['2026-11-24']);
});

test('a weekday without hours takes no trip', () => {
  // The battery is due on Wednesday 2026-12-02.
  const weekends = { ...ANY_HOURS, monday: 0, tuesday: 0, wednesday: 0, thursday: 0, friday: 0 };
  const rota = chargeRota([rotaOf(steady(30, 50), 0)], { away: [], hoursByWeekday: weekends, locale: 'en-GB' });
  expect(rota.trips.map((t) => t.date)).toEqual(['2026-11-29']);
});

test('when every day up to the due day is away, the charge comes late and says so', () => {
  const rota = chargeRota([rotaOf(steady(30, 60), 0)], {
    away: [{ from: '2026-11-01', to: '2026-12-10' }],
    hoursByWeekday: ANY_HOURS,
    locale: 'en-GB',
  });
  expect(rota.trips[0]).toMatchObject({ date: '2026-12-11', problem: expect.stringMatching(/due by 2 December 2026/) });
});

test('when no day of the rest is open, the rota says what would make it possible', () => {
  const rota = chargeRota([rotaOf(steady(30, 50), 0)], {
    away: [{ from: '2026-11-01', to: '2027-12-10' }],
    hoursByWeekday: ANY_HOURS,
    locale: 'en-GB',
  });
  expect(rota.trips).toEqual([]);
  expect(rota.problems).toEqual([
    {
      machine: 'm0',
      due: dayNumber('2026-12-02'),
      text: expect.stringMatching(/no day/),
      act: expect.stringMatching(/Free one day/),
    },
  ]);
});

test('a battery too cold to be charged on a day is charged on an earlier one', () => {
  const cold = rotaOf(steady(30, 50), 0, { canCharge: (day) => day <= START + 12 });
  const rota = chargeRota([cold], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.charges[0]!.day - START).toBe(12);
});

test('two batteries on one charger go one after the other within the hours of the day', () => {
  const one = [charger('only')];
  const both = [0, 1].map((i) => rotaOf(steady(30, 50), i, { chargers: one, hoursOn: () => 2 }));
  const rota = chargeRota(both, { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.trips).toHaveLength(1);
  expect(rota.trips[0]!.charges.map((c) => c.startHour)).toEqual([17, 19]);
  expect(rota.trips[0]!.problem).toBeUndefined();
});

test('two long charges on one charger share a trip a day early, and the second waits its turn', () => {
  const both = [0, 1].map((i) => rotaOf(steady(30, 50), i, { chargers: [charger('only')], hoursOn: () => 12 }));
  const rota = chargeRota(both, { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.trips.map((t) => t.machines)).toEqual([['m0', 'm1']]);
  expect(rota.charges.map((c) => [c.day - c.due, c.turnDay])).toEqual([
    [-1, undefined],
    [-1, rota.charges[1]!.due],
  ]);
});

test('two that cannot wait at the bench are charged on two days, the first of them earlier', () => {
  const both = [0, 1].map((i) =>
    rotaOf(steady(30, 50), i, { chargers: [charger('only')], hoursOn: () => 12, waits: false }),
  );
  const rota = chargeRota(both, { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.charges.map((c) => c.day - c.due).sort()).toEqual([-1, 0].sort());
  expect(rota.trips.map((t) => t.machines.length)).toEqual([1, 1]);
});

test('a charge that fits no day names the charger and what would do', () => {
  const slow = rotaOf(steady(30, 50), 0, { chargers: [charger('trickle')], hoursOn: () => 60 });
  const rota = chargeRota([slow], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.trips[0]!.problem).toMatch(/^m0's battery needs 60 h on "trickle".*another charger/);
});

// Filled up while it was nearly full it would be due some days later, and so again and again: by the words themselves.
test('a charge that fits no day is not made while the battery is nearly full, only said', () => {
  const slow = rotaOf(steady(30, 50), 0, {
    chargers: [charger('trickle')],
    hoursOn: (_, day) => (day <= START + 10 ? 2 : 60),
    worthIt: (day) => day > START + 20,
  });
  const rota = chargeRota([slow], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.charges.map((c) => c.day - START)).toEqual([30]);
  expect(rota.trips[0]!.problem).toMatch(/needs 60 h on "trickle"/);
  const lost = chargeRota([{ ...slow, worthIt: () => true }], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(lost.charges[0]!.day - START).toBe(10);
});

test('the same long charge is left on a charger that keeps', () => {
  const slow = rotaOf(steady(30, 50), 0, { chargers: [charger('keeper', true)], hoursOn: () => 60 });
  expect(
    chargeRota([slow], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' }).trips[0]!.problem,
  ).toBeUndefined();
});

test('batteries of two yards do not share a trip', () => {
  const rota = chargeRota([rotaOf(steady(30, 50), 0), rotaOf(steady(30, 50), 1, { yard: 'lake' })], {
    away: [],
    hoursByWeekday: ANY_HOURS,
    locale: 'en-GB',
  });
  expect(rota.trips.map((t) => t.machines)).toEqual([['m0'], ['m1']]);
});

test('a nearly full battery is left out of a trip that it does not need', () => {
  const fresh = rotaOf({ ...steady(60, 70), first: 25 }, 1, { worthIt: (day) => day > START + 40 });
  const rota = chargeRota([rotaOf(steady(30, 62), 0), fresh], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(rota.trips.map((t) => t.machines)).toEqual([['m0'], ['m0']].slice(0, rota.trips.length));
  expect(rota.charges.filter((c) => c.machine === 'm1')).toEqual([]);
});

// What stands above the level it is charged to takes no charge: by the word itself.
test('a battery that is due no later for a charge is left out of the trips of others', () => {
  const often = rotaOf(steady(10, 60), 0);
  const over = rotaOf(steady(45, 60), 1, {
    // Above its level for thirty days: a charge by then changes nothing.
    dueAfter: (day) => (day < START + 30 ? START + 45 : Number.POSITIVE_INFINITY),
  });
  const { charges } = chargeRota([often, over], { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' });
  expect(charges.filter(({ machine }) => machine === 'm0').map(({ day }) => day - START)).toEqual([10, 20, 30, 40, 50]);
  expect(charges.filter(({ machine }) => machine === 'm1').map(({ day }) => day - START)).toEqual([30]);
});

test('a club charges each nearly full battery on the last trip that it can wait for, and makes no trip more for it', () => {
  const home = { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' };
  const many = { chargers: Array.from({ length: 90 }, (_, k) => charger(`c${k}`)) };
  const driver = rotaOf(steady(30, 80), 0, many);
  const canWait = Array.from({ length: 60 }, (_, i) =>
    rotaOf({ ...steady(37, 62), first: 25 }, 100 + i, { ...many, worthIt: (day) => day > START + 40 }),
  );
  const cannot = Array.from({ length: 7 }, (_, i) =>
    rotaOf({ ...steady(20, 48), first: 25 }, 200 + i, { ...many, worthIt: () => false }),
  );
  const { trips, charges } = chargeRota([driver, ...canWait, ...cannot], home);
  const daysOf = (batteries: RotaBattery[]) =>
    new Set(batteries.flatMap((b) => charges.filter((c) => c.machine === b.machine).map((c) => c.day - START)));
  expect(trips.length).toBe(chargeRota([driver], home).trips.length);
  expect(daysOf([driver])).toEqual(new Set([30, 60]));
  expect(daysOf(canWait)).toEqual(new Set([60]));
  expect(daysOf(cannot)).toEqual(new Set([30]));
});

test('two yards never have the same charger at the same hour', () => {
  const small = { losses: [0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], allowance: 4, first: 1, end: 12 };
  const only = { chargers: [charger('only')], hoursOn: () => 3 };
  const batteries = [rotaOf(small, 0, only), rotaOf(small, 1, { ...only, yard: 'far', waits: false })];
  const { trips } = chargeRota(batteries, { hoursByWeekday: ANY_HOURS, locale: 'en-GB', away: [] });
  const spans = trips.flatMap((trip) =>
    trip.charges.map((c) => ({ from: dayNumber(trip.date) * 24 + c.startHour!, hours: c.hours })),
  );
  expect(spans.length).toBeGreaterThan(2);
  const sorted = spans.toSorted((a, b) => a.from - b.from);
  for (const [i, span] of sorted.slice(1).entries())
    expect(span.from).toBeGreaterThanOrEqual(sorted[i]!.from + sorted[i]!.hours);
});

const OPEN = { away: [], hoursByWeekday: ANY_HOURS, locale: 'en-GB' };

test('trips are numbered by their days, whatever their yards, and each charge by its battery', () => {
  const only = { chargers: [charger('only')], hoursOn: () => 2 };
  const rota = chargeRota(
    [rotaOf(steady(30, 80), 0, only), rotaOf(steady(20, 50), 1, { ...only, yard: 'lake' })],
    OPEN,
  );
  expect(rota.trips.map((t) => [t.id, t.machines, t.charges.map((c) => c.chargeIndex)])).toEqual([
    ['trip-1', ['m1'], [0]],
    ['trip-2', ['m0'], [0]],
    ['trip-3', ['m1'], [1]],
    ['trip-4', ['m0'], [1]],
  ]);
  expect(rota.trips[0]!.charges).toEqual([
    { machine: 'm1', chargeIndex: 0, chargerId: 'only', chargerName: 'only', startHour: 10, hours: 2 },
  ]);
  expect(rota.charges.map((c) => c.tripId)).toEqual(['trip-1', 'trip-2', 'trip-3', 'trip-4']);
});

test('on one day the yard that comes first by name goes first', () => {
  const rota = chargeRota([rotaOf(steady(30, 50), 0, { yard: 'lake' }), rotaOf(steady(30, 50), 1)], OPEN);
  expect(rota.trips.map((t) => t.machines)).toEqual([['m1'], ['m0']]);
});

test('what is due together is charged in the order of its names, in whatever order it was given', () => {
  const only = { chargers: [charger('only')], hoursOn: () => 2 };
  const given = [2, 0, 1].map((i) => rotaOf(steady(30, 50), i, only));
  expect(chargeRota(given, OPEN).trips[0]!.charges.map((c) => [c.machine, c.startHour])).toEqual([
    ['m0', 17],
    ['m1', 19],
    ['m2', 21],
  ]);
});

test('without a charger a charge is planned all the same, and no hour is named for it', () => {
  const rota = chargeRota([rotaOf(steady(30, 50), 0, { chargers: [], hoursOn: (c) => (c ? 1 : 7) })], OPEN);
  expect(rota.trips[0]!.charges).toEqual([
    { machine: 'm0', chargeIndex: 0, chargerId: undefined, chargerName: undefined, startHour: undefined, hours: 7 },
  ]);
  expect(rota.trips[0]!.problem).toBeUndefined();
});

/** On one charger for twelve hours each, one a day from 17 to 5: so many wait at the bench. */
const queue = (count: number, more: Partial<RotaBattery> = {}) =>
  chargeRota(
    Array.from({ length: count }, (_, i) =>
      rotaOf(steady(30, 50), i, { chargers: [charger('only')], hoursOn: () => 12, ...more }),
    ),
    OPEN,
  );

test('a trip moves three days earlier at most, that each gets its turn by the due day', () => {
  expect(queue(4).trips).toHaveLength(1);
  expect(queue(4).charges.map((c) => [c.day - c.due, c.turnDay && c.turnDay - c.due])).toEqual([
    [-3, undefined],
    [-3, -2],
    [-3, -1],
    [-3, 0],
  ]);
  // The first day on which a trip can serve them is no later.
  const from = (days: number) => queue(4, { firstDay: START + 30 - days });
  expect(from(3).trips).toHaveLength(1);
  expect(from(2).charges.some((c) => c.problem !== undefined)).toBe(true);
});

test('where three days do not do, the last of them goes earlier by itself and nobody is late', () => {
  const rota = queue(5);
  expect(rota.charges).toHaveLength(5);
  for (const c of rota.charges) {
    expect(c.problem).toBeUndefined();
    expect(c.turnDay ?? c.day).toBeLessThanOrEqual(c.due);
  }
});

test('a day too cold for one of them is no day for all to go', () => {
  const cold = START + 29;
  const both = [0, 1].map((i) =>
    rotaOf(steady(30, 50), i, {
      chargers: [charger('only')],
      hoursOn: () => 12,
      canCharge: (day) => i === 0 || day !== cold,
    }),
  );
  // The 29th would have done for both; the second may not be charged on it.
  expect(
    chargeRota(both, OPEN)
      .charges.map((c) => c.day)
      .includes(cold),
  ).toBe(false);
});

test('what cannot be done is said with its days and what would make it so', () => {
  const gone = { ...OPEN, away: [{ from: '2026-11-01', to: '2027-12-10' }] };
  expect(chargeRota([rotaOf(steady(30, 50), 0)], gone).problems).toEqual([
    {
      machine: 'm0',
      due: dayNumber('2026-12-02'),
      text: "The charge of m0's battery is due by 2 December 2026, and no day from 3 November 2026 to its first use is open.",
      act: 'Free one day, send somebody else, or use a maintainer, which needs no trip.',
    },
  ]);
  const frozen = rotaOf(steady(30, 50), 0, { canCharge: () => false });
  const cold = {
    machine: 'm0',
    due: dayNumber('2026-12-02'),
    text: "The charge of m0's battery is due by 2 December 2026, and on every open day it is too cold to charge it where it stands.",
    act: 'Bring it into the warm and charge it there.',
  };
  expect(chargeRota([frozen], OPEN).problems).toEqual([cold]);
  // 29 December is the first use: a charge that is due before the start-up's week may fall into it.
  const until = (to: string) => chargeRota([frozen], { ...OPEN, away: [{ from: '2026-11-01', to }] }).problems[0]!.text;
  expect(until('2026-12-28')).toMatch(/too cold/);
  expect(until('2026-12-29')).toMatch(/ no day from /);
});

test('late and without room are said together, once for a trip', () => {
  const home = { ...OPEN, away: [{ from: '2026-11-01', to: '2026-12-10' }] };
  const slow = rotaOf(steady(30, 60), 0, { chargers: [charger('trickle')], hoursOn: () => 60 });
  expect(chargeRota([slow], home).trips[0]!.problem).toBe(
    `The charge of m0's battery is due by 2 December 2026, and is put on 11 December 2026, the first day it can be. m0's battery needs 60 h on "trickle" by 2 December 2026, and no day up to then on which a charge is worth it has room for it: another charger that suits it, more hours on a day before, or a maintainer left on would do.`,
  );
  const rota = chargeRota([rotaOf(steady(30, 60), 0), rotaOf(steady(31, 60), 1)], home);
  expect(rota.trips[0]!.problem).toBe(
    "The charge of m0's battery is due by 2 December 2026, and is put on 11 December 2026, the first day it can be. The charge of m1's battery is due by 3 December 2026, and is put on 11 December 2026, the first day it can be.",
  );
  // On the due day itself nothing is late.
  expect(chargeRota([rotaOf(steady(30, 60), 0)], OPEN).trips[0]!.problem).toBeUndefined();
});
