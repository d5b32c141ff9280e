import { isoOfDay } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { Misfit } from '../season-plan.ts';
import { counted, type Manner, withSeparator, writtenDate } from '../written.ts';
import type { Built } from './build.ts';
import { dryDay } from './dry-days.ts';
import type { Activity, Schedule } from './problem.ts';
import type { AgendaTask } from './types.ts';
import { joined, wholeOf } from './unbroken.ts';

/** Why a step found no place. */
type Cause =
  | { kind: 'no-session' }
  | { kind: 'too-long'; longestH: number }
  | { kind: 'waits'; until: IsoDate }
  | { kind: 'follows' }
  | { kind: 'taken'; what: string }
  | { kind: 'hours' };

/** Steps named in a message; the rest are counted. */
const NAMED = 3;

/**
 * What did not fit, in words: one message for each latest date and cause.
 * @param tasks - as given to the agenda
 * @param built - their problem
 * @param schedule - its solution
 * @param asOf - the day the plan is made for: a latest day before it is spoken of as past
 * @param manner - language and units of the messages
 * @returns messages by date
 */
export function misfitsOf(
  tasks: readonly AgendaTask[],
  built: Built,
  schedule: Schedule,
  asOf: IsoDate,
  manner: Manner,
): Misfit[] {
  const missing = [...schedule.missing].sort((a, b) => a - b);
  const freeEnd = freeEnds(built, schedule);
  const unbroken = joined(built.problem);
  const whole = new Map(missing.map((i) => [i, wholeOf(i, unbroken, built.problem.activities)]));
  const causes = new Map(missing.map((i) => [i, causeOf(whole.get(i)!, tasks[i]!, built, schedule, freeEnd, manner)]));
  const groups = new Map<string, number[]>();
  for (const i of missing) {
    const cause = causes.get(i)!;
    const key = `${tasks[i]!.latest}|${JSON.stringify(cause)}`;
    const own = groups.get(key);
    if (own) own.push(i);
    else groups.set(key, [i]);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([, members]) => {
      const before = tasks[members[0]!]!.latest;
      const cause = causes.get(members[0]!)!;
      const minutes = members.reduce((sum, i) => sum + tasks[i]!.minutes, 0);
      const windows = members.map((i) => whole.get(i)!);
      const missingMinutes = minutes - (cause.kind === 'hours' ? longestLeft(windows, freeEnd) : 0);
      return {
        steps: members.map((i) => ({ machine: tasks[i]!.machine, step: tasks[i]!.step })),
        hoursMissing: missingMinutes / 60,
        before,
        text: `${names(members, tasks)}: ${explain(cause, before, minutes, missingMinutes, manner)}${before < asOf ? ' That day is past.' : ''}`,
      };
    });
}

/** Why a piece of work found no place: a step, or the steps that are done without a break. */
function causeOf(
  a: Activity,
  task: AgendaTask,
  { problem }: Built,
  schedule: Schedule,
  freeEnd: FreeEnd,
  manner: Manner,
): Cause {
  if (a.after.some(({ of }) => schedule.day[of] === -1)) return { kind: 'follows' };
  if (!(a.to >= a.from)) return { kind: 'no-session' };
  const days = problem.days.slice(a.from, a.to + 1);
  const longest = Math.max(...days.map((d) => d.length)) - problem.tripMinutes[a.place]!;
  if (!a.splittable && a.minutes > longest) return { kind: 'too-long', longestH: Math.max(0, longest) / 60 };
  const ready = Math.max(...a.after.map(({ of, lag }) => schedule.end[of]! + lag), Number.NEGATIVE_INFINITY);
  const last = days.at(-1)!;
  if (ready > last.start + last.length) {
    const day = isoOfDay(Math.floor(ready / 1440));
    return { kind: 'waits', until: day };
  }
  for (let d = a.from; d <= a.to; d++) {
    const free = freeEnd(d, a.place);
    const start = Math.max(free.from, ready);
    if (start + a.minutes <= free.from + free.minutes) return { kind: 'taken', what: scarce(task, manner) };
  }
  return { kind: 'hours' };
}

function scarce({ needs }: AgendaTask, { units }: Manner): string {
  const wanted = [
    needs.stand ? 'the stand' : '',
    needs.charger ? 'the charger' : '',
    needs.bench ? 'the bench' : '',
    needs.dryDay ? `a ${dryDay(units)}` : '',
  ].filter((name) => name !== '');
  return wanted.join(' and ') || 'what it needs';
}

/** Free end of each day's session, for somebody who works at a place. */
type FreeEnd = (day: number, place: number) => { from: number; minutes: number };

function freeEnds({ problem }: Built, schedule: Schedule): FreeEnd {
  const ends = new Float64Array(problem.days.length);
  const trips = new Float64Array(problem.days.length);
  const places = new Map<number, Set<number>>();
  for (const p of schedule.pieces) {
    ends[p.day] = Math.max(ends[p.day]!, p.start + p.minutes);
    const { place } = problem.activities[p.activity]!;
    const visited = places.get(p.day) ?? new Set();
    if (!visited.has(place)) trips[p.day]! += problem.tripMinutes[place]!;
    places.set(p.day, visited.add(place));
  }
  return (day, place) => {
    const trip = places.get(day)?.has(place) ? 0 : problem.tripMinutes[place]!;
    const minutes = problem.days[day]!.length - trips[day]! - trip - ends[day]!;
    return { from: problem.days[day]!.start + ends[day]!, minutes: Math.max(0, minutes) };
  };
}

/** The longest free end in the time that all of them share: so much less would have to be added to that day [min]. */
function longestLeft(windows: readonly Activity[], freeEnd: FreeEnd): number {
  const from = Math.max(...windows.map((a) => a.from));
  const to = Math.min(...windows.map((a) => a.to));
  const shortest = Math.min(...windows.map((a) => a.minutes));
  let longest = 0;
  for (let d = from; d <= to; d++) longest = Math.max(longest, freeEnd(d, windows[0]!.place).minutes);
  return Math.min(longest, shortest);
}

function explain(cause: Cause, before: IsoDate, minutes: number, missingMinutes: number, { locale }: Manner): string {
  const by = writtenDate(before, locale);
  const work = `${hours(minutes / 60, locale)} of work`;
  switch (cause.kind) {
    case 'no-session':
      return `${work} without a place: no free hours at all in its time up to ${by}.`;
    case 'too-long':
      return `${work} in one go up to ${by}, but the longest session has ${hours(cause.longestH, locale)}: one longer day is needed.`;
    case 'waits':
      return `${work} up to ${by}, but what it waits for is over only about ${writtenDate(cause.until, locale)}.`;
    case 'follows':
      return `${work} up to ${by}, which waits for steps that find no day themselves.`;
    case 'taken':
      return `${work} up to ${by}: there are hours for it, but ${cause.what} is not to be had in them.`;
    case 'hours':
      return `${work} without a place up to ${by}: ${hours(missingMinutes / 60, locale)} more needed by then.`;
  }
}

function hours(h: number, locale: string): string {
  return h < 1 ? `${Math.ceil(h * 60 - 1e-6)} min` : `${withSeparator(String(Number(h.toFixed(1))), locale)} h`;
}

function names(members: readonly number[], tasks: readonly AgendaTask[]): string {
  const said = members
    .slice(0, NAMED)
    .map((i) => tasks[i]!.title)
    .join('; ');
  const more = members.length - NAMED;
  return more > 0 ? `${said}; and ${counted(more, 'more step', 'more steps')}` : said;
}
