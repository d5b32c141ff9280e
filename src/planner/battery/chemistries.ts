/**
 * Every battery chemistry as one row: what the calculations and the content presets know of it, with sources.
 *
 * A 12 V battery is meant throughout: six lead–acid cells, or four of lithium iron phosphate. Sources in full:
 * - TM 9-6140: US Army TM 9-6140-200-14 (11 Sep 1998), Lead-Acid Storage Batteries, para 2-4, 4-6, 4-8.
 * - TM 5-684: TM 5-684 / NAVFAC MO-200 / AFJMAN 32-1082, para 14-27, 14-28.
 * - TM 5-3820: US Army TM 5-3820-256-24-4, BATTERY section, table 2. TM 5-3805: US Army TM 5-3805-262-20, para 5-9.
 * - TM 9-6115: US Army TM 9-6115-730-24, WP 0050. TB 9-6140: US Army TB 9-6140-252-13 (2011), WP 0011.
 * - Voltage by temperature: 12 V state-of-charge table, wet and gel, at 26.7 °C ("State Of Charge.pdf").
 * - DOE-HDBK-1084-95, Primer on Lead-Acid Storage Batteries, eq. 6: specific gravity = cell voltage − 0.845.
 * - "Common practice": ranges of the trade without a published table.
 */
import type { BatteryChemistry, Ranged } from '../household.ts';

/** Open-circuit voltage of a rested 12 V battery. */
export interface VoltageTable {
  /** Rising [%]. */
  stateOfChargePct: readonly number[];
  /** At `referenceC` [V]. */
  volts: readonly number[];
  /** [°C] */
  referenceC: number;
  /** What to add at a temperature; linear between, held at the ends. Rising in temperature. */
  shift: { temperatureC: readonly number[]; volts: readonly number[] };
  /** Half-width of what one rested reading leaves open [%]. */
  spreadPct: number;
  source: string;
}

/** Electrolyte of a lead–acid battery. */
export interface AcidRow {
  /** Specific gravity of the electrolyte, battery full and empty, both at `referenceC` over water at `referenceC`. */
  fullSG: number;
  emptySG: number;
  /** [°C] */
  referenceC: number;
  source: string;
}

export interface ChemistryRow {
  id: BatteryChemistry;
  name: string;
  /** Self-discharge at 20 °C in 30 days [% of usable capacity]. */
  selfDischargePctPerMonth: Ranged;
  /** Temperature step that doubles it [K]. */
  doublingK: Ranged;
  /** State of charge at which it is charged again [%]. */
  thresholdPct: number;
  /** State of charge it is best kept at, and what a charge in the rest brings it to [%]. */
  storagePct: { low: number; high: number };
  chargeToPct: number;
  /** Undefined: no acid, nothing that freezes and bursts. */
  acid?: AcidRow | undefined;
  /** Lowest temperature it may be kept at where it is not the acid that decides [°C]. */
  lowestStorageC?: number | undefined;
  voltage: VoltageTable;
  /** How the capacity is reckoned, and what cold and age do to it. */
  capacity: { health: Ranged; healthFromFourthYear: number; note: string };
  /** Share of the charge put in that comes back. */
  chargeEfficiency: number;
  /** Time at the end of a charge in which little current flows [h]. */
  absorptionH: number;
  /** Drain of the battery's own management circuit, leads off or on [mA]. */
  managementDrainMA: number;
  /** Never charged below this [°C]; undefined: as long as it is not frozen. */
  minChargeC?: number | undefined;
  sources: readonly string[];
}

const TABLE_PCT = [0, 25, 50, 75, 100] as const;

/** The table gives one shift for all states of charge, wet and gel alike. */
const LEAD_SHIFT = {
  temperatureC: [-6.7, -1.1, 15.6, 26.7, 48.9],
  volts: [-0.084, -0.062, -0.016, 0, 0.013],
} as const;

const VOLTAGE_SOURCE = '12 V state-of-charge table by temperature, wet and gel, 26.7 °C ("State Of Charge.pdf")';
const WET: VoltageTable = {
  stateOfChargePct: TABLE_PCT,
  volts: [11.89, 12.06, 12.24, 12.45, 12.65],
  referenceC: 26.7,
  shift: LEAD_SHIFT,
  // TM 5-3805 prints 12.6/12.4/12.2/12.0 V for the same states: 0.05 V lower, which is 6 % of charge.
  spreadPct: 6,
  source: VOLTAGE_SOURCE,
};
const AGM: VoltageTable = {
  ...WET,
  volts: [11.8, 12.0, 12.3, 12.6, 12.85],
  // TM 9-6115 calls 12.8–13.0 V full.
  spreadPct: 8,
  source:
    'full: TM 9-6115-730-24 WP 0050 (12.8–13.0 V) and TB 9-6140-252-13 WP 0011 (at least 12.65 V after 8 h); below: from memory; temperature: as wet and gel',
};
const GEL: VoltageTable = { ...WET, volts: [11.8, 12.0, 12.4, 12.6, 12.8], spreadPct: 8 };
const LITHIUM: VoltageTable = {
  stateOfChargePct: [0, 0.33, 1.17, 2.67, 5.34, 8.85, 29.72, 98.33, 99.5, 100],
  // Four cells in series: four times the cell voltage.
  volts: [2.0102, 2.4177, 2.7405, 2.9299, 3.0872, 3.1942, 3.2772, 3.3511, 3.418, 3.5981].map((cell) => 4 * cell),
  referenceC: 25,
  shift: { temperatureC: [25], volts: [0] },
  // A datasheet curve of another cell lies 0.35 V lower over the plateau, where 0.3 V is two thirds of the charge.
  spreadPct: 20,
  source:
    'Sunil, Pattipati, Balasingam, IEEE TIM 2025: pseudo-open-circuit voltage at C/32, room temperature, four cells',
};

const WET_ACID: AcidRow = {
  fullSG: 1.265,
  emptySG: 1.12,
  referenceC: 26.7,
  source: 'TM 5-3820-256-24-4, table 2 (80 °F)',
};

const health: Ranged = { value: 1, low: 0.7, high: 1 };
const LEAD_CAPACITY = {
  health,
  healthFromFourthYear: 0.85,
  note: 'Rated at the 20 h rate. Age takes capacity: 0.85 of it from the fourth year (common practice). Cold lowers what a starter can draw, not what is stored.',
};

const MONTHLY = 'self-discharge range: common practice';

export const CHEMISTRIES: Readonly<Record<BatteryChemistry, ChemistryRow>> = {
  'flooded-antimony': {
    id: 'flooded-antimony',
    name: 'flooded lead–acid, antimony grids',
    selfDischargePctPerMonth: { value: 6, low: 3, high: 15 },
    doublingK: { value: 9.1, low: 8, high: 10 },
    thresholdPct: 75,
    storagePct: { low: 100, high: 100 },
    chargeToPct: 100,
    acid: WET_ACID,
    voltage: WET,
    capacity: LEAD_CAPACITY,
    chargeEfficiency: 0.85,
    absorptionH: 3,
    managementDrainMA: 0,
    sources: [
      MONTHLY,
      'doubling step: daily rates of TM 9-6140-200-14 between 10 and 37.8 °C',
      'threshold: TM 5-3820-256-24-4 (SG 1.225), TM 5-3805-262-20 (12.4 V)',
      'charge efficiency and absorption: common practice',
    ],
  },
  'flooded-calcium': {
    id: 'flooded-calcium',
    name: 'flooded lead–acid, calcium grids',
    selfDischargePctPerMonth: { value: 3, low: 2, high: 5 },
    doublingK: { value: 12.4, low: 10, high: 24 },
    thresholdPct: 75,
    storagePct: { low: 100, high: 100 },
    chargeToPct: 100,
    acid: WET_ACID,
    voltage: WET,
    capacity: LEAD_CAPACITY,
    chargeEfficiency: 0.85,
    absorptionH: 3,
    managementDrainMA: 0,
    sources: [
      MONTHLY,
      'doubling step: recharge intervals of TM 5-684, para 14-28',
      'threshold: TM 5-3820-256-24-4 (SG 1.225), TM 5-3805-262-20 (12.4 V)',
      'charge efficiency and absorption: common practice',
    ],
  },
  agm: {
    id: 'agm',
    name: 'absorbed glass mat (AGM)',
    selfDischargePctPerMonth: { value: 3, low: 1.5, high: 5 },
    doublingK: { value: 12.4, low: 10, high: 24 },
    thresholdPct: 75,
    storagePct: { low: 100, high: 100 },
    chargeToPct: 100,
    acid: {
      fullSG: 1.297,
      emptySG: 1.122,
      referenceC: 26.7,
      source: 'from the resting voltages by DOE-HDBK-1084-95, eq. 6',
    },
    voltage: AGM,
    capacity: LEAD_CAPACITY,
    chargeEfficiency: 0.85,
    absorptionH: 3,
    managementDrainMA: 0,
    sources: [
      MONTHLY,
      'doubling step: recharge intervals of TM 5-684, para 14-28',
      'threshold, charge efficiency and absorption: common practice, as for flooded batteries',
    ],
  },
  gel: {
    id: 'gel',
    name: 'gel',
    selfDischargePctPerMonth: { value: 2, low: 1, high: 3 },
    doublingK: { value: 12.4, low: 10, high: 24 },
    thresholdPct: 75,
    storagePct: { low: 100, high: 100 },
    chargeToPct: 100,
    acid: {
      fullSG: 1.288,
      emptySG: 1.122,
      referenceC: 26.7,
      source: 'from the resting voltages by DOE-HDBK-1084-95, eq. 6',
    },
    voltage: GEL,
    capacity: LEAD_CAPACITY,
    chargeEfficiency: 0.85,
    absorptionH: 3,
    managementDrainMA: 0,
    sources: [
      MONTHLY,
      'doubling step: recharge intervals of TM 5-684, para 14-28',
      'threshold, charge efficiency and absorption: common practice, as for flooded batteries',
    ],
  },
  lifepo4: {
    id: 'lifepo4',
    name: 'lithium iron phosphate',
    selfDischargePctPerMonth: { value: 2, low: 1, high: 3 },
    doublingK: { value: 15, low: 10, high: 20 },
    thresholdPct: 40,
    storagePct: { low: 50, high: 60 },
    chargeToPct: 60,
    lowestStorageC: -40,
    voltage: LITHIUM,
    capacity: {
      health,
      healthFromFourthYear: 0.85,
      note: 'Rated at the 20 h rate; a "lead-equivalent" figure on the label is not the capacity. Age: 0.85 from the fourth year (common practice).',
    },
    chargeEfficiency: 0.98,
    absorptionH: 0,
    managementDrainMA: 0.02,
    minChargeC: 0,
    sources: [
      'self-discharge range, doubling step, threshold, storage at 50–60 %, no charge below 0 °C: common practice',
      'management drain 0.02 mA, charge efficiency 0.98, lowest storage temperature −40 °C: from memory of cell datasheets',
    ],
  },
};

/**
 * The row of a chemistry.
 * @param chemistry - name as in content
 */
export function chemistryRow(chemistry: BatteryChemistry): ChemistryRow {
  const row = CHEMISTRIES[chemistry];
  if (!row)
    throw new RangeError(`found chemistry "${chemistry}", expected one of ${Object.keys(CHEMISTRIES).join(', ')}`);
  return row;
}
