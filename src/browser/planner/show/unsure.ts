import { type Assumed, assumedText } from '../../../site/assumed.ts';
import { WORDS } from '../../../site/words.ts';
import { html, type Markup } from '../../html.ts';
import { section } from './parts.ts';
import type { Showing } from './showing.ts';

const a = WORDS.machine.assumptions;
const w = WORDS.machine.whatIf;
/** So many stand in sight; the rest move less. */
const SHOWN = 5;

/** What was assumed, the one to measure first, and what going on for longer costs. */
export function unsure({ machine: { assumptions, whatIf }, format }: Showing): Markup {
  const { amount, plainDate, quantity } = format;
  const first = assumptions.find((row) => row.firstChargeShiftDays !== 0);
  const rows = assumptions.map((row) => assumedText(row, format));
  const more = rows.length - SHOWN;
  return html`${section(
    'assumed',
    a.heading,
    ...(rows.length === 0
      ? [html`<p>${a.none}</p>`]
      : [
          html`<div class="first text">${
            first
              ? html`<p><strong>${a.first(first.field)}</strong></p><p>${a.firstText(WORDS.days(Math.abs(first.firstChargeShiftDays)))} <code>${first.settle}</code></p>`
              : html`<p>${a.nothingMoves}</p>`
          }</div>`,
          cards(rows.slice(0, SHOWN)),
          more > 0 ? html`<details><summary>${a.more(more)}</summary>${cards(rows.slice(SHOWN))}</details>` : html``,
        ]),
  )}${
    whatIf.length > 0 &&
    section(
      'longer',
      w.heading,
      ...whatIf.map(
        (
          row,
        ) => html`<details><summary>${w.until(WORDS.days(row.days), plainDate(row.lastUse))}</summary><div class="why"><ul>
<li>${w.coldest(quantity(row.coldestNightC, '°C'))}</li>
${row.text.map((text) => html`<li>${text}</li>`)}
${row.missed.map((text) => html`<li><strong>${w.missed}:</strong> ${text}</li>`)}
${row.misfitHours > 0 && html`<li>${w.misfit(amount(row.misfitHours, WORDS.units.h, 1))}</li>`}
${row.missed.length === 0 && row.misfitHours === 0 && html`<li>${w.nothing}</li>`}</ul></div></details>`,
      ),
    )
  }`;
}

function cards(rows: readonly Assumed[]): Markup {
  return html`<ul class="assumed">${rows.map(
    (row) => html`<li><p><strong>${row.field}</strong> ${[a.taken(row.taken), row.could && a.could(row.could)]
      .filter(Boolean)
      .join(', ')}</p>${row.moves && html`<p class="small">${row.moves}</p>`}
<p class="small"><code>${row.line}</code> <span class="quiet">${row.reason}</span></p></li>`,
  )}</ul>`;
}
