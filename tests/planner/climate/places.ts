import type { MonthlyNormals, NormalsClimate } from '../../../src/planner/climate/index.ts';

/** A cold inland place of our own making. */
export const COLD: NormalsClimate = {
  kind: 'normals',
  id: 'cold-inland',
  name: 'Cold inland place',
  latitudeDeg: 46,
  elevationM: 400,
  normals: {
    meanC: [-11, -9, -3, 5, 12, 17, 19.5, 18.5, 13, 6.5, -1.5, -8.5],
    minC: [-16, -14.5, -8, -1, 5.5, 11, 14, 13, 8, 2.5, -5, -12.5],
    maxC: [-6, -3.5, 2, 11, 18.5, 23, 25, 24, 18, 10.5, 2, -4.5],
    rhPct: [76, 73, 70, 62, 62, 68, 71, 74, 76, 74, 78, 80],
  },
  source: 'made up for tests',
  attribution: 'none',
};

const turned = (values: number[]) => [...values.slice(6), ...values.slice(0, 6)];

/** The same place with its months moved by half a year. */
export const COLD_SOUTH: NormalsClimate = {
  ...COLD,
  id: 'cold-south',
  latitudeDeg: -46,
  normals: {
    meanC: turned(COLD.normals.meanC),
    minC: turned(COLD.normals.minC),
    maxC: turned(COLD.normals.maxC),
    rhPct: turned(COLD.normals.rhPct),
  },
};

export function withNormals(changes: Partial<MonthlyNormals>): NormalsClimate {
  return { ...COLD, normals: { ...COLD.normals, ...changes } };
}

/** Twelve times the same value. */
export const all = (value: number) => Array<number>(12).fill(value);
