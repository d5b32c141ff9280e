import type { Charger } from '../household.ts';

/** A battery as the rota sees it. Days are day numbers (dates.ts). */
export interface RotaBattery {
  machine: string;
  /** "Moth's battery". */
  name: string;
  /** Batteries of one yard share trips. */
  yard: string;
  /** First day on which a trip can serve it. */
  firstDay: number;
  /** A due day from here on is met by the charge at start-up. */
  endDay: number;
  /** The first use: the last day for a charge that is due before. */
  lastDay: number;
  /** Where it rests somebody lives: a day without hours for work does for a charge that has no other. */
  atHome: boolean;
  /** A maintainer could stay on it where it rests. */
  maintainable: boolean;
  /** Due day where it is not charged; Infinity when not within the rest. */
  firstDue: number;
  /** The reading by which it is due, in words, and whether a warning of its own tells of it. */
  found?: { said: string; told: boolean } | undefined;
  /** Due day after a charge on `day`; the one before was on `since` (undefined: none yet). Never falls as `day` rises. */
  dueAfter: (day: number, since: number | undefined) => number;
  /** False where it must not be charged on that day. */
  canCharge: (day: number) => boolean;
  /** False where it has lost so little that a charge is left out if nothing is gained by it. */
  worthIt: (day: number, since: number | undefined) => boolean;
  chargers: readonly Charger[];
  /** May lie at the bench for its turn on the charger, some days after the trip. */
  waits: boolean;
  /** Hours on a charger, at most, for a charge on `day`; without a charger, on one as large as it takes. */
  hoursOn: (charger: Charger | undefined, day: number, since: number | undefined) => number;
}
