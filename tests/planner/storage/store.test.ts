import { expect, test } from 'vitest';
import { normalYear } from '../../../src/planner/climate/index.ts';
import type { Enclosure } from '../../../src/planner/storage/index.ts';
import {
  ENCLOSURES,
  enclosureById,
  METALS,
  storeAir,
  storeDesignLow,
  storeNormalYear,
} from '../../../src/planner/storage/index.ts';
import { COLD, COLD_SOUTH } from '../climate/places.ts';

const OPTIONS = { seed: 1, years: 5 };

test('open air is outdoor air', () => {
  const { airC } = storeNormalYear(COLD, enclosureById('open'));
  expect(airC).toEqual(normalYear(COLD).temperatureC);
});

test.each(ENCLOSURES)('$id: the last hour of the year joins the first', (enclosure) => {
  const { airC, vapourPa } = storeNormalYear(COLD, enclosure);
  expect(Math.abs(airC[8759]! - airC[0]!)).toBeLessThan(1.5);
  expect(airC.every(Number.isFinite) && vapourPa.every(Number.isFinite)).toBe(true);
  const twoYearsOn = storeNormalYear({ ...COLD }, enclosure);
  expect(twoYearsOn.airC).toEqual(airC);
});

test('a slower store swings less within the day and keeps the mean of the year', () => {
  const ids = ['open', 'thin-metal-shed', 'slab-garage', 'masonry', 'insulated'];
  const years = ids.map((id) => storeNormalYear(COLD, enclosureById(id)));
  const swings = years.map((y) => y.dayMaxC[200]! - y.dayMinC[200]!);
  expect([...swings].sort((a, b) => b - a)).toEqual(swings);
  for (const y of years) {
    const mean = y.airC.reduce((sum, t) => sum + t, 0) / 8760;
    expect(mean).toBeCloseTo(
      COLD.normals.meanC.reduce((s, t, m) => s + t * [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][m]!, 0) / 365,
      3,
    );
  }
});

test('the house beside it warms an attached garage, and a heated room never falls under its set point', () => {
  const attached = storeNormalYear(COLD, enclosureById('attached-garage'));
  const masonry = storeNormalYear(COLD, enclosureById('masonry'));
  for (let d = 0; d < 365; d++) {
    expect(attached.dayMeanC[d]! - masonry.dayMeanC[d]! - 0.3 * (18 - masonry.dayMeanC[d]!)).toBeCloseTo(0, 6);
  }
  expect(Math.min(...storeNormalYear(COLD, enclosureById('heated')).airC)).toBe(8);
});

test('a dehumidifier holds its setting, a damp floor raises humidity and wet hours', () => {
  const dry = storeAir(COLD, enclosureById('dehumidified'), 1.5, OPTIONS);
  for (const m of dry.months) expect(m.meanRhPct).toBeLessThanOrEqual(50.001);
  expect(dry.year.wetHours).toBeLessThan(20);
  const slab = enclosureById('slab-garage');
  const damp = storeAir(COLD, { ...slab, dampFloorPa: 80 }, 1.5, OPTIONS);
  expect(damp.year.meanRhPct).toBeGreaterThan(storeAir(COLD, slab, 1.5, OPTIONS).year.meanRhPct);
});

test('heavier metal sweats more in a store that follows the weather', () => {
  const shed = enclosureById('thin-metal-shed');
  const hours = [0.1, 1.5, 2].map((tau) => storeAir(COLD, shed, tau, OPTIONS).year.condensationHours);
  expect(hours[0]!).toBeLessThan(hours[1]!);
  expect(hours[1]!).toBeLessThan(hours[2]!);
});

test('frost belongs to the cold months of the place, whichever they are', () => {
  const frost = (climate: typeof COLD) =>
    storeAir(climate, enclosureById('slab-garage'), 1.5, { seed: 1, years: 20 }).months.map((m) => m.frostHours);
  const [north, south] = [frost(COLD), frost(COLD_SOUTH)];
  expect(north[0]! + north[1]! + north[11]!).toBeGreaterThan(30);
  expect(north[6]).toBe(0);
  expect(south[6]! + south[7]! + south[5]!).toBeGreaterThan(30);
  expect(south[0]).toBe(0);
});

test('ninetieth percentiles are not under the least year, and means lie within the months', () => {
  const air = storeAir(COLD, enclosureById('slab-garage'), 1.5, { seed: 1, years: 20 });
  expect(air.years).toBe(20);
  for (const m of air.months) {
    expect(m.condensationHoursP90 >= 0.8 * m.condensationHours).toBe(true);
    expect(m.wetHoursP90).toBeGreaterThanOrEqual(m.wetHours);
    expect(m.condensationHours).toBeLessThanOrEqual(m.wetHours);
    expect(air.lowestC[m.month - 1]).toHaveLength(20);
    expect(Math.max(...air.lowestC[m.month - 1]!) < m.meanC && m.meanC < air.highestC[m.month - 1]!).toBe(true);
  }
});

test('condensation in a thin shed is not said from monthly figures, but from an hourly year', () => {
  const shed = enclosureById('thin-metal-shed');
  const fromNormals = storeAir(COLD, shed, 1.5, OPTIONS).sayable;
  expect(fromNormals).toMatchObject({ condensation: false, wet: true });
  expect(fromNormals.why).toContain('hourly');
  const { temperatureC } = normalYear(COLD);
  const hourly = { ...COLD, kind: 'hourly' as const, temperatureC, rhPct: new Float64Array(8760).fill(70) };
  expect(storeAir(hourly, shed, 1.5, OPTIONS).sayable.condensation).toBe(true);
  expect(storeAir(COLD, enclosureById('slab-garage'), 1.5, OPTIONS).sayable.condensation).toBe(true);
  const guessed = { ...COLD, humidityEstimated: true };
  expect(storeAir(guessed, enclosureById('slab-garage'), 1.5, OPTIONS).sayable.condensation).toBe(false);
});

test('the design low of a store is milder the slower it is, and never under the outdoor one', () => {
  const lows = ['open', 'slab-garage', 'masonry', 'insulated', 'attached-garage'].map(
    (id) => storeDesignLow(COLD, enclosureById(id)).designC,
  );
  for (let m = 0; m < 12; m++) {
    const month = lows.map((l) => l[m]!);
    expect(month[1]!).toBeGreaterThan(month[0]!);
    expect(month[2]!).toBeGreaterThan(month[1]!);
    expect(month[3]!).toBeGreaterThan(month[2]!);
  }
  expect(Math.min(...storeDesignLow(COLD, enclosureById('heated')).designC)).toBe(8);
});

test('rows lie within their own ranges and name a source', () => {
  for (const e of ENCLOSURES) {
    expect(e.source.length).toBeGreaterThan(10);
    for (const [value, range] of [
      [e.timeConstantH, e.timeConstantRangeH],
      [e.airChangesPerH, e.airChangesRangePerH],
      [e.houseCoupling, e.houseCouplingRange],
    ] as const) {
      expect(range.low <= value && value <= range.high).toBe(true);
    }
  }
  for (const m of METALS) expect(m.rangeH.low <= m.timeConstantH && m.timeConstantH <= m.rangeH.high).toBe(true);
});

test('an enclosure that cannot be is refused by name and value', () => {
  const bad = (changes: Partial<Enclosure>) => () => storeNormalYear(COLD, { ...enclosureById('masonry'), ...changes });
  expect(bad({ timeConstantH: Number.NaN })).toThrow(/time constant: NaN h/);
  expect(bad({ airChangesPerH: 0 })).toThrow(/air changes: 0/);
  expect(bad({ houseCoupling: 1.2 })).toThrow(/share of the house: 1.2/);
  expect(() => enclosureById('castle')).toThrow(/"castle".*open, carport/);
  expect(() => storeAir(COLD, enclosureById('masonry'), Number.NaN, OPTIONS)).toThrow(/metal time constant: NaN/);
});
