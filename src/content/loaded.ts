import type { Checked } from './check.ts';
import { labelOf } from './check.ts';
import type { Path } from './path.ts';
import type { Problem } from './problem.ts';
import type { MachineFile } from './schemas/machine.ts';
import { knownEntries } from './sound.ts';
import type { Source } from './source.ts';

/** One content file, read and held against its schema. */
export interface Loaded<T> {
  id: string;
  source: Source;
  checked: Checked<T>;
}

/** A problem at a path of a file. */
export function problemAt(source: Source, path: Path, what: string, fix: string): Problem {
  return { file: source.file, ...source.at(path), field: labelOf(path, source.data), what, fix };
}

type Named = { readonly id?: string | undefined } | undefined;

/** Ids that stand twice in a list: one problem for each, at the later one. */
export function repeatedIds(source: Source, list: string, entries: readonly Named[] | undefined): Problem[] {
  return knownEntries(entries).flatMap(([i, { id }]) =>
    id === undefined || entries!.findIndex((e) => e?.id === id) === i
      ? []
      : [
          problemAt(
            source,
            [list, i, 'id'],
            `found the id "${id}" a second time, expected each id once`,
            'Give one of them another id.',
          ),
        ],
  );
}

/**
 * The ids of a machine's list, to hold names against.
 * @returns undefined where one of them was refused: any name could be meant by it
 */
export function idsOf(
  { sound, isWhole }: Checked<MachineFile>,
  list: 'assemblies' | 'jobs' | 'services',
): string[] | undefined {
  const entries = sound[list];
  if (entries === undefined) return isWhole(list) ? [] : undefined;
  const ids = entries.map((entry) => entry?.id);
  return ids.includes(undefined) ? undefined : ids.filter((id) => id !== undefined);
}
