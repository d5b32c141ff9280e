import { addDays } from '../dates.ts';
import type { IsoDate } from '../household.ts';
import type { MachinePlan, PlanStep } from '../season-plan.ts';
import { formatQuantity, unitFor } from '../units/index.ts';
import { writtenDay } from '../written.ts';
import { type Draft, machineDraft, machinePath, PHASES, type PlanWithoutEvents } from './draft.ts';
import { cautionLines, fillIn, lines, readerOf, stepLines } from './words.ts';

/**
 * Reminders of the last day for something: coolant, fuel, and steps that have a latest date but found no session.
 * @param plan - the plan
 */
export function deadlineDrafts(plan: PlanWithoutEvents): Draft[] {
  const scheduled = new Set(plan.sessions.flatMap((s) => s.steps.map(({ machine, step }) => `${machine} ${step}`)));
  return plan.machines.flatMap((machine) =>
    [...coolantDrafts(plan, machine), ...fuelDrafts(plan, machine), ...leftOver(plan, machine, scheduled)].filter(
      ({ event }) => event.date <= machine.startUp.firstUse,
    ),
  );
}

function coolantDrafts(plan: PlanWithoutEvents, machine: MachinePlan): Draft[] {
  const { coolant, firstFrostInStore: frost, name, season } = machine;
  if (!coolant) return [];
  const drafts: Draft[] = [];
  if (coolant.testBy !== undefined) {
    drafts.push(
      machineDraft(plan, machine, ['coolant-test'], {
        date: coolant.testBy,
        title: `Test ${name}'s coolant: today at the latest`,
        label: `Test ${name}'s coolant`,
        text: lines(
          coolant.text,
          frost && `The store can reach frost from ${writtenDay(frost, plan.household.locale)} on.`,
        ),
        category: 'lay-up',
      }),
    );
  } else if (coolant.changeBy !== undefined) {
    const swap = coolant.replaceL
      ? `, ${formatQuantity(coolant.replaceL, unitFor('L', 'coolant'), readerOf(plan))}`
      : '';
    drafts.push(
      machineDraft(plan, machine, ['coolant-change'], {
        date: coolant.changeBy,
        title: `Renew ${name}'s coolant${swap}: today at the latest`,
        label: `Renew ${name}'s coolant`,
        text: lines(
          coolant.text,
          `The cold can come near what it stands from ${writtenDay(addDays(coolant.changeBy, 1), plan.household.locale)} on.`,
        ),
        category: 'lay-up',
      }),
    );
  }
  if (coolant.ageDue !== undefined && coolant.ageDue >= season.lastUse) {
    drafts.push(
      machineDraft(plan, machine, ['coolant-age'], {
        date: coolant.ageDue,
        title: `Change ${name}'s coolant: it reaches its age today`,
        label: `Change ${name}'s coolant`,
        text: lines('Old coolant no longer keeps metal from rusting, however little it freezes.', coolant.text),
        category: 'winter',
      }),
    );
  }
  return drafts;
}

function fuelDrafts(plan: PlanWithoutEvents, machine: MachinePlan): Draft[] {
  const { fuel, name } = machine;
  if (!fuel) return [];
  const drafts: Draft[] = [];
  if (fuel.drainedUseBy !== undefined && !machine.steps.some((step) => USE_UP.includes(step.id) && step.done)) {
    const amount = fuel.drainedL === undefined ? '' : `, ${formatQuantity(fuel.drainedL, 'L', readerOf(plan))}`;
    drafts.push(
      machineDraft(plan, machine, ['drained-fuel'], {
        date: fuel.drainedUseBy,
        title: `${fuel.drainedOld ? 'Take away' : 'Use up'} the fuel drained from ${name}${amount}: today at the latest`,
        label: `${fuel.drainedOld ? 'Take away' : 'Use up'} ${name}'s fuel`,
        text: lines(
          fuel.drainedOld
            ? 'It is too old to be used: it goes to the local collection point.'
            : 'Use it fresh in a running engine that can take it; what is left goes to the local collection point.',
          fuel.localLimit.text,
          '! Approved, labelled can; no flame, no pilot light, no charger beside it.',
        ),
        category: 'lay-up',
      }),
    );
  }
  if (fuel.choice === 'fill') {
    const { earliest, latest } = fuel.useBy;
    drafts.push(
      machineDraft(plan, machine, ['fuel-age'], {
        date: earliest,
        title: `${name}'s fuel: from today it may be stale`,
        label: `${name}'s fuel ages`,
        text: lines(
          `It lasts until some day between ${writtenDay(earliest, plan.household.locale)} and ${writtenDay(latest, plan.household.locale)}.`,
          fuel.atFirstUse.text,
        ),
        category: 'start-up',
      }),
    );
  }
  return drafts;
}

/** The step that uses the drained fuel up: the fuel has a reminder of its own on its last day. */
const USE_UP: readonly string[] = ['disposal.petrol', 'disposal.petrol-old'];

/** One reminder for all that a machine's phase leaves over on one day: a household with too little time has many. */
function leftOver(plan: PlanWithoutEvents, machine: MachinePlan, scheduled: ReadonlySet<string>): Draft[] {
  const groups = new Map<string, { phase: PlanStep['phase']; date: IsoDate; steps: PlanStep[] }>();
  for (const step of machine.steps) {
    const unplaced = !step.done && step.date === undefined && !scheduled.has(`${machine.id} ${step.id}`);
    // What is overdue and found no session is told by the machine's warnings.
    if (
      !unplaced ||
      USE_UP.includes(step.id) ||
      step.latest === undefined ||
      step.latest < plan.asOf ||
      step.stage === 'first-ride'
    )
      continue;
    const key = `${step.latest} ${step.phase}`;
    const group = groups.get(key) ?? { phase: step.phase, date: step.latest, steps: [] };
    group.steps.push(step);
    groups.set(key, group);
  }
  const left = new Map<PlanStep['phase'], number>();
  for (const { phase, steps } of groups.values()) if (steps.length > 1) left.set(phase, (left.get(phase) ?? 0) + 1);
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { phase, date, steps }]) => {
      const [first] = steps;
      const { category, page, word } = PHASES[phase];
      const many = steps.length > 1;
      const fromEnd = left.get(phase) ?? 0;
      if (many) left.set(phase, fromEnd - 1);
      const what = many ? `${steps.length} steps of ${word}` : fillIn(first!.title, first!.amounts, readerOf(plan));
      return machineDraft(plan, machine, many ? ['steps', phase, fromEnd] : ['step', first!.id], {
        date,
        title: `${machine.name}: ${what}: today at the latest`,
        label: `${machine.name}: last day`,
        text: lines(
          ...stepLines(steps, readerOf(plan)),
          `No session had room for ${many ? 'them' : 'it'}.`,
          ...cautionLines(steps, readerOf(plan)),
        ),
        category,
        path: machinePath(machine, page),
      });
    });
}
