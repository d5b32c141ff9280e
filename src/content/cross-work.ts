/** Names of assemblies and jobs, held against one another. */
import { type StripNames, stripProblems } from '../planner/strip/index.ts';
import type { Sound } from './cross-answers.ts';
import { type Loaded, problemAt } from './loaded.ts';
import { nearest, type Problem } from './problem.ts';
import type { MachineFile } from './schemas/machine.ts';

/** Names that lead nowhere, names given twice, and cycles. */
export function workProblems(
  source: Loaded<MachineFile>['source'],
  checked: Loaded<MachineFile>['checked'],
): Problem[] {
  const found = stripProblems(stripNames(checked));
  const doubled = found.flatMap(({ message }) => / a second (\w+)/.exec(message)?.[1] ?? []);
  return found.flatMap(({ path, message }) => {
    const [, kind, name, list] = /found the (\w+) "([^"]*)", expected one of (.*)$/.exec(message) ?? [];
    const near = name && list ? nearest(name, list.split(', ')) : undefined;
    // Of two entries with one name, the other may have been meant to be called so.
    if (kind && near === undefined && doubled.includes(kind)) return [];
    const parts = path.split('.').map((p) => (/^\d+$/.test(p) ? Number(p) : p === 'assemblyId' ? 'assembly' : p));
    return [problemAt(source, parts, message, near ? `Write ${near}.` : fixOf(message))];
  });
}

function fixOf(message: string): string {
  if (message.includes('->')) return 'Take one of the names out of its list.';
  if (message.includes('a second')) return 'Give one of them another id.';
  return message.includes('has none')
    ? 'Add it, or take the name away.'
    : 'Write one of these, or add what is missing.';
}

/** A list of which nothing is known: it may have any name. */
const UNKNOWN = [{ id: undefined }];

function stripNames({ sound, isWhole }: Loaded<MachineFile>['checked']): StripNames {
  const all = <L extends 'assemblies' | 'jobs'>(list: L) =>
    sound[list] ?? (isWhole(list) ? [] : (UNKNOWN as NonNullable<Sound[L]>));
  return {
    assemblies: all('assemblies').map((a) => ({ id: a?.id, behind: a?.behind ?? [] })),
    jobs: all('jobs').map((j) => ({ id: j?.id, assemblies: j?.assemblies ?? [], after: j?.after ?? [] })),
    services: (sound.services ?? []).map((s) => ({ assemblies: s?.assemblies ?? [] })),
    notes: (sound.notes ?? []).map((n) => ({ assemblyId: n?.assembly })),
  };
}
