/** What a climate may be and may not: every border on both sides, with the words of the refusal. */
import { expect, test } from 'vitest';
import {
  checkClimate,
  checkNormals,
  dateOfDayIndex,
  designLow,
  frostPointC,
  type HourlyClimate,
  type MonthlyNormals,
  monthMeansOfHours,
  proposeSeason,
  relativeHumidityPct,
  saturationOverIcePa,
  saturationOverWaterPa,
  vapourPressurePa,
} from '../../../src/planner/climate/index.ts';
import { all, COLD, withNormals } from './places.ts';

const normals = (over: Partial<MonthlyNormals>): MonthlyNormals => ({ ...COLD.normals, ...over });
const BARE: MonthlyNormals = { meanC: all(0), minC: all(-5), maxC: all(5), rhPct: all(70) };

/** A value in March, all other months sound. */
function inMarch(field: keyof MonthlyNormals, value: number, rest: Partial<MonthlyNormals> = {}): MonthlyNormals {
  const base = { ...BARE, ...rest };
  return { ...base, [field]: (base[field] as number[]).map((v, m) => (m === 2 ? value : v)) };
}

test.each<[keyof MonthlyNormals, string, string, number, number, Partial<MonthlyNormals>]>([
  ['meanC', 'mean temperature', '°C', -75, 50, { minC: all(-80), maxC: all(55) }],
  ['minC', 'mean daily minimum', '°C', -80, 45, { meanC: all(45), maxC: all(50) }],
  ['maxC', 'mean daily maximum', '°C', -70, 55, { meanC: all(-70), minC: all(-75) }],
  ['rhPct', 'relative humidity', '%', 1, 100, {}],
  [
    'recordLowC',
    'lowest on record',
    '°C',
    -95,
    45,
    { recordLowC: all(-40), minC: all(45), meanC: all(46), maxC: all(50) },
  ],
  ['snowDepthCm', 'snow depth', 'cm', 0, 2000, { snowDepthCm: all(10) }],
  ['precipMm', 'precipitation', 'mm', 0, 5000, { precipMm: all(10) }],
])('%s lies within its bounds in every month', (field, what, unit, low, high, rest) => {
  for (const value of [low, high]) expect(() => checkNormals(inMarch(field, value, rest)), String(value)).not.toThrow();
  for (const value of [low - 0.1, high + 0.1, Number.NaN])
    expect(() => checkNormals(inMarch(field, value, rest))).toThrow(
      `${what}, month 3: ${value} ${unit} found, ${low} to ${high} ${unit} expected`,
    );
  const short = { ...BARE, ...rest, [field]: all(1).slice(1) };
  expect(() => checkNormals(short)).toThrow(`${what}: 11 values found, 12 expected (January first)`);
});

test('least, mean and most stand in order in every month, and no record lies above the least', () => {
  expect(() => checkNormals(normals({ minC: COLD.normals.meanC, maxC: COLD.normals.meanC }))).not.toThrow();
  expect(() => checkNormals(inMarch('minC', 0.1))).toThrow(
    'month 3: minimum 0.1, mean 0, maximum 5 °C are out of order',
  );
  expect(() => checkNormals(inMarch('maxC', -0.1))).toThrow(
    'month 3: minimum -5, mean 0, maximum -0.1 °C are out of order',
  );
  const record = { recordLowC: all(-20) };
  expect(() => checkNormals(inMarch('recordLowC', -5, record))).not.toThrow();
  expect(() => checkNormals(inMarch('recordLowC', -4.9, record))).toThrow(
    'month 3: lowest on record -4.9 °C is above the mean daily minimum -5 °C',
  );
  const last = { ...BARE, minC: all(-5).with(11, 1) };
  expect(() => checkNormals(last)).toThrow(/^month 12: /);
});

const year = (value: number) => new Float64Array(8760).fill(value);
const hourly = (over: Partial<HourlyClimate> = {}): HourlyClimate => ({
  kind: 'hourly',
  id: 'made-up',
  name: 'Made up',
  latitudeDeg: 50,
  elevationM: 100,
  temperatureC: year(5),
  rhPct: year(70),
  source: 'invented',
  attribution: '',
  ...over,
});

test('an hourly year is whole and within its bounds, to the last hour', () => {
  expect(() => checkClimate(hourly())).not.toThrow();
  const at = (series: Float64Array, hour: number, value: number) => series.with(hour, value);
  for (const value of [-90, 60])
    expect(() => checkClimate(hourly({ temperatureC: at(year(5), 8759, value) }))).not.toThrow();
  for (const value of [0, 100]) expect(() => checkClimate(hourly({ rhPct: at(year(70), 0, value) }))).not.toThrow();
  expect(() => checkClimate(hourly({ temperatureC: at(year(5), 8759, 60.1) }))).toThrow(
    'made-up, temperature [°C], hour 8759: 60.1 found, -90 to 60 expected',
  );
  expect(() => checkClimate(hourly({ rhPct: at(year(70), 0, 100.1) }))).toThrow(
    'made-up, relative humidity [%], hour 0: 100.1 found, 0 to 100 expected',
  );
  expect(() => checkClimate(hourly({ rhPct: at(year(70), 5, Number.NaN) }))).toThrow(/hour 5: NaN found/);
  expect(() => checkClimate(hourly({ temperatureC: year(5).slice(1) }))).toThrow(
    'made-up, temperature [°C]: 8759 hours found, 8760 expected',
  );
  for (const latitudeDeg of [-90, 90]) expect(() => checkClimate(hourly({ latitudeDeg }))).not.toThrow();
  for (const latitudeDeg of [-90.1, 90.1, Number.NaN])
    expect(() => checkClimate(hourly({ latitudeDeg }))).toThrow(
      `made-up: latitude ${latitudeDeg}° found, −90 to 90° expected`,
    );
  expect(() => checkClimate(withNormals({ rhPct: all(0) }))).toThrow(/^relative humidity, month 1/);
});

test('the design low is the record where there is one, and the typical low never lies under it', () => {
  const known = designLow(withNormals({ recordLowC: all(-30), minC: all(-20), meanC: all(-15), maxC: all(-10) }));
  expect(known.designC).toEqual(all(-30));
  for (const t of known.typicalC) expect(t).toBeGreaterThanOrEqual(-30);
  expect(known.basis).toBe(
    'Design: the lowest on record. Typical: the lowest of a middle year, reckoned from the monthly means.',
  );
  const unknown = designLow(withNormals({ minC: all(-20), meanC: all(-15), maxC: all(-10) }));
  // A middle year's low lies half as far under the minimum.
  for (const [m, t] of unknown.designC.entries()) expect((-20 - t) / (-20 - unknown.typicalC[m]!)).toBeCloseTo(2, 9);
  expect(unknown.basis).toMatch(/^The low that comes back once in 50 years, .*A known record low is better\.$/);
});

test('no design low lies under the coldest ever measured, save where the minimum itself is near it', () => {
  const arctic = (minC: number) =>
    designLow(withNormals({ minC: all(minC), meanC: all(minC + 4), maxC: all(minC + 8) })).designC;
  // −89.2 °C at Vostok, whose coldest month has a mean daily minimum of −71 °C (from memory).
  expect(Math.min(...arctic(-71))).toBeGreaterThan(-89.2);
  expect(Math.min(...arctic(-71))).toBeLessThan(-75);
});

test('spring is told from autumn by the hemisphere, and its lead counts no further than at the stations of the fit', () => {
  const withSpring = (leadK: number) =>
    COLD.normals.meanC.map((t, m) => (m === 3 ? COLD.normals.meanC[9]! + leadK : t));
  const coldest = (latitudeDeg: number, leadK: number) =>
    Math.min(...designLow({ ...withNormals({ meanC: withSpring(leadK) }), latitudeDeg }).designC);
  expect(coldest(46, -6)).toBeGreaterThan(coldest(46, 0));
  expect(coldest(-46, -2)).toBeCloseTo(coldest(46, 2), 9);
  expect(coldest(46, 3.4)).toBeGreaterThan(coldest(46, 3.5));
  expect(coldest(46, 4.4)).toBe(coldest(46, 3.5));
});

test('an hourly year has its own lows as the typical ones, and the design low is never above them', () => {
  // −40 °C for one hour of 31 January, index 743, and of 1 February, index 744.
  const found = designLow(hourly({ temperatureC: year(5).with(743, -40).with(744, -35) }));
  expect(found.typicalC.slice(0, 3)).toEqual([-40, -35, 5]);
  for (const [m, t] of found.designC.entries()) expect(t).toBeLessThanOrEqual(found.typicalC[m]!);
  expect(found.basis).toMatch(
    /^Typical: the lowest hour of each month in the hourly year\. Design: the low that comes back once in 50 years, .*\. A record low of the place is better\.$/,
  );
});

test('vapour is refused where there can be none', () => {
  expect(() => saturationOverWaterPa(100)).not.toThrow();
  expect(() => saturationOverWaterPa(-100)).not.toThrow();
  expect(() => saturationOverWaterPa(100.1)).toThrow('temperature: 100.1 °C found, -100 to 100 °C expected');
  expect(() => saturationOverWaterPa(-100.1)).toThrow(/-100\.1 °C found/);
  expect(() => saturationOverIcePa(0.01)).not.toThrow();
  expect(() => saturationOverIcePa(0.02)).toThrow('temperature over ice: 0.02 °C found, -100 to 0.01 °C expected');
  expect(() => saturationOverIcePa(-100.1)).toThrow(/over ice: -100\.1/);
  expect(vapourPressurePa(20, 0)).toBe(0);
  expect(vapourPressurePa(20, 100)).toBe(saturationOverWaterPa(20));
  for (const rh of [-0.1, 100.1])
    expect(() => vapourPressurePa(20, rh)).toThrow(`relative humidity: ${rh} % found, 0 to 100 expected`);
  expect(relativeHumidityPct(20, 0)).toBe(0);
  expect(() => relativeHumidityPct(20, -1)).toThrow('vapour pressure: -1 Pa found, 0 or more expected');
  expect(frostPointC(saturationOverIcePa(0.01))).toBeCloseTo(0.01, 6);
  for (const e of [0, 612])
    expect(() => frostPointC(e)).toThrow(`vapour pressure over ice: ${e} Pa found, 0 to 611.66 Pa expected`);
});

test('days, years and means of the calendar', () => {
  expect(dateOfDayIndex(58, 2027)).toBe('2027-02-28');
  expect(dateOfDayIndex(59, 2027)).toBe('2027-03-01');
  expect(dateOfDayIndex(0, 800)).toBe('0800-01-01');
  expect(() => dateOfDayIndex(-1, 2027)).toThrow('day index: -1 is not a whole number from 0 to 364');
  expect(() => dateOfDayIndex(1.5, 2027)).toThrow(/1\.5 is not a whole number/);
  for (const bad of [-1, 10_000, 20.5])
    expect(() => dateOfDayIndex(0, bad)).toThrow(`year: ${bad} is not a calendar year`);
  const [january, february] = monthMeansOfHours(
    Float64Array.from({ length: 17_520 }, (_, h) => (h % 8760 < 744 ? 2 : 8)),
  );
  expect([january, february]).toEqual([2, 8]);
});

test('a proposal says what it was judged by', () => {
  const reasons = (...given: Parameters<typeof proposeSeason>) => proposeSeason(...given).reasons;
  expect(reasons(COLD, 'road', '2026-09-01')).toEqual([
    expect.stringMatching(
      /^Use on days with normal daily minimum over \{2 °C\}, and frost in fewer than 1 night in 10: \d+ days of the normal year\.$/,
    ),
  ]);
  expect(reasons(COLD, 'trail', '2026-09-01')[0]).toMatch(
    /^Use on days with normal daily mean over \{0 °C\}, the ground not frozen: /,
  );
  expect(reasons(COLD, 'snow', '2026-09-01')).toEqual([
    expect.stringMatching(/^Use on days with normal daily mean under \{-2 °C\}: /),
    'Snow depth is not known here: judged by temperature alone.',
  ]);
  const snow = withNormals({ snowDepthCm: [40, 60, 60, 25, 0, 0, 0, 0, 0, 0, 5, 20] });
  expect(reasons(snow, 'snow', '2026-09-01')).toEqual([
    expect.stringMatching(/with normal snow depth of \{100 mm\} or more: /),
  ]);
  const warm = withNormals({ meanC: all(22), minC: all(18), maxC: all(27) });
  expect(reasons(warm, 'road', '2026-09-01')).toEqual([
    expect.stringMatching(
      /^Every day of the normal year is fit for use \(.*\): the climate asks for no idle months\.$/,
    ),
    'Proposed: the 90 days least fit.',
  ]);
  expect(reasons(warm, 'snow', '2026-09-01').slice(0, 2)).toEqual([
    expect.stringMatching(/^No day of the normal year is fit for use \(normal daily mean under \{-2 °C\}\)\.$/),
    'Proposed: use in the 90 days nearest to it.',
  ]);
});

test('the proposal is the idle months under way or the next, whatever the day, and 90 days where the climate asks for none', () => {
  const warm = withNormals({ meanC: all(22), minC: all(18), maxC: all(27) });
  const days = ({ lastUse, firstUse }: { lastUse: string; firstUse: string }) =>
    (Date.parse(firstUse) - Date.parse(lastUse)) / 86_400_000;
  expect(days(proposeSeason(warm, 'road', '2026-09-01'))).toBe(91);
  expect(days(proposeSeason(warm, 'snow', '2026-09-01'))).toBe(276);
  const { firstUse } = proposeSeason(COLD, 'road', '2026-09-01');
  expect(proposeSeason(COLD, 'road', firstUse).firstUse > firstUse).toBe(true);
  const dayBefore = new Date(Date.parse(firstUse) - 86_400_000).toISOString().slice(0, 10);
  expect(proposeSeason(COLD, 'road', dayBefore).firstUse).toBe(firstUse);
});
