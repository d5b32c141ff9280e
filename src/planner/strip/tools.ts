import type { Assembly, Job } from '../household.ts';

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
  const wrench =
    torques.length > 0 ? [`torque wrench that covers ${range(Math.min(...torques), Math.max(...torques))} N·m`] : [];
  const locks = unique(
    fasteners.flatMap((f) => (f.threadlock ? [`thread lock, ${f.threadlock} strength`] : [])),
  ).sort();
  const paste = fasteners.some((f) => f.antiSeize) ? ['anti-seize'] : [];
  return unique([...heads, ...unique(jobs.flatMap((j) => j.tools)).sort(bySize), ...wrench, ...locks, ...paste]);
}

function range(low: number, high: number): string {
  const [from, to] = [low, high].map((nm) => String(Number(nm.toFixed(1))));
  return from === to ? from! : `${from}–${to}`;
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
