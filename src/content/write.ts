/** Writes content files as a person would: commented, in the order of the questions, only with what was answered. */
import type { BenchRecord } from '../planner/bench-record.ts';
import type { Answers } from './answers.ts';
import { chargerSettings } from './charger-settings.ts';
import type { ContentFile } from './files.ts';
import { CHEMISTRY_NAMES, DRIVE_CHEMISTRIES, KINDS } from './kinds.ts';
import { scalar } from './scalar.ts';
import { recordLists } from './write-record.ts';

/** Answers as content writes them: "17 L", "2026-10-25". What is left out is assumed by the plan and listed there. */
export interface MachineAnswers {
  name: string;
  kind: string;
  place: string;
  lastUse?: string | undefined;
  firstUse?: string | undefined;
  /** False where the machine has none. */
  battery?:
    | {
        chemistry?: string | undefined;
        capacity?: string | undefined;
        removable?: boolean | undefined;
        drain?: string | undefined;
      }
    | false
    | undefined;
  fuel?:
    | {
        delivery?: string | undefined;
        tank?: string | undefined;
        inTank?: string | undefined;
        blend?: string | undefined;
        tap?: string | undefined;
      }
    | false
    | undefined;
  /** Working cycle, and how a two-stroke is given its oil. */
  engine?: { cycle?: string | undefined; twoStrokeOil?: string | undefined } | undefined;
  driveBattery?: { chemistry?: string | undefined; removable?: boolean | undefined } | undefined;
  cooling?: string | undefined;
  /** Freezing point that a tester showed, of coolant: "-34 °C". */
  coolantFreezesAt?: string | undefined;
  /** Whether it is used on salted roads. */
  salted?: boolean | undefined;
  /** What was done and measured. */
  record?: BenchRecord | undefined;
}

const HEAD = (schema: string) => `# yaml-language-server: $schema=${schema}
#
# Quantities have their unit, dates stand in quotes. A line that is left out is assumed; the machine's page lists each
# assumption with the line that settles it. All fields: npm run fields.
`;

/**
 * A machine's file with a comment on each line.
 * @param answers - what is known
 * @param schema - where the editor finds the schema, from the file
 * @returns YAML that the reader takes
 */
export function writeMachine(answers: MachineAnswers, schema = '../../public/schemas/machine.schema.json'): string {
  const battery = answers.battery || {};
  const drive = answers.driveBattery ?? {};
  const fuel = answers.fuel || {};
  const lines = [
    field(0, 'name', answers.name),
    field(0, 'kind', answers.kind, KINDS.join(', ')),
    field(0, 'place', answers.place, 'a file in places/'),
    dated('lastUse', answers.lastUse, 'last day of use before the rest'),
    dated('firstUse', answers.firstUse, 'first day of use after it'),
    ...group('battery', answers.battery, [
      ['chemistry', battery.chemistry, CHEMISTRY_NAMES.join(', ')],
      ['capacity', battery.capacity, 'from the label; not the cold-cranking figure'],
      ['removable', battery.removable, 'comes out without much work'],
      ['drain', battery.drain, 'current with the key off, measured at the negative lead'],
    ]),
    ...group('fuel', answers.fuel, [
      ['delivery', fuel.delivery, 'carburettor, injection'],
      ['tank', fuel.tank, 'room in the tank'],
      ['inTank', fuel.inTank, 'on the last day of use'],
      ['blend', fuel.blend, 'E0, E5, E10, E15, E20, E85'],
      ['tap', fuel.tap, 'vacuum, manual, none'],
    ]),
    ...group('driveBattery', answers.driveBattery, [
      ['chemistry', drive.chemistry, DRIVE_CHEMISTRIES.join(', ')],
      ['removable', drive.removable, 'comes out without a workshop'],
    ]),
    ...group('engine', answers.engine, [
      ['cycle', answers.engine?.cycle, 'four-stroke, two-stroke, electric'],
      ['twoStrokeOil', answers.engine?.twoStrokeOil, 'premix, injected'],
    ]),
    ...(answers.coolantFreezesAt === undefined
      ? [field(0, 'cooling', answers.cooling, 'air, oil, liquid, none')]
      : group('cooling', answers, [
          ['kind', answers.cooling, 'air, oil, liquid, none'],
          ['freezesAt', answers.coolantFreezesAt, 'as the tester showed'],
        ])),
    ...group('roadSalt', {}, [['exposed', answers.salted, 'used on salted roads']]),
    ...(answers.record ? recordLists(answers.record) : []),
  ];
  return `${HEAD(schema)}\n${lines.filter((l) => l !== '').join('\n')}\n`;
}

/** A place as it is asked for: a station of the bundled library by its number, or the nearest to a point. */
export interface PlaceAnswers {
  name: string;
  enclosure: string;
  power: boolean;
  climate: { station: string } | { near: readonly [latitudeDeg: number, longitudeDeg: number] };
}

/**
 * A place's file.
 * @returns YAML that the reader takes
 */
export function writePlace(answers: PlaceAnswers, schema = '../../public/schemas/place.schema.json'): string {
  const climate =
    'near' in answers.climate
      ? `climate: { near: [${answers.climate.near.join(', ')}] }`
      : `climate: { station: ${JSON.stringify(answers.climate.station)} }`;
  return `${HEAD(schema)}
${[
  field(0, 'name', answers.name),
  field(0, 'enclosure', answers.enclosure, 'what stands between the machine and the weather'),
  `power: ${answers.power}`.padEnd(26).concat(' # a charger can stay connected'),
  climate.padEnd(26).concat(' # a station of the bundled library'),
].join('\n')}
`;
}

/** The household as it is asked for. */
export interface HouseholdAnswers {
  id: string;
  name: string;
  timeZone: string;
  locale: string;
  units: 'metric' | 'us' | 'imperial';
  country?: string | undefined;
  /** Current, whether it may stay connected, and whether it has a setting for lithium iron phosphate. */
  charger?: { current: string; maintainer: boolean; lithium?: boolean | undefined } | undefined;
  /** Dose on the label of the fuel stabiliser at hand: "4 mL/L". */
  stabiliserDose?: string | undefined;
  /** The battery can be carried into the house. */
  batteryRoom?: { name: string; temperature: string } | undefined;
  /** Instant of the last change, ISO 8601 in UTC; left out, the files' own times count. */
  revised?: string | undefined;
}

/**
 * The household's file.
 * @returns YAML that the reader takes
 */
export function writeHousehold(answers: HouseholdAnswers, schema = '../public/schemas/household.schema.json'): string {
  const { charger, stabiliserDose, batteryRoom } = answers;
  const lines = [
    field(0, 'id', answers.id, 'stays the same for ever: reminders are known by it'),
    field(0, 'name', answers.name),
    field(0, 'timeZone', answers.timeZone),
    field(0, 'locale', answers.locale, 'how dates and numbers are written'),
    field(0, 'units', answers.units, 'metric, us, imperial'),
    answers.country === undefined
      ? ''
      : `country: "${answers.country}"`.padEnd(26).concat(' # for the limits on petrol kept at home'),
    ...(charger
      ? [
          'chargers:',
          '  - id: charger',
          '    name: Charger',
          field(4, 'current', charger.current),
          `    chemistries: [${chargerSettings(charger).join(', ')}]`,
          `    maintainer: ${charger.maintainer}`.padEnd(26).concat(' # may stay connected for months'),
        ]
      : []),
    ...(stabiliserDose === undefined
      ? []
      : ['fuelCare:', field(2, 'stabiliserDose', stabiliserDose, 'from the label of the one at hand')]),
    ...(batteryRoom
      ? ['batteryRoom:', field(2, 'name', batteryRoom.name), field(2, 'temperature', batteryRoom.temperature)]
      : []),
    answers.revised === undefined
      ? ''
      : `revised: "${answers.revised}"`
          .padEnd(26)
          .concat(' # last change; delete it before you change these files by hand'),
  ];
  return `${HEAD(schema)}\n${lines.filter((l) => l !== '').join('\n')}\n`;
}

/** All answers as files of a content folder. */
export function filesOf(answers: Answers): ContentFile[] {
  return [
    { path: 'household.yaml', bytes: writeHousehold(answers.household) },
    ...answers.places.map((p) => ({ path: `places/${p.id}.yaml`, bytes: writePlace(p) })),
    ...answers.machines.map((m) => ({ path: `machines/${m.id}.yaml`, bytes: writeMachine(m) })),
  ];
}

type Row = readonly [string, string | boolean | undefined, string];

function group(name: string, given: object | false | undefined, rows: readonly Row[]): string[] {
  if (given === false) return [`${name}: none`];
  const lines = rows.map(([key, value, comment]) => field(2, key, value, comment)).filter((l) => l !== '');
  return lines.length > 0 ? [`${name}:`, ...lines] : [];
}

function dated(key: string, value: string | undefined, comment: string): string {
  if (value === undefined)
    return `# ${`${key}: "2026-10-25"`.padEnd(24)}  # ${comment}; left out, proposed from the climate`;
  return field(0, key, value, comment);
}

function field(indent: number, key: string, value: string | boolean | undefined, comment = ''): string {
  if (value === undefined) return '';
  const line = `${' '.repeat(indent)}${key}: ${typeof value === 'boolean' ? value : scalar(value)}`;
  return comment === '' ? line : `${line.padEnd(26)} # ${comment}`;
}
