/*
 * Fits the constants of the drawn weather to real hourly years: to how they behave, never to hours of wet metal.
 *
 *   node src/cli/fit-weather.ts tests/published/data/climate [out.json]
 *
 * Fits once to all years, and once with each year left out, so that each can be checked with constants that never saw
 * it. Prints the constants; writes those of the left-out fits where a file is named. Takes some minutes.
 */
import { writeFileSync } from 'node:fs';
import { drawWeather } from '../planner/climate/generator.ts';
import { yearOfHours } from '../planner/climate/normals.ts';
import type { WeatherConstants } from '../planner/climate/weather-model.ts';
import { readHourlyYears } from './climate/hourly-years.ts';
import { misfit, weatherStatistics } from './climate/statistics.ts';

type Name = keyof WeatherConstants;

/** The constants found on eleven hourly years, where the fit starts; fronts, which they had not, start slow. */
const START: WeatherConstants = {
  warmMemory: 0.5,
  moistMemory: 0.3,
  quickMemory: 0.85,
  quickMoistMemory: 0.85,
  quickK: 1.3,
  warmMoist: 0.05,
  warmMoistCold: 0.5,
  swingMoist: 0.15,
  swingSky: 0.2,
  swingSkyCold: 0,
  moist: 0.45,
  moistBetween: 0,
  moistFrontH: 16,
  followSwing: 0.6,
  followQuick: 0.1,
  followQuickCold: 0.45,
  quickMoistK: 1.4,
  ceiling: 0.98,
  iceHold: 0.9,
};

/** First step of each; leaving the start by three of them costs a fiftieth of a misfit of one. */
const STEP: WeatherConstants = {
  warmMemory: 0.08,
  moistMemory: 0.1,
  quickMemory: 0.05,
  quickMoistMemory: 0.05,
  quickK: 0.15,
  warmMoist: 0.1,
  warmMoistCold: 0.15,
  swingMoist: 0.1,
  swingSky: 0.15,
  swingSkyCold: 0.15,
  moist: 0.1,
  moistBetween: 0.1,
  moistFrontH: 4,
  followSwing: 0.15,
  followQuick: 0.1,
  followQuickCold: 0.15,
  quickMoistK: 0.2,
  ceiling: 0.01,
  iceHold: 0.15,
};

const LIMITS: Record<Name, [number, number]> = {
  warmMemory: [0.2, 0.8],
  moistMemory: [0, 0.9],
  quickMemory: [0.5, 0.97],
  quickMoistMemory: [0.5, 0.97],
  quickK: [0.4, 3],
  warmMoist: [-0.3, 0.4],
  warmMoistCold: [-0.2, 0.6],
  swingMoist: [0, 1],
  swingSky: [0, 1],
  swingSkyCold: [-0.5, 1],
  moist: [0.1, 2],
  moistBetween: [-0.1, 1],
  moistFrontH: [2, 24],
  followSwing: [0, 1],
  followQuick: [0, 1],
  followQuickCold: [0, 1],
  quickMoistK: [0.2, 4],
  ceiling: [0.94, 1],
  iceHold: [0.2, 1],
};

const NAMES = Object.keys(START) as Name[];
const ROUNDS = 14;
const OPTIONS = { seed: 3, years: 6 };

const [, , folder, output] = process.argv;
if (!folder) {
  console.error('usage: node src/cli/fit-weather.ts <folder of hourly years> [out.json]');
  process.exit(1);
}
const years = readHourlyYears(folder).map((year) => {
  const real = yearOfHours(year.climate);
  return { ...year, wanted: weatherStatistics(real.temperatureC, real.vapourPa) };
});

function cost(constants: WeatherConstants, chosen: typeof years): number {
  if (NAMES.some((n) => constants[n] < LIMITS[n][0] || constants[n] > LIMITS[n][1])) return Infinity;
  let sum = 0;
  for (const year of chosen) {
    const drawn = drawWeather(year.normals, OPTIONS, constants);
    sum += misfit(weatherStatistics(drawn.temperatureC, drawn.vapourPa), year.wanted) / chosen.length;
  }
  for (const n of NAMES) sum += 0.02 * ((constants[n] - START[n]) / (3 * STEP[n])) ** 2;
  return sum;
}

/** Walks one constant after the other downhill, halving the steps that find no better place. */
function fitTo(chosen: typeof years): { constants: WeatherConstants; cost: number } {
  let best = { constants: { ...START }, cost: cost(START, chosen) };
  const step = { ...STEP };
  for (let round = 0; round < ROUNDS; round++) {
    for (const n of NAMES) {
      const before = best.cost;
      for (const sign of [1, -1]) {
        for (;;) {
          const constants = { ...best.constants, [n]: best.constants[n] + sign * step[n] };
          const tried = cost(constants, chosen);
          if (!(tried < best.cost - 1e-5)) break;
          best = { constants, cost: tried };
        }
        if (best.cost < before) break;
      }
      if (best.cost === before) step[n] *= 0.55;
    }
  }
  for (const n of NAMES) best.constants[n] = Number(best.constants[n].toFixed(3));
  return best;
}

const all = fitTo(years);
console.log(`all years: misfit ${cost(START, years).toFixed(3)} at the start, ${all.cost.toFixed(3)} fitted`);
console.log(all.constants);
const leftOut: Record<string, WeatherConstants> = {};
for (const year of years) {
  const found = fitTo(years.filter((other) => other !== year));
  leftOut[year.climate.id] = found.constants;
  console.log(`without ${year.climate.name}: misfit ${found.cost.toFixed(3)}`, JSON.stringify(found.constants));
}
if (output) writeFileSync(output, `${JSON.stringify(leftOut, null, 1)}\n`);
