/**
 * What stands at a bound is taken, what is beyond it is told. A message says its own bound ("expected at most 2"), and common
 * usage is that "at least" and "at most" take in the figure itself.
 */
import { expect, test } from 'vitest';
import { MAX_BYTES } from '../../src/content/text.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { readWith, SMALLEST } from './helpers.ts';

/** What is told of a household with this in place of a file. */
function told(files: Record<string, string>): string[] {
  return readWith(files).problems.map(({ field, what }) => `${field} ${what}`);
}

const machine = (change: (text: string) => string) => told({ 'machines/juniper.yaml': change(SMALLEST) });

test('a rest of a week is the shortest, one of three years the longest', () => {
  const rest = (firstUse: string) => machine((text) => text.replace('2027-04-10', firstUse));
  expect(rest('2026-10-31')).toEqual([expect.stringContaining('a rest of 6 days, expected at least 7')]);
  expect(rest('2026-11-01')).toEqual([]);
  // Of the three years to that day 2028 is a leap year.
  expect(rest('2029-10-25')).toEqual([]);
  expect(rest('2029-10-26')).toEqual([expect.stringContaining('at most three years')]);
  expect(rest('2026-10-25')).toEqual([expect.stringContaining('not after the last use')]);
});

test('a carburettor for each cylinder may have two bowls', () => {
  const bowls = (count: number, cylinders: number) =>
    machine((text) =>
      text
        .replace('tap: vacuum', `tap: vacuum, bowls: ${count}`)
        .concat(`engine: { cycle: four-stroke, cylinders: ${cylinders} }\n`),
    );
  expect(bowls(2, 1)).toEqual([]);
  expect(bowls(3, 1)).toEqual(['fuel.bowls found 3 float bowls on 1 cylinder, expected at most 2']);
  expect(bowls(8, 4)).toEqual([]);
  expect(bowls(9, 4)).toEqual(['fuel.bowls found 9 float bowls on 4 cylinders, expected at most 8']);
});

test('line and bowls hold less than the tank', () => {
  const held = (lineAndBowls: string) =>
    machine((text) => text.replace('17 L', '5 L').replace('tap: vacuum', `tap: vacuum, lineAndBowls: ${lineAndBowls}`));
  for (const less of ['0.5 L', '4.9 L']) expect(held(less)).toEqual([]);
  for (const all of ['5 L', '6 L'])
    expect(held(all)).toEqual([`fuel.lineAndBowls found ${all} in line and bowls beside a tank of 5 L, expected less`]);
});

/** The valley with other figures in its first month. */
function january(unit: 'C' | 'F', low: number, mean: number, high: number): string {
  const rest = unit === 'C' ? [-1, 3, 8] : [30, 37, 46];
  const row = (key: string, first: number, others: number) =>
    `${key}${unit}: [${[first, ...Array(11).fill(others)].join(', ')}]\n`;
  return [
    'name: Valley\nlatitudeDeg: 60.5\nelevation: 180 m\nsource: Invented\n',
    row('min', low, rest[0]!),
    row('mean', mean, rest[1]!),
    row('max', high, rest[2]!),
    'humidityPct: [84, 80, 73, 66, 61, 64, 68, 74, 78, 83, 86, 86]\n',
  ].join('');
}

// A difference of 1 K is one of 1.8 °F, by definition of the two scales.
test.each([
  ['C', 50],
  ['F', 90],
] as const)('a month may swing by 50 K, which are so many °%s', (unit, most) => {
  const climate = (low: number, mean: number, high: number) =>
    told({ 'climates/valley.yaml': january(unit, low, mean, high) });
  expect(climate(-20, 0, most - 20)).toEqual([]);
  const words = `of month 1, expected at most ${most} °${unit} between them`;
  // The figure that stands further from the mean is the one that was mistyped.
  expect(climate(-20, 0, most - 19)).toEqual([
    `max${unit}.1 found -20 to ${most - 19} °${unit} between the mean minimum and the mean maximum ${words}`,
  ]);
  expect(climate(-(most - 10), 0, 11)).toEqual([expect.stringMatching(`^min${unit}\\.1 .*${words}`)]);
});

test('an amount is more than nought, with a unit', () => {
  const amount = (text: string) =>
    machine(
      (file) =>
        `${file}services: [{ id: a, what: A, every: { time: 1 years }, supplies: [{ what: Gasket, amount: ${text} }] }]\n`,
    );
  for (const sound of ['1 piece', '0.1 L', '2,5 L', '100000 pieces']) expect(amount(`"${sound}"`), sound).toEqual([]);
  for (const wrong of ['0 pieces', '100001 pieces', '2', 'some', '-1 L'])
    expect(amount(`"${wrong}"`), wrong).toEqual([expect.stringContaining('expected an amount with its unit')]);
});

test('a file may be as large as is said', () => {
  const filled = (size: number) => SMALLEST.padEnd(size - 1, '# as large as it may be\n').concat('\n');
  expect(filled(MAX_BYTES)).toHaveLength(MAX_BYTES);
  expect(machine(() => filled(MAX_BYTES))).toEqual([]);
  expect(machine(() => filled(MAX_BYTES + 1))).toEqual([expect.stringContaining('expected at most 256 kB')]);
});

test('what is expected may be the least or the most that it could be', () => {
  const drain = (value: number, low: number, high: number) =>
    machine((text) => text.replace('12 Ah', `12 Ah, drain: { value: ${value} mA, low: ${low} mA, high: ${high} mA }`));
  for (const [value, low, high] of [
    [1, 1, 3],
    [3, 1, 3],
    [2, 2, 2],
  ] as const)
    expect(drain(value, low, high)).toEqual([]);
  for (const [value, low, high] of [
    [4, 1, 3],
    [0, 1, 3],
    [2, 3, 1],
  ] as const)
    expect(drain(value, low, high)).toEqual([expect.stringContaining('low, value and high out of order')]);
});

test.each([
  ['the hottest', [40, 20, 55], 20],
  ['the coldest', [-60, -70, -50], 0],
] as const)('%s place that a file can give is planned', (_, [mean, min, max], gainK) => {
  const months = (degrees: number) => `[${Array.from({ length: 12 }, () => degrees).join(', ')}]`;
  const climate = `name: Far\nlatitudeDeg: 24\nelevation: 10 m\nsource: Invented\nmeanC: ${months(mean)}\nminC: ${months(min)}\nmaxC: ${months(max)}\nhumidityPct: ${months(40)}\n`;
  const place = `name: Store\nenclosure: { like: slab-garage, timeConstant: 0.3 h, gain: ${gainK} K }\npower: true\nclimate: far\n`;
  const asOf = '2026-10-20';
  const fuels = ['choice: fill', 'choice: drain', 'choice: fill, blend: E0'];
  const machines = fuels.map((fuel, i): [string, string] => [
    `machines/m-${i}.yaml`,
    `name: M${i}\nkind: car\nplace: store\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\nfuel: { ${fuel} }\n`,
  ]);
  const files = { 'climates/far.yaml': climate, 'places/store.yaml': place, ...Object.fromEntries(machines) };
  const { household, problems } = readWith(files, 'smallest', asOf);
  expect(problems).toEqual([]);
  const { plan } = planSeason(household!, { asOf });
  const tanks = plan.machines.flatMap(({ fuel }) => fuel?.fullAtHottestPct ?? []);
  expect(tanks.length).toBeGreaterThan(0);
  // Up to its brim and no further.
  for (const fullPct of tanks) expect(fullPct).toBeLessThanOrEqual(100 + 1e-9);
});

test('a store that takes all its warmth from a house at 18 °C is neither warmer at its coldest than at its warmest, nor another', () => {
  const climate = [
    'name: High and clear\nlatitudeDeg: 40\nelevation: 2900 m\nsource: Invented',
    'meanC: [-7, -6, -3, 1, 6, 12, 15, 14, 10, 4, -3, -7]',
    'minC: [-16, -15, -12, -7, -2, 2, 6, 5, 0, -5, -11, -16]',
    'maxC: [1, 2, 5, 9, 15, 21, 23, 22, 18, 12, 5, 1]',
    'humidityPct: [50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50]\n',
  ].join('\n');
  const place =
    'name: Store\nenclosure: { like: attached-garage, houseShare: 100 %, houseTemperature: 18 °C }\npower: false\nclimate: high\n';
  const files = { 'climates/high.yaml': climate, 'places/store.yaml': place };
  const { household, problems } = readWith({
    ...files,
    'machines/juniper.yaml': SMALLEST.replace(/^place: .*$/m, 'place: store'),
  });
  expect(problems).toEqual([]);
  const [machine] = planSeason(household!, { asOf: '2026-11-25' }).plan.machines;
  const { lowestC, highestC } = machine!.air;
  expect(lowestC).toBeCloseTo(18, 9);
  expect(highestC).toBeCloseTo(18, 9);
  expect(lowestC).toBeLessThanOrEqual(highestC);
});
