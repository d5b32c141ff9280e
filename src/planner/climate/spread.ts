/** Spread that no place is given more than: that of interior Alaska, where the fit ends [K]. */
const MOST_K = 9.5;

/**
 * Day-to-day spread of temperature about its normal.
 * @param annualRangeK - warmest less coldest monthly mean [K]
 * @param meanC - mean temperature of the month or day [°C]
 * @returns standard deviation [K]
 * Source: fitted to eleven hourly years at ten places, Fairbanks to the Po plain (no outside source).
 * Valid: annual range 5 to 45 K; held at 9.5 K beyond.
 * Error: it matters for cold spells only; a month may be off by a third.
 */
export function daySpreadK(annualRangeK: number, meanC: number): number {
  const spread = 1.275 + 0.043 * annualRangeK + (0.416 * annualRangeK * Math.max(0, 15 - meanC)) / 100;
  return Math.min(MOST_K, spread);
}

/**
 * Annual range of the monthly means.
 * @param meanC - 12 monthly means [°C]
 * @returns warmest less coldest [K]
 */
export function annualRangeK(meanC: readonly number[]): number {
  return Math.max(...meanC) - Math.min(...meanC);
}
