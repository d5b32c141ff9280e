import { meanPreserving } from './curves.ts';
import { DAY_SHAPE } from './day-profile.ts';
import type { Days, Place } from './days.ts';
import { daysFor, meanDepartures, spreadDays } from './days.ts';
import { seekMoisture, seekSwing } from './levels.ts';
import type { NoiseTape } from './noise.ts';
import { noiseTape } from './noise.ts';
import { normalsOf, yearOfHours } from './normals.ts';
import { TABLE_LOW_C, TABLE_PER_K, WATER_TABLE } from './saturation-table.ts';
import { annualRangeK, daySpreadK } from './spread.ts';
import type { Climate, EnsembleOptions, HourlyClimate, MonthlyNormals, WeatherEnsemble } from './types.ts';
import { DAYS_PER_YEAR, HOURS_PER_YEAR } from './types.ts';
import type { WeatherConstants } from './weather-model.ts';
import { ceilingTable, frontShares, WARM_FRONT_H, WEATHER } from './weather-model.ts';

/** Writes the hours of the whole ensemble. */
function writeHours(
  place: Place,
  tape: NoiseTape,
  day: Days,
  constants: WeatherConstants,
  temperatureC: Float32Array,
  vapourPa: Float32Array,
): void {
  const { quick, quickMoisture } = tape;
  const { quickK, followSwing, followQuick, followQuickCold, quickMoistK } = constants;
  const ceiling = ceilingTable(constants);
  const warmShares = frontShares(WARM_FRONT_H);
  const moistShares = frontShares(constants.moistFrontH);
  const days = day.count;
  for (let k = 0, y = 0, i = 0; k < days; k++) {
    const before = k === 0 ? days - 1 : k - 1;
    const after = k === days - 1 ? 0 : k + 1;
    const cold = place.cold[y]!;
    const swing = place.swing[y]! * day.swing[k]!;
    const follow = followSwing * cold * swing;
    const followed = (followQuick + followQuickCold * cold) * quickK;
    const warm = day.warm[k]!;
    const noon = place.base[y]! + warm;
    const share = day.share[k]!;
    for (let half = 0; half < 2; half++) {
      const beside = half === 0 ? before : after;
      const warmStep = day.warm[beside]! - warm;
      const shareStep = day.share[beside]! - share;
      for (let h = half * 12; h < half * 12 + 12; h++, i++) {
        const shape = DAY_SHAPE[h]!;
        const n = quick[i]!;
        const spell = noon + warmStep * warmShares[h]!;
        const t = spell + swing * shape + quickK * n;
        const steady = spell + follow * shape + followed * n + quickMoistK * quickMoisture[i]!;
        const xs = (steady - TABLE_LOW_C) * TABLE_PER_K;
        const is = xs | 0;
        const low = WATER_TABLE[is]!;
        const e = (share + shareStep * moistShares[h]!) * (low + (WATER_TABLE[is + 1]! - low) * (xs - is));
        const xt = (t - TABLE_LOW_C) * TABLE_PER_K;
        const it = xt | 0;
        const ceilingLow = ceiling[it]!;
        temperatureC[i] = t;
        vapourPa[i] = Math.min(e, ceilingLow + (ceiling[it + 1]! - ceilingLow) * (xt - it));
      }
    }
    if (++y === DAYS_PER_YEAR) y = 0;
  }
}

/**
 * Draws years of hourly weather from monthly normals.
 * @param normals - monthly normals
 * @param options - seed and years
 * @param constants - of the weather; those of the table unless a fit or a check gives its own
 * @returns the hours of all years
 */
export function drawWeather(
  normals: MonthlyNormals,
  options: EnsembleOptions,
  constants: WeatherConstants = WEATHER,
): WeatherEnsemble {
  const tape = noiseTape(options.seed, options.years, constants);
  const meanC = meanPreserving(normals.meanC);
  const range = annualRangeK(normals.meanC);
  const place: Place = {
    base: meanC,
    spread: meanC.map((t) => daySpreadK(range, t)),
    cold: meanC.map((t) => Math.min(1, Math.max(0, (15 - t) / 20))),
    swing: meanC,
    moistLevel: meanC,
  };
  const day = daysFor(tape.years * DAYS_PER_YEAR);
  spreadDays(place, tape, day, constants);
  const departure = meanPreserving(meanDepartures(tape, day, constants));
  place.base = meanC.map((t, d) => t - departure[d]!);
  seekSwing(place, normals, tape, day, constants);
  seekMoisture(place, normals, tape, day, constants);
  const hours = tape.years * HOURS_PER_YEAR;
  const [temperatureC, vapourPa] = [new Float32Array(hours), new Float32Array(hours)];
  writeHours(place, tape, day, constants, temperatureC, vapourPa);
  return { years: tape.years, temperatureC, vapourPa };
}

function ensembleOfYear(climate: HourlyClimate): WeatherEnsemble {
  const year = yearOfHours(climate);
  return { years: 1, temperatureC: Float32Array.from(year.temperatureC), vapourPa: Float32Array.from(year.vapourPa) };
}

function refuseNotFinite(ensemble: WeatherEnsemble, id: string): void {
  let sum = 0;
  for (let i = 0; i < ensemble.temperatureC.length; i++) sum += ensemble.temperatureC[i]! + ensemble.vapourPa[i]!;
  if (!Number.isFinite(sum)) throw new RangeError(`${id}: generated weather is not finite`);
}

const made = new WeakMap<Climate, { options: EnsembleOptions; ensemble: WeatherEnsemble }>();

/**
 * Years of hourly weather for a place. The last ensemble of each climate is kept; its arrays are not to be written to.
 * @param climate - normals, from which weather is drawn; or one hourly year, which is given back as it is
 * @param options - seed and years; the same give the same weather
 * @returns the hours of all years, one year after the other
 * Source: see WEATHER, daySpreadK and the ASHRAE day profile.
 * Valid: annual range of monthly means 5 to 45 K.
 * Error: monthly mean temperature returns within 0.01 K, daily range within 0.3 K, relative humidity within 0.5 points
 *   (normals over 97.5 %, or over what ice allows in hard cold, are held to that). Real years differ from it as the report of climate checks tells.
 */
export function weatherYears(climate: Climate, options: EnsembleOptions): WeatherEnsemble {
  const kept = made.get(climate);
  if (kept && kept.options.seed === options.seed && kept.options.years === options.years) return kept.ensemble;
  const ensemble = climate.kind === 'hourly' ? ensembleOfYear(climate) : drawWeather(normalsOf(climate), options);
  refuseNotFinite(ensemble, climate.id);
  made.set(climate, { options: { ...options }, ensemble });
  return ensemble;
}
