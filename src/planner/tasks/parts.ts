import { addDays, daysBetween, earlier, later } from '../dates.ts';
import type { IsoDate, Season } from '../household.ts';
import type {
  BatteryPlan,
  CoolantPlan,
  CorrosionPlan,
  DriveBatteryPlan,
  FuelPlan,
  ServiceDue,
  TyrePlan,
} from '../season-plan.ts';

/** What the calculations found for one machine: the ground of its facts and of every amount in its steps. */
export interface PlanParts {
  battery?: BatteryPlan | undefined;
  driveBattery?: DriveBatteryPlan | undefined;
  fuel?: FuelPlan | undefined;
  coolant?: CoolantPlan | undefined;
  tyres: TyrePlan[];
  corrosion: CorrosionPlan;
  services: ServiceDue[];
  /** First day on which the store can reach −1 °C; undefined when it cannot during the rest. */
  firstFrost?: IsoDate | undefined;
}

/** The days between which work of a phase falls. */
export interface Windows {
  /** The swap with a machine that starts up can begin here. */
  before: IsoDate;
  /** What must come before the last use can begin here: a fortnight has two weekends, and the plan's litres still hold. */
  beforeLast: IsoDate;
  lastUse: IsoDate;
  /** Lay-up is to be done by this day. */
  layUpEnd: IsoDate;
  /** Start-up can begin here. */
  startUpFrom: IsoDate;
  firstUse: IsoDate;
  /** The first ride and its re-check are to be done by this day. */
  rideEnd: IsoDate;
}

/** Days for work on each side of a rest, and after the first use until the season is given up. Common practice. */
export const LEAD_DAYS = 21;
const BEFORE_LAST_DAYS = 14;

/**
 * The days for work around a rest: up to three weeks on each side of it, less where the rest is short, so that lay-up is
 * always done before start-up begins.
 * @param season - last and first use
 * Source: common practice.
 */
export function windowsOf(season: Season): Windows {
  const rest = daysBetween(season.lastUse, season.firstUse);
  const span = Math.max(0, Math.min(LEAD_DAYS, Math.floor((rest - 1) / 2)));
  const layUpEnd = addDays(season.lastUse, span);
  return {
    before: addDays(season.lastUse, -LEAD_DAYS),
    beforeLast: addDays(season.lastUse, -BEFORE_LAST_DAYS),
    lastUse: season.lastUse,
    layUpEnd: earlier(layUpEnd, season.firstUse),
    startUpFrom: later(addDays(season.firstUse, -span), layUpEnd),
    firstUse: season.firstUse,
    rideEnd: addDays(season.firstUse, LEAD_DAYS),
  };
}
