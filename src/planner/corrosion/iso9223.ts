import { exp, power } from '../elementary.ts';

/** What the dose–response functions are asked with: annual means. */
export interface AirDose {
  /** Mean temperature [°C] */
  temperatureC: number;
  /** Mean relative humidity [%] */
  rhPct: number;
  /** Deposition of sulphur dioxide [mg/(m²·d)] */
  sulphurDioxideMgM2D: number;
  /** Deposition of chloride [mg/(m²·d)] */
  chlorideMgM2D: number;
}

export type Category = 'C1' | 'C2' | 'C3' | 'C4' | 'C5' | 'CX';
export type Metal = 'steel' | 'zinc';

/** Dose–response function of one metal: a·P^b·exp(c·RH + k·(T − 10)) + d·S^e·exp(f·RH + g·T). */
interface DoseResponseRow {
  metal: Metal;
  name: string;
  equation: string;
  so2: { a: number; b: number; c: number; kCold: number; kWarm: number };
  chloride: { d: number; e: number; f: number; g: number };
  /** Upper bounds of the categories C1 to CX [µm in the first year]. */
  categoryUpToUm: readonly (readonly [Category, number])[];
  source: string;
}

/** ISO 9223:2012, equations 1 and 2, and table 2. Copper and aluminium are left out: their constants are not verified. */
export const DOSE_RESPONSE: readonly DoseResponseRow[] = [
  {
    metal: 'steel',
    name: 'carbon steel',
    equation:
      '1.77·P^0.52·exp(0.020·RH + f) + 0.102·S^0.62·exp(0.033·RH + 0.040·T); f = 0.150·(T − 10) up to 10 °C, −0.054·(T − 10) above',
    so2: { a: 1.77, b: 0.52, c: 0.02, kCold: 0.15, kWarm: -0.054 },
    chloride: { d: 0.102, e: 0.62, f: 0.033, g: 0.04 },
    categoryUpToUm: [
      ['C1', 1.3],
      ['C2', 25],
      ['C3', 50],
      ['C4', 80],
      ['C5', 200],
      ['CX', 700],
    ],
    source: 'ISO 9223:2012, equation 1 and table 2',
  },
  {
    metal: 'zinc',
    name: 'zinc',
    equation:
      '0.0129·P^0.44·exp(0.046·RH + f) + 0.0175·S^0.57·exp(0.008·RH + 0.085·T); f = 0.038·(T − 10) up to 10 °C, −0.071·(T − 10) above',
    so2: { a: 0.0129, b: 0.44, c: 0.046, kCold: 0.038, kWarm: -0.071 },
    chloride: { d: 0.0175, e: 0.57, f: 0.008, g: 0.085 },
    categoryUpToUm: [
      ['C1', 0.1],
      ['C2', 0.7],
      ['C3', 2.1],
      ['C4', 4.2],
      ['C5', 8.4],
      ['CX', 25],
    ],
    source: 'ISO 9223:2012, equation 2 and table 2',
  },
];

/** The intervals of annual means that the functions were fitted on. Source: ISO 9223:2012, table 3. */
export const VALID = {
  temperatureC: { low: -17.1, high: 28.7, unit: '°C', name: 'mean temperature' },
  rhPct: { low: 34, high: 93, unit: '%', name: 'mean relative humidity' },
  sulphurDioxideMgM2D: { low: 0.7, high: 150.4, unit: 'mg/(m²·d)', name: 'sulphur dioxide' },
  chlorideMgM2D: { low: 0.4, high: 760.5, unit: 'mg/(m²·d)', name: 'chloride' },
} as const;

/** Factor below and above: −33 % and +50 %. Source: ISO 9223:2012, table A.1 (from memory). */
export const STATED_UNCERTAINTY = { low: 0.67, high: 1.5 } as const;

/**
 * The row of a metal.
 * @param metal - steel or zinc
 */
export function doseResponseRow(metal: Metal): DoseResponseRow {
  const row = DOSE_RESPONSE.find((r) => r.metal === metal);
  if (!row) throw new RangeError(`metal: found "${metal}", expected steel or zinc`);
  return row;
}

/**
 * Corrosion of bare metal in its first year.
 * @param metal - steel or zinc
 * @param dose - annual means of the air
 * @returns loss [µm in the first year]
 * Source: ISO 9223:2012, equations 1 and 2.
 * Valid: VALID; outside it the functions are continued (see `outsideValid`).
 * Error: −33 % to +50 %; clean cold inland sites come out about three times too low.
 */
export function firstYearLossUm(metal: Metal, dose: AirDose): number {
  const { temperatureC: t, rhPct: rh, sulphurDioxideMgM2D: p, chlorideMgM2D: s } = dose;
  if (!(t > -90 && t < 90)) throw new RangeError(`mean temperature: found ${t} °C, expected −90 to 90 °C`);
  if (!(rh >= 0 && rh <= 100)) throw new RangeError(`mean relative humidity: found ${rh} %, expected 0 to 100 %`);
  if (!(p >= 0 && s >= 0 && Number.isFinite(p + s)))
    throw new RangeError(`deposition: found ${p} and ${s} mg/(m²·d), expected numbers of 0 or more`);
  const { so2, chloride } = doseResponseRow(metal);
  const f = (t <= 10 ? so2.kCold : so2.kWarm) * (t - 10);
  return (
    so2.a * power(p, so2.b) * exp(so2.c * rh + f) +
    chloride.d * power(s, chloride.e) * exp(chloride.f * rh + chloride.g * t)
  );
}

/**
 * Which of the inputs lie outside what the functions were fitted on.
 * @param dose - annual means of the air
 * @returns one sentence each; empty when all lie inside
 */
export function outsideValid(dose: AirDose): string[] {
  return (Object.keys(VALID) as (keyof typeof VALID)[])
    .filter((key) => !(dose[key] >= VALID[key].low && dose[key] <= VALID[key].high))
    .map((key) => {
      const { name, low, high, unit } = VALID[key];
      return `${name} ${dose[key].toPrecision(3)} ${unit} lies outside the ${low} to ${high} ${unit} that ISO 9223 was fitted on`;
    });
}

/**
 * Corrosivity category by the loss of the first year.
 * @param metal - steel or zinc
 * @param lossUm - loss [µm in the first year]
 * @returns C1 to CX; beyond the table's end CX
 * Source: ISO 9223:2012, table 2; a value on a bound belongs to the lower category.
 */
export function categoryOf(metal: Metal, lossUm: number): Category {
  if (!(lossUm >= 0)) throw new RangeError(`corrosion: found ${lossUm} µm, expected 0 or more`);
  return doseResponseRow(metal).categoryUpToUm.find(([, upTo]) => lossUm <= upTo)?.[0] ?? 'CX';
}
