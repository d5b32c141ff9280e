export { BRAKE_FLUIDS, brakeFluidText, yearsToWet } from './brake-fluid.ts';
export { dueServices } from './due.ts';
export { dayUsedUp, nextSeasonEnd } from './usage.ts';
