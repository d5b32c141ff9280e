/** What the log suggests, each border by itself; the rates are chosen so that the figures come out by hand. */
import { expect, test } from 'vitest';
import type { JudgedReading } from '../../../src/planner/battery/readings.ts';
import { type Found, suggestion } from '../../../src/planner/battery/suggest.ts';
import { battery, exactly } from './world.ts';

/**
 * Ten days at 20 °C: 0.12 % a day expected, 0.24 % at the fastest. Ten times the expected loss, give or take a factor of two, is
 * 1.2 % a day and 0.6 % at least.
 */
const FOUND: Found = {
  rates: {
    low: { selfPctPerH: 0.0025, drainPctPerH: 0 },
    expected: { selfPctPerH: 0.005, drainPctPerH: 0 },
    high: { selfPctPerH: 0.01, drainPctPerH: 0 },
  },
  multiplier: 10,
  factor: 2,
  connected: true,
  used: 1,
  observed: { days: 10, equivalentH: 240 },
  locale: 'en',
  written: (date) => `on ${date}`,
};
const OWN = battery('flooded-antimony', 40);
const READ: JudgedReading = {
  date: '2026-05-05',
  volts: 12.345,
  temperatureC: 20,
  stateOfChargePct: 70,
  spreadPct: 6,
  usable: true,
  index: 10,
  inRest: true,
  sound: true,
  cellShort: false,
  shutOff: false,
};

const said = (over: Partial<Found>, own = OWN) => suggestion(own, [], [], { ...FOUND, ...over });

// 1.2 − 0.12 = 1.08 % a day of 40 Ah is 0.432 Ah, over 24 h 18 mA. Over thirty days 36 % against 7.2 %.
test('a loss too fast with the lead on is a drain, with the lead off a failing cell', () => {
  expect(said({})).toBe(
    'It loses 36 % a month, where at most 7 % a month was reckoned with: with the leads on that is a key-off drain of about 18 mA. Measure it in series at the negative lead; if it is small, a cell is failing.',
  );
  expect(said({ connected: false })).toBe(
    'It loses 36 % a month, where at most 7 % a month was reckoned with, though nothing is connected: a cell is failing, or a lead was left on (a drain of about 18 mA would do it). Load-test it before the machine is relied on.',
  );
  expect(said({}, { ...OWN, health: exactly(0.5) })).toMatch(/ about 9 mA\./);
});

test('it is too fast only where a sigma less is still beyond the fastest', () => {
  expect(said({ multiplier: 4 })).toBeUndefined();
  expect(said({ multiplier: 4.01 })).toMatch(/^It loses 14 % a month/);
  expect(said({ factor: 5 })).toBeUndefined();
  expect(said({ factor: 4.99 })).toMatch(/^It loses 36 %/);
});

test('a warm spell is held against what the fastest loss would be in that warmth', () => {
  // Twice the hours at 20 °C: 0.24 % expected, 0.48 % at the fastest, 2.4 % seen; 2.16 % of 40 Ah a day is 36 mA.
  expect(said({ observed: { days: 10, equivalentH: 480 } })).toMatch(/^It loses 72 % .* at most 14 % .* about 36 mA\./);
});

test('the known drain counts in what is expected, and in what is told as a drain', () => {
  // 0.01 %/h more: 0.36 % a day expected and 0.48 % at the fastest; 3.6 % seen, of which 0.12 % its own: 3.48 % is 58 mA.
  const rates = {
    ...FOUND.rates,
    expected: { selfPctPerH: 0.005, drainPctPerH: 0.01 },
    high: { selfPctPerH: 0.01, drainPctPerH: 0.01 },
  };
  expect(said({ rates })).toMatch(
    /^It loses all of its charge within about 28 days, where at most 14 % a month .* about 58 mA\./,
  );
});

test('nothing is said where no reading spoke of the rate, or none spans a day', () => {
  expect(said({ used: 0 })).toBeUndefined();
  expect(said({ observed: { days: 0, equivalentH: 0 } })).toBeUndefined();
});

test('a cell short goes before all else', () => {
  const charged = [{ index: 9, toPct: 100 }];
  expect(suggestion(OWN, [READ, { ...READ, usable: false, cellShort: true }], charged, FOUND)).toBe(
    'on 2026-05-05: 12.35 V is about one cell (2.1 V) short of a charged battery: a cell may be dead, or the battery is quite empty. Charge it, rest it 8 h and read again; if it comes back to the same, replace it.',
  );
});

const SULPHATED =
  'It read 70 % within 7 days of a full charge: the plates no longer take the charge (sulphated), or the charge was not finished. Charge it to the end, rest it 8 h and read again.';
const calm = { ...FOUND, multiplier: 1 };
const after = (reading: Partial<JudgedReading>, charge: Partial<{ index: number; toPct: number }> = {}, own = OWN) =>
  suggestion(own, [{ ...READ, ...reading }], [{ index: 9, toPct: 100, ...charge }], calm);

test.each<[string, ReturnType<typeof after>, string | undefined]>([
  ['a day after it', after({}), SULPHATED],
  ['seven days after it', after({}, { index: 3 }), SULPHATED],
  ['eight days after it', after({}, { index: 2 }), undefined],
  ['on the same day', after({}, { index: 10 }), undefined],
  ['before it', after({}, { index: 11 }), undefined],
  ['after one to 95 %', after({}, { toPct: 95 }), SULPHATED],
  ['after one to 94 %', after({}, { toPct: 94 }), undefined],
  ['that may be 85 %', after({ spreadPct: 15 }), undefined],
  ['that may be just less', after({ spreadPct: 14.9 }), SULPHATED],
  ['that is not used', after({ usable: false }), undefined],
  ['of lithium', after({}, {}, battery('lifepo4', 40)), undefined],
])('a low reading soon after a full charge speaks of the plates: %s', (_, found, expected) => {
  expect(found).toBe(expected);
});
