/** Dashes before fields that belong to the entry above: a list of which each field was made an entry. */
import type * as z from 'zod/mini';
import type { Path } from './path.ts';
import { keysOf, schemaAt } from './schema-walk.ts';

type Issue = z.core.$ZodIssue;
type Entry = Record<string, unknown>;

/**
 * Finds entries that lack what the entry above has and have nothing that it has: their dash is too many.
 * @param issues - of a file held against its schema
 * @param data - the file
 * @param root - its schema
 * @returns paths of the entries whose dash is too many, and the issues without what only seems to be missing
 */
export function surplusDashes(
  issues: readonly Issue[],
  data: unknown,
  root: z.ZodMiniType,
): { dashes: Path[]; rest: Issue[] } {
  const lacking = new Map<string, { list: Path; missing: Map<number, string[]> }>();
  for (const { path, input } of issues) {
    const [entry, name] = path.slice(-2);
    if (input !== undefined || typeof entry !== 'number' || typeof name !== 'string') continue;
    const list = path.slice(0, -2) as Path;
    const key = JSON.stringify(list);
    const found = lacking.get(key) ?? { list, missing: new Map() };
    found.missing.set(entry, [...(found.missing.get(entry) ?? []), name]);
    lacking.set(key, found);
  }
  const dashes: Path[] = [];
  const seeming = new Set<string>();
  for (const { list, missing } of lacking.values()) {
    const entries = list.reduce<unknown>((node, part) => (node as Entry)[part], data) as readonly unknown[];
    let first = 0;
    let above = fieldsOf(entries[0]);
    for (const [i, entry] of entries.entries()) {
      const own = fieldsOf(entry);
      const known = keysOf(schemaAt(root, [...list, i]));
      const isMore =
        i > 0 &&
        own.length > 0 &&
        own.every((name) => known.includes(name) && !above.includes(name)) &&
        (missing.get(i) ?? []).some((name) => above.includes(name));
      if (!isMore) {
        [first, above] = [i, own];
        continue;
      }
      above = [...above, ...own];
      dashes.push([...list, i]);
      for (const name of missing.get(i)!) seeming.add(JSON.stringify([...list, i, name]));
      for (const name of own) seeming.add(JSON.stringify([...list, first, name]));
    }
  }
  return { dashes, rest: issues.filter((i) => i.input !== undefined || !seeming.has(JSON.stringify(i.path))) };
}

const fieldsOf = (entry: unknown): string[] =>
  typeof entry === 'object' && entry !== null && !Array.isArray(entry) ? Object.keys(entry) : [];
