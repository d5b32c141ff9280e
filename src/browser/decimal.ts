/** Numbers as people type them: with a point or a comma. A field of the browser's own kind drops the comma in some languages. */
import { SAID } from './bench/said-words.ts';

/**
 * The number that a text is.
 * @returns NaN where it is none; a comma or a point before the decimals, none between thousands
 */
export function decimal(text: string): number {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return /^-?(?:\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

/**
 * What is wrong with what a field holds.
 * @param field - with its bounds as `data-min` and `data-max` where it holds a number
 * @returns in words; empty where it is sound
 */
export function faultIn(field: HTMLInputElement | HTMLSelectElement): string {
  const { min, max } = field.dataset;
  if (min === undefined || max === undefined || field.value.trim() === '') return field.validationMessage;
  const value = decimal(field.value);
  if (Number.isNaN(value)) return SAID.notANumber;
  return value >= Number(min) && value <= Number(max) ? '' : SAID.outside(min, max);
}
