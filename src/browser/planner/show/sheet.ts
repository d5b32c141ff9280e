import type { PlanStep } from '../../../planner/season-plan.ts';
import { cautionsOf, type StepCaution } from '../../../site/cautions.ts';
import { type SheetKind, stepsOfSheet, suppliesOf, toolsOf, torquesOf } from '../../../site/sheet-lists.ts';
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
  const stops = [...new Set(steps.flatMap((s) => s.doNotRide ?? []))];
  const open = kind === 'start-up' ? plan.ledger.filter((item) => item.machine === machine.id) : [];
  const cautions = cautionsOf(steps);
  const torques = torquesOf(steps);
  const boxes = (heading: string, lines: readonly (string | Markup)[]) =>
    lines.length > 0 &&
    html`<h3>${heading}</h3><ul class="lay-out">${lines.map((line) => html`<li>${box}<span>${line}</span></li>`)}</ul>`;
  return html`<div class="sheet stack"><div class="sheet-head"><h2>${machine.name}: ${kind === 'lay-up' ? words.layUp : words.startUp}</h2>
<p>${words.season(format.seasonName(machine.layUp.start, machine.startUp.firstUse))}</p></div>
<p>${words.manual}</p>
${stops.length > 0 && html`<div class="boxed keep"><h3>${words.doNotRide}</h3><ul class="columns">${stops.map((text) => html`<li>${text}</li>`)}</ul></div>`}
<h3 class="stage">${words.lay}</h3>
${boxes(words.tools, toolsOf(steps))}
${boxes(
  words.parts,
  suppliesOf(steps).map((s) => html`${s.what}: <strong>${format.supplyAmount(s.amount, s.unit)}</strong>`),
)}
${boxes(
  words.open,
  open.map(
    (item) => html`${item.state}${item.safetyCritical && html` <span class="critical">${words.critical}</span>`}`,
  ),
)}
${groups(steps, kind, format).map(
  (group) =>
    html`<section><h3 class="stage">${group.heading}</h3><ol class="steps">${group.steps.map(({ step, at }) =>
      stepOf(step, at + 1, cautions[at] ?? [], format),
    )}</ol></section>`,
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
<section class="keep"><h3 class="stage">${words.notes}</h3><ul class="lines" aria-hidden="true">${[1, 2, 3, 4, 5].map(() => html`<li></li>`)}</ul><p class="blank is-wide">${words.signed}</p></section></div>`;
}

function groups(steps: readonly PlanStep[], kind: SheetKind, format: Showing['format']) {
  const out: { heading: string; steps: { step: PlanStep; at: number }[] }[] = [];
  steps.forEach((step, at) => {
    const heading =
      kind === 'start-up'
        ? step.stage
          ? WORDS.stages[step.stage]
          : words.allSteps
        : step.date
          ? format.dateText(step.date)
          : words.allSteps;
    if (out.at(-1)?.heading !== heading) out.push({ heading, steps: [] });
    out.at(-1)!.steps.push({ step, at });
  });
  return out;
}

function stepOf(
  step: PlanStep,
  no: number,
  cautions: StepCaution[],
  { fillIn, duration, hours }: Showing['format'],
): Markup {
  const needs = (Object.keys(step.needs) as (keyof PlanStep['needs'])[]).filter((key) => step.needs[key]);
  const small = [...needs.map((key) => words.needs[key]), step.waitH > 0 ? words.wait(hours(step.waitH)) : ''].filter(
    Boolean,
  );
  const full = cautions.filter((c) => c.seen === undefined);
  const again = cautions.filter((c) => c.seen !== undefined);
  return html`<li class="step">${box}<span class="no">${no}</span><div class="body"><p class="title">${fillIn(step.title, step.amounts)}${step.safetyCritical && html` <span class="critical">${words.critical}</span>`}</p>
${step.detail && html`<p>${fillIn(step.detail, step.amounts)}</p>`}
${step.torques.map(
  (r) =>
    html`<p>${words.torqueOf(r.count, r.what, r.head)}: <strong>${
      r.torqueNm === undefined
        ? words.noFigure
        : `${figure(r.torqueNm)} N·m (${figure(r.torqueLbfFt)} lbf·ft), ${words.condition[r.condition]}`
    }</strong>${r.note && ` ${r.note}`}</p>`,
)}
${small.length > 0 && html`<p class="quiet small">${small.join(' · ')}</p>`}</div>
<div class="fill">${step.minutes > 0 && html`<span class="quiet">${duration(step.minutes)}</span>`}${step.reading && html`<span class="blank">${step.reading}</span>`}${step.safetyCritical && html`<span class="blank">${words.initials}</span>`}</div>
${
  (cautions.length > 0 || step.doNotRide) &&
  html`<div class="across">${full.map(
    (c) =>
      html`<p class="caution">${c.title && html`<strong>${c.title}.</strong>`} ${fillIn(c.text, step.amounts)}</p>`,
  )}${
    again.length > 0 &&
    html`<p class="caution">${again.map((c, i) => html`${i > 0 && '; '}<strong>${c.title}</strong> (${words.see(c.seen ?? 0)})`)}</p>`
  }${step.doNotRide && html`<p><strong>${words.stops}</strong> ${step.doNotRide}</p>`}</div>`
}</li>`;
}
