import type { NormalsClimate } from '../planner/climate/index.ts';
import { plainName } from './place-names.ts';

/** The bundled library as it lies in its file: one column per quantity, integers, months as steps from the one before. */
export interface ClimateLibraryFile {
  format: 1;
  /** By letter: where a station's figures come from. */
  sources: Record<string, { name: string; attribution: string; terms: string }>;
  /** By letter: where its humidity comes from. */
  humidity: Record<string, { text: string; estimated: boolean }>;
  /** WMO number or national id. */
  id: string[];
  name: string[];
  /** ISO 3166. */
  country: string[];
  /** One letter per station, into sources. */
  source: string;
  /** One letter per station, into humidity. */
  humiditySource: string;
  /** Hundredths of a degree, each as the step from the station before. */
  latitudeStep100: number[];
  longitudeStep100: number[];
  elevationM: number[];
  /** 12 columns: January, then steps to each next month [0.1 °C]. */
  meanStep10: number[][];
  /** Mean less mean daily minimum [0.1 K]. */
  belowStep10: number[][];
  /** Mean daily maximum less mean [0.1 K]. */
  aboveStep10: number[][];
  /** Relative humidity over water [%]. */
  rhStep: number[][];
}

/** The library ready for search. */
export interface ClimateLibrary {
  size: number;
  file: ClimateLibraryFile;
  latitudeDeg: Float64Array;
  longitudeDeg: Float64Array;
}

/** A station found near a place. */
export interface NearbyStation {
  climate: NormalsClimate;
  /** ISO 3166. */
  country: string;
  latitudeDeg: number;
  longitudeDeg: number;
  /** [km] */
  distanceKm: number;
  /** Station less place, where the place's height is known [m]. */
  heightDifferenceM?: number | undefined;
  /** What to know before trusting it; empty where there is nothing. */
  warnings: string[];
}

/** Farther or higher than this and the station is not the place's weather any more; common practice. */
const FAR_KM = 75;
const FAR_M = 200;

/** Fall of temperature with height in the standard atmosphere, for the warning only [K/m]. */
const LAPSE_K_PER_M = 0.0065;

/**
 * Distance over the sphere.
 * @returns distance [km]
 * Source: haversine with the mean earth radius of 6371 km.
 * Error: 0.5 % against the ellipsoid.
 */
export function distanceKm(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const rad = Math.PI / 180;
  const a =
    Math.sin(((lat2 - lat1) * rad) / 2) ** 2 +
    Math.cos(lat1 * rad) * Math.cos(lat2 * rad) * Math.sin(((lon2 - lon1) * rad) / 2) ** 2;
  return 2 * 6371 * Math.asin(Math.min(1, Math.sqrt(a)));
}

function isLibraryFile(value: unknown): value is ClimateLibraryFile {
  if (typeof value !== 'object' || value === null) return false;
  const v = value as Partial<ClimateLibraryFile>;
  if (v.format !== 1 || !Array.isArray(v.id)) return false;
  const size = v.id.length;
  const columns = [v.name, v.country, v.latitudeStep100, v.longitudeStep100, v.elevationM];
  const months = [v.meanStep10, v.belowStep10, v.aboveStep10, v.rhStep];
  return (
    columns.every((c) => c?.length === size) &&
    months.every((c) => c?.length === 12 && c.every((m) => m.length === size)) &&
    v.source?.length === size &&
    v.humiditySource?.length === size &&
    v.sources !== undefined &&
    v.humidity !== undefined
  );
}

/** Undoes the steps: sums in integers, so that nothing drifts, then to the unit. */
function runningSums(steps: number[], scale: number): number[] {
  let sum = 0;
  return steps.map((step) => {
    sum += step;
    return sum / scale;
  });
}

/**
 * Opens the library.
 * @param parsed - the file's JSON, parsed
 * @returns the library, ready for search
 */
export function openClimateLibrary(parsed: unknown): ClimateLibrary {
  if (!isLibraryFile(parsed))
    throw new TypeError('climate library: not a library of format 1, or its columns differ in length');
  return {
    size: parsed.id.length,
    file: parsed,
    latitudeDeg: Float64Array.from(runningSums(parsed.latitudeStep100, 100)),
    longitudeDeg: Float64Array.from(runningSums(parsed.longitudeStep100, 100)),
  };
}

function months(columns: number[][], station: number, scale: number): number[] {
  return runningSums(
    columns.map((column) => column[station]!),
    scale,
  );
}

/**
 * One station's climate.
 * @param library - the opened library
 * @param station - index from 0
 * @returns its normals with source and attribution
 */
export function stationClimate(library: ClimateLibrary, station: number): NormalsClimate {
  const { file } = library;
  const id = file.id[station];
  if (id === undefined) throw new RangeError(`station ${station}: the library has ${library.size}`);
  const source = file.sources[file.source[station]!];
  const humidity = file.humidity[file.humiditySource[station]!];
  if (!source || !humidity) throw new TypeError(`climate library: station ${id} names a source that is not listed`);
  const mean = months(file.meanStep10, station, 10);
  const below = months(file.belowStep10, station, 10);
  const above = months(file.aboveStep10, station, 10);
  const tenth = (v: number) => Math.round(v * 10) / 10;
  return {
    kind: 'normals',
    id,
    name: file.name[station]!,
    latitudeDeg: library.latitudeDeg[station]!,
    longitudeDeg: library.longitudeDeg[station]!,
    elevationM: file.elevationM[station]!,
    normals: {
      meanC: mean,
      minC: mean.map((t, m) => tenth(t - below[m]!)),
      maxC: mean.map((t, m) => tenth(t + above[m]!)),
      rhPct: months(file.rhStep, station, 1),
    },
    source: `${source.name}, station ${id}; humidity: ${humidity.text}`,
    attribution: source.attribution,
    humidityEstimated: humidity.estimated,
  };
}

function found(library: ClimateLibrary, station: number, away: number, placeM: number | undefined): NearbyStation {
  const climate = stationClimate(library, station);
  const warnings: string[] = [];
  if (away > FAR_KM) {
    warnings.push(
      `${climate.name} is ${Math.round(away)} km away: its weather may differ. Give your own normals if you have them.`,
    );
  }
  const up = placeM === undefined ? undefined : climate.elevationM - placeM;
  if (up !== undefined && Math.abs(up) > FAR_M) {
    const kelvin = Math.abs(up * LAPSE_K_PER_M).toFixed(1);
    warnings.push(
      `${climate.name} lies ${Math.abs(Math.round(up))} m ${up > 0 ? 'higher' : 'lower'}: about ${kelvin} K ${up > 0 ? 'colder' : 'warmer'} than the place. The figures are not corrected for it.`,
    );
  }
  if (climate.humidityEstimated) warnings.push(`Humidity at ${climate.name} is an estimate (${climate.source}).`);
  return {
    climate,
    country: library.file.country[station]!,
    latitudeDeg: library.latitudeDeg[station]!,
    longitudeDeg: library.longitudeDeg[station]!,
    distanceKm: away,
    heightDifferenceM: up,
    warnings,
  };
}

/** What a plan says of a station that is not the place itself. */
export function stationOf(near: NearbyStation): {
  name: string;
  distanceKm: number;
  heightDifferenceM: number;
  far: boolean;
} {
  const heightDifferenceM = near.heightDifferenceM ?? 0;
  const far = near.distanceKm > FAR_KM || Math.abs(heightDifferenceM) > FAR_M;
  // To the tenth: the sphere knows it no better, and the engines' sines differ in the last bit.
  const distanceKm = Math.round(near.distanceKm * 10) / 10;
  return { name: near.climate.name, distanceKm, heightDifferenceM, far };
}

/**
 * The stations nearest to a place, nearest first.
 * @param library - the opened library
 * @param latitudeDeg - north positive [°]
 * @param longitudeDeg - east positive [°]
 * @param options - how many (1 unless told), and the place's height where known [m]
 * @returns stations with distance, height difference and warnings
 */
export function nearestStations(
  library: ClimateLibrary,
  latitudeDeg: number,
  longitudeDeg: number,
  options: { count?: number | undefined; elevationM?: number | undefined } = {},
): NearbyStation[] {
  if (!(latitudeDeg >= -90 && latitudeDeg <= 90)) {
    throw new RangeError(`latitude: ${latitudeDeg}° found, −90 to 90° expected`);
  }
  if (!(longitudeDeg >= -180 && longitudeDeg <= 180)) {
    throw new RangeError(`longitude: ${longitudeDeg}° found, −180 to 180° expected`);
  }
  const away = Array.from({ length: library.size }, (_, i) =>
    distanceKm(latitudeDeg, longitudeDeg, library.latitudeDeg[i]!, library.longitudeDeg[i]!),
  );
  const order = away.map((_, i) => i).sort((a, b) => away[a]! - away[b]!);
  return order.slice(0, options.count ?? 1).map((i) => found(library, i, away[i]!, options.elevationM));
}

/**
 * Stations by name or id: an exact match alone, else all whose name begins with the words, else all that contain them.
 * @param library - the opened library
 * @param query - a station's name or id; "name, CC" narrows to a country
 * @returns stations, at most 20, in order of name
 */
export function stationsByName(library: ClimateLibrary, query: string): NearbyStation[] {
  const [, words = query, country] = /^(.*?),\s*([A-Za-z]{2})$/.exec(query.trim()) ?? [];
  const wanted = plainName(words);
  if (wanted === '') return [];
  const { file } = library;
  const inCountry = file.id
    .map((_, i) => i)
    .filter((i) => country === undefined || file.country[i] === country.toUpperCase());
  const names = new Map(inCountry.map((i) => [i, plainName(file.name[i]!)]));
  const tests: ((i: number) => boolean)[] = [
    (i) => file.id[i] === words.trim(),
    (i) => names.get(i) === wanted,
    (i) => names.get(i)!.startsWith(`${wanted} `) || names.get(i)!.startsWith(wanted),
    (i) => names.get(i)!.includes(wanted),
  ];
  for (const test of tests) {
    const hits = inCountry.filter(test);
    if (hits.length > 0) {
      return hits
        .sort((a, b) => (names.get(a)! < names.get(b)! ? -1 : 1))
        .slice(0, 20)
        .map((i) => found(library, i, 0, undefined));
    }
  }
  return [];
}
