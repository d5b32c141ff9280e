import type { Job, Machine } from '../household.ts';
import type { StripPlan, StripStep } from '../season-plan.ts';
import { mustComeOff, removalOrder } from './order.ts';
import { partRows, sumParts } from './parts.ts';
import { type StripProblem, stripProblems } from './problems.ts';
import { offStepId, onStepId } from './step-ids.ts';
import { toolList } from './tools.ts';
import { torqueRows } from './torque.ts';

/** The jobs of a machine that are still to be done, in the order of the content. */
export function openJobs(machine: Machine): Job[] {
  return machine.jobs.filter((j) => !j.done);
}

/**
 * One strip-down for all the jobs that are not done: what comes off, in what order, and what that asks for.
 *
 * What is off already (left so in the content, or taken off by the record and not refitted) stands first in `off` with no
 * minutes, so that `on` is the exact reverse and brings everything back. Handling minutes count taking off and refitting,
 * not the jobs themselves: bundled, each assembly is handled once; separate, once for each job that needs it off.
 * @param machine - with assemblies and jobs
 * @returns the plan, empty where there is nothing to do or where the content has a cycle; and the problems of the content
 */
export function planStrip(machine: Machine): { strip: StripPlan; problems: StripProblem[] } {
  const problems = stripProblems(machine);
  const jobs = openJobs(machine);
  const byId = new Map(machine.assemblies.map((a) => [a.id, a]));
  const reach = new Map(jobs.map((j) => [j.id, mustComeOff(machine.assemblies, j.assemblies)]));
  const nowOff = offNow(machine);
  const already = new Set(nowOff.map((n) => n.assembly));
  const needed = new Set([...reach.values()].flatMap((ids) => [...ids]));
  const chosen = new Set([...needed, ...already]);
  const order = removalOrder(machine.assemblies, chosen, waitsForStartUp(machine, needed, already)).off;

  const step = (id: string, minutes: number): StripStep => {
    const { name, cautions, behind } = byId.get(id)!;
    const forJobs = jobs.filter((j) => reach.get(j.id)!.has(id)).map((j) => j.id);
    return { assembly: id, name, minutes, forJobs, cautions, behind };
  };
  const off = order.map((id) => step(id, already.has(id) ? 0 : byId.get(id)!.offMinutes));
  const on = order.toReversed().map((id) => step(id, byId.get(id)!.onMinutes));
  const handling = (ids: Iterable<string>) =>
    [...ids].reduce((sum, id) => sum + byId.get(id)!.offMinutes + byId.get(id)!.onMinutes, 0);
  const spared = [...needed].filter((id) => already.has(id)).reduce((sum, id) => sum + byId.get(id)!.offMinutes, 0);
  const strip: StripPlan = {
    jobs: jobs.map((j) => ({ id: j.id, name: j.name, assemblies: j.assemblies, minutes: j.minutes })),
    off,
    on,
    minutesBundled: handling(needed) - spared,
    minutesSeparate: [...reach.values()].reduce((sum, ids) => sum + handling(ids), 0) - spared,
    parts: sumParts(partRows(machine, order, jobs)),
    tools: toolList(
      order.map((id) => byId.get(id)!),
      jobs,
    ),
    nowOff,
    torques: on.flatMap((s) => torqueRows(byId.get(s.assembly)!)),
  };
  return { strip, problems };
}

/** True where the record has an assembly back on, on that day or later. */
export function isOn(machine: Machine, assembly: string, since: string): boolean {
  return machine.doneSteps.some(({ stepId, date }) => stepId === onStepId(assembly) && date >= since);
}

/** What is off now: as the content left it, or taken off by the record and not refitted since. */
function offNow(machine: Machine): StripPlan['nowOff'] {
  const done = new Map(machine.doneSteps.map((d) => [d.stepId, d.date]));
  return machine.assemblies.flatMap(({ id, name }) => {
    const left = machine.asLeft.find((l) => l.item === id || l.item === `assembly:${id}`);
    const since = left?.since ?? done.get(offStepId(id));
    const isOff = (left !== undefined || done.has(offStepId(id))) && !isOn(machine, id, since ?? '');
    return isOff ? [{ assembly: id, name, where: left?.where, since }] : [];
  });
}

/**
 * What is off already and can wait for the start-up sheet: no job needs it off, and nothing that is refitted after a job
 * lies in front of it.
 * @param needed - ids that jobs need off
 * @param already - ids that are off now
 */
export function waitsForStartUp(
  machine: Machine,
  needed: ReadonlySet<string>,
  already: ReadonlySet<string>,
): Set<string> {
  return new Set(
    [...already].filter((id) => {
      const inFront = mustComeOff(machine.assemblies, [id]);
      return [...inFront].every((other) => !needed.has(other));
    }),
  );
}
