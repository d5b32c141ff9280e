/** The content folder on disk. Nothing outside the folder is read: links that lead out of it are not followed. */
import { lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { type ClimateLibrary, openClimateLibrary } from './climate-library.ts';
import { isContentPath } from './files.ts';
import type { Problem } from './problem.ts';
import { type ContentFile, type ReadOptions, type ReadResult, readContent } from './read.ts';
import { MAX_BYTES } from './text.ts';

/** More than this is not a household's content but a mistaken folder. */
const MAX_FILES = 50_000;

const MAX_FOLDER_DEPTH = 4;

/** Weather files are larger than anything a person writes [bytes]. */
const MAX_WEATHER_BYTES = 9 * 1024 * 1024;

export interface Folder {
  files: ContentFile[];
  problems: Problem[];
  /** Newest change of a content file, ISO 8601 in UTC. */
  changed?: string | undefined;
}

/**
 * Reads all content files of a folder.
 * @param folder - absolute path
 */
export function readFiles(folder: string): Folder {
  const result: Folder = { files: [], problems: [] };
  const say = (path: string, what: string, fix: string) =>
    result.problems.push({ file: path, line: 1, column: 1, field: '', what, fix });
  let root: string;
  try {
    root = realpathSync(folder);
    if (!statSync(root).isDirectory()) throw new Error('not a folder');
  } catch {
    say(
      '',
      `found no folder ${folder}, expected the content folder`,
      'Correct --content (or IDLE_CONTENT), or make the folder.',
    );
    return result;
  }
  let newest = 0;
  const namesIn = (path: string): string[] => {
    try {
      return readdirSync(path).sort();
    } catch {
      const inside = relative(root, path).split(sep).join('/');
      say(inside, 'found a folder that cannot be read, expected one that can', 'Give yourself the right to read it.');
      return [];
    }
  };
  const visit = (path: string, depth: number): void => {
    for (const name of namesIn(path)) {
      if (name.startsWith('.')) continue;
      const full = join(path, name);
      const inside = relative(root, full).split(sep).join('/');
      let real: string;
      try {
        real = realpathSync(full);
      } catch {
        if (isContent(inside) && name.includes('\ufffd'))
          say(inside, 'found a file name that is not UTF-8, expected letters a–z and digits', 'Rename the file.');
        else if (isContent(inside))
          say(inside, 'found a link that leads nowhere, expected a file', 'Delete the link, or put the file here.');
        continue;
      }
      if (lstatSync(full).isSymbolicLink() && real !== root && !real.startsWith(root + sep)) {
        say(
          inside,
          'found a link that leads out of the content folder, expected a file inside it',
          'Put the file itself here; links are not followed out of the folder.',
        );
        continue;
      }
      const stats = statSync(full);
      if (stats.isDirectory()) {
        if (isContent(inside)) say(inside, 'found a folder, expected a file', `Rename the folder, or put a file here.`);
        else if (lstatSync(full).isSymbolicLink())
          say(
            inside,
            'found a link to a folder, expected the folder itself',
            'Put the folder here; links are not followed.',
          );
        else if (depth < MAX_FOLDER_DEPTH) visit(full, depth + 1);
        continue;
      }
      if (!isContent(inside)) continue;
      if (!stats.isFile()) {
        say(inside, 'found something that is no file, expected a file', 'Delete it, or put a file here.');
        continue;
      }
      if (result.files.length >= MAX_FILES) {
        if (result.files.length === MAX_FILES)
          say(
            '',
            `found more than ${MAX_FILES} files, expected a household's content`,
            'Correct --content (or IDLE_CONTENT).',
          );
        return;
      }
      const isWeather = /\.epw$/i.test(name);
      const limit = isWeather ? MAX_WEATHER_BYTES : MAX_BYTES;
      if (stats.size > limit) {
        say(
          inside,
          `found a file of ${Math.round(stats.size / 1024)} kB, expected at most ${limit / 1024} kB`,
          isWeather
            ? 'Take the file as it was published, one whole year of hours.'
            : 'Split the file, or take out what does not belong in it.',
        );
        continue;
      }
      try {
        result.files.push({ path: inside, bytes: readFileSync(full) });
      } catch {
        say(inside, 'found a file that cannot be read, expected one that can', 'Give yourself the right to read it.');
        continue;
      }
      newest = Math.max(newest, stats.mtimeMs);
    }
  };
  visit(root, 0);
  if (newest > 0) result.changed = new Date(Math.floor(newest / 1000) * 1000).toISOString();
  return result;
}

function isContent(path: string): boolean {
  return isContentPath(path.split('/')) || /\.epw$/i.test(path);
}

/**
 * Reads a household from its folder.
 * @param folder - the content folder, absolute
 * @param options - the day, and the project's own folders of procedures and of climate normals
 */
export function readFolder(
  folder: string,
  options: Pick<ReadOptions, 'asOf'> & { procedures?: string | undefined; library?: string | undefined },
): ReadResult {
  const { files, problems, changed } = readFiles(folder);
  const bundled = options.procedures === undefined ? [] : bundledProcedures(options.procedures, folder);
  const revised = sourceDate() ?? changed;
  const library =
    options.library !== undefined && files.some(asksForStation) ? readLibrary(options.library) : undefined;
  const unread = problems.map(({ file }) => file);
  const result = readContent(files, { asOf: options.asOf, revised, procedures: bundled, library, unread });
  const all = [...problems, ...result.problems];
  return all.length > 0 ? { problems: all } : result;
}

/** The instant that a build is told to go by in place of file times: seconds since 1970. */
function sourceDate(): string | undefined {
  const told = process.env.SOURCE_DATE_EPOCH;
  const date = new Date(Number(told || Number.NaN) * 1000);
  return Number.isNaN(date.getTime()) ? undefined : date.toISOString();
}

/**
 * The files of the bundled procedures; none where they are the household's own.
 * @param procedures - their folder
 * @param folder - the content folder
 */
export function bundledProcedures(procedures: string, folder: string): ContentFile[] {
  const inside = join(folder, 'procedures');
  try {
    if (realpathSync(inside) === realpathSync(procedures)) return [];
  } catch {
    // A household without procedures of its own takes the bundled ones.
  }
  return readFiles(procedures).files.map((f) => ({ path: `procedures/${f.path}`, bytes: f.bytes }));
}

/** The library is large; it is opened only for a household that names a station, in a folder of whatever name. */
function asksForStation(file: ContentFile): boolean {
  return (
    !/^(?:climates|machines|procedures|records)\//.test(file.path) &&
    typeof file.bytes !== 'string' &&
    /\b(near|station)["']?\s*:/.test(new TextDecoder().decode(file.bytes))
  );
}

function readLibrary(path: string): ClimateLibrary {
  return openClimateLibrary(JSON.parse(readFileSync(path, 'utf8')));
}
