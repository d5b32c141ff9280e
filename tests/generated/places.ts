/** Climates and stores of every kind, as content files. */
import fc from 'fast-check';
import { ENCLOSURES } from '../../src/planner/storage/index.ts';
import { some } from './text.ts';

type Content = Record<string, unknown>;

const inland: Content = {
  name: 'Cold inland',
  latitudeDeg: 53,
  elevation: '640 m',
  source: 'Invented',
  meanC: [-13, -10, -4, 4, 10, 14, 17, 16, 10, 4, -5, -11],
  minC: [-19, -16, -10, -2, 3, 8, 10, 9, 4, -2, -10, -16],
  maxC: [-8, -4, 2, 11, 17, 20, 23, 22, 17, 10, 0, -6],
  humidityPct: [74, 72, 70, 60, 55, 62, 66, 68, 66, 66, 74, 76],
  snowDepthCm: [30, 34, 24, 3, 0, 0, 0, 0, 0, 1, 10, 22],
  recordLowC: [-44, -42, -36, -24, -9, -2, 1, -1, -9, -24, -36, -42],
};

const shifted = (list: unknown, months: number) => {
  const values = list as number[];
  return values.map((_, m) => values[(m + months) % 12]!);
};

/** Twelve months of another hemisphere. */
function turned(climate: Content, name: string): Content {
  const monthly = Object.entries(climate).map(([key, value]) => [
    key,
    Array.isArray(value) ? shifted(value, 6) : value,
  ]);
  return { ...Object.fromEntries(monthly), name, latitudeDeg: -(climate.latitudeDeg as number) };
}

const coast: Content = {
  name: 'Mild coast',
  latitudeDeg: 58.9,
  elevation: '20 m',
  source: 'Invented',
  meanC: [2, 2, 3.5, 6.5, 10, 13, 15, 15, 12.5, 8.5, 5, 2.5],
  minC: [-0.5, -0.8, 0.5, 3, 6.5, 9.5, 12, 12, 9.5, 6, 2.5, 0],
  maxC: [4.2, 4.3, 6.5, 10.5, 14.5, 17, 19, 19, 15.5, 11, 7.3, 4.8],
  humidityPct: [84, 82, 79, 76, 75, 78, 80, 81, 82, 82, 83, 84],
};

const CLIMATES: Readonly<Record<string, Content>> = {
  inland,
  south: turned(inland, 'Cold south'),
  coast,
  fjord: turned(coast, 'Southern fjord'),
  arctic: {
    name: 'Far north',
    latitudeDeg: 68,
    elevation: '30 m',
    source: 'Invented',
    meanF: [-16, -14, -7, 12, 32, 50, 56, 51, 40, 20, -2, -12],
    minF: [-25, -24, -18, 0, 23, 40, 46, 42, 32, 12, -10, -21],
    maxF: [-8, -5, 4, 24, 41, 60, 66, 60, 47, 27, 6, -4],
    dewPointF: [-22, -20, -13, 5, 25, 38, 45, 43, 34, 14, -8, -18],
    recordLowF: [-65, -66, -60, -45, -15, 22, 30, 22, 3, -32, -52, -62],
  },
  desert: {
    name: 'Hot and dry',
    latitudeDeg: 24,
    elevation: '1200 ft',
    source: 'Invented',
    meanC: [14, 16, 20, 25, 30, 33, 35, 34, 32, 27, 20, 15],
    minC: [8, 9, 13, 18, 22, 25, 27, 27, 24, 20, 14, 9],
    maxC: [21, 23, 27, 33, 38, 41, 43, 42, 40, 35, 27, 22],
    humidityPct: [46, 38, 32, 24, 17, 12, 13, 15, 17, 24, 36, 46],
  },
  tropics: {
    name: 'Always warm',
    latitudeDeg: 1.3,
    elevation: '15 m',
    source: 'Invented',
    meanC: [26.5, 27, 27.5, 28, 28.3, 28.3, 28, 27.9, 27.6, 27.6, 27, 26.4],
    minC: [23.9, 24.3, 24.6, 25, 25.4, 25.4, 25, 25, 24.8, 24.7, 24.3, 24],
    maxC: [30.4, 31.7, 32, 32.3, 32.2, 31.9, 31.4, 31.4, 31.6, 31.8, 31.2, 30.5],
    humidityPct: [85, 83, 83, 83, 83, 81, 81, 81, 82, 82, 85, 86],
  },
  plateau: {
    name: 'High and clear',
    latitudeDeg: 40,
    elevation: '2900 m',
    source: 'Invented',
    meanC: [-7, -6, -3, 1, 6, 12, 15, 14, 10, 4, -3, -7],
    minC: [-16, -15, -12, -7, -2, 2, 6, 5, 0, -5, -11, -16],
    maxC: [1, 2, 5, 9, 15, 21, 23, 22, 18, 12, 5, 1],
    dewPointC: [-15, -14, -12, -9, -5, -2, 3, 3, -2, -8, -12, -15],
  },
};

export const CLIMATE_IDS = Object.keys(CLIMATES);

/** A climate's content. */
export function climateContent(id: string): Content {
  return CLIMATES[id]!;
}

/** A store of any kind: a row of the table, or with figures of its own. */
export const placeArb = fc
  .record({
    enclosure: fc.oneof(
      { arbitrary: fc.constantFrom(...ENCLOSURES.map((row) => row.id)), weight: 3 },
      {
        arbitrary: fc
          .tuple(
            fc.constantFrom(...ENCLOSURES.map((row) => row.id)),
            some({
              timeConstant: fc.constantFrom('0 h', '0.3 h', '6 h', '48 h', '500 h', '90 min'),
              airChangesPerHour: fc.constantFrom(0.01, 0.2, 1, 20, 100),
              houseShare: fc.constantFrom('0 %', '30 %', '100 %'),
              houseTemperature: fc.constantFrom('0 °C', '18 °C', '70 °F'),
              gain: fc.constantFrom('0 K', '1.5 K', '20 K'),
              heatedTo: fc.constantFrom('-20 °C', '5 °C', '30 °C'),
              humidityAtMost: fc.constantFrom('20 %', '50 %', '100 %'),
              dampFloorPa: fc.constantFrom(0, 100, 1000),
            }),
          )
          .map(([like, own]) => ({ like, ...own })),
        weight: 1,
      },
    ),
    climate: fc.constantFrom(...CLIMATE_IDS),
    power: fc.boolean(),
    options: some({
      trip: fc.constantFrom('0 min', '2 min', '12 min', '45 min', '3 h'),
      rodents: fc.boolean(),
      bench: fc.boolean(),
      salt: fc.constantFrom('none', 'salted-road', 'coast', 'surf'),
      chlorideMgM2D: fc.constantFrom(0, 3, 300, 5000),
      sulphurDioxideMgM2D: fc.constantFrom(0, 10, 500),
    }),
  })
  .map(({ options, ...place }) => ({ ...place, ...options }));

export type PlaceContent = typeof placeArb extends fc.Arbitrary<infer T> ? T : never;

/**
 * A set of stores that cases draw from: the weather of each is drawn once and serves them all.
 * @param size - how many
 */
export function placePool(size: number): PlaceContent[] {
  return fc.sample(placeArb, { numRuns: size, seed: 20261025 });
}
