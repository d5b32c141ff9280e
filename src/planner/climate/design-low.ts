import { MONTH_START } from './calendar.ts';
import { normalsOf } from './normals.ts';
import { annualRangeK, daySpreadK } from './spread.ts';
import type { Climate, DesignLow } from './types.ts';

/** Spreads under the normal minimum: the lowest hour of a typical year, and the worst seen at seven places. */
const SPREADS = { typical: 2.4, worst: 4.8 };

/** No lower than this is proposed where no record is given: the northern hemisphere's lowest is −69.6 °C (from memory). */
const FLOOR_C = -70;

/**
 * The cold that battery, coolant and fuel must survive outdoors, by month, and the cold of a typical year.
 * @param climate - normals or one hourly year
 * @returns design and typical low, 12 months [°C]
 * Source: record low where given; else mean daily minimum − 4.8 spreads, and − 2.4 for a typical year, as measured on
 *   hourly years of seven places (median 2.4, worst 4.8; no outside source).
 * Error: about ±5 K for the design low; a known record low is better.
 */
export function designLow(climate: Climate): DesignLow {
  const normals = normalsOf(climate);
  const range = annualRangeK(normals.meanC);
  const spread = normals.meanC.map((t) => daySpreadK(range, t));
  const below = (k: number) => normals.minC.map((t, m) => Math.max(t - k * spread[m]!, Math.min(FLOOR_C, t - 5)));
  const worst = below(SPREADS.worst);
  const typical = below(SPREADS.typical);
  if (climate.kind === 'hourly') {
    const lowest = normals.minC.map((_, m) =>
      Math.min(...climate.temperatureC.subarray(24 * MONTH_START[m]!, 24 * MONTH_START[m + 1]!)),
    );
    return {
      designC: worst.map((t, m) => Math.min(t, lowest[m]!)),
      typicalC: lowest,
      basis: `Typical: the lowest hour of each month in the hourly year. Design: that year's mean daily minimum less ${SPREADS.worst} day-to-day spreads. A record low of the place is better.`,
    };
  }
  const record = normals.recordLowC;
  if (record) {
    return {
      designC: [...record],
      typicalC: typical.map((t, m) => Math.max(t, record[m]!)),
      basis: `Design: the lowest on record. Typical: mean daily minimum less ${SPREADS.typical} day-to-day spreads.`,
    };
  }
  return {
    designC: worst,
    typicalC: typical,
    basis: `Mean daily minimum less ${SPREADS.worst} day-to-day spreads (typical year: ${SPREADS.typical}). A known record low is better.`,
  };
}
