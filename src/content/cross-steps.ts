/** Names of steps in what was done and left out: each must be one that a step has. */
import type { Procedure } from '../planner/household.ts';
import { isStepName } from '../planner/step-names.ts';
import { WHOLE_PHASES } from '../planner/ticked.ts';
import type { Say } from './cross-answers.ts';
import type { Dated } from './cross-years.ts';
import { nearest, printable } from './problem.ts';
import { type Known, knownEntries } from './sound.ts';

/** What steps can be named after; undefined where it is not all known. */
export interface StepsAround {
  procedures: readonly Procedure[] | undefined;
  jobs: readonly string[] | undefined;
  assemblies: readonly string[] | undefined;
}

/** Most names that a message lists. */
const MOST_NAMES = 8;

/** Names that no step has. Of a job or an assembly that may be gone, only a name near one that is there is told. */
export function stepProblems(data: Known<Pick<Dated, 'done' | 'skipped'>>, around: StepsAround, say: Say): void {
  const { procedures } = around;
  if (procedures === undefined) return;
  for (const list of ['done', 'skipped'] as const)
    for (const [i, { step }] of knownEntries(data[list])) {
      if (step === undefined) continue;
      const work = isStepName(step, procedures) ? workMeant(step, around) : undefined;
      if (isStepName(step, procedures) && work === undefined) continue;
      const meant = work ?? stepMeant(step, procedures, around);
      const listed = meant.slice(0, MOST_NAMES).join(', ') || 'oil.drain: a procedure and its step';
      say(
        [list, i, 'step'],
        `found the step "${printable(step)}", which no step is called, expected ${meant.length === 1 ? '' : 'one such as '}${listed}`,
        meant.length === 1 ? `Write ${listed}.` : 'Write the name as the page or plan.json has it.',
      );
    }
}

/** The name of a job's or an assembly's step that a mistyped one is near to; undefined where it is right, or may have been. */
function workMeant(step: string, { jobs, assemblies }: StepsAround): [string] | undefined {
  const [, kind, name] = /^(job|strip\.(?:off|on|check))\.(.*)$/.exec(step) ?? [];
  const known = kind === 'job' ? jobs : assemblies;
  if (name === undefined || known === undefined || known.includes(name)) return undefined;
  const near = nearest(name, known);
  return near === undefined ? undefined : [`${kind}.${near}`];
}

/**
 * The names that can have been meant: of the procedure that is named, or of the one nearest to it, the step that is nearest, or
 * all; else the same step elsewhere. Never a step of another procedure for what its name alone resembles: it would be ticked.
 */
function stepMeant(
  step: string,
  procedures: readonly Procedure[],
  { jobs = [], assemblies = [] }: StepsAround,
): string[] {
  const work = [
    ...jobs.map((id) => `job.${id}`),
    ...assemblies.flatMap((id) => ['off', 'on', 'check'].map((what) => `strip.${what}.${id}`)),
  ];
  const all = procedures.flatMap((p) => p.steps.map(({ id }) => `${p.id}.${id}`));
  const [name = '', own, n] = step.split('.');
  const behind = n !== undefined && /^\d+$/.test(n) && all.includes(`${name}.${own}`) ? [`${name}.${own}`] : undefined;
  if (behind) return behind;
  const ids = procedures.map(({ id }) => id);
  const isWork = name === 'job' || name === 'strip';
  const procedure = ids.includes(name) ? name : own === undefined || isWork ? undefined : nearest(name, ids);
  const steps = procedures.find(({ id }) => id === procedure)?.steps.map(({ id }) => id) ?? [];
  if (procedure !== undefined) {
    const near = own === undefined ? undefined : steps.includes(own) ? own : nearest(own, steps);
    return near === undefined ? steps.map((id) => `${procedure}.${id}`) : [`${procedure}.${near}`];
  }
  const whole = WHOLE_PHASES.filter((phase) => step.length <= phase.length + 2);
  const near = nearest(step, whole) ?? nearest(step, work);
  if (near !== undefined) return [near];
  if (isWork) return work.filter((one) => one.startsWith(`${name}.`));
  const sameStep = all.filter((one) => one.endsWith(`.${own ?? name}`));
  if (sameStep.length > 0) return sameStep;
  const alike = nearest(name, ids);
  return all.filter((one) => one.startsWith(`${alike}.`));
}
