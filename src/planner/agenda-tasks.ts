/** Steps -> tasks of the agenda: which steps want a session, between which days, and what they compete for. */
import { taskKey } from './agenda/index.ts';
import type { AgendaTask } from './agenda/types.ts';
import { addDays, earlier, later } from './dates.ts';
import type { IsoDate } from './household.ts';
import type { DraftMachine } from './machine-plan.ts';
import { makesReady } from './made-ready.ts';
import type { PlanStep } from './season-plan.ts';
import { windowsOf } from './tasks/index.ts';

/** Work that is overdue is to be done within this many days. Common practice. */
const OVERDUE_DAYS = 28;

/** The re-check follows the first ride, which may be on the day that the start-up ends: so long after that it is another day [h]. */
const NEXT_DAY_H = 18;

/** Between which days an undone step is to be done, and by when it was due, where that is past. */
export interface Standing {
  earliest: IsoDate;
  latest: IsoDate;
  overdue?: IsoDate | undefined;
}

/**
 * Where an undone step stands on the day of the plan: never on a day gone by.
 *
 * Work whose last day has passed is overdue and wanted soon, as long as it has any use: a lay-up until the start-up begins,
 * winter work until the first use, or where the record says that it was begun, three weeks longer. The start-up is to be done by
 * the first use, and once that is past within three weeks: a machine that nobody has made ready must not be used. The end of the
 * lay-up is no wall: what of it has not been done while it lasted runs on for as long as what is overdue.
 * @param step - of the machine's plan
 * @param draft - the machine
 * @param asOf - the day the plan is made for
 * @returns undefined for a step that wants no session (done, or with a day of its own) and for one whose time is over
 */
export function standing(step: PlanStep, draft: DraftMachine, asOf: IsoDate): Standing | undefined {
  if (step.done || step.date !== undefined) return undefined;
  const { earliest, latest } = daysOf(step, draft);
  const end = later(latest, endOf(step, draft, asOf));
  const soon = earlier(addDays(asOf, OVERDUE_DAYS), end);
  if (latest < asOf) return asOf > end ? undefined : { earliest: asOf, latest: soon, overdue: latest };
  const isBegun = earliest < asOf && latest === windowsOf(draft.machine.season).layUpEnd;
  return { earliest: later(earliest, asOf), latest: isBegun ? later(latest, soon) : latest };
}

/** The last day on which it still has a use to do an overdue step. */
function endOf({ phase, useUntil }: PlanStep, { machine, steps }: DraftMachine, asOf: IsoDate): IsoDate {
  if (useUntil !== undefined) return useUntil;
  const { startUpFrom, firstUse, rideEnd } = windowsOf(machine.season);
  if (phase === 'lay-up' || phase === 'swap') return startUpFrom;
  if (phase === 'start-up') return asOf > firstUse ? rideEnd : firstUse;
  return steps.some((step) => step.phase === phase && step.done) ? rideEnd : firstUse;
}

/**
 * The tasks that one machine brings to the agenda. Steps with a day of their own (visits, charges, the first ride) and steps
 * that are done bring none.
 * @param draft - the machine
 * @param asOf - the day the plan is made for
 * @param startUpFrom - no start-up before this day, where that leaves it a day
 */
export function agendaTasks(draft: DraftMachine, asOf: IsoDate, startUpFrom: IsoDate = asOf): AgendaTask[] {
  const { machine, steps, battery } = draft;
  const sheet = steps.filter(makesReady).map(({ id }) => id);
  return steps.flatMap((step): AgendaTask[] => {
    const days = standing(step, draft, asOf);
    if (!days) return [];
    const from = step.phase === 'start-up' ? earlier(startUpFrom, days.latest) : asOf;
    return [
      {
        key: taskKey(machine.id, step.id),
        machine: machine.id,
        step: step.id,
        title: `${machine.name}: ${step.title}`,
        phase: step.phase,
        part: step.part,
        work: step.title,
        placeId: machine.placeId,
        minutes: step.minutes,
        waitH: step.waitH,
        // The re-check follows the first ride, which has a day of its own, and so all that the ride waits for.
        after: [...step.after, ...(step.stage === 'first-ride' ? sheet : [])].map((id) => taskKey(machine.id, id)),
        behindH: step.stage === 'first-ride' ? NEXT_DAY_H : undefined,
        goesOnFrom: step.goesOnFrom === undefined ? undefined : taskKey(machine.id, step.goesOnFrom),
        earliest: later(days.earliest, from),
        latest: days.latest,
        needs: step.needs,
        kind: machine.kind,
        chemistry: battery?.chemistry,
        splittable: step.phase === 'winter',
      },
    ];
  });
}

/**
 * Whether work of the machine was moved because its day has come: what a calendar then takes as a change.
 * @param draft - the machine
 * @param asOf - the day the plan is made for
 */
export function movesWork(draft: DraftMachine, asOf: IsoDate): boolean {
  return draft.steps.some((step) => standing(step, draft, asOf) && daysOf(step, draft).earliest < asOf);
}

/**
 * Hours that visits take before any session is planned: looking in and charging have days of their own.
 * @param drafts - all machines
 * @returns minutes by date; the way to a place counts once a day
 */
export function visitMinutes(drafts: readonly DraftMachine[]): Map<IsoDate, number> {
  const minutes = new Map<IsoDate, number>();
  const visited = new Set<string>();
  for (const { steps, context } of drafts)
    for (const { date, done, minutes: work } of steps) {
      if (date === undefined || done) continue;
      const visit = `${date} ${context.place.id}`;
      const way = visited.has(visit) ? 0 : context.place.tripMinutes;
      visited.add(visit);
      minutes.set(date, (minutes.get(date) ?? 0) + work + way);
    }
  return minutes;
}

/** Where a step says nothing else, winter work lies between lay-up and start-up, and a refit of the start-up sheet within that. */
function daysOf(step: PlanStep, { machine }: DraftMachine): { earliest: IsoDate; latest: IsoDate } {
  const { layUpEnd, startUpFrom, firstUse } = windowsOf(machine.season);
  const [from, to] = step.phase === 'start-up' ? [startUpFrom, firstUse] : [layUpEnd, startUpFrom];
  const earliest = step.earliest ?? from;
  return { earliest, latest: later(step.latest ?? to, earliest) };
}
