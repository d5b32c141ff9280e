/** Figures beyond which no machine of a kind is: another figure was read, or its unit is wrong. */
import type { MachineKind } from '../planner/household.ts';
import { KINDS } from './kinds.ts';

export interface LimitRow {
  /** As written in content; "[]" for every entry of a list. */
  field: string;
  /** Unit of the limits; "" for numbers of things. */
  unit: string;
  /** Why no machine is beyond them. All are common practice, from memory, and generous. */
  reason: string;
  /** What to do. */
  fix: string;
  /** Least and most. */
  values: Record<MachineKind, readonly [number, number]>;
}

type Limits = readonly (readonly [number, number])[];

/** In the order of `KINDS`: motorcycle, scooter, snow-machine, quad, side-by-side, car, tractor, mower. */
function row(
  field: string,
  unit: string,
  reason: string,
  limits: Limits,
  fix = 'Check the figure and its unit.',
): LimitRow {
  const values = Object.fromEntries(KINDS.map((kind, i) => [kind, limits[i]!])) as LimitRow['values'];
  return { field, unit, reason, fix, values };
}

// biome-ignore format: a table is read by its columns
export const LIMITS: readonly LimitRow[] = [
  row('battery.capacity', 'Ah', 'a starting battery is as large as its engine asks; beyond it the cold-cranking figure was read', [[1, 100], [1, 60], [2, 100], [2, 100], [2, 200], [5, 300], [5, 400], [1, 200]], 'Take the figure in Ah from the label; the cold-cranking figure in A is no measure of capacity.'),
  row('fuel.tank', 'L', 'the largest tanks are those of touring machines, vans and field tractors', [[0.2, 60], [0.2, 30], [0.2, 100], [0.2, 60], [0.2, 120], [0.2, 200], [0.2, 400], [0.2, 60]]),
  row('engine.oil', 'L', 'dry sumps of large twins hold some 5 L, van engines 15 L, field tractors 40 L', [[0, 10], [0, 5], [0, 10], [0, 10], [0, 12], [0, 25], [0, 60], [0, 10]]),
  row('engine.cylinders', '', 'six in line or eight in V are the most that are made for two wheels', [[0, 8], [0, 4], [0, 6], [0, 4], [0, 6], [0, 16], [0, 12], [0, 4]]),
  row('cooling.volume', 'L', 'radiator, hoses and jacket are as large as the engine asks; heat exchangers of a track take more', [[0.1, 10], [0.1, 6], [0.1, 25], [0.1, 12], [0.1, 25], [0.1, 40], [0.1, 60], [0.1, 20]]),
  row('tyres[].pressure', 'kPa', 'trial and balloon tyres run at 20 to 40 kPa, van and spare tyres at 450 to 550 kPa', [[10, 500], [10, 500], [10, 700], [10, 350], [10, 500], [10, 700], [10, 700], [10, 500]], 'Check the figure and its unit: 100 kPa are 1 bar or 14.5 psi.'),
  row('tyres[].count', '', 'with a sidecar, a second axle or double wheels', [[1, 4], [1, 4], [1, 8], [1, 8], [1, 8], [1, 12], [1, 12], [1, 8]]),
  row('odometer', 'km', 'no engine of the kind has run further', [[0, 2e6], [0, 1e6], [0, 1e6], [0, 1e6], [0, 1e6], [0, 3e6], [0, 1e6], [0, 1e6]]),
];

/** A figure beyond the limits of its kind, where `of` has the data of a machine's file. */
export interface Beyond {
  path: (string | number)[];
  value: number;
  row: LimitRow;
  limits: readonly [number, number];
}

/**
 * Figures that no machine of the kind has.
 * @param of - a machine's file, in the planner's units; parts may be missing
 */
export function beyondLimits(of: object, kind: MachineKind): Beyond[] {
  return LIMITS.flatMap((row) =>
    valuesAt(of, row.field.split('.')).flatMap(({ path, value }) => {
      const limits = row.values[kind];
      return value >= limits[0] && value <= limits[1] ? [] : [{ path, value, row, limits }];
    }),
  );
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
