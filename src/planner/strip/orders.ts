import type { Job } from '../household.ts';
import type { PartRow } from './parts.ts';

/** Jobs that share what comes off, and the parts they wait for together. */
export interface OrderGroup {
  /** Name of the group: its first job. */
  id: string;
  jobs: ReadonlySet<string>;
  /** What is to be ordered for them. */
  rows: PartRow[];
  /** Days until the last of it has come. */
  leadDays: number;
}

/** Group of parts for what no job needs off: used when it is refitted. */
export const REFIT_GROUP = 'refit';

/**
 * Parts put together as they are waited for: jobs that share anything that comes off are opened together, so none of them
 * is opened before the slowest part of all has come; jobs that share nothing do not wait for one another.
 * @param jobs - the jobs to be done
 * @param reach - ids of all that comes off for each job
 * @param parts - what jobs and assemblies ask for
 * @returns groups with something to order, in the order of their first jobs
 */
export function orderGroups(
  jobs: readonly Job[],
  reach: ReadonlyMap<string, ReadonlySet<string>>,
  parts: readonly PartRow[],
): OrderGroup[] {
  const groups: { jobs: Set<string>; assemblies: Set<string> }[] = [];
  for (const job of jobs) {
    const own = reach.get(job.id)!;
    const shared = groups.filter((g) => [...own].some((id) => g.assemblies.has(id)));
    const [first = { jobs: new Set<string>(), assemblies: new Set<string>() }, ...others] = shared;
    if (shared.length === 0) groups.push(first);
    for (const from of [{ jobs: new Set([job.id]), assemblies: own }, ...others]) {
      for (const id of from.jobs) first.jobs.add(id);
      for (const id of from.assemblies) first.assemblies.add(id);
    }
    for (const other of others) groups.splice(groups.indexOf(other), 1);
  }
  const wanted = parts.filter((p) => !p.inStock && p.leadDays > 0);
  const named = groups.map((g) => ({
    id: [...g.jobs][0]!,
    jobs: g.jobs,
    rows: wanted.filter((p) => (p.job !== undefined ? g.jobs.has(p.job) : g.assemblies.has(p.assembly!))),
  }));
  const forRefit = wanted.filter((p) => !named.some((g) => g.rows.includes(p)));
  return [...named, { id: REFIT_GROUP, jobs: new Set<string>(), rows: forRefit }]
    .filter((g) => g.rows.length > 0)
    .map((g) => ({ ...g, leadDays: Math.max(...g.rows.map((p) => p.leadDays)) }));
}
