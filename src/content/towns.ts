/** The bundled list of towns, and the search of a place by what somebody types: stations and towns by one rule. */
import type { ClimateLibrary } from './climate-library.ts';
import { nearestStations } from './climate-library.ts';
import { plainName } from './place-names.ts';

/** The list as it lies in its file: one column per quantity, as the library of stations has them. */
export interface TownsFile {
  format: 1;
  source: { name: string; attribution: string; terms: string };
  name: string[];
  /** ISO 3166, two letters per town. */
  country: string;
  /** US states and provinces of Canada, two letters per town, spaces elsewhere. */
  state: string;
  /** Tenths of a degree, each as the step from the town before. */
  latitudeStep10: number[];
  longitudeStep10: number[];
  /** A digit to the base 36 per town: how often ten thousand people are doubled. */
  size: string;
  /** By index: what the town is called besides. */
  also: Record<string, string[]>;
}

/** A station, or a town with the station nearest to it. */
export interface PlaceFound {
  /** The station's. */
  id: string;
  station: string;
  /** ISO 3166, of the town where it is one. */
  country: string;
  /** From the town to the station; 0 for a station that was named itself [km]. */
  distanceKm: number;
  town?: { name: string; state: string; latitudeDeg: number; longitudeDeg: number };
}

/** So many are offered. */
const MOST = 12;
/** A name that a station bears is as a rule that of the larger one of two towns. */
const STATION_SIZE = 4;

/**
 * Places by what was typed, best first: those that begin with it, of these the reader's own country first, large towns before
 * small ones; then those with a word that begins so; then those that hold it. A town whose station is named is told by its
 * station alone.
 * @param library - the stations
 * @param towns - the towns
 * @param query - a name; after a comma a country or a US state, in full or by its two letters
 * @param home - ISO 3166 country of the reader, where known
 */
export function placesByName(
  library: ClimateLibrary,
  towns: TownsFile,
  query: string,
  home: string | undefined,
): PlaceFound[] {
  const [name = '', ...rest] = query.split(',').map(plainName);
  const within = rest.join(' ').trim();
  if (name === '') return [];
  const { file } = library;
  const stations = file.id.flatMap((id, i): Hit[] => {
    const country = file.country[i]!;
    const station = file.name[i]!;
    const state = country === 'US' ? /^([A-Z]{2}) (.*)/.exec(station) : null;
    const rank = rankOf([state?.[2] ?? station], name, [country, state?.[1] ?? ''], within);
    return rank === undefined
      ? []
      : [{ rank, size: STATION_SIZE, country, found: { id, station, country, distanceKm: 0 } }];
  });
  let [lat, lon] = [0, 0];
  const ofTowns = towns.name.flatMap((town, i): Hit[] => {
    lat += towns.latitudeStep10[i]!;
    lon += towns.longitudeStep10[i]!;
    const country = towns.country.slice(2 * i, 2 * i + 2);
    const state = towns.state.slice(2 * i, 2 * i + 2).trim();
    const rank = rankOf([town, ...(towns.also[i] ?? [])], name, [country, state], within);
    if (rank === undefined) return [];
    const at = { name: town, state, latitudeDeg: lat / 10, longitudeDeg: lon / 10 };
    return [{ rank, size: Number.parseInt(towns.size[i]!, 36), country, town: at }];
  });
  const named = new Set(stations.map(({ found }) => found!.id));
  return [...stations, ...ofTowns]
    .sort((a, b) => a.rank - b.rank || Number(b.country === home) - Number(a.country === home) || b.size - a.size)
    .slice(0, MOST + 4)
    .flatMap(({ country, found, town }) => {
      if (found) return [found];
      const [near] = nearestStations(library, town!.latitudeDeg, town!.longitudeDeg);
      const { climate, distanceKm } = near!;
      return named.has(climate.id) ? [] : [{ id: climate.id, station: climate.name, country, distanceKm, town: town! }];
    })
    .slice(0, MOST);
}

interface Hit {
  rank: number;
  size: number;
  country: string;
  found?: PlaceFound;
  town?: NonNullable<PlaceFound['town']>;
}

/** The same names are compared at each letter that is typed. */
const plainNames = new Map<string, string>();

function plain(name: string): string {
  const known = plainNames.get(name) ?? plainName(name);
  plainNames.set(name, known);
  return known;
}

const COUNTRIES = new Intl.DisplayNames('en', { type: 'region' });

/** A country in words; `code` is its ISO 3166 code. */
export const countryName = (code: string): string => COUNTRIES.of(code) ?? code;

/** How well one of a place's names answers, 0 best; undefined where none does. */
function rankOf(names: readonly string[], wanted: string, regions: readonly string[], within: string) {
  if (within !== '') {
    const said = [...regions, countryName(regions[0]!)].map(plainName);
    if (!said.some((text) => text.startsWith(within))) return undefined;
  }
  const ranks = names.map(plain).map((name) => {
    // Of two or three letters nobody knows yet whether they are all.
    if (name === wanted || name.startsWith(`${wanted} `)) return wanted.length > 3 ? 0 : 1;
    if (name.startsWith(wanted)) return 1;
    const words = [...name.split(' '), ...regions.map(plain)];
    if (wanted.split(' ').every((part) => words.some((word) => word.startsWith(part)))) return 2;
    return name.replaceAll(' ', '').includes(wanted.replaceAll(' ', '')) ? 3 : 4;
  });
  const best = Math.min(...ranks);
  return best < 4 ? best : undefined;
}
