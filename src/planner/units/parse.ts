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
  const written = `a number with its unit (${rows.map((row) => row.names[0]).join(', ')}), such as "${example(dimension)}"`;
  const grouped = groupedDigits(text, dimension);
  if (grouped) return { problem: `found "${text}": ${grouped}` };
  const match = /^\s*([-+−]?\d+(?:[.,]\d+)?(?:e[-+]?\d+)?)\s*(.*?)\s*$/iu.exec(text);
  if (!match) return { problem: `found "${text}", expected ${written}` };
  const value = Number(match[1]!.replace('−', '-').replace(',', '.'));
  const unit = match[2]!;
  if (unit === '') return { problem: `found "${text}" without a unit, expected ${written}` };
  if (/^(gal|gallons?)$/i.test(unit)) {
    return {
      problem: `found "${text}": a US gallon is 3.785 L, an imperial one 4.546 L; expected "US gal" or "imp gal"`,
    };
  }
  const row =
    rows.find((r) => r.names.includes(unit)) ??
    rows.find((r) => r.names.some((n) => n.toLowerCase() === unit.toLowerCase()));
  if (!row) {
    const range = /^(?:[-–—±]|\+\/-|to\b)\s*\d/.test(unit);
    return {
      problem: `found "${text}"${range ? ', which is a range' : ` with the unit "${unit}"`}, expected ${written}`,
    };
  }
  if (!Number.isFinite(value)) return { problem: `found "${text}", expected ${written}` };
  return value * row.factor + (row.offset ?? 0);
}

/**
 * What is wrong with digits in groups: "61 240", "61'240", "61,240". A comma before three digits alone is as often a thousand
 * as a decimal, and a reading a thousand times too small would pass for sound; so is a point in an odometer's reading, which
 * nobody writes to the metre. After a nought it can only be a decimal.
 */
function groupedDigits(text: string, dimension: Dimension): string | undefined {
  const [, whole, groups] = /^\s*([-+−]?\d{1,3}((?:[ \u00a0\u202f'’_.,]\d{3})+))(?![\d.,])/u.exec(text) ?? [];
  if (whole === undefined || groups === undefined) return undefined;
  const plain = whole.replace(/[^-+−\d]/g, '');
  if (!/^[.,]\d{3}$/.test(groups)) return `the digits stand in groups, expected "${plain}"`;
  if (/^[-+−]?0/.test(whole) || (groups.startsWith('.') && dimension !== 'distance')) return undefined;
  const decimal = Number(whole.replace('−', '-').replace(',', '.'));
  return `the ${groups.startsWith('.') ? 'point' : 'comma'} can part thousands or decimals, expected "${plain}" or "${decimal}"`;
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
    smallMass: '100 g',
    length: '2.4 m',
    smallLength: '10 mm',
    thickness: '25 µm',
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
