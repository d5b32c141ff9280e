/**
 * Share of the daily range by which each hour lies below the day's maximum, hours 1 to 24 of local time.
 * Source: ASHRAE Handbook Fundamentals 2021, ch. 14, table 6.
 */
export const DAY_FRACTION: readonly number[] = [
  0.88, 0.92, 0.95, 0.98, 1.0, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0.0, 0.0, 0.06, 0.14, 0.24, 0.39, 0.5,
  0.59, 0.68, 0.75, 0.82,
];

/** Mean of the fractions: where the day's mean lies below its maximum. */
export const DAY_FRACTION_MEAN = DAY_FRACTION.reduce((sum, f) => sum + f, 0) / 24;

/** How far each hour lies above the day's mean, as a share of the daily range; its mean is 0. */
export const DAY_SHAPE: Float64Array = Float64Array.from(DAY_FRACTION, (f) => DAY_FRACTION_MEAN - f);
