/**
 * The batteries that drive machines, one row a chemistry: how full they are kept, what they lose, what cold they stand.
 *
 * Rows are common practice where no source is named; what the maker's manual says goes before all of it. Loss of lithium-ion: 1 to
 * 2 % a month by itself and about 3 % more for a protection circuit, read in pages that quote the trade's handbook; up to 3 % by
 * itself and a larger management unit, common practice. Half charge and no charging below 0 °C: common practice, as fire brigades
 * and makers of light electric vehicles have it. Lowest storage temperature: lithium-ion from memory of data sheets; the acid of a
 * flooded battery at 75 % freezes at about −41 °C, by its freezing curve.
 */
import type { DriveChemistry, Ranged } from '../household.ts';

export interface DriveChemistryRow {
  id: DriveChemistry;
  name: string;
  /** Loss in 30 days, with what its own electronics draw [% of a full charge]. */
  lossPctPerMonth: Ranged;
  /** State of charge it is left at over the rest [%]. */
  keepPct: { low: number; high: number };
  /** State of charge that a charge in the rest brings it to [%]. */
  chargeToPct: number;
  /** State of charge under which it is charged again [%]. */
  rechargeBelowPct: number;
  /** Never charged below this [°C]; undefined: as long as its acid is not frozen. */
  minChargeC?: number | undefined;
  /** Lowest temperature at which makers let it be kept [°C]. */
  lowestStorageC: Ranged;
  sources: readonly string[];
}

export const DRIVE_CHEMISTRIES: Readonly<Record<DriveChemistry, DriveChemistryRow>> = {
  'lithium-ion': {
    id: 'lithium-ion',
    name: 'lithium-ion',
    lossPctPerMonth: { value: 3, low: 1, high: 6 },
    keepPct: { low: 40, high: 60 },
    chargeToPct: 50,
    rechargeBelowPct: 33,
    minChargeC: 0,
    lowestStorageC: { value: -20, low: -30, high: -10 },
    sources: [
      'common practice: loss 1 to 3 % a month by itself, about 3 % more by its protection circuit; left at 40 to 60 %, charged again under a third',
    ],
  },
  'lead-acid': {
    id: 'lead-acid',
    name: 'lead–acid',
    lossPctPerMonth: { value: 5, low: 2, high: 15 },
    keepPct: { low: 100, high: 100 },
    chargeToPct: 100,
    rechargeBelowPct: 75,
    lowestStorageC: { value: -40, low: -50, high: -20 },
    sources: [
      'loss, from gel to old flooded ones: common practice',
      'charged again at 75 %: as for 12 V batteries, TM 5-3820-256-24-4 (SG 1.225)',
    ],
  },
};
