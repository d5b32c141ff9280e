/** Makes a failing case as small as it goes: leaves out files, fields and list items one by one while it still fails. */
import type { Case } from './household.ts';

type Content = Record<string, unknown> | unknown[];

/**
 * The smallest case found that still fails.
 * @param drawn - a case that fails
 * @param fails - whether a case still fails in the same way
 * @param tries - attempts at most
 */
export function smallerCase(drawn: Case, fails: (smaller: Case) => boolean, tries = 400): Case {
  let best = structuredClone(drawn);
  let left = tries;
  for (let before = -1; before !== left && left > 0; ) {
    before = left;
    let changed = false;
    for (const path of pathsOf(best)) {
      if (left <= 0) break;
      const smaller = without(best, path);
      if (!smaller) continue;
      left -= 1;
      if (!fails(smaller)) continue;
      best = smaller;
      changed = true;
    }
    if (!changed) break;
  }
  return best;
}

/** Where each file, field and item stands, large things first, later ones before earlier ones. */
function pathsOf({ files }: Case): (string | number)[][] {
  const paths: (string | number)[][] = [];
  const visit = (value: unknown, path: (string | number)[]): void => {
    if (typeof value !== 'object' || value === null) return;
    const twelve = Array.isArray(value) && value.length === 12;
    for (const key of twelve ? [] : (Array.isArray(value) ? [...value.keys()] : Object.keys(value)).reverse()) {
      paths.push([...path, key]);
      visit((value as Record<string, unknown>)[key], [...path, key]);
    }
  };
  for (const i of [...files.keys()].reverse()) {
    paths.push([i]);
    visit(files[i]!.content, [i]);
  }
  return paths.sort((a, b) => a.length - b.length);
}

function without(drawn: Case, path: (string | number)[]): Case | undefined {
  const copy = structuredClone(drawn);
  const [file, ...inside] = path;
  if (inside.length === 0) {
    if (copy.files[file as number] === undefined) return undefined;
    copy.files.splice(file as number, 1);
    return copy;
  }
  let at: Content | undefined = copy.files[file as number]?.content;
  for (const key of inside.slice(0, -1)) at = (at as Record<string, Content> | undefined)?.[key];
  const last = inside.at(-1)!;
  if (typeof at !== 'object' || at === null || !Object.hasOwn(at, last)) return undefined;
  if (Array.isArray(at)) at.splice(last as number, 1);
  else delete at[last];
  return copy;
}
