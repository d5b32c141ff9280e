/**
 * Repeatable random numbers.
 * @param seed - any integer; the same seed gives the same numbers
 * @returns a function that gives the next number, 0 ≤ x < 1
 * Source: the mulberry32 generator, T. Ettinger (2017), public domain.
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
