import type { Method } from './method.ts';

export const BATTERY_METHODS: readonly Method[] = [
  {
    key: 'battery.self-discharge',
    title: 'loss of the battery',
    equation: 'dS/dt = −[ r20·2^((T − 20)/θ) + 100·I/(C·h) ], hour by hour; times the multiplier from readings',
    symbols: [
      'S: state of charge, %',
      'r20: self-discharge at 20 °C, %/h',
      'θ: doubling step, K',
      'I: key-off drain, A',
      'C: rated capacity, Ah',
      'h: health, 1',
    ],
    sources: [
      'flooded antimony: daily rates of TM 9-6140-200-14 (1998)',
      'flooded calcium: intervals of TM 5-684',
      'ranges from low to high: common practice',
    ],
    weaknesses: [
      'An old cell can lose several times the table’s rate: the reminder is set by the high rate, and readings correct it.',
      'Key-off drains are from memory until they are measured.',
    ],
  },
  {
    key: 'battery.first-charge',
    title: 'first charge date',
    equation:
      'first day on which S of the high-loss path is at or under the threshold, then the latest trip on or before it',
    symbols: ['S: %', 'threshold: %'],
    sources: ['threshold 75 %: SG 1.225 in TM 5-3820-256-24-4; 12.4 V in TM 5-3805-262-20'],
    weaknesses: [
      'Meant to be early rather than late.',
      'What is due in the last fortnight, and goes no more than 5 % under the threshold until the first use, is left to the charge at start-up (common practice).',
      'A battery on a maintainer is taken as full until a reading shows it at the threshold or surely under 85 %; from then on it is reckoned without one.',
    ],
  },
  {
    key: 'battery.charge',
    title: 'charge to put back',
    equation: 'Ah = C·h·(target − S)/100/η; hours = Ah/min(charger, C/10; lithium C/2) + absorption',
    symbols: ['C: Ah', 'η: charge efficiency, 1', 'charger: A', 'absorption: h'],
    sources: [
      'efficiency 0.85 for lead–acid, a tenth of the capacity as its current and half of it for lithium iron phosphate: common practice',
    ],
    weaknesses: ['A sulphated battery takes longer, or does not come back.'],
  },
  {
    key: 'battery.freezing',
    title: 'freezing margin',
    equation:
      'SG = SG_empty + (SG_full − SG_empty)·S/100 → mass fraction by density → freezing point; margin = coldest to be reckoned with − that',
    symbols: ['SG: specific gravity, 1', 'mass fraction of acid, 1', 'temperatures, °C', 'margin, K'],
    sources: [
      'CRC Handbook of Chemistry and Physics, 102nd edition (2021), concentrative properties, fitted',
      'density of sulphuric acid: NCAR CARMA, sulfate_utils',
    ],
    valid: 'Mass fraction up to 0.34; beyond it: below −50 °C.',
    weaknesses: ['Acid that has layered is weaker at the top and freezes sooner.'],
  },
  {
    key: 'battery.voltage',
    title: 'state of charge from a reading',
    equation: 'S from the table of resting voltages, linear between its points, at the battery’s temperature',
    symbols: ['open-circuit voltage, V', 'S: %'],
    sources: ['tables by chemistry as named with each battery; rest of 3 h, better 8 h: TM 9-6115-730-24'],
    error: '± 4 to 10 % for lead–acid; ± 20 % for lithium iron phosphate.',
    weaknesses: ['A battery off the charger reads high until it has rested.'],
  },
  {
    key: 'battery.calibration',
    title: 'what readings teach',
    equation: 'multiplier by least squares over consecutive readings between charges, with a log-normal prior',
    symbols: ['multiplier: 1', 'uncertainty: factor'],
    sources: ['least squares with a prior; the prior’s width is common practice'],
    weaknesses: ['One reading moves it, five decide it.'],
  },
  {
    key: 'battery.trips',
    title: 'charger trips',
    equation: 'trips at the latest feasible day; everyone present is charged; then hours fitted to chargers',
    symbols: ['dates', 'hours, h'],
    sources: ['interval stabbing: latest feasible point first is optimal'],
    weaknesses: ['A trip is reckoned whole, whatever else is done on it.'],
  },
  {
    key: 'drive-battery.recharge',
    title: 'charge of a drive battery in the rest',
    equation: 'day = last use + 30 d·(S0 − S1)/loss',
    symbols: ['S0: state of charge it is left at, %', 'S1: charged again at, %', 'loss: in 30 days, %'],
    sources: [
      'lithium-ion 1 to 6 % a month with its electronics, lead–acid 2 to 15 %: common practice',
      'left at 40 to 60 % and charged again at a third (lithium-ion), left full and charged again at 75 % (lead–acid): common practice',
    ],
    error: 'The loss is known within a factor of three.',
    weaknesses: [
      'A plain sum: no temperature, age or electronics of the very battery is in it.',
      'It says when to look, not when to charge: the display of the battery decides, and the maker’s manual goes before both.',
    ],
  },
];
