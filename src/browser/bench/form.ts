/** One form of the bench record -> what it says; wrong fields are marked and nothing is said. */
import { NO_TEXT } from '../../content/no-text.ts';
import { decimal, faultIn } from '../decimal.ts';
import type { Said } from './entries.ts';
import { celsius } from './said-text.ts';
import { BENCH } from './words.ts';

/**
 * Reads a form.
 * @param form - one of the bench record's
 * @param season - name of the season that a step belongs to
 */
export function saidOf(form: HTMLFormElement, season: string): Said | undefined {
  for (const field of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select'))
    field.ariaInvalid = String(faultIn(field) !== '');
  const first = form.querySelector<HTMLInputElement>('[aria-invalid=true]');
  const wrong = form.querySelector('[data-wrong]')!;
  const label = first?.labels?.[0]?.firstChild?.textContent?.trim() ?? '';
  wrong.textContent = first ? BENCH.invalid(label, faultIn(first)) : '';
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
  const number = (name: string) => decimal(text(name));
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
