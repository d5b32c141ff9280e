/** Content files from a picker or a drop: several files, or a whole folder. */
import type { LoadedFile } from './messages.ts';

interface Picked {
  path: string;
  file: File;
}

/** Files that content is made of, and archives; pictures and the like are left on the device unread. */
const CONTENT = /\.ya?ml|\.(?:epw|zip)$/i;
/** One year of hours is the largest that is read [bytes]. */
const LARGEST = 9 * 1024 * 1024;

export interface Loaded {
  files: LoadedFile[];
  /** Newest change of a file, ISO 8601 in UTC. */
  revised: string;
}

/**
 * Takes files that are picked within an element, or dropped on it.
 * @param drop - marked while files are held over it
 * @param load - told of what was read
 */
export function filesInto(root: HTMLElement, drop: HTMLElement, load: (loaded: Loaded) => Promise<void>): void {
  for (const input of root.querySelectorAll<HTMLInputElement>('[data-pick]'))
    input.addEventListener('change', async () => {
      if (input.files?.length) await load(await ofPicker(input.files));
      input.value = '';
    });
  for (const name of ['dragover', 'dragleave', 'drop'] as const)
    root.addEventListener(name, async (event) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      drop.classList.toggle('is-over', name === 'dragover');
      if (name === 'drop') await load(await ofDrop(event.dataTransfer));
    });
}

/** The files of a picker; `webkitRelativePath` has the folder. */
function ofPicker(list: FileList): Promise<Loaded> {
  return read([...list].map((file) => ({ path: file.webkitRelativePath || file.name, file })));
}

/** The files of a drop, folders looked through. */
async function ofDrop(data: DataTransfer): Promise<Loaded> {
  const entries = [...data.items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  const picked: Picked[] = [];
  await Promise.all(entries.map((entry) => visit(entry, picked)));
  return read(picked);
}

async function visit(entry: FileSystemEntry, into: Picked[]): Promise<void> {
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject));
    into.push({ path: entry.fullPath.replace(/^\//, ''), file });
    return;
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (some.length === 0) return;
    await Promise.all(some.map((inner) => visit(inner, into)));
  }
}

async function read(picked: readonly Picked[]): Promise<Loaded> {
  const wanted = picked.filter(({ path, file }) => CONTENT.test(path) && file.size <= LARGEST);
  const files = await Promise.all(
    wanted.map(async ({ path, file }) => ({ path, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
  const newest = Math.max(0, ...wanted.map(({ file }) => file.lastModified));
  return { files, revised: new Date(Math.floor(newest / 1000) * 1000).toISOString() };
}
