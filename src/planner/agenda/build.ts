import { dayNumber, isoOfDay, weekdayOf } from '../dates.ts';
import type { Household, IsoDate, Place } from '../household.ts';
import type { Warning } from '../season-plan.ts';
import { writtenDate } from '../written.ts';
import { dryDay, usuallyDryAndWarm } from './dry-days.ts';
import type { Activity, Day, Problem } from './problem.ts';
import type { AgendaTask } from './types.ts';

const DAY_MIN = 1440;
/** When a session begins, unless its hours need it earlier. Common practice: after work, or after breakfast. */
const EVENING_MIN = 18 * 60;
const WEEKEND_MIN = 10 * 60;

export interface Built {
  problem: Problem;
  /** Date of each of the problem's days. */
  dates: IsoDate[];
  notes: Warning[];
}

/**
 * The scheduling problem of a household: its free hours as days, its hands, bench, stands and chargers as resources.
 *
 * A resource that the household does not have is noted and left out of account, since nobody can wait for it. A step that
 * needs a dry day above 5 °C is held to the times of year when such days are usual, where its window has any.
 * @param tasks - all that is to be done
 * @param household - hours, days away, hands, stands, chargers
 * @param places - of the tasks
 * @param busy - hours that are taken already, by date [min]
 */
export function buildProblem(
  tasks: readonly AgendaTask[],
  household: Household,
  places: readonly Place[] = household.places,
  busy: ReadonlyMap<IsoDate, number> = new Map(),
): Built {
  const numbers = new Map(tasks.map((t, i) => [t.key, i]));
  const { days, dates } = freeDays(tasks, household, busy);
  const firstFrom = positions(dates);
  const notes = new Notes(household);
  const groups = numbered(tasks.map((t) => t.machine));
  const placeNumbers = numbered(tasks.map((t) => t.placeId));
  const placeOf = new Map(places.map((p) => [p.id, p]));
  const hasBench = places.some((p) => p.bench);
  const fits = new Map<string, Uint8Array>();

  const dryDays = (place: Place): Uint8Array => {
    let fit = fits.get(place.id);
    if (!fit) {
      const usual = usuallyDryAndWarm(place.climate);
      fit = Uint8Array.from(dates, (date) => (usual(dayNumber(date)) ? 1 : 0));
      fits.set(place.id, fit);
    }
    return fit;
  };

  const activities = tasks.map((t): Activity => {
    if (!(t.minutes >= 0 && Number.isFinite(t.minutes) && t.waitH >= 0 && Number.isFinite(t.waitH))) {
      throw new RangeError(
        `found ${t.minutes} min and a wait of ${t.waitH} h for "${t.key}", expected 0 or more of each`,
      );
    }
    const from = firstFrom(t.earliest);
    const to = firstFrom(isoOfDay(dayNumber(t.latest) + 1)) - 1;
    const place = placeOf.get(t.placeId);
    let fit = t.needs.dryDay && place ? dryDays(place) : undefined;
    if (fit && to >= from && !fit.subarray(from, to + 1).includes(1)) {
      fit = undefined;
      notes.noDryDay(t);
    }
    const stands = t.needs.stand ? standsFor(household, t) : [];
    if (t.needs.stand && stands.length === 0) notes.noStand(t);
    const chargers = t.needs.charger ? chargersFor(household, t) : [];
    if (t.needs.bench && !hasBench) notes.noBench(t);
    const after = [...new Set(t.after)].flatMap((key) => {
      const of = numbers.get(key);
      return of === undefined ? [] : [{ of, lag: Math.max(tasks[of]!.waitH, t.behindH ?? 0) * 60 }];
    });
    return {
      minutes: t.minutes,
      demand: [1, t.needs.bench && hasBench ? 1 : 0],
      after,
      from,
      to,
      fit,
      group: groups.get(t.machine)!,
      stands,
      chargers,
      chargeMinutes: t.waitH * 60,
      place: placeNumbers.get(t.placeId)!,
      goesOnFrom: t.goesOnFrom === undefined ? undefined : numbers.get(t.goesOnFrom),
      splittable: t.splittable,
    };
  });
  const tripMinutes = [...placeNumbers.keys()].map((id) => placeOf.get(id)?.tripMinutes ?? 0);
  return { problem: { activities, capacity: [household.hands, 1], days, tripMinutes }, dates, notes: notes.list };
}

/** Sessions that could be held between the first and the last day of any task. */
function freeDays(
  tasks: readonly AgendaTask[],
  household: Household,
  busy: ReadonlyMap<IsoDate, number>,
): { days: Day[]; dates: IsoDate[] } {
  if (!(household.hands >= 1)) throw new RangeError(`found ${household.hands} pairs of hands, expected 1 or more`);
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const t of tasks) {
    first = Math.min(first, dayNumber(t.earliest));
    last = Math.max(last, dayNumber(t.latest));
  }
  const away = household.away.map((a) => [dayNumber(a.from), dayNumber(a.to)] as const);
  const days: Day[] = [];
  const dates: IsoDate[] = [];
  for (let n = first; n <= last; n++) {
    if (away.some(([from, to]) => n >= from && n <= to)) continue;
    const date = isoOfDay(n);
    const weekday = weekdayOf(date);
    const hours = household.hoursByWeekday[weekday];
    if (!(hours >= 0 && hours <= 24)) throw new RangeError(`found ${hours} h on ${weekday}, expected 0 to 24`);
    const length = hours * 60 - (busy.get(date) ?? 0);
    if (!(length > 0)) continue;
    const usual = weekday === 'saturday' || weekday === 'sunday' ? WEEKEND_MIN : EVENING_MIN;
    days.push({ start: n * DAY_MIN + Math.min(usual, DAY_MIN - length), length });
    dates.push(date);
  }
  return { days, dates };
}

/** Position of the first of the dates that is not before a given one. */
function positions(dates: readonly IsoDate[]): (date: IsoDate) => number {
  return (date) => {
    let low = 0;
    let high = dates.length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (dates[mid]! < date) low = mid + 1;
      else high = mid;
    }
    return low;
  };
}

/** Those that carry fewest kinds first, so that the one that carries all stays free for others. */
function standsFor(household: Household, task: AgendaTask): number[] {
  return [...household.stands.keys()]
    .filter((i) => household.stands[i]!.kinds.includes(task.kind))
    .sort((a, b) => household.stands[a]!.kinds.length - household.stands[b]!.kinds.length);
}

function chargersFor(household: Household, task: AgendaTask): number[] {
  return [...household.chargers.keys()].filter((i) => {
    const { chemistries, placeId } = household.chargers[i]!;
    const suits = task.chemistry === undefined || chemistries.includes(task.chemistry);
    return suits && (placeId === undefined || placeId === task.placeId);
  });
}

function numbered(ids: readonly string[]): Map<string, number> {
  const numbers = new Map<string, number>();
  for (const id of ids) if (!numbers.has(id)) numbers.set(id, numbers.size);
  return numbers;
}

/** What was taken for granted, each once for a machine. */
class Notes {
  readonly list: Warning[] = [];
  private readonly household: Household;
  private readonly said = new Set<string>();

  constructor(household: Household) {
    this.household = household;
  }

  noDryDay(task: AgendaTask): void {
    const { locale, units } = this.household;
    const [from, to] = [task.earliest, task.latest].map((day) => writtenDate(day, locale));
    const text = `${task.title}: a ${dryDay(units)} is not usual between ${from} and ${to}.`;
    this.add(task, 'dry', text, 'Do it on the first dry, mild day there is, or indoors with a bucket.');
  }

  noStand(task: AgendaTask): void {
    const text = `${this.name(task)} needs a stand, and none of the household carries a ${task.kind.replace('snow-machine', 'snow machine')}.`;
    this.add(
      task,
      'stand',
      text,
      'Borrow one, or give it to the household; never work under a machine on a jack alone.',
    );
  }

  noBench(task: AgendaTask): void {
    this.add(
      task,
      'bench',
      `${this.name(task)} needs a bench, and no place has one.`,
      'Find a flat, clean, lit table.',
    );
  }

  private name(task: AgendaTask): string {
    return this.household.machines.find((m) => m.id === task.machine)?.name ?? task.machine;
  }

  private add(task: AgendaTask, kind: string, text: string, act: string): void {
    const once = `${task.machine} ${kind}`;
    if (this.said.has(once)) return;
    this.said.add(once);
    this.list.push({ machine: task.machine, level: 'note', text, act, about: 'agenda' });
  }
}
