import type { MachineKind } from '../../planner/household.ts';
import { canBeLeftOut } from '../../planner/recorded.ts';
import type { LedgerItem, MachinePlan, TorqueRow } from '../../planner/season-plan.ts';
import { unitFor } from '../../planner/units/index.ts';
import type { Format } from '../formats.ts';
import { html, type Markup } from '../html.ts';
import { pageMargins } from '../page-margins.ts';
import { type SheetStep, sheetGroups } from '../sheet-groups.ts';
import { openOfSheet, type SheetKind, stepsOfSheet, suppliesOf, toolsOf, torquesOf } from '../sheet-lists.ts';
import { WORDS } from '../words.ts';
import { table } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.sheet;
const figure = (value: number | undefined, { amount }: Pick<Format, 'amount'>) =>
  value === undefined ? '—' : amount(value, '', 1);

/** Name of a sheet. */
export const sheetTitle = (kind: SheetKind): string => (kind === 'lay-up' ? words.layUp : words.startUp);

/** What stands in the margins of a printed sheet, as a style: machine, sheet and season. */
export function sheetMargins(
  { name, layUp, startUp }: Pick<MachinePlan, 'name' | 'layUp' | 'startUp'>,
  kind: SheetKind,
  { seasonName }: Format,
): string {
  return pageMargins(`${name} · ${sheetTitle(kind)}`, words.season(seasonName(layUp.start, startUp.firstUse)));
}

/**
 * The head of a sheet: machine, sheet, season and days.
 * @param level - of its heading
 */
export function sheetHead({ machine, format }: Showing, kind: SheetKind, level: 1 | 2): Markup {
  const { layUp, startUp, name } = machine;
  const days = kind === 'lay-up' ? [layUp.start, layUp.done] : [startUp.start, startUp.firstUse];
  return html`<div class="sheet-head">${heading(level, html`${name}: <span class="whole">${sheetTitle(kind)}</span>`)}
<p>${words.season(format.seasonName(layUp.start, startUp.firstUse))} · ${[...new Set(days)].map(format.dateText).join(' – ')}</p></div>`;
}

/**
 * A sheet for the bench: tools and supplies first, then every step in order.
 * @param level - of the headings of its parts
 */
export function sheetBody({ plan, machine, format }: Showing, kind: SheetKind, level: 2 | 3): Markup {
  const steps = stepsOfSheet(machine, kind, plan.sessions);
  const open = kind === 'start-up' ? openOfSheet(plan.ledger, machine.id, steps) : [];
  const stops = steps.some((s) => s.doNotRide !== undefined);
  const torques = torquesOf(steps);
  const list = (name: string, parts: readonly string[], between: string) =>
    parts.length > 0 && html`<p><strong>${name}</strong> ${parts.join(between)}.</p>`;
  const part = (id: string, name: string, body: Markup) =>
    html`<section class="keep" aria-labelledby="${kind}-${id}">${heading(level, name, 'stage', `${kind}-${id}`)}${body}</section>`;
  return html`<p>${words.manual} ${stops && words.stopsAll(machine.kind)}</p>
<section class="stack" aria-labelledby="${kind}-lay-out">${heading(level, words.lay, 'unseen', `${kind}-lay-out`)}
${list(`${words.tools}:`, toolsOf(steps), ', ')}
${list(
  `${words.parts}:`,
  suppliesOf(steps).map((s) => `${s.what}, ${format.supplyAmount(s)}`),
  '; ',
)}
${list(words.open(open.length), open.map(openText), '; ')}</section>
${sheetGroups(steps, kind, machine.kind, format).map(
  (group) =>
    html`<section>${heading(level, group.heading, 'stage')}${group.runs.map(
      ({ cautions, steps }) =>
        html`${cautions.length > 0 && html`<ul class="cautions">${cautions.map((c) => html`<li><strong>${c.title}.</strong> ${c.text}</li>`)}</ul>`}<ol class="steps">${steps.map((row) => stepOf(row, machine.kind, format))}</ol>`,
    )}</section>`,
)}
${torques.length > 0 && part('torque', words.torque, torqueTable(torques, format))}
${part(
  'own-notes',
  words.notes,
  html`<ul class="lines" aria-hidden="true">${[1, 2, 3].map(() => html`<li></li>`)}</ul>
${stops && html`<p>${words.stopsPassed(machine.kind)}</p>`}<p class="blank is-wide">${words.signed}</p>`,
)}`;
}

/**
 * The torque table: both units, dry or lubricated, and an honest word where no figure is published.
 * @param rows - fasteners
 * @param format - the household's way of writing
 * @param machine - named where a page has more than one table
 */
export function torqueTable(rows: readonly TorqueRow[], format: Pick<Format, 'amount'>, machine?: string): Markup {
  return html`${table(
    machine === undefined ? words.torque : `${machine}: ${words.torque}`,
    words.torqueHead,
    rows.map((r) => [
      r.what,
      String(r.count),
      r.head,
      html`<strong>${figure(r.torqueNm, format)}</strong>`,
      figure(r.torqueLbfFt, format),
      words.condition[r.condition],
      r.note ?? '',
    ]),
  )}${rows.some((r) => r.condition === 'lubricated') && html`<p>${words.lubricated}</p>`}`;
}

function heading(level: 1 | 2 | 3, text: string | Markup, name?: string, id?: string): Markup {
  const attributes = html`${name !== undefined && html` class="${name}"`}${id !== undefined && html` id="${id}"`}`;
  if (level === 1) return html`<h1${attributes}>${text}</h1>`;
  return level === 2 ? html`<h2${attributes}>${text}</h2>` : html`<h3${attributes}>${text}</h3>`;
}

function openText({ state, where, safetyCritical }: LedgerItem): string {
  return state + (where ? ` (${WORDS.machine.now.where(where)})` : '') + (safetyCritical ? ` (${words.critical})` : '');
}

/** Amounts that a manual or a placard gives; the others are reckoned from them. */
const LOOKED_UP = ['oil', 'normalPressure'];

/** The unit of "2.4 US qt". */
const unitOf = (written: string) => written.replace(/^\S+ /, '');

/** One step: box, number, what to do with its amounts, what to mind, torques, room for a reading and for initials. */
function stepOf(
  { step, number, mind, about }: SheetStep,
  kind: MachineKind,
  { fillIn, readIn, amount }: Showing['format'],
): Markup {
  const assumed = step.amounts.filter((a) => a.assumed && LOOKED_UP.includes(a.name));
  const more = step.detail || mind.length > 0 || step.doNotRide;
  const leave = !step.done && canBeLeftOut(step.phase);
  return html`<li class="step" data-step="${step.id}"${step.date !== undefined && html` data-day="${step.date}"`}${leave && html` data-leave`}><span class="box${step.done && ' is-done'}"></span><span class="no">${number}</span><div class="body"><p><strong class="title">${fillIn(step.title, step.amounts)}</strong>${step.safetyCritical && html` <span class="critical">${words.critical}</span>`}${about.length > 0 && html` <span class="quiet">${about.join(' · ')}</span>`}</p>
${
  more &&
  html`<p>${step.detail && `${fillIn(step.detail, step.amounts)} `}${
    mind.length > 0 && html`<span class="mind"><strong>${words.mind}</strong> ${mind.join('; ')}. </span>`
  }${step.doNotRide && html`<span class="stops"><strong>${words.stops(kind)}</strong> ${step.doNotRide}</span>`}</p>`
}
${step.torques.map(
  (r) =>
    html`<p>${words.torqueOf(r.count, r.what, r.head)}: <strong>${
      r.torqueNm === undefined
        ? words.noFigure
        : `${figure(r.torqueNm, { amount })} N·m (${figure(r.torqueLbfFt, { amount })} lbf·ft), ${words.condition[r.condition]}`
    }</strong>${r.note && ` ${r.note}`}</p>`,
)}</div>${
    (step.reading || step.safetyCritical || assumed.length > 0) &&
    html`<div class="fill">${assumed.map((a) => html`<span class="blank">${words.manualSays(unitOf(amount(a.value, unitFor(a.unit, a.name))))}</span>`)}${step.reading && html`<span class="blank">${readIn(step.reading)}</span>`}${step.safetyCritical && html`<span class="blank">${words.initials}</span>`}</div>`
  }</li>`;
}
