import type { Procedure } from '../household.ts';

/**
 * The library with the user's own procedures: one with the same id takes the library's place, another is added.
 * @param library - bundled procedures
 * @param own - the user's
 * @returns in the order of the work, then by id; one that takes another's place names it
 */
export function mergeProcedures(library: readonly Procedure[], own: readonly Procedure[]): Procedure[] {
  const byId = new Map(library.map((procedure) => [procedure.id, procedure]));
  for (const procedure of own) byId.set(procedure.id, { ...procedure, replaces: byId.get(procedure.id) });
  return [...inWorkOrder([...byId.values()])];
}

/** Lists already in order, kept with the list they were made of: every machine asks for the same. */
const ordered = new WeakMap<readonly Procedure[], readonly Procedure[]>();

/** Procedures by their place in the work; the id decides between equals, so that the result never depends on file order. */
export function inWorkOrder(procedures: readonly Procedure[]): readonly Procedure[] {
  const known = ordered.get(procedures);
  if (known) return known;
  const sorted = [...procedures].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  ordered.set(procedures, sorted);
  return sorted;
}
