import type { MachinePlan } from '../season-plan.ts';
import { withinSentence, writtenDay } from '../written.ts';
import { type Draft, machineDraft, type PlanWithoutEvents } from './draft.ts';

/**
 * Reminders of papers: the day one runs out during the rest, and, where it is suspended over the rest, the days to suspend
 * it and to put it in force again.
 * @param plan - the plan
 */
export function paperworkDrafts(plan: PlanWithoutEvents): Draft[] {
  return plan.machines.flatMap((machine) => machine.paperwork.flatMap((paper) => paperDrafts(plan, machine, paper)));
}

function paperDrafts(plan: PlanWithoutEvents, machine: MachinePlan, paper: MachinePlan['paperwork'][number]): Draft[] {
  const { name, layUp, startUp, season } = machine;
  const what = withinSentence(paper.what);
  const { firstUse } = startUp;
  const draft = (act: string, date: string, title: string, text: string) =>
    machineDraft(plan, machine, ['paperwork', paper.id, act], {
      date,
      title,
      label: `${name}: ${what}`,
      text,
      category: 'paperwork',
    });
  const drafts: Draft[] = [];
  if (paper.date >= season.lastUse && paper.date <= firstUse) {
    drafts.push(
      draft(
        'due',
        paper.date,
        `${name}'s ${what}: last day`,
        `It runs out or is due on ${writtenDay(paper.date, plan.household.locale)}, before the first use on ${writtenDay(firstUse, plan.household.locale)}.`,
      ),
    );
  }
  if (paper.pausedOverRest) {
    drafts.push(
      draft(
        'pause',
        layUp.done,
        `${name}'s ${what}: suspend it for the rest`,
        `The machine is laid up until ${writtenDay(firstUse, plan.household.locale)}. Ask what stays covered while it stands.`,
      ),
      draft(
        'resume',
        startUp.ready,
        `${name}'s ${what}: put it in force again`,
        `It has to be in force before the first use on ${writtenDay(firstUse, plan.household.locale)}.`,
      ),
    );
  }
  return drafts.filter(({ event }) => event.date <= firstUse);
}
