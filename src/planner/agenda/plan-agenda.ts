import type { Household, IsoDate, Place } from '../household.ts';
import type { Session } from '../season-plan.ts';
import { partsText } from '../written.ts';
import { type Built, buildProblem } from './build.ts';
import { dryDay } from './dry-days.ts';
import { misfitsOf } from './misfits.ts';
import { possible } from './possible.ts';
import type { Piece } from './problem.ts';
import { solve } from './solve.ts';
import type { Agenda, AgendaTask } from './types.ts';
import { joined } from './unbroken.ts';

export interface AgendaInput {
  tasks: readonly AgendaTask[];
  household: Household;
  /** The day the plan is made for. It moves nothing: earliest days are set by whoever makes the tasks. */
  asOf: IsoDate;
  /** Places of the tasks. */
  places: readonly Place[];
  /** Hours that are taken already (charging trips), by date [min]. */
  busy?: ReadonlyMap<IsoDate, number> | undefined;
  /** Leaves out the search for fewer and shorter sessions. */
  quick?: boolean | undefined;
}

/**
 * Fills sessions within the household's hours: as many steps as can be done in time, in the fewest sessions, as early as
 * that allows.
 *
 * Steps keep their windows, what they follow and its waits. A stand is held by its machine for the session, a charger from
 * the beginning of its step to the end of the step's wait, the bench by one step at a time; going to a place costs its trip
 * once a session. A step longer than any session of its window is spread where it may be, and otherwise left over. No day is
 * preferred because it lies after some "today": whoever makes the tasks sets their earliest days.
 * @param input - tasks and household
 * @returns sessions, what does not fit, and the day of each task
 */
export function planAgenda({ tasks, household, asOf, places, busy, quick }: AgendaInput): Agenda {
  if (tasks.length === 0) return { sessions: [], misfits: [], dateOf: new Map(), notes: [] };
  const built = buildProblem(tasks, household, places, busy);
  const schedule = solve(built.problem, household.seed, quick);
  const names = new Map(household.machines.map((m) => [m.id, m.name]));
  const nameOf = (machine: string) => names.get(machine) ?? machine;
  const dateOf = new Map<string, IsoDate>();
  tasks.forEach((t, i) => {
    const day = schedule.day[i]!;
    if (day >= 0) dateOf.set(t.key, built.dates[day]!);
  });
  return {
    sessions: sessionsOf(tasks, built, schedule.pieces, nameOf, household.units),
    misfits: misfitsOf(tasks, built, schedule, asOf, household),
    dateOf,
    notes: built.notes,
  };
}

/**
 * Tasks that some agenda could give a place to, whatever it leaves out for them.
 * @param input - tasks and household
 * @returns their keys
 */
export function placeable({ tasks, household, places, busy }: AgendaInput): Set<string> {
  const { problem, members } = joined(buildProblem(tasks, household, places, busy).problem);
  const found = possible(problem);
  return new Set(found.flatMap((k) => members[k]!).map((i) => tasks[i]!.key));
}

function sessionsOf(
  tasks: readonly AgendaTask[],
  { problem, dates }: Built,
  pieces: readonly Piece[],
  nameOf: (machine: string) => string,
  units: Household['units'],
): Session[] {
  const byDay = new Map<number, Piece[]>();
  for (const p of pieces) {
    const own = byDay.get(p.day);
    if (own) own.push(p);
    else byDay.set(p.day, [p]);
  }
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([day, own]) => {
      const work = Math.max(...own.map((p) => p.start + p.minutes));
      const places = new Set(own.map((p) => problem.activities[p.activity]!.place));
      const trips = [...places].reduce((sum, place) => sum + problem.tripMinutes[place]!, 0);
      const inOrder = own
        .toSorted((a, b) => a.start - b.start || a.activity - b.activity)
        .map((p) => tasks[p.activity]!);
      return {
        id: `session-${dates[day]!}`,
        date: dates[day]!,
        start: clock(problem.days[day]!.start),
        hours: (work + trips) / 60,
        steps: inOrder.map((t) => ({ machine: t.machine, step: t.step })),
        title: titleOf(inOrder, nameOf, units),
      };
    });
}

function clock(minute: number): string {
  const ofDay = Math.floor(minute % 1440);
  return `${String(Math.floor(ofDay / 60)).padStart(2, '0')}:${String(ofDay % 60).padStart(2, '0')}`;
}

const workOf = (tasks: readonly AgendaTask[], machine: string) =>
  tasks.filter((t) => t.machine === machine).map(({ part, work, minutes }) => ({ part, title: work, minutes }));

function titleOf(tasks: readonly AgendaTask[], nameOf: (machine: string) => string, units: Household['units']): string {
  const said = [...new Set(tasks.map((t) => t.machine))]
    .map((machine) => `${nameOf(machine)}: ${partsText(workOf(tasks, machine))}`)
    .join('. ');
  return tasks.some((t) => t.needs.dryDay) ? `${said} (on a ${dryDay(units)})` : said;
}
