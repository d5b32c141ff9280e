/** Figures in the unit in which a person wrote them. */
import { UNITS } from '../planner/units/index.ts';
import type { Path } from './path.ts';

/** What was written at a path, before it was read. */
export type Typed = (path: Path) => unknown;

/** Looks up what was written. */
export const typedIn =
  (data: unknown): Typed =>
  (path) =>
    path.reduce((at: unknown, part) => (at as Record<string | number, unknown> | undefined)?.[part], data);

/** Two decimals, as a person would write the figure. */
export function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/**
 * How figures are said beside one that was written: in its unit, where it has one of the same dimension.
 * @param own - the unit of the figures, as the planner has them; "" for numbers of things
 * @param written - what a person wrote, "30 US gal"
 * @returns the unit, and a figure in it
 */
export function inTypedUnit(own: string, written: unknown): { unit: string; figure: (value: number) => number } {
  const dimension = UNITS.find(({ names }) => names[0] === own)?.dimension;
  const [, name = ''] = typeof written === 'string' ? (/^\s*[-+−]?[\d.,]+\s*(.*?)\s*$/u.exec(written) ?? []) : [];
  const row = UNITS.find(
    (u) => u.dimension === dimension && u.names.some((n) => n.toLowerCase() === name.toLowerCase()),
  );
  return row
    ? { unit: row.names[0]!, figure: (value) => round((value - (row.offset ?? 0)) / row.factor) }
    : { unit: own, figure: round };
}
