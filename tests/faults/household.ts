/** A fault: the sound workshop household with some of its files replaced by broken ones. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { openClimateLibrary } from '../../src/content/climate-library.ts';
import { type ContentFile, type ReadResult, readContent } from '../../src/content/read.ts';

export const FAULTS = import.meta.dirname;
const SOUND = join(FAULTS, '..', 'households', 'workshop');
const PROCEDURES = join(FAULTS, '..', '..', 'content', 'procedures');
const LIBRARY = join(FAULTS, '..', '..', 'public', 'climate', 'normals.json');

/** The day on which all fault households are read. */
export const AS_OF = '2026-11-25';

export interface Expected {
  problems: { file: string; line: number; column?: number; field: string; words: string[] }[];
  /** Sound files that are taken away. */
  without?: string[];
  /** A file made too large by repeating a line, so that it need not be stored. */
  grow?: { file: string; line: string; times: number };
}

const procedures = () => (bundled ??= filesOf(PROCEDURES).map((f) => ({ ...f, path: `procedures/${f.path}` })));
let bundled: ContentFile[] | undefined;

const library = openClimateLibrary(JSON.parse(readFileSync(LIBRARY, 'utf8')));

/** All files below a folder. */
export function filesOf(folder: string): ContentFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path: relative(folder, path).split(sep).join('/'), bytes: readFileSync(path) }));
}

export function faultNames(): string[] {
  return readdirSync(FAULTS, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);
}

export function expectedOf(name: string): Expected {
  return JSON.parse(readFileSync(join(FAULTS, name, 'expected.json'), 'utf8'));
}

/** The sound household with these files over it. */
export function readOver(over: readonly ContentFile[], without: readonly string[] = []): ReadResult {
  const files = new Map([...filesOf(SOUND), ...over].map((file) => [file.path, file]));
  for (const path of without) files.delete(path);
  return readContent([...files.values()], { asOf: AS_OF, library, procedures: procedures() });
}

export function readFault(name: string): ReadResult {
  const { without, grow } = expectedOf(name);
  const over = filesOf(join(FAULTS, name)).filter((file) => file.path !== 'expected.json');
  if (grow) {
    const file = over.find((f) => f.path === grow.file)!;
    file.bytes = new TextEncoder().encode(
      new TextDecoder().decode(file.bytes as Uint8Array) + `${grow.line}\n`.repeat(grow.times),
    );
  }
  return readOver(over, without);
}
