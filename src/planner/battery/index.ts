export {
  acidFreezingPoint,
  acidMassFraction,
  correctSpecificGravity,
  type FreezingPoint,
  freezingPointOfGravity,
  GRAVITY_RULES,
  HYDROMETER_60F_C,
} from './acid.ts';
export { rankAssumptions, type TrialContext } from './assumptions.ts';
export { lookFirst, shortBefore } from './before-charge.ts';
export { type Calibration, calibrate, calibratedRates } from './calibrate.ts';
export { type Care, type CareCase, chooseCare, MARGIN_K } from './care.ts';
export { chargeAh, chargeHours, chargersFor, isOutOfReach, largestChargerA } from './charge.ts';
export { CHEMISTRIES, type ChemistryRow, chemistryRow } from './chemistries.ts';
export { freezingPoint, freezingPointC, specificGravity } from './freezing.ts';
export {
  dailyLoss,
  dayReached,
  type LossRate,
  type LossRates,
  lossCurve,
  lossPct,
  lossRates,
  statePath,
} from './loss.ts';
export { batteryName, batteryWord } from './name.ts';
export { type Days, openDays } from './open-days.ts';
export { type BatteriesPlan, type BatteryContext, planBatteries } from './plan.ts';
export { type Rest, restOf } from './rest.ts';
export { chargeRota, type Rota } from './rota.ts';
export type { RotaBattery } from './rota-battery.ts';
export { openCircuitVoltage, stateOfChargeFromVoltage, surelyBelowV, type VoltageReading } from './voltage.ts';
