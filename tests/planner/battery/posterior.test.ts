/**
 * The loss-rate multiplier against its definition: the slope and its information by the textbook's weighted least squares (sums of
 * w, wx, wy, wx², wxy), and the mode of exp(−I·(m − b)²/2 − (ln m)²/2σ²), where its derivative by ln m is nought.
 */
import { expect, test } from 'vitest';
import {
  calibrate,
  calibratedRates,
  lossCurve,
  lossRates,
  openCircuitVoltage,
  restOf,
} from '../../../src/planner/battery/index.ts';
import type { Battery, Reading } from '../../../src/planner/household.ts';
import { battery, exactly, ranged } from './world.ts';

const rest = restOf('2026-04-05', '2026-11-20');
/** At 20 °C, 6 % expected in thirty days: 0.2 % a day, so that a day's loss is 0.2 times its index. */
const curve = lossCurve(rest, { roomC: 20 }, 9);
const OWN = battery('flooded-antimony', 12);
const read = (day: number, pct: number, more: Partial<Reading> = {}): Reading => ({
  date: rest.dates[day]!,
  volts: openCircuitVoltage('flooded-antimony', pct, 20),
  temperatureC: 20,
  restedH: 12,
  ...more,
});
const charge = (day: number, toPct = 100) => ({ date: rest.dates[day]!, toPct });
const run = (readings: Reading[], charged: { date: string; toPct: number }[] = [], own = OWN, asOf = '2026-11-20') =>
  calibrate(own, { readings, charged, asOf, locale: 'en-GB' }, curve, lossRates(own, false), false);

type Seen = [day: number, pct: number, sigma: number];

/** Slope and information over stretches, none of which shares its height with another. */
function leastSquares(stretches: Seen[][]) {
  let [top, information] = [0, 0];
  for (const stretch of stretches) {
    let [w, wx, wy, wxx, wxy] = [0, 0, 0, 0, 0];
    for (const [day, pct, sigma] of stretch) {
      const [weight, x] = [sigma ** -2, 0.2 * day];
      w += weight;
      wx += weight * x;
      wy += weight * pct;
      wxx += weight * x * x;
      wxy += weight * x * pct;
    }
    information += wxx - wx ** 2 / w;
    top -= wxy - (wx * wy) / w;
  }
  return { best: top / information, information };
}

function holds(found: ReturnType<typeof run>, stretches: Seen[][], priorSigma: number) {
  const { best, information } = leastSquares(stretches);
  const { multiplier: m, factor } = found.result!;
  // Halved steps down to 1e-9 of ln m.
  expect(information * (m - best) * m + Math.log(m) / priorSigma ** 2).toBeCloseTo(0, 4);
  const sigma = (information * m * m + priorSigma ** -2) ** -0.5;
  expect(Math.log(factor)).toBeCloseTo(sigma, 9);
  expect(found.widthLeft).toBeCloseTo(sigma / priorSigma, 9);
}

// 3 to 15 % is a factor of five: half of ln 5 to each side.
const PRIOR = Math.log(5) / 2;

test.each<[string, ReturnType<typeof run>, Seen[][], number, number]>([
  [
    'one reading',
    run([read(100, 60)]),
    [
      [
        [0, 100, 2],
        [100, 60, 6],
      ],
    ],
    PRIOR,
    1,
  ],
  [
    'three readings, out of their order in the log',
    run([read(150, 50), read(50, 85), read(100, 60)]),
    [
      [
        [0, 100, 2],
        [50, 85, 6],
        [100, 60, 6],
        [150, 50, 6],
      ],
    ],
    PRIOR,
    3,
  ],
  [
    'one after a short rest',
    run([read(100, 60, { restedH: 4 })]),
    [
      [
        [0, 100, 2],
        [100, 60, 9],
      ],
    ],
    PRIOR,
    1,
  ],
  [
    'a charge between, and one that no reading follows',
    run([read(60, 70), read(160, 75)], [charge(200), charge(80, 95)]),
    [
      [
        [0, 100, 2],
        [60, 70, 6],
      ],
      [
        [80, 95, 2],
        [160, 75, 6],
      ],
    ],
    PRIOR,
    2,
  ],
  [
    'a start that is known to a quarter of twenty percent',
    run([read(100, 60)], [], { ...OWN, startPct: ranged(95, 80, 100) }),
    [
      [
        [0, 95, 5],
        [100, 60, 6],
      ],
    ],
    PRIOR,
    1,
  ],
  [
    'a rate that was given, still open by four tenths',
    run([read(100, 60)], [], { ...OWN, selfDischargePctPerMonth: exactly(6) }),
    [
      [
        [0, 100, 2],
        [100, 60, 6],
      ],
    ],
    0.4,
    1,
  ],
  [
    'a rate that may be nothing',
    run([read(100, 60)], [], { ...OWN, selfDischargePctPerMonth: ranged(6, 0, 15) }),
    [
      [
        [0, 100, 2],
        [100, 60, 6],
      ],
    ],
    0.4,
    1,
  ],
  [
    'a reading on the day of a charge, taken before it',
    run([read(60, 70), read(80, 65)], [charge(80)]),
    [
      [
        [0, 100, 2],
        [60, 70, 6],
        [80, 65, 6],
      ],
    ],
    PRIOR,
    2,
  ],
  [
    'a charge that is not made yet',
    run([read(60, 70)], [charge(80)], OWN, rest.dates[79]),
    [
      [
        [0, 100, 2],
        [60, 70, 6],
      ],
    ],
    PRIOR,
    1,
  ],
  [
    'charges before and after the rest',
    run(
      [read(100, 60)],
      [
        { date: '2026-04-04', toPct: 50 },
        { date: '2026-11-21', toPct: 50 },
      ],
      OWN,
      '2026-12-01',
    ),
    [
      [
        [0, 100, 2],
        [100, 60, 6],
      ],
    ],
    PRIOR,
    1,
  ],
  [
    'a charge on the last day of use and one on the first',
    run([read(100, 60)], [charge(0, 90), charge(rest.days, 90)]),
    [
      [
        [0, 90, 2],
        [100, 60, 6],
      ],
    ],
    PRIOR,
    1,
  ],
])('%s', (_, found, stretches, priorSigma, used) => {
  holds(found, stretches, priorSigma);
  expect(found.result).toMatchObject({ readings: used, problems: [] });
});

test('a rise within what the readings leave open is borne, a greater one is a charge that was not written down', () => {
  const rise = (pct: number, restedH = 12) => run([read(50, 80), read(60, 80 + pct, { restedH })]);
  holds(
    rise(5.9),
    [
      [
        [0, 100, 2],
        [50, 80, 6],
        [60, 85.9, 6],
      ],
    ],
    PRIOR,
  );
  expect(rise(5.9).result!.problems).toEqual([]);
  expect(rise(8.9, 4).result!.problems).toEqual([]);
  const found = rise(12);
  expect(found.result!.problems).toEqual([
    '4 June 2026: 12.58 V is 12 % more than the reading before, and no charge stands between them in the log: either a charge was not written down, or one of the two is wrong.',
  ]);
  // What follows begins anew, at the height of that reading.
  holds(
    run([read(50, 80), read(60, 92), read(100, 80)]),
    [
      [
        [0, 100, 2],
        [50, 80, 6],
      ],
      [
        [60, 92, 6],
        [100, 80, 6],
      ],
    ],
    PRIOR,
  );
  expect(run([read(50, 80), read(60, 92), read(100, 80)]).result!.readings).toBe(3);
});

test('a reading on the last day of use says nothing of a loss', () => {
  const found = run([read(0, 90)]);
  expect([found.result, found.widthLeft]).toEqual([undefined, 1]);
});

test('a reading that is not used is a problem within the rest, and none outside it', () => {
  const unrested = run([read(50, 80, { restedH: 1 })]);
  expect(unrested.result).toMatchObject({ multiplier: 1, readings: 0 });
  expect(unrested.result!.problems).toEqual([expect.stringMatching(/^25 May 2026: rested 1 h; /)]);
  expect(unrested.widthLeft).toBe(1);
  expect(run([{ ...read(50, 80), date: '2026-12-24' }]).result).toBeUndefined();
});

test('readings are judged in the order of their days, those of one day as they were written', () => {
  const found = run([
    read(100, 60),
    read(50, 85),
    read(50, 84),
    read(20, 90, { restedH: 1 }),
    read(10, 95, { restedH: 2 }),
  ]);
  expect(found.readings.map((r) => [r.index, Math.round(r.stateOfChargePct)])).toEqual([
    [10, 95],
    [20, 90],
    [50, 85],
    [50, 84],
    [100, 60],
  ]);
  expect(found.result!.problems).toEqual([
    expect.stringMatching(/^15 April 2026: rested 2 h/),
    expect.stringMatching(/^25 April 2026: rested 1 h/),
  ]);
});

test('what is handed back of a reading is what was read and found', () => {
  const [found] = run([read(50, 80)]).readings;
  expect(found).toEqual({
    date: rest.dates[50],
    volts: openCircuitVoltage('flooded-antimony', 80, 20),
    temperatureC: 20,
    index: 50,
    stateOfChargePct: expect.closeTo(80, 9),
    spreadPct: 6,
    usable: true,
    why: undefined,
    inRest: true,
    sound: true,
    cellShort: false,
    shutOff: false,
  });
});

test('the rates after it: the expected one times the multiplier, and of the width what is left', () => {
  const rates = {
    low: { selfPctPerH: 1, drainPctPerH: 0.1 },
    expected: { selfPctPerH: 2, drainPctPerH: 0.2 },
    high: { selfPctPerH: 6, drainPctPerH: 0.6 },
  };
  const result = { multiplier: 3, factor: 1.1, readings: 2, problems: [] };
  const close = (self: number, drain: number) => ({
    selfPctPerH: expect.closeTo(self, 12),
    drainPctPerH: expect.closeTo(drain, 12),
  });
  // A quarter of the width: 2 − 0.25 and 2 + 1, times three.
  expect(calibratedRates(rates, { result, readings: [], widthLeft: 0.25 })).toEqual({
    low: close(5.25, 0.525),
    expected: close(6, 0.6),
    high: close(9, 0.9),
  });
});

test('a battery that loses far more than any of its kind is followed there', () => {
  const slow: Battery = { ...OWN, selfDischargePctPerMonth: exactly(0.6) };
  // 0.02 % a day at 20 °C, 1.2 % in sixty days; 80 % were lost.
  const slowCurve = (day: number, pct: number, sigma: number): Seen => [day / 10, pct, sigma];
  const found = run([read(30, 60), read(60, 20)], [], slow);
  holds(found, [[slowCurve(0, 100, 2), slowCurve(30, 60, 6), slowCurve(60, 20, 6)]], 0.4);
  expect(found.result!.multiplier).toBeGreaterThan(40);
});
