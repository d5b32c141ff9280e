/** What each path in the content folder is, and which paths cannot be. */

import { ID_RULE, isId, slug } from './ids.ts';
import { nearest, type Problem, printable } from './problem.ts';

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
  const paths = new Set(files.map((file) => file.path));
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
      const stem = name.replace(/\.ya?ml.*$/i, '');
      const taken = paths.has([...parts.slice(0, -1), `${stem}.yaml`].join('/'));
      say(
        file.path,
        `found the ending of "${printable(name)}", expected ".yaml"`,
        taken
          ? `Delete it, or move it out of the folder, if it is a copy of ${printable(stem)}.yaml.`
          : `Rename the file to ${printable(stem)}.yaml.`,
      );
      continue;
    }
    const id = name.slice(0, -'.yaml'.length);
    const kind = kindOf(parts);
    if (kind === undefined) {
      say(file.path, ...misplaced(parts, id, paths));
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

/** What is found and what to do where a content file lies in no folder of its kind. */
function misplaced(parts: readonly string[], id: string, paths: ReadonlySet<string>): [what: string, fix: string] {
  const folders = Object.keys(FOLDERS).join(', ');
  const [folder] = parts;
  if (parts.length === 1) {
    const what = 'found a content file at the top, expected household.yaml here, and all else in folders';
    if (nearest(id, ['household']) === undefined) return [what, `Move it to one of ${folders}.`];
    const taken = paths.has('household.yaml');
    return [what, taken ? 'Delete it, or move it away: there is one household.' : 'Rename the file to household.yaml.'];
  }
  const where = `found a content file in the folder "${printable(parts.slice(0, -1).join('/'))}", expected `;
  if (folder === 'records')
    return [`${where}a folder for each machine inside records`, `Move it to records/<id of its machine>/.`];
  if (Object.hasOwn(FOLDERS, folder!)) return [`${where}no folders inside it`, `Move it to ${folder}/.`];
  const near = nearest(folder!, Object.keys(FOLDERS));
  if (near && parts.length === 2) return [where + near, `Rename the folder to ${near}.`];
  return [where + (near ?? folders), near ? `Move it to ${near}/.` : `Move it to one of ${folders}.`];
}

function kindOf(parts: readonly string[]): Kind | undefined {
  if (parts.length === 1) return parts[0] === 'household.yaml' ? 'household' : undefined;
  const kind = Object.hasOwn(FOLDERS, parts[0]!) ? FOLDERS[parts[0]!] : undefined;
  if (kind === 'record') return parts.length === 3 ? kind : undefined;
  return parts.length === 2 ? kind : undefined;
}
