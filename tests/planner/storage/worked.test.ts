/** Stores in weather so simple that what they do is known: constant air, and one swing a day. Saturation from psychrolib. */
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import {
  type Enclosure,
  enclosureById,
  metalById,
  storeAir,
  storeDesignLow,
  storeNormalYear,
  usualLowC,
} from '../../../src/planner/storage/index.ts';
import { sayableFor } from '../../../src/planner/storage/sayable.ts';
import { stepWeights } from '../../../src/planner/storage/step.ts';
import { all, COLD } from '../climate/places.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const weather = (temperature: (hour: number) => number, rh: number) => ({
  ...COLD,
  kind: 'hourly' as const,
  temperatureC: Float64Array.from({ length: 8760 }, (_, h) => temperature(h)),
  rhPct: new Float64Array(8760).fill(rh),
});
const store = (over: Partial<Enclosure> = {}): Enclosure => ({
  id: 'store',
  timeConstantH: 6,
  houseCoupling: 0,
  houseC: 20,
  gainK: 0,
  airChangesPerH: 1,
  ...over,
});
const OPTIONS = { seed: 1, years: 1 };
const january = (temperature: number, rh: number, over: Partial<Enclosure> = {}) =>
  storeAir(
    weather(() => temperature, rh),
    store(over),
    1,
    OPTIONS,
  );

test('in air that never changes a store is as warm as its share of the house and its gain make it', () => {
  // 0.7 · (−10) + 0.3 · 20 + 2 = 1.
  const year = storeNormalYear(
    weather(() => -10, 70),
    store({ houseCoupling: 0.3, gainK: 2 }),
  );
  for (const temperatures of [year.airC, year.dayMeanC, year.dayMinC, year.dayMaxC])
    expect(temperatures.every((t) => Math.abs(t - 1) < 1e-6)).toBe(true);
  expect(
    storeNormalYear(
      weather(() => -10, 70),
      store({ setpointC: 5 }),
    ).airC.every((t) => t === 5),
  ).toBe(true);
});

test('one swing a day is damped by 1/√(1 + (ωτ)²) and comes later by atan(ωτ)/ω', () => {
  const omega = (2 * Math.PI) / 24;
  const tau = 6;
  const { airC, dayMaxC, dayMinC, dayMeanC } = storeNormalYear(
    weather((h) => 10 * Math.cos(omega * h), 50),
    store(),
  );
  // ωτ = 1.571: damped to 5.37 K, 3.83 h behind.
  const swing = 10 / Math.hypot(1, omega * tau);
  const behind = Math.atan(omega * tau) / omega;
  for (let h = 24; h < 72; h++) expect(airC[h]).toBeCloseTo(swing * Math.cos(omega * (h - behind)), 1);
  expect(dayMaxC[40]).toBeCloseTo(swing, 1);
  expect(dayMinC[40]).toBeCloseTo(-swing, 1);
  expect(dayMeanC[40]).toBeCloseTo(0, 6);
});

test('the hour’s step is the solution of the first-order equation for air that changes evenly', () => {
  // τ = 1 h: keep = 1/e, lag = 1 − 1/e, before = lag − keep, now = 1 − lag.
  const { keep, before, now } = stepWeights(1);
  expect([keep, before, now]).toEqual([
    expect.closeTo(Math.exp(-1), 12),
    expect.closeTo(1 - 2 * Math.exp(-1), 12),
    expect.closeTo(Math.exp(-1), 12),
  ]);
  expect(stepWeights(0)).toEqual({ keep: 0, before: 0, now: 1 });
  for (const tau of [0.05, 3, 500]) {
    const w = stepWeights(tau);
    expect(w.keep + w.before + w.now).toBeCloseTo(1, 12);
  }
  expect(() => stepWeights(-0.1)).toThrow('time constant: -0.1 h found, 0 or more expected');
  expect(() => stepWeights(Number.NaN)).toThrow('time constant: NaN h found');
});

test('hours are wet above 80 % and above freezing, and of sweating only where the metal is colder than the dew point', () => {
  const hours = (temperature: number, rh: number, over = {}) => {
    const { wetHours, frostHours, condensationHours } = january(temperature, rh, over).months[0]!;
    return [wetHours, frostHours, condensationHours];
  };
  expect(hours(5, 81)).toEqual([744, 0, 0]);
  expect(hours(5, 79)).toEqual([0, 0, 0]);
  // Under freezing, saturated over water is more than saturated over ice: frost on every hour. At −5 °C ice has 95 % of water.
  expect(hours(-5, 100)).toEqual([0, 744, 0]);
  expect(hours(-5, 94)).toEqual([0, 0, 0]);
  expect(hours(-5, 97)).toEqual([0, 744, 0]);
  // A damp floor brings the air up to saturation and no further.
  expect(hours(5, 60, { dampFloorPa: 900 })[0]).toBe(744);
});

test('the months of a constant year add up to the year', () => {
  const { year, months, lowestC, highestC, years } = january(5, 90);
  expect(years).toBe(1);
  expect(year).toMatchObject({ wetHours: 8760, frostHours: 0, condensationHours: 0 });
  expect(year.meanC).toBeCloseTo(5, 6);
  expect(year.meanRhPct).toBeCloseTo(90, 2);
  expect(months.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  expect(months.map(({ wetHours }) => wetHours / 24)).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
  // Of one year, nine in ten are that year.
  for (const m of months) expect([m.wetHoursP90, m.frostHoursP90, m.condensationHoursP90]).toEqual([m.wetHours, 0, 0]);
  for (const t of [...lowestC.flat(), ...highestC]) expect(t).toBeCloseTo(5, 6);
});

test('humidity in a warmer store is the vapour from outdoors over its own saturation', () => {
  const outdoors = (0.9 * psychrolib.GetSatVapPres(2)) / psychrolib.GetSatVapPres(8);
  expect(january(2, 90, { gainK: 6 }).year.meanRhPct).toBeCloseTo(100 * outdoors, 1);
  const floor = (0.5 * psychrolib.GetSatVapPres(10) + 200) / psychrolib.GetSatVapPres(10);
  expect(january(10, 50, { dampFloorPa: 200 }).year.meanRhPct).toBeCloseTo(100 * floor, 1);
  expect(january(10, 90, { maxRhPct: 55 }).year.meanRhPct).toBeCloseTo(55, 3);
  expect(january(10, 50, { maxRhPct: 55 }).year.meanRhPct).toBeCloseTo(50, 1);
});

test('what may be said of a store goes by the weather that is known and by how quickly it follows', () => {
  const said = (climate: Parameters<typeof sayableFor>[0], over: Partial<Enclosure> = {}) => {
    const { condensation, frost, wet, typicalFactor } = sayableFor(climate, store(over));
    return [condensation, frost, wet, typicalFactor.condensation];
  };
  expect(
    said(
      weather(() => 0, 50),
      { timeConstantH: 0 },
    ),
  ).toEqual([true, true, true, 1]);
  expect(said(COLD, { timeConstantH: 3 })).toEqual([true, true, true, 1.8]);
  expect(said(COLD, { timeConstantH: 2.9 })).toEqual([false, false, true, 2.6]);
  expect(said(COLD, { timeConstantH: 0, setpointC: 5 })).toEqual([true, true, true, 1.8]);
  expect(said({ ...COLD, humidityEstimated: true }, { timeConstantH: 3 })).toEqual([false, false, true, 1.8]);
  expect(sayableFor(COLD, store()).why).toBe('');
  expect(sayableFor(COLD, store({ timeConstantH: 1 })).why).toMatch(
    /^How often metal sweats .* only from hourly ones\.$/,
  );
  expect(sayableFor({ ...COLD, humidityEstimated: true }, store()).why).toMatch(
    /^Humidity at this station is an estimate/,
  );
});

test('the cold to be reckoned with is that of outdoors in the open, and the house’s in a part of the house', () => {
  const open = storeDesignLow(COLD, enclosureById('open'));
  const inHouse = storeDesignLow(COLD, store({ houseCoupling: 1, houseC: 18 }));
  for (let m = 0; m < 12; m++) {
    expect(open.designC[m]!).toBeLessThan(open.typicalC[m]!);
    expect(inHouse.designC[m]).toBeCloseTo(18, 6);
    expect(inHouse.typicalC[m]).toBeCloseTo(18, 6);
  }
  // A spell of four days is taken up by 1 − e^(−96/τ); at τ = 96 h by 63 %: between the open air and a store that never follows.
  const slow = storeDesignLow(COLD, store({ timeConstantH: 96 }));
  expect(slow.designC[0]!).toBeGreaterThan(open.designC[0]!);
  expect(slow.designC[0]!).toBeLessThan(storeDesignLow(COLD, store({ timeConstantH: 400 })).designC[0]!);
  expect(open.basis).toMatch(/Inside: the day's swing damped and a cold spell of 96 h/);
});

test('a usual spell comes and goes, and a store takes up what the stepped answer of a first-order body gives', () => {
  // Normals the same all year: the store's mean is that of outdoors, the day's swing 2 K.
  const climate = { ...COLD, normals: { ...COLD.normals, meanC: all(0), minC: all(-2), maxC: all(2) } };
  const open = storeDesignLow(climate, store({ timeConstantH: 0 })).typicalC[0]!;
  const spellK = -2 - open;
  // Around its coldest hour the spell goes as one half a day: the daily memory of the drawn weather.
  for (const timeConstantH of [7, 24 / Math.LN2, 48]) {
    let [takenUp, most] = [0, 0];
    const stepH = 0.01;
    for (let t = -480; t < 240; t += stepH) {
      takenUp += (0.5 ** (Math.abs(t) / 24) - takenUp) * (stepH / timeConstantH);
      most = Math.max(most, takenUp);
    }
    const damped = 1 / Math.hypot(1, (2 * Math.PI * timeConstantH) / 24);
    const { typicalC } = storeDesignLow(climate, store({ timeConstantH }));
    expect(typicalC[0]!).toBeCloseTo(-(2 * damped + spellK * most), 2);
  }
});

test('of an hourly year the usual low is the coldest hour in the store, and the one to be reckoned with no milder', () => {
  const climate = weather((h) => (h >= 240 && h < 264 ? -30 : -5), 70);
  const { designC, typicalC, basis } = storeDesignLow(climate, store({ timeConstantH: 0 }));
  expect(typicalC[0]).toBe(-30);
  expect(typicalC[5]).toBe(-5);
  for (let m = 0; m < 12; m++) expect(designC[m]!).toBeLessThanOrEqual(typicalC[m]!);
  expect(basis).toMatch(/Inside: the hourly year carried through the store, and a cold spell of 96 h\.$/);
});

test('metal that there is not is refused with what there is', () => {
  expect(metalById('panel').timeConstantH).toBe(0.1);
  expect(() => metalById('anvil')).toThrow(
    /"anvil" is not in the table; expected one of car-engine, motorcycle-engine/,
  );
  for (const hours of [-0.1, 100.1])
    expect(() => storeAir(COLD, store(), hours, OPTIONS)).toThrow(
      `metal time constant: ${hours} h found, 0 to 100 h expected`,
    );
  expect(() => storeAir(COLD, store(), 100, OPTIONS)).not.toThrow();
});

test('the coldest hour of a usual year is the middle one of the years’ coldest hours in the months asked for', () => {
  const march = [0, -2, -1, -30];
  const april = [-5, 3, 4, 2];
  const lowestC = Array.from({ length: 12 }, (_, m) => (m === 2 ? march : m === 3 ? april : [9, 9, 9, 9]));
  // Coldest of March and April: −5, −2, −1, −30; the middle two −2 and −5.
  expect(usualLowC({ years: 4, lowestC }, [3, 4])).toBe(-3.5);
  expect(usualLowC({ years: 4, lowestC }, [3])).toBe(-1.5);
  expect(usualLowC({ years: 3, lowestC: lowestC.map((l) => l.slice(0, 3)) }, [4])).toBe(3);
});
