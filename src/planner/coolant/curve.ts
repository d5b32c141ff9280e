/**
 * Reads a table between its rows by a curve that keeps the table's own rise or fall (monotone cubic).
 *
 * Straight lines would lie below a freezing curve, which bends down, and promise too much protection between wide rows.
 * @param points - at least three [x, y], x rising
 * @param x - where to read, within the table
 * @returns y
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300: slopes by the harmonic mean of the neighbours.
 * Valid: from the first to the last x.
 */
export function readCurve(points: readonly (readonly [number, number])[], x: number): number {
  const first = points[0]!;
  const last = points.at(-1)!;
  if (!(x >= first[0] && x <= last[0]))
    throw new RangeError(`table: found ${x}, expected ${first[0]} to ${last[0]}, the range of the table`);
  const i = Math.max(0, points.findIndex((p) => x <= p[0]) - 1);
  const [x0, y0] = points[i]!;
  const [x1, y1] = points[i + 1]!;
  const h = x1 - x0;
  const t = (x - x0) / h;
  const m0 = slopeAt(points, i) * h;
  const m1 = slopeAt(points, i + 1) * h;
  return y0 * (1 + 2 * t) * (1 - t) ** 2 + m0 * t * (1 - t) ** 2 + y1 * t ** 2 * (3 - 2 * t) + m1 * t ** 2 * (t - 1);
}

function slopeAt(points: readonly (readonly [number, number])[], i: number): number {
  const step = (k: number) => points[k + 1]![0] - points[k]![0];
  const rise = (k: number) => (points[k + 1]![1] - points[k]![1]) / step(k);
  const n = points.length;
  if (i === 0) return endSlope(rise(0), rise(1), step(0), step(1));
  if (i === n - 1) return endSlope(rise(n - 2), rise(n - 3), step(n - 2), step(n - 3));
  const [a, b] = [rise(i - 1), rise(i)];
  if (!(a * b > 0)) return 0;
  const w1 = 2 * step(i) + step(i - 1);
  const w2 = step(i) + 2 * step(i - 1);
  return (w1 + w2) / (w1 / a + w2 / b);
}

/** Slope at an end from its two nearest pieces, kept to the sign of the end piece. */
function endSlope(near: number, next: number, nearStep: number, nextStep: number): number {
  const slope = ((2 * nearStep + nextStep) * near - nearStep * next) / (nearStep + nextStep);
  if (!(slope * near > 0)) return 0;
  return near * next <= 0 && Math.abs(slope) > 3 * Math.abs(near) ? 3 * near : slope;
}
