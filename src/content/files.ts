/** What each path in the content folder is, and which paths cannot be. */

import { nearest, type Problem, printable } from './problem.ts';
import { ID_RULE, isId } from './schemas/parts.ts';

export interface ContentFile {
  /** Inside the content folder, with forward slashes. */
  path: string;
  bytes: Uint8Array | string;
}

export type Kind = 'household' | 'place' | 'climate' | 'machine' | 'procedure' | 'record';

export interface Sorted {
  kind: Kind;
  id: string;
  file: ContentFile;
}

const FOLDERS: Record<string, Kind> = {
  places: 'place',
  climates: 'climate',
  machines: 'machine',
  procedures: 'procedure',
  records: 'record',
};

/**
 * Sorts the files of a folder by kind and id; what looks like content and is none is a problem, not silence.
 * Files that are plainly something else (pictures, README, weather files) are left alone.
 */
export function sortFiles(files: readonly ContentFile[]): { sorted: Sorted[]; problems: Problem[] } {
  const sorted: Sorted[] = [];
  const problems: Problem[] = [];
  const seen = new Map<string, string>();
  const say = (path: string, what: string, fix: string) =>
    problems.push({ file: printable(path), line: 1, column: 1, field: '', what, fix });

  for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))) {
    const parts = file.path.split('/');
    const name = parts.at(-1)!;
    if (parts.some((p) => p === '..' || p === '') || file.path.includes('\\') || file.path.includes('\0')) {
      say(file.path, 'found a path that leads out of its folder, expected a plain file name', 'Rename the file.');
      continue;
    }
    if (parts.some((p) => p.startsWith('.')) || !/\.ya?ml/i.test(name)) continue;
    if (!name.endsWith('.yaml')) {
      say(
        file.path,
        `found the ending of "${printable(name)}", expected ".yaml"`,
        `Rename the file to ${printable(name.replace(/\.ya?ml.*$/i, ''))}.yaml.`,
      );
      continue;
    }
    const id = name.slice(0, -'.yaml'.length);
    const kind = kindOf(parts);
    if (kind === undefined) {
      const folder = parts[0]!;
      const near = parts.length > 1 ? nearest(folder, Object.keys(FOLDERS)) : nearest(id, ['household']);
      const expected =
        parts.length > 1
          ? FOLDERS[folder]
            ? 'no folders inside it'
            : (near ?? Object.keys(FOLDERS).join(', '))
          : 'household.yaml here, and all else in folders';
      say(
        file.path,
        `found a content file ${parts.length > 1 ? `in the folder "${printable(parts.slice(0, -1).join('/'))}"` : 'at the top'}, expected ${expected}`,
        near && parts.length > 1 ? `Move it to ${near}/.` : `Move it to one of ${Object.keys(FOLDERS).join(', ')}.`,
      );
      continue;
    }
    if (kind === 'record') {
      if (!isId(parts[1]!))
        say(
          file.path,
          `found the folder "${printable(parts[1]!)}", expected a machine's id: ${ID_RULE}`,
          'Rename the folder.',
        );
      else sorted.push({ kind, id: parts[1]!, file });
      continue;
    }
    if (!isId(id)) {
      say(
        file.path,
        `found the file name "${printable(id)}", which is the id, expected ${ID_RULE}`,
        `Rename the file, for instance to ${slug(id)}.yaml.`,
      );
      continue;
    }
    const key = `${kind}/${id}`;
    if (seen.has(key)) {
      say(file.path, `found a second ${kind} "${id}", expected each id once`, `Rename this file or ${seen.get(key)}.`);
      continue;
    }
    seen.set(key, file.path);
    sorted.push({ kind, id, file });
  }
  // Two names that differ in case alone are one file on some disks.
  const lower = new Map<string, string>();
  for (const { path } of files) {
    const other = lower.get(path.toLowerCase());
    if (other !== undefined && other !== path)
      say(
        path,
        `found a name that differs from ${printable(other)} by capitals only, expected names that differ`,
        'Rename one of them.',
      );
    lower.set(path.toLowerCase(), path);
  }
  return { sorted, problems };
}

function kindOf(parts: readonly string[]): Kind | undefined {
  if (parts.length === 1) return parts[0] === 'household.yaml' ? 'household' : undefined;
  const kind = FOLDERS[parts[0]!];
  if (kind === 'record') return parts.length === 3 ? kind : undefined;
  return parts.length === 2 ? kind : undefined;
}

/** A file name made from any text. */
export function slug(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '');
  return plain === '' ? 'machine' : plain;
}
