import type { BatteryChemistry } from '../household.ts';
import { chemistryRow, type VoltageTable } from './chemistries.ts';
import { interpolate } from './interpolate.ts';

/**
 * Voltage of a rested 12 V battery.
 * @param stateOfChargePct - [%]
 * @param temperatureC - temperature of the battery [°C]
 * @returns [V]
 * Source: the voltage table of the chemistry's row, linear between its points; its shift with temperature likewise.
 * Valid: after at least 3 h of rest, better 8 h (TM 9-6115-730-24). Colder than −6.7 °C the shift is held at the table's end:
 * going on along its last step would double the textbook coefficient (about 0.2 mV/K a cell, from memory).
 * Error: the row's `spreadPct`.
 */
export function openCircuitVoltage(
  chemistry: BatteryChemistry,
  stateOfChargePct: number,
  temperatureC: number,
): number {
  if (!(stateOfChargePct >= 0 && stateOfChargePct <= 100))
    throw new RangeError(`found state of charge ${stateOfChargePct} %, expected 0 to 100 %`);
  const table = chemistryRow(chemistry).voltage;
  return interpolate(table.stateOfChargePct, table.volts, stateOfChargePct) + shiftV(table, temperatureC);
}

function shiftV(table: VoltageTable, temperatureC: number): number {
  if (!(temperatureC >= -80 && temperatureC <= 100))
    throw new RangeError(`found battery at ${temperatureC} °C, expected −80 to 100 °C`);
  return interpolate(table.shift.temperatureC, table.shift.volts, temperatureC);
}

/** A state of charge read from a voltage. */
export interface VoltageReading {
  stateOfChargePct: number;
  /** Half-width of what the reading leaves open [%]. */
  spreadPct: number;
  /** The voltage lies off the table's end, and by how much [V]; 0 inside. */
  beyondV: number;
}

/**
 * State of charge of a rested 12 V battery from its voltage, the inverse of `openCircuitVoltage`.
 * @param volts - at the terminals, nothing connected [V]
 * @param temperatureC - temperature of the battery [°C]
 * @returns state of charge with its spread; 0 or 100 % where the voltage lies beyond the table
 * Source: as `openCircuitVoltage`. Error: `spreadPct`; a lithium iron phosphate battery's voltage is flat and tells little.
 */
export function stateOfChargeFromVoltage(
  chemistry: BatteryChemistry,
  volts: number,
  temperatureC: number,
): VoltageReading {
  if (!(volts >= 0 && volts <= 60)) throw new RangeError(`found ${volts} V, expected 0 to 60 V`);
  const table = chemistryRow(chemistry).voltage;
  const at = volts - shiftV(table, temperatureC);
  const [empty, full] = [table.volts[0]!, table.volts[table.volts.length - 1]!];
  return {
    stateOfChargePct: interpolate(table.volts, table.stateOfChargePct, at),
    spreadPct: table.spreadPct,
    beyondV: at > full ? at - full : at < empty ? at - empty : 0,
  };
}

/** A battery read in a room [°C]. */
const ROOM_C = 20;

/**
 * The volts at rest, at 20 °C, below which a battery is under its threshold: those of the threshold, and for lithium, whose flat
 * curve leaves much open, those at which even the upper end of what is open lies under it.
 * @returns [V]
 * Source: the chemistry's own voltage table.
 */
export function surelyBelowV(chemistry: BatteryChemistry): number {
  const { acid, thresholdPct, voltage } = chemistryRow(chemistry);
  return openCircuitVoltage(chemistry, Math.max(0, thresholdPct - (acid ? 0 : voltage.spreadPct)), ROOM_C);
}
