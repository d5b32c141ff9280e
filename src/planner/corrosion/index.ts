export {
  BAGS,
  type DinBag,
  din55474Units,
  FILMS,
  milStd2073BarrierUnits,
  milStd2073RigidUnits,
} from './desiccant.ts';
export {
  type AirDose,
  type Category,
  categoryOf,
  DOSE_RESPONSE,
  firstYearLossUm,
  type Metal,
  outsideValid,
  STATED_UNCERTAINTY,
} from './iso9223.ts';
export { type CorrosionInput, planCorrosion, UNWASHED_SALT_FACTOR } from './plan.ts';
export { PROTECTION } from './protection.ts';
