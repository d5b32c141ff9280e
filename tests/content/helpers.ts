import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { type ContentFile, type ReadResult, readContent } from '../../src/content/read.ts';

const HOUSEHOLDS = join(import.meta.dirname, '..', 'households');

export const SMALLEST = readFileSync(join(HOUSEHOLDS, 'smallest', 'machines', 'juniper.yaml'), 'utf8');

/** Files of a test household. */
export function household(name = 'smallest'): ContentFile[] {
  const folder = join(HOUSEHOLDS, name);
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path: relative(folder, path).split(sep).join('/'), bytes: readFileSync(path) }));
}

/** A test household with some files put in or replaced. */
export function readWith(files: Record<string, string>, name = 'smallest', asOf = '2026-11-25'): ReadResult {
  const over = Object.entries(files).map(([path, bytes]) => ({ path, bytes }));
  return readContent([...household(name).filter((f) => !(f.path in files)), ...over], { asOf });
}
