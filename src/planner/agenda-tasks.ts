/** Steps -> tasks of the agenda: which steps want a session, between which days, and what they compete for. */
import { taskKey } from './agenda/index.ts';
import type { AgendaTask } from './agenda/types.ts';
import { addDays, later } from './dates.ts';
import type { IsoDate } from './household.ts';
import type { DraftMachine } from './machine-plan.ts';
import type { PlanStep } from './season-plan.ts';
import { windowsOf } from './tasks/index.ts';

/** Work that is overdue is to be done within this many days. Common practice. */
const OVERDUE_DAYS = 14;

/**
 * The tasks that one machine brings to the agenda. Steps with a day of their own (visits, charges) and steps that are
 * done bring none.
 * @param draft - the machine
 * @param asOf - where the machine keeps a record, undone work is not planned before this day
 */
export function agendaTasks(draft: DraftMachine, asOf: IsoDate): AgendaTask[] {
  const { machine, steps, battery } = draft;
  const kept = machine.doneSteps.length > 0;
  const planned = steps.filter(wantsSession);
  return planned.map((step) => {
    const days = daysOf(step, draft);
    const latest = kept && days.latest < asOf ? addDays(asOf, OVERDUE_DAYS) : days.latest;
    return {
      key: taskKey(machine.id, step.id),
      machine: machine.id,
      step: step.id,
      title: `${machine.name}: ${step.title}`,
      phase: step.phase,
      placeId: machine.placeId,
      minutes: step.minutes,
      waitH: step.waitH,
      after: step.after.map((id) => taskKey(machine.id, id)),
      earliest: kept ? later(days.earliest, asOf) : days.earliest,
      latest,
      needs: step.needs,
      kind: machine.kind,
      chemistry: battery?.chemistry,
      splittable: step.phase === 'winter',
    };
  });
}

/**
 * Work of an undone step whose last day has passed is moved to the days from `asOf` on, where a record is kept.
 * @returns whether any step of the machine was moved
 */
export function movesWork(draft: DraftMachine, asOf: IsoDate): boolean {
  return (
    draft.machine.doneSteps.length > 0 &&
    draft.steps.some((step) => wantsSession(step) && daysOf(step, draft).earliest < asOf)
  );
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

/** A step that has no day of its own and is still to be done. */
function wantsSession(step: PlanStep): boolean {
  return !step.done && step.date === undefined;
}

/** Winter work lies between lay-up and start-up, where it says nothing else. */
function daysOf(step: PlanStep, { machine }: DraftMachine): { earliest: IsoDate; latest: IsoDate } {
  const { layUpEnd, startUpFrom } = windowsOf(machine.season);
  return { earliest: step.earliest ?? layUpEnd, latest: later(step.latest ?? startUpFrom, step.earliest ?? layUpEnd) };
}
