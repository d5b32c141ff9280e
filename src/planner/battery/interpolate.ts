/**
 * Piecewise linear interpolation, held at the ends.
 * @param xs - rising
 * @param ys - one for each x
 * @param x - where
 */
export function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= xs[0]!) return ys[0]!;
  if (x >= xs[last]!) return ys[last]!;
  let i = 1;
  while (xs[i]! < x) i++;
  return ys[i - 1]! + ((ys[i]! - ys[i - 1]!) * (x - xs[i - 1]!)) / (xs[i]! - xs[i - 1]!);
}
