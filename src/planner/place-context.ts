/** What the weather makes of each place: worked out once for a place and read by every machine that stands there. */
import { dailyCurves, designLow, normalsOf } from './climate/index.ts';
import type { MachineKind, Place } from './household.ts';
import type { PlacePlan } from './season-plan.ts';
import {
  type Enclosure,
  metalById,
  type StoreAir,
  type StoreDesignLow,
  type StoreYear,
  storeAir,
  storeDesignLow,
  storeNormalYear,
} from './storage/index.ts';

/** Years of weather behind the hours of condensation, frost and wetness. */
const ENSEMBLE_YEARS = 20;

/** The heaviest metal of each kind of machine, a row of the table of metals. */
const METAL_OF_KIND: Record<MachineKind, string> = {
  motorcycle: 'motorcycle-engine',
  scooter: 'motorcycle-engine',
  'snow-machine': 'snow-machine-engine',
  quad: 'snow-machine-engine',
  'side-by-side': 'snow-machine-engine',
  car: 'car-engine',
  tractor: 'car-engine',
  mower: 'motorcycle-engine',
};

export interface PlaceContext {
  place: Place;
  store: StoreYear;
  designLow: StoreDesignLow;
  /** The cold to be reckoned with outdoors, and the lowest hour of a typical year there, by month [°C]. */
  outdoors: { designC: number[]; typicalC: number[] };
  /** Store air and wet metal for a kind of machine, over the ensemble. */
  airFor: (kind: MachineKind) => StoreAir;
  /** The same place with another enclosure, for trying an assumption. */
  storeFor: (enclosure: Enclosure) => { store: StoreYear; designLow: StoreDesignLow };
}

/** Contexts of places already met: a place object is never changed, so what was worked out for it stays right. */
const known = new WeakMap<Place, Map<number, PlaceContext>>();

/**
 * The weather's work on one place.
 * @param place - the place
 * @param seed - seed of the weather ensemble
 */
export function placeContext(place: Place, seed: number): PlaceContext {
  const bySeed = known.get(place) ?? new Map<number, PlaceContext>();
  known.set(place, bySeed);
  const found = bySeed.get(seed);
  if (found) return found;

  const airs = new Map<string, StoreAir>();
  const trials = new Map<string, ReturnType<PlaceContext['storeFor']>>();
  const context: PlaceContext = {
    place,
    store: storeNormalYear(place.climate, place.enclosure),
    designLow: storeDesignLow(place.climate, place.enclosure),
    outdoors: designLow(place.climate),
    airFor: (kind) => {
      const metal = METAL_OF_KIND[kind];
      const air =
        airs.get(metal) ??
        storeAir(place.climate, place.enclosure, metalById(metal).timeConstantH, { seed, years: ENSEMBLE_YEARS });
      airs.set(metal, air);
      return air;
    },
    storeFor: (enclosure) => {
      const key = JSON.stringify(enclosure);
      const tried = trials.get(key) ?? {
        store: storeNormalYear(place.climate, enclosure),
        designLow: storeDesignLow(place.climate, enclosure),
      };
      trials.set(key, tried);
      return tried;
    },
  };
  bySeed.set(seed, context);
  return context;
}

/** Days between the points of the outdoor temperature line in the pictures. */
const LINE_STEP_DAYS = 10;

/** What pages say about a place: no coordinates, since the site tells where things are and when nobody is there. */
export function placePlan({ place }: PlaceContext): PlacePlan {
  const normals = normalsOf(place.climate);
  const { meanC } = dailyCurves(normals);
  return {
    id: place.id,
    name: place.name,
    enclosure: place.enclosure.id,
    power: place.power,
    station: place.station,
    outdoorC: normals.meanC,
    outdoorTenDayC: Array.from({ length: 37 }, (_, i) => meanC[i * LINE_STEP_DAYS]!),
    climateSource: place.climate.source,
    attribution: place.climate.attribution,
  };
}
