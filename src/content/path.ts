/** Where a value stands inside a file. */
import { printable } from './problem.ts';

/** Names of fields, and places in lists counted from 0. */
export type Path = readonly (string | number)[];

/** "battery.chemistry"; a place in a list is counted from 1. */
export function fieldName(path: Path): string {
  return path.map((part) => (typeof part === 'number' ? String(part + 1) : printable(part))).join('.');
}

/** A path as text, to look things up by. */
export function key(path: Path): string {
  return JSON.stringify(path);
}
