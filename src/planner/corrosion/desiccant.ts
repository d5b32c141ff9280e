import type { MachineKind } from '../household.ts';

/** A film for a bag, by the water vapour that it lets through. */
export interface FilmRow {
  id: string;
  name: string;
  /** At about 20 °C and 85 %, not under 0.1, which is the least that DIN 55474 reckons with [g/(m²·d)]. */
  vapourGM2D: number;
  source: string;
}

export const FILMS: readonly FilmRow[] = [
  {
    id: 'pe-200',
    name: 'polyethylene, 0.2 mm',
    vapourGM2D: 0.4,
    source: 'LDPE 0.2 mm at 20 °C, 85 %: 0.4 g/(m²·d) (dimensioning guide to DIN 55474); 2.0 at 38 °C, 90 %',
  },
  {
    id: 'aluminium-laminate',
    name: 'aluminium laminate',
    vapourGM2D: 0.1,
    source: 'aluminium laminate: below 0.1 g/(m²·d), reckoned as 0.1 (dimensioning guide to DIN 55474)',
  },
];

/** Bag around a machine. */
export interface BagRow {
  kind: MachineKind;
  areaM2: number;
  volumeM3: number;
}

/** Common practice: the surface and room of a box around a usual machine of the kind. */
export const BAGS: readonly BagRow[] = [
  { kind: 'motorcycle', areaM2: 14, volumeM3: 3 },
  { kind: 'scooter', areaM2: 11, volumeM3: 2 },
  { kind: 'snow-machine', areaM2: 18, volumeM3: 4.5 },
  { kind: 'quad', areaM2: 15, volumeM3: 3.5 },
  { kind: 'side-by-side', areaM2: 30, volumeM3: 10 },
  { kind: 'car', areaM2: 36, volumeM3: 13 },
  { kind: 'tractor', areaM2: 36, volumeM3: 14 },
  { kind: 'mower', areaM2: 9, volumeM3: 1.5 },
];

/** Humidity to be kept in the bag, with what a unit takes up there and the share of the drive through the film. */
const DIN_TARGETS: readonly { rhPct: number; gramsPerUnit: number; drive: number }[] = [
  { rhPct: 20, gramsPerUnit: 3, drive: 0.9 },
  { rhPct: 40, gramsPerUnit: 6, drive: 0.7 },
  { rhPct: 50, gramsPerUnit: 7, drive: 0.65 },
  { rhPct: 60, gramsPerUnit: 8, drive: 0.6 },
];

/** Least permeability that DIN 55474 reckons with [g/(m²·d)]. */
const LEAST_VAPOUR_G_M2_D = 0.1;

export interface DinBag {
  volumeM3: number;
  /** Vapour in the air that is closed in [g/m³]. */
  vapourGM3: number;
  dunnageKg: number;
  /** Water that a kilogram of wood, board or upholstery gives off [g/kg]. */
  dunnageGPerKg: number;
  areaM2: number;
  filmGM2D: number;
  days: number;
  /** Humidity to be kept: 20, 40, 50 or 60 %. */
  rhPct: number;
}

/**
 * Units of desiccant for a closed bag.
 * @param bag - bag, contents, film, time, humidity to be kept
 * @returns units, not rounded
 * Source: DIN 55474: n = (V·b + m·c + A·e·W·t)/a; W not under 0.1 g/(m²·d). A unit is DIN 55473: 6 g at 40 %, 23 °C.
 * Error: the film's figure is for 20 °C; at 38 °C polyethylene lets through five times as much, near 0 °C a quarter.
 */
export function din55474Units(bag: DinBag): number {
  const target = DIN_TARGETS.find((row) => row.rhPct === bag.rhPct);
  if (!target)
    throw new RangeError(
      `humidity in the bag: found ${bag.rhPct} %, expected ${DIN_TARGETS.map((t) => t.rhPct).join(', ')} %`,
    );
  const { volumeM3, vapourGM3, dunnageKg, dunnageGPerKg, areaM2, filmGM2D, days } = bag;
  for (const value of [volumeM3, vapourGM3, dunnageKg, dunnageGPerKg, areaM2, filmGM2D, days]) {
    if (!(value >= 0 && Number.isFinite(value)))
      throw new RangeError(`bag: found ${value}, expected a number of 0 or more`);
  }
  const film = Math.max(LEAST_VAPOUR_G_M2_D, filmGM2D);
  const grams = volumeM3 * vapourGM3 + dunnageKg * dunnageGPerKg + areaM2 * target.drive * film * days;
  return grams / target.gramsPerUnit;
}

/** Water that dunnage gives off, units a pound. Source: MIL-STD-2073, method 50. */
export const DUNNAGE_UNITS_PER_LB = { wood: 8.0, boundFibre: 3.6, glassFibre: 2.0, foam: 0.5 } as const;

const POUND_KG = 0.45359237;
const FOOT_M = 0.3048;
/** Units a square foot of a bag that is not rigid metal. */
const MIL_UNITS_PER_FT2 = 1.6;
/** Units a cubic foot of a sealed rigid metal container. */
const MIL_UNITS_PER_FT3 = 1.2;

/**
 * Units of desiccant for a flexible barrier.
 * @param areaM2 - surface of the barrier [m²]
 * @param dunnageKg - packing inside, by kind [kg]
 * @returns units, not rounded
 * Source: MIL-STD-2073, method 50, formula I: U = C·A + ΣX·D; C = 1.6 a square foot (0.011 a square inch, 17 a square metre:
 * each rounded by the standard, within 1 %).
 */
export function milStd2073BarrierUnits(
  areaM2: number,
  dunnageKg: Partial<Record<keyof typeof DUNNAGE_UNITS_PER_LB, number>> = {},
): number {
  if (!(areaM2 >= 0)) throw new RangeError(`bag: found ${areaM2} m², expected 0 or more`);
  return (areaM2 / FOOT_M ** 2) * MIL_UNITS_PER_FT2 + dunnageUnits(dunnageKg);
}

/**
 * Units of desiccant for a sealed rigid metal container.
 * @param volumeM3 - room inside [m³]
 * @param dunnageKg - packing inside, by kind [kg]
 * @returns units, not rounded
 * Source: MIL-STD-2073, method 50, formula II: U = K·V + ΣX·D; K = 1.2 a cubic foot.
 */
export function milStd2073RigidUnits(
  volumeM3: number,
  dunnageKg: Partial<Record<keyof typeof DUNNAGE_UNITS_PER_LB, number>> = {},
): number {
  if (!(volumeM3 >= 0)) throw new RangeError(`container: found ${volumeM3} m³, expected 0 or more`);
  return (volumeM3 / FOOT_M ** 3) * MIL_UNITS_PER_FT3 + dunnageUnits(dunnageKg);
}

function dunnageUnits(dunnageKg: Partial<Record<keyof typeof DUNNAGE_UNITS_PER_LB, number>>): number {
  let units = 0;
  for (const [kind, kg] of Object.entries(dunnageKg)) {
    const perLb = DUNNAGE_UNITS_PER_LB[kind as keyof typeof DUNNAGE_UNITS_PER_LB];
    if (!(kg >= 0 && perLb > 0))
      throw new RangeError(
        `dunnage: found ${kg} kg of "${kind}", expected 0 or more of ${Object.keys(DUNNAGE_UNITS_PER_LB).join(', ')}`,
      );
    units += perLb * (kg / POUND_KG);
  }
  return units;
}
