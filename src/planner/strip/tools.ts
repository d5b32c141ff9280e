import type { Assembly, Job } from '../household.ts';
import { formatOne } from '../units/index.ts';

/**
 * Tools for the whole strip-down: heads and drives by size, then what the jobs name, each once.
 * @param assemblies - those that come off or go on
 * @param jobs - the jobs to be done
 * @returns names; those of one kind of head stand together, small before large
 */
export function toolList(assemblies: readonly Assembly[], jobs: readonly Job[]): string[] {
  const fasteners = assemblies.flatMap((a) => a.fasteners);
  const heads = unique(fasteners.map((f) => f.head)).sort(bySize);
  const torques = fasteners.flatMap((f) => (f.torqueNm === undefined ? [] : [f.torqueNm]));
  const wrench = torques.length > 0 ? [`torque wrench that covers ${range(torques)}`] : [];
  const locks = unique(
    fasteners.flatMap((f) => (f.threadlock ? [`thread lock, ${f.threadlock} strength`] : [])),
  ).sort();
  const paste = fasteners.some((f) => f.antiSeize) ? ['anti-seize'] : [];
  return unique([...heads, ...unique(jobs.flatMap((j) => j.tools)).sort(bySize), ...wrench, ...locks, ...paste]);
}

/** From the least to the largest torque, rounded outwards, in both units. */
function range(torquesNm: readonly number[]): string {
  const least = Math.min(...torquesNm);
  if (!(least > 0)) throw new RangeError(`found a torque of ${least} N·m among the fasteners, expected more than 0`);
  const [low, high] = [Math.floor(least), Math.ceil(Math.max(...torquesNm))];
  const both = (system: 'metric' | 'us') => {
    const to = formatOne(high, 'N·m', system, 0);
    return low === high ? to : `${formatOne(low, 'N·m', system, 0).split(' ')[0]}–${to}`;
  };
  return `${both('metric')} (${both('us')})`;
}

/** The same tool written in two cases is one tool; the first spelling stays. */
function unique(names: readonly string[]): string[] {
  const seen = new Map<string, string>();
  for (const name of names) {
    const key = name.trim().toLowerCase().replace(/\s+/g, ' ');
    if (key !== '' && !seen.has(key)) seen.set(key, name.trim());
  }
  return [...seen.values()];
}

/** Kind of head first ("hex", "JIS", "T"), then the size as a number, so that 8 mm stands before 10 mm. */
function bySize(a: string, b: string): number {
  const [kindA, sizeA] = split(a);
  const [kindB, sizeB] = split(b);
  return compare(kindA, kindB) || sizeA - sizeB || compare(a, b);
}

function split(tool: string): [string, number] {
  const match = /^(.*?)\s*(\d+(?:[.,]\d+)?)/.exec(tool);
  if (!match) return [tool.toLowerCase(), 0];
  return [match[1]!.toLowerCase(), Number(match[2]!.replace(',', '.'))];
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
