/** The questions of the form, printed when the page is built. */
import { CHEMISTRY_NAMES, DRIVE_CHEMISTRIES, KINDS } from '../../content/kinds.ts';
import { preset } from '../../content/presets.ts';
import { WORDS } from '../../site/words.ts';
import { STORE_NAMES } from './drafts.ts';

type Option = readonly [value: string, text: string];

const UNKNOWN: Option = ['', 'I don’t know'];

const CHEMISTRY_TEXTS: Record<(typeof CHEMISTRY_NAMES)[number], string> = {
  flooded: 'Flooded, with caps to fill',
  'flooded-antimony': 'Flooded, antimony plates',
  'flooded-calcium': 'Flooded, calcium, sealed',
  agm: 'AGM',
  gel: 'Gel',
  lifepo4: 'Lithium iron phosphate',
};

/** Where the name of a kind alone leaves open which one a machine is. */
const KIND_TEXTS: Partial<Record<(typeof KINDS)[number], string>> = {
  tractor: 'Tractor or ride-on mower',
  mower: 'Mower, walked behind',
};

const DRIVE_TEXTS: Record<(typeof DRIVE_CHEMISTRIES)[number], string> = {
  'lithium-ion': 'Lithium-ion',
  'lead-acid': 'Lead–acid',
};

const STORE_TEXTS: Record<string, string> = {
  ...STORE_NAMES,
  open: 'Outdoors, under a cover',
  'thin-metal-shed': 'Shed of sheet metal',
  'timber-shed': 'Shed of timber',
  'slab-garage': 'Garage of timber or metal, on a slab',
  masonry: 'Garage of brick or block',
  'attached-garage': 'Garage built onto the house',
  heated: 'Kept above freezing by a heater',
  dehumidified: 'Kept dry by a dehumidifier',
};

export const FORM = {
  questions: 'Your machine',
  add: 'Add a machine',
  machine: 'The machine',
  name: 'What do you call it?',
  kind: 'What is it?',
  kinds: KINDS.map((k): Option => [k, KIND_TEXTS[k] ?? WORDS.kinds[k]]),
  engine: 'What engine has it?',
  engines: [
    UNKNOWN,
    ['four-stroke', 'Four-stroke: oil of its own, changed'],
    ['premix', 'Two-stroke: oil mixed into the petrol'],
    ['injected', 'Two-stroke: oil from a tank of its own'],
    ['electric', 'Electric'],
    ['diesel', 'Diesel'],
  ] as Option[],
  cooling: 'Cooled by',
  coolings: [
    UNKNOWN,
    ['air', 'Air'],
    ['oil', 'Oil'],
    ['liquid', 'Liquid, with a radiator'],
    ['none', 'Nothing: electric'],
  ] as Option[],
  coolant: 'Coolant tested, freezes at',
  coolantHint:
    'The freezing point that a refractometer or float tester showed, such as −34. Leave it open if nobody tested it.',
  liquidKinds: KINDS.filter((k) => preset('cooling.kind', k).value === 'liquid'),
  salt: 'Is it used on salted roads?',
  salts: [UNKNOWN, ['false', 'No'], ['true', 'Yes']] as Option[],
  place: 'Where it rests',
  station: 'Nearest weather station',
  stationHint:
    'Type a town near you, or latitude and longitude such as 52.4, -113.8. The search is done on this device.',
  here: 'Take where I am',
  stations: 'Stations found',
  store: 'What does it stand in?',
  stores: Object.keys(STORE_NAMES).map((id): Option => [id, STORE_TEXTS[id]!]),
  power: 'Is there a socket?',
  powers: [
    ['false', 'No'],
    ['true', 'Yes'],
  ] as Option[],
  season: 'The season',
  lastUse: 'Last day of use',
  firstUse: 'First day of use after the rest',
  seasonHint: 'Leave a day open to have it proposed from the climate.',
  nextRest: 'Plan the next rest',
  battery: 'Battery',
  chemistry: 'What kind of battery?',
  chemistries: [
    UNKNOWN,
    ...CHEMISTRY_NAMES.filter((n) => n !== 'flooded-antimony').map((n): Option => [n, CHEMISTRY_TEXTS[n]]),
    ['none', 'It has none'],
  ] as Option[],
  beside: 'Here the small 12 V one of an electric machine, if it has one; its drive battery is asked for below.',
  capacity: 'Capacity on its label',
  capacityHint: 'In Ah. The cold-cranking figure in A is another one.',
  batteryOut: 'Can you take the battery out yourself?',
  batteryOuts: [UNKNOWN, ['true', 'Yes'], ['false', 'No, it stays in the machine']] as Option[],
  charger: 'Your charger gives',
  chargerHint: 'In A. Leave it open if you have none.',
  keeper: 'It may stay connected for months (a maintainer)',
  lithium: 'It has a setting for lithium iron phosphate',
  room: 'I can carry the battery into the house',
  fuel: 'Fuel',
  delivery: 'How does fuel reach the engine?',
  deliveries: [UNKNOWN, ['carburettor', 'Carburettor'], ['injection', 'Injection']] as Option[],
  drive: 'What kind of drive battery?',
  drives: [UNKNOWN, ...DRIVE_CHEMISTRIES.map((n): Option => [n, DRIVE_TEXTS[n]])],
  driveOut: 'Does it come out?',
  driveOuts: [UNKNOWN, ['true', 'Yes'], ['false', 'No, it is built in']] as Option[],
  tank: 'Tank holds',
  blend: 'What the pump says',
  blends: [
    UNKNOWN,
    ['E0', 'E0, no ethanol'],
    ['E5', 'E5'],
    ['E10', 'E10'],
    ['E15', 'E15'],
    ['E20', 'E20'],
    ['E85', 'E85'],
  ] as Option[],
  dose: 'Fuel stabiliser at hand',
  doseHint:
    'Its dose from the label, for one litre or gallon: 5 mL for 1 L is 5, 2 fl oz for 5 gal is 2 divided by 5. Leave it open if you have none.',
  log: 'Done and measured',
  logHint: 'Over the season: the plan goes by it.',
  logKind: 'What was done?',
  logKinds: [
    ['lay-up', 'Laid up: all of the lay-up sheet'],
    ['readings', 'Battery read'],
    ['charged', 'Battery charged full'],
    ['look-in', 'Looked in: all of a look-in'],
    ['start-up', 'Started up: all of the start-up sheet'],
  ] as Option[],
  logDate: 'When?',
  voltage: 'Voltage, nothing switched on',
  temperature: 'Temperature of the battery',
  rested: 'Rested since charge or use',
  logWrite: 'Write it down',
  toPlan: 'See the plan',
  units: 'Units',
  unitNames: [
    ['metric', 'Metric: L, °C, bar or kPa'],
    ['us', 'US: gal, °F, psi'],
    ['imperial', 'Imperial: gal, °C, psi'],
  ] as Option[],
  remove: 'Remove this machine',
  load: 'I have content files',
  loadText:
    'Drop files, the whole folder or its zip here, or pick them. They are read on this device and sent nowhere.',
  pickFiles: 'Pick files',
  pickFolder: 'Pick a folder',
  back: 'Back to my own machines',
  sliderHint: 'While it moves, the days of work are a first draft; they settle when it is let go.',
  slider: 'Move the last day of use',
  take: 'Take it with you',
  calendar: 'Calendar file',
  calendarAll: 'Calendar of all machines',
  content: 'Content files (zip)',
  data: 'The plan as data',
  contentHint: 'Unpack them into a folder; the same plan can then be built from it.',
  views: 'Show',
  view: { plan: 'The plan', 'lay-up': WORDS.sheet.layUp, 'start-up': WORDS.sheet.startUp },
  print: 'Print this sheet',
  noScript: 'The planner needs JavaScript: it works everything out in this page, on this device.',
} as const;
