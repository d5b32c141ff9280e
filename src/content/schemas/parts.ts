/** The small parts that every schema is built from: text, ids, dates, quantities. */
import * as z from 'zod/mini';
import { type Dimension, parseQuantity, UNITS } from '../../planner/units/index.ts';
import { daysMeant } from '../date-meant.ts';
import { ID_RULE, idFrom, isId } from '../ids.ts';
import { printable } from '../problem.ts';

/** What a schema's own check says: `found` is filled in by the reader where it is absent. */
export interface Said {
  found?: string | undefined;
  expected: string;
  fix?: string | undefined;
}

/** Adds an issue whose words are this project's own. */
export function say(ctx: z.core.ParsePayload, said: Said): void {
  ctx.issues.push({ code: 'custom', input: ctx.value, params: said, message: said.expected });
}

export function id(description: string, example: string) {
  return z
    .string()
    .check((ctx) => {
      if (isId(ctx.value)) return;
      const plain = ctx.value.replace(/<[^<>]*>/g, '');
      const meant = idFrom(plain.replace(/^.*\//, '').replace(/\.ya?ml$/, ''));
      say(ctx, { expected: ID_RULE, fix: meant === '' ? `Write it like "${example}".` : `Write it as "${meant}".` });
    })
    .register(z.globalRegistry, { description, examples: [example] });
}

/** One line of text. Markup is kept as the characters it is made of. */
export function line(description: string, example: string, max = 120) {
  return z
    .pipe(
      z.string().check((ctx) => {
        // A block of one line ends with its line.
        const text = ctx.value.replace(/\n$/, '');
        if (text.trim() === '') say(ctx, { found: 'empty text', expected: `text such as "${example}"` });
        else if (/[\n\t]/.test(text)) say(ctx, { expected: 'text on one line', fix: 'Join the lines.' });
        else if (text.length > max)
          say(ctx, { found: `${text.length} characters`, expected: `at most ${max}`, fix: 'Shorten it.' });
      }),
      z.transform((text) => text.trim().normalize('NFC')),
    )
    .register(z.globalRegistry, { description, examples: [example] });
}

/** Text that may run over several lines. */
export function paragraph(description: string, example: string, max = 2000) {
  return z
    .pipe(
      z.string().check((ctx) => {
        if (ctx.value.trim() === '') say(ctx, { found: 'empty text', expected: `text such as "${example}"` });
        else if (ctx.value.length > max)
          say(ctx, { found: `${ctx.value.length} characters`, expected: `at most ${max}`, fix: 'Shorten it.' });
      }),
      z.transform((text) => text.trim().normalize('NFC')),
    )
    .register(z.globalRegistry, { description, examples: [example] });
}

/** True for a day that the calendar has. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const [y, m, d] = text.split('-').map(Number) as [number, number, number];
  const date = new Date(Date.UTC(y, m - 1, d));
  return y >= 1900 && y <= 2199 && date.getUTCMonth() === m - 1 && date.getUTCDate() === d;
}

/** True for an instant in UTC, on a day that the calendar has. */
export function isInstant(text: string): boolean {
  const isWritten = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?Z$/.test(text);
  return isWritten && isDate(text.slice(0, 10)) && !Number.isNaN(Date.parse(text));
}

export function date(description: string, example: string) {
  return z
    .string({ error: () => 'a day, written "YYYY-MM-DD"' })
    .check((ctx) => {
      if (isDate(ctx.value)) return;
      const meant = daysMeant(ctx.value).filter(isDate);
      say(ctx, {
        expected: 'a day that the calendar has, written "YYYY-MM-DD"',
        fix: meant.length > 0 ? `Write it as "${meant.join('" or "')}".` : `Write it like "${example}".`,
      });
    })
    .register(z.globalRegistry, { description, examples: [example] });
}

interface Bounds {
  min?: number;
  max?: number;
}

/** A number with its unit, as text: "17 L". Kept in the dimension's own unit. */
export function quantity(dimension: Dimension, description: string, example: string, bounds: Bounds = {}) {
  const wanted = `a number with its unit, such as "${example}"`;
  return z
    .pipe(
      z.string({ error: () => wanted }),
      z.transform((text, ctx) => {
        const value = parseQuantity(text, dimension);
        const range = boundsText(bounds, dimension);
        if (typeof value !== 'number') {
          const [found, expected = wanted] = value.problem.split(/[,;] expected /);
          say(ctx, { found: printable(found!.replace(/^found /, '')), expected, fix: quantityFix(text, dimension) });
          return z.NEVER;
        }
        if (!(value >= (bounds.min ?? -Infinity) && value <= (bounds.max ?? Infinity))) {
          say(ctx, { expected: range, fix: 'Check the figure and its unit.' });
          return z.NEVER;
        }
        return value;
      }),
    )
    .register(z.globalRegistry, { description: `${description}${boundsNote(bounds, dimension)}`, examples: [example] });
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '.25',
  '½': '.5',
  '¾': '.75',
  '1/4': '.25',
  '1/2': '.5',
  '3/4': '.75',
};

/** What to write for the quantity within text that says more, or says it otherwise: "about 17 L", "2.2 bar cold", "17 L,", "minus 4 °C". */
function quantityFix(text: string, dimension: Dimension): string | undefined {
  const [, litres, rest] = /^\s*([\d.,]+)\s*gal(?:lons?)?\b(.*)$/is.exec(text) ?? [];
  if (litres !== undefined && rest === '') return `Write ${litres} US gal, or ${litres} imp gal.`;
  const plain = text
    .trim()
    .replace(/[\uff01-\uff5e]/g, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
    .replace(/^(?:minus\s*|[–—−])(?=\d)/i, '-')
    .replace(/[º˚]\s*(?=[CF]\b)/g, '°')
    .replace(/^(?:[~≈]|about|approx\.?|approximately|ca\.?|circa)\s*/i, '')
    .replace(/(?<=\d)\s*([¼½¾]|[13]\/[24])/, (part) => FRACTIONS[part.trim()] ?? part);
  const words = plain.split(/\s+/).slice(0, 5);
  const starts = words.map((_, n) =>
    words
      .slice(0, n + 1)
      .join(' ')
      .replace(/[,;:]+$/, ''),
  );
  const meant = starts.reverse().find((start) => typeof parseQuantity(start, dimension) === 'number');
  return meant === undefined ? undefined : `Write ${meant}.`;
}

/** Bounds in the dimension's own unit, which need not be the one that the user writes. */
function boundsText({ min, max }: Bounds, dimension: Dimension): string {
  const unit = UNITS.find((row) => row.dimension === dimension && row.factor === 1 && row.offset === undefined)!
    .names[0];
  if (min !== undefined && max !== undefined) return `${min} to ${max} ${unit}`;
  return min !== undefined ? `at least ${min} ${unit}` : `at most ${max} ${unit}`;
}

function boundsNote(bounds: Bounds, dimension: Dimension): string {
  return bounds.min === undefined && bounds.max === undefined ? '' : ` (${boundsText(bounds, dimension)})`;
}

/** A quantity that may be given with the range it could have: "3 mA", or { value: 3 mA, low: 1 mA, high: 8 mA }. */
export function ranged(dimension: Dimension, description: string, example: string, bounds: Bounds = {}) {
  const one = quantity(dimension, description, example, bounds);
  const group = z
    .strictObject({ value: one, low: one, high: one })
    .check((ctx) => {
      const { low, value, high } = ctx.value;
      if (!(low <= value && value <= high)) {
        say(ctx, {
          found: 'low, value and high out of order',
          expected: 'low ≤ value ≤ high',
          fix: 'Put the smallest under low.',
        });
      }
    })
    .register(z.globalRegistry, { description: `${description}, with the range it could have` });
  return z
    .union([
      z.pipe(
        one,
        z.transform((v) => ({ value: v, low: v, high: v })),
      ),
      group,
    ])
    .register(z.globalRegistry, { description, examples: [example] });
}

/** A bare number, for fields whose name has the unit or that count things. */
export function number(description: string, example: number, min: number, max: number) {
  return z
    .number()
    .check(z.gte(min), z.lte(max))
    .register(z.globalRegistry, { description, examples: [example] });
}

export function count(description: string, example: number, min: number, max: number) {
  return z
    .int()
    .check(z.gte(min), z.lte(max))
    .register(z.globalRegistry, { description, examples: [example] });
}

export function flag(description: string, example = true) {
  return z.boolean().register(z.globalRegistry, { description, examples: [example] });
}

export function choice<const T extends readonly [string, ...string[]]>(description: string, values: T) {
  return z.enum(values).register(z.globalRegistry, { description, examples: [values[0]] });
}

export function list<T extends z.ZodMiniType>(item: T, description: string, max = 500) {
  return z.array(item).check(z.maxLength(max)).register(z.globalRegistry, { description });
}
