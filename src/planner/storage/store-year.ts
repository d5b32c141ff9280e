import type { Climate, WeatherYear } from '../climate/index.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR, normalYear, readTable, WATER_TABLE } from '../climate/index.ts';
import { checkEnclosure } from './check.ts';
import { stepWeights } from './step.ts';
import type { Enclosure, StoreYear } from './types.ts';

/** Passes over the year after which 31 December must join 1 January; a store slower than this is refused before. */
const MAX_PASSES = 60;

/**
 * What outdoor weather makes of the air in a store, hour by hour, with 31 December joined to 1 January.
 * @param weather - one year of outdoor weather
 * @param enclosure - the store
 * @returns store air of the same year
 * Source: first-order response by exact exponential steps (stepWeights) to Te = (1 − c)·outdoor + c·house + gain, then not
 *   under the set point; vapour pressure likewise by the air changes, and never above saturation over water or the
 *   capped humidity.
 * Error: saturation from a table, within 1 in 100 000.
 */
export function storeYearOf(weather: WeatherYear, enclosure: Enclosure): StoreYear {
  checkEnclosure(enclosure);
  const { timeConstantH, houseCoupling, houseC, gainK, airChangesPerH } = enclosure;
  const heat = stepWeights(timeConstantH);
  const vapour = stepWeights(1 / airChangesPerH);
  const floorPa = enclosure.dampFloorPa ?? 0;
  const setpoint = enclosure.setpointC ?? -Infinity;
  const topShare = (enclosure.maxRhPct ?? 100) / 100;
  const airC = new Float64Array(HOURS_PER_YEAR);
  const vapourPa = new Float64Array(HOURS_PER_YEAR);
  const tendsTo = (t: number) => (1 - houseCoupling) * t + houseCoupling * houseC + gainK;
  const last = HOURS_PER_YEAR - 1;
  let te = tendsTo(weather.temperatureC[last]!);
  let outdoors = weather.vapourPa[last]! + floorPa;
  let t = Math.max(setpoint, te);
  let e = outdoors;
  for (let pass = 0; pass < MAX_PASSES; pass++) {
    const [t0, e0] = [t, e];
    for (let h = 0; h < HOURS_PER_YEAR; h++) {
      const teBefore = te;
      te = tendsTo(weather.temperatureC[h]!);
      t = Math.max(setpoint, heat.keep * t + heat.before * teBefore + heat.now * te);
      const outdoorsBefore = outdoors;
      outdoors = weather.vapourPa[h]! + floorPa;
      e = vapour.keep * e + vapour.before * outdoorsBefore + vapour.now * outdoors;
      e = Math.min(e, topShare * readTable(WATER_TABLE, t));
      airC[h] = t;
      vapourPa[h] = e;
    }
    if (!(Number.isFinite(t) && Number.isFinite(e))) throw new RangeError(`${enclosure.id}: store air is not finite`);
    if (Math.abs(t - t0) < 1e-9 && Math.abs(e - e0) < 1e-6) return { airC, vapourPa, ...byDay(airC) };
  }
  throw new RangeError(`${enclosure.id}: store air does not repeat after ${MAX_PASSES} years`);
}

function byDay(airC: Float64Array): Pick<StoreYear, 'dayMeanC' | 'dayMinC' | 'dayMaxC'> {
  const dayMeanC = new Float64Array(DAYS_PER_YEAR);
  const dayMinC = new Float64Array(DAYS_PER_YEAR).fill(Infinity);
  const dayMaxC = new Float64Array(DAYS_PER_YEAR).fill(-Infinity);
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    const d = Math.floor(h / 24);
    const t = airC[h]!;
    dayMeanC[d]! += t / 24;
    dayMinC[d] = Math.min(dayMinC[d]!, t);
    dayMaxC[d] = Math.max(dayMaxC[d]!, t);
  }
  return { dayMeanC, dayMinC, dayMaxC };
}

/**
 * The normal year inside a store: the path that battery, fuel and tyres are reckoned on.
 * @param climate - normals or one hourly year
 * @param enclosure - the store
 * @returns store air by the hour and the day, periodic
 * Error: no weather in it; the ensemble (storeAir) tells the spread.
 */
export function storeNormalYear(climate: Climate, enclosure: Enclosure): StoreYear {
  return storeYearOf(normalYear(climate), enclosure);
}
