/** The small parts of a shown plan: warnings, facts, tables, pictures, reasons. */
import { legendMark, type Table } from '../../figures/index.ts';
import type { Derivation, Warning } from '../../planner/season-plan.ts';
import { drawn, html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { type Fold, unfolded } from './fold.ts';
import type { Showing } from './showing.ts';

const GRAVEST_FIRST: readonly Warning['level'][] = ['danger', 'warning', 'note'];
/** So many are read at a glance; the notes of a longer list unfold. */
const GLANCE = 3;

/**
 * Warnings, the gravest first; the level stands in words.
 * @param warnings - any
 * @param fold - how the notes of a long list are put away
 * @param about - what stands before a warning: its machine, where a page speaks of several
 */
export function warningList(
  warnings: readonly Warning[],
  fold: Fold = unfolded,
  about: (warning: Warning) => Markup | undefined = () => undefined,
): Markup {
  const sorted = [...warnings].sort((a, b) => GRAVEST_FIRST.indexOf(a.level) - GRAVEST_FIRST.indexOf(b.level));
  const notes = sorted.length > GLANCE ? sorted.filter((w) => w.level === 'note') : [];
  const seen = sorted.filter((w) => !notes.includes(w));
  const list = (some: readonly Warning[]) =>
    html`<ul class="warnings">${some.map(
      (w) =>
        html`<li class="warning is-${w.level}"><p><b>${WORDS.levels[w.level]}</b> ${about(w)} ${w.text}</p><p>${w.act}</p></li>`,
    )}</ul>`;
  return html`${seen.length > 0 && list(seen)}${
    notes.length > 0 && fold({ summary: WORDS.notes(notes.length), body: list(notes) })
  }`;
}

export function section(id: string, heading: string, ...body: (Markup | false)[]): Markup {
  return html`<section class="section" aria-labelledby="${id}"><h2 id="${id}">${heading}</h2>${body}</section>`;
}

/** Names and values; a row without a value is left out. */
export function facts(rows: readonly (readonly [string, string | Markup | undefined])[]): Markup {
  const given = rows.filter(([, value]) => value !== undefined && value !== '');
  return html`<dl class="facts">${given.map(
    ([name, value]) => html`<dt>${name}</dt><dd${String(value).length > 36 && html` class="long"`}>${value}</dd>`,
  )}</dl>`;
}

/** A table that scrolls sideways on a small screen; the first cell of a row is its heading. */
export function table(
  label: string,
  head: readonly string[],
  rows: readonly (readonly (string | Markup)[])[],
  caption?: string,
): Markup {
  return html`<div class="scroll" role="group" aria-label="${label}" tabindex="0"><table>${
    caption !== undefined && html`<caption>${caption}</caption>`
  }
<thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead>
<tbody>${rows.map(
    (row) =>
      html`<tr>${row.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`))}</tr>`,
  )}</tbody></table></div>`;
}

/** The numbers of a picture. */
export const dataTable = ({ caption, head, rows }: Table): Markup => table(caption, head, rows, caption);

/** A picture, what its marks mean, and the same numbers as a table. */
export function figure(
  svg: string,
  legend: readonly (readonly [mark: string, meaning: string])[],
  numbers: Table,
  fold: Fold = unfolded,
): Markup {
  return html`<figure>${drawn(svg)}${
    legend.length > 0 &&
    html`<ul class="legend">${legend.map(
      ([mark, meaning]) => html`<li>${drawn(legendMark(mark))} ${meaning}</li>`,
    )}</ul>`
  }${fold({
    summary: html`${WORDS.asTable}<span class="unseen">: ${numbers.caption}</span>`,
    body: dataTable(numbers),
    screenOnly: true,
  })}</figure>`;
}

/** How numbers came about, unfolding under them: equation, what went in, result, sources, caveat; and of which of several alike. */
export function whys(
  derivations: readonly Derivation[],
  { fold, format: { measured, figures }, method }: Showing,
  of?: string,
): Markup {
  const words = WORDS.derivation;
  return html`${derivations.map((d) => {
    const { title, link } = method(d.method);
    return fold({
      summary: WORDS.whyOf(of === undefined ? title : `${title}, ${of}`),
      body: html`<div class="why">
<p class="equation">${d.equation}</p>
<table><caption class="unseen">${words.inputs}</caption>
<thead><tr><th scope="col">${words.inputs}</th><th scope="col" class="number">${words.value}</th></tr></thead>
<tbody>${d.inputs.map(
        ({ name, value, unit }) =>
          html`<tr><th scope="row">${figures(name)}</th><td class="number">${measured(value, unit, d.method)}</td></tr>`,
      )}
<tr><th scope="row">${words.result}</th><td class="number"><strong>${measured(d.result.value, d.result.unit, d.method)}</strong></td></tr></tbody></table>
<p class="small">${words.source}: ${d.sources.join('; ')}</p>
${d.caveat && html`<p class="small">${words.caveat}: ${figures(d.caveat)}</p>`}
<p class="small"><a class="target" href="${link}">${words.method}<span class="unseen">: ${title}</span></a></p></div>`,
    });
  })}`;
}
