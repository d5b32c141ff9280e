/** The household's language for the pictures. */
import type { FigureLanguage } from '../figures/index.ts';
import { amount, monthName, monthShort, plainDate } from './format.ts';
import { WORDS } from './words.ts';

export const LANGUAGE: FigureLanguage = { monthShort, monthName, date: plainDate, amount, words: WORDS.figures };
