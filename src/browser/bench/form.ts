/** One form of the bench record -> what it says; wrong fields are marked and nothing is said. */
import type { Said } from './entries.ts';
import { celsius } from './said-text.ts';
import { BENCH } from './words.ts';

/** What a record file would not take: control characters, direction marks, what is no character. */
const NO_TEXT = /\p{Cc}|\p{Cs}|[\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/gu;

/**
 * Reads a form.
 * @param form - one of the bench record's
 * @param season - name of the season that a step belongs to
 */
export function saidOf(form: HTMLFormElement, season: string): Said | undefined {
  for (const field of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select'))
    field.ariaInvalid = String(!field.validity.valid);
  const first = form.querySelector<HTMLInputElement>('[aria-invalid=true]');
  const wrong = form.querySelector('[data-wrong]')!;
  wrong.textContent = first ? BENCH.invalid(first.closest('label')?.firstChild?.textContent?.trim() ?? '') : '';
  if (first) {
    first.focus();
    return undefined;
  }
  const data = new FormData(form);
  const text = (name: string) =>
    String(data.get(name) ?? '')
      .replace(NO_TEXT, '')
      .trim()
      .normalize('NFC');
  const number = (name: string) => Number(text(name));
  const maybe = (name: string) => text(name) || undefined;
  switch (form.dataset.kind) {
    case 'reading': {
      const temperatureC = celsius(number('temperature'), text('unit') === 'F');
      return { kind: 'readings', date: text('date'), volts: number('volts'), temperatureC, restedH: number('rested') };
    }
    case 'charged':
      return { kind: 'charged', date: text('date'), toPct: number('to') };
    case 'part':
      return { kind: 'asLeft', item: text('item'), where: maybe('where'), since: text('date') };
    case 'next':
      return { kind: 'notes', date: text('date'), text: BENCH.nextPrefix + text('what'), assembly: maybe('assembly') };
    case 'skipped':
      return { kind: 'skipped', step: text('step'), date: text('date'), season, why: maybe('why') };
    default:
      return undefined;
  }
}
