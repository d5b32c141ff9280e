/** How far 50-year lows lie under the coldest month's minimum: least squares on stations of a published table. */
import { DEEPEST_AT_C, depthTerms } from '../../planner/climate/index.ts';

/** A station with its normals, the mean of its yearly lowest and the low that comes back once in 50 years. */
export interface StationLow {
  latitudeDeg: number;
  meanC: readonly number[];
  minC: readonly number[];
  yearlyLowC: number;
  low50C: number;
}

/** Of the stations that are fitted to, this share is to get a low at or under the published one. */
export const SAFE_SHARE = 0.9;

/** South of the plains stations count whose coldest month's mean daily minimum is no lower: the others need no fit of their own [°C]. */
export const MILD_C = 4;

/** The constants of the fit, without the margin. */
export interface DepthFit {
  baseK: number;
  perRange: number;
  perLead: number;
  perDegree: number;
  perAway: number;
  /** What the base has to grow by so that the share of the stations gets a low at or under the published one [K]. */
  marginK: number;
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
  const [baseK, perRange, perLead, perDegree, perAway] = found as [number, number, number, number, number];
  return {
    baseK,
    perRange,
    perLead,
    perDegree,
    perAway,
    marginK: ofShare(left),
    leftK: Math.sqrt(left.reduce((sum, k) => sum + k * k, 0) / left.length),
  };
}

/**
 * How far the lows of the mild stations south of the plains lie under the coldest month's minimum.
 * @param stations - with their published lows
 * @returns depth that holds the share of them, and the mean of a middle year's [K]
 */
export function fitOpenSouth(stations: readonly StationLow[]): { worstK: number; typicalK: number } {
  const mild = stations
    .map(({ minC, ...rest }) => ({ ...rest, coldestC: Math.min(...minC) }))
    .filter(({ coldestC }) => coldestC >= MILD_C);
  const sum = mild.reduce((all, { coldestC, yearlyLowC }) => all + coldestC - yearlyLowC, 0);
  return { worstK: ofShare(mild.map(({ coldestC, low50C }) => coldestC - low50C)), typicalK: sum / mild.length };
}

/** The value that the share of them does not exceed. */
const ofShare = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.ceil(SAFE_SHARE * values.length) - 1]!;

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
