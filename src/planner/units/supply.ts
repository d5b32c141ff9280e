/** Amounts of what is bought: measured ones in the household’s units, counted ones in the singular or the plural. */
import { formatQuantity, inLanguage, type Reader, unitFor } from './format.ts';
import { UNITS } from './table.ts';

/** How much of a part stands in a note of the user's own, in words. */
export const AS_NOTED = 'as noted';

const SYMBOLS = new Set(UNITS.flatMap((unit) => unit.names));

/**
 * An amount of supplies as text: "64 mL", "1 can", "4 pieces", "as noted".
 * @param amount - in `unit`
 * @param unit - a unit of the table, or what is counted
 * @param reader - whose units and language
 * @param what - what is bought
 */
export function formatSupply(amount: number, unit: string, reader: Reader, what = ''): string {
  if (unit === AS_NOTED) return unit;
  if (unit === '') return plain(amount, reader);
  if (SYMBOLS.has(unit)) return formatQuantity(amount, unitFor(unit, what), reader);
  const one = unit.replace(/(?<=[a-z])s$/, '');
  return amount > 1 ? `${plain(amount, reader)} ${manyOf(one)}` : `${plain(amount, reader)} ${one}`;
}

/** The plural of a counted thing: "boxes", "cans". */
function manyOf(one: string): string {
  return /(s|x|ch|sh)$/.test(one) ? `${one}es` : `${one}s`;
}

/** Tenths at the most: nobody buys a hundredth of a can. */
function plain(amount: number, reader: Reader): string {
  if (!Number.isFinite(amount)) throw new RangeError(`found ${amount}, expected an amount that can be printed`);
  return inLanguage(String(Math.round(amount * 10) / 10), reader);
}
