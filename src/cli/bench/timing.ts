/** Least and median of repeated runs after half as many to warm up. */

/** Keeps what is computed from being thrown away by the compiler. */
const kept: unknown[] = [];

export interface Timed {
  /** Of one run [ms]. */
  median: number;
  least: number;
}

/**
 * Times a function.
 * @param run - what is timed
 * @param times - runs that count
 */
export function time(run: () => unknown, times: number): Timed {
  for (let i = 0; i < Math.ceil(times / 2); i++) once(run);
  return summary(Array.from({ length: times }, () => once(run)));
}

/**
 * Times a function beside another that does the same: by turns, each first as often as the other, so that what else the
 * processor does, and what one leaves to be collected, falls on both alike.
 * @param run - what is timed
 * @param other - what it is held against
 * @param times - pairs of runs that count
 * @returns both, and the median of what the first took over what the other took in the same pair
 */
export function timeBeside(
  run: () => unknown,
  other: () => unknown,
  times: number,
): { run: Timed; other: Timed; ratio: number } {
  const pair = (otherFirst: boolean): [number, number] => {
    if (!otherFirst) return [once(run), once(other)];
    const held = once(other);
    return [once(run), held];
  };
  for (let i = 0; i < Math.ceil(times / 2); i++) pair(i % 2 === 1);
  const pairs = Array.from({ length: times }, (_, i) => pair(i % 2 === 1));
  return {
    run: summary(pairs.map(([own]) => own)),
    other: summary(pairs.map(([, held]) => held)),
    ratio: summary(pairs.map(([own, held]) => own / held)).median,
  };
}

function once(run: () => unknown): number {
  const start = performance.now();
  kept[0] = run();
  return performance.now() - start;
}

function summary(values: readonly number[]): Timed {
  const sorted = [...values].sort((a, b) => a - b);
  return { median: sorted[sorted.length >> 1]!, least: sorted[0]! };
}
