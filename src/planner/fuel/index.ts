export { KEEPING, keepingRow, lifeShare, useByWindow, verdictOn } from './age.ts';
export { BLENDS } from './blends.ts';
export { cansFor } from './cans.ts';
export { adviseChoice, CHOICE_RULES } from './choice.ts';
export { expansionPerK, expansionRatio, volumeCorrection } from './expansion.ts';
export { LIMITS } from './limits.ts';
export { planFuel } from './plan.ts';
export {
  breathedWaterG,
  breathingBound,
  vapourDensityGM3,
  waterInHydrocarbonPpm,
  waterTolerancePct,
} from './water.ts';
