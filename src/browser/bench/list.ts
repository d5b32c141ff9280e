/** The entries of a machine as the page lists them. */
import { html } from '../../site/html.ts';
import type { Entry } from './entries.ts';
import type { PageStep } from './page-steps.ts';
import { saidText } from './said-text.ts';
import { SAID } from './said-words.ts';
import { BENCH } from './words.ts';

interface Line {
  id: string;
  kind: string;
  text: string;
}

export interface Listed {
  now: Line[];
  /** Of seasons before. */
  earlier: Line[];
}

const KINDS: readonly Entry['kind'][] = [
  'readings',
  'charged',
  'done',
  'skipped',
  'notes',
  'asLeft',
  'finishedJobs',
  'odometer',
  'engineHours',
];

/**
 * Entries in words: readings and charges by day, steps by their titles in the order of the sheets.
 * @param entries - all of the machine
 * @param now - those of this season
 * @param steps - of the machine, in the order of the sheets
 * @param us - whether temperatures are read in °F
 */
export function entryList(
  entries: readonly Entry[],
  now: readonly Entry[],
  steps: readonly PageStep[],
  us: boolean,
): Listed {
  const place = new Map(steps.map(({ id }, i) => [id, i]));
  const titles = new Map(steps.map(({ id, title }) => [id, title]));
  const stepPlace = (e: Entry) => ('step' in e ? (place.get(e.step) ?? steps.length) : 0);
  const day = (e: Entry) => ('date' in e ? e.date : '');
  // Left out and done stand together, as on the sheet.
  const rank = ({ kind }: Entry) => KINDS.indexOf(kind === 'skipped' ? 'done' : kind);
  const inOrder = (list: readonly Entry[]) =>
    [...list]
      .sort(
        (a, b) => rank(a) - rank(b) || stepPlace(a) - stepPlace(b) || (day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : 0),
      )
      .map((e): Line => ({ id: e.id, kind: SAID.kinds[e.kind], text: saidText(e, us, titles) }));
  return { now: inOrder(now), earlier: inOrder(entries.filter((e) => !now.includes(e))) };
}

export function listHtml({ now, earlier }: Listed): string {
  const rows = (lines: readonly Line[]) =>
    lines.map(
      ({ id, kind, text }) =>
        html`<li><span><strong>${kind}</strong> ${text}</span> <button type="button" data-act="remove" data-id="${id}">${BENCH.remove}<span class="unseen">: ${text}</span></button></li>`,
    );
  return html`${rows(now)}${now.length === 0 && html`<li class="quiet">${BENCH.none}</li>`}${
    earlier.length > 0 &&
    html`<li class="earlier"><details><summary>${BENCH.earlier(earlier.length)}</summary><ul class="plain bench-entries">${rows(earlier)}</ul></details></li>`
  }`.text;
}

export function unreadHtml(rows: number): string {
  if (rows === 0) return '';
  return html`<p>${BENCH.unread(rows)}</p><button type="button" data-act="unread">${BENCH.unreadSave}</button>`.text;
}
