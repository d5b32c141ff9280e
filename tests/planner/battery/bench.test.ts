/** The bench: which charger a battery gets, from when, and what it has no room for. Days are counted from Monday 2 November 2026. */
import { expect, test } from 'vitest';
import { Bench, type State } from '../../../src/planner/battery/bench.ts';
import { openDays } from '../../../src/planner/battery/open-days.ts';
import type { RotaBattery } from '../../../src/planner/battery/rota-battery.ts';
import { dayNumber, isoOfDay } from '../../../src/planner/dates.ts';
import type { Charger } from '../../../src/planner/household.ts';

const MONDAY = dayNumber('2026-11-02');
const SATURDAY = MONDAY + 5;
/** Four hours on a weekday, from 17 to 21; six at weekends, from 10 to 16. */
const HOURS = { monday: 4, tuesday: 4, wednesday: 4, thursday: 4, friday: 4, saturday: 6, sunday: 6 };
const daysOf = (away: number[] = [], hoursByWeekday = HOURS) =>
  openDays({
    hoursByWeekday,
    locale: 'en-GB',
    away: away.map((day) => ({ from: isoOfDay(day), to: isoOfDay(day) })),
  });
const charger = (id: string, maintainer = false): Charger => ({
  id,
  name: id.toUpperCase(),
  currentA: 1,
  chemistries: ['agm'],
  maintainer,
});

function state(hours: number | Record<string, number>, more: Partial<RotaBattery> = {}, due = MONDAY + 30): State {
  const battery: RotaBattery = {
    machine: 'm',
    name: 'Moth',
    yard: 'home',
    firstDay: MONDAY,
    endDay: MONDAY + 60,
    lastDay: MONDAY + 67,
    firstDue: due,
    dueAfter: () => Number.POSITIVE_INFINITY,
    canCharge: () => true,
    worthIt: () => true,
    waits: true,
    atHome: false,
    maintainable: true,
    chargers: [charger('a')],
    hoursOn: (c) => (typeof hours === 'number' ? hours : hours[c!.id]!),
    ...more,
  };
  return { battery, last: undefined, due };
}
const slotOf = (slot: ReturnType<Bench['place']>) =>
  slot && [slot.charger.id, slot.startHour, slot.turnDay === undefined ? undefined : slot.turnDay - MONDAY];

test('charging begins at five on a weekday and at ten at weekends', () => {
  expect(slotOf(new Bench(daysOf()).place(state(1), MONDAY))).toEqual(['a', 17, undefined]);
  expect(slotOf(new Bench(daysOf()).place(state(1), MONDAY + 4))).toEqual(['a', 17, undefined]);
  expect(slotOf(new Bench(daysOf()).place(state(1), SATURDAY))).toEqual(['a', 10, undefined]);
  expect(slotOf(new Bench(daysOf()).place(state(1), SATURDAY + 1))).toEqual(['a', 10, undefined]);
});

test('the charger that is done first is taken, the first of two that are done together', () => {
  const two = { chargers: [charger('a'), charger('b')] };
  expect(slotOf(new Bench(daysOf()).place(state({ a: 3, b: 2 }, two), MONDAY))).toEqual(['b', 17, undefined]);
  expect(slotOf(new Bench(daysOf()).place(state({ a: 2, b: 2 }, two), MONDAY))).toEqual(['a', 17, undefined]);
});

test('one after the other within the hours, and the last of them may run on', () => {
  const bench = new Bench(daysOf());
  const turn = () => slotOf(bench.place(state(2, { waits: false }), MONDAY));
  // 17 to 19, 19 to 21, and one that begins as the hours end.
  expect([turn(), turn(), turn(), turn()]).toEqual([
    ['a', 17, undefined],
    ['a', 19, undefined],
    ['a', 21, undefined],
    undefined,
  ]);
});

test('what a charger does on other days is not in the way, what it would run into is', () => {
  const bench = new Bench(daysOf());
  const tuesday = state(3, { waits: false });
  expect(slotOf(bench.place(tuesday, MONDAY + 1))).toEqual(['a', 17, undefined]);
  // From Monday at 17 it is free for 24 hours.
  expect(bench.copy().place(state(24, { waits: false }), MONDAY)).toBeDefined();
  expect(bench.copy().place(state(24.1, { waits: false }), MONDAY)).toBeUndefined();
  expect(slotOf(bench.place(state(20, { waits: false }), MONDAY))).toEqual(['a', 17, undefined]);
  // Tuesday's own: from 20, when the first of that day is done.
  expect(slotOf(bench.place(state(1, { waits: false }), MONDAY + 1))).toEqual(['a', 20, undefined]);
  expect(slotOf(bench.place(state(2, { waits: false }), MONDAY + 2))).toEqual(['a', 17, undefined]);
});

test('a copy does not know what is taken after it was made', () => {
  const bench = new Bench(daysOf());
  const copy = bench.copy();
  bench.place(state(2, { waits: false }), MONDAY);
  expect(slotOf(copy.place(state(2, { waits: false }), MONDAY))).toEqual(['a', 17, undefined]);
});

test.each<[string, number, boolean, number[], boolean]>([
  ['a charger is taken off the next day', 24, false, [], true],
  ['a charger does not run on longer', 24.5, false, [], false],
  ['nobody takes it off when all are away the next day', 4.5, false, [MONDAY + 1], false],
  ['what is done within the hours needs nobody the next day', 4, false, [MONDAY + 1], true],
  ['one that keeps goes on for three days', 72, true, [], true],
  ['one that keeps does not go on longer', 72.5, true, [], false],
  ['one that keeps needs nobody the next day', 72, true, [MONDAY + 1], true],
])('%s', (_, hours, maintainer, away, fits) => {
  const one = state(hours, { waits: false, chargers: [charger('a', maintainer)] });
  expect(new Bench(daysOf(away)).place(one, MONDAY) !== undefined).toBe(fits);
});

test('a battery that waits gets a turn on one of the next three days, not past its due day and not while all are away', () => {
  const turn = (due: number, away: number[] = [], waits = true, busy = 1) => {
    const bench = new Bench(daysOf(away));
    // Each takes the charger from 17 of a day to 17 of the next.
    for (let day = 0; day < busy; day++) bench.place(state(24, { waits: false }), MONDAY + day);
    return slotOf(bench.place(state(6, { waits }, MONDAY + due), MONDAY));
  };
  expect(turn(30)).toEqual(['a', undefined, 1]);
  expect(turn(1)).toEqual(['a', undefined, 1]);
  expect(turn(0)).toBeUndefined();
  expect(turn(-5)).toBeUndefined();
  expect(turn(30, [], false)).toBeUndefined();
  expect(turn(30, [], true, 3)).toEqual(['a', undefined, 3]);
  expect(turn(2, [], true, 3)).toBeUndefined();
  expect(turn(30, [], true, 4)).toBeUndefined();
});

test('days away are passed over while a battery waits', () => {
  const bench = new Bench(daysOf([MONDAY + 1]));
  bench.place(state(4, { waits: false }), MONDAY);
  expect(slotOf(bench.place(state(4), MONDAY))).toEqual(['a', undefined, 2]);
});

test('a charge that has no room says what it needs, by when, and what would do', () => {
  const both = state({ a: 5.2, b: 30 }, { chargers: [charger('a'), charger('b')] }, MONDAY + 2);
  expect(new Bench(daysOf()).fullText(both, MONDAY)).toBe(
    'Moth needs 6 h on "A" or 30 h on "B" by 4 November 2026, and no day up to then on which a charge is worth it has room for it: another charger that suits it, more hours on a day before, or a maintainer left on would do.',
  );
});

test('open are the days with hours on which somebody is there; where no weekday has hours, all of them', () => {
  const weekends = { ...HOURS, monday: 0, tuesday: 0, wednesday: 0, thursday: 0, friday: 0 };
  const days = openDays({
    away: [{ from: '2026-11-07', to: '2026-11-08' }],
    hoursByWeekday: weekends,
    locale: 'en-GB',
  });
  const open = (of: typeof days, n: number) =>
    Array.from({ length: n }, (_, i) => i).filter((i) => of.isOpen(MONDAY + i));
  expect(open(days, 15)).toEqual([12, 13]);
  expect([4, 5, 6, 7].map((i) => days.isAway(MONDAY + i))).toEqual([false, true, true, false]);
  expect(days.nextOpen(MONDAY)).toBe(MONDAY + 12);
  expect(days.nextOpen(MONDAY + 12)).toBe(MONDAY + 12);
  const never = Object.fromEntries(Object.keys(HOURS).map((day) => [day, 0])) as typeof HOURS;
  expect(open(daysOf([MONDAY + 1], never), 4)).toEqual([0, 2, 3]);
  const gone = openDays({ away: [{ from: '2026-01-01', to: '2046-01-01' }], hoursByWeekday: HOURS, locale: 'en-GB' });
  expect(gone.nextOpen(MONDAY)).toBeUndefined();
});

test('weekdays and their hours go on before 1970', () => {
  // 1 January 1970 was a Thursday, so 27 December 1969 a Saturday.
  const saturday = dayNumber('1969-12-27');
  expect([-1, 0, 1, 2].map((i) => daysOf().weekend(saturday + i))).toEqual([false, true, true, false]);
  expect([-1, 0, 1, 2].map((i) => daysOf().hours(saturday + i))).toEqual([4, 6, 6, 4]);
  expect(daysOf().written(saturday)).toBe('27 December 1969');
});
