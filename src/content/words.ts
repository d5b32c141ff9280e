/** A schema's complaint in the words of the message: what was found, what is expected, what to do. */
import type * as z from 'zod/mini';
import { alsoCalled } from './also-called.ts';
import { degreesIn } from './coordinates.ts';
import { dateCodeFix } from './date-code.ts';
import { isDiesel, NO_DIESEL } from './diesel.ts';
import type { Path } from './path.ts';
import { nearest, shown } from './problem.ts';
import type { Said } from './schemas/parts.ts';

/**
 * @param write - the fix where the complaint has none of its own: "Write it like …"
 * @param needed - the field cannot be left out
 */
export function wordsOf(
  issue: z.core.$ZodIssue,
  write: string,
  path: Path,
  needed = false,
): { what: string; fix: string } {
  const found = shown(issue.input);
  switch (issue.code) {
    case 'custom': {
      const said = (issue.params ?? { expected: issue.message }) as Said;
      return { what: `found ${said.found ?? found}, expected ${said.expected}`, fix: said.fix ?? write };
    }
    case 'invalid_value': {
      const values = issue.values.map(String);
      const near = ['string', 'number'].includes(typeof issue.input)
        ? wordMeant(String(issue.input), values)
        : undefined;
      const fix = isDiesel(issue.input)
        ? NO_DIESEL
        : near
          ? `Write ${near}.`
          : values.length === 1
            ? `Write ${values[0]}.`
            : 'Write one of these.';
      return { what: `found ${found}, expected ${values.length === 1 ? '' : 'one of '}${values.join(', ')}`, fix };
    }
    case 'too_small':
      return {
        what: `found ${sizeOf(issue.input)}, expected at least ${issue.minimum}`,
        fix: codeFix(issue, path) ?? write,
      };
    case 'too_big':
      return {
        what: `found ${sizeOf(issue.input)}, expected at most ${issue.maximum}`,
        fix: tooBig(issue, path, write),
      };
    case 'invalid_type': {
      if (issue.expected === 'boolean') {
        const word = String(issue.input).toLowerCase();
        if (word === 'true' || word === 'false')
          return { what: `found ${found} in quotes, expected true or false`, fix: `Take the quotes away: ${word}.` };
        const meant = ['yes', 'on', 'y', '1'].includes(word)
          ? 'true'
          : ['no', 'off', 'n', '0'].includes(word)
            ? 'false'
            : undefined;
        return {
          what: `found ${found}, expected true or false`,
          fix: meant ? `Write ${meant}.` : 'Write true or false.',
        };
      }
      const wanted = issue.message || kindName(issue.expected);
      if (issue.input === null) {
        const hash = issue.expected === 'string' ? ' Text that begins with # stands in quotes.' : '';
        const sign = typeof path.at(-1) === 'number' ? 'dash' : 'colon';
        return {
          what: `found nothing after the ${sign}, expected ${wanted}`,
          fix: `${write}${hash}${needed ? '' : ' Or delete the line.'}`,
        };
      }
      if (issue.expected === 'string' && ['number', 'boolean'].includes(typeof issue.input) && !issue.message) {
        return { what: `found ${found}, expected text`, fix: `Put it in quotes: "${String(issue.input)}".` };
      }
      if (issue.expected === 'array' && typeof path.at(-1) === 'string') return listWords(issue.input, write);
      if (
        /^(number|int)$/.test(issue.expected) &&
        typeof issue.input === 'string' &&
        /^-?\d+(\.\d+)?$/.test(issue.input)
      )
        return { what: `found ${found} in quotes, expected ${wanted}`, fix: `Take the quotes away: ${issue.input}.` };
      const alone = /^(number|int)$/.test(issue.expected) ? numberIn(issue.input, path) : undefined;
      return { what: `found ${found}, expected ${wanted}`, fix: alone === undefined ? write : `Write ${alone}.` };
    }
    default:
      return { what: `found ${found}, expected another value`, fix: write };
  }
}

/** The number that stands with its unit, or with a typographic minus, where a number alone is asked for. */
function numberIn(input: unknown, path: Path): string | undefined {
  if (typeof input !== 'string') return undefined;
  const name = String(path.findLast((part) => typeof part === 'string'));
  if (/^(?:near|latitudeDeg)$/.test(name) && /['′’]/.test(input)) return degreesIn(input);
  if (/minutes/i.test(name)) return timeIn(input, 'min');
  if (path[0] === 'hours') return timeIn(input, 'h');
  const [, number, unit = ''] = /^([-−–]?\d+(?:\.\d+)?)\s*([\p{L}°%'"′″].{0,20})?$/u.exec(input.trim()) ?? [];
  const isOther =
    // Degrees and minutes, two amounts: the first figure alone says something else.
    /\d/.test(unit.replace(/[a-z][23]\b/gi, '')) ||
    (/[CF]$/.test(name) && /[CF]$/i.test(unit) && !unit.toUpperCase().endsWith(name.slice(-1)));
  if (number === undefined || isOther) return undefined;
  const isSouthOrWest = /^(?:near|latitudeDeg)$/.test(name) && /^°?\s*[SW]/i.test(unit);
  return `${isSouthOrWest ? '-' : ''}${number.replace(/^[−–]/, '-')}`;
}

/** The hours of a day are asked for [min]. */
const DAY_MIN = 24 * 60;

/** A stretch of time as people write it, "2:30", "2 h 30", "150 min", in the unit that is asked for. */
function timeIn(text: string, unit: 'min' | 'h'): string | undefined {
  const [, clockH, clockMin, hours, rest, minutes] =
    /^(?:(\d+):([0-5]\d)|(\d+(?:\.\d+)?)\s*h(?:ou)?r?s?\s*(?:([0-5]?\d)\s*(?:m|min|minutes)?)?|(\d+(?:\.\d+)?)\s*m(?:in)?(?:ute)?s?)$/i.exec(
      text.trim().replace(',', '.'),
    ) ?? [];
  const h = clockH ?? hours;
  if (h === undefined && minutes === undefined) return undefined;
  const total = h === undefined ? Number(minutes) : Number(h) * 60 + Number(clockMin ?? rest ?? 0);
  if (unit === 'min') return String(total);
  return total > DAY_MIN ? undefined : String(Math.round((total / 60) * 100) / 100);
}

/** What is found where a list was to be. */
function listWords(input: unknown, write: string): { what: string; fix: string } {
  const what = `found ${shown(input)}, expected a list`;
  if (isNothing(input)) return { what, fix: 'Write [] where there is none, or delete the line.' };
  const text = typeof input === 'string' ? input.trim() : '';
  if (text !== '' && write.includes('[{')) return { what, fix: write };
  // Brackets of another kind, commas, or dashes that stand deeper than the first entry without one.
  const inside = text.replace(/^\((.*)\)$/s, '$1');
  const isFigures = /^[-−]?[\d.]+(?:\s+[-−]?[\d.]+)+$/.test(inside);
  const words = inside.split(isFigures ? /\s+/ : /\s*,\s*|\s+-\s+/);
  if (!isFigures && !words.every((word) => /^[\w.][\w .-]*$/.test(word)))
    return { what, fix: 'Begin each entry with a dash on a line of its own, or put them in square brackets.' };
  const fix = / - /.test(text) ? 'Write "- " before the first entry too, or' : 'Put square brackets around it:';
  return { what, fix: `${fix} [${words.join(', ')}].` };
}

/** True for what people write where there is nothing of a kind. */
export const isNothing = (input: unknown): boolean => /^(?:no|none|false|nothing|without)$/i.test(String(input));

/** The word that was meant by another for the same thing, or by a mistyped one. */
export function wordMeant(word: string, known: readonly string[]): string | undefined {
  // The octane number on the pump says nothing of ethanol.
  if (/^(?:8\d|9\d|10[0-2])$/.test(word.trim())) return undefined;
  const parts = word
    .trim()
    .toLowerCase()
    .split(/[\s_-]+/);
  const longer = parts.length > 1 ? known.filter((one) => parts.every((part) => one.split('-').includes(part))) : [];
  return alsoCalled(word, known) ?? (longer.length === 1 ? longer[0] : nearest(word, known));
}

/** What to do about a date code where a year was asked for. */
function codeFix({ input }: z.core.$ZodIssue, path: Path): string | undefined {
  return path.at(-1) === 'madeYear' && typeof input === 'number' ? dateCodeFix(input) : undefined;
}

/** What to do about a figure or a list beyond its bounds. */
function tooBig(issue: z.core.$ZodIssue, path: Path, write: string): string {
  const { input } = issue;
  if (Array.isArray(input) && input.length > MANY) return 'Keep what is still to be done, and take the rest out.';
  const [list] = path;
  const isCelsius = path.length === 2 && /^(?:mean|min|max|dewPoint|recordLow)C$/.test(String(list));
  return isCelsius
    ? `Check the number; figures in °F go into ${String(list).replace(/C$/, 'F')}.`
    : (codeFix(issue, path) ?? write);
}

/** A list with more entries was made by a program. */
const MANY = 100;

function sizeOf(input: unknown): string {
  return Array.isArray(input) ? `a list of ${input.length}` : shown(input);
}

/** The form of a value as a person says it. */
export function kindName(expected: string): string {
  const names: Record<string, string> = {
    string: 'text',
    number: 'a number',
    int: 'a whole number',
    array: 'a list',
    tuple: 'a list',
    object: 'a group of indented lines',
    boolean: 'true or false',
  };
  return names[expected] ?? expected;
}
