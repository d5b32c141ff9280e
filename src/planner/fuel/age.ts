import { addDays, addMonths } from '../dates.ts';
import { power } from '../elementary.ts';
import type { IsoDate } from '../household.ts';

/** How long petrol keeps in one kind of container. */
export interface KeepingRow {
  id: 'tank-untreated' | 'tank-treated' | 'can';
  what: string;
  /** Months from purchase at 20 °C: surely good up to `low`, surely stale after `high`. */
  months: { low: number; high: number };
  source: string;
  caveat: string;
}

/** Published lives of petrol run from one month to a year; each row holds the spread for its container. */
export const KEEPING: readonly KeepingRow[] = [
  {
    id: 'tank-untreated',
    what: 'in a vented tank, without stabiliser',
    months: { low: 1, high: 3 },
    source:
      'one month in a vented tank (fact sheet of an oil company), use within 30 days (university extension), 60–90 days (boating guidance), about 3 months (motoring club)',
    caveat: 'Sources disagree, from one month to three.',
  },
  {
    id: 'tank-treated',
    what: 'in a tank 95 % full, with stabiliser',
    months: { low: 6, high: 12 },
    source: '12 months from purchase in a tank 95 % full (aviation body, motor petrol); six months: common practice',
    caveat: 'No standard measures what a stabiliser adds; the figure on its own label may be longer.',
  },
  {
    id: 'can',
    what: 'in a closed approved can that has been opened',
    months: { low: 3, high: 6 },
    source: 'opened can 6 months at 20 °C, 3 months at 30 °C (fact sheet of an oil company)',
    caveat: 'Petrol that came out of a vented tank has lost its lightest part already.',
  },
];

/** Above this the life is shortened; below it no credit is given, since the loss of the light part goes on. */
const REFERENCE_C = 20;
/** 6 months at 20 °C and 3 months at 30 °C: the life halves in 10 K. */
const HALVING_K = 10;

/**
 * The row of a kind of container.
 * @param id - id in the table
 */
export function keepingRow(id: KeepingRow['id']): KeepingRow {
  const row = KEEPING.find((k) => k.id === id);
  if (!row) throw new RangeError(`container: found "${id}", expected one of ${KEEPING.map((k) => k.id).join(', ')}`);
  return row;
}

/**
 * Share of the life at 20 °C that is left in a warmer store.
 * @param meanC - mean temperature of the store over the rest [°C]
 * @returns 1 up to 20 °C, 0.5 at 30 °C
 * Source: opened can 6 months at 20 °C, 3 months at 30 °C. US Bureau of Mines RI 7197 (1968) gives a steeper law for gum
 * (32 weeks at 43 °C = 5.7 years at 27 °C), which would promise far more in the cold; it is not used.
 */
export function lifeShare(meanC: number): number {
  if (!(meanC >= -90 && meanC <= 120)) throw new RangeError(`temperature: found ${meanC} °C, expected −90 to 120 °C`);
  return power(2, -Math.max(0, meanC - REFERENCE_C) / HALVING_K);
}

/**
 * The window in which fuel goes from surely good to surely stale.
 * @param bought - day of purchase
 * @param row - container and treatment
 * @param meanC - mean temperature of the store [°C]
 */
export function useByWindow(bought: IsoDate, row: KeepingRow, meanC: number): { earliest: IsoDate; latest: IsoDate } {
  const share = lifeShare(meanC);
  return {
    earliest: afterMonths(bought, row.months.low * share),
    latest: afterMonths(bought, row.months.high * share),
  };
}

/** Verdict on fuel of a given window on a day. */
export function verdictOn(day: IsoDate, window: { earliest: IsoDate; latest: IsoDate }): 'use' | 'mix' | 'dispose' {
  if (day <= window.earliest) return 'use';
  return day <= window.latest ? 'mix' : 'dispose';
}

/** Calendar months, and the rest of a month in days of 30.4375 to a month. */
function afterMonths(from: IsoDate, months: number): IsoDate {
  const whole = Math.floor(months);
  return addDays(addMonths(from, whole), Math.round((months - whole) * 30.4375));
}
