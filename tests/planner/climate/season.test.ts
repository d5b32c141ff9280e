import { expect, test } from 'vitest';
import type { MachineUse } from '../../../src/planner/climate/index.ts';
import { dailyCurves, dayIndexOf, proposeSeason } from '../../../src/planner/climate/index.ts';
import { all, COLD, COLD_SOUTH, withNormals } from './places.ts';

test('a road machine in the north sleeps over the turn of the year', () => {
  const season = proposeSeason(COLD, 'road', '2026-09-01');
  expect(season.lastUse).toMatch(/^2026-(09|10)/);
  expect(season.firstUse).toMatch(/^2027-(04|05)/);
});

test('the same place in the south is half a year later to the week', () => {
  const north = proposeSeason(COLD, 'road', '2026-09-01');
  const south = proposeSeason(COLD_SOUTH, 'road', '2027-03-01');
  for (const end of ['lastUse', 'firstUse'] as const) {
    const apart = (dayIndexOf(south[end]) - dayIndexOf(north[end]) + 365) % 365;
    expect(Math.abs(apart - 182)).toBeLessThanOrEqual(4);
  }
});

test('a snow machine sleeps over summer, from the day the normal mean passes −2 °C', () => {
  const season = proposeSeason(COLD, 'snow', '2027-02-01');
  const { meanC } = dailyCurves(COLD.normals);
  expect(meanC[dayIndexOf(season.lastUse)]!).toBeLessThan(-2);
  expect(meanC[dayIndexOf(season.lastUse) + 1]!).toBeGreaterThanOrEqual(-2);
  expect(meanC[dayIndexOf(season.firstUse)]!).toBeLessThan(-2);
  expect(season.lastUse < season.firstUse).toBe(true);
  expect(season.firstUse.slice(0, 4)).toBe('2027');
});

test('known snow depth decides where there is one', () => {
  const deep = withNormals({ snowDepthCm: [40, 60, 60, 25, 0, 0, 0, 0, 0, 0, 5, 20] });
  const season = proposeSeason(deep, 'snow', '2027-02-01');
  expect(season.lastUse).toMatch(/^2027-0[45]/);
  expect(season.reasons.join(' ')).toContain('snow depth');
});

test('on a day in the idle months the proposal is the months under way', () => {
  const season = proposeSeason(COLD, 'road', '2027-01-15');
  expect(season.lastUse < '2027-01-15' && '2027-01-15' < season.firstUse).toBe(true);
});

test.each([
  ['never cold', withNormals({ meanC: all(22), minC: all(18), maxC: all(27) }), 'road'],
  ['never warm', withNormals({ meanC: all(-20), minC: all(-25), maxC: all(-15) }), 'road'],
  ['never snow', withNormals({ meanC: all(22), minC: all(18), maxC: all(27) }), 'snow'],
] as const)('%s: dates all the same, and the reason that the climate gives none', (_name, climate, use: MachineUse) => {
  const season = proposeSeason(climate, use, '2026-06-15');
  expect(season.lastUse < season.firstUse && season.firstUse > '2026-06-15').toBe(true);
  expect(season.reasons[0]).toMatch(/^(Every|No) day/);
});
