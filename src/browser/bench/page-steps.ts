/** The steps that stand on a page, with what the record of the device says of them. */
import type { PlanStep } from '../../planner/season-plan.ts';
import { html } from '../../site/html.ts';
import { addBoxes } from './boxes.ts';
import type { Entry } from './entries.ts';
import type { ShownStep } from './replan.ts';
import { BENCH } from './words.ts';

export interface PageStep {
  id: string;
  title: string;
  phase: PlanStep['phase'];
}

const stepsOnPage = () => [...document.querySelectorAll<HTMLElement>('li.step[data-step]')];

/** The step where it stands on the page. */
export const stepOnPage = (step: string) => stepsOnPage().find((item) => item.dataset.step === step);

/**
 * Ticks what the record calls done, and marks what it leaves out; what the build knows as done stays done.
 * @param entries - of the machine and the season
 * @param steps - of the machine
 * @param early - boxes that are being written down: they stay as they are
 */
export function showTicks(
  entries: readonly Entry[],
  steps: readonly PageStep[],
  early: ReadonlyMap<string, boolean>,
): void {
  const done = new Set(entries.flatMap((e) => (e.kind === 'done' ? [e.step] : [])));
  // Who ticked the printed sheet may have written one line for the whole of it.
  const whole = new Map(steps.map(({ id, phase }) => [id, phase === 'swap' ? 'lay-up' : phase]));
  const left = new Map(entries.flatMap((e) => (e.kind === 'skipped' ? [[e.step, e.why ?? '']] : [])));
  for (const item of stepsOnPage()) {
    const { step = '' } = item.dataset;
    const box = item.querySelector<HTMLInputElement>('input.box');
    if (box && !early.has(step)) box.checked = done.has(step) || done.has(whole.get(step) ?? '') || box.defaultChecked;
    const why = left.get(step);
    item.classList.toggle('is-left', why !== undefined);
    if (box) box.disabled = why !== undefined;
    remark(item, 'left', why === undefined ? '' : why === '' ? BENCH.leftOut : `${BENCH.leftOut}: ${why}`);
  }
}

/**
 * Brings the steps of a page to a plan that was made anew: days that moved, steps that came or fell away.
 * @param planned - the steps of this page in the new plan, in order
 * @param tick - what is said before the title of a box
 * @param falls - whether a step that the new plan has not is told to fall away
 */
export function showPlanned(planned: readonly ShownStep[], tick: string, falls: (step: string) => boolean): void {
  const there = new Map(stepsOnPage().map((item) => [item.dataset.step!, item]));
  let before: HTMLElement | undefined;
  for (const step of planned) {
    const item = there.get(step.id);
    item?.classList.remove('is-gone');
    if (item) remark(item, 'planned', dayRemark(item, step));
    const box = item?.querySelector<HTMLInputElement>('input.box');
    if (item) remark(item, 'read', step.done && box && !box.checked ? BENCH.read : '');
    before = item ?? added(step, before ?? [...there.values()][0], before === undefined, tick);
    there.delete(step.id);
  }
  for (const [id, item] of there) {
    if (!falls(id) || item.classList.contains('is-left')) continue;
    if (item.querySelector<HTMLInputElement>('input.box')?.checked) continue;
    item.classList.add('is-gone');
    remark(item, 'planned', BENCH.fallsAway);
  }
}

/** A day that stands beside the step is changed; one that stands in the heading above is told anew. */
function dayRemark(item: HTMLElement, { date, day }: ShownStep): string {
  const own = item.querySelector<HTMLTimeElement>('time');
  if (own) {
    own.textContent = day;
    if (date) own.dateTime = date;
    return '';
  }
  const { day: printed } = item.dataset;
  return printed === undefined || date === undefined || printed === date ? '' : BENCH.movedTo(day);
}

function added(
  step: ShownStep,
  beside: HTMLElement | undefined,
  first: boolean,
  tick: string,
): HTMLElement | undefined {
  if (!beside) return undefined;
  const item = document.createElement('li');
  item.className = 'step';
  item.dataset.step = step.id;
  item.innerHTML =
    html`<span class="box"></span><span class="no"></span><p><span class="title">${step.title}</span> <time class="quiet" datetime="${step.date ?? ''}">${step.day}</time></p>`.text;
  if (first) beside.before(item);
  else beside.after(item);
  addBoxes(item.parentElement!, tick);
  return item;
}

/** One line under a step, of a kind of its own; empty: none. */
function remark(item: HTMLElement, kind: string, text: string): void {
  const met = item.querySelector<HTMLElement>(`[data-remark=${kind}]`);
  if (text === '') {
    met?.remove();
    return;
  }
  const line = met ?? document.createElement('p');
  line.className = 'remark';
  line.dataset.remark = kind;
  line.textContent = text;
  if (!met) item.append(line);
}
