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
  'L/h': row('flow', ['L/h', 1], ['US gal/h', 2], ['L/h', 1]),
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

/**
 * A text whose amounts stand in braces, "up to {30 L}", with each in the user's system, the other after it in brackets.
 * @param text - with amounts in units of the plan; they are rounded to a tenth
 * @param system - which system stands first
 */
export function inUnits(text: string, system: System): string {
  return text.replaceAll(/\{(-?[\d.]+) ([^{}]+)\}/g, (_, value: string, unit: string) => {
    const [first, second] = [system, system === 'metric' ? ('us' as const) : ('metric' as const)].map((one) =>
      formatOne(Number(value), unit, one, 1).replace('.0 ', ' '),
    );
    return first === second ? first! : `${first} (${second})`;
  });
}

/**
 * Lines of a content file with their amounts in the user's system: "fuel: { inTank: 3.79 L }" becomes "… 1.00 US gal }".
 * @param line - as it may stand in the file
 * @param system - the user's
 */
export function lineInUnits(line: string, system: System): string {
  if (system === 'metric') return line;
  return line.replaceAll(/(-?\d+(?:\.\d+)?) (\S+?)(?=[\s,}\]]|$)/g, (whole, value: string, unit: string) =>
    PRINTS[unit] ? formatOne(Number(value), unit, system).replace('−', '-') : whole,
  );
}

/** Whether a unit of the plan is another one in a system: what is written in it needs the user's beside it. */
export const isForeign = (unit: string, system: System): boolean =>
  PRINTS[unit] !== undefined && PRINTS[unit][system].unit !== PRINTS[unit].metric.unit;

/** A number with a typographic minus and without "−0". */
function number(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`found ${value}, expected a number that can be printed`);
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}
