import { type Dimension, UNITS } from './table.ts';

/** A value that could not be read: what was found and what is expected, ready for a message. */
export interface UnitProblem {
  problem: string;
}

/**
 * Reads "18 lbf·ft", "1.5 US gal", "−20 °F" into the dimension's own unit.
 *
 * A decimal comma is taken as a point; the minus sign may be typographic. "gal" alone is refused, since the US and the
 * imperial gallon differ by a fifth.
 * @param text - number, space (optional), unit
 * @param dimension - what is measured
 * @returns the value in the dimension's own unit, or the problem in words
 * Source: table.ts (exact definitions).
 */
export function parseQuantity(text: string, dimension: Dimension): number | UnitProblem {
  const rows = UNITS.filter((row) => row.dimension === dimension);
  const expected = `a number with its unit (${rows.map((row) => row.names[0]).join(', ')}), such as "${example(dimension)}"`;
  const match = /^\s*([-+−]?\d+(?:[.,]\d+)?(?:e[-+]?\d+)?)\s*(.*?)\s*$/iu.exec(text);
  if (!match) return { problem: `found "${text}", expected ${expected}` };
  const value = Number(match[1]!.replace('−', '-').replace(',', '.'));
  const unit = match[2]!;
  if (unit === '') return { problem: `found "${text}" without a unit, expected ${expected}` };
  if (/^(gal|gallons?)$/i.test(unit)) {
    return {
      problem: `found "${text}": a US gallon is 3.785 L, an imperial one 4.546 L; expected "US gal" or "imp gal"`,
    };
  }
  const row =
    rows.find((r) => r.names.includes(unit)) ??
    rows.find((r) => r.names.some((n) => n.toLowerCase() === unit.toLowerCase()));
  if (!row) return { problem: `found the unit "${unit}", expected ${expected}` };
  if (!Number.isFinite(value)) return { problem: `found "${text}", expected ${expected}` };
  return value * row.factor + (row.offset ?? 0);
}

function example(dimension: Dimension): string {
  const examples: Record<Dimension, string> = {
    volume: '17 L',
    smallVolume: '60 mL',
    pressure: '220 kPa',
    temperature: '-20 °C',
    temperatureDifference: '5 K',
    torque: '25 N·m',
    charge: '12 Ah',
    current: '2 A',
    smallCurrent: '3 mA',
    voltage: '12.6 V',
    mass: '2 kg',
    length: '2.4 m',
    smallLength: '10 mm',
    distance: '12000 km',
    area: '14 m²',
    dose: '4 mL/L',
    flow: '0.6 L/h',
    duration: '2 h',
    months: '24 months',
    percent: '80 %',
  };
  return examples[dimension];
}
