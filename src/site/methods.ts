/** Titles of the calculations, for the pages that point to them. */
import { METHODS } from '../planner/methods.ts';

/** The name of a calculation in the middle of a sentence; its key where the registry has no row for it. */
export function methodTitle(key: string): string {
  return METHODS.find((m) => m.key === key)?.title ?? key;
}
