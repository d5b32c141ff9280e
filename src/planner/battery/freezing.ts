import type { BatteryChemistry } from '../household.ts';
import { type FreezingPoint, freezingPointOfGravity } from './acid.ts';
import { chemistryRow } from './chemistries.ts';

/**
 * Specific gravity of the electrolyte at a state of charge, straight between empty and full.
 * @param stateOfChargePct - [%]
 * @returns specific gravity at the row's reference temperature; undefined where there is no acid
 * Source: the chemistry's own row (TM 5-3820-256-24-4, table 2, is straight to 0.005).
 */
export function specificGravity(chemistry: BatteryChemistry, stateOfChargePct: number): number | undefined {
  if (!(stateOfChargePct >= 0 && stateOfChargePct <= 100))
    throw new RangeError(`found state of charge ${stateOfChargePct} %, expected 0 to 100 %`);
  const acid = chemistryRow(chemistry).acid;
  return acid && acid.emptySG + ((acid.fullSG - acid.emptySG) * stateOfChargePct) / 100;
}

/** Freezing points at whole percents, worked out once for each chemistry. */
const tables = new Map<BatteryChemistry, { temperatureC: Float64Array; boundFrom: number }>();

function tableOf(chemistry: BatteryChemistry) {
  let table = tables.get(chemistry);
  if (!table) {
    const reference = chemistryRow(chemistry).acid!.referenceC;
    const points = Array.from({ length: 101 }, (_, s) =>
      freezingPointOfGravity(specificGravity(chemistry, s)!, reference),
    );
    table = {
      temperatureC: Float64Array.from(points, (p) => p.temperatureC),
      boundFrom: points.filter((p) => !p.atOrBelow).length,
    };
    tables.set(chemistry, table);
  }
  return table;
}

/**
 * Where the battery freezes at a state of charge.
 *
 * Lead–acid: the acid's freezing point by its strength. Lithium iron phosphate has no water to freeze and burst its case;
 * its figure is the lowest storage temperature of cell datasheets, and it does not move with the state of charge.
 * @param stateOfChargePct - [%]
 * @returns [°C], and whether it is only a bound
 * Source: acid.ts, on the temperature basis of the chemistry's own specific gravities.
 * Error: 0.2 K on the fit and the whole-percent table. TM 5-3820 puts 75 % at −37.2 °C, 4.3 K warmer than here: 2.3 K because
 * it sets gravities of 80 °F beside freezing points of a 60 °F scale, 2 K because its gravity at 75 % lies 0.004 under the
 * straight line; at 50 % and less it is within 2 K.
 */
export function freezingPoint(chemistry: BatteryChemistry, stateOfChargePct: number): FreezingPoint {
  if (!(stateOfChargePct >= 0 && stateOfChargePct <= 100))
    throw new RangeError(`found state of charge ${stateOfChargePct} %, expected 0 to 100 %`);
  const row = chemistryRow(chemistry);
  if (!row.acid) return { temperatureC: row.lowestStorageC!, atOrBelow: false };
  const { temperatureC, boundFrom } = tableOf(chemistry);
  const i = Math.min(99, Math.floor(stateOfChargePct));
  const value = temperatureC[i]! + (temperatureC[i + 1]! - temperatureC[i]!) * (stateOfChargePct - i);
  return { temperatureC: value, atOrBelow: stateOfChargePct >= boundFrom };
}

/** The figure of `freezingPoint` alone [°C]. */
export function freezingPointC(chemistry: BatteryChemistry, stateOfChargePct: number): number {
  return freezingPoint(chemistry, stateOfChargePct).temperatureC;
}
