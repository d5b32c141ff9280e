import type { MachinePlan } from '../../planner/season-plan.ts';
import { html, type Markup } from '../html.ts';
import { fiveNumbersOf } from '../numbers.ts';
import { WORDS } from '../words.ts';
import { section } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.machine.dates;

/** Dates and the five numbers that matter most. */
export function dates({ machine: m, format }: Showing): Markup {
  return section(
    'dates',
    words.heading,
    datesList(m, format),
    numbersList(m, format),
    m.season.proposed && html`<p class="text quiet">${words.proposed}: ${m.season.reasons.join(' ')}</p>`,
  );
}

/** The days of a rest, each with what begins or is done by then. */
export function datesList(m: MachinePlan, { plainDate }: Showing['format']): Markup {
  const rows = [
    [words.lastUse, m.season.lastUse],
    [m.layUp.complete ? words.laidUp : words.layUp, m.layUp.done],
    [words.firstFrost, m.firstFrostInStore],
    m.startUp.made === undefined ? [words.startUp, m.startUp.start] : [words.made, m.startUp.made],
    [words.firstUse, m.startUp.firstUse],
  ] as const;
  return html`<dl class="dates">${rows.map(
    ([name, date]) =>
      date && html`<div><dt>${name}</dt><dd><time datetime="${date}">${plainDate(date)}</time></dd></div>`,
  )}</dl>`;
}

/** The five numbers that matter most. */
export function numbersList(m: MachinePlan, format: Showing['format']): Markup {
  return html`<dl class="numbers">${fiveNumbersOf(m, format).map(
    (n) => html`<div><dt>${n.name}</dt><dd class="big">${n.value}</dd><dd class="note">${n.note}</dd></div>`,
  )}</dl>`;
}
