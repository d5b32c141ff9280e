/** Dates, amounts and lists as the reminders say them. One wording everywhere, so that the same plan gives the same bytes. */
import type { Household } from '../household.ts';
import type { PlanStep, Quantity, SeasonPlan } from '../season-plan.ts';
import { caution } from '../tasks/cautions.ts';
import { formatOne, formatQuantity, type Reader, unitFor } from '../units/index.ts';

/** Whose units and language a plan's reminders are in. */
export function readerOf({ units, household: { locale } }: Pick<SeasonPlan, 'units' | 'household'>): Reader {
  return { units, locale };
}

/** "13:00" on the household's clock. */
export function clockText(time: string, clock: Household['clock']): string {
  if (clock === '24h') return time;
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  return `${hour % 12 || 12}${minute > 0 ? `:${String(minute).padStart(2, '0')}` : ''} ${hour < 12 ? 'am' : 'pm'}`;
}

/** An hour of the day as a number, 13.5, as "13:30" on the household's clock [h]. */
export function hourText(hour: number, clock: Household['clock']): string {
  const minutes = Math.round(atLeastZero(hour) * 60);
  const pad = (n: number) => String(n).padStart(2, '0');
  return clockText(`${pad(Math.floor(minutes / 60) % 24)}:${pad(minutes % 60)}`, clock);
}

/** A charge for a title: whole ampere-hours, with one digit after the point below two [Ah]. */
export function ampHoursText(ampHours: number, reader: Reader): string {
  return formatOne(atLeastZero(ampHours), 'Ah', reader, ampHours < 2 ? 1 : 0);
}

/** A step's text with its amounts, in the user's units, in place of the {names}. */
export function fillIn(text: string, amounts: readonly Quantity[], reader: Reader): string {
  return text.replaceAll(/\{([\w.-]+)\}/g, (whole, name: string) => {
    const found = amounts.find((amount) => amount.name === name);
    return found ? formatQuantity(found.value, unitFor(found.unit, name), reader) : whole;
  });
}

/** One line for each step: what to do, with its amounts, what it needs, and why. */
export function stepLines(steps: readonly PlanStep[], reader: Reader): string[] {
  return steps.map((step) => {
    const dry = step.needs.dryDay && `a dry day above ${formatOne(5, '°C', reader)}`;
    const needs = [dry, step.needs.stand && 'the stand'].filter(Boolean);
    const rest = needs.length > 0 ? ` (needs ${needs.join(', ')})` : '';
    const what = `${fillIn(step.title, step.amounts, reader)}${rest}`;
    if (!step.why) return `- ${what}`;
    return `- ${what}${/[.!?]$/.test(what) ? '' : '.'} ${fillIn(step.why, step.amounts, reader)}`;
  });
}

/** The cautions of some steps, each once and in short: the sheets have them in full. */
export function cautionLines(steps: readonly PlanStep[], reader: Reader): string[] {
  return shortCautions(steps.flatMap((step) => step.cautions.map((text) => fillIn(text, step.amounts, reader))));
}

/**
 * Cautions in short, each once.
 * @param cautions - ids of rows in the table of cautions, or the user's own words
 */
export function shortCautions(cautions: readonly string[]): string[] {
  return [...new Set(cautions)].map((text) => {
    const row = caution(text);
    return `! ${row ? `${row.title}: ${firstSentence(row.text)}` : text}`;
  });
}

const firstSentence = (text: string) => /^.*?[.](?=\s|$)/s.exec(text)?.[0] ?? text;

/** Lines of a reminder's text; what is empty or does not apply leaves no line. */
export function lines(...parts: (string | false | undefined)[]): string {
  return parts.filter(Boolean).join('\n');
}

function atLeastZero(value: number): number {
  if (!(value >= 0)) throw new RangeError(`found ${value}, expected a number of 0 or more`);
  return value;
}
