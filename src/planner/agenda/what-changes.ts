import { daysBetween } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { Misfit, PlanStep } from '../season-plan.ts';
import { counted, withSeparator, writtenDate } from '../written.ts';
import { taskKey } from './types.ts';

/** As much of a machine and its own agenda as two plans are compared by. */
export interface ChangedPlan {
  draft: {
    machine: { id: string; season: { lastUse: IsoDate } };
    rest: { firstFrost?: IsoDate | undefined };
    steps: readonly Pick<PlanStep, 'id' | 'title' | 'latest' | 'date' | 'done'>[];
    battery?: { charges: readonly { date: IsoDate }[] } | undefined;
  };
  misfits: readonly Misfit[];
  /** The day of each step, by `taskKey`; without it nothing is said of what gets tighter. */
  dateOf?: ReadonlyMap<string, IsoDate> | undefined;
}

/** A frost further off than this is no matter of the last use [d]. */
const FAR_FROST_DAYS = 60;

/**
 * What going on riding changes: what gets tighter, what is missed.
 * @param base - the plan as it stands
 * @param shifted - the plan of the same machine with a later last use
 * @param locale - language of the dates
 * @returns sentences; titles of steps that fitted and no longer do; hours of work that no longer find a place [h]
 */
export function whatChanges(
  base: ChangedPlan,
  shifted: ChangedPlan,
  locale: string,
): { text: string[]; missed: string[]; misfitHours: number } {
  const fitted = new Set(base.misfits.flatMap((m) => ownSteps(base, m)));
  const missedIds = [...new Set(shifted.misfits.flatMap((m) => ownSteps(shifted, m)))].filter((id) => !fitted.has(id));
  const titles = new Map(shifted.draft.steps.map((s) => [s.id, s.title]));
  const missed = missedIds.map((id) => titles.get(id) ?? id);
  const misfitHours = Math.max(0, misfitHoursOf(shifted) - misfitHoursOf(base));
  const text = [...frostText(base, shifted, locale), ...tighter(base, shifted), ...chargeText(base, shifted, locale)];
  if (missed.length > 0) {
    const hours = Number(misfitHours.toFixed(1));
    text.push(
      `No longer fits: ${missed.join(', ')}${hours > 0 ? ` (${withSeparator(String(hours), locale)} h of work)` : ''}.`,
    );
  } else text.push('Everything that fitted still fits.');
  return { text, missed, misfitHours };
}

function ownSteps({ draft }: ChangedPlan, misfit: Misfit): string[] {
  return misfit.steps.filter((s) => s.machine === draft.machine.id).map((s) => s.step);
}

/** Hours of all messages in which the machine has a step; a message shared with others counts by its share of steps. */
function misfitHoursOf(plan: ChangedPlan): number {
  return plan.misfits.reduce(
    (sum, m) => sum + (m.hoursMissing * ownSteps(plan, m).length) / Math.max(1, m.steps.length),
    0,
  );
}

/** Said only where riding on passes the frost, or comes close enough to it that the days are worth counting. */
function frostText(base: ChangedPlan, shifted: ChangedPlan, locale: string): string[] {
  const { firstFrost } = shifted.draft.rest;
  if (firstFrost === undefined) return [];
  const days = daysBetween(shifted.draft.machine.season.lastUse, firstFrost);
  if (days > FAR_FROST_DAYS) return [];
  if (days > 0) return [`The first frost in the store usually comes ${counted(days, 'day')} after the last use.`];
  if (base.draft.machine.season.lastUse >= firstFrost) return [];
  return [
    `In a usual year the store has its first frost by ${writtenDate(firstFrost, locale)}, before the last use: what must be done before it is done while the machine is still in use.`,
  ];
}

/** The step whose time between its day and its latest day shrinks to the least. */
function tighter(base: ChangedPlan, shifted: ChangedPlan): string[] {
  const before = new Map(base.draft.steps.map((s) => [s.id, slackOf(base, s)]));
  let tightest: { title: string; slack: number; was: number } | undefined;
  for (const s of shifted.draft.steps) {
    const slack = slackOf(shifted, s);
    const was = before.get(s.id);
    if (slack === undefined || was === undefined || slack >= was) continue;
    if (!tightest || slack < tightest.slack) tightest = { title: s.title, slack, was };
  }
  if (!tightest) return [];
  return [
    `Tightest: ${tightest.title}, ${counted(tightest.slack, 'day')} before its latest day instead of ${tightest.was}.`,
  ];
}

function slackOf({ draft, dateOf }: ChangedPlan, step: ChangedPlan['draft']['steps'][number]): number | undefined {
  const date = step.date ?? dateOf?.get(taskKey(draft.machine.id, step.id));
  if (step.done || step.latest === undefined || date === undefined) return undefined;
  return daysBetween(date, step.latest);
}

function chargeText(base: ChangedPlan, shifted: ChangedPlan, locale: string): string[] {
  const was = base.draft.battery?.charges[0]?.date;
  const is = shifted.draft.battery?.charges[0]?.date;
  if (was === is) return [];
  const written = (date: IsoDate) => writtenDate(date, locale);
  if (was === undefined) return is === undefined ? [] : [`A charge falls due on ${written(is)}, where none did.`];
  if (is === undefined) return [`The charge of ${written(was)} is no longer needed.`];
  const days = daysBetween(was, is);
  const way = days > 0 ? 'later' : 'earlier';
  return [`The first charge moves from ${written(was)} to ${written(is)} (${counted(Math.abs(days), 'day')} ${way}).`];
}
