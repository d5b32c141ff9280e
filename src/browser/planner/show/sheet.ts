import { type SheetStep, sheetGroups } from '../../../site/sheet-groups.ts';
import {
  openOfSheet,
  type SheetKind,
  stepsOfSheet,
  suppliesOf,
  toolsOf,
  torquesOf,
} from '../../../site/sheet-lists.ts';
import { WORDS } from '../../../site/words.ts';
import { html, type Markup } from '../../html.ts';
import { table } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.sheet;
const box = html`<span class="box"></span>`;
const figure = (value: number | undefined) => (value === undefined ? '—' : value.toFixed(1));

/** A sheet for the bench: tools and supplies first, then every step in order. */
export function sheet({ plan, machine, format }: Showing, kind: SheetKind): Markup {
  const steps = stepsOfSheet(machine, kind, plan.sessions);
  const open = kind === 'start-up' ? openOfSheet(plan.ledger, machine.id, steps) : [];
  const stops = steps.some((s) => s.doNotRide !== undefined);
  const torques = torquesOf(steps);
  const line = (heading: string, parts: readonly (string | Markup)[], between: string) =>
    parts.length > 0 &&
    html`<p><strong>${heading}</strong> ${parts.map((part, i) => html`${i > 0 && between}${part}`)}.</p>`;
  return html`<div class="sheet stack"><div class="sheet-head"><h2>${machine.name}: ${kind === 'lay-up' ? words.layUp : words.startUp}</h2>
<p>${words.season(format.seasonName(machine.layUp.start, machine.startUp.firstUse))}</p></div>
<p>${words.manual} ${stops && words.stopsAll}</p>
${line(`${words.tools}:`, toolsOf(steps), ', ')}
${line(
  `${words.parts}:`,
  suppliesOf(steps).map((s) => html`${s.what}, <strong>${format.supplyAmount(s.amount, s.unit)}</strong>`),
  '; ',
)}
${line(
  words.open(open.length),
  open.map(
    (item) => html`${item.state}${item.safetyCritical && html` <span class="critical">${words.critical}</span>`}`,
  ),
  '; ',
)}
${sheetGroups(steps, kind, format).map(
  (group) =>
    html`<section><h3 class="stage">${group.heading}</h3>${
      group.cautions.length > 0 &&
      html`<ul class="cautions">${group.cautions.map((c) => html`<li><strong>${c.title}.</strong> ${c.text}</li>`)}</ul>`
    }<ol class="steps">${group.steps.map((row) => stepOf(row, format))}</ol></section>`,
)}
${
  torques.length > 0 &&
  html`<section class="keep"><h3 class="stage">${words.torque}</h3>${table(
    words.torque,
    words.torqueHead,
    torques.map((r) => [
      r.what,
      String(r.count),
      r.head,
      figure(r.torqueNm),
      figure(r.torqueLbfFt),
      words.condition[r.condition],
      r.note ?? '',
    ]),
  )}</section>`
}
<section class="keep"><h3 class="stage">${words.notes}</h3><ul class="lines" aria-hidden="true">${[1, 2, 3].map(() => html`<li></li>`)}</ul>${stops && html`<p>${words.stopsPassed}</p>`}<p class="blank is-wide">${words.signed}</p></section></div>`;
}

function stepOf({ step, number, mind, about }: SheetStep, { fillIn }: Showing['format']): Markup {
  const more = step.detail || mind.length > 0 || step.doNotRide;
  return html`<li class="step">${box}<span class="no">${number}</span><div class="body"><p><strong class="title">${fillIn(step.title, step.amounts)}</strong>${step.safetyCritical && html` <span class="critical">${words.critical}</span>`}${about.length > 0 && html` <span class="quiet">${about.join(' · ')}</span>`}</p>
${
  more &&
  html`<p>${step.detail && `${fillIn(step.detail, step.amounts)} `}${mind.length > 0 && html`<strong>${words.mind}</strong> ${mind.join('; ')}. `}${step.doNotRide && html`<strong>${words.stops}</strong> ${step.doNotRide}`}</p>`
}
${step.torques.map(
  (r) =>
    html`<p>${words.torqueOf(r.count, r.what, r.head)}: <strong>${
      r.torqueNm === undefined
        ? words.noFigure
        : `${figure(r.torqueNm)} N·m (${figure(r.torqueLbfFt)} lbf·ft), ${words.condition[r.condition]}`
    }</strong>${r.note && ` ${r.note}`}</p>`,
)}</div>${
    (step.reading || step.safetyCritical) &&
    html`<div class="fill">${step.reading && html`<span class="blank">${step.reading}</span>`}${step.safetyCritical && html`<span class="blank">${words.initials}</span>`}</div>`
  }</li>`;
}
