/**
 * The steps of a list under their machines, in the order in which the machines first come: who works goes from machine to machine, and
 * reads one after the other, however the steps of a session take turns.
 * @param refs - in order of the work
 */
export function groupedByMachine(
  refs: readonly { machine: string; step: string }[],
): { machine: string; steps: string[] }[] {
  const groups = new Map<string, string[]>();
  for (const { machine, step } of refs) groups.set(machine, [...(groups.get(machine) ?? []), step]);
  return [...groups].map(([machine, steps]) => ({ machine, steps }));
}
