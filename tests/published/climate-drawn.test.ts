import { expect, test } from 'vitest';
import type { Comparison, Count } from '../../src/cli/climate/compare.ts';
import { compare, pooled, typicalFactor } from '../../src/cli/climate/compare.ts';
import { readHourlyYears } from '../../src/cli/climate/hourly-years.ts';
import { misfit, weatherStatistics } from '../../src/cli/climate/statistics.ts';
import { drawWeather } from '../../src/planner/climate/generator.ts';
import { yearOfHours } from '../../src/planner/climate/normals.ts';
import type { WeatherConstants } from '../../src/planner/climate/weather-model.ts';
import { enclosureById } from '../../src/planner/storage/index.ts';
import { sayableFor } from '../../src/planner/storage/sayable.ts';
import leftOut from './data/climate/left-out.json' with { type: 'json' };

/*
 * Weather drawn from the monthly means of a real year, carried through stores onto metal, beside the same counts on the
 * real hours. Cross-validated: each place is drawn with constants fitted without it. `report-climate.ts` prints the
 * table site by site, by half-years or months.
 */
const years = readHourlyYears(new URL('data/climate', import.meta.url).pathname);
const constants: Record<string, WeatherConstants> = leftOut;
const drawn = years.map((year) => ({
  year,
  weather: drawWeather(year.normals, { seed: 11, years: 20 }, constants[year.climate.id]),
}));
const rows = drawn.flatMap(({ year, weather }) => compare(year, weather, 'half-year'));

const { temperatureC: _t, rhPct: _rh, ...place } = years[0]!.climate;
const anyNormals = { ...place, kind: 'normals' as const, normals: years[0]!.normals };
const verdict = (enclosure: string) => sayableFor(anyNormals, enclosureById(enclosure));
const of = (count: Count): Comparison[] => rows.filter((r) => r.count === count);
const shown = rows.filter((r) => verdict(r.enclosure)[r.count]);

test('every place has constants that were fitted without it', () => {
  expect(Object.keys(constants).sort()).toEqual(years.map((y) => y.climate.id).sort());
});

test('hours of wet metal, pooled over places, come within 15 % in every store', () => {
  for (const enclosure of new Set(rows.map((r) => r.enclosure))) {
    const ratio = pooled(of('wet').filter((r) => r.enclosure === enclosure));
    expect(Math.abs(ratio - 1), enclosure).toBeLessThan(0.15);
  }
});

test('hours of frost, pooled over places and stores, come within 15 %', () => {
  expect(Math.abs(pooled(of('frost')) - 1)).toBeLessThan(0.15);
});

test('what is shown is typically right within a factor of 1.6', () => {
  const { rms, rows: told } = typicalFactor(shown);
  expect(told).toBeGreaterThan(60);
  expect(rms).toBeLessThan(1.6);
});

test('the typical factor told with each count is not smaller than the one found', () => {
  for (const quick of [true, false]) {
    for (const count of ['wet', 'frost', 'condensation'] as const) {
      const some = of(count).filter((r) => enclosureById(r.enclosure).timeConstantH < 3 === quick);
      const told = verdict(some[0]!.enclosure).typicalFactor[count];
      expect(typicalFactor(some).rms, `${count}, ${quick ? 'quick' : 'slow'} stores`).toBeLessThanOrEqual(told);
    }
  }
});

test('condensation in a thin shed is off by more than that, up to many times at one place, so it is not shown', () => {
  const shed = of('condensation').filter((r) => r.enclosure === 'thin-metal-shed');
  expect(typicalFactor(shed).rms).toBeGreaterThan(1.6);
  expect(shown.some((r) => r.enclosure === 'thin-metal-shed' && r.count !== 'wet')).toBe(false);
});

test('drawn weather behaves like the real hours: spreads, quantiles, changes and day cycles', () => {
  for (const { year, weather } of drawn) {
    const real = yearOfHours(year.climate);
    const apart = misfit(
      weatherStatistics(weather.temperatureC, weather.vapourPa),
      weatherStatistics(real.temperatureC, real.vapourPa),
    );
    // 1 is where every statistic is off by the difference that counts as one (15 % of a spread, 6 points of humidity).
    expect(apart, year.climate.name).toBeLessThan(1.2);
  }
});
