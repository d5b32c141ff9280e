import { dayNumber } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { MachinePlan, PlanStep } from '../season-plan.ts';
import { windowsOf } from '../tasks/parts.ts';
import { durationText, listText, partsText, writtenDay } from '../written.ts';
import { type Draft, machineDraft, machinePath, PHASES, type PlanWithoutEvents } from './draft.ts';
import { cautionLines, clockText, lines, readerOf, stepLines } from './words.ts';

/** The work of one phase on one machine in one session; or on one day, where the agenda gave a day but no session. */
export interface WorkBlock {
  machine: MachinePlan;
  phase: PlanStep['phase'];
  date: IsoDate;
  start?: string | undefined;
  /** Of this block alone [h]. */
  hours: number;
  /** The session's own hours, where there is one [h]. */
  sessionHours?: number | undefined;
  steps: PlanStep[];
  /** Those of them that are not done. */
  open: PlanStep[];
  /** Names of the other machines of the session. */
  besides: string[];
}

/**
 * Sorts the dated steps of the plan into blocks, in order of time. The first ride is left out, and all after it: the reminders
 * of the first use and of the re-check tell them.
 * @param plan - the plan
 */
export function workBlocks(plan: PlanWithoutEvents): WorkBlock[] {
  const byId = new Map(plan.machines.map((m) => [m.id, { machine: m, steps: new Map(m.steps.map((s) => [s.id, s])) }]));
  const inSession = new Set<PlanStep>();
  const blocks = plan.sessions.flatMap((session) => {
    const pairs = session.steps.flatMap(({ machine: id, step: stepId }) => {
      const found = byId.get(id);
      const step = found?.steps.get(stepId);
      return found && step ? [{ machine: found.machine, step }] : [];
    });
    for (const { step } of pairs) inSession.add(step);
    return grouped(
      pairs.filter(({ step }) => !isOrder(step) && step.stage !== 'first-ride'),
      session.date,
      { start: session.start, sessionHours: session.hours },
    );
  });
  for (const machine of plan.machines) {
    const byDay = new Map<IsoDate, { machine: MachinePlan; step: PlanStep }[]>();
    for (const step of machine.steps) {
      if (step.date === undefined || inSession.has(step) || step.stage === 'first-ride') continue;
      byDay.set(step.date, [...(byDay.get(step.date) ?? []), { machine, step }]);
    }
    for (const [date, pairs] of byDay) blocks.push(...grouped(pairs, date, {}));
  }
  const time = (block: WorkBlock) => `${block.date} ${block.start ?? ''}`;
  return blocks
    .filter((block) => block.date <= block.machine.startUp.firstUse)
    .sort((a, b) => (time(a) < time(b) ? -1 : time(a) > time(b) ? 1 : 0));
}

/** Steps that only order parts: the reminders to order tell them, on the last day for it. */
const isOrder = (step: PlanStep) => step.id.startsWith('strip.order.');

function grouped(
  pairs: readonly { machine: MachinePlan; step: PlanStep }[],
  date: IsoDate,
  session: Pick<WorkBlock, 'start' | 'sessionHours'>,
): WorkBlock[] {
  const names = [...new Set(pairs.map((pair) => pair.machine.name))];
  const groups = new Map<string, WorkBlock>();
  for (const { machine, step } of pairs) {
    const key = JSON.stringify([machine.id, step.phase]);
    const besides = names.filter((name) => name !== machine.name);
    const block = groups.get(key) ?? {
      ...session,
      machine,
      phase: step.phase,
      date,
      hours: 0,
      steps: [],
      open: [],
      besides,
    };
    block.hours += step.minutes / 60;
    block.steps.push(step);
    if (!step.done) block.open.push(step);
    groups.set(key, block);
  }
  return [...groups.values()];
}

/**
 * Reminders of work and look-ins, one for each block that has something left to do.
 * @param plan - the plan
 * @param blocks - all blocks, in order of time
 */
export function workDrafts(plan: PlanWithoutEvents, blocks: readonly WorkBlock[]): Draft[] {
  const left = new Map<string, number>();
  const place = (block: WorkBlock) => JSON.stringify([block.machine.id, block.phase]);
  for (const block of blocks) left.set(place(block), (left.get(place(block)) ?? 0) + 1);
  return blocks.flatMap((block) => {
    const fromEnd = left.get(place(block))!;
    left.set(place(block), fromEnd - 1);
    if (block.open.length === 0) return [];
    const { machine, phase, date } = block;
    const { category, page } = PHASES[phase];
    const key = phase === 'look-in' ? ['look-in', firstStepId(block)] : ['work', phase, fromEnd];
    return [
      machineDraft(plan, machine, key, {
        date,
        title: `${whatText(block)}: ${timeText(block, plan)}`,
        label: actText(block),
        text: blockText(block, plan),
        category: phase === 'swap' && nearFirstUse(block) ? 'start-up' : category,
        path: phase === 'winter' ? '/jobs/' : machinePath(machine, page),
      }),
    ];
  });
}

/** The id of the block's step that stands first in the machine's list: it carries the number of the look-in. */
function firstStepId({ machine, steps }: WorkBlock): string {
  return machine.steps.find((step) => steps.includes(step))!.id;
}

/** "Lay up Heron (wash and dry, fuel and 2 more)": what of the phase is done, and that it is overdue. */
function whatText(block: WorkBlock): string {
  const { phase, open } = block;
  const parts = phase === 'look-in' || isLoose(block) ? '' : ` (${partsText(open)})`;
  const late = open.some((step) => step.overdue !== undefined) ? ', overdue' : '';
  return `${actText(block)}${parts}${late}`;
}

function actText(block: WorkBlock): string {
  const { machine, phase, open } = block;
  return isLoose(block) ? `${machine.name}: ${partsText(open)}` : PHASES[phase].act(machine.name);
}

/** Work of the lay-up's list that has its own time after the lay-up: used oil to be taken away. */
function isLoose({ machine, phase, open }: WorkBlock): boolean {
  const { layUpEnd } = windowsOf(machine.season);
  return phase === 'lay-up' && open.every((step) => step.latest !== undefined && step.latest > layUpEnd);
}

/** "13:00, 3 h 30 min"; where other work shares the session, the part that is this block's. */
function timeText({ start, hours, sessionHours, besides }: WorkBlock, plan: PlanWithoutEvents): string {
  const own = durationText(60 * (besides.length === 0 ? (sessionHours ?? hours) : hours));
  return start === undefined ? own : `${clockText(start, plan.household.clock)}, ${own}`;
}

function blockText(block: WorkBlock, plan: PlanWithoutEvents): string {
  const { open, hours, besides, sessionHours } = block;
  const due = open.flatMap((step) => step.overdue ?? []).sort()[0];
  const latest = open.flatMap((step) => (step.overdue === undefined ? (step.latest ?? []) : [])).sort()[0];
  return lines(
    ...stepLines(open, readerOf(plan)),
    due !== undefined &&
      `It was due by ${writtenDay(due, plan.household.locale)}: do it now, tick what is done, or leave it out on purpose.`,
    latest !== undefined && `To be done by ${writtenDay(latest, plan.household.locale)}.`,
    // The page counts the steps alone.
    besides.length === 0 &&
      sessionHours !== undefined &&
      Math.round(60 * sessionHours) > Math.round(60 * hours) &&
      `The steps take ${durationText(60 * hours)}; the way there and waiting come on top.`,
    // Only a session has other machines.
    besides.length > 0 && `The session is ${durationText(60 * sessionHours!)} in all, with ${listText(besides)}.`,
    ...cautionLines(open, readerOf(plan)),
  );
}

function nearFirstUse({ machine, date }: WorkBlock): boolean {
  const day = dayNumber(date);
  return dayNumber(machine.season.firstUse) - day < day - dayNumber(machine.season.lastUse);
}
