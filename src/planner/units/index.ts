export { decimalsIn } from './decimals.ts';
export {
  formatDifference,
  formatOne,
  formatQuantity,
  inUnits,
  isForeign,
  lineInUnits,
  type Reader,
  unitFor,
} from './format.ts';
export { parseQuantity, type UnitProblem } from './parse.ts';
export { AS_NOTED, formatSupply } from './supply.ts';
export { type Dimension, UNITS } from './table.ts';
