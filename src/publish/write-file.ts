/** Files of a built site. */
import { closeSync, mkdirSync, openSync, writevSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Writes a file, and makes the folder it lies in.
 * @param path - of the file
 * @param parts - of what is in it, one after the other: large texts joined to one are written several times as slowly
 */
export function writeFile(path: string, ...parts: (string | Uint8Array)[]): void {
  mkdirSync(dirname(path), { recursive: true });
  const file = openSync(path, 'w');
  try {
    writeParts(file, parts);
  } finally {
    closeSync(file);
  }
}

/**
 * Writes to an open file.
 * @param file - as `openSync` gives it
 * @param parts - one after the other
 */
export function writeParts(file: number, parts: readonly (string | Uint8Array)[]): void {
  const bytes = parts.map((part) => (typeof part === 'string' ? Buffer.from(part) : part));
  const size = bytes.reduce((sum, { length }) => sum + length, 0);
  const written = writevSync(file, bytes);
  if (written !== size) throw new Error(`${written} of ${size} bytes were written: is the disk full?`);
}
