import { MONTH_START } from './calendar.ts';
import { normalsOf } from './normals.ts';
import { annualRangeK, daySpreadK } from './spread.ts';
import type { Climate, DesignLow, MonthlyNormals, NormalsClimate } from './types.ts';

/**
 * How far the design low lies under a month's mean daily minimum: least squares on the 50-year lows of 160 stations. The
 * base of 8.4 K holds a margin of 4.4 K, with which nine stations of ten get a low at or under the published one. The fit is
 * src/cli/fit-design-low.ts.
 */
export const DEPTH = {
  baseK: 8.4,
  perRange: 0.46,
  widestRangeK: 35,
  perLead: 0.87,
  furthestLeadK: 3.5,
  perDegree: 0.21,
  perAway: 0.52,
};

/** Mean daily minimum under which cold spells run deepest: milder is sea air, colder is near the coldest there is [°C]. */
export const DEEPEST_AT_C = -10;

/**
 * South of the North American plains no mountains keep the Arctic's air from the sea: cold spells run as deep in mild months as in
 * cold ones. The depth holds nine of ten mild stations there; from the lowest of a middle year it is 9.9 K. The fit is
 * src/cli/fit-design-low.ts; how it shrinks in warm months follows the records of Houston, from memory.
 */
export const OPEN_SOUTH = {
  fromDeg: 24,
  toDeg: 37,
  westDeg: -105,
  eastDeg: -75,
  worstK: 16.1,
  typicalK: 9.9,
  /** Mean daily minimum above which they shrink, as much as it is above [°C]. */
  warmC: 17,
};

/** The lowest of a middle year lies half as far under the minimum of the coldest month: 0.50 at the same stations. */
const TYPICAL_SHARE = 0.5;

/** How far the lowest hour of a month lies under its minimum, in day-to-day spreads: hourly years at seven places. */
const SPREADS = { median: 2.4, worst: 4.8 };

/** Mean temperature from which the day-to-day spread grows no smaller [°C]. */
const WARM_C = 15;

/**
 * What of a place makes its cold spells deep.
 * @param meanC - monthly means, January first [°C]
 * @param latitudeDeg - north positive
 * @returns annual range and lead of spring on autumn, each no further than it counts [K], and degrees from the equator
 */
export function depthTerms(
  meanC: readonly number[],
  latitudeDeg: number,
): { rangeK: number; leadK: number; degrees: number } {
  // The sea gives back its summer's warmth in autumn: near it, the middle of autumn is warmer than that of spring.
  const leadK = (meanC[3]! - meanC[9]!) * (latitudeDeg < 0 ? -1 : 1);
  return {
    rangeK: Math.min(DEPTH.widestRangeK, annualRangeK(meanC)),
    leadK: Math.min(DEPTH.furthestLeadK, leadK),
    degrees: Math.abs(latitudeDeg),
  };
}

/**
 * How far the design low of each month lies under its mean daily minimum.
 * @param normals - monthly normals
 * @param where - the place
 * @returns 12 months [K]
 */
function depthsK({ meanC, minC }: MonthlyNormals, where: Where): number[] {
  const range = annualRangeK(meanC);
  const { rangeK, leadK, degrees } = depthTerms(meanC, where.latitudeDeg);
  const place = DEPTH.baseK + DEPTH.perRange * rangeK + DEPTH.perLead * leadK + DEPTH.perDegree * degrees;
  const least = SPREADS.worst * daySpreadK(range, WARM_C);
  const openK = openSouthK(where, OPEN_SOUTH.worstK);
  const depths = minC.map((t) => Math.max(least, place - DEPTH.perAway * Math.abs(t - DEEPEST_AT_C), openK(t)));
  // The worst of a month comes at its colder end.
  const endC = meanC.map((t, m) => Math.min(t, (t + meanC[(m + 11) % 12]!) / 2, (t + meanC[(m + 1) % 12]!) / 2));
  return within(
    SPREADS.worst,
    depths,
    minC,
    endC.map((t) => daySpreadK(range, t)),
  );
}

/**
 * How far the low of a middle year lies under the mean daily minimum, by month: half as deep as the design low in the
 * coldest month.
 * @param normals - monthly normals
 * @param where - the place
 * @param depths - that of the design low, 12 months [K]
 * @returns 12 months [K]
 */
function typicalDepthsK({ meanC, minC }: MonthlyNormals, where: Where, depths: readonly number[]): number[] {
  const openK = openSouthK(where, OPEN_SOUTH.typicalK);
  const halves = depths.map((depth, m) => Math.max(TYPICAL_SHARE * depth, openK(minC[m]!)));
  const range = annualRangeK(meanC);
  return within(
    SPREADS.median,
    halves,
    minC,
    meanC.map((t) => daySpreadK(range, t)),
  );
}

type Where = Pick<NormalsClimate, 'latitudeDeg' | 'longitudeDeg'>;

/** The least depth of a month there by its mean daily minimum [K]; none anywhere else. */
function openSouthK({ latitudeDeg, longitudeDeg = 0 }: Where, depthK: number): (minC: number) => number {
  const { fromDeg, toDeg, westDeg, eastDeg, warmC } = OPEN_SOUTH;
  const isThere = latitudeDeg >= fromDeg && latitudeDeg <= toDeg && longitudeDeg >= westDeg && longitudeDeg <= eastDeg;
  return (minC) => (isThere ? depthK - Math.max(0, minC - warmC) : 0);
}

/** The depths, in no month more day-to-day spreads than in the coldest, or than the given: weather is calmer out of winter. */
function within(
  spreads: number,
  depths: readonly number[],
  minC: readonly number[],
  spreadK: readonly number[],
): number[] {
  const coldest = minC.indexOf(Math.min(...minC));
  const most = Math.max(spreads, depths[coldest]! / spreadK[coldest]!);
  return depths.map((depth, m) => Math.min(depth, most * spreadK[m]!));
}

/**
 * The cold that battery, coolant and fuel must survive outdoors, by month, and the cold of a typical year.
 * @param climate - normals or one hourly year
 * @returns design and typical low, 12 months [°C]
 * Source: record low where given; else fitted to the 50-year lows and the mean yearly lows of 160 stations in ASHRAE
 *   Handbook Fundamentals 2017 (climatic design conditions), with a margin. Months other than the coldest are held to its
 *   day-to-day spreads, at least to those of hourly years of seven places (no outside source).
 * Valid: coldest month's mean daily minimum −42 to +5 °C; milder places rest on the warm months' rule, but for the south of the
 *   North American plains, which has a fit of its own where the longitude is known.
 * Error: on 157 stations left out of the fit, the design low is 4.6 ± 4.1 K colder than the 50-year low, and milder than
 *   it at one station of eight, by 8.6 K at worst; the typical low is off by 0.6 ± 2.9 K. Spring
 *   and autumn months lie within 10 K of the records of three places. A known record low is better.
 */
export function designLow(climate: Climate): DesignLow {
  const normals = normalsOf(climate);
  const depths = depthsK(normals, climate);
  const worst = normals.minC.map((t, m) => t - depths[m]!);
  if (climate.kind === 'hourly') {
    const lowest = normals.minC.map((_, m) =>
      Math.min(...climate.temperatureC.subarray(24 * MONTH_START[m]!, 24 * MONTH_START[m + 1]!)),
    );
    return {
      designC: worst.map((t, m) => Math.min(t, lowest[m]!)),
      typicalC: lowest,
      basis:
        'Typical: the lowest hour of each month in the hourly year. Design: the low that comes back once in 50 years, with a margin, reckoned from that year’s monthly means. A record low of the place is better.',
    };
  }
  const typicalDepths = typicalDepthsK(normals, climate, depths);
  const typical = normals.minC.map((t, m) => t - typicalDepths[m]!);
  const record = normals.recordLowC;
  if (record) {
    return {
      designC: [...record],
      typicalC: typical.map((t, m) => Math.max(t, record[m]!)),
      basis: 'Design: the lowest on record. Typical: the lowest of a middle year, reckoned from the monthly means.',
    };
  }
  return {
    designC: worst,
    typicalC: typical,
    basis:
      'The low that comes back once in 50 years, with a margin, reckoned from the monthly means; that of a middle year lies half as far under the mean daily minimum. A known record low is better.',
  };
}
