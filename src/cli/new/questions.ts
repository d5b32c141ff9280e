/** What `npm run new` asks about a machine, and before the first one about the household and a place. */
import { CHEMISTRY_NAMES, DRIVE_CHEMISTRIES, KINDS } from '../../content/kinds.ts';
import { ENCLOSURES } from '../../planner/storage/index.ts';

export interface Question {
  /** The option that answers it beforehand. */
  key: string;
  /** The field that the answer is held against. */
  path: readonly (string | number)[];
  text: string;
  needed?: boolean;
  /** Taken where the answer is empty. */
  otherwise?: string;
  /** The answer as the field has it, where that is no text. */
  read?: (answer: string) => unknown;
  /** "none" is an answer. */
  none?: boolean;
}

const UNITS = /-US$/i.test(Intl.DateTimeFormat().resolvedOptions().locale) ? 'us' : 'metric';

export const HOUSEHOLD = [
  { key: 'household', path: ['name'], text: 'What shall the household be called?', otherwise: 'My garage' },
  { key: 'units', path: ['units'], text: 'Units: metric, us, imperial', otherwise: UNITS },
  {
    key: 'charger',
    path: ['chargers', 0, 'current'],
    text: 'Current of your battery charger, such as 0.8 A; or none',
    none: true,
    otherwise: 'none',
  },
] as const satisfies readonly Question[];

const yes = (answer: string) => ({ yes: true, no: false })[answer.toLowerCase()] ?? answer;

/** "46.8, -92.1" as a pair of numbers. */
export const pairOf = (answer: string) => answer.split(/[,;\s]+/).map(Number) as [number, number];

export const PLACE = [
  { key: 'place', path: ['name'], text: 'Where does it rest? A name for the place, such as Tin shed', needed: true },
  {
    key: 'enclosure',
    path: ['enclosure'],
    text: `What kind of place is it?\n${ENCLOSURES.map((e) => `  ${e.id}: ${e.description}`).join('\n')}`,
    needed: true,
  },
  {
    key: 'power',
    path: ['power'],
    text: 'Is there mains power for a charger? yes, no',
    read: yes,
    otherwise: 'no',
  },
  {
    key: 'near',
    path: ['climate', 'near'],
    text: 'Latitude and longitude, for the nearest weather station: 46.8, -92.1',
    needed: true,
    read: pairOf,
  },
] as const satisfies readonly Question[];

export const MACHINE = [
  { key: 'name', path: ['name'], text: 'What do you call the machine?', needed: true },
  { key: 'kind', path: ['kind'], text: `What is it? ${KINDS.join(', ')}`, needed: true },
  { key: 'place', path: ['place'], text: 'Where does it rest?', needed: true },
  { key: 'lastUse', path: ['lastUse'], text: 'Last day of use before the rest, such as 2026-10-25' },
  { key: 'firstUse', path: ['firstUse'], text: 'First day of use after it, such as 2027-04-10' },
  {
    key: 'chemistry',
    path: ['battery', 'chemistry'],
    text: `12 V battery: ${CHEMISTRY_NAMES.join(', ')}; or none`,
    none: true,
  },
  { key: 'capacity', path: ['battery', 'capacity'], text: 'Its capacity from the label, such as 12 Ah' },
  {
    key: 'delivery',
    path: ['fuel', 'delivery'],
    text: 'Fuel by carburettor or injection; or none: electric',
    none: true,
  },
  {
    key: 'drive',
    path: ['driveBattery', 'chemistry'],
    text: `The battery that drives it: ${DRIVE_CHEMISTRIES.join(', ')}`,
  },
  {
    key: 'comesOut',
    path: ['driveBattery', 'removable'],
    text: 'Does the drive battery come out without a workshop? yes, no',
    read: yes,
  },
  { key: 'tank', path: ['fuel', 'tank'], text: 'Room in the tank, such as 17 L or 4.5 US gal' },
  { key: 'blend', path: ['fuel', 'blend'], text: 'Ethanol in the fuel: E0, E5, E10, E15, E20, E85' },
  { key: 'cycle', path: ['engine', 'cycle'], text: 'Engine: four-stroke, two-stroke' },
  {
    key: 'twoStrokeOil',
    path: ['engine', 'twoStrokeOil'],
    text: 'Two-stroke oil: premix, mixed into the petrol; or injected from a tank of its own',
  },
  { key: 'tap', path: ['fuel', 'tap'], text: 'Fuel tap: vacuum, manual, none' },
  { key: 'cooling', path: ['cooling'], text: 'Cooled by air, oil, liquid, none' },
  { key: 'salted', path: ['roadSalt', 'exposed'], text: 'Is it used on salted roads? yes, no', read: yes },
] as const satisfies readonly Question[];
