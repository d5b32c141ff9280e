/** Hours in the year that every series here covers: 365 days; 29 February is taken as 28 February. */
export const HOURS_PER_YEAR = 8760;

/** Days in that year. */
export const DAYS_PER_YEAR = 365;

/** Monthly means over many years. Every list is 12 long, January first. */
export interface MonthlyNormals {
  /** Mean temperature [°C]. */
  meanC: number[];
  /** Mean of the daily minimum [°C]. */
  minC: number[];
  /** Mean of the daily maximum [°C]. */
  maxC: number[];
  /** Relative humidity over water, also below 0 °C (the WMO convention) [%]. */
  rhPct: number[];
  /** Precipitation [mm per month]. */
  precipMm?: number[] | undefined;
  /** Mean snow depth [cm]. */
  snowDepthCm?: number[] | undefined;
  /** Lowest temperature on record in that month [°C]. */
  recordLowC?: number[] | undefined;
}

/** A place known by its monthly normals. */
export interface NormalsClimate {
  kind: 'normals';
  id: string;
  name: string;
  /** North positive [°]. */
  latitudeDeg: number;
  /** East positive [°]; undefined where it is not known. */
  longitudeDeg?: number | undefined;
  /** [m] */
  elevationM: number;
  normals: MonthlyNormals;
  /** Where the figures come from. */
  source: string;
  /** The words the source asks to be shown with its figures. */
  attribution: string;
  /** True where humidity was estimated and not published. */
  humidityEstimated?: boolean | undefined;
}

/** A place known by one year of hourly weather. */
export interface HourlyClimate {
  kind: 'hourly';
  id: string;
  name: string;
  /** North positive [°]. */
  latitudeDeg: number;
  /** [m] */
  elevationM: number;
  /** 8760 values, 1 January 00–01 h first, local standard time [°C]. */
  temperatureC: Float64Array;
  /** 8760 values, relative humidity over water, also below 0 °C [%]. */
  rhPct: Float64Array;
  source: string;
  attribution: string;
}

export type Climate = NormalsClimate | HourlyClimate;

/** Smooth daily values whose mean over each month is the normal. Each 365 long, 1 January first. */
export interface DailyCurves {
  /** Mean temperature of the day [°C]. */
  meanC: Float64Array;
  /** Mean daily minimum [°C]. */
  minC: Float64Array;
  /** Mean daily maximum [°C]. */
  maxC: Float64Array;
  /** Vapour pressure [Pa]. */
  vapourPa: Float64Array;
}

/** One year of hourly weather, 1 January 00–01 h first, local standard time. */
export interface WeatherYear {
  /** 8760 values [°C]. */
  temperatureC: Float64Array;
  /** 8760 values [Pa]. */
  vapourPa: Float64Array;
}

/** Several years of hourly weather, one after the other in each array; single precision, 4e-6 K at most. */
export interface WeatherEnsemble {
  /** How many years the arrays hold. */
  years: number;
  /** years × 8760 values [°C]. */
  temperatureC: Float32Array;
  /** years × 8760 values [Pa]. */
  vapourPa: Float32Array;
}

/** How many years of weather to draw, and the seed that fixes them. */
export interface EnsembleOptions {
  /** Any integer; the same seed gives the same weather. */
  seed: number;
  /** Years to draw (an hourly climate always gives its one year). */
  years: number;
}

/** The cold to be survived, by month, January first. */
export interface DesignLow {
  /** The cold that battery, coolant and fuel must survive [°C]. */
  designC: number[];
  /** The lowest hour of a typical year [°C]. */
  typicalC: number[];
  /** How the figures were found, in words. */
  basis: string;
}

/** What a machine is used for, as far as its season depends on it. */
export type MachineUse = 'road' | 'trail' | 'snow';

/** A season proposed from climate where the user gave no dates. */
export interface SeasonProposal {
  /** Last day of use before the idle months, ISO date. */
  lastUse: string;
  /** First day of use after them, ISO date. */
  firstUse: string;
  /** Why these days, in sentences. */
  reasons: string[];
}
