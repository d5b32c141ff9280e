/** Figures that stand written out in a text, with the sign that the reader's language has before decimals. */
import { inLanguage, type Reader } from './format.ts';
import { UNITS } from './table.ts';

/** What stands behind a figure and is no unit of the table. */
const OTHERS = ['%', '°C', '°F', 'degrees'];
const UNIT = [...UNITS.flatMap((unit) => unit.names), ...OTHERS]
  .toSorted((a, b) => b.length - a.length)
  .map((name) => name.replaceAll(/[$()*+./?[\\\]^{|}]/g, '\\$&'))
  .join('|');
/** A figure with its unit, or the first of a range: what has none may be a clause of a standard, a version, a part of an equation. */
const FIGURE = new RegExp(
  `(?<![\\w.§])\\d+\\.\\d+(?=(?: ?(?:to|–|and) ?[−-]?\\d+(?:\\.\\d+)?)? (?:${UNIT})(?![\\p{L}\\d]))`,
  'gu',
);

/**
 * A text in which every figure with a unit has the reader's decimal sign: "13,8 to 14,7 V".
 * @param text - as written with decimal points
 * @param reader - whose language; as it is written where only the units are known
 */
export const decimalsIn = (text: string, reader: Reader): string =>
  text.replaceAll(FIGURE, (figure) => inLanguage(figure, reader));
