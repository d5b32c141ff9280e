import type { IsoDate } from '../household.ts';
import type { Misfit } from '../season-plan.ts';
import type { Built } from './build.ts';
import type { Schedule } from './problem.ts';
import type { AgendaTask } from './types.ts';

/** Why a step found no place. */
type Cause =
  | { kind: 'no-session' }
  | { kind: 'too-long'; longestH: number }
  | { kind: 'waits'; until: IsoDate }
  | { kind: 'follows' }
  | { kind: 'hours' };

/** Steps named in a message; the rest are counted. */
const NAMED = 6;

/**
 * What did not fit, in words: one message for each latest date and cause.
 * @param tasks - as given to the agenda
 * @param built - their problem
 * @param schedule - its solution
 * @param asOf - the day the plan is made for: a latest day before it is spoken of as past
 * @returns messages by date
 */
export function misfitsOf(tasks: readonly AgendaTask[], built: Built, schedule: Schedule, asOf: IsoDate): Misfit[] {
  const missing = [...schedule.missing].sort((a, b) => a - b);
  const causes = new Map(missing.map((i) => [i, causeOf(i, tasks, built, schedule)]));
  const groups = new Map<string, number[]>();
  for (const i of missing) {
    const cause = causes.get(i)!;
    const detail = cause.kind === 'waits' ? cause.until : cause.kind === 'too-long' ? `${cause.longestH}` : '';
    const key = `${tasks[i]!.latest}|${cause.kind}|${detail}`;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([, members]) => {
      const before = tasks[members[0]!]!.latest;
      const minutes = members.reduce((sum, i) => sum + tasks[i]!.minutes, 0);
      return {
        steps: members.map((i) => ({ machine: tasks[i]!.machine, step: tasks[i]!.step })),
        hoursMissing: minutes / 60,
        before,
        text: `${names(members, tasks)}: ${explain(causes.get(members[0]!)!, before, minutes)}${before < asOf ? ' That day is past.' : ''}`,
      };
    });
}

function causeOf(i: number, tasks: readonly AgendaTask[], { problem, dates }: Built, schedule: Schedule): Cause {
  const a = problem.activities[i]!;
  if (a.after.some(({ of }) => schedule.day[of] === -1)) return { kind: 'follows' };
  if (!(a.to >= a.from)) return { kind: 'no-session' };
  const days = problem.days.slice(a.from, a.to + 1);
  const longest = Math.max(...days.map((d) => d.length)) - problem.tripMinutes[a.place]!;
  if (!a.splittable && a.minutes > longest) return { kind: 'too-long', longestH: Math.max(0, longest) / 60 };
  const ready = Math.max(...a.after.map(({ of, lag }) => schedule.end[of]! + lag), Number.NEGATIVE_INFINITY);
  const last = days.at(-1)!;
  if (ready > last.start + last.length) {
    const day = new Date(Math.ceil(ready / 1440) * 86_400_000).toISOString().slice(0, 10);
    return { kind: 'waits', until: day > tasks[i]!.latest ? day : dates[a.to]! };
  }
  return { kind: 'hours' };
}

function explain(cause: Cause, before: IsoDate, minutes: number): string {
  const work = `${hours(minutes / 60)} of work`;
  switch (cause.kind) {
    case 'no-session':
      return `${work}, and no free hours at all in the time up to ${before}.`;
    case 'too-long':
      return `${work} in one go up to ${before}, but the longest session has ${hours(cause.longestH)}: one longer day is needed.`;
    case 'waits':
      return `${work} up to ${before}, but what it waits for is over only about ${cause.until}.`;
    case 'follows':
      return `${work} up to ${before} that can only follow steps which do not fit.`;
    case 'hours':
      return `${work} that do not fit up to ${before}: ${hours(minutes / 60)} more are needed by then.`;
  }
}

function hours(h: number): string {
  return `${Number(h.toFixed(h < 1 ? 2 : 1))} h`;
}

function names(members: readonly number[], tasks: readonly AgendaTask[]): string {
  const said = members
    .slice(0, NAMED)
    .map((i) => tasks[i]!.title)
    .join('; ');
  const more = members.length - NAMED;
  return more > 0 ? `${said}; and ${more} more ${more === 1 ? 'step' : 'steps'}` : said;
}
