/** Names of the calculations by key, for the pages that point to them. */
import { METHODS } from '../planner/methods/index.ts';

export const METHOD_TITLES: Readonly<Record<string, string>> = Object.fromEntries(METHODS.map((m) => [m.key, m.title]));
