import type { PlanStep } from '../../planner/season-plan.ts';
import { html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { section } from './parts.ts';
import type { Showing } from './showing.ts';

/** What to do on which day, over the whole rest: before it what has found no day, after it the days that are past. */
export function days({ plan, machine, format, fold }: Showing, heading: string): Markup {
  const steps = new Map(machine.steps.map((s) => [s.id, s]));
  const byDay = new Map<string, PlanStep[]>();
  const put = (date: string, step: PlanStep) => {
    const own = byDay.get(date) ?? [];
    if (!own.includes(step)) byDay.set(date, [...own, step]);
  };
  for (const session of plan.sessions)
    for (const { machine: id, step } of session.steps) {
      const found = id === machine.id ? steps.get(step) : undefined;
      if (found) put(session.date, found);
    }
  for (const step of machine.steps) if (step.date !== undefined) put(step.date, step);
  const misfits = plan.misfits.filter(({ steps: left }) => left.some(({ machine: id }) => id === machine.id));
  const all = [...byDay].sort(([a], [b]) => (a < b ? -1 : 1));
  const past = all.filter(([date]) => date < plan.asOf);
  return section(
    'days',
    heading,
    misfits.length > 0 &&
      html`<ul class="warnings">${misfits.map(
        ({ text }) => html`<li class="warning is-warning"><p><b>${WORDS.agenda.misfits}</b> ${text}</p></li>`,
      )}</ul>`,
    dayList(all.slice(past.length), plan.asOf, format),
    past.length > 0 &&
      fold({ summary: WORDS.machine.rest.pastDays(past.length), body: dayList(past, plan.asOf, format) }),
  );
}

function dayList(days: readonly (readonly [string, PlanStep[]])[], asOf: string, format: Showing['format']): Markup {
  const state = (s: PlanStep, date: string) =>
    s.done ? WORDS.sheet.done : date < asOf ? WORDS.machine.rest.passed : '';
  return html`<ol class="plain">${days.map(
    ([date, own]) => html`<li class="session"><p><time datetime="${date}">${format.dateText(date)}</time>
<span class="quiet under">${[...new Set(own.map((s) => WORDS.phases[s.phase]))].join(', ')}, ${format.duration(own.reduce((sum, s) => sum + s.minutes, 0))}</span></p>
<ul>${own.map((s) => html`<li>${format.fillIn(s.title, s.amounts)}${state(s, date) !== '' && html` <span class="quiet">${state(s, date)}</span>`}</li>`)}</ul></li>`,
  )}</ol>`;
}
