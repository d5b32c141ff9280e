/** Hourly weather of a place, from a file of the content folder in EPW form. */
import { checkNormals, EpwError, normalsOf, parseEpw } from '../planner/climate/index.ts';
import type { ContentFile } from './files.ts';
import type { Found } from './found-climate.ts';
import { printable, shown } from './problem.ts';

/** The files that hourly weather is looked for in, and paths of those that could not be read. */
export interface WeatherFiles {
  files: readonly ContentFile[];
  unread: readonly string[];
}

/** Largest hourly file: 8760 lines of some 400 characters are 3.5 MB [bytes]. */
const MAX_EPW_BYTES = 8 * 1024 * 1024;

/**
 * The climate of an hourly file.
 * @param id - of the place
 * @param path - as the place names it, inside the content folder
 * @param say - a problem of the place's file
 */
export function hourlyClimate(
  id: string,
  path: string,
  { files, unread }: WeatherFiles,
  say: (path: string[], what: string, fix: string) => Found,
): Found {
  if (
    path.startsWith('/') ||
    path.includes('\\') ||
    path.split('/').some((p) => p === '..') ||
    /^[a-z]+:/i.test(path)
  ) {
    return say(
      ['hourly'],
      `found the path ${shown(path)}, expected a file inside the content folder`,
      'Copy the file into climates/ and write climates/<name>.epw.',
    );
  }
  const file = files.find((f) => f.path === path) ?? files.find((f) => f.path === `climates/${path}`);
  if (!file && [path, `climates/${path}`].some((one) => unread.includes(one))) return { problems: [] };
  if (!file)
    return say(
      ['hourly'],
      `found no file ${shown(path)} in the content folder, expected an hourly weather file`,
      'Copy the file into climates/ and write climates/<name>.epw.',
    );
  if (file.bytes.length > MAX_EPW_BYTES)
    return say(
      ['hourly'],
      `found a weather file of ${Math.round(file.bytes.length / 1048576)} MB, expected at most 8 MB`,
      'Take the file as it was published, one year of hours.',
    );
  try {
    const text = typeof file.bytes === 'string' ? file.bytes : new TextDecoder('utf-8').decode(file.bytes);
    const climate = parseEpw(text, { id });
    checkNormals(normalsOf(climate));
    return { climate, problems: [] };
  } catch (error) {
    if (error instanceof RangeError)
      return {
        problems: [
          {
            file: file.path,
            line: 1,
            column: 1,
            field: '',
            what: `found weather that no climate has: ${error.message}`,
            fix: 'Take the file as it was published, with humidity in percent.',
          },
        ],
      };
    if (!(error instanceof EpwError)) throw error;
    // A file of another kind fails on every line; its first line says so.
    const told = error.problems[0]?.text.includes('LOCATION') ? error.problems.slice(0, 1) : error.problems.slice(0, 5);
    return {
      problems: told.map((p) => ({
        file: file.path,
        line: p.line,
        column: p.column,
        field: '',
        what: p.text.includes(' found, ')
          ? printable(p.text).replace(/^(.*) found, (.*) expected$/, 'found $1, expected $2')
          : `found ${printable(p.text)}`,
        fix: 'Take the file as it was published, one whole year of hours.',
      })),
    };
  }
}
