import type { Checked } from './check.ts';
import { labelOf } from './check.ts';
import type { Path } from './path.ts';
import type { Problem } from './problem.ts';
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

/** Ids that stand twice in a list: one problem for each, at the later one. */
export function repeatedIds(source: Source, list: string, entries: readonly { id: string }[] | undefined): Problem[] {
  return (entries ?? []).flatMap(({ id }, i) =>
    entries!.findIndex((e) => e.id === id) === i
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
