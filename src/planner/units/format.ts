import type { Household } from '../household.ts';
import { type Dimension, UNITS } from './table.ts';

type System = Household['units'];

/** How a quantity is printed in a system: unit, and digits after the point. */
interface Print {
  unit: string;
  digits: number;
  /** Of the unit in SI. */
  factor: number;
  offset: number;
}

/** Per unit of the plan: what the three systems print. */
const PRINTS: Record<string, Record<System, Print>> = {
  L: row('volume', ['L', 1], ['US gal', 2], ['imp gal', 2]),
  mL: row('smallVolume', ['mL', 0], ['US fl oz', 1], ['imp fl oz', 1]),
  kPa: row('pressure', ['kPa', 0], ['psi', 0], ['psi', 0]),
  '°C': row('temperature', ['°C', 0], ['°F', 0], ['°C', 0]),
  K: row('temperatureDifference', ['K', 0], ['°F', 0], ['K', 0]),
  N·m: row('torque', ['N·m', 1], ['lbf·ft', 1], ['lbf·ft', 1]),
  km: row('distance', ['km', 0], ['mi', 0], ['mi', 0]),
  'm²': row('area', ['m²', 1], ['ft²', 0], ['ft²', 0]),
  kg: row('mass', ['kg', 1], ['lb', 1], ['lb', 1]),
  mm: row('smallLength', ['mm', 0], ['in', 2], ['in', 2]),
};

function row(dimension: Dimension, metric: [string, number], us: [string, number], imperial: [string, number]) {
  const print = ([unit, digits]: [string, number]): Print => {
    const { factor, offset = 0 } = UNITS.find((u) => u.dimension === dimension && u.names[0] === unit)!;
    return { unit, digits, factor, offset };
  };
  return { metric: print(metric), us: print(us), imperial: print(imperial) };
}

/**
 * A value of the plan as text in the user's own system, without the other one.
 * @param value - in `unit`
 * @param unit - unit of the plan: "L", "kPa", "°C", …; one without a row is printed as it is
 * @param digits - digits after the point, instead of the usual ones
 */
export function formatOne(value: number, unit: string, system: System, digits?: number): string {
  const rows = PRINTS[unit];
  if (!rows)
    return `${number(value, digits ?? (Math.abs(value) < 10 && !Number.isInteger(value) ? 1 : 0))}${unit ? ` ${unit}` : ''}`;
  const print = rows[system];
  return `${number((value - print.offset) / print.factor, digits ?? print.digits)} ${print.unit}`;
}

/**
 * A value of the plan as text in the user's system, the other system after it in brackets: "5.2 L (1.37 US gal)".
 * @param value - in `unit`
 * @param unit - unit of the plan
 */
export function formatQuantity(value: number, unit: string, system: System): string {
  const first = formatOne(value, unit, system);
  const second = formatOne(value, unit, system === 'metric' ? 'us' : 'metric');
  return first === second ? first : `${first} (${second})`;
}

/** A number with a typographic minus and without "−0". */
function number(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`found ${value}, expected a number that can be printed`);
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}
