/**
 * What no message may be told of: what is right and stands close to what is wrong. Machines as there are; common practice.
 * Then what is wrong and stands close to what is right, where no fault household has it.
 */
import { expect, test } from 'vitest';
import { readContent } from '../../src/content/read.ts';
import { household, readWith } from './helpers.ts';

const HEAD = 'name: One\nkind: motorcycle\nplace: tin-shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\n';

function told(machine: string, files: Record<string, string> = {}): string[] {
  return readWith({ ...files, 'machines/one.yaml': HEAD + machine }).problems.map(
    ({ field, what, fix }) => `${field}: ${what}. ${fix}`,
  );
}

const HOUSEHOLD = 'id: smallest\nname: The least that plans\ntimeZone: Europe/Oslo\nunits: metric\n';
const POWERED = { 'places/tin-shed.yaml': 'name: Shed\nenclosure: thin-metal-shed\npower: true\nclimate: valley\n' };
const MAINTAINED = {
  'household.yaml': `${HOUSEHOLD}chargers:\n  - { id: old, name: Old, current: 4 A, chemistries: [agm] }\n  - { id: bench, name: Bench, current: 1 A, chemistries: [agm], maintainer: true }\n`,
};
const ROOM = { 'household.yaml': `${HOUSEHOLD}batteryRoom: { name: Hall, temperature: 16 °C }\n` };

test.each([
  ['a machine without battery and without readings', 'battery: none\nreadings: []'],
  ['a battery with a maintainer where there is power', 'battery: { care: maintainer }', { ...POWERED, ...MAINTAINED }],
  ['a battery that is carried in', 'battery: { care: carry-in, removable: true, connected: false }', ROOM],
  ['a battery that is carried in, of which no more is said', 'battery: { care: carry-in }', ROOM],
  ['a battery that is visited, fixed and connected', 'battery: { care: visits, removable: false, connected: true }'],
  ['an electric machine with its drive battery', 'engine: { cycle: electric }\nfuel: none\ndriveBattery: {}'],
  ['a trailer: neither engine said nor fuel', 'fuel: none'],
  ['an engine of which the fuel is not said', 'engine: { cycle: two-stroke }'],
  [
    'a two-stroke with its oil in the tank',
    'engine: { cycle: two-stroke, twoStrokeOil: premix }\nfuel: { premix: true }',
  ],
  ['a two-stroke with its oil apart', 'engine: { cycle: two-stroke, twoStrokeOil: injected }\nfuel: { premix: false }'],
  ['oil in the tank of an engine of which no more is said', 'fuel: { premix: true }'],
  ['a four-stroke without oil in the tank', 'engine: { cycle: four-stroke }\nfuel: { premix: false }'],
  ['an engine with injection and no bowl', 'fuel: { delivery: injection, bowls: 0 }'],
  ['an engine with carburettors', 'fuel: { delivery: carburettor, bowls: 2 }\nengine: { cylinders: 2 }'],
  ['bowls of an engine whose cylinders are not said', 'fuel: { bowls: 4 }'],
  ['two taps joined by a tee', 'fuel: { tap: manual, taps: 2 }'],
  ['no tap', 'fuel: { tap: none }'],
  ['taps whose kind is not said', 'fuel: { taps: 2 }'],
  ['a two-stroke of which is said that it has no oil to change', 'engine: { cycle: two-stroke, oil: 0 L }'],
  [
    'a four-stroke with its oil',
    'engine: { cycle: four-stroke, oil: 3 L, cylinders: 1, oilFilter: true, idleFlow: 1 L/h }',
  ],
  ['an electric machine with no cylinder', 'engine: { cycle: electric, cylinders: 0, oil: 0 L, oilFilter: false }'],
  ['two-stroke oil of an engine whose cycle is not said', 'engine: { twoStrokeOil: injected }'],
  ['cooling in a word', 'cooling: oil'],
  ['cooling by air as a group of one line', 'cooling: { kind: air }'],
  ['coolant whose kind goes without saying', 'cooling: { strength: 50 %, volume: 2 L, drainable: 2 L }'],
  ['coolant that was tested', 'cooling: { kind: liquid, freezesAt: -34 °C, strength: unknown }'],
  ['a tyre as hard as its sidewall allows', 'tyres: [{ position: all, pressure: 250 kPa, sidewallMax: 250 kPa }]'],
  ['a front and a rear tyre', 'tyres: [{ position: front, pressure: 2 bar }, { position: rear, pressure: 2 bar }]'],
  ['brake fluid of mixed brakes', 'chassis: { brakes: mixed, brakeFluid: DOT4 }'],
  ['brake fluid of brakes that are not said', 'chassis: { brakeFluid: DOT4 }'],
  ['cable brakes', 'chassis: { brakes: cable }'],
  ['a track that is driven', 'chassis: { drive: track, track: true }'],
  ['a track drive of which no more is said', 'chassis: { drive: track }'],
  ['no track', 'chassis: { drive: chain, track: false }'],
  ['a model of next year', 'year: 2027'],
  [
    'a tyre of this year on a machine of next',
    'year: 2027\ntyres: [{ position: all, pressure: 2 bar, madeYear: 2026 }]',
  ],
  ['a tyre that lay in a shop', 'year: 2020\ntyres: [{ position: all, pressure: 2 bar, madeYear: 2015 }]'],
  ['a battery of this year', 'battery: { boughtYear: 2026 }'],
  ['a battery of forty years ago', 'battery: { boughtYear: 1986 }'],
  [
    'services of today, and of the year before the model year',
    'year: 2020\nservices: [{ id: a, what: A, every: { time: 1 years }, lastDone: { date: "2026-11-25" } }, { id: b, what: B, every: { time: 1 years }, lastDone: { date: "2019-01-01" } }]',
  ],
  [
    'a service at the reading of today',
    'odometer: 9000 km\nengineHours: 50 h\nservices: [{ id: a, what: A, every: { distance: 6000 km }, lastDone: { odometer: 9000 km, engineHours: 50 h } }]',
  ],
  ['fuel of fifteen years ago', 'fuel: { boughtOn: "2011-11-25" }'],
  ['coolant of fifteen years ago and more', 'cooling: { lastChanged: "2001-01-01" }'],
  [
    'papers that ran out, and such as hold for long',
    'paperwork: [{ id: a, what: A, date: "2006-11-25" }, { id: b, what: B, date: "2126-11-25" }]',
  ],
  [
    'what was written down today, and long ago',
    'readings: [{ date: "2026-11-25", voltage: 12.6 V, temperature: 4 °C, rested: 12 h }, { date: "2006-11-25", voltage: 12.6 V, temperature: 4 °C, rested: 12 h }]\nnotes: [{ date: "1966-11-25", text: A }]',
  ],
] as [string, string, Record<string, string>?][])('nothing is told of %s', (_, machine, files) => {
  expect(told(`${machine}\n`, files)).toEqual([]);
});

test.each([
  [
    'readings of a machine without battery',
    'battery: none\nreadings: [{ date: "2026-11-20", voltage: 12 V, temperature: 4 °C, rested: 12 h }]',
    'readings: ',
  ],
  [
    'a maintainer without power',
    'battery: { care: maintainer }',
    'battery.care: found maintainer at "tin-shed", which has no power',
    MAINTAINED,
  ],
  [
    'a maintainer that the household has not',
    'battery: { care: maintainer }',
    'battery.care: found maintainer, and no charger',
    POWERED,
  ],
  [
    'a battery carried in to nowhere',
    'battery: { care: carry-in }',
    'battery.care: found carry-in, and no batteryRoom',
  ],
  [
    'a battery carried in that is fixed',
    'battery: { care: carry-in, removable: false }',
    'battery.care: found carry-in of a battery with removable: false',
    ROOM,
  ],
  [
    'a drive battery beside an engine',
    'engine: { cycle: four-stroke }\ndriveBattery: {}',
    'driveBattery: found a drive battery beside a four-stroke engine',
  ],
  [
    'a drive battery of nobody knows what',
    'driveBattery: {}',
    'driveBattery: found a drive battery of a machine that is not said to be electric',
  ],
  [
    'no fuel beside an engine',
    'engine: { cycle: two-stroke }\nfuel: none',
    'fuel: found none beside a two-stroke engine',
  ],
  [
    'oil apart and in the tank',
    'engine: { twoStrokeOil: injected }\nfuel: { premix: true }',
    'fuel.premix: found premix: true beside engine.twoStrokeOil: injected, expected false',
  ],
  [
    'oil in the tank and none in it',
    'engine: { twoStrokeOil: premix }\nfuel: { premix: false }',
    'fuel.premix: found premix: false beside engine.twoStrokeOil: premix, expected true',
  ],
  ['fuel of an electric machine', 'engine: { cycle: electric }\nfuel: {}', 'fuel: found fuel of an electric machine'],
  ['a carburettor without bowl', 'fuel: { delivery: carburettor, bowls: 0 }', 'fuel.bowls: found 0 float bowls'],
  [
    'bowls on injection',
    'fuel: { delivery: injection, bowls: 1 }',
    'fuel.bowls: found 1 float bowls on an injected engine',
  ],
  ['taps where there is none', 'fuel: { tap: none, taps: 1 }', 'fuel.taps: found 1 taps beside tap: none'],
  [
    'a four-stroke with oil in the tank',
    'engine: { cycle: four-stroke }\nfuel: { premix: true }',
    'fuel.premix: found oil mixed into the fuel of a four-stroke',
  ],
  [
    'two-stroke oil on a four-stroke',
    'engine: { cycle: four-stroke, twoStrokeOil: premix }',
    'engine.twoStrokeOil: found two-stroke oil on a four-stroke engine',
  ],
  [
    'oil to change in a two-stroke',
    'engine: { cycle: two-stroke, oil: 0.5 L }',
    'engine.oil: found engine oil to change in a two-stroke',
  ],
  [
    'cylinders of an electric machine',
    'engine: { cycle: electric, cylinders: 1 }',
    'engine.cylinders: found cylinders of an electric machine',
  ],
  [
    'oil of an electric machine',
    'engine: { cycle: electric, oil: 1 L }',
    'engine.oil: found oil of an electric machine',
  ],
  [
    'an oil filter of an electric machine',
    'engine: { cycle: electric, oilFilter: true }',
    'engine.oilFilter: found oilFilter of an electric machine',
  ],
  [
    'idling of an electric machine',
    'engine: { cycle: electric, idleFlow: 1 L/h }',
    'engine.idleFlow: found idleFlow of an electric machine',
  ],
  [
    'an engine without cylinders',
    'engine: { cycle: four-stroke, cylinders: 0 }',
    'engine.cylinders: found 0 cylinders of a four-stroke engine',
  ],
  [
    'coolant of an engine cooled by oil',
    'cooling: { kind: oil, volume: 2 L }',
    'cooling.volume: found volume of an engine cooled by oil',
  ],
  [
    'coolant of two strengths',
    'cooling: { strength: 50 %, freezesAt: -34 °C }',
    'cooling.freezesAt: found a strength and a freezing point',
  ],
  [
    'more coolant out than in',
    'cooling: { volume: 2 L, drainable: 2.1 L }',
    'cooling.drainable: found 2.1 L to drain from 2 L',
  ],
  [
    'a tyre softer on its sidewall',
    'tyres: [{ position: all, pressure: 250 kPa, sidewallMax: 249 kPa }]',
    'tyres.1.sidewallMax: found a sidewall maximum of 249 kPa',
  ],
  [
    'two front tyres',
    'tyres: [{ position: front, pressure: 2 bar }, { position: front, pressure: 2 bar }]',
    'tyres.2.position: found "front" a second time',
  ],
  [
    'brake fluid of cables',
    'chassis: { brakes: cable, brakeFluid: DOT4 }',
    'chassis.brakeFluid: found brake fluid beside brakes: cable',
  ],
  [
    'brake fluid of no brakes',
    'chassis: { brakes: none, brakeFluid: DOT4 }',
    'chassis.brakeFluid: found brake fluid beside brakes: none',
  ],
  ['a track drive without track', 'chassis: { drive: track, track: false }', 'chassis.track: found track: false'],
  ['a model of the year after next', 'year: 2028', 'year: found 2028, expected a model year up to 2027'],
  [
    'a tyre of next year',
    'tyres: [{ position: all, pressure: 2 bar, madeYear: 2027 }]',
    'tyres.1.madeYear: found 2027, which is in the future',
  ],
  [
    'a tyre much older than the machine',
    'year: 2020\ntyres: [{ position: all, pressure: 2 bar, madeYear: 2014 }]',
    'tyres.1.madeYear: found 2014 on a machine of 2020',
  ],
  ['a battery of next year', 'battery: { boughtYear: 2027 }', 'battery.boughtYear: found 2027, which is in the future'],
  [
    'a battery of forty-one years ago',
    'battery: { boughtYear: 1985 }',
    'battery.boughtYear: found 1985, expected a year from 1986 to 2026',
  ],
  [
    'coolant of tomorrow',
    'cooling: { lastChanged: "2026-11-26" }',
    'cooling.lastChanged: found 2026-11-26, which is in the future',
  ],
  [
    'fuel of more than fifteen years ago',
    'fuel: { boughtOn: "2011-11-24" }',
    'fuel.boughtOn: found 2011-11-24, which is far off',
  ],
  [
    'papers of more than twenty years ago',
    'paperwork: [{ id: a, what: A, date: "2006-11-24" }]',
    'paperwork.a.date: found 2006-11-24, which is far off',
  ],
  [
    'papers of more than a hundred years ahead',
    'paperwork: [{ id: a, what: A, date: "2126-11-26" }]',
    'paperwork.a.date: found 2126-11-26, which is far off',
  ],
  [
    'a reading of tomorrow',
    'readings: [{ date: "2026-11-26", voltage: 12 V, temperature: 4 °C, rested: 12 h }]',
    'readings.1.date: found 2026-11-26, which is in the future',
  ],
  [
    'a reading of more than twenty years ago',
    'readings: [{ date: "2006-11-24", voltage: 12 V, temperature: 4 °C, rested: 12 h }]',
    'readings.1.date: found 2006-11-24, which is far off',
  ],
  [
    'a note of more than sixty years ago',
    'notes: [{ date: "1966-11-24", text: A }]',
    'notes.1.date: found 1966-11-24, which is far off',
  ],
  [
    'a service beyond the hour meter',
    'engineHours: 50 h\nservices: [{ id: a, what: A, every: { hours: 50 h }, lastDone: { engineHours: 51 h } }]',
    'services.a.lastDone.engineHours: found 51 h, more than the machine',
  ],
] as [string, string, string, Record<string, string>?][])(
  '%s: told once, and nothing else',
  (_, machine, words, files) => {
    expect(told(`${machine}\n`, files).map((text) => text.slice(0, words.length))).toEqual([words]);
  },
);

test('a tyre is not held against a year that is wrong itself', () => {
  expect(told('year: 2040\ntyres: [{ position: all, pressure: 2 bar, madeYear: 2026 }]\n')).toEqual([
    expect.stringMatching(/^year: /),
  ]);
});

test('what stands elsewhere in the file hides nothing else that is missing', () => {
  const found = told('pressure: 2 bar\ntyres: [{ position: front }]\njobs: [{ id: a, name: A, assemblies: [] }]\n');
  expect(found).toHaveLength(2);
  expect(found).toContainEqual(expect.stringMatching(/^pressure: found "pressure" among the outermost/));
  expect(found).toContainEqual(expect.stringMatching(/^jobs\.a\.minutes: found nothing/));
});

test('a slip breaks the field it stands in and not the one below it', () => {
  const { problems } = readWith({
    'machines/one.yaml': `${HEAD}fuel:\n  tank: 17 L\n inTank: 6 L\ncooling: wine\nodometer: far\n`,
  });
  expect(problems.map(({ line }) => line)).toEqual([8, 9, 10]);
});

test('a file of one group is one with fields left out, a file around whose fields a line stands is not', () => {
  const only = (text: string) =>
    readWith({ 'machines/one.yaml': text }).problems.map(({ field, what }) => `${field}: ${what}`);
  expect(only('cooling: { kind: air }\n').map((text) => text.split(' ')[0])).toEqual(['kind:', 'name:', 'place:']);
  expect(only('bike:\n  name: One\n  kind: car\n')).toEqual([
    ': found all fields inside "bike", expected them at the margin',
  ]);
  expect(only('bike:\n  - name: One\n  - kind: car\n')).toEqual([
    ': found all fields inside "bike", expected them at the margin',
  ]);
  expect(only('bike: { colour: red }\n')).toContainEqual(expect.stringMatching(/^bike: found the unknown field/));
});

test('words of a list without commas are told with them', () => {
  const { problems } = readWith({
    'household.yaml': `${HOUSEHOLD}chargers: [{ id: a, name: A, current: 1 A, chemistries: [flooded agm] }]\n`,
  });
  expect(problems.map(({ fix }) => fix)).toEqual([
    expect.stringMatching(/^Write \w+; or with a comma between two: flooded, agm\.$/),
  ]);
});

test('a climate, a place or a machine like none that there is: what there is is named, and where it would stand', () => {
  const shed = (climate: string) => ({
    'places/tin-shed.yaml': `name: Shed\nenclosure: carport\npower: false\nclimate: ${climate}\n`,
  });
  expect(told('', shed('seaside'))).toEqual([
    'climate: found the climate "seaside", expected one of valley. Write one of these, add climates/seaside.yaml, or write climate: { near: [latitude, longitude] }.',
  ]);
  const without = readContent(
    household()
      .filter(({ path }) => !/^(?:climates|places)\//.test(path))
      .concat({ path: 'places/tin-shed.yaml', bytes: shed('seaside')['places/tin-shed.yaml'] }),
    { asOf: '2026-11-25' },
  ).problems;
  expect(without.map(({ what, fix }) => `${what}. ${fix}`)).toEqual([
    'found the climate "seaside", expected the id of a file in climates/. Add climates/seaside.yaml, or write climate: { near: [latitude, longitude] }.',
  ]);
  expect(told('', { 'records/quad/a.yaml': 'notes: []\n' })).toEqual([
    expect.stringMatching(
      /^: found a record of "quad", expected one of juniper, one\. Move it to the folder of its machine\.$/,
    ),
  ]);
});

test('what is missing is told at the group that lacks it', () => {
  const at = (files: Record<string, string>) =>
    readWith(files).problems.map(({ line, column, field }) => [line, column, field]);
  const home = `${HOUSEHOLD}batteryRoom:\n  name: Hall\n`;
  expect(at({ 'household.yaml': home })).toEqual([[5, 1, 'batteryRoom.temperature']]);
  expect(at({ 'machines/one.yaml': `${HEAD}tyres:\n  - position: front\n` })).toEqual([[7, 5, 'tyres.1.pressure']]);
  expect(at({ 'machines/one.yaml': 'kind: car\nplace: tin-shed\n' })).toEqual([[1, 1, 'name']]);
});

test('a key that is no word is told by what it is', () => {
  expect(told('12: a\n')).toEqual([expect.stringContaining('found the key 12, expected a word')]);
  for (const key of ['? [a]\n', '? { b: c }\n', '']) {
    expect(told(`${key}: a\n`)).toEqual([expect.stringContaining('found a key that is no word, expected a word')]);
  }
});

test('weather that is there and could not be read is not told to be missing', () => {
  const files = household().concat({
    path: 'places/tin-shed.yaml',
    bytes: 'name: Shed\nenclosure: carport\npower: false\nclimate: { hourly: a.epw }\n',
  });
  const own = files.filter(({ path, bytes }) => path !== 'places/tin-shed.yaml' || typeof bytes === 'string');
  const hourly = (unread: string[]) =>
    readContent(own, { asOf: '2026-11-25', unread }).problems.map(({ field }) => field);
  expect(hourly([])).toEqual(['climate.hourly']);
  expect(hourly(['climates/b.epw'])).toEqual(['climate.hourly']);
  for (const path of ['a.epw', 'climates/a.epw']) expect(hourly([path])).toEqual([]);
});

test('where there is no household, that alone is told, whatever a machine asks of it', () => {
  for (const care of ['maintainer', 'carry-in']) {
    const files = [...household(), { path: 'places/tin-shed.yaml', bytes: POWERED['places/tin-shed.yaml'] }]
      .filter(
        ({ path, bytes }) =>
          path !== 'household.yaml' && (path !== 'places/tin-shed.yaml' || typeof bytes === 'string'),
      )
      .concat({ path: 'machines/one.yaml', bytes: `${HEAD}battery: { care: ${care} }\n` });
    const { problems } = readContent(files, { asOf: '2026-11-25' });
    expect(problems.map(({ file }) => file)).toEqual(['household.yaml']);
  }
});
