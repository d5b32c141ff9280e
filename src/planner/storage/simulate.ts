import type { WeatherEnsemble } from '../climate/index.ts';
import {
  HOURS_PER_YEAR,
  MONTH_DAYS,
  readTable,
  SURFACE_TABLE,
  TABLE_LOW_C,
  TABLE_PER_K,
  WATER_TABLE,
} from '../climate/index.ts';
import { checkEnclosure } from './check.ts';
import { stepWeights } from './step.ts';
import type { Enclosure } from './types.ts';

/** Relative humidity at the metal above which it counts as wet: the time of wetness of ISO 9223. */
const WET_SHARE = 0.8;

/** What is counted in one month of one year. */
export const COUNTERS = ['airC', 'rhPct', 'condensation', 'frost', 'wet', 'lowC', 'highC'] as const;
export const STRIDE = COUNTERS.length;

/**
 * Carries an ensemble of weather through a store onto metal and counts by month.
 * @param weather - one year or several
 * @param enclosure - the store
 * @param metalTimeConstantH - how slowly the metal follows the store's air; 0 = at once [h]
 * @returns for each year and month, in that order, the seven counters: means of air [°C] and humidity [%], hours of
 *   condensation, frost and wetness, lowest and highest hour [°C]
 * Source: store as in storeYearOf; metal as a first-order body in store air, all by exact steps; condensation where vapour pressure exceeds
 *   saturation over water at the metal, frost where it exceeds that over ice below 0 °C (Hyland and Wexler); wet where
 *   relative humidity at the metal exceeds 80 % above 0 °C (ISO 9223:2012, annex B).
 * Error: saturation from tables, within 1 in 100 000.
 */
export function countByMonth(weather: WeatherEnsemble, enclosure: Enclosure, metalTimeConstantH: number): Float64Array {
  checkEnclosure(enclosure);
  if (!(metalTimeConstantH >= 0 && metalTimeConstantH <= 100)) {
    throw new RangeError(`metal time constant: ${metalTimeConstantH} h found, 0 to 100 h expected`);
  }
  const { temperatureC, vapourPa, years } = weather;
  const heat = stepWeights(enclosure.timeConstantH);
  const vapour = stepWeights(1 / enclosure.airChangesPerH);
  const body = stepWeights(metalTimeConstantH);
  const { keep: keepHeat, before: heatBefore, now: heatNow } = heat;
  const { keep: keepVapour, before: vapourBefore, now: vapourNow } = vapour;
  const { keep: keepMetal, before: metalBefore, now: metalNow } = body;
  const outShare = 1 - enclosure.houseCoupling;
  const fixed = enclosure.houseCoupling * enclosure.houseC + enclosure.gainK;
  const floorPa = enclosure.dampFloorPa ?? 0;
  const setpoint = enclosure.setpointC ?? -Infinity;
  const topShare = (enclosure.maxRhPct ?? 100) / 100;

  const counters = new Float64Array(years * 12 * STRIDE);
  const hours = years * HOURS_PER_YEAR;
  // The year's end goes before its beginning, so that no start value is left in January.
  const runUp = Math.min(HOURS_PER_YEAR - 1, Math.ceil(12 * (enclosure.timeConstantH + metalTimeConstantH)) + 24);
  let te = outShare * temperatureC[hours - runUp - 1]! + fixed;
  let outdoors = vapourPa[hours - runUp - 1]! + floorPa;
  let t = Math.max(setpoint, te);
  let e = Math.min(outdoors, topShare * readTable(WATER_TABLE, t));
  let metal = t;
  for (let h = hours - runUp; h < hours; h++) {
    const [teBefore, outdoorsBefore, tBefore] = [te, outdoors, t];
    te = outShare * temperatureC[h]! + fixed;
    t = Math.max(setpoint, keepHeat * t + heatBefore * teBefore + heatNow * te);
    outdoors = vapourPa[h]! + floorPa;
    e = keepVapour * e + vapourBefore * outdoorsBefore + vapourNow * outdoors;
    e = Math.min(e, topShare * readTable(WATER_TABLE, t));
    metal = keepMetal * metal + metalBefore * tBefore + metalNow * t;
  }
  for (let block = 0, h = 0; block < years * 12; block++) {
    const end = h + 24 * MONTH_DAYS[block % 12]!;
    const count = end - h;
    let sumT = 0;
    let sumRh = 0;
    let condensation = 0;
    let frost = 0;
    let wet = 0;
    let low = Infinity;
    let high = -Infinity;
    for (; h < end; h++) {
      const teBefore = te;
      te = outShare * temperatureC[h]! + fixed;
      const tBefore = t;
      t = keepHeat * t + heatBefore * teBefore + heatNow * te;
      if (t < setpoint) t = setpoint;
      const outdoorsBefore = outdoors;
      outdoors = vapourPa[h]! + floorPa;
      e = keepVapour * e + vapourBefore * outdoorsBefore + vapourNow * outdoors;
      const xt = (t - TABLE_LOW_C) * TABLE_PER_K;
      const it = xt | 0;
      const saturationLow = WATER_TABLE[it]!;
      const saturation = saturationLow + (WATER_TABLE[it + 1]! - saturationLow) * (xt - it);
      const top = topShare * saturation;
      if (e > top) e = top;
      metal = keepMetal * metal + metalBefore * tBefore + metalNow * t;
      const xm = (metal - TABLE_LOW_C) * TABLE_PER_K;
      const im = xm | 0;
      const surfaceLow = SURFACE_TABLE[im]!;
      const surface = surfaceLow + (SURFACE_TABLE[im + 1]! - surfaceLow) * (xm - im);
      if (metal < 0) {
        if (e > surface) frost++;
      } else if (e > WET_SHARE * surface) {
        wet++;
        if (e > surface) condensation++;
      }
      sumT += t;
      sumRh += e / saturation;
      if (t < low) low = t;
      if (t > high) high = t;
    }
    if (!Number.isFinite(sumT + sumRh)) throw new RangeError(`${enclosure.id}: store air is not finite`);
    counters.set([sumT / count, (100 * sumRh) / count, condensation, frost, wet, low, high], block * STRIDE);
  }
  return counters;
}
