/** How a store changes outdoor air. One row of the table of enclosures, or the user's own. */
export interface Enclosure {
  id: string;
  /** First-order time constant of the air inside; 0 = follows outdoor air at once [h]. */
  timeConstantH: number;
  /** Share c of the heated house in what the store tends to: (1 − c)·outdoor + c·house. */
  houseCoupling: number;
  /** Temperature of that house [°C]. */
  houseC: number;
  /** Constant gain over outdoors: appliances, ground [K]. */
  gainK: number;
  /** Heated to at least this; absent = not heated [°C]. */
  setpointC?: number | undefined;
  /** Air changes with outdoors [1/h]. */
  airChangesPerH: number;
  /** Vapour that a damp floor adds over the outdoor pressure [Pa]. */
  dampFloorPa?: number | undefined;
  /** A dehumidifier (or its like) holds relative humidity at or under this [%]. */
  maxRhPct?: number | undefined;
}

/** An enclosure of the table, with what is known of it. */
export interface EnclosureRow extends Enclosure {
  /** In plain words. */
  description: string;
  /** Likely range of the time constant [h]. */
  timeConstantRangeH: { low: number; high: number };
  /** Likely range of the air changes [1/h]. */
  airChangesRangePerH: { low: number; high: number };
  /** Likely range of the share of the house. */
  houseCouplingRange: { low: number; high: number };
  source: string;
}

/** The deterministic normal year inside a store; periodic, 31 December joins 1 January. */
export interface StoreYear {
  /** 8760 values [°C]. */
  airC: Float64Array;
  /** 8760 values [Pa]. */
  vapourPa: Float64Array;
  /** 365 values [°C]. */
  dayMeanC: Float64Array;
  /** 365 values, lowest hour of the normal day [°C]. */
  dayMinC: Float64Array;
  /** 365 values, highest hour of the normal day [°C]. */
  dayMaxC: Float64Array;
}

/** One month in the store: means over the ensemble of years and their 90th percentiles. */
export interface StoreMonth {
  /** 1 to 12. */
  month: number;
  /** [°C] */
  meanC: number;
  /** Over water [%]. */
  meanRhPct: number;
  /** Hours in which the metal, above 0 °C, is below the dew point [h]. */
  condensationHours: number;
  condensationHoursP90: number;
  /** Hours in which the metal, below 0 °C, is below the frost point [h]. */
  frostHours: number;
  frostHoursP90: number;
  /** Hours with more than 80 % at the metal surface and the metal above 0 °C, condensation included [h]. */
  wetHours: number;
  wetHoursP90: number;
}

/** Which of the figures the method can carry for this store and this climate. */
export interface Sayable {
  condensation: boolean;
  frost: boolean;
  wet: boolean;
  /** The reason, to be shown in place of a figure that cannot be said; empty where all can be. */
  why: string;
  /** How far a half-year's hours typically lie from those of a real year, as a factor; 1 for an hourly year's own. */
  typicalFactor: { condensation: number; frost: number; wet: number };
}

/** Store air and metal over the ensemble, by month. */
export interface StoreAir {
  months: StoreMonth[];
  sayable: Sayable;
  /** Lowest store hour of each month, January first, in each year of the ensemble [°C]. */
  lowestC: number[][];
  /** Highest store hour of each month over the ensemble, January first [°C]. */
  highestC: number[];
  /** Means over the whole year. */
  year: { meanC: number; meanRhPct: number; condensationHours: number; frostHours: number; wetHours: number };
  /** Years in the ensemble. */
  years: number;
}

/** A kind of metal mass by how slowly it follows the air. */
export interface MetalClass {
  id: string;
  name: string;
  /** First-order time constant [h]. */
  timeConstantH: number;
  /** Likely range [h]. */
  rangeH: { low: number; high: number };
}

/** The cold to be survived in the store, by month, January first. */
export interface StoreDesignLow {
  /** [°C] */
  designC: number[];
  /** [°C] */
  typicalC: number[];
  basis: string;
}
