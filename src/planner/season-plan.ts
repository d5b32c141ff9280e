/**
 * What the planner answers: one plain JSON object that pages, sheets, calendar files and plan.json all read.
 *
 * Nothing outside `src/planner/` computes a number: a page only formats what stands here. The same object has a zod schema
 * in `src/publish/plan-schema.ts`, from which `plan.schema.json` is made; a test holds the two together.
 */
import type {
  BatteryCare,
  BatteryChemistry,
  CloseStage,
  DriveChemistry,
  FuelChoice,
  Household,
  IsoDate,
  MachineKind,
  Phase,
  Use,
} from './household.ts';

export interface SeasonPlan {
  /** Version of this format; rises when a field changes its meaning. */
  format: 1;
  /** The day the plan was made for. */
  asOf: IsoDate;
  units: Household['units'];
  household: {
    id: string;
    name: string;
    zone: string;
    locale: string;
    clock: Household['clock'];
    country?: string | undefined;
    revised: string;
    siteUrl: string;
  };
  places: PlacePlan[];
  machines: MachinePlan[];
  ledger: LedgerItem[];
  sessions: Session[];
  /** What does not fit, with the hours missing; empty when everything does. */
  misfits: Misfit[];
  trips: ChargeTrip[];
  supplies: SupplyLine[];
  events: PlanEvent[];
  warnings: Warning[];
}

/** How a number came about: what a page unfolds under it. */
export interface Derivation {
  /** Key of the calculation in the registry of methods. */
  method: string;
  /** The equation in words and symbols. */
  equation: string;
  inputs: { name: string; value: number | string; unit: string }[];
  result: { value: number | string; unit: string };
  sources: string[];
  /** What the number does not know. */
  caveat?: string | undefined;
}

export interface Warning {
  machine?: string | undefined;
  level: 'danger' | 'warning' | 'note';
  text: string;
  /** What to do about it. */
  act: string;
  /** Part of the plan it belongs to: "battery", "fuel", "coolant", "agenda", … */
  about: string;
}

export interface PlacePlan {
  id: string;
  name: string;
  enclosure: string;
  power: boolean;
  station?: { name: string; distanceKm: number; heightDifferenceM: number; far: boolean } | undefined;
  /** Outdoor monthly means, °C, January first. */
  outdoorC: number[];
  /** Daily mean, minimum and maximum outdoors for the pictures: one value each ten days, 37 values, from 1 January. */
  outdoorTenDayC: number[];
  climateSource: string;
  attribution: string;
}

export interface MachinePlan {
  id: string;
  name: string;
  kind: MachineKind;
  use: Use;
  place: string;
  placeName: string;
  /** Where in the place it stands. */
  spot?: string | undefined;
  season: { lastUse: IsoDate; firstUse: IsoDate; proposed: boolean; reasons: string[] };
  /** First and last day of the lay-up's work, planned or as ticked, and whether all of it is ticked. */
  layUp: { start: IsoDate; done: IsoDate; complete: boolean; late?: true | undefined };
  /** First and last day of the start-up's work, and the first use; where all of it is ticked, the day on which its last step was. */
  startUp: { start: IsoDate; ready: IsoDate; firstUse: IsoDate; made?: IsoDate | undefined };
  /** First night of a typical year on which the store can reach −1 °C during the rest; absent when it cannot. */
  firstFrostInStore?: IsoDate | undefined;
  battery?: BatteryPlan | undefined;
  driveBattery?: DriveBatteryPlan | undefined;
  air: AirPlan;
  corrosion: CorrosionPlan;
  fuel?: FuelPlan | undefined;
  coolant?: CoolantPlan | undefined;
  tyres: TyrePlan[];
  services: ServiceDue[];
  steps: PlanStep[];
  strip?: StripPlan | undefined;
  assumptions: Assumption[];
  whatIf: WhatIf[];
  warnings: Warning[];
  paperwork: { id: string; what: string; date: IsoDate; kind: string; pausedOverRest: boolean }[];
  notes: { date: IsoDate; text: string; assemblyId?: string | undefined }[];
}

export interface BatteryDay {
  date: IsoDate;
  temperatureC: number;
  stateOfChargePct: number;
  openCircuitV: number;
  freezingPointC: number;
}

export interface BatteryPlan {
  chemistry: BatteryChemistry;
  capacityAh: number;
  care: BatteryCare;
  careReason: string;
  /** Where the battery spends the rest. */
  keptAt: 'machine' | 'room';
  connected: boolean;
  /** Its lead is to come off, and nothing says yet that it is off: until then its drain is reckoned with. */
  leadStillOn?: true | undefined;
  /** Nothing can charge it where it rests: it stays in the machine, at a place without electricity. No charge is planned. */
  outOfReach?: true | undefined;
  /**
   * Of a battery on a maintainer, the first reading that says that it is not kept full: reckoned without one from that day on.
   * Absent while readings, if any, say nothing against it.
   */
  notKeptSince?: IsoDate | undefined;
  thresholdPct: number;
  /** By day from lay-up to first use; absent in the household's plan.json, whole in the machine's. */
  paths?: { low: BatteryDay[]; expected: BatteryDay[]; high: BatteryDay[] } | undefined;
  charges: Charge[];
  /** The day by which one more charge is due that no day was found for; a warning says why. */
  chargeWithoutDay?: IsoDate | undefined;
  /** One more charge that is the start-up's own, since it falls on its days or later: by when it is due, and whether that is past. */
  chargeAtStartUp?: { due: IsoDate; overdue?: boolean | undefined } | undefined;
  /** What has to be settled before it is charged, as things stand on the day of the plan; a trip's charge has its own. */
  before?: BeforeCharge | undefined;
  /** Smallest gap between design low and freezing point on the high-loss path. */
  freezingMargin: { minK: number; month: number };
  /** By month of the rest, in order. */
  freezingByMonth: {
    month: number;
    designLowC: number;
    typicalLowC: number;
    freezingPointC: number;
    marginK: number;
  }[];
  /** Loss-rate multiplier from readings, with its uncertainty as a factor (1.3 = within 1.3 times, one sigma). */
  calibration?:
    | { multiplier: number; factor: number; readings: number; suggests?: string | undefined; problems: string[] }
    | undefined;
  readings: {
    date: IsoDate;
    volts: number;
    temperatureC: number;
    stateOfChargePct: number;
    spreadPct: number;
    usable: boolean;
    why?: string | undefined;
  }[];
  /** Losses of the first thirty days on the three paths, as shares of a full charge [%]; 100 where nothing would be left. */
  firstMonthLossPct: { low: number; expected: number; high: number };
  derivations: Derivation[];
}

/** What has to be settled before a battery is charged: it may be frozen, or a lithium one has run down. */
export interface BeforeCharge {
  kind: 'frozen' | 'run-down' | 'low';
  text: string;
}

export interface Charge {
  /** Number of the charge within the rest, from 1, charges already logged as done counted too; absent: its place in the list. */
  occurrence?: number | undefined;
  /** The reminder's day: on or before the high-loss date, moved earlier to share a trip; after it where the charge is overdue. */
  date: IsoDate;
  /** The day the high-loss path reaches the threshold, or a reading found it not kept by its maintainer: the latest day. */
  earliest: IsoDate;
  /** True where that day is past, and no charge has been logged. */
  overdue?: boolean | undefined;
  /** The day the expected path reaches it, or that reading; undefined when not before first use. */
  expected?: IsoDate | undefined;
  /** Amounts at the reminder's day on the expected path, and at most (high-loss path). */
  ampHours: number;
  ampHoursMost: number;
  hours: number;
  hoursMost: number;
  chargerId?: string | undefined;
  tripId?: string | undefined;
  why: string;
  before?: BeforeCharge | undefined;
  /** Why no charger of the household serves it; absent where one does. The hours are those on one that would. */
  noCharger?: string | undefined;
}

/** How the battery that drives an electric machine is kept over the rest. */
export interface DriveBatteryPlan {
  chemistry: DriveChemistry;
  removable: boolean;
  /** State of charge it is left at. */
  keepPct: { low: number; high: number };
  /** State of charge that a charge in the rest brings it to. */
  chargeToPct: number;
  rechargeBelowPct: number;
  /** Loss in 30 days, with what its own electronics draw, percent of a full charge. */
  lossPctPerMonth: { low: number; expected: number; high: number };
  /** The day it is down to `rechargeBelowPct` from the low end of `keepPct` at the fastest loss; absent when not before first use. */
  rechargeBy?: IsoDate | undefined;
  /** The same from `chargeToPct` at the expected loss. */
  rechargeExpected?: IsoDate | undefined;
  /** Lowest temperature at which it may be kept, and the coldest of the store over the rest, °C. */
  lowestStorageC: number;
  storeLowC: number;
  derivations: Derivation[];
}

export interface AirPlan {
  months: AirMonth[];
  /** False where monthly figures cannot carry the condensation hours. */
  condensationSayable: boolean;
  /** The same of frost. */
  frostSayable: boolean;
  /** Factor by which a half-year's hours typically differ from those of a real year. */
  typicalFactor: { condensation: number; frost: number; wet: number };
  why?: string | undefined;
  /** The coldest hour that a usual year brings to the store over the rest [°C]. */
  lowestC: number;
  /** The warmest hour of all the years reckoned [°C]. */
  highestC: number;
  /** The coldest to be reckoned with in the store over the rest: rarer than the coldest hour of a usual year [°C]. */
  reckonedLowC: number;
}

export interface AirMonth {
  month: number;
  meanC: number;
  /** Dew point of the store air, monthly mean, °C. */
  dewPointC: number;
  meanRhPct: number;
  /** Null where it cannot be said from what is known. */
  condensationHours: number | null;
  condensationHoursP90: number | null;
  /** Null where it cannot be said from what is known. */
  frostHours: number | null;
  frostHoursP90: number | null;
  wetHours: number;
  wetHoursP90: number;
}

export interface CorrosionPlan {
  category: 'C1' | 'C2' | 'C3' | 'C4' | 'C5' | 'CX';
  steelUmPerYear: number;
  zincUmPerYear: number;
  /** Factor below and above that the estimate carries. */
  uncertainty: { low: number; high: number };
  caveats: string[];
  protection: { level: number; name: string; measures: string[]; reason: string };
  /** Units of desiccant for a closed bag, by two standards; absent when no bag is advised. */
  desiccant?:
    | { areaM2: number; volumeM3: number; din55474Units: number; milStd2073Units: number; note: string }
    | undefined;
  dehumidifierRhPct?: { low: number; high: number } | undefined;
  derivations: Derivation[];
}

export interface FuelPlan {
  choice: FuelChoice;
  reason: string;
  /** The lay-up's work on it is ticked ("done"), or its days are over and nobody ticked it ("past"). */
  settled?: 'done' | 'past' | undefined;
  /** Petrol in the tank over the rest, as far as it is planned [L]; 0 in a drained one. */
  levelL: number;
  addL?: number | undefined;
  /** To be drawn off first, where the tank is fuller than the heat of the store allows [L]. */
  drawOffL?: number | undefined;
  doseML?: number | undefined;
  runMinutes?: number | undefined;
  drainedL?: number | undefined;
  cans?: number | undefined;
  /** Water the fuel in the tank can hold at the coldest store hour, and the most that breathing can bring. */
  waterToleranceML: number;
  breathingWaterML: number;
  /** How full the tank stands at the highest store temperature, %. */
  fullAtHottestPct: number;
  useBy: { earliest: IsoDate; latest: IsoDate };
  /** By when what was drained is used up, or taken away where it is old already when it comes out. */
  drainedUseBy?: IsoDate | undefined;
  drainedOld?: true | undefined;
  atFirstUse: { verdict: 'use' | 'mix' | 'dispose'; text: string };
  tap: string;
  localLimit: { where: string; text: string; exceeded: boolean | null };
  derivations: Derivation[];
}

export interface CoolantPlan {
  /** Undefined strength gives undefined freezing point: test it. */
  freezeC?: number | undefined;
  /** The coldest to be reckoned with, less a margin. */
  needC: number;
  /** Freezing point aimed at: that of `targetStrength`. */
  aimC: number;
  strength?: number | undefined;
  /** Strong enough for the cold, and never less than inhibitors ask; the strongest where no mixture reaches `needC`. */
  targetStrength: number;
  /** Litres to drain and replace by the refill; 0 when protected. */
  replaceL?: number | undefined;
  swaps?: number | undefined;
  enough: boolean | null;
  /** The day by which it is to be tested, or strengthened, where that is still to be done and has a use. */
  testBy?: IsoDate | undefined;
  changeBy?: IsoDate | undefined;
  /** What of it is ticked, where what it stands now is not written down. */
  unwritten?: 'tested' | 'strengthened' | undefined;
  ageDue?: IsoDate | undefined;
  text: string;
  derivations: Derivation[];
}

export interface TyrePlan {
  position: string;
  count: number;
  normalKPa: number;
  setKPa: number;
  expectedAtStartUpKPa: number;
  /** Pressure to expect at a look-in, by temperature, after the leakage up to the middle of the rest. */
  lookIn: { temperatureC: number; expectedKPa: number }[];
  standsOnTyres: boolean;
  moveEveryMonths?: number | undefined;
  derivations: Derivation[];
}

export interface ServiceDue {
  id: string;
  what: string;
  due?: IsoDate | undefined;
  dueKm?: number | undefined;
  dueHours?: number | undefined;
  /** What decides: calendar, distance, hours, observed return. */
  by: 'calendar' | 'distance' | 'hours' | 'observed' | 'unknown';
  pulledIn: boolean;
  text: string;
}

export interface Quantity {
  name: string;
  value: number;
  unit: string;
  /** It rests on what was assumed of the machine. */
  assumed?: boolean | undefined;
}

export interface PlanStep {
  /** "<procedure>.<step>" and, where it is repeated, ".<n>". Unique within the machine. */
  id: string;
  phase: Phase | 'winter';
  /** What of the phase it belongs to, in words: "Wash and dry". */
  part: string;
  title: string;
  detail?: string | undefined;
  minutes: number;
  tools: string[];
  /** `about`: the amount rests on what was assumed. */
  supplies: { what: string; amount: number; unit: string; about?: boolean | undefined }[];
  cautions: string[];
  why: string;
  sources: string[];
  amounts: Quantity[];
  opens: string[];
  closes: string[];
  after: string[];
  stage?: CloseStage | undefined;
  safetyCritical: boolean;
  doNotRide?: string | undefined;
  needs: { dryDay: boolean; warmEngine: boolean; stand: boolean; charger: boolean; bench: boolean; power: boolean };
  earliest?: IsoDate | undefined;
  latest?: IsoDate | undefined;
  waitH: number;
  /** The step that it goes on from without a break, where the two are one piece of work. */
  goesOnFrom?: string | undefined;
  reading?: string | undefined;
  /** Torque rows to print beside the step. */
  torques: TorqueRow[];
  done: boolean;
  /** The day the agenda gave it; of a lay-up step that is done, the day on which it was. */
  date?: IsoDate | undefined;
  /** The day by which it was due, where that is past and it is not done. */
  overdue?: IsoDate | undefined;
  /** The last day on which it still has a use to do it late, where that is not the one of its phase. */
  useUntil?: IsoDate | undefined;
}

export interface TorqueRow {
  what: string;
  count: number;
  head: string;
  torqueNm?: number | undefined;
  torqueLbfFt?: number | undefined;
  condition: 'dry' | 'lubricated' | 'unstated';
  /** "No published figure: snug evenly, check, recheck", thread lock, anti-seize. */
  note?: string | undefined;
}

export interface StripPlan {
  jobs: { id: string; name: string; assemblies: string[]; minutes: number }[];
  /** Assembly ids in the order they come off; `on` is exactly the reverse. */
  off: StripStep[];
  on: StripStep[];
  minutesBundled: number;
  minutesSeparate: number;
  parts: { what: string; amount: number; unit: string; why: string; leadDays: number; inStock: boolean }[];
  tools: string[];
  /** What is off now and where it lies. */
  nowOff: { assembly: string; name: string; where?: string | undefined; since?: IsoDate | undefined }[];
  torques: TorqueRow[];
}

export interface StripStep {
  assembly: string;
  name: string;
  minutes: number;
  /** Jobs it comes off for. */
  forJobs: string[];
  cautions: string[];
  behind: string[];
}

export interface LedgerItem {
  machine: string;
  /** Stable id: "fuel-tap-shut", "assembly:tank". */
  item: string;
  state: string;
  openedBy: string;
  closedBy: string;
  safetyCritical: boolean;
  where?: string | undefined;
  since?: IsoDate | undefined;
}

export interface Session {
  id: string;
  date: IsoDate;
  /** "13:00". */
  start: string;
  hours: number;
  steps: { machine: string; step: string }[];
  title: string;
}

export interface Misfit {
  steps: { machine: string; step: string }[];
  hoursMissing: number;
  before: IsoDate;
  text: string;
}

export interface ChargeTrip {
  id: string;
  date: IsoDate;
  machines: string[];
  charges: {
    machine: string;
    chargeIndex: number;
    chargerId?: string | undefined;
    /** As the household calls it. */
    chargerName?: string | undefined;
    startHour?: number | undefined;
    hours: number;
  }[];
  problem?: string | undefined;
}

export interface SupplyLine {
  what: string;
  amount: number;
  unit: string;
  /** The amount rests on what was assumed. */
  about?: boolean | undefined;
  orderBy?: IsoDate | undefined;
  needBy: IsoDate;
  inStock: boolean;
  for: { machine: string; step?: string | undefined; job?: string | undefined; amount: number }[];
}

export type EventCategory = 'charge' | 'look-in' | 'lay-up' | 'winter' | 'order' | 'start-up' | 'paperwork';

export interface PlanEvent {
  /** Version 5 UUID of household, machine, step and occurrence; never of date or wording. */
  uid: string;
  date: IsoDate;
  /** Last day, when it is longer than one. */
  endDate?: IsoDate | undefined;
  title: string;
  /** Machine and act without amounts, for the printed month: "Charge Juniper". */
  label?: string | undefined;
  text: string;
  category: EventCategory;
  /** Machine id; for an event of several machines, the first, and `machines` has them all. */
  machine?: string | undefined;
  machines: string[];
  /** Path of the page, from the site's root. */
  path: string;
}

export interface Assumption {
  field: string;
  value: number | string;
  low: number | string;
  high: number | string;
  unit: string;
  reason: string;
  settle: string;
  /** Days by which the first charge moves at most over the range (the larger of the two shifts, signed); 0 when it does not. */
  firstChargeShiftDays: number;
  /** The first charge date when the value is at its low and at its high end; null when no charge falls before first use. */
  firstChargeAt: { low: IsoDate | null; high: IsoDate | null };
  marginShiftK: { low: number; high: number };
  /** Number of charges at the low and the high end, less the expected number. */
  visitsShift: { low: number; high: number };
}

export interface WhatIf {
  /** Going on riding for this many days more. */
  days: number;
  lastUse: IsoDate;
  text: string[];
  missed: string[];
  firstChargeDate?: IsoDate | undefined;
  misfitHours: number;
  coldestNightC: number;
}
