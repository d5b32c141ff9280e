import { dateOfDayIndex, dayIndexOf } from './calendar.ts';
import { dailyCurves, meanPreservingPositive } from './curves.ts';
import { normalsOf } from './normals.ts';
import { annualRangeK, daySpreadK } from './spread.ts';
import type { Climate, MachineUse, SeasonProposal } from './types.ts';
import { DAYS_PER_YEAR } from './types.ts';

/** Standard normal quantile of 9 in 10. */
const NINE_IN_TEN = 1.2816;

/** Idle months proposed where the climate itself never ends the use, and use where it never begins [d]. */
const FALLBACK_DAYS = 90;

interface UseRule {
  /** Whether each of the 365 days is fit for this use. */
  fit: boolean[];
  /** How fit each day is; the fallback looks for the least and the most. */
  score: Float64Array;
  why: string;
}

function ruleFor(climate: Climate, use: MachineUse): UseRule {
  const normals = normalsOf(climate);
  const curves = dailyCurves(normals);
  if (use === 'snow') {
    if (normals.snowDepthCm) {
      const depth = meanPreservingPositive(normals.snowDepthCm);
      const fit = Array.from(depth, (cm) => cm >= 10);
      return { fit, score: depth, why: 'normal snow depth of {100 mm} or more' };
    }
    const score = curves.meanC.map((t) => -2 - t);
    return { fit: Array.from(score, (s) => s > 0), score, why: 'normal daily mean under {-2 °C}' };
  }
  if (use === 'trail') {
    const score = curves.meanC.slice();
    return { fit: Array.from(score, (s) => s > 0), score, why: 'normal daily mean over {0 °C}, the ground not frozen' };
  }
  const range = annualRangeK(normals.meanC);
  const score = curves.minC.map((t, d) => {
    const frostMargin = NINE_IN_TEN * daySpreadK(range, curves.meanC[d]!);
    return t - Math.max(2, frostMargin);
  });
  return {
    fit: Array.from(score, (s) => s > 0),
    score,
    why: 'normal daily minimum over {2 °C}, and frost in fewer than 1 night in 10',
  };
}

/** The longest run of unfit days on the circle of the year, as [first, length]. */
function longestIdle(fit: boolean[]): [number, number] {
  let best: [number, number] = [0, 0];
  for (let start = 0; start < DAYS_PER_YEAR; start++) {
    if (fit[start] || !fit[(start + DAYS_PER_YEAR - 1) % DAYS_PER_YEAR]) continue;
    let length = 0;
    while (!fit[(start + length) % DAYS_PER_YEAR]) length++;
    if (length > best[1]) best = [start, length];
  }
  return best;
}

/** The stretch of so many days with the highest (or lowest) sum of scores; returns its first day. */
function extremeStretch(score: Float64Array, days: number, sign: 1 | -1): number {
  let best = 0;
  let bestSum = -Infinity;
  for (let start = 0; start < DAYS_PER_YEAR; start++) {
    let sum = 0;
    for (let k = 0; k < days; k++) sum += sign * score[(start + k) % DAYS_PER_YEAR]!;
    if (sum > bestSum) [best, bestSum] = [start, sum];
  }
  return best;
}

/**
 * The idle months that the climate proposes, where the user gave no dates: those under way on a date, or else the next.
 * Works from the warm and the cold days themselves, so in either hemisphere.
 * @param climate - normals or one hourly year
 * @param use - what the machine is used for
 * @param afterIsoDate - the proposal's first use is later than this date
 * @returns last day of use, first day of use after it, and why, with amounts in braces
 * Source: trade practice: road use ends as nights near +2 °C with a 1-in-10 margin against frost; a snow machine needs
 *   snow that stays (daily mean under −2 °C, or 10 cm of snow where depth is known); common practice.
 * Error: a proposal; a year may be three weeks early or late.
 */
export function proposeSeason(climate: Climate, use: MachineUse, afterIsoDate: string): SeasonProposal {
  const rule = ruleFor(climate, use);
  const fitDays = rule.fit.filter(Boolean).length;
  const reasons: string[] = [];
  let first: number;
  let length: number;
  if (fitDays === DAYS_PER_YEAR) {
    [first, length] = [extremeStretch(rule.score, FALLBACK_DAYS, -1), FALLBACK_DAYS];
    reasons.push(`Every day of the normal year is fit for use (${rule.why}): the climate asks for no idle months.`);
    reasons.push(`Proposed: the ${FALLBACK_DAYS} days least fit.`);
  } else if (fitDays === 0) {
    const use90 = extremeStretch(rule.score, FALLBACK_DAYS, 1);
    [first, length] = [(use90 + FALLBACK_DAYS) % DAYS_PER_YEAR, DAYS_PER_YEAR - FALLBACK_DAYS];
    reasons.push(`No day of the normal year is fit for use (${rule.why}).`);
    reasons.push(`Proposed: use in the ${FALLBACK_DAYS} days nearest to it.`);
  } else {
    [first, length] = longestIdle(rule.fit);
    reasons.push(`Use on days with ${rule.why}: ${fitDays} days of the normal year.`);
  }
  const lastUse = (first + DAYS_PER_YEAR - 1) % DAYS_PER_YEAR;
  const firstUse = (first + length) % DAYS_PER_YEAR;
  const afterYear = Number(afterIsoDate.slice(0, 4));
  const endYear = firstUse > dayIndexOf(afterIsoDate) ? afterYear : afterYear + 1;
  const startYear = lastUse < firstUse ? endYear : endYear - 1;
  if (use === 'snow' && !normalsOf(climate).snowDepthCm) {
    reasons.push('Snow depth is not known here: judged by temperature alone.');
  }
  return { lastUse: dateOfDayIndex(lastUse, startYear), firstUse: dateOfDayIndex(firstUse, endYear), reasons };
}
