export { MOVE_MONTHS, planTyres, type TyreInput } from './plan.ts';
export { atmosphereKPa, LEAKAGE, pressureAt, shareLeft } from './pressure.ts';
