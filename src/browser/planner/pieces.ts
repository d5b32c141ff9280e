/** Small pieces of the planner page's markup. */
import { html } from '../../site/html.ts';
import type { Asks } from './messages.ts';
import { PLANNER } from './words.ts';

type Problems<A extends 'form' | 'files'> = Asks[A][1]['problems'];

/** Answers that cannot be, by machine; empty where there are none. */
export function answerProblems(problems: Problems<'form'>): string {
  if (problems.length === 0) return '';
  const rows = problems.map(
    (p) => html`<li><p><strong>${p.machine}: ${p.field}</strong> ${p.what}.</p><p>${p.fix}</p></li>`,
  );
  return html`<p>${PLANNER.problems(problems.length)}</p><ul class="problems">${rows}</ul>`.text;
}

/** What is wrong in loaded files, each at its place; empty where nothing is. */
export function fileProblems(problems: Problems<'files'>): string {
  if (problems.length === 0) return '';
  const rows = problems.map(
    (p) =>
      html`<li><p><code>${p.file}:${p.line}:${p.column}</code> <strong>${p.field}</strong> ${p.what}.</p><p>${p.fix}</p></li>`,
  );
  const files = new Set(problems.map((p) => p.file)).size;
  return html`<h2>${PLANNER.filesProblems(problems.length, files)}</h2>
<ul class="problems">${rows}</ul>`.text;
}

/**
 * The machines to choose from.
 * @param current - which of them is shown
 * @param loaded - whether they are those of files, to which none can be added here
 */
export function machineTabs(names: readonly string[], current: number, loaded: boolean): string {
  const tabs = names.map(
    (name, i) =>
      html`<li><button type="button" data-at="${i}" aria-current="${i === current ? 'true' : 'false'}">${name || '—'}</button></li>`,
  );
  const another = html`<li><button type="button" data-at="new">+<span class="unseen">${PLANNER.add}</span></button></li>`;
  return html`${tabs}${!loaded && another}`.text;
}
