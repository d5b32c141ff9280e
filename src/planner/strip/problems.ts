import type { Machine } from '../household.ts';
import { removalOrder } from './order.ts';

/** Something wrong in a machine's assemblies or jobs. */
export interface StripProblem {
  /** Path in the machine with list positions: "assemblies.2.behind.0". */
  path: string;
  /** What was found, what is expected. */
  message: string;
}

/**
 * What is wrong in a machine's assemblies and jobs: names that lead nowhere, names given twice, and cycles.
 * @param machine - as read from content
 * @returns all problems, in the order of the content; empty when none
 */
export function stripProblems(machine: Pick<Machine, 'assemblies' | 'jobs' | 'services' | 'notes'>): StripProblem[] {
  const problems: StripProblem[] = [];
  const assemblies = machine.assemblies.map((a) => a.id);
  const jobs = machine.jobs.map((j) => j.id);
  const named = (path: string, kind: string, known: string[], ids: readonly string[]) =>
    ids.forEach((id, i) => {
      if (known.includes(id)) return;
      const list = known.length > 0 ? `one of ${known.join(', ')}` : `no ${kind}, since this machine has none`;
      problems.push({ path: `${path}.${i}`, message: `found the ${kind} "${id}", expected ${list}` });
    });
  const once = (path: string, kind: string, ids: string[]) =>
    ids.forEach((id, i) => {
      if (ids.indexOf(id) === i) return;
      problems.push({ path: `${path}.${i}.id`, message: `found a second ${kind} "${id}", expected each name once` });
    });

  once('assemblies', 'assembly', assemblies);
  once('jobs', 'job', jobs);
  machine.assemblies.forEach((a, i) => {
    named(`assemblies.${i}.behind`, 'assembly', assemblies, a.behind);
  });
  machine.jobs.forEach((j, i) => {
    named(`jobs.${i}.assemblies`, 'assembly', assemblies, j.assemblies);
    named(`jobs.${i}.after`, 'job', jobs, j.after);
  });
  machine.services.forEach((s, i) => {
    named(`services.${i}.assemblies`, 'assembly', assemblies, s.assemblies);
  });
  machine.notes.forEach((note, i) => {
    if (note.assemblyId !== undefined && !assemblies.includes(note.assemblyId)) {
      const message = `found the assembly "${note.assemblyId}", expected one of ${assemblies.join(', ') || 'none'}`;
      problems.push({ path: `notes.${i}.assemblyId`, message });
    }
  });
  for (const cycle of removalOrder(machine.assemblies, new Set(assemblies)).cycles) {
    problems.push({
      path: `assemblies.${assemblies.indexOf(cycle[0]!)}.behind`,
      message: `found assemblies that lie behind one another: ${cycle.join(' -> ')}, expected an order in which they come off`,
    });
  }
  const jobsAsNodes = machine.jobs.map((j) => ({ id: j.id, behind: j.after }));
  for (const cycle of removalOrder(jobsAsNodes, new Set(jobs)).cycles) {
    problems.push({
      path: `jobs.${jobs.indexOf(cycle[0]!)}.after`,
      message: `found jobs that wait for one another: ${cycle.join(' -> ')}, expected an order in which they are done`,
    });
  }
  return problems;
}
