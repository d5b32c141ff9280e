import { expect, test } from 'vitest';
import {
  type AirDose,
  categoryOf,
  firstYearLossUm,
  type Metal,
  outsideValid,
} from '../../src/planner/corrosion/index.ts';
import cases from './corrosion.json' with { type: 'json' };

interface Row {
  temperatureC: number;
  rhPct: number;
  so2: number;
  chloride: number;
}
const dose = ({ temperatureC, rhPct, so2, chloride }: Row): AirDose => ({
  temperatureC,
  rhPct,
  sulphurDioxideMgM2D: so2,
  chlorideMgM2D: chloride,
});
const geometricMean = (xs: number[]) => Math.exp(xs.reduce((a, x) => a + Math.log(x), 0) / xs.length);

test.each(cases.arithmetic)('arithmetic at $temperatureC °C, $rhPct %, P $so2, S $chloride', (c) => {
  expect(firstYearLossUm('steel', dose(c))).toBeCloseTo(c.steelUm, 2);
  expect(firstYearLossUm('zinc', dose(c))).toBeCloseTo(c.zincUm, 3);
});

test.each(cases.regression)("another program's regression value", (c) => {
  expect(firstYearLossUm('zinc', dose(c))).toBeCloseTo(c.zincUm, 12);
});

test.each(cases.categories)('$metal $category from $fromUm to $upToUm µm', ({ metal, category, fromUm, upToUm }) => {
  expect(categoryOf(metal as Metal, (fromUm + upToUm) / 2)).toBe(category);
  expect(categoryOf(metal as Metal, upToUm)).toBe(category);
  expect(categoryOf(metal as Metal, upToUm * 1.001)).not.toBe(category === 'CX' ? 'C5' : category);
});

test.each(cases.valid)('the interval of $field is said to end where the standard ends it', ({ field, low, high }) => {
  const inside: AirDose = { temperatureC: 10, rhPct: 70, sulphurDioxideMgM2D: 5, chlorideMgM2D: 5 };
  expect(outsideValid({ ...inside, [field]: low })).toEqual([]);
  expect(outsideValid({ ...inside, [field]: high })).toEqual([]);
  expect(outsideValid({ ...inside, [field]: low - 0.01 })).toHaveLength(1);
  expect(outsideValid({ ...inside, [field]: high + 0.01 })).toHaveLength(1);
});

const ratios = cases.fieldSites.map((site) => ({
  ...site,
  steel: firstYearLossUm('steel', dose(site)) / site.steelUm,
  zinc: firstYearLossUm('zinc', dose(site)) / site.zincUm,
}));

test('the ratio of estimate to measurement is printed for every field site', () => {
  const lines = ratios.map(
    (r) =>
      `${r.site.padEnd(26)} ${r.group.padEnd(7)} ${String(r.temperatureC).padStart(6)} °C  steel ${r.steel.toFixed(2)}  zinc ${r.zinc.toFixed(2)}`,
  );
  console.info(`ISO 9223, estimate / measured first year\n${lines.join('\n')}`);
  expect(ratios.every((r) => r.steel > 0 && Number.isFinite(r.steel + r.zinc))).toBe(true);
});

test('sites with chloride: steel within a factor of two of the measurement', () => {
  const marine = ratios.filter((r) => r.group === 'marine');
  expect(marine.length).toBeGreaterThan(5);
  expect(marine.filter((r) => !(r.steel > 0.5 && r.steel < 2)).map((r) => r.site)).toEqual([]);
});

test('zinc comes out about half as high as measured, as the plan says', () => {
  const mean = geometricMean(ratios.map((r) => r.zinc));
  expect(1 / mean).toBeGreaterThan(1.5);
  expect(1 / mean).toBeLessThan(3);
});

test('clean cold inland sites come out about three times too low, as the plan says', () => {
  const inland = ratios.filter((r) => r.group === 'inland');
  const mean = geometricMean(inland.map((r) => r.steel));
  expect(1 / mean).toBeGreaterThan(2);
  expect(1 / mean).toBeLessThan(4);
});
