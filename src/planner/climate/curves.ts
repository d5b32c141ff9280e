import { exp, log } from '../elementary.ts';
import { MONTH_DAYS, MONTH_START, monthMeans } from './calendar.ts';
import { checkNormals } from './check.ts';
import { vapourPressurePa } from './psychrometrics.ts';
import type { DailyCurves, MonthlyNormals } from './types.ts';
import { DAYS_PER_YEAR } from './types.ts';

/** Mean of 6·u·(1 − u) over the midpoints of n days: the weight of a month's bow in its mean. */
function bowMean(days: number): number {
  return 1 + 0.5 / (days * days);
}

/** Solves a small linear system for several right sides at once, by elimination with pivoting. */
function solve(matrix: number[][], right: number[][]): number[][] {
  const n = matrix.length;
  const a = matrix.map((row, i) => [...row, ...right[i]!]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[pivot]![c]!)) pivot = r;
    [a[c], a[pivot]] = [a[pivot]!, a[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const factor = a[r]![c]! / a[c]![c]!;
      if (factor === 0) continue;
      for (let k = c; k < a[r]!.length; k++) a[r]![k]! -= factor * a[c]![k]!;
    }
  }
  return a.map((row, i) => row.slice(n).map((v) => v / row[i]!));
}

/**
 * Weight of each month's mean in each day's value, day after day (365 × 12).
 *
 * Within month m the curve is b0·(1 − u) + b1·u + 6·k·u·(1 − u), u from 0 to 1. The bow k makes the mean over the days
 * of the month exactly the normal; equal slopes on both sides of each month's end give the twelve border values b.
 */
const WEIGHTS: Float64Array = (() => {
  const matrix = Array.from({ length: 12 }, () => Array<number>(12).fill(0));
  const right = Array.from({ length: 12 }, () => Array<number>(12).fill(0));
  for (let m = 0; m < 12; m++) {
    const after = (m + 1) % 12;
    const n0 = MONTH_DAYS[m]!;
    const n1 = MONTH_DAYS[after]!;
    const q0 = 6 / bowMean(n0);
    const q1 = 6 / bowMean(n1);
    const row = matrix[m]!;
    row[m]! += (-1 + q0 / 2) / n0;
    row[after]! += (1 + q0 / 2) / n0 - (-1 - q1 / 2) / n1;
    row[(m + 2) % 12]! += -(1 - q1 / 2) / n1;
    right[m]![m]! += q0 / n0;
    right[m]![after]! += q1 / n1;
  }
  const border = solve(matrix, right);
  const weights = new Float64Array(DAYS_PER_YEAR * 12);
  for (let m = 0; m < 12; m++) {
    const n = MONTH_DAYS[m]!;
    for (let d = 0; d < n; d++) {
      const u = (d + 0.5) / n;
      const bow = (6 * u * (1 - u)) / bowMean(n);
      for (let j = 0; j < 12; j++) {
        const b0 = border[m]![j]!;
        const b1 = border[(m + 1) % 12]![j]!;
        weights[(MONTH_START[m]! + d) * 12 + j] = b0 * (1 - u) + b1 * u + bow * ((j === m ? 1 : 0) - (b0 + b1) / 2);
      }
    }
  }
  return weights;
})();

/**
 * Smooth daily values whose mean over each month is exactly the month's value.
 * @param monthly - 12 values, January first
 * @returns 365 values, 1 January first, periodic
 * Source: periodic quadratic histospline (the derivative of the cubic spline through the running sum), the alternative
 *   to Rymes and Myers, Solar Energy 71 (2001) 225–231.
 * Error: month means return to rounding.
 */
export function meanPreserving(monthly: readonly number[]): Float64Array {
  if (monthly.length !== 12) throw new RangeError(`monthly values: ${monthly.length} found, 12 expected`);
  const daily = new Float64Array(DAYS_PER_YEAR);
  for (let d = 0, w = 0; d < DAYS_PER_YEAR; d++) {
    let sum = 0;
    for (let m = 0; m < 12; m++) sum += WEIGHTS[w++]! * monthly[m]!;
    daily[d] = sum;
  }
  return daily;
}

/**
 * The same for quantities that are never negative: smooth in the logarithm, so that a steep spring never swings below 0.
 * @param monthly - 12 values, none negative
 * @returns 365 positive values
 * Error: month means return within 1 in 10 000.
 */
export function meanPreservingPositive(monthly: readonly number[]): Float64Array {
  const least = 1e-3;
  const target = monthly.map((v) => Math.max(v, least));
  const logs = target.map(log);
  let daily = meanPreserving(logs).map(exp);
  for (let pass = 0; pass < 20; pass++) {
    const got = monthMeans(daily);
    let worst = 0;
    for (let m = 0; m < 12; m++) {
      const off = log(target[m]! / got[m]!);
      worst = Math.max(worst, Math.abs(off));
      logs[m]! += off;
    }
    if (worst < 1e-5) break;
    daily = meanPreserving(logs).map(exp);
  }
  return daily;
}

/**
 * Smooth daily mean, minimum, maximum and vapour pressure from monthly normals.
 * @param normals - monthly normals
 * @returns 365 values each; every day's minimum is at or below its mean, and its maximum at or above
 * Error: the mean over each month returns the normal within 0.01 K, vapour pressure within 1 in 10 000. The month's
 *   vapour pressure is that of its mean temperature and mean humidity: dew points so found are 0.6 K high on average.
 */
export function dailyCurves(normals: MonthlyNormals): DailyCurves {
  const met = known.get(normals) ?? curvesOf(normals);
  known.set(normals, met);
  return met;
}

/** Curves of normals already met; normals are never changed. */
const known = new WeakMap<MonthlyNormals, DailyCurves>();

function curvesOf(normals: MonthlyNormals): DailyCurves {
  checkNormals(normals);
  const meanC = meanPreserving(normals.meanC);
  const below = meanPreservingPositive(normals.meanC.map((t, m) => t - normals.minC[m]!));
  const above = meanPreservingPositive(normals.maxC.map((t, m) => t - normals.meanC[m]!));
  return {
    meanC,
    minC: meanC.map((t, d) => t - below[d]!),
    maxC: meanC.map((t, d) => t + above[d]!),
    vapourPa: meanPreservingPositive(normals.meanC.map((t, m) => vapourPressurePa(t, normals.rhPct[m]!))),
  };
}
