import type { Assumption, BatteryPlan } from '../../planner/season-plan.ts';
import { type Assumed, assumedText, firstBrought } from '../assumed.ts';
import { html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { section } from './parts.ts';
import type { Showing } from './showing.ts';

const a = WORDS.machine.assumptions;
const w = WORDS.machine.whatIf;
/** So many stand in sight; the rest move less. */
const SHOWN = 5;

/** What was assumed, the one to measure first, and what going on for longer costs. */
export function unsure(showing: Showing): Markup {
  return html`${assumed(showing)}${longer(showing)}`;
}

/** What was assumed, what matters most first. */
export function assumed({ machine: { assumptions, battery }, format, fold, form }: Showing): Markup {
  if (assumptions.length === 0) return section('assumed', a.heading, html`<p>${a.none}</p>`);
  const first = assumptions.find((row) => row.firstChargeShiftDays !== 0);
  const isCharged = hasCharge(battery);
  const rows = assumptions.map((row) => assumedText(row, format, isCharged));
  const more = rows.slice(SHOWN);
  return section(
    'assumed',
    a.heading,
    html`<div class="first text">${
      first
        ? html`<p><strong>${a.first(a.what(first.field))}</strong></p><p>${firstText(first, isCharged, format)} ${!form && inFile(format.contentLine(first.settle))}</p>`
        : html`<p>${battery === undefined ? a.noBattery : isCharged ? a.nothingMoves : a.nothingBrings}</p>`
    }</div><p class="text quiet">${a.text} ${form && a.textForm}</p>`,
    cards(rows.slice(0, SHOWN), form),
    more.length > 0 && fold({ summary: a.more(more.length), body: cards(more, form) }),
  );
}

/** Whether a charge falls due within the rest, wherever it is made. */
const hasCharge = (battery: BatteryPlan | undefined): boolean =>
  battery !== undefined &&
  (battery.charges.length > 0 || (battery.chargeWithoutDay ?? battery.chargeAtStartUp) !== undefined);

function firstText(first: Assumption, isCharged: boolean, { plainDate }: Showing['format']): string {
  const brought = isCharged ? undefined : firstBrought(first);
  return brought === undefined
    ? a.firstText(WORDS.days(Math.abs(first.firstChargeShiftDays)))
    : a.firstBrings(plainDate(brought));
}

/** What some days more in use would cost. */
export function longer({ machine: { whatIf }, format, fold }: Showing): Markup | false {
  const { duration, plainDate, quantity } = format;
  return (
    whatIf.length > 0 &&
    section(
      'longer',
      w.heading,
      ...whatIf.map((row) =>
        fold({
          summary: `${w.until(WORDS.days(row.days), plainDate(row.lastUse))}${row.missed.length > 0 ? ` · ${w.missed}: ${row.missed.length}` : ''}`,
          body: html`<div class="why"><ul>
<li>${w.coldest(quantity(row.coldestNightC, '°C'))}</li>
${row.text.map((text) => html`<li>${text}</li>`)}
${row.missed.map((text) => html`<li><strong>${w.missed}:</strong> ${text}</li>`)}
${row.misfitHours > 0 && html`<li>${w.misfit(duration(row.misfitHours * 60))}</li>`}
${row.missed.length === 0 && row.misfitHours === 0 && html`<li>${w.nothing}</li>`}</ul></div>`,
        }),
      ),
    )
  );
}

const inFile = (line: string) => html`${a.inFile} <code>${line}</code>`;

function cards(rows: readonly Assumed[], form: boolean): Markup {
  return html`<ul class="assumed">${rows.map(
    (row) => html`<li><p><strong>${row.what}</strong> ${[a.taken(row.taken), row.could && a.could(row.could)]
      .filter(Boolean)
      .join(', ')}</p>${row.moves && html`<p class="small">${row.moves}</p>`}
<p class="small">${row.reason}</p>${!form && html`<p class="small quiet">${inFile(row.line)}</p>`}</li>`,
  )}</ul>`;
}
