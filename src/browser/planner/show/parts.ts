/** The small parts of a shown plan: warnings, facts, tables, pictures, reasons. Same classes as the pages of the site. */
import { legendMark, type Table } from '../../../figures/index.ts';
import type { Derivation, Warning } from '../../../planner/season-plan.ts';
import type { Format } from '../../../site/formats.ts';
import { WORDS } from '../../../site/words.ts';
import { drawn, html, type Markup } from '../../html.ts';

export function warningList(warnings: readonly Warning[]): Markup {
  return html`<ul class="warnings">${warnings.map(
    (w) => html`<li class="warning is-${w.level}"><p><b>${WORDS.levels[w.level]}</b>${w.text}</p><p>${w.act}</p></li>`,
  )}</ul>`;
}

export function section(id: string, heading: string, ...body: Markup[]): Markup {
  return html`<section class="section" aria-labelledby="${id}"><h2 id="${id}">${heading}</h2>${body}</section>`;
}

export function facts(rows: readonly (readonly [string, string | undefined])[]): Markup {
  const given = rows.filter(([, value]) => value !== undefined && value !== '');
  return html`<dl class="facts">${given.map(
    ([name, value]) => html`<dt>${name}</dt><dd class="${value!.length > 36 && 'long'}">${value}</dd>`,
  )}</dl>`;
}

export function table(label: string, head: readonly string[], rows: readonly (readonly (string | Markup)[])[]): Markup {
  return html`<div class="scroll" role="group" aria-label="${label}" tabindex="0"><table>
<thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead>
<tbody>${rows.map(
    (row) =>
      html`<tr>${row.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`))}</tr>`,
  )}</tbody></table></div>`;
}

/** A picture, what its marks mean, and its numbers as a table where there is time for one. */
export function figure(
  svg: string,
  legend: readonly (readonly [string, string])[],
  numbers?: Table | undefined,
): Markup {
  return html`<figure>${drawn(svg)}<ul class="legend">${legend.map(
    ([mark, meaning]) => html`<li>${drawn(legendMark(mark))} ${meaning}</li>`,
  )}</ul>${
    numbers &&
    html`<details class="no-print"><summary>${WORDS.asTable}<span class="unseen">: ${numbers.caption}</span></summary>
${table(numbers.caption, numbers.head, numbers.rows)}</details>`
  }</figure>`;
}

export function whys(
  derivations: readonly Derivation[],
  { number }: Format,
  titleOf: (method: string) => string,
): Markup {
  const words = WORDS.derivation;
  return html`<div class="whys">${derivations.map(
    (d) => html`<details><summary>${WORDS.whyOf(titleOf(d.method))}</summary><div class="why">
<p class="equation">${d.equation}</p>
${facts(d.inputs.map((input) => [input.name, `${number(input.value)} ${input.unit}`.trim()]))}
<p>${words.result}: <strong>${`${number(d.result.value)} ${d.result.unit}`.trim()}</strong></p>
<p class="small">${words.source}: ${d.sources.join('; ')}</p>
${d.caveat && html`<p class="small">${words.caveat}: ${d.caveat}</p>`}</div></details>`,
  )}</div>`;
}
