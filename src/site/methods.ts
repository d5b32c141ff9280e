/** Names of the calculations, for the pages that point to them. */
import { methodOf } from '../planner/methods/index.ts';
import { methodAt } from './links.ts';

/** The name of a calculation; its key where the register has no row for it. */
export const methodTitle = (key: string) => methodOf(key)?.title ?? key;

/** Where the methods page speaks of it. */
export const methodLink = (key: string) => methodAt(methodOf(key)?.key ?? '');
