/** Least and median of repeated runs after as many to warm up. */

/** Keeps what is computed from being thrown away by the compiler. */
const kept: unknown[] = [];

/**
 * Times a function.
 * @param run - what is timed
 * @param times - runs that count
 * @returns milliseconds of one run
 */
export function time(run: () => unknown, times: number): { median: number; least: number } {
  for (let i = 0; i < Math.ceil(times / 2); i++) kept[0] = run();
  const all = Array.from({ length: times }, () => {
    const start = performance.now();
    kept[0] = run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { median: all[times >> 1]!, least: all[0]! };
}
