/** What the days of a machine's steps say of its season: when it is laid up and when it is ready. */
import { standing } from './agenda-tasks.ts';
import { addDays, daysBetween, earlier, later } from './dates.ts';
import type { IsoDate } from './household.ts';
import type { DraftMachine } from './machine-plan.ts';
import { lacksDay, makesReady } from './made-ready.ts';
import type { MachinePlan, PlanStep } from './season-plan.ts';
import { windowsOf } from './tasks/index.ts';
import { tickedOn } from './ticked.ts';

/**
 * The machine's steps with their days: those of the agenda, of a lay-up step that is done the day on which it was, and of a first
 * ride that the start-up has held up, and what belongs to it, so many days later; none for them where the start-up has found none.
 * @param draft - the machine
 * @param dateOf - the day that the agenda gave to a step, by its id
 * @param asOf - the day the plan is made for
 */
export function datedSteps(
  draft: DraftMachine,
  dateOf: (step: string) => IsoDate | undefined,
  asOf: IsoDate,
): PlanStep[] {
  const steps = draft.steps.map((step) => {
    const ticked = step.done && isLayUp(step) ? tickedOn(draft.machine, step) : undefined;
    return {
      ...step,
      date: ticked ?? step.date ?? dateOf(step.id),
      overdue: step.overdue ?? standing(step, draft, asOf)?.overdue,
    };
  });
  const { firstUse } = draft.machine.season;
  const startUp = startUpDays(draft, steps, asOf);
  const late = daysBetween(firstUse, startUp.firstUse);
  const isLacking = steps.some(lacksDay);
  return steps.map((step) => {
    if (step.stage !== 'first-ride' || step.done || step.date === undefined) return step;
    if (isLacking) return { ...step, date: undefined };
    // A drive battery is not charged before it was looked at, be it on the day of the first use.
    return step.date <= firstUse ? { ...step, date: later(addDays(step.date, late), startUp.ready) } : step;
  });
}

/** Of the work at the end of use. */
export const isLayUp = ({ phase }: PlanStep) => phase === 'lay-up' || phase === 'swap';

/**
 * The days of the lay-up's work. What has its own time after it (used oil to be taken away) is left out of account.
 * @param draft - the machine
 * @param steps - with their days
 * @param asOf - the day the plan is made for
 */
export function layUpDays({ machine }: DraftMachine, steps: readonly PlanStep[], asOf: IsoDate): MachinePlan['layUp'] {
  const { lastUse } = machine.season;
  const { layUpEnd } = windowsOf(machine.season);
  const own = steps.filter((step) => step.phase === 'lay-up' && (step.latest ?? layUpEnd) <= layUpEnd);
  const complete = own.every((step) => step.done);
  const days = own.flatMap(({ date }) => date ?? []).sort();
  return {
    start: days.at(0) ?? lastUse,
    done: days.at(-1) ?? (complete ? lastUse : layUpEnd),
    complete,
    late: !complete && asOf > layUpEnd ? true : undefined,
  };
}

/**
 * The days of the start-up's work, and of the first use, which waits for it, and for the day after what is done on its eve. What of
 * it has found no day is not done before the first use, nor before the day of the plan, nor before the rest of it; three weeks after
 * the first use the season is over.
 * @param draft - the machine
 * @param steps - with their days
 * @param asOf - the day the plan is made for
 */
export function startUpDays(
  { machine }: DraftMachine,
  steps: readonly PlanStep[],
  asOf: IsoDate,
): MachinePlan['startUp'] {
  const { firstUse, rideEnd } = windowsOf(machine.season);
  const sheet = steps.filter(makesReady);
  const days = sheet.flatMap(({ date }) => (date !== undefined && date <= rideEnd ? [date] : [])).sort();
  const ticks = sheet.flatMap((step) => (step.done ? (tickedOn(machine, step) ?? []) : [])).sort();
  const made = sheet.every((step) => step.done) ? ticks.at(-1) : undefined;
  const last = days.at(-1) ?? made ?? firstUse;
  const ready = sheet.some(lacksDay) ? later(later(firstUse, earlier(asOf, rideEnd)), last) : last;
  const waits = steps.some((step) => isEve(step, firstUse) && !step.done);
  return {
    start: days.at(0) ?? made ?? firstUse,
    ready,
    firstUse: later(firstUse, waits ? addDays(ready, 1) : ready),
    made,
  };
}

/** Done on the day before the first use: a drive battery is charged for hours. */
const isEve = ({ stage, latest }: PlanStep, firstUse: IsoDate) =>
  stage === 'first-ride' && latest === addDays(firstUse, -1);
