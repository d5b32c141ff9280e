import { WORDS } from '../../../site/words.ts';
import { html, type Markup } from '../../html.ts';
import { section, table } from './parts.ts';
import type { Showing } from './showing.ts';

const a = WORDS.machine.assumptions;
const w = WORDS.machine.whatIf;
/** So many stand in sight; the rest move less. */
const SHOWN = 5;

/** What was assumed, the one to measure first, and what going on for longer costs. */
export function unsure({ machine: { assumptions, whatIf }, format }: Showing): Markup {
  const { amount, number, plainDate, quantity } = format;
  const first = assumptions.find((row) => row.firstChargeShiftDays !== 0);
  const withUnit = (value: number | string, unit: string) => `${number(value)} ${unit}`.trim();
  const signed = (value: number, unit: string) => `${value > 0 ? '+' : ''}${amount(value, unit, unit === 'd' ? 0 : 1)}`;
  const rows = assumptions.map((row) => [
    row.field,
    withUnit(row.value, row.unit),
    row.low === row.high ? number(row.low) : a.range(number(row.low), number(row.high)),
    row.firstChargeShiftDays === 0 ? '—' : signed(row.firstChargeShiftDays, 'd'),
    `${signed(row.marginShiftK.low, 'K')} … ${signed(row.marginShiftK.high, 'K')}`,
    html`<code>${row.settle}</code><span class="quiet under">${row.reason}</span>`,
  ]);
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
          table(a.heading, a.head, rows.slice(0, SHOWN)),
          more > 0
            ? html`<details><summary>${a.more(more)}</summary>${table(a.more(more), a.head, rows.slice(SHOWN))}</details>`
            : html``,
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
