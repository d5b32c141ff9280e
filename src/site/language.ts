/** A household's language for the pictures, from its way of writing. */
import type { FigureLanguage } from '../figures/index.ts';
import type { Format } from './formats.ts';
import { WORDS } from './words.ts';

export function languageOf({ monthShort, monthName, plainDate, amount }: Format): FigureLanguage {
  return { monthShort, monthName, date: plainDate, amount, words: WORDS.figures };
}
