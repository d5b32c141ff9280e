import type { Machine, Procedure, ProcedureStep } from '../household.ts';
import type { LedgerItem, PlanStep } from '../season-plan.ts';
import type { LedgerProblem } from './problem.ts';
import { itemId } from './settle.ts';
import { BEFORE_FIRST_START, STAGES } from './start-up.ts';

export interface Ledger {
  items: LedgerItem[];
  /** Empty where every item opened is closed, after it was opened, once. */
  problems: LedgerProblem[];
}

/**
 * The open-items ledger of one machine: each item with the step that opens it and the step that closes it.
 * @param machine - with what was found open
 * @param steps - as `settleSteps` gives them: in the order in which they are done
 * @param procedures - where the steps come from, for state and place in the file
 * @returns items in the order they are opened, and what does not come out even
 */
export function buildLedger(machine: Machine, steps: readonly PlanStep[], procedures: readonly Procedure[]): Ledger {
  const problems: LedgerProblem[] = [];
  const items: LedgerItem[] = machine.asLeft.map((left) => ({
    ...described(machine, itemId(machine, left.item), steps, procedures),
    machine: machine.id,
    openedBy: 'as left',
    closedBy: '',
    where: left.where,
    since: left.since,
  }));
  const openItem = (id: string) => items.find((item) => item.item === id && item.closedBy === '');
  for (const step of steps) {
    for (const id of step.closes) {
      const item = openItem(id);
      if (item) item.closedBy = step.id;
      else
        problems.push({
          ...placed(machine, step, 'closes', id, procedures),
          what: `found that step ${step.id} closes "${id}", which is not open at that point`,
          fix: 'Close it once, after the step that opens it; or take the line away.',
        });
    }
    for (const id of step.opens) {
      const item = openItem(id);
      if (item === undefined)
        items.push({
          ...described(machine, id, [step], procedures),
          machine: machine.id,
          openedBy: step.id,
          closedBy: '',
        });
      else if (item.openedBy !== 'as left')
        problems.push({
          ...placed(machine, step, 'opens', id, procedures),
          what: `found that step ${step.id} opens "${id}", which ${item.openedBy} has opened already`,
          fix: 'Open it in one step only, or give the second thing a name of its own.',
        });
    }
  }
  for (const item of items) {
    if (item.closedBy !== '') continue;
    const step = steps.find((candidate) => candidate.id === item.openedBy);
    const where = step
      ? placed(machine, step, 'opens', item.item, procedures)
      : { file: machine.file, line: 1, column: 1, field: 'asLeft', item: item.item };
    problems.push({
      ...where,
      what: `found "${item.item}" open (by ${item.openedBy}) on ${machine.name} and no step that closes it`,
      fix: `Add a start-up step with closes: [${item.item}] that applies to this machine.`,
    });
  }
  return { items, problems: [...problems, ...startProblems(machine, steps, procedures)] };
}

/** Engine start before the things that must be behind it. */
function startProblems(
  machine: Machine,
  steps: readonly PlanStep[],
  procedures: readonly Procedure[],
): LedgerProblem[] {
  const sheet = steps.filter((step) => step.phase === 'start-up');
  const start = sheet.findIndex((step) => step.stage === 'first-start');
  if (start < 0) return [];
  return sheet
    .slice(start + 1)
    .filter((step) => step.stage !== undefined && BEFORE_FIRST_START.includes(step.stage))
    .map((step) => ({
      ...placed(machine, step, 'after', step.closes[0] ?? '', procedures),
      what: `found step ${step.id} (${step.stage}) after the first start ${sheet[start]!.id}`,
      fix: `Put it before the first start: stages run ${STAGES.join(', ')}.`,
    }));
}

/**
 * What the item is, from the assembly or from the step that opens it; kinds of machine leave an item of one name in states of
 * their own.
 * @param steps - those that may have opened it on this machine; where none did, the first that opens such an item tells
 */
function described(
  machine: Machine,
  id: string,
  steps: readonly PlanStep[],
  procedures: readonly Procedure[],
): Pick<LedgerItem, 'item' | 'state' | 'safetyCritical'> {
  const assembly = machine.assemblies.find((candidate) => `assembly:${candidate.id}` === id);
  if (assembly) return { item: id, state: `${assembly.name}: off`, safetyCritical: assembly.safetyCritical };
  const [name, ...rest] = id.split(':') as [string, ...string[]];
  const opener = steps.find(({ opens }) => opens.includes(id));
  const candidates = openersOf(procedures).filter(({ each, open }) => open.item === id || (each && open.item === name));
  const found = (candidates.find((candidate) => isStepOf(opener, candidate)) ?? candidates[0])?.open;
  if (!found) return { item: id, state: id.replaceAll('-', ' '), safetyCritical: false };
  return {
    item: id,
    state: found.item === id ? found.state : `${found.state} (${rest.join(':')})`,
    safetyCritical: found.safetyCritical,
  };
}

/** Whether a step of a plan is this step of a procedure. */
const isStepOf = (step: PlanStep | undefined, { id }: Opener): boolean =>
  step !== undefined && (step.id === id || step.id.startsWith(`${id}.`));

interface Opener {
  /** "<procedure>.<step>". */
  id: string;
  /** The step is repeated, and each repetition opens an item of its own. */
  each: boolean;
  open: ProcedureStep['opens'][number];
}

/** What opens something, kept with the procedures: every machine asks for the same. */
const openers = new WeakMap<readonly Procedure[], Opener[]>();

function openersOf(procedures: readonly Procedure[]): Opener[] {
  const known = openers.get(procedures);
  if (known) return known;
  const found = procedures
    .flatMap(({ id, steps }) => steps.map((step) => ({ ...step, id: `${id}.${step.id}` })))
    .flatMap(({ id, each, opens }) => opens.map((open) => ({ id, each: each !== undefined, open })));
  openers.set(procedures, found);
  return found;
}

/** Where in the content a concrete step's item stands. */
function placed(
  machine: Machine,
  step: PlanStep,
  list: 'opens' | 'closes' | 'after',
  item: string,
  procedures: readonly Procedure[],
): Pick<LedgerProblem, 'file' | 'line' | 'column' | 'field' | 'item'> {
  const procedure = procedures.find((candidate) => step.id.startsWith(`${candidate.id}.`));
  const name = step.id.split('.')[1];
  const index = procedure?.steps.findIndex((candidate) => candidate.id === name) ?? -1;
  const field = `${step.id} ${list} ${item}`.trim();
  if (!procedure || index < 0) return { file: machine.file, line: 1, column: 1, field, item };
  const key = itemKey(procedure.steps[index]!, index, list, item);
  return { file: procedure.file, ...spotOf(procedure, index, key), field, item };
}

/** Where an entry of a step stands, or the step; the top of the file where that is not known. */
export function spotOf(procedure: Procedure, index: number, key: string): { line: number; column: number } {
  return procedure.at[key] ?? procedure.at[`steps.${index}`] ?? { line: 1, column: 1 };
}

/** Key of an item's place in `Procedure.at`. */
export function itemKey(step: ProcedureStep, index: number, list: 'opens' | 'closes' | 'after', item: string): string {
  const names = list === 'opens' ? step.opens.map((open) => open.item) : list === 'closes' ? step.closes : step.after;
  const n = names.findIndex((name) => name === item || item.startsWith(`${name}:`));
  return n < 0 ? `steps.${index}` : `steps.${index}.${list}.${n}`;
}
