/** What is to be said of a machine's season: what is overdue or has found no day, a season that is over, days only proposed. */
import { standing } from './agenda-tasks.ts';
import { later } from './dates.ts';
import type { IsoDate } from './household.ts';
import type { DraftMachine } from './machine-plan.ts';
import { lacksDay, makesReady } from './made-ready.ts';
import { isLayUp } from './season-days.ts';
import type { PlanStep, Warning } from './season-plan.ts';
import { windowsOf } from './tasks/index.ts';
import { inUnits } from './units/index.ts';
import { counted, type Manner, writtenDate } from './written.ts';

/** So many steps are named in a warning; the rest are counted. */
const NAMED = 3;

/** So many look-ins without a tick, one after the other, are said. */
const MISSED = 2;

const WORK: Partial<Record<PlanStep['phase'], string>> = {
  'lay-up': 'lay-up',
  swap: 'lay-up',
  winter: 'winter work',
  'start-up': 'start-up',
};

/**
 * Work that was due and is not ticked, or has found no day: what to do about it now, or that it has no use any more.
 * @param draft - the machine
 * @param steps - with their days
 * @param asOf - the day the plan is made for
 * @param locale - language of the dates
 */
export function overdueWarnings(
  draft: DraftMachine,
  steps: readonly PlanStep[],
  asOf: IsoDate,
  locale: string,
): Warning[] {
  const { machine } = draft;
  const common = { machine: machine.id, about: 'overdue' };
  const written = (date: IsoDate) => writtenDate(date, locale);
  const late = new Map<string, PlanStep[]>();
  const isLate = asOf > machine.season.firstUse;
  for (const step of steps) {
    // A charge that is overdue is told with its battery.
    if (step.overdue === undefined || step.phase === 'look-in' || (isLate && step.phase === 'start-up')) continue;
    const work = WORK[step.phase] ?? step.phase;
    late.set(work, [...(late.get(work) ?? []), step]);
  }
  const found = [...late].map(([work, of]): Warning => {
    const due = of.map((step) => step.overdue!).sort();
    const next = of.flatMap(({ date }) => date ?? []).sort()[0];
    return {
      ...common,
      level: 'warning',
      text: `${counted(of.length, 'step')} of ${machine.name}'s ${work} ${of.length === 1 ? 'is' : 'are'} overdue, the first since ${written(due[0]!)}, and not ticked (${few(of)}).`,
      act: `${soonest(next, asOf, written)} ${ticking(work, ', where what is not wanted can be left out')}`,
    };
  });
  return [
    ...notReady(machine, steps, asOf, locale),
    ...noDay(draft, steps, asOf, locale),
    ...found,
    ...notLookedIn(draft, steps, asOf, locale),
    ...passed(machine, steps, asOf, common),
  ];
}

/** When to do what is late: today, or on the first day that has hours for it. */
function soonest(next: IsoDate | undefined, asOf: IsoDate, written: (date: IsoDate) => string): string {
  if (next === undefined) return 'Do it now.';
  return next <= asOf
    ? 'Do it today.'
    : `Do it as soon as you can: the first day with hours for it is ${written(next)}.`;
}

/** How to say what is done; the winter's jobs are ticked one by one. */
function ticking(work: string, besides = ''): string {
  const there = `on the page of the machine${besides}`;
  if (work === 'winter work') return `What is done: tick it ${there}.`;
  return `What is done: say so under "Done and measured" on the form, as "${work}" under "done" in a record file, or step by step ${there}.`;
}

/** The first use is past, and the start-up sheet is not ticked: for all the plan knows, the machine is as the rest left it. */
function notReady(
  { id, name, season, engine }: DraftMachine['machine'],
  steps: readonly PlanStep[],
  asOf: IsoDate,
  locale: string,
): Warning[] {
  const left = steps.filter((step) => makesReady(step) && !step.done);
  if (left.length === 0 || asOf <= season.firstUse) return [];
  const [one, days] = [
    left.length === 1,
    left.flatMap(({ date }) => (date !== undefined && date >= asOf ? [date] : [])).sort(),
  ];
  const next = days[0] === undefined ? '' : `, from ${writtenDate(days[0], locale)} on`;
  return [
    {
      machine: id,
      about: 'start-up',
      level: asOf > windowsOf(season).rideEnd ? 'warning' : 'danger',
      text: `${name}'s first use was to be on ${writtenDate(season.firstUse, locale)}, and ${counted(left.length, 'step')} of its start-up ${one ? 'is' : 'are'} not ticked (${few(left)}).`,
      act: `Do not start or use it before every line of its start-up sheet is done${next}: it may still be ${engine.cycle === 'electric' ? 'as the rest left it' : 'plugged, drained or raised'}. ${ticking('start-up')}`,
    },
  ];
}

/** Work that is wanted and has found no day: without its start-up a machine must not be used. What is overdue is told as that. */
function noDay(draft: DraftMachine, steps: readonly PlanStep[], asOf: IsoDate, locale: string): Warning[] {
  const { id, name, season } = draft.machine;
  const late = new Map<string, { step: PlanStep; latest: IsoDate }[]>();
  for (const step of steps) {
    const [work, days] = [WORK[step.phase], standing(step, draft, asOf)];
    // A re-check follows its ride; and a lay-up that the start-up has reached is told by what the start-up asks.
    const isPast = isLayUp(step) && step.useUntil === undefined && asOf > windowsOf(season).startUpFrom;
    if (work === undefined || !days || days.overdue !== undefined || step.stage === 'first-ride' || isPast) continue;
    late.set(work, [...(late.get(work) ?? []), { step, latest: days.latest }]);
  }
  return [...late].flatMap(([work, of]): Warning[] => {
    const isSheet = of.some(({ step }) => lacksDay(step));
    // After the first use it is said already that nothing of it is ticked.
    if (isSheet && asOf > season.firstUse) return [];
    const latest = of.reduce((last, { latest: day }) => later(last, day), of[0]!.latest);
    const left = of.map(({ step }) => step);
    return [
      {
        machine: id,
        about: 'overdue',
        level: isSheet ? 'danger' : 'warning',
        text: `No day by ${writtenDate(latest, locale)} is found for ${counted(left.length, 'step')} of ${name}'s ${work} (${few(left)}).`,
        act: `Find the hours for ${left.length === 1 ? 'it' : 'them'}${isSheet ? `, or move the first use: do not start or use ${name} before every line of its start-up sheet is done` : ''}. ${ticking(work)}`,
      },
    ];
  });
}

/** Lay-up steps that were never ticked and whose time is over: the start-up sheet asks for all that they would have changed. */
function passed(
  { name, season }: DraftMachine['machine'],
  steps: readonly PlanStep[],
  asOf: IsoDate,
  common: Pick<Warning, 'machine' | 'about'>,
): Warning[] {
  const left = steps.filter((step) => isLayUp(step) && !step.done && step.date === undefined && step.latest! < asOf);
  if (left.length === 0 || asOf <= windowsOf(season).startUpFrom || asOf > windowsOf(season).rideEnd) return [];
  return [
    {
      ...common,
      level: 'note',
      text: `${counted(left.length, 'step')} of ${name}'s lay-up ${left.length === 1 ? 'was' : 'were'} never ticked (${few(left)}), and it is too late for ${left.length === 1 ? 'it' : 'them'} now.`,
      act: 'The start-up sheet goes through all that they would have changed: look at each, done or not.',
    },
  ];
}

/**
 * Look-ins that have passed one after the other without a tick. Common practice: one that is missed is made up for by the next;
 * a charger that has lost its mains or its clip is found by nothing else.
 */
function notLookedIn(
  { machine, battery }: DraftMachine,
  steps: readonly PlanStep[],
  asOf: IsoDate,
  locale: string,
): Warning[] {
  // Who has not laid it up yet, or ticks nothing, is told of that.
  if (steps.some((step) => isLayUp(step) && !step.done) || asOf > machine.season.firstUse) return [];
  const looks = steps.filter(({ phase, date }) => phase === 'look-in' && date !== undefined && date < asOf);
  const lastDone = looks.reduce((last, { date, done }) => (done ? later(last, date!) : last), '');
  // A charge that was missed is told with its battery.
  const left = looks.flatMap(({ date, needs }) => (date! > lastDone && !needs.charger ? [date!] : []));
  const missed = [...new Set(left)].sort();
  if (missed.length < MISSED) return [];
  const isKept = battery?.care === 'maintainer';
  return [
    {
      machine: machine.id,
      about: 'look-in',
      level: isKept ? 'warning' : 'note',
      text: `${missed.length} look-ins at ${machine.name} have passed without a tick, the first on ${writtenDate(missed[0]!, locale)}.`,
      act: `${isKept ? 'Look whether the charger that stays on still has mains and both clips, and read the volts: ' : 'Look in once: '}what nobody looks at for months is found in spring. Looked in already? Tick it on the page of the machine.`,
    },
  ];
}

function few(steps: readonly PlanStep[]): string {
  const said = steps.slice(0, NAMED).map(({ title }) => title);
  const more = steps.length - said.length;
  return [...said, ...(more > 0 ? [`and ${more} more`] : [])].join('; ');
}

/**
 * A season that is over, or dates that were only proposed.
 * @param draft - the machine
 * @param steps - with their days
 * @param asOf - the day the plan is made for
 * @param manner - language of the dates, and units
 */
export function seasonWarnings(
  { machine }: DraftMachine,
  steps: readonly PlanStep[],
  asOf: IsoDate,
  { locale, units }: Manner,
): Warning[] {
  const common = { machine: machine.id, level: 'note' as const, about: 'season' };
  const { season } = machine;
  const written = (date: IsoDate) => writtenDate(date, locale);
  // Until the re-check is made, the season is not over yet for who rides.
  const isOver = asOf > windowsOf(season).rideEnd;
  const level = isOver ? 'warning' : 'note';
  // Nor is the rest, until the machine has been made ready.
  const isReady = steps.every((step) => step.done || !makesReady(step));
  const over: Warning[] =
    season.firstUse < asOf && (isReady || isOver)
      ? [
          {
            ...common,
            level,
            text: `${machine.name}'s rest ended on ${written(season.firstUse)}.`,
            act: `Give the next days of last and first use: in the form, or as lastUse and firstUse in ${machine.file}.`,
          },
        ]
      : [];
  const proposed: Warning[] = season.proposed
    ? [
        {
          ...common,
          text: `The dates of the rest, ${written(season.lastUse)} to ${written(season.firstUse)}, are proposed from the climate. ${inUnits(season.reasons.join(' '), units)}`,
          act: `Give both days once you know them: in the form, or as lastUse and firstUse in ${machine.file}.`,
        },
      ]
    : [];
  return [...over, ...proposed];
}
