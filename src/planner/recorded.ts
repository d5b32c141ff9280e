/** What a machine's record says of steps, held against the steps that there are. */
import type { IsoDate, Machine, Procedure } from './household.ts';
import type { PlanStep, Warning } from './season-plan.ts';

/** Phases whose steps can be left out on purpose: a check before the ride cannot. */
const CAN_BE_LEFT_OUT: readonly PlanStep['phase'][] = ['lay-up', 'look-in', 'swap'];

/**
 * The machine with only those steps left out that can be.
 * @param machine - with its record
 * @param steps - all steps of its plan
 */
export function withSoundSkips(machine: Machine, steps: readonly PlanStep[]): Machine {
  const phases = new Map(steps.map((step) => [step.id, step.phase]));
  const skippedSteps = machine.skippedSteps?.filter(({ stepId }) => canBeLeftOut(phases.get(stepId)));
  return { ...machine, skippedSteps };
}

/** What was left out on purpose, in words for the machine's notes. */
export function leftOutNotes(machine: Machine, steps: readonly PlanStep[]): { date: IsoDate; text: string }[] {
  return (machine.skippedSteps ?? []).flatMap(({ stepId, date, why }) => {
    const step = steps.find(({ id }) => id === stepId);
    return step ? [{ date, text: `Left out on purpose: ${step.title}${why === undefined ? '' : ` (${why})`}` }] : [];
  });
}

/**
 * What of the record goes by: names that no step has, and checks that cannot be left out.
 *
 * A step that this season's plan has no use for is no fault: last year's record may name it.
 * @param machine - as written
 * @param steps - all steps of its plan
 * @param procedures - the practice that steps are named after
 */
export function recordWarnings(
  machine: Machine,
  steps: readonly PlanStep[],
  procedures: readonly Procedure[],
): Warning[] {
  const names = new Set(procedures.flatMap((p) => p.steps.map((step) => `${p.id}.${step.id}`)));
  const isKnown = (id: string) => names.has(id.split('.').slice(0, 2).join('.')) || /^(strip|job)\./.test(id);
  const phases = new Map(steps.map((step) => [step.id, step.phase]));
  const note = (text: string, act: string): Warning => ({
    machine: machine.id,
    level: 'warning',
    text,
    act,
    about: 'record',
  });
  const skipped = machine.skippedSteps ?? [];
  const ids = [...new Set([...machine.doneSteps, ...skipped].map(({ stepId }) => stepId))];
  return [
    ...ids
      .filter((id) => !isKnown(id))
      .map((id) =>
        note(
          `The record of ${machine.name} names the step "${id}", and there is no such step: nothing was ticked by it.`,
          'Correct the name in the record; the steps and their names stand in plan.json.',
        ),
      ),
    ...skipped
      .filter(({ stepId }) => phases.has(stepId) && !canBeLeftOut(phases.get(stepId)))
      .map(({ stepId }) =>
        note(
          `The record of ${machine.name} leaves out "${stepId}", which cannot be left out: it stays on the sheet.`,
          'Only steps of the lay-up and of look-ins can be left out. Take the line out of the record.',
        ),
      ),
  ];
}

function canBeLeftOut(phase: PlanStep['phase'] | undefined): boolean {
  return phase !== undefined && CAN_BE_LEFT_OUT.includes(phase);
}
