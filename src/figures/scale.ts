/** From the numbers of a plan to the coordinates of a picture, along a straight line. */
import { ticks } from 'd3-array';

type Pair = readonly [number, number];

export interface Scale {
  /** Where a value stands. */
  (value: number): number;
  /** About so many round values between the ends. */
  ticks(count: number): number[];
}

/**
 * A straight-line scale.
 * @param from - values at both ends, the smaller first and not the same
 * @param to - coordinates at both ends, in either order
 */
export function linear([low, high]: Pair, [start, end]: Pair): Scale {
  const at = (value: number) => {
    const share = (value - low) / (high - low);
    return start * (1 - share) + end * share;
  };
  return Object.assign(at, { ticks: (count: number) => ticks(low, high, count) });
}
