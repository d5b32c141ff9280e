/*
 * Measures a place's ensemble: twenty years of hourly weather, store air, metal and wet hours.
 *
 *   node src/cli/bench-climate.ts
 */
import psychrolib from 'psychrolib';
import type { NormalsClimate } from '../planner/climate/index.ts';
import { weatherYears } from '../planner/climate/index.ts';
import { enclosureById, storeAir, storeNormalYear } from '../planner/storage/index.ts';

const OPTIONS = { seed: 1, years: 20 };
const HOURS = OPTIONS.years * 8760;
const RUNS = 60;

const PLACE: NormalsClimate = {
  kind: 'normals',
  id: 'bench',
  name: 'a cold inland place',
  latitudeDeg: 46,
  elevationM: 400,
  normals: {
    meanC: [-11, -9, -3, 5, 12, 17, 19.5, 18.5, 13, 6.5, -1.5, -8.5],
    minC: [-16, -14.5, -8, -1, 5.5, 11, 14, 13, 8, 2.5, -5, -12.5],
    maxC: [-6, -3.5, 2, 11, 18.5, 23, 25, 24, 18, 10.5, 2, -4.5],
    rhPct: [76, 73, 70, 62, 62, 68, 71, 74, 76, 74, 78, 80],
  },
  source: 'made up for the benchmark',
  attribution: 'none',
};

/** Median and least time of a number of runs after as many to warm up [ms]. */
function time(run: () => unknown): { median: number; least: number } {
  for (let i = 0; i < RUNS / 2; i++) run();
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { median: times[RUNS / 2]!, least: times[0]! };
}

/** Keeps what loops compute from being thrown away by the compiler. */
let sink = 0;

const slab = enclosureById('slab-garage');
const weather = time(() => weatherYears({ ...PLACE }, OPTIONS));
const kept = { ...PLACE };
const store = time(() => storeAir(kept, slab, 1.5, OPTIONS));
const whole = time(() => storeAir({ ...PLACE }, slab, 1.5, OPTIONS));
const normal = time(() => storeNormalYear(PLACE, slab));

const { temperatureC, vapourPa } = weatherYears(kept, OPTIONS);
psychrolib.SetUnitSystem(psychrolib.SI);
/*
 * The saturation work of the ensemble, one call to the package for each value that the ensemble takes from a table:
 * two while the weather is drawn, one for store air, one for the metal. The searches for the levels are left out, which
 * favours the package.
 */
const library = time(() => {
  let sum = 0;
  for (let h = 0; h < HOURS; h++) {
    const t = temperatureC[h]!;
    sum += psychrolib.GetSatVapPres(t) + psychrolib.GetSatVapPres(t + 0.5);
    sum += psychrolib.GetSatVapPres(t + 0.25) + psychrolib.GetSatVapPres(t - 0.25);
  }
  sink += sum;
});
/** What checking for condensation costs when the dew point itself is asked of the package; one year, times twenty. */
const dewPoints = time(() => {
  let sum = 0;
  for (let h = 0; h < 8760; h++) sum += psychrolib.GetTDewPointFromVapPres(temperatureC[h]!, vapourPa[h]!);
  sink += sum;
});
const exponentials = time(() => {
  let sum = 0;
  for (let h = 0; h < HOURS; h++) {
    const x = temperatureC[h]! * 0.07;
    sum += Math.exp(x) + Math.exp(x + 0.01) + Math.exp(x + 0.02) + Math.exp(x + 0.03);
  }
  sink += sum;
});

const line = (what: string, { median, least }: { median: number; least: number }) =>
  console.log(`${what.padEnd(56)}${median.toFixed(2).padStart(9)} ms (least ${least.toFixed(2)})`);
const perHour = ({ median }: { median: number }) => ((median * 1e6) / HOURS).toFixed(1);

line(`weather, ${OPTIONS.years} years by the hour`, weather);
line('store air, metal, wet hours on it', store);
line('a place whole', whole);
line('normal year in a store', normal);
console.log(
  `per simulated hour: ${perHour(whole)} ns; as many bare exponentials (4 an hour): ${perHour(exponentials)} ns`,
);
line('the same saturation pressures by psychrolib', library);
console.log(`ratio to psychrolib, saturation alone: ${(library.median / whole.median).toFixed(1)}`);
console.log(
  `ratio to psychrolib with a dew point each hour: ${((20 * dewPoints.median + library.median) / whole.median).toFixed(0)}`,
);
if (!Number.isFinite(sink)) throw new Error('benchmark: a sum is not finite');
