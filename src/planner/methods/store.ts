import type { Method } from './method.ts';

/** Weather, the air of the store, and what it does to metal. */
export const STORE_METHODS: readonly Method[] = [
  {
    key: 'climate.daily',
    title: 'weather of each day',
    equation:
      'daily curve whose mean over each month is the normal: derivative of the cubic spline through the running sum',
    symbols: ['normals: monthly means, °C and hPa', 'result: daily means, °C and hPa'],
    sources: [
      'periodic quadratic histospline, the alternative to Rymes and Myers, Solar Energy 71 (2001) 225–231',
      'within the day: ASHRAE Handbook Fundamentals 2021, chapter 14, table 6',
    ],
    error: 'Month means come back to rounding.',
    weaknesses: ['A normal year has no thaw and no cold spell; the drawn years below add them.'],
  },
  {
    key: 'climate.drawn',
    title: 'drawn years of weather',
    equation:
      'Ts = normals + σ·X; T = Ts + A·a·(0.536 − f) + 1.3·n1; e = min(q·es(T*), 0.98·es(T)); X, W, n1, n2 autoregressive',
    symbols: [
      'σ: spread of daily means, K',
      'A: daily range, K',
      'f: share of the daily range, 1',
      'e: vapour pressure, Pa',
    ],
    sources: ['fitted to eleven real hourly years at ten places, Fairbanks to the Po plain (no outside source)'],
    error: 'Hours wet, frosted or under condensation are typically within a factor of 1.6 of real years.',
    weaknesses: [
      'Condensation in a thin shed is not reproduced from monthly figures (0.1 to 1.1 of the real hours): it is not printed.',
      'The forms were chosen with all eleven years in view, so the figures on them flatter.',
      'An hourly weather file replaces all of this and is better.',
    ],
  },
  {
    key: 'climate.design-low',
    title: 'coldest to be reckoned with',
    equation:
      'lowest = record low, else t − d, d = 8.4 + 0.46·R + 0.87·L + 0.21·φ − 0.52·|t + 10|, at least 4.8·σ of a warm month, at most k·σ, k = max(4.8, d/σ of the coldest month); of a typical year t − min(d/2, k·σ), k = max(2.4, (d/2)/σ of the coldest month)',
    symbols: [
      't: mean daily minimum of the month, °C',
      'R: warmest less coldest month, at most 35 K',
      'L: mid-spring less mid-autumn month, at most 3.5 K',
      'φ: degrees from the equator',
      'σ: spread of daily means, K; under “at most”, that of the month’s colder end',
      'result: °C',
    ],
    sources: [
      'record low where it is given',
      'otherwise fitted, with a margin, to the lows that come back once in 50 years at 160 stations, and at 9 south of the North American plains: ASHRAE Handbook Fundamentals 2017, climatic design conditions',
      'months other than the coldest: hourly years of seven places (no outside source)',
    ],
    error:
      'On 157 stations left out of the fit: {4.6 K} colder than the published low on average, milder at one of eight, by {8.6 K} at worst. A known record low is better.',
    weaknesses: [
      'A hollow or a lake shore can be colder or milder than the station.',
      'Eastern Asia’s steady winters come out up to {15 K} too cold.',
    ],
  },
  {
    key: 'climate.season',
    title: 'proposed season',
    equation: 'road: nights cross +2 °C with a margin against frost in one year of ten; snow: daily mean crosses −2 °C',
    symbols: ['daily mean and minimum, °C'],
    sources: ['common practice'],
    error: 'A year may be three weeks early or late.',
    weaknesses: ['A proposal, used only where no dates are given.'],
  },
  {
    key: 'store.air',
    title: 'air of the store',
    equation: 'T’ = Te + (T − Te)·e^(−1 h/τ); Te = (1 − c)·T_out + c·T_house + gain; vapour likewise by air changes',
    symbols: ['τ: time constant of the building, h', 'c: share of the house, 1', 'T: °C'],
    sources: [
      'first-order response, exact exponential step',
      'time constants by building: common practice and measured cases',
    ],
    weaknesses: ['Sun on a roof, a door left open and a wet machine are not in it.'],
  },
  {
    key: 'store.wetness',
    title: 'wet, frost and condensation hours',
    equation:
      'condensation: vapour pressure > saturation at the metal; frost: the same over ice below 0 °C; wet: RH at the metal > 80 % above 0 °C',
    symbols: ['vapour pressure, Pa', 'metal follows the air with τm, h'],
    sources: [
      'Hyland and Wexler: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6',
      'time of wetness: ISO 9223:2012',
    ],
    valid:
      'Saturation over water is continued below 0 °C for supercooled water; humidity there is taken over water (WMO).',
    weaknesses: ['Counts carry the error of the drawn weather.'],
  },
  {
    key: 'corrosion.steel',
    title: 'loss of bare steel',
    equation: '1.77·P^0.52·exp(0.020·RH + f) + 0.102·S^0.62·exp(0.033·RH + 0.040·T)',
    symbols: [
      'P: sulphur dioxide, mg/(m² d)',
      'S: chloride, mg/(m² d)',
      'RH: %',
      'T: °C',
      'result: µm in the first year',
    ],
    sources: ['ISO 9223:2012, equation 1'],
    valid: 'T −17.1 to 28.7 °C, RH 34 to 93 %, P 0.7 to 150, S 0.4 to 760 mg/(m² d).',
    error: '−33 % to +50 % as the standard states.',
    weaknesses: [
      'Clean cold inland sites come out about three times too low.',
      'Made for open air: a closed store without rain is a continuation.',
    ],
  },
  {
    key: 'corrosion.zinc',
    title: 'loss of zinc',
    equation: '0.0129·P^0.44·exp(0.046·RH + f) + 0.0175·S^0.57·exp(0.008·RH + 0.085·T)',
    symbols: [
      'P: sulphur dioxide, mg/(m² d)',
      'S: chloride, mg/(m² d)',
      'RH: %',
      'T: °C',
      'result: µm in the first year',
    ],
    sources: ['ISO 9223:2012, equation 2'],
    error: '−33 % to +50 % as the standard states.',
    weaknesses: ['As for steel. Copper and aluminium are left out: their coefficients could not be verified.'],
  },
  {
    key: 'corrosion.protection',
    title: 'protection',
    equation:
      'the highest level that category, wet hours and idle time ask for; one more for salt that was not washed off',
    symbols: ['level: 1 to 5'],
    sources: ['TM 38-260; TB 55-1900-231-15; NAVEDTRA 14022', 'which level a category asks for: common practice'],
    weaknesses: ['The steps between levels are practice, not measurement.'],
  },
  {
    key: 'corrosion.desiccant-din',
    title: 'desiccant by DIN 55474',
    equation: 'n = (V·b + m·c + A·e·W·t)/a',
    symbols: ['V: m³', 'm: packing, kg', 'A: film, m²', 'W: vapour through the film, g/(m² d)', 't: d', 'n: units'],
    sources: ['DIN 55474; unit of DIN 55473'],
    weaknesses: [
      'The film’s figure is for 20 °C: at 38 °C polyethylene lets through five times as much, near 0 °C a quarter.',
    ],
  },
  {
    key: 'corrosion.desiccant-mil',
    title: 'desiccant by MIL-STD-2073',
    equation: 'U = C·A + ΣX·D',
    symbols: ['A: film, m²', 'D: packing, kg', 'U: units'],
    sources: ['MIL-STD-2073, method 50, formula I'],
    weaknesses: ['Does not know the length of the rest nor the film.'],
  },
];
