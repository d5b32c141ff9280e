/** How far 50-year lows lie under the coldest month's minimum: least squares on stations of a published table. */
import { DEEPEST_AT_C, depthTerms } from '../../planner/climate/index.ts';

/** A station with its normals and the low that comes back once in 50 years. */
export interface StationLow {
  latitudeDeg: number;
  meanC: readonly number[];
  minC: readonly number[];
  low50C: number;
}

/** The constants of the fit, without the margin. */
export interface DepthFit {
  baseK: number;
  perRange: number;
  perLead: number;
  perDegree: number;
  perAway: number;
  /** What the base has to grow by so that a share of the stations gets a low at or under the published one [K]. */
  marginK: (share: number) => number;
  /** Root of the mean square of what is left [K]. */
  leftK: number;
}

/**
 * Fits what the depth grows by, with its bounds (`widestRangeK`, `furthestLeadK`, `DEEPEST_AT_C`) as they are: they were chosen by
 * looking, as round figures past which the stations show no more growth.
 * @param stations - with their published lows
 */
export function fitDepth(stations: readonly StationLow[]): DepthFit {
  const rows = stations.map(termsOf);
  const depths = stations.map(({ minC, low50C }) => Math.min(...minC) - low50C);
  const found = leastSquares(rows, depths);
  const left = depths.map((depth, i) => depth - found.reduce((sum, factor, k) => sum + factor * rows[i]![k]!, 0));
  const ordered = left.toSorted((a, b) => a - b);
  const [baseK, perRange, perLead, perDegree, perAway] = found as [number, number, number, number, number];
  return {
    baseK,
    perRange,
    perLead,
    perDegree,
    perAway,
    marginK: (share) => ordered[Math.ceil(share * ordered.length) - 1]!,
    leftK: Math.sqrt(left.reduce((sum, k) => sum + k * k, 0) / left.length),
  };
}

function termsOf({ latitudeDeg, meanC, minC }: StationLow): number[] {
  const { rangeK, leadK, degrees } = depthTerms(meanC, latitudeDeg);
  return [1, rangeK, leadK, degrees, -Math.abs(Math.min(...minC) - DEEPEST_AT_C)];
}

/**
 * The factors with which the terms come nearest to the values.
 * Source: normal equations, solved by elimination with the largest pivot; fit for a handful of terms that differ.
 */
function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): number[] {
  const terms = [...rows[0]!.keys()];
  const sum = (of: (row: readonly number[], i: number) => number) => rows.reduce((all, row, i) => all + of(row, i), 0);
  const system = terms.map((j) => [
    ...terms.map((k) => sum((row) => row[j]! * row[k]!)),
    sum((row, i) => row[j]! * values[i]!),
  ]);
  for (const j of terms) {
    const pivot = terms
      .slice(j)
      .reduce((best, r) => (Math.abs(system[r]![j]!) > Math.abs(system[best]![j]!) ? r : best), j);
    [system[j], system[pivot]] = [system[pivot]!, system[j]!];
    for (const r of terms) {
      if (r === j) continue;
      const share = system[r]![j]! / system[j]![j]!;
      system[r] = system[r]!.map((x, k) => x - share * system[j]![k]!);
    }
  }
  return terms.map((j) => system[j]!.at(-1)! / system[j]![j]!);
}
