/** What the plan lists for the whole household, under each machine. */
import type { LedgerItem, Session } from '../planner/season-plan.ts';

/**
 * The steps of a list under their machines, in the order in which the machines first come: who works goes from machine to machine, and
 * reads one after the other, however the steps of a session take turns.
 * @param refs - in order of the work
 */
export function groupedByMachine(
  refs: readonly { machine: string; step: string }[],
): { machine: string; steps: string[] }[] {
  return [...grouped(refs)].map(([machine, own]) => ({ machine, steps: own.map(({ step }) => step) }));
}

/** Lists under their machines, kept with the list they were made of: every page asks for its own part. */
const ledgers = new WeakMap<readonly LedgerItem[], ReadonlyMap<string, LedgerItem[]>>();
const orders = new WeakMap<readonly Session[], ReadonlyMap<string, string[]>>();

/**
 * What one machine has in the ledger.
 * @param ledger - of the household's plan
 * @param machine - id
 */
export const ledgerOf = (ledger: readonly LedgerItem[], machine: string): readonly LedgerItem[] =>
  keptIn(ledgers, ledger, () => grouped(ledger)).get(machine) ?? [];

/**
 * The ids of one machine's steps in the order of the sessions.
 * @param sessions - of the household's plan
 * @param machine - id
 */
export const orderOf = (sessions: readonly Session[], machine: string): readonly string[] =>
  keptIn(
    orders,
    sessions,
    () => new Map(groupedByMachine(sessions.flatMap(({ steps }) => steps)).map((one) => [one.machine, one.steps])),
  ).get(machine) ?? [];

function grouped<T extends { machine: string }>(list: readonly T[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const group = groups.get(one.machine);
    if (group) group.push(one);
    else groups.set(one.machine, [one]);
  }
  return groups;
}

function keptIn<K extends object, V>(kept: WeakMap<K, V>, of: K, make: () => V): V {
  const found = kept.get(of) ?? make();
  kept.set(of, found);
  return found;
}
