/** Every English word of the site that does not come from the plan, in one place, ready to be translated. */
import type { FigureWords } from '../../figures/index.ts';
import type { BatteryCare, BatteryChemistry, CloseStage, MachineKind } from '../../planner/household.ts';
import type { AirPlan, EventCategory, PlanStep, Warning } from '../../planner/season-plan.ts';
import { useWord } from '../../planner/use-word.ts';
import { fieldText } from './english-fields.ts';

const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;

const FIGURES: FigureWords = {
  ring: {
    title: 'The year, machine by machine',
    description: (names) =>
      `A ring of twelve months, January at the top. From the outside in: ${names}. A broad band is rest, a thin line is use. The line inside is the outdoor temperature. The table below says the same.`,
    caption: 'Lay-up and start-up of each machine',
    head: ['Machine', 'Lay-up begins', 'At rest from', 'Start-up begins', 'First use'],
    today: 'Today',
    bandOf: (name) => name,
  },
  battery: {
    title: (name) => `${name}: battery over the rest`,
    description: (charges, threshold, margin) =>
      `State of charge between its slowest and fastest likely loss, with ${count(charges, 'charge', 'charges')} and the threshold of ${threshold}; below it, the gap between the coldest to be reckoned with and what the battery stands, ${margin} at the least. The table below says the same.`,
    caption: (name) => `${name}: state of charge and margin in the cold`,
    head: ['Date', 'Fast loss', 'Expected', 'Slow loss', 'Coldest reckoned with', 'Freezes at', 'Margin', 'What'],
    below: (temperature) => `below ${temperature}`,
    atLeast: (margin) => `at least ${margin}`,
    charge: 'Charge',
    threshold: (text) => `charge at ${text}`,
    stateOfCharge: 'State of charge, %',
    expected: 'expected',
    coldest: 'coldest reckoned with',
    margin: 'Coldest reckoned with, above freezing point',
    storage: { head: 'Storage limit', margin: 'Coldest reckoned with, above its storage limit' },
    today: 'Today',
    reading: 'Reading',
    event: { charge: 'Charge (state before it)', reading: 'Reading', unusable: 'not used' },
  },
  air: {
    title: (name) => `${name}: air of the store`,
    description: (low, high) =>
      `Monthly mean temperature and dew point of the air where the machine stands, from ${low} to ${high} at the extremes, with the hours on which its metal is wet or frosted. The table below says the same.`,
    caption: (name) => `${name}: air of the store by month; hours are the mean year, in brackets one year in ten`,
    head: ['Month', 'Temperature', 'Dew point', 'Humidity', 'Wet hours', 'Frost hours', 'Condensation hours'],
    temperature: 'Temperature',
    dewPoint: 'dew point',
    wet: 'wet',
    frost: 'frost',
    condensation: 'condensation',
    hours: 'Hours a month on cold metal',
    unsayable: 'cannot be told',
    unsayableShort: 'What is not drawn cannot be told from monthly figures.',
  },
  strip: {
    title: (name) => `${name}: what comes off, in order`,
    description: (assemblies, jobs) =>
      `Left to right what comes off: ${assemblies}. ${jobs && `A line for each job passes through the parts that must be out of its way: ${jobs}. `}It goes back together from right to left.`,
    off: 'off',
    on: 'back on',
    minutes: (minutes) => `${minutes} min`,
    behind: (names) => `behind ${names}`,
  },
};

const KINDS: Record<MachineKind, string> = {
  motorcycle: 'Motorcycle',
  scooter: 'Scooter',
  'snow-machine': 'Snow machine',
  quad: 'Quad',
  'side-by-side': 'Side-by-side',
  car: 'Car',
  tractor: 'Tractor',
  mower: 'Mower',
};

const CHEMISTRIES: Record<BatteryChemistry, string> = {
  'flooded-antimony': 'flooded, antimony',
  'flooded-calcium': 'flooded, calcium',
  agm: 'AGM',
  gel: 'gel',
  lifepo4: 'lithium iron phosphate',
};

const CARES: Record<BatteryCare, string> = {
  maintainer: 'On a maintainer, a look each month',
  'carry-in': 'Carried to the warm room',
  visits: 'Charged on visits',
};

const CATEGORIES: Record<EventCategory, string> = {
  charge: 'Charge',
  'look-in': 'Look in',
  'lay-up': 'Lay-up',
  winter: 'Winter work',
  order: 'Order',
  'start-up': 'Start-up',
  paperwork: 'Papers',
};

const STAGES: Record<Exclude<CloseStage, 'first-ride'>, string> = {
  refit: 'Put back what is off',
  fluids: 'Fluids',
  fuel: 'Fuel',
  battery: 'Battery',
  'plugs-out': 'Plugs and covers out',
  tyres: 'Running gear and fasteners',
  controls: 'Controls, brakes and lights',
  leaks: 'Look for leaks',
  'first-start': 'First start',
  paperwork: 'Papers',
};

const PHASES: Record<PlanStep['phase'], string> = {
  'lay-up': 'Lay-up',
  'look-in': 'Look-in',
  'start-up': 'Start-up',
  swap: 'Season swap',
  winter: 'Winter work',
};

const LEVELS: Record<Warning['level'], string> = { danger: 'Danger', warning: 'Warning', note: 'Note' };

export const site = 'Idle Season';
export const skip = 'Skip to the content';
export const menu = 'Pages';
export const nav = {
  front: 'Next',
  jobs: 'Jobs',
  agenda: 'Agenda',
  shopping: 'Shopping',
  plan: 'Plan',
  methods: 'Methods',
};
export const machines = 'Machines';
export const planMade = (date: string) => `Plan made for ${date}.`;
export const planFile = 'The plan as data';
export const privateNote = 'This site says where things are and when nobody is there: keep it to yourself.';
export const units = { h: 'h', min: 'min' };
export const kinds = KINDS;
export const chemistries = CHEMISTRIES;
export const cares = CARES;
export const categories = CATEGORIES;
export const stages = STAGES;
export const phases = PHASES;
export const levels = LEVELS;
export const figures = FIGURES;
export const asTable = 'The same as a table';
export const notes = (n: number) => count(n, 'note', 'notes');
export const why = 'Why';
export const whyOf = (what: string) => `Why: ${what}`;
export const none = 'None.';
export const inStock = 'at hand';
export const days = (n: number) => count(n, 'day', 'days');
export const derivation = {
  inputs: 'Goes in',
  quantity: 'Quantity',
  value: 'Value',
  result: 'Comes out',
  source: 'Source',
  caveat: 'What this does not know',
  method: 'How this is worked out and checked',
};
export const state = {
  inUse: 'in use',
  waiting: 'waiting to be laid up',
  layUp: 'being laid up',
  rest: 'at rest',
  startUp: 'being started up',
};
export const front = {
  title: 'What is next',
  today: 'Today is',
  nothing: 'Nothing is left to do in this plan.',
  ended: 'The list on this page ends here. Build the plan again, or see the agenda.',
  passed: 'Passed in the last two weeks',
  passedNote: 'Not ticked off in the plan. Done? Write it in the machine’s record, so that later dates learn from it.',
  all: 'All dates in the agenda',
  ring: 'The year',
  legend: {
    rest: 'rest',
    work: 'work on it',
    use: 'use',
    layUp: 'lay-up begins',
    firstUse: 'first use',
    temperature: (low: string, high: string) => `outdoors, ${low} to ${high}`,
    freezing: 'freezing',
    today: 'today',
  },
  machines: 'Machines',
  rests: (from: string, to: string) => `Rests ${from} to ${to}`,
  warnings: (n: number) => count(n, 'warning', 'warnings'),
  moreWarnings: (n: number) => `${n} more on the pages of the machines.`,
};
export const machine = {
  layUpSheet: 'Lay-up sheet',
  startUpSheet: 'Start-up sheet',
  calendar: 'Calendar file',
  warnings: 'Warnings',
  rest: {
    heading: 'While it rests',
    passed: 'passed, and not ticked',
    pastDays: (n: number) => `Days that are past: ${n}`,
    steps: (all: number, done: number) =>
      `Look-ins and winter work: ${all} ${all === 1 ? 'step' : 'steps'}, ${done} done`,
  },
  dates: {
    heading: 'Dates and amounts',
    lastUse: 'Last use',
    layUp: 'Laid up by',
    laidUp: 'Laid up since',
    firstFrost: 'Frost in the store from',
    startUp: 'Start-up begins',
    made: 'Made ready',
    firstUse: 'First use',
    proposed: 'Proposed from the climate',
    rest: (days: string) => `${days} of rest`,
  },
  numbers: {
    firstCharge: 'First charge by',
    charges: (n: number) => (n === 0 ? 'needed before start-up' : count(n, 'charge in all', 'charges in all')),
    noCharge: 'none',
    overdue: 'Charge overdue since',
    chargeOn: (when: string, date: string) => `charge it ${when}, ${date}`,
    dueBy: 'Charge due by',
    withoutDay: 'no day found for it: see the warnings',
    outOfReach: 'nothing can charge it there: see the warnings',
    atStartUp: 'by the charge at start-up',
    overdueAtStartUp: 'charge it now, before the first start',
    notKept: 'not kept full, by its readings: see the warnings',
    margins: {
      freezing: { above: 'Battery above freezing', beyond: 'Battery beyond freezing' },
      storage: { above: 'Battery above its storage limit', beyond: 'Battery beyond its storage limit' },
    },
    beyondIn: (month: string) => `at the worst, in ${month}`,
    marginIn: (month: string) => `at the least, in ${month}`,
    fuelAdd: 'Fuel to add',
    dose: (text: string) => `with ${text} of stabiliser`,
    fuelDrain: 'Fuel to drain',
    noFuel: 'none',
    leaveFuel: 'what is in the tank stays',
    orLess: 'or less',
    ifLaidUp: (text: string) => `${text}${text === '' ? '' : ', '}if the lay-up is done as planned`,
    fuelIn: 'Fuel in the tank',
    fuelDrained: 'Fuel drained',
    notTicked: 'the lay-up is not ticked',
    cans: (n: number) => count(n, 'can', 'cans'),
    coolant: 'Coolant holds to',
    coolantNeed: (text: string) => `needed: ${text}`,
    coolantUnknown: 'not known: test it',
    coolantUnwritten: {
      tested: 'tested: write down what it showed',
      strengthened: 'before it was strengthened: test it',
    },
    tyre: (position: string) => `Set tyres, ${position}`,
    tyreNormal: (text: string) => `in use ${text}`,
    wet: 'Wet and frost hours',
    wetOver: 'over the rest, mean year',
    corrosion: 'Corrosion',
    corrosionOf: 'class of the store, ISO 9223',
    layUpWork: 'Lay-up work',
    startUpWork: 'Start-up work',
    steps: (n: number) => count(n, 'step', 'steps'),
    rest: 'Rest',
    restFrom: (date: string) => `from ${date}`,
  },
  battery: {
    heading: 'Battery',
    small: 'The 12 V battery',
    fact: 'Fact',
    rated: 'Rated',
    care: 'Care',
    threshold: 'Charge at',
    lossFirstMonth: 'Loss in the first month',
    lossMadeGood: 'none, while the maintainer makes it good',
    lossRange: (expected: string, low: string, high: string) => `${expected}, between ${low} and ${high}`,
    kept: 'Kept',
    keptAt: { machine: 'in the machine', room: 'in the warm room' },
    connected: 'Leads',
    connectedAs: { true: 'connected', false: 'off' },
    stillOn: 'to come off; reckoned on until that is ticked',
    charges: 'Charges',
    chargeBy: (date: string) => `By ${date}`,
    putBack: (ampHours: string, most: string) => `put back ${ampHours} (at most ${most})`,
    chargeHours: (time: string) => `${time} on the charger`,
    chargeOverdue: (date: string, since: string) => `On ${date}, overdue since ${since}`,
    chargeLogged: 'Charged already? Write it down, and the days that follow are right.',
    withoutDay: (date: string) => `A charge is due by ${date}, and no day was found for it: see the warnings.`,
    outOfReach: 'Nothing can charge it where it rests',
    dueOutOfReach: (date: string) =>
      `A charge is due by ${date}, and nothing can charge it where it rests: see the warnings.`,
    atStartUp: (date: string) => `A charge is due by ${date}: it is the one at start-up.`,
    overdueAtStartUp: (date: string) =>
      `Overdue since ${date}: charge it full, at the latest at start-up, before the first start. Charged already? Write it down.`,
    between: (earliest: string, expected: string) => `latest ${earliest}; expected ${expected}`,
    latest: (earliest: string) => `latest ${earliest}; not expected before first use`,
    noCharges: 'No charge is needed before the one at start-up, at the fastest likely loss either.',
    noCharger: 'No charger serves it; the hours are those on one that would.',
    calibration: 'Learnt from readings',
    calibrationText: (multiplier: string, factor: string, n: number) =>
      n === 1
        ? `By one reading this battery loses about ${multiplier} times what the table says; one more, some weeks on, says whether it does.`
        : `This battery loses ${multiplier} times what the table says, within a factor of ${factor} (${n} readings).`,
    readings: 'Readings',
    readingHead: ['Date', 'Volts', 'At', 'State of charge', 'Used'],
    yes: 'yes',
    legend: {
      band: 'between slow and fast loss',
      expected: 'expected',
      threshold: 'threshold',
      charge: 'charge',
      reading: 'reading',
      freezes: 'battery freezes',
      storageLimit: 'lowest storage temperature',
      cold: 'coldest reckoned with',
      margin: 'margin',
    },
  },
  driveBattery: {
    heading: 'Drive battery',
    chemistry: 'Kind',
    chemistries: { 'lithium-ion': 'lithium-ion', 'lead-acid': 'lead–acid' },
    kept: 'Leave it at',
    rest: 'over the rest',
    about: (low: string, high: string) => `about half, ${low} to ${high}`,
    full: 'full',
    recharge: 'Charge again under',
    by: 'Could be down to it by',
    likely: 'More likely by',
    not: 'not before first use',
    lowest: 'May be kept down to',
    text: 'Its display at the look-ins decides, and its maker’s manual goes before all of this.',
  },
  air: {
    heading: 'Air of the store',
    reckoned: 'Coldest to be reckoned with',
    lowest: 'Coldest hour of a usual year',
    highest: 'Warmest to be reckoned with',
    which:
      'Damp and rust are reckoned from usual years; what frost could burst or kill from a rare cold beyond them, the coldest to be reckoned with.',
    typical: (
      factor: AirPlan['typicalFactor'],
      said: Pick<AirPlan, 'condensationSayable' | 'frostSayable'>,
      number: (value: number) => string,
    ) => {
      const parts = [
        `wet ${number(factor.wet)}`,
        ...(said.frostSayable ? [`frost ${number(factor.frost)}`] : []),
        ...(said.condensationSayable ? [`condensation ${number(factor.condensation)}`] : []),
      ];
      return factor.wet === 1
        ? 'Hours of the one hourly year that was given; other years differ.'
        : `Over half a year these hours typically differ from a real year's by a factor: ${parts.join(', ')}.`;
    },
    legend: {
      temperature: 'temperature',
      dewPoint: 'dew point',
      wet: 'wet',
      frost: 'frost',
      condensation: 'condensation',
    },
  },
  fuel: {
    heading: 'Fuel',
    choice: { fill: 'Fill', treat: 'Fill and stabilise', drain: 'Drain', leave: 'Leave what is in the tank' },
    chosen: {
      fill: 'Filled',
      treat: 'Filled and stabilised',
      drain: 'Drained',
      leave: 'Left as the last use left it',
    },
    notTicked: 'What was done with the petrol is not ticked',
    inTank: 'In the tank',
    add: 'Add',
    dose: 'Stabiliser',
    run: 'Then run for',
    drained: 'Drain',
    wasDrained: 'Drained',
    cans: 'Cans needed',
    tap: 'Tap',
    full: 'Tank at its warmest',
    fullAt: (share: string, warmest: string) => `${share} full at ${warmest}`,
    brimAt: (level: string, warmest: string) =>
      `full to the brim at ${warmest}: filled cold to more than ${level}, it would run over as it warms`,
    water: 'Water the fuel can hold',
    breathing: 'Most that breathing brings',
    hardly: 'less than half a millilitre',
    useBy: 'Fuel keeps until',
    drainedUseBy: 'Use the drained fuel by',
    drainedAwayBy: 'Take the drained fuel away by',
    atFirstUse: 'At first use',
    verdict: { use: 'Use it', mix: 'Mix with fresh fuel', dispose: 'Take it to the collection point' },
    limit: 'Kept at home',
    limitAt: (where: string) => `(${where})`,
    exceeded: 'Over the limit.',
  },
  coolant: {
    heading: 'Coolant',
    holds: 'Holds to',
    needs: 'Needed',
    strength: 'Strength now',
    target: 'Strength aimed at',
    replace: 'Drain and replace',
    swaps: 'Times',
    testBy: 'Test by',
    changeBy: 'Strengthen by',
    now: 'now: its day is past',
    ageDue: 'Change by age',
    unknown: 'not known',
  },
  tyres: {
    heading: 'Tyres',
    head: ['Tyre', 'Set', 'In use', 'Expect at start-up', 'Stands on it'],
    stands: { true: 'yes', false: 'off the ground' },
    move: (n: number) => `move every ${count(n, 'month', 'months')}`,
    lookIn: 'At a look-in',
    lookInHead: 'Store at',
    times: (position: string, n: number) => (n === 1 ? position : `${position} × ${n}`),
  },
  protection: {
    heading: 'Protection',
    class: 'Class of the store',
    steel: 'Bare steel loses',
    zinc: 'Zinc loses',
    perYear: (text: string) => `${text} a year`,
    uncertainty: (low: string, high: string) => `The true loss lies between ${low} and ${high} times this.`,
    desiccant: 'Desiccant for a closed bag',
    desiccantUnits: (most: string, din: string, mil: string) =>
      `${most} units (${din} by DIN 55474, ${mil} by MIL-STD-2073: the larger number is the safe one).`,
    humidity: 'Dehumidified space',
    humidityAt: (low: string, high: string) => `hold ${low} to ${high} % relative humidity`,
    why: 'this protection',
  },
  services: { heading: 'Due by date, distance or hours' },
  assumptions: {
    heading: 'Assumed, not known',
    first: (field: string) => `Measure this first: ${field}`,
    firstBrings: (date: string) =>
      `No charge falls due as it is taken; over the range it could have, one could fall due by ${date}.`,
    firstText: (days: string) => `Over the range it could have, the first charge moves by ${days}.`,
    what: fieldText,
    values: { true: 'yes', false: 'no' } as Readonly<Record<string, string>>,
    inFile: 'In a content file:',
    textForm: 'What the form does not ask can be written into the content files that this page gives you.',
    taken: (value: string) => `taken as ${value}`,
    could: (values: string) => `could be ${values}`,
    moves: (what: string) => `moves ${what}`,
    brings: (date: string) => `could bring a charge by ${date}`,
    charge: (days: string) => `the first charge by ${days}`,
    margin: (range: string) => `the freezing margin by ${range}`,
    range: (low: string, high: string) => `${low} to ${high}`,
    text: 'Each is a default with a range; the top one is worth a measurement before all others.',
    more: (n: number) => `${n} more that move less`,
    none: 'Nothing: every value is given.',
    nothingMoves: 'None of these moves the first charge.',
    nothingBrings: 'No charge falls due while it rests, and none of these brings one.',
    noBattery: 'It has no 12 V battery, so none of these moves a charge.',
  },
  whatIf: {
    heading: 'Going on for longer',
    until: (days: string, date: string) => `${days} more, until ${date}`,
    coldest: (text: string) => `Usual low outdoors until then: ${text}.`,
    missed: 'Missed',
    misfit: (text: string) => `${text} of work no longer fit.`,
    nothing: 'Nothing is missed.',
  },
  now: {
    heading: 'Open and off now',
    off: 'Off',
    open: 'Left changed by the lay-up',
    where: (where: string) => `lies: ${where}`,
    since: (date: string) => `since ${date}`,
    unknown: 'where it lies is not written down',
    nothing: 'Nothing is off.',
    closes: 'closed by',
    head: ['What', 'State', 'Closed by'],
    critical: 'safety',
  },
  notes: 'Notes',
  paperwork: { heading: 'Papers', paused: 'paused over the rest' },
};
export const sheet = {
  layUp: 'Lay-up sheet',
  startUp: 'Start-up sheet',
  season: (name: string) => `Season ${name}`,
  pageOf: ['page', 'of'],
  lay: 'Lay these out first',
  tools: 'Tools',
  parts: 'Parts and supplies',
  open: (n: number) => `Left changed by the lay-up, ${count(n, 'thing', 'things')} to put right below:`,
  mind: 'Mind:',
  stops: (kind: MachineKind) => `Do not ${useWord(kind)}:`,
  /** Heading of what is done on the day of first use. */
  firstRide: (kind: MachineKind) => `First ${useWord(kind)}`,
  stopsAll: (kind: MachineKind) =>
    `Steps marked Safety are initialled. One that stops the ${useWord(kind)} keeps the machine in until it is put right.`,
  stopsPassed: (kind: MachineKind) => `Every check that stops the ${useWord(kind)} is passed and initialled:`,
  steps: 'Steps',
  allSteps: 'In this order',
  withoutDay: (by: string | undefined) => `Without a day yet${by === undefined ? '' : `: to be done by ${by}`}`,
  initials: 'initials',
  manualSays: (unit: string) => `${unit} by manual or placard`,
  critical: 'Safety',
  reading: 'reading',
  torque: 'Torque',
  torqueHead: ['Fastener', 'How many', 'Head', 'N·m', 'lbf·ft', 'Thread', 'Note'],
  condition: { dry: 'dry', lubricated: 'lubricated', unstated: 'not stated' },
  lubricated:
    'A lubricated thread needs less torque for the same tension. Take the figure as it is printed here, with the thread as it says.',
  noFigure: 'none published',
  notes: 'Notes and readings',
  wait: (text: string) => `then wait ${text}`,
  signed: 'Date and signature',
  minutes: (text: string) => `about ${text}`,
  done: 'done',
  print: 'Print this sheet from the browser’s menu. A4 and Letter both fit.',
  back: (name: string) => `Back to ${name}`,
  manual: 'The service manual of the machine, local codes and licensed practice come before this sheet.',
  needs: {
    dryDay: (warm: string) => `dry day above ${warm}`,
    warmEngine: 'warm engine',
    stand: 'stand',
    charger: 'charger',
    bench: 'bench',
    power: 'power',
  },
  torqueOf: (n: number, what: string, head: string) => `${n} × ${what} (${head})`,
  date: 'planned for',
};
export const jobs = {
  title: 'Winter jobs',
  lead: 'What comes off once for which jobs, and how it goes back.',
  none: 'No winter jobs are planned.',
  minutes: (bundled: string, separate: string, saved: string) =>
    `${bundled} in one strip-down; ${separate} one job at a time; ${saved} saved.`,
  order: 'Off and back on',
  off: 'Off, in this order',
  on: 'Back on, in this order',
  for: (jobs: string) => `for ${jobs}`,
  forAll: 'for all jobs',
  parts: 'Parts',
  orderBy: (date: string) => `order by ${date}`,
  jobsHead: ['Job', 'Work', 'Must be off'],
  jobs: 'Jobs',
  now: 'Off now',
  tools: 'Tools',
  torque: 'Torque',
  lead_: (days: string) => `${days} to arrive`,
  pictureRegion: (name: string) => `${name}: strip-down, scrolls sideways`,
  cautions: 'Cautions',
};
export const agenda = {
  title: 'Agenda',
  sessions: 'Sessions',
  earlier: 'Earlier',
  steps: (n: number) => count(n, 'step', 'steps'),
  overdue: (date: string) => `overdue since ${date}`,
  none: 'No sessions are planned.',
  misfits: 'Does not fit',
  misfitText: (time: string, date: string, steps: number) =>
    `${time} missing before ${date}: ${count(steps, 'step', 'steps')}`,
  trips: 'Charger trips',
  tripHead: ['Date', 'Battery', 'Charger', 'From', 'Hours'],
  noTrips: 'No charger trips are needed.',
  calendar: 'In your calendar',
  download: 'Download',
  downloadText: 'A file that stays as it is; import it into a calendar of its own.',
  subscribe: 'Subscribe',
  subscribeText: 'Follows the plan when it changes; works once this site is on an https address.',
  address: 'Address to copy',
  noAddress: 'Give the household a siteUrl to have an address that calendars can follow.',
  files: 'One file for all, or one for each machine:',
  all: 'All machines',
  alarms: 'What the alarms do',
  alarmsText: [
    'Each reminder is an all-day event with one alarm, at nine in the morning of the day before.',
    'Many calendars drop the alarms of a calendar they subscribe to: switch alarms on there, or download.',
    'A reminder that moves keeps its identity, so a subscribed calendar moves it and makes no second one.',
    'A step that is done leaves the file.',
  ],
  replace: 'Replacing an earlier import',
  replaceText: [
    'Some calendars take a file that is imported twice as new events. So import into a calendar made for this alone.',
    'When the plan has changed: delete that calendar, make it anew, import the new file. Nothing else of yours is touched.',
    'With a subscription there is nothing to do.',
  ],
  rounds: {
    title: 'Rounds of charging',
    lead: 'Week by week, as the trips of the agenda have it. A link below leads to one week, and then that week alone is printed.',
    week: (from: string, to: string) => `${from} to ${to}`,
    charges: (n: number) => count(n, 'charge', 'charges'),
    head: ['Done', 'Day', 'Machine', 'Stands', 'Charger', 'From', 'For', 'About', 'Volts before'],
    noRoom: 'none has room',
    noCharger: 'none serves it',
    inTurn: 'in turn',
  },
  months: 'Month sheets for the shed wall',
  monthsTitle: 'Months',
  dates: 'All dates',
  hours: (from: string, hours: string) => `${from}, ${hours}`,
  more: (n: number) => `and ${n} more`,
  from: (date: string) => `From ${date}`,
};
export const shopping = {
  title: 'Shopping',
  none: 'Nothing is to be bought.',
  order: 'To order',
  gone: 'Needed by a day gone by',
  lead: 'Summed over all machines, by the day it has to be ordered.',
  head: ['What', 'How much', 'Order by', 'Needed by', 'For'],
  noDate: '—',
  onTheDay: 'bought on the day',
  have: 'At hand, to be checked',
  late: 'passed',
};
export const methods = {
  title: 'Methods',
  lead: 'Each calculation: its equation, units, source, the values it is checked against, and what it does not know.',
  equation: 'Equation',
  symbols: 'Symbols and units',
  sources: 'Sources',
  valid: 'Valid',
  error: 'Error',
  weak: 'Known weaknesses',
  checks: 'Checked against',
  checkHead: ['Case', 'Published', 'Ours', 'Source', 'Standing'],
  passed: (n: number, of: number) => `${n} of ${of} published values met`,
  climates: 'Climate figures',
  met: 'met',
  missed: 'not met',
  station: (name: string, km: string, height: string, far: boolean) =>
    ` Station ${name}, ${km} km away, ${height} m higher or lower${far ? ': too far to trust without a look' : ''}.`,
  towns:
    'Towns by which the planner finds a station: GeoNames (geonames.org), Creative Commons Attribution 3.0; a selection, to a tenth of a degree.',
  contents: 'Calculations',
};
export const notFound = {
  title: 'No such page',
  text: 'This address holds nothing. The machine may have been renamed.',
  back: 'What is next',
};
