/** What each path in the content folder is, and which paths cannot be. */

import { ID_RULE, isDeviceName, isId, slug } from './ids.ts';
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

/** What a file that is not read was to be: what names it names something that is there. */
export interface Refused {
  kind: Kind;
  id: string;
}

export interface SortedFiles {
  sorted: Sorted[];
  problems: Problem[];
  refused: Refused[];
}

/**
 * Sorts the files of a folder by kind and id; what looks like content and is none is a problem, not silence.
 * Files that are plainly something else (pictures, README, weather files) are left alone.
 * @param files - all that could be read
 * @param unread - paths of those that could not, which is told elsewhere
 */
export function sortFiles(files: readonly ContentFile[], unread: readonly string[] = []): SortedFiles {
  const paths = new Set(files.map((file) => file.path));
  const read = new Set<string>();
  const result: SortedFiles = {
    sorted: [],
    problems: capitalsOnly(paths),
    refused: unread.filter((path) => isContent(path.split('/'))).flatMap(meantBy),
  };
  for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))) {
    const parts = file.path.split('/');
    if (!isContent(parts)) continue;
    const fault = faultOf(parts, paths) ?? (read.has(file.path) ? secondOf(parts) : undefined);
    read.add(file.path);
    if (fault) {
      const [what, fix] = fault;
      result.problems.push({ file: printable(file.path), line: 1, column: 1, field: '', what, fix });
      const [meant, ...others] = meantBy(file.path);
      // What is wrong inside it is told in the same run, where it is plain what it is and no other file has its place.
      if (meant && others.length === 0 && !paths.has(pathOf(meant))) result.sorted.push({ ...meant, file });
      else result.refused.push(...meantBy(file.path));
      continue;
    }
    const kind = kindOf(parts)!;
    result.sorted.push({ kind, id: kind === 'record' ? parts[1]! : stemOf(parts.at(-1)!), file });
  }
  return result;
}

const stemOf = (name: string) => name.replace(/\.(?:ya?ml.*|json)$/is, '');

/** Two names that differ in case alone are one file on some disks. */
function capitalsOnly(paths: Iterable<string>): Problem[] {
  const lower = new Map<string, string>();
  return [...paths].flatMap((path) => {
    const other = lower.get(path.toLowerCase());
    lower.set(path.toLowerCase(), path);
    if (other === undefined) return [];
    const what = `found a name that differs from ${printable(other)} by capitals only, expected names that differ`;
    return [{ file: printable(path), line: 1, column: 1, field: '', what, fix: 'Rename one of them.' }];
  });
}

/** True for what looks like content; a path that leads somewhere else is looked at whatever it is called. */
function isContent(parts: readonly string[]): boolean {
  if (leadsOut(parts)) return true;
  return !parts.some((p) => p.startsWith('.')) && isContentPath(parts);
}

/** YAML by its ending anywhere; JSON where content lies: it would be passed over in silence. */
export function isContentPath(parts: readonly string[]): boolean {
  const name = parts.at(-1)!;
  return /\.ya?ml/i.test(name) || (parts.length > 1 && Object.hasOwn(FOLDERS, parts[0]!) && /\.json$/i.test(name));
}

const leadsOut = (parts: readonly string[]) => parts.some((p) => p === '..' || p === '' || /[\\\0]/.test(p));

/** What is found where a list of files has one twice. */
function secondOf(parts: readonly string[]): [what: string, fix: string] {
  const name = printable(parts.at(-1)!);
  return [`found a second ${kindOf(parts)} "${stemOf(name)}", expected each id once`, 'Rename one of the two.'];
}

/** What keeps a path from being content that is read: what is found, and what to do. */
function faultOf(parts: readonly string[], paths: ReadonlySet<string>): [what: string, fix: string] | undefined {
  const name = parts.at(-1)!;
  if (leadsOut(parts))
    return ['found a path that leads out of its folder, expected a plain file name', 'Rename the file.'];
  const stem = stemOf(name);
  const beside = (id: string) => paths.has([...parts.slice(0, -1), `${id}.yaml`].join('/'));
  if (name !== `${stem}.yaml`)
    return [
      `found the ending of "${printable(name)}", expected ".yaml"`,
      beside(stem)
        ? `Delete it, or move it out of the folder, if it is a copy of ${printable(stem)}.yaml.`
        : `Rename the file to ${printable(stem)}.yaml.`,
    ];
  const kind = kindOf(parts);
  if (kind === undefined) return misplaced(parts, stem, paths);
  if (kind === 'record')
    return isId(parts[1]!)
      ? undefined
      : [`found the folder "${printable(parts[1]!)}", expected a machine's id: ${ID_RULE}`, 'Rename the folder.'];
  if (isId(stem))
    return isDeviceName(stem)
      ? [
          `found the file name "${stem}", which some systems keep for a device, expected another id`,
          `Rename the file, for instance to ${freeName(slug(stem), beside)}.yaml.`,
        ]
      : undefined;
  const what = `found the file name "${printable(stem)}", which is the id, expected ${ID_RULE}`;
  const original = copyOf(stem);
  const free = freeName(slug(original ?? stem), beside);
  if (original === undefined || !beside(slug(original)))
    return [what, `Rename the file, for instance to ${free}.yaml.`];
  return [
    what,
    `Delete it, if it is a copy of ${slug(original)}.yaml; if it is another ${kind}, rename it, for instance to ${free}.yaml.`,
  ];
}

/** The name behind one that a program gives to a copy: "bike (1)", "bike - Copy", "Copy of bike". */
function copyOf(stem: string): string | undefined {
  const plain = stem.replace(/^copy of /i, '').replace(/\s*\(\d+\)$|[\s_-]+copy(?:\s*\(?\d+\)?)?$/i, '');
  return plain === stem ? undefined : plain;
}

/** An id that no file beside has. */
function freeName(id: string, taken: (id: string) => boolean): string {
  let n = 1;
  let name = id;
  while (taken(name)) name = `${id}-${++n}`;
  return name;
}

function pathOf({ kind, id }: Refused): string {
  return kind === 'household'
    ? 'household.yaml'
    : `${Object.keys(FOLDERS).find((f) => FOLDERS[f] === kind)}/${id}.yaml`;
}

/** What a file that is not read was most likely meant to be; of one at the top the kind is anybody's guess. */
function meantBy(path: string): Refused[] {
  const parts = path.split('/');
  const stem = stemOf(parts.at(-1)!);
  const id = slug(copyOf(stem) ?? stem);
  if (parts.length === 1)
    return nearest(id, ['household'])
      ? [{ kind: 'household', id: 'household' }]
      : Object.values(FOLDERS).map((kind) => ({ kind, id }));
  const folder = nearest(parts[0]!, Object.keys(FOLDERS));
  const kind = folder === undefined ? undefined : kindOf([folder, ...parts.slice(1)]);
  return kind === undefined ? [] : [{ kind, id: kind === 'record' ? slug(parts[1]!) : id }];
}

/** What is found and what to do where a content file lies in no folder of its kind. */
function misplaced(parts: readonly string[], id: string, paths: ReadonlySet<string>): [what: string, fix: string] {
  const folders = Object.keys(FOLDERS).join(', ');
  const [folder] = parts;
  if (parts.length === 1) {
    const what = 'found a content file at the top, expected household.yaml here, and all else in folders';
    if (nearest(id, ['household']) === undefined)
      return [what, `Move it to one of ${folders}, or out of this folder, if it is none of these.`];
    const taken = paths.has('household.yaml');
    return [what, taken ? 'Delete it, or move it away: there is one household.' : 'Rename the file to household.yaml.'];
  }
  if (id === 'household' && !paths.has('household.yaml'))
    return ['found household.yaml in a folder, expected it at the top', 'Move it to the top of the content folder.'];
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
