/** The household's language for the pictures. */
import { format } from './format.ts';
import { languageOf } from './language.ts';

export const LANGUAGE = languageOf(format);
