/**
 * Which days somebody goes and charges, so that every battery is charged on or before its due day with the fewest trips.
 *
 * A trip is one day in one yard. The next trip falls on the latest open day on or before the earliest due day, and everyone
 * present whose due day falls in the rest is charged on it. That is the fewest: in any other rota the first trip is no
 * later, and moving it to this day only moves the batteries' next due days later, since a battery charged later is due later.
 * It is proven against exhaustive search in the tests. Batteries wait their turn at the bench for some days; where the chargers
 * cannot take all that are due, the trip moves some days earlier, then single batteries do, which may cost trips that a search
 * over all days would save; what does not fit at all is said.
 */
import { isoOfDay } from '../dates.ts';
import type { ChargeTrip } from '../season-plan.ts';
import { Bench, type Slot, type State, WAIT_DAYS } from './bench.ts';
import { leanest } from './lean.ts';
import { type Days, type OpenDays, openDays } from './open-days.ts';
import type { RotaBattery } from './rota-battery.ts';

/** One charge that the rota has settled. */
export interface RotaCharge {
  machine: string;
  day: number;
  /** The due day it answers. */
  due: number;
  since: number | undefined;
  tripId: string;
  chargerId?: string | undefined;
  /** Clock hour at which it starts; undefined when its turn comes on a later day. */
  startHour?: number | undefined;
  /** The day its turn on the charger comes, where that is not the day of the trip. */
  turnDay?: number | undefined;
  problem?: string | undefined;
}

export interface Rota {
  trips: ChargeTrip[];
  charges: RotaCharge[];
  /** A charge that no day was found for: by when it is due, why, and what would make it so. */
  problems: { machine: string; due: number; text: string; act: string }[];
}

/** What to do where a charge was made that the log does not hold. */
export const IF_CHARGED =
  'If it was charged, say so: "Battery charged full" under "Done and measured" on the form, or a charge in the bench record.';

type Visits = Map<number, Omit<RotaCharge, 'tripId'>[]>;

/**
 * Plans the trips of all yards.
 * @param batteries - those that need visits
 * @param household - days away, and hours by weekday; a weekday without hours takes no trip, unless none has any
 */
export function chargeRota(batteries: readonly RotaBattery[], household: Days): Rota {
  const days = openDays(household);
  const found: { day: number; charges: Omit<RotaCharge, 'tripId'>[] }[] = [];
  const problems: Rota['problems'] = [];
  // The yards have the same chargers: what one takes, the next finds taken.
  let bench = new Bench(days);
  for (const yard of [...new Set(batteries.map((b) => b.yard))].sort()) {
    const plan = leanYard(
      batteries.filter((b) => b.yard === yard),
      days,
      bench,
    );
    bench = plan.bench;
    for (const [day, charges] of plan.visits) found.push({ day, charges });
    problems.push(...plan.problems);
  }
  found.sort((a, b) => a.day - b.day);
  const count = new Map<string, number>();
  const charges: RotaCharge[] = [];
  const trips = found.map((visit, i): ChargeTrip => {
    const id = `trip-${i + 1}`;
    const texts = [...new Set(visit.charges.flatMap((c) => c.problem ?? []))];
    return {
      id,
      date: isoOfDay(visit.day),
      machines: visit.charges.map((c) => c.machine),
      charges: visit.charges.map((c) => {
        charges.push({ ...c, tripId: id });
        const chargeIndex = count.get(c.machine) ?? 0;
        count.set(c.machine, chargeIndex + 1);
        const battery = batteries.find((b) => b.machine === c.machine)!;
        const charger = battery.chargers.find((x) => x.id === c.chargerId);
        const hours = battery.hoursOn(charger, c.day, c.since);
        const { machine, chargerId, startHour } = c;
        return { machine, chargeIndex, chargerId, chargerName: charger?.name, startHour, hours };
      }),
      problem: texts.length > 0 ? texts.join(' ') : undefined,
    };
  });
  return { trips, charges, problems };
}

/** The yard's rota, less charges of nearly full batteries that save no trip. */
function leanYard(batteries: readonly RotaBattery[], days: OpenDays, taken: Bench) {
  const byId = new Map(batteries.map((battery) => [battery.machine, battery]));
  return leanest(
    (skip) => planYard(batteries, days, taken, skip),
    ({ visits }) =>
      [...visits].flatMap(([day, charges]) =>
        charges
          .filter((charge) => charges.length > 1 && !byId.get(charge.machine)!.worthIt(day, charge.since))
          .map((charge) => `${charge.machine} ${day}`),
      ),
    (trial, best) => trial.visits.size <= best.visits.size && trouble(trial) <= trouble(best),
  );
}

const trouble = ({ visits, problems }: ReturnType<typeof planYard>) =>
  problems.length + [...visits.values()].flat().filter((c) => c.problem !== undefined).length;

function planYard(batteries: readonly RotaBattery[], days: OpenDays, taken: Bench, skip: ReadonlySet<string>) {
  const states: State[] = batteries.map((battery) => ({ battery, last: undefined, due: battery.firstDue }));
  const bench = taken.copy();
  const visits: Visits = new Map();
  const problems: Rota['problems'] = [];

  const record = (state: State, day: number, slot: Slot | undefined, problem: string | undefined) => {
    const { battery, last, due } = state;
    const charge = {
      machine: battery.machine,
      day,
      due,
      since: last,
      chargerId: slot?.charger.id,
      startHour: slot?.startHour,
      turnDay: slot?.turnDay,
    };
    visits.set(day, [...(visits.get(day) ?? []), { ...charge, problem }]);
    state.due = battery.dueAfter(day, last);
    state.last = day;
  };

  for (;;) {
    const driver = states.filter(isOpen).sort(byDue)[0];
    if (!driver) break;
    const latest = dayFor(driver, days);
    if (latest === undefined) {
      problems.push({ machine: driver.battery.machine, due: driver.due, ...noDay(driver, days) });
      driver.due = Number.POSITIVE_INFINITY;
      continue;
    }
    const when = latest > driver.due ? latest : roomyDay(driver, states, latest, days, bench);
    const present = states
      .filter(
        (s) =>
          s === driver ||
          (isOpen(s) &&
            isPresent(s, when) &&
            (s.battery.atHome || days.isOpen(when)) &&
            s.battery.canCharge(when) &&
            // One that stands so full that it is due no later gains nothing.
            s.battery.dueAfter(when, s.last) > s.due &&
            !skip.has(`${s.battery.machine} ${when}`)),
      )
      .sort(byDue);
    for (const state of present) {
      const own = lateText(state, when, days);
      const slot = bench.place(state, when);
      if (slot || state.battery.chargers.length === 0) {
        record(state, when, slot, own);
        continue;
      }
      const next = days.nextOpen(when + 1);
      const canWait = state !== driver && next !== undefined && state.due >= next;
      if (canWait) continue;
      const earlier = earlierDay(state, when, days, bench);
      if (earlier) record(state, earlier.day, earlier.slot, own);
      else record(state, when, undefined, [own, bench.fullText(state, when)].filter(Boolean).join(' '));
    }
  }
  return { visits, problems, bench };
}

const isOpen = (s: State) => s.due < s.battery.endDay;
const byDue = (a: State, b: State) => a.due - b.due || (a.battery.machine < b.battery.machine ? -1 : 1);
const floorOf = (s: State) =>
  Math.max(s.battery.firstDay, s.last === undefined ? Number.NEGATIVE_INFINITY : s.last + 1);
const isPresent = (s: State, day: number) => day >= floorOf(s) && day < s.battery.endDay;

function lateText({ battery, due, last }: State, day: number, { written }: OpenDays): string | undefined {
  if (day <= due) return undefined;
  // What was read calls for a charge now, and nothing was left undone before.
  const found = last === undefined ? battery.found : undefined;
  if (found) return found.told ? undefined : `${battery.name} read ${found.said}: charge it on ${written(day)}.`;
  const first = `${written(day)}${day === battery.firstDay ? '' : ', the first day it can be'}`;
  return due < battery.firstDay
    ? `The charge of ${battery.name} was due by ${written(due)}, and none is logged: charge it on ${first}.`
    : `The charge of ${battery.name} is due by ${written(due)}, and is put on ${first}.`;
}

/** The latest day on which the chargers take all that cannot wait for another trip; the latest day itself where there is none. */
function roomyDay(driver: State, states: readonly State[], latest: number, days: OpenDays, bench: Bench): number {
  const next = days.nextOpen(latest + 1) ?? Number.POSITIVE_INFINITY;
  for (let day = latest; day >= Math.max(floorOf(driver), latest - WAIT_DAYS); day--) {
    if (!days.isOpen(day) || !driver.battery.canCharge(day)) continue;
    const must = states.filter((s) => isOpen(s) && s.due < next && s.battery.chargers.length > 0).sort(byDue);
    const trial = bench.copy();
    if (must.every((s) => isPresent(s, day) && s.battery.canCharge(day) && trial.place(s, day))) return day;
  }
  return latest;
}

/**
 * The latest open day on or before the due day, else the first one after it, up to the first use. Where somebody lives, any day
 * at home does where no open day is in time.
 */
function dayFor(state: State, days: OpenDays): number | undefined {
  const floor = floorOf(state);
  const { atHome, canCharge, lastDay } = state.battery;
  const isFree = (day: number) => days.isOpen(day) || (atHome && !days.isAway(day));
  for (const isFit of [days.isOpen, isFree])
    for (let day = state.due; day >= floor; day--) if (isFit(day) && canCharge(day)) return day;
  for (let day = Math.max(floor, state.due + 1); day <= lastDay; day++) if (isFree(day) && canCharge(day)) return day;
  return undefined;
}

/** The latest earlier day with room; none on which it is nearly full, since days later it would be due all the same. */
function earlierDay(state: State, before: number, days: OpenDays, bench: Bench) {
  for (let day = before - 1; day >= floorOf(state) && state.battery.worthIt(day, state.last); day--) {
    if (!days.isOpen(day) || !state.battery.canCharge(day)) continue;
    const slot = bench.place(state, day);
    if (slot) return { day, slot };
  }
  return undefined;
}

function noDay(state: State, days: OpenDays): { text: string; act: string } {
  const { battery, due } = state;
  if (battery.firstDay > battery.lastDay)
    return {
      text: `The charge of ${battery.name} was due by ${days.written(due)}, and none is logged: charge it full now, at the latest before the first start.`,
      act: `It is the charge of the start-up sheet: tick it there. ${IF_CHARGED}`,
    };
  const next = days.nextOpen(floorOf(state));
  const open = next !== undefined && next <= battery.lastDay;
  const is = due < floorOf(state) ? 'was' : 'is';
  const by = `The charge of ${battery.name} ${is} due by ${days.written(due)}`;
  return open
    ? {
        text: `${by}, and on every open day it is too cold to charge it where it stands.`,
        act: 'Bring it into the warm and charge it there.',
      }
    : {
        text: `${by}, and no day from ${days.written(floorOf(state))} to its first use is open.`,
        act: battery.maintainable
          ? 'Free one day, send somebody else, or use a maintainer, which needs no trip.'
          : 'Free one day, or send somebody else.',
      };
}
