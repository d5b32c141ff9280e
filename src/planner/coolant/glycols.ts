/** Freezing point of one glycol in water, by strength. */
export interface GlycolRow {
  glycol: 'ethylene' | 'propylene';
  /** Volume fraction and freezing point [°C], weakest first. */
  points: readonly (readonly [number, number])[];
  source: string;
}

const SOURCE = 'ASHRAE Handbook Fundamentals, physical properties of secondary coolants, inhibited glycols, by volume';

/** ASHRAE's tables for aqueous inhibited glycols: freezing point by percent of volume. */
export const GLYCOLS: readonly GlycolRow[] = [
  {
    glycol: 'ethylene',
    source: `${SOURCE}: ethylene glycol`,
    points: [
      [0.0, 0.0],
      [0.044, -1.4],
      [0.136, -5.4],
      [0.181, -7.8],
      [0.192, -8.4],
      [0.201, -8.9],
      [0.22, -10.2],
      [0.229, -10.7],
      [0.239, -11.4],
      [0.248, -12.0],
      [0.267, -13.3],
      [0.277, -14.1],
      [0.287, -14.8],
      [0.296, -15.4],
      [0.316, -17.0],
      [0.326, -17.9],
      [0.335, -18.6],
      [0.345, -19.4],
      [0.365, -21.3],
      [0.375, -22.3],
      [0.385, -23.2],
      [0.395, -24.3],
      [0.415, -26.4],
      [0.425, -27.5],
      [0.435, -28.8],
      [0.445, -29.8],
      [0.466, -32.6],
      [0.476, -33.8],
      [0.486, -35.1],
      [0.496, -36.4],
      [0.516, -39.3],
      [0.527, -41.1],
      [0.537, -42.6],
      [0.547, -44.2],
      [0.568, -47.1],
      [0.578, -48.3],
    ],
  },
  {
    glycol: 'propylene',
    source: `${SOURCE}: propylene glycol`,
    points: [
      [0.0, 0.0],
      [0.048, -1.6],
      [0.145, -5.1],
      [0.194, -7.1],
      [0.204, -7.6],
      [0.214, -8.0],
      [0.234, -9.1],
      [0.244, -9.6],
      [0.253, -10.2],
      [0.264, -10.8],
      [0.284, -12.0],
      [0.294, -12.7],
      [0.304, -13.4],
      [0.314, -14.1],
      [0.335, -15.6],
      [0.344, -16.4],
      [0.355, -17.3],
      [0.365, -18.2],
      [0.385, -20.1],
      [0.396, -21.1],
      [0.406, -22.1],
      [0.416, -23.2],
      [0.437, -25.5],
      [0.447, -26.7],
      [0.457, -27.9],
      [0.468, -29.3],
      [0.489, -32.1],
      [0.499, -33.5],
      [0.509, -35.0],
      [0.519, -36.6],
      [0.54, -39.8],
      [0.55, -41.6],
      [0.56, -43.3],
      [0.57, -45.2],
      [0.59, -49.0],
      [0.6, -51.1],
    ],
  },
];

/**
 * The row of a glycol.
 * @param glycol - its name
 */
export function glycolRow(glycol: GlycolRow['glycol']): GlycolRow {
  const row = GLYCOLS.find((g) => g.glycol === glycol);
  if (!row)
    throw new RangeError(`glycol: found "${glycol}", expected one of ${GLYCOLS.map((g) => g.glycol).join(', ')}`);
  return row;
}
