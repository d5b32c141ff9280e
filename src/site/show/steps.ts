import type { PlanStep } from '../../planner/season-plan.ts';
import { html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { section } from './parts.ts';
import type { Showing } from './showing.ts';

/** What to do on which day, over the whole rest; before it what has found no day. */
export function days({ plan, machine, format }: Showing, heading: string): Markup {
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
  const title = (s: PlanStep) => format.fillIn(s.title, s.amounts);
  const misfits = plan.misfits.filter(({ steps: left }) => left.some(({ machine: id }) => id === machine.id));
  return section(
    'days',
    heading,
    misfits.length > 0 &&
      html`<ul class="warnings">${misfits.map(
        ({ text }) => html`<li class="warning is-warning"><p><b>${WORDS.agenda.misfits}</b> ${text}</p></li>`,
      )}</ul>`,
    html`<ol class="plain">${[...byDay]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(
        ([date, own]) => html`<li class="session"><p><time datetime="${date}">${format.dateText(date)}</time>
<span class="quiet under">${[...new Set(own.map((s) => WORDS.phases[s.phase]))].join(', ')}, ${format.duration(own.reduce((sum, s) => sum + s.minutes, 0))}</span></p>
<ul>${own.map((s) => html`<li>${title(s)}${s.done && html` <span class="quiet">${WORDS.sheet.done}</span>`}</li>`)}</ul></li>`,
      )}</ol>`,
  );
}
