/**
 * Figures beyond which no machine of a kind is: another figure was read, or its unit is wrong. Above each row stands why; all
 * are common practice, from memory, and generous.
 */
import type { MachineKind } from '../planner/household.ts';
import { KINDS } from './kinds.ts';
import { inTypedUnit, type Typed } from './typed.ts';

export interface LimitRow {
  /** As written in content; "[]" for every entry of a list. */
  field: string;
  /** Unit of the limits; "" for numbers of things. */
  unit: string;
  /** Least and most, in the order of `KINDS`: motorcycle, scooter, snow-machine, quad, side-by-side, car, tractor, mower. */
  limits: readonly (readonly [number, number])[];
  /** What to do, where it is more than to check figure and unit. */
  fix?: string;
}

/** Limits of what a form asks as well. */
// biome-ignore format: a table is read by its columns
export const ASKED_LIMITS: readonly LimitRow[] = [
  // A starting battery is as large as its engine asks; beyond it the cold-cranking figure was read.
  { field: 'battery.capacity', unit: 'Ah', limits: [[1, 100], [1, 60], [2, 100], [2, 100], [2, 200], [5, 300], [5, 400], [1, 200]], fix: 'Take the figure in Ah from the label; the cold-cranking figure in A is no measure of capacity.' },
  // The largest tanks are those of touring machines, vans and field tractors.
  { field: 'fuel.tank', unit: 'L', limits: [[0.2, 60], [0.2, 30], [0.2, 100], [0.2, 60], [0.2, 120], [0.2, 200], [0.2, 400], [0.2, 60]] },
];

/** Limits of what a file alone says. */
// biome-ignore format: a table is read by its columns
export const FILE_LIMITS: readonly LimitRow[] = [
  // Dry sumps of large twins hold some 5 L, van engines 15 L, field tractors 40 L.
  { field: 'engine.oil', unit: 'L', limits: [[0, 10], [0, 5], [0, 10], [0, 10], [0, 12], [0, 25], [0, 60], [0, 10]] },
  // Six in line or eight in V are the most that are made for two wheels.
  { field: 'engine.cylinders', unit: '', limits: [[0, 8], [0, 4], [0, 6], [0, 4], [0, 6], [0, 16], [0, 12], [0, 4]] },
  // Radiator, hoses and jacket are as large as the engine asks; heat exchangers of a track take more.
  { field: 'cooling.volume', unit: 'L', limits: [[0.1, 10], [0.1, 6], [0.1, 25], [0.1, 12], [0.1, 25], [0.1, 40], [0.1, 60], [0.1, 20]] },
  // Trial and balloon tyres run at 20 to 40 kPa, those of a car in sand at 100 kPa, van and spare tyres at 450 to 550 kPa.
  { field: 'tyres[].pressure', unit: 'kPa', limits: [[20, 500], [80, 500], [10, 700], [10, 350], [10, 500], [80, 700], [10, 700], [10, 500]], fix: 'Check the figure and its unit: 100 kPa are 1 bar or 14.5 psi.' },
  // With a sidecar, a second axle or double wheels.
  { field: 'tyres[].count', unit: '', limits: [[1, 4], [1, 4], [1, 8], [1, 8], [1, 8], [1, 12], [1, 12], [1, 8]] },
  // No engine of the kind has run further.
  { field: 'odometer', unit: 'km', limits: [[0, 2e6], [0, 1e6], [0, 1e6], [0, 1e6], [0, 1e6], [0, 3e6], [0, 1e6], [0, 1e6]] },
];

/**
 * Tells the figures that no machine of the kind has.
 * @param of - a machine's file, in the planner's units; parts may be missing
 * @param typed - what was written, whose unit the figures are told in
 * @param say - where, what was found, what to do
 */
export function sayBeyond(
  of: object,
  kind: MachineKind | undefined,
  rows: readonly LimitRow[],
  say: (path: (string | number)[], what: string, fix: string) => void,
  typed: Typed,
): void {
  if (kind === undefined) return;
  for (const row of rows)
    for (const { path, value } of valuesAt(of, row.field.split('.'))) {
      const [low, high] = row.limits[KINDS.indexOf(kind)]!;
      if (value >= low && value <= high) continue;
      const { unit, figure } = inTypedUnit(row.unit, typed(path));
      const written = unit === '' ? '' : ` ${unit}`;
      say(
        path,
        `found ${figure(value)}${written}, expected ${figure(low)} to ${figure(high)}${written} for a ${kind}`,
        row.fix ?? 'Check the figure and its unit.',
      );
    }
}

function valuesAt(
  of: unknown,
  parts: readonly string[],
  path: (string | number)[] = [],
): { path: (string | number)[]; value: number }[] {
  const [part, ...rest] = parts;
  if (part === undefined) return typeof of === 'number' ? [{ path, value: of }] : [];
  const name = part.replace('[]', '');
  const inside: unknown = typeof of === 'object' && of !== null ? (of as Record<string, unknown>)[name] : undefined;
  if (name === part) return valuesAt(inside, rest, [...path, name]);
  return Array.isArray(inside) ? inside.flatMap((entry, i) => valuesAt(entry, rest, [...path, name, i])) : [];
}
