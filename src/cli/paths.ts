/**
 * What a command is told from outside: where the content is, where the site goes, which day it is. Each is an option, or the
 * environment variable whose place the option takes; processes that a command starts are told by the environment alone.
 */
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ParseArgsOptionsConfig, parseArgs } from 'node:util';
import { DateTime } from 'luxon';

/** The project's own folder. */
export const PROJECT = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Options that commands share. */
const SHARED = {
  content: { variable: 'IDLE_CONTENT', value: '<folder>' },
  out: { variable: 'IDLE_OUT', value: '<folder>' },
  today: { variable: 'IDLE_TODAY', value: '<date>' },
} as const;

type Shared = keyof typeof SHARED;

/**
 * Reads the command line; ends the command with a plain message where something on it is not known.
 * @param shared - which of the shared options the command takes; they go into the environment
 * @param own - options of this command alone, as `parseArgs` takes them
 * @param allowPositionals - whether words that are no options may stand on it
 * @returns values of the command's own options, and the words
 */
export function readCommandLine<Own extends ParseArgsOptionsConfig>(
  shared: readonly Shared[],
  own: Own = {} as Own,
  allowPositionals = false,
) {
  const parsed = parsedOr(
    () =>
      parseArgs({
        options: { ...own, ...Object.fromEntries(shared.map((name) => [name, { type: 'string' as const }])) } as Own,
        allowPositionals,
      }),
    [...shared.map((name) => `--${name} ${SHARED[name].value}`), ...Object.keys(own).map((name) => `--${name}`)],
  );
  const values = parsed.values as Record<string, unknown>;
  for (const name of shared) {
    const given = values[name];
    if (given === '') stop(`--${name}: found nothing, expected ${SHARED[name].value}.`);
    if (typeof given === 'string') process.env[SHARED[name].variable] = given;
  }
  const day = process.env.IDLE_TODAY;
  if (shared.includes('today') && day !== undefined && !isDate(day))
    stop(
      `${values.today === undefined ? 'IDLE_TODAY' : '--today'}: found "${day}", expected a date such as 2026-10-25.`,
    );
  return parsed;
}

/** The household's content, or the demo household. */
export function contentFolder(): string {
  return resolve(process.env.IDLE_CONTENT || resolve(PROJECT, 'content'));
}

/** Where the finished site goes; `dist/` where nothing is said. */
export function siteFolder(): string {
  return resolve(process.env.IDLE_OUT ?? resolve(PROJECT, 'dist'));
}

/** Ends a command that cannot go on. */
export function stop(message: string): never {
  console.error(message);
  process.exit(1);
}

const isDate = (text: string) => /^\d{4}-\d\d-\d\d$/.test(text) && DateTime.fromISO(text).isValid;

/** What is wrong on the command line, in words of our own: those of Node speak to programmers. */
function parsedOr<T>(parse: () => T, known: readonly string[]): T {
  try {
    return parse();
  } catch (error) {
    const { code = '', message } = error as NodeJS.ErrnoException;
    const found = /'(.*?)'/.exec(message)?.[1] ?? '';
    const expected = known.length === 0 ? 'no option' : known.join(', ');
    if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') return stop(`found the option "${found}", expected ${expected}.`);
    if (code === 'ERR_PARSE_ARGS_UNEXPECTED_POSITIONAL') return stop(`found "${found}", expected ${expected}.`);
    if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE')
      return stop(
        `found "${found.split(/[ ,]/)[0]}" ${/does not take/.test(message) ? 'with a value' : 'without its value'}, expected ${expected}.`,
      );
    throw error;
  }
}
