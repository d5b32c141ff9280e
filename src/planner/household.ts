/**
 * What the planner is told: a household with every unit in SI, every default already filled in.
 *
 * `src/content/` makes it from the content files (or from the form in the page); the planner trusts it. Dates are ISO
 * calendar dates ("2026-10-25") of the household's own zone; nothing here is an instant, except `revised`.
 */
import type { Climate } from './climate/types.ts';
import type { Enclosure } from './storage/types.ts';

/** A calendar date of the household's zone, "YYYY-MM-DD". */
export type IsoDate = string;

export type Weekday = 'monday' | 'tuesday' | 'wednesday' | 'thursday' | 'friday' | 'saturday' | 'sunday';

/** One value with the range it could have. All three are in the unit that the field's name gives. */
export interface Ranged {
  value: number;
  low: number;
  high: number;
}

export interface Household {
  /** Stable key of every reminder's identity; changing it makes all reminders new ones. */
  id: string;
  name: string;
  /** IANA time zone. */
  zone: string;
  /** BCP 47 language tag: date and number style. */
  locale: string;
  clock: '24h' | '12h';
  /** The unit system of all that is said. */
  units: 'metric' | 'us' | 'imperial';
  /** ISO 3166 alpha-2 country, for the local limits on petrol kept at home. */
  country?: string | undefined;
  /** Hours for the machines, by weekday. */
  hoursByWeekday: Record<Weekday, number>;
  /** Whole days on which nobody is there, both ends included. */
  away: { from: IsoDate; to: IsoDate; why?: string | undefined }[];
  /** Pairs of hands that can work at the same time. */
  hands: number;
  chargers: Charger[];
  stands: Stand[];
  fuelCare: FuelCare;
  /** The warm room a battery can be carried to, if there is one. */
  batteryRoom?: { name: string; temperatureC: number } | undefined;
  places: Place[];
  machines: Machine[];
  procedures: Procedure[];
  /** What of the content may well be meant otherwise, and what to do about it: told with the plan. */
  doubts?: { text: string; act: string }[] | undefined;
  /** Instant of the last change of the content, ISO 8601 in UTC: what calendars take as "last modified". */
  revised: string;
  /** Seed of the weather ensemble; the same seed gives the same plan. */
  seed: number;
  /** Base address of the built site, without a slash at the end; empty when it has none. */
  siteUrl: string;
}

export interface Charger {
  id: string;
  name: string;
  currentA: number;
  chemistries: BatteryChemistry[];
  /** Can stay connected for months (it keeps, and does not overcharge). */
  maintainer: boolean;
  /** Where it is used; undefined when it is carried about. */
  placeId?: string | undefined;
}

export interface Stand {
  id: string;
  name: string;
  /** Machine kinds it carries. */
  kinds: MachineKind[];
}

export interface FuelCare {
  /** Dose of the stabiliser the household has, mL per litre of fuel; undefined when it has none. */
  stabiliserDoseMLPerL?: number | undefined;
  /** Room in one approved can, litres. */
  canL: number;
  /** Approved cans at hand. */
  cans: number;
}

export interface Place {
  id: string;
  name: string;
  enclosure: Enclosure;
  power: boolean;
  climate: Climate;
  /** Distance and height difference to the station whose figures are used, when it is not the place's own. */
  station?: { name: string; distanceKm: number; heightDifferenceM: number; far: boolean } | undefined;
  /** Sulphur dioxide deposition, mg/(m² d). */
  sulphurDioxideMgM2D: number;
  /** Chloride deposition on things stored here, mg/(m² d). */
  chlorideMgM2D: number;
  /** One way and back, minutes: a trip to look in costs this much. */
  tripMinutes: number;
  rodents: boolean;
  /** Room for machines kept here, and a bench with light; `bench` is true where work can be done. */
  bench: boolean;
}

export type MachineKind =
  | 'motorcycle'
  | 'scooter'
  | 'snow-machine'
  | 'quad'
  | 'side-by-side'
  | 'car'
  | 'tractor'
  | 'mower';

export type Use = 'road' | 'snow' | 'trail' | 'work';

export interface Machine {
  id: string;
  name: string;
  kind: MachineKind;
  use: Use;
  year?: number | undefined;
  placeId: string;
  /** Where in the place it stands, as the user calls it. */
  spot?: string | undefined;
  season: Season;
  engine: Engine;
  /** The 12 V battery; of an electric machine the small one beside its drive battery. */
  battery?: Battery | undefined;
  /** What drives an electric machine. */
  driveBattery?: DriveBattery | undefined;
  fuel?: Fuel | undefined;
  cooling: Cooling;
  tyres: Tyre[];
  chassis: Chassis;
  /** Ridden or driven on salted roads, and whether it is washed at lay-up. */
  roadSalt: { exposed: boolean; washed: boolean };
  services: ServiceItem[];
  paperwork: Paperwork[];
  assemblies: Assembly[];
  jobs: Job[];
  /** Assemblies and other things found open when the content was written; the start-up sheet begins from these. */
  asLeft: AsLeft[];
  odometerKm?: number | undefined;
  engineHours?: number | undefined;
  /** Expected use in the coming season. */
  seasonKm?: number | undefined;
  seasonHours?: number | undefined;
  readings: Reading[];
  charged: { date: IsoDate; toPct: number }[];
  /** By what is ticked, worked out by the planner: the days on which its battery was charged for its lay-up and for its start-up. */
  chargedAtLayUp?: IsoDate | undefined;
  chargedAtStartUp?: IsoDate | undefined;
  /** By what is ticked, worked out by the planner: the day from which the battery's lead is off, or the battery out. */
  leadOffOn?: IsoDate | undefined;
  doneSteps: Ticked[];
  /** Steps left out on purpose: they stand on no sheet, and what they would have opened is not open. */
  skippedSteps?: (Ticked & { why?: string | undefined })[] | undefined;
  notes: { date: IsoDate; text: string; assemblyId?: string | undefined }[];
  /** Every value that was filled in rather than given. */
  assumptions: AssumedField[];
  /** Where the machine's own content stands, for messages: "machines/juniper.yaml". */
  file: string;
}

export interface Season {
  /** Last day of use before the rest. */
  lastUse: IsoDate;
  /** First day of use after the rest. */
  firstUse: IsoDate;
  /** True where the dates were proposed from the climate. */
  proposed: boolean;
  reasons: string[];
}

export interface Engine {
  cycle: 'four-stroke' | 'two-stroke' | 'electric';
  cylinders: number;
  start: 'electric' | 'pull' | 'kick' | 'electric-and-pull' | 'electric-and-kick';
  /** Engine oil, litres; 0 when the oil is burnt with the fuel. */
  oilL: number;
  oilFilter: boolean;
  /** Two-stroke oil: mixed into the tank or injected from its own tank. */
  twoStrokeOil?: 'premix' | 'injected' | undefined;
  /** Idle fuel flow, L/h. */
  idleFlowLPerH: number;
}

export type BatteryChemistry = 'flooded-antimony' | 'flooded-calcium' | 'agm' | 'gel' | 'lifepo4';

export interface Battery {
  chemistry: BatteryChemistry;
  /** Rated at the 20 h rate, Ah. */
  capacityAh: number;
  /** Share of the rated capacity that is left, 0–1. */
  health: Ranged;
  /** Self-discharge at 20 °C, percent of usable capacity in 30 days. */
  selfDischargePctPerMonth: Ranged;
  /** Temperature step that doubles the self-discharge, K. */
  doublingK: Ranged;
  /** Key-off drain while the battery stays connected, mA. */
  drainMA: Ranged;
  /** State of charge at the start of the rest, %. */
  startPct: Ranged;
  /** What the user chose; undefined lets the planner choose. */
  care?: BatteryCare | undefined;
  /** Stays connected over the rest, as the user chose (an alarm, say); undefined lets the planner choose. */
  connected?: boolean | undefined;
  removable: boolean;
  boughtYear?: number | undefined;
  /** The machine has a clock, alarm or other circuits that draw current with the key off. */
  memoryCircuits: boolean;
}

export type BatteryCare = 'maintainer' | 'carry-in' | 'visits';

export type DriveChemistry = 'lithium-ion' | 'lead-acid';

/** The battery that drives an electric machine. */
export interface DriveBattery {
  chemistry: DriveChemistry;
  /** Comes out of the machine without a workshop. */
  removable: boolean;
  /** Lowest temperature at which its maker lets it be kept, °C. */
  lowestStorageC: number;
}

export interface Fuel {
  delivery: 'carburettor' | 'injection';
  tankL: number;
  /** In the tank on the last day of use, litres. */
  inTankL: Ranged;
  blend: 'E0' | 'E5' | 'E10' | 'E15' | 'E20' | 'E85';
  tankMaterial: 'steel' | 'plastic' | 'aluminium';
  /** Lined or coated inside. */
  lined: boolean;
  taps: { kind: 'vacuum' | 'manual'; count: number } | null;
  bowls: number;
  /** Fuel in the line, filter and bowls, litres: what must be replaced by treated fuel. */
  lineAndBowlsL: number;
  /** Bought on, where known. */
  boughtOn?: IsoDate | undefined;
  premix: boolean;
  choice?: FuelChoice | undefined;
  densityKgM3: number;
}

/** What becomes of the petrol over the rest: the tank is filled, emptied, or keeps what the last rides left in it. */
export type FuelChoice = 'fill' | 'drain' | 'leave';

export interface Cooling {
  kind: 'air' | 'oil' | 'liquid' | 'none';
  coolant?:
    | {
        glycol: 'ethylene' | 'propylene';
        /** Volume fraction of glycol, 0–1; undefined when nobody knows. */
        strength?: number | undefined;
        volumeL: number;
        /** What a drain plug lets out, litres. */
        drainableL: number;
        /** Volume fraction of what it is topped up with, 0–1. */
        refillStrength: number;
        lastChanged?: IsoDate | undefined;
        lifeYears: number;
      }
    | undefined;
}

export interface Tyre {
  position: string;
  count: number;
  /** Normal pressure, gauge kPa. */
  pressureKPa: number;
  /** Maximum on the sidewall, gauge kPa. */
  sidewallMaxKPa?: number | undefined;
  madeYear?: number | undefined;
}

export interface Chassis {
  drive: 'chain' | 'belt' | 'shaft' | 'variator' | 'track' | 'gearbox' | 'hub';
  brakes: 'hydraulic' | 'cable' | 'mixed' | 'none';
  brakeFluid?: 'DOT3' | 'DOT4' | 'DOT5' | 'DOT5.1' | 'mineral' | undefined;
  clutch: 'cable' | 'hydraulic' | 'automatic' | 'none';
  throttle: 'cable' | 'wire';
  /** Stands with its weight off the tyres (or track) during the rest. */
  offGround: boolean;
  skis: boolean;
  track: boolean;
  greasePoints: number;
  centreStand: boolean;
  airbox: boolean;
  exhaustOutlets: number;
  hasLights: boolean;
}

/** A thing that comes due by calendar, by distance or by hours. */
export interface ServiceItem {
  id: string;
  what: string;
  lastDone?: { date?: IsoDate | undefined; km?: number | undefined; hours?: number | undefined } | undefined;
  interval: { months?: number | undefined; km?: number | undefined; hours?: number | undefined };
  /** Came back early: months after it was last done, as observed. */
  observedMonths?: number | undefined;
  minutes: number;
  source: string;
  supplies: Supply[];
  assemblies: string[];
}

export interface Supply {
  what: string;
  amount: number;
  unit: string;
  leadDays: number;
  inStock: boolean;
}

export interface Paperwork {
  id: string;
  what: string;
  /** Valid until, or due on. */
  date: IsoDate;
  kind: 'insurance' | 'registration' | 'inspection' | 'other';
  /** Suspended over the rest and to be put in force before first use. */
  pausedOverRest: boolean;
}

/** One group of parts that comes off as a unit. */
export interface Assembly {
  id: string;
  name: string;
  /** Ids of the assemblies that must come off before it. */
  behind: string[];
  offMinutes: number;
  onMinutes: number;
  fasteners: Fastener[];
  singleUse: SingleUsePart[];
  cautions: string[];
  /** Fluid that is opened or spilled when it comes off. */
  opensFluid?: 'fuel' | 'oil' | 'coolant' | 'brake-fluid' | undefined;
  refitNotes: string[];
  /** "Replace at next removal." */
  replaceNextTime: Supply[];
  safetyCritical: boolean;
}

export interface Fastener {
  what: string;
  count: number;
  /** "hex 10 mm", "T30", "JIS 2". */
  head: string;
  size?: string | undefined;
  /** As published, N·m; undefined where nothing is published. */
  torqueNm?: number | undefined;
  condition: 'dry' | 'lubricated' | 'unstated';
  threadlock?: 'low' | 'medium' | 'high' | undefined;
  antiSeize: boolean;
  /** A banjo bolt seals with one washer on each side of its fitting. */
  banjo: boolean;
}

export interface SingleUsePart {
  what: string;
  count: number;
  leadDays: number;
  inStock: boolean;
}

export interface Job {
  id: string;
  name: string;
  assemblies: string[];
  minutes: number;
  parts: Supply[];
  tools: string[];
  cautions: string[];
  notes: string[];
  /** Ids of jobs of the same machine that must be finished first. */
  after: string[];
  needs: { stand: boolean; bench: boolean };
  done: boolean;
}

/** A step as a record names it. */
export interface Ticked {
  stepId: string;
  date: IsoDate;
  /** The rest it belongs to, as `restKey` names it; where a record does not say, its date tells. */
  season?: string | undefined;
}

export interface AsLeft {
  /** An assembly's id, or a ledger item's id. */
  item: string;
  where?: string | undefined;
  since?: IsoDate | undefined;
}

export interface Reading {
  date: IsoDate;
  volts: number;
  temperatureC: number;
  restedH: number;
}

/** A value that was filled in: what, the range it could have, and how to settle it. */
export interface AssumedField {
  /** Path in the machine, as written in content: "battery.drain". */
  field: string;
  /** Path in `Machine` or, with "place." before it, in `Place`, that a trial changes: "battery.drainMA.value". */
  target: string;
  value: number | string;
  low: number | string;
  high: number | string;
  /** As the planner keeps it: `share` for a share of one, which content writes in percent. */
  unit: string;
  reason: string;
  /** The line to write in the content file to settle it. */
  settle: string;
}

// ---------------------------------------------------------------------------------------------------------------
// Procedures: the trade's knowledge as data
// ---------------------------------------------------------------------------------------------------------------

export type Phase = 'lay-up' | 'look-in' | 'start-up' | 'swap';

/** The order in which open items are closed at start-up. */
export type CloseStage =
  | 'refit'
  | 'fluids'
  | 'fuel'
  | 'battery'
  | 'plugs-out'
  | 'tyres'
  | 'controls'
  | 'leaks'
  | 'first-start'
  | 'first-ride'
  | 'paperwork';

/** Values that must be equal for a procedure or step to apply; an array means "any of". */
export type When = { [fact: string]: WhenValue };
export type WhenValue = string | boolean | (string | boolean)[] | { [fact: string]: WhenValue };

export interface Procedure {
  id: string;
  title: string;
  phase: Phase;
  /** Place in its phase where `after` leaves it open, small first: 10 wash, 20 fuel, … */
  order: number;
  when: When;
  steps: ProcedureStep[];
  /** The bundled procedure of the same id whose place this one takes. */
  replaces?: Procedure | undefined;
  /** Where it was written, for messages: "procedures/fuel-fill.yaml". */
  file: string;
  /** Where each step, and each entry of its `opens`, `closes` and `after`, stands in that file, keyed "steps.2.opens.0". */
  at: Record<string, { line: number; column: number }>;
}

export interface ProcedureStep {
  id: string;
  /** Text with {names} of amounts that the plan computes. */
  title: string;
  detail?: string | undefined;
  when: When;
  /** The step stands once for each of these; items it opens or closes then carry the thing's id after a colon. */
  each?: StepEach | undefined;
  /** Ids of service items that this step does; the general service step leaves them out. */
  covers: string[];
  minutes: number;
  tools: string[];
  supplies: ProcedureSupply[];
  /** Ids of rows in the table of cautions. */
  cautions: string[];
  why: string;
  source: string;
  opens: { item: string; state: string; safetyCritical: boolean }[];
  closes: string[];
  /** Ids of steps (of any procedure) that come first where they are present. */
  after: string[];
  /** Start-up only: where among the closings it belongs. */
  stage?: CloseStage | undefined;
  safetyCritical: boolean;
  /** The start-up step stops the ride when it fails. */
  doNotRide?: string | undefined;
  needs: StepNeeds;
  deadline?: StepDeadline | undefined;
  /** Time that must pass after the step before a step that follows it, hours (soak, charge, cure). */
  waitH: number;
  /** Goes on where the step before it in its procedure ends, on the same day: an engine that runs does not wait for next week. */
  sameSession: boolean;
  /** Space for a reading on the printed sheet: "V", "kPa". */
  reading?: string | undefined;
}

/** What a step is repeated for: tyre groups, battery charges, visits, service items that are due, papers. */
export type StepEach = 'tyre' | 'charge' | 'look-in' | 'look-in-without-charge' | 'service' | 'paper' | 'paused-paper';

export interface ProcedureSupply extends Supply {
  /** Name of a computed amount that replaces `amount`: "oil", "stabiliserDose". */
  amountOf?: string | undefined;
}

export interface StepNeeds {
  /** A dry day above 5 °C. */
  dryDay: boolean;
  warmEngine: boolean;
  stand: boolean;
  charger: boolean;
  bench: boolean;
  power: boolean;
}

/** Latest date of a step, by the event it must come before. */
export type StepDeadline =
  | { before: 'last-use' }
  | { before: 'first-frost-in-store' }
  /** Before the cold can reach what the coolant stands; frost, where nobody knows what that is. */
  | { before: 'coolant-freezes' }
  | { before: 'lay-up-end' }
  | { before: 'drained-fuel-use-by' }
  | { before: 'first-use' }
  /** On the day before the first use, not sooner. */
  | { before: 'first-use-eve' }
  /** Within three weeks after the first use, not on its day. */
  | { before: 'ride-end' };
