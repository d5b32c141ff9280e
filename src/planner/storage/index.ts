export { checkEnclosure } from './check.ts';
export { storeDesignLow } from './design-low.ts';
export { ENCLOSURES, enclosureById } from './enclosures.ts';
export { METALS, metalById } from './metals.ts';
export { storeAir, usualLowC } from './store-air.ts';
export { storeNormalYear, storeYearOf } from './store-year.ts';
export * from './types.ts';
