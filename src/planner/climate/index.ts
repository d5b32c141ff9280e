export {
  dateOfDayIndex,
  dayIndexOf,
  MONTH_DAYS,
  MONTH_OF_DAY,
  MONTH_OF_HOUR,
  MONTH_START,
  monthMeans,
  monthMeansOfHours,
} from './calendar.ts';
export { checkClimate, checkNormals } from './check.ts';
export { dailyCurves } from './curves.ts';
export { DEEPEST_AT_C, DEPTH, depthTerms, designLow, OPEN_SOUTH } from './design-low.ts';
export type { EpwProblem } from './epw.ts';
export { EpwError, parseEpw } from './epw.ts';
export { weatherYears } from './generator.ts';
export { normalYear } from './normal-year.ts';
export { normalsOf } from './normals.ts';
export * from './psychrometrics.ts';
export { readTable, SURFACE_TABLE, TABLE_LOW_C, TABLE_PER_K, WATER_TABLE } from './saturation-table.ts';
export { proposeSeason } from './season.ts';
export { annualRangeK, daySpreadK } from './spread.ts';
export * from './types.ts';
export { WEATHER } from './weather-model.ts';
