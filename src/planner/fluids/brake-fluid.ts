import type { Chassis } from '../household.ts';
import { formatQuantity } from '../units/index.ts';
import { type Manner, withSeparator } from '../written.ts';

type Grade = NonNullable<Chassis['brakeFluid']>;

/** One grade of brake fluid with its least boiling points. */
export interface BrakeFluidRow {
  grade: Grade;
  /** Least equilibrium reflux boiling point, new and with 3.7 % of water [°C]; undefined where the standard has none. */
  dryC?: number;
  wetC?: number;
  /** It takes up water from the air. */
  takesUpWater: boolean;
  source: string;
}

const FMVSS = 'FMVSS 116 (49 CFR 571.116), S5.1.1 and S5.1.2';

export const BRAKE_FLUIDS: readonly BrakeFluidRow[] = [
  { grade: 'DOT3', dryC: 205, wetC: 140, takesUpWater: true, source: FMVSS },
  { grade: 'DOT4', dryC: 230, wetC: 155, takesUpWater: true, source: FMVSS },
  {
    grade: 'DOT5',
    dryC: 260,
    wetC: 180,
    takesUpWater: false,
    source: `${FMVSS}; silicone, not to be mixed with the others`,
  },
  { grade: 'DOT5.1', dryC: 260, wetC: 180, takesUpWater: true, source: FMVSS },
  {
    grade: 'mineral',
    takesUpWater: false,
    source: 'mineral oil: no grade of FMVSS 116; only where the maker names it',
  },
];

/** Water that a glycol-based fluid takes up in a year [% by mass]. Source: paper on refractometers quoting SAE J1707. */
export const WATER_UPTAKE_PCT_PER_YEAR = { low: 1, high: 2 } as const;
/** Water at which the wet boiling point is measured [% by mass]. Source: FMVSS 116, S6.2. */
export const WET_PCT = 3.7;

/**
 * Years after which the fluid holds as much water as the wet boiling point is measured with.
 * @returns shortest and longest [years]
 */
export function yearsToWet(): { low: number; high: number } {
  return { low: WET_PCT / WATER_UPTAKE_PCT_PER_YEAR.high, high: WET_PCT / WATER_UPTAKE_PCT_PER_YEAR.low };
}

/**
 * Why brake fluid is changed by age, with the boiling points of its grade.
 * @param grade - grade on the reservoir's cap
 * @param manner - language and units of the text
 * Source: BRAKE_FLUIDS. TRRL LR903 found no firm relation of water to age in a thousand cars.
 */
export function brakeFluidText(grade: Grade, manner: Manner): string {
  const asText = (temperatureC: number) => formatQuantity(temperatureC, '°C', manner);
  const row = BRAKE_FLUIDS.find((r) => r.grade === grade);
  if (!row)
    throw new RangeError(
      `brake fluid: found "${grade}", expected one of ${BRAKE_FLUIDS.map((r) => r.grade).join(', ')}`,
    );
  if (row.dryC === undefined || row.wetC === undefined) return `${row.source}.`;
  const points = `${grade} boils at ${asText(row.dryC)} at least when new and ${asText(row.wetC)} with ${WET_PCT} % of water (${FMVSS})`;
  if (!row.takesUpWater) return `${points}; silicone takes up no water, but what gets in gathers at the lowest point.`;
  const years = yearsToWet();
  return `${points}. At ${WATER_UPTAKE_PCT_PER_YEAR.low}–${WATER_UPTAKE_PCT_PER_YEAR.high} % a year that is ${withSeparator(years.low.toFixed(1), manner.locale)}–${withSeparator(years.high.toFixed(1), manner.locale)} years: change by age is trade practice, not law, and age alone tells little; a boiling-point tester tells more.`;
}
