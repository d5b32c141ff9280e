/** Picked files -> the files of one content folder: archives unpacked, the folder found in which they lie. */
import { unzipSync } from 'fflate';
import type { LoadedFile } from './messages.ts';

const CONTENT = /\.ya?ml|\.epw$/i;
const FOLDERS = ['places', 'climates', 'machines', 'procedures', 'records'];
/** No file that is larger when it is unpacked is read [bytes]. */
const LARGEST = 9 * 1024 * 1024;

/**
 * The content files among those that were picked or dropped.
 * @param picked - with the paths that they were picked by
 * @returns with their paths inside the content folder
 */
export function contentOf(picked: readonly LoadedFile[]): LoadedFile[] {
  const found = picked.flatMap((file) => (/\.zip$/i.test(file.path) ? unpacked(file) : [file]));
  const files = found.filter(({ path }) => CONTENT.test(path) && !/(^|\/)\./.test(path));
  const root = rootOf(files.map((file) => file.path));
  return files.map(({ path, bytes }) => ({ path: placed(inside(path, root), bytes), bytes }));
}

/** What is in an archive; nothing where it is none. */
function unpacked({ bytes }: LoadedFile): LoadedFile[] {
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => CONTENT.test(name) && originalSize <= LARGEST,
    });
    return Object.entries(files).map(([path, content]) => ({ path, bytes: content }));
  } catch {
    return [];
  }
}

/** The folder in which household.yaml lies, or above one of the known folders. */
function rootOf(paths: readonly string[]): string {
  const home = paths.filter((p) => p.split('/').at(-1) === 'household.yaml').sort((a, b) => a.length - b.length)[0];
  if (home !== undefined) return home.slice(0, -'household.yaml'.length);
  for (const path of paths) {
    const parts = path.split('/');
    const at = parts.findIndex((part) => FOLDERS.includes(part));
    if (at > 0) return `${parts.slice(0, at).join('/')}/`;
  }
  return '';
}

const inside = (path: string, root: string) => (path.startsWith(root) ? path.slice(root.length) : path);

/** Where a file belongs that was picked without its folder, by the schema that it names in its first line. */
function placed(path: string, bytes: Uint8Array): string {
  if (path.includes('/')) return path;
  const head = new TextDecoder().decode(bytes.subarray(0, 200));
  const kind = /\$schema=\S*\/(machine|place|climate|procedure)\.schema\.json/.exec(head)?.[1];
  return kind === undefined ? path : `${kind}s/${path}`;
}
