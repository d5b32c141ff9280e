import { addDays, later } from '../dates.ts';
import { lacksDay } from '../made-ready.ts';
import type { MachinePlan, PlanStep } from '../season-plan.ts';
import { formatQuantity } from '../units/index.ts';
import { useWord } from '../use-word.ts';
import { counted, listText, withinSentence, writtenDay } from '../written.ts';
import { type Draft, machineDraft, machinePath, type PlanWithoutEvents } from './draft.ts';
import { cautionLines, fillIn, lines, readerOf, stepLines } from './words.ts';

/**
 * Reminders of the end of the rest: ready, the day before the first use where it has work of its own, first use, and the re-check
 * after the first ride.
 *
 * The re-check is the only reminder that may lie after the first use.
 * @param plan - the plan
 */
export function startUpDrafts(plan: PlanWithoutEvents): Draft[] {
  return plan.machines.flatMap((machine) => [
    ...(machine.startUp.ready < machine.startUp.firstUse ? [ready(plan, machine)] : []),
    ...eve(plan, machine),
    firstUse(plan, machine),
    ...recheck(plan, machine),
  ]);
}

function ready(plan: PlanWithoutEvents, machine: MachinePlan): Draft {
  const open = plan.ledger.filter((item) => item.machine === machine.id);
  return machineDraft(plan, machine, ['ready'], {
    date: machine.startUp.ready,
    title: `${machine.name} ready: start-up is done by today`,
    label: `${machine.name} ready`,
    text: lines(
      open.length > 0 && 'Nothing of this may be open any more:',
      ...open.map((item) => `- ${item.state}${item.where ? ` (${item.where})` : ''}`),
      `First use is on ${writtenDay(machine.startUp.firstUse, plan.household.locale)}.`,
    ),
    category: 'start-up',
    path: machinePath(machine, 'start-up/'),
  });
}

function firstUse(plan: PlanWithoutEvents, machine: MachinePlan): Draft {
  const ride = machine.steps.filter((step) => isRide(machine, step) && !step.done);
  const lacking = machine.steps.filter(lacksDay);
  const stops = machine.steps.flatMap((s) => (s.doNotRide ? [fillIn(s.doNotRide, s.amounts, readerOf(plan))] : []));
  const pressures = machine.tyres.map((t) => {
    const isAssumed = machine.assumptions.some((a) => a.field === `tyres.${t.position}.pressure`);
    const figure = formatQuantity(t.normalKPa, 'kPa', readerOf(plan));
    return `${t.position} ${isAssumed ? `as the placard or manual says, about ${figure} is usual` : figure}`;
  });
  return machineDraft(plan, machine, ['first-use'], {
    date: machine.startUp.firstUse,
    title: `${machine.name}: first use after the rest`,
    label: `${machine.name}: first use`,
    text: lines(
      `It has rested since ${writtenDay(machine.season.lastUse, plan.household.locale)}.`,
      lacking.length > 0 &&
        `! Not before its start-up is done: ${counted(lacking.length, 'step')} of it ${lacking.length === 1 ? 'has' : 'have'} found no day yet.`,
      pressures.length > 0 && `Tyres: ${listText(pressures)}.`,
      machine.fuel && `Fuel: ${machine.fuel.atFirstUse.text}`,
      ...stepLines(ride, readerOf(plan)),
      stops.length > 0 && 'Leave it standing if:',
      ...[...new Set(stops)].map((stop) => `! ${stop}`),
    ),
    category: 'start-up',
    path: machinePath(machine, 'start-up/'),
  });
}

/** A step of the first ride itself, which is the first use; what comes after it is the re-check. */
const isRide = (machine: MachinePlan, step: PlanStep) =>
  step.stage === 'first-ride' && step.latest === machine.season.firstUse;

/** A step of the day before the first use, which is its last day. */
const isEve = (machine: MachinePlan, { stage, latest }: PlanStep) =>
  stage === 'first-ride' && latest !== undefined && latest < machine.season.firstUse;

function eve(plan: PlanWithoutEvents, machine: MachinePlan): Draft[] {
  const steps = machine.steps.filter((step) => isEve(machine, step) && !step.done);
  const [first] = steps;
  if (first?.date === undefined) return [];
  return [
    machineDraft(plan, machine, ['eve'], {
      date: first.date,
      title: `${machine.name}: ${withinSentence(first.title)}`,
      label: `${machine.name}: day before first use`,
      text: lines(...stepLines(steps, readerOf(plan)), ...cautionLines(steps, readerOf(plan))),
      category: 'start-up',
      path: machinePath(machine, 'start-up/'),
    }),
  ];
}

function recheck(plan: PlanWithoutEvents, machine: MachinePlan): Draft[] {
  const steps = machine.steps.filter(
    (step) => step.stage === 'first-ride' && !step.done && !isRide(machine, step) && !isEve(machine, step),
  );
  if (steps.length === 0) return [];
  const dayAfter = addDays(machine.startUp.firstUse, 1);
  const date = steps.reduce((last, step) => later(last, dayOf(plan, machine, step) ?? last), dayAfter);
  return [
    machineDraft(plan, machine, ['re-check'], {
      date,
      title: `${machine.name}: re-check after the first ${useWord(machine.kind)}`,
      label: `Re-check ${machine.name}`,
      text: lines(...stepLines(steps, readerOf(plan)), ...cautionLines(steps, readerOf(plan))),
      category: 'start-up',
      path: machinePath(machine, 'start-up/'),
    }),
  ];
}

/** The day the agenda gave a step, from its session or from itself. */
function dayOf(plan: PlanWithoutEvents, machine: MachinePlan, step: PlanStep): string | undefined {
  const session = plan.sessions.find((s) => s.steps.some((x) => x.machine === machine.id && x.step === step.id));
  return session?.date ?? step.date;
}
