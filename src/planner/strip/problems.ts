import { type Node, removalOrder } from './order.ts';

/** Something wrong in a machine's assemblies or jobs. */
export interface StripProblem {
  /** Path in the machine with list positions: "assemblies.2.behind.0". */
  path: string;
  /** What was found, what is expected. */
  message: string;
}

type Name = string | undefined;

/** The names that assemblies and jobs have and use; undefined for one that is not known, since it could not be read. */
export interface StripNames {
  assemblies: readonly { id: Name; behind: readonly Name[] }[];
  jobs: readonly { id: Name; assemblies: readonly Name[]; after: readonly Name[] }[];
  services: readonly { assemblies: readonly Name[] }[];
  notes: readonly { assemblyId?: Name }[];
}

/**
 * What is wrong in a machine's assemblies and jobs: names that lead nowhere, names given twice, and cycles.
 *
 * Of a kind with a name that is not known, any other name could be meant by it: none leads nowhere. Where a name is given
 * twice, what follows what is not known, and no cycle is told.
 * @param machine - as read from content
 * @returns all problems, in the order of the content; empty when none
 */
export function stripProblems(machine: StripNames): StripProblem[] {
  const problems: StripProblem[] = [];
  const assemblies = machine.assemblies.map((a) => a.id);
  const jobs = machine.jobs.map((j) => j.id);
  const named = (path: string, kind: string, known: readonly Name[], id: Name) => {
    if (id === undefined || known.includes(id) || known.includes(undefined)) return;
    const list = known.length > 0 ? `one of ${known.join(', ')}` : `no ${kind}, since this machine has none`;
    problems.push({ path, message: `found the ${kind} "${id}", expected ${list}` });
  };
  const each = (path: string, kind: string, known: readonly Name[], ids: readonly Name[]) =>
    ids.forEach((id, i) => {
      named(`${path}.${i}`, kind, known, id);
    });
  const once = (path: string, kind: string, ids: readonly Name[]) =>
    ids.forEach((id, i) => {
      if (id === undefined || ids.indexOf(id) === i) return;
      problems.push({ path: `${path}.${i}.id`, message: `found a second ${kind} "${id}", expected each name once` });
    });

  once('assemblies', 'assembly', assemblies);
  once('jobs', 'job', jobs);
  machine.assemblies.forEach((a, i) => {
    each(`assemblies.${i}.behind`, 'assembly', assemblies, a.behind);
  });
  machine.jobs.forEach((j, i) => {
    each(`jobs.${i}.assemblies`, 'assembly', assemblies, j.assemblies);
    each(`jobs.${i}.after`, 'job', jobs, j.after);
  });
  machine.services.forEach((s, i) => {
    each(`services.${i}.assemblies`, 'assembly', assemblies, s.assemblies);
  });
  machine.notes.forEach((note, i) => {
    named(`notes.${i}.assemblyId`, 'assembly', assemblies, note.assemblyId);
  });
  for (const cycle of cyclesOf(machine.assemblies)) {
    problems.push({
      path: `assemblies.${assemblies.indexOf(cycle[0]!)}.behind`,
      message: `found assemblies that lie behind one another: ${ring(cycle)}, expected an order in which they come off`,
    });
  }
  for (const cycle of cyclesOf(machine.jobs.map((j) => ({ id: j.id, behind: j.after })))) {
    problems.push({
      path: `jobs.${jobs.indexOf(cycle[0]!)}.after`,
      message: `found jobs that wait for one another: ${ring(cycle)}, expected an order in which they are done`,
    });
  }
  return problems;
}

/** Names of a ring that are told: a longer one is known by its beginning. */
const MOST_NAMES = 12;

function ring(names: readonly string[]): string {
  const told = names.length > MOST_NAMES ? [...names.slice(0, MOST_NAMES), '…', names.at(-1)!] : names;
  return told.join(' -> ');
}

function cyclesOf(entries: readonly { id: Name; behind: readonly Name[] }[]): string[][] {
  const nodes = entries.flatMap(({ id, behind }): Node[] =>
    id === undefined ? [] : [{ id, behind: behind.filter((b) => b !== undefined) }],
  );
  const ids = new Set(nodes.map(({ id }) => id));
  return ids.size < nodes.length ? [] : removalOrder(nodes, ids).cycles;
}
