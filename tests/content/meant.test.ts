/**
 * What people write for a value, and the line that they are told to write in its place: what an English speaker means by the word
 * (common usage), and sound when it is written so.
 */
import { expect, test } from 'vitest';
import { readWith } from './helpers.ts';

const HEAD = 'name: One\nkind: motorcycle\nplace: tin-shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\n';

function told(machine: string): string[] {
  const head = HEAD.split('\n').filter((row) => row === '' || !machine.startsWith(row.slice(0, row.indexOf(':') + 1)));
  return readWith({ 'machines/one.yaml': `${head.join('\n')}${machine}\n` }).problems.map(
    ({ what, fix }) => `${what}. ${fix}`,
  );
}

/** A line, the value in it that is wrong, and what is advised. */
test.each([
  ['chassis: { airbox: % }', 'yes', 'true', 'true or false'],
  ['chassis: { airbox: % }', '"Yes"', 'true', 'true or false'],
  ['chassis: { airbox: % }', 'y', 'true', 'true or false'],
  ['chassis: { airbox: % }', 'on', 'true', 'true or false'],
  ['chassis: { airbox: % }', '1', 'true', 'true or false'],
  ['chassis: { airbox: % }', 'no', 'false', 'true or false'],
  ['chassis: { airbox: % }', 'n', 'false', 'true or false'],
  ['chassis: { airbox: % }', 'off', 'false', 'true or false'],
  ['chassis: { airbox: % }', '0', 'false', 'true or false'],
  ['chassis: { brakes: % }', 'disc', '', 'one of hydraulic, cable, mixed, none'],
  ['kind: %', 'snowmobile', 'snow-machine', 'one of'],
  ['kind: %', 'Four Wheeler', 'quad', 'one of'],
  ['kind: %', 'atv', 'quad', 'one of'],
  ['kind: %', 'UTV', 'side-by-side', 'one of'],
  ['kind: %', 'bike', 'motorcycle', 'one of'],
  ['kind: %', 'moped', 'scooter', 'one of'],
  ['kind: %', 'van', 'car', 'one of'],
  ['kind: %', 'lawnmower', 'mower', 'one of'],
  ['kind: %', 'side by side', 'side-by-side', 'one of'],
  ['kind: %', 'snow_machine', 'snow-machine', 'one of'],
  ['battery: { chemistry: % }', 'lead_acid', 'flooded', 'one of'],
  ['battery: { chemistry: % }', 'SLA', 'agm', 'one of'],
  ['battery: { chemistry: % }', 'Li-ion', 'lifepo4', 'one of'],
  ['battery: { chemistry: % }', 'lithium', 'lifepo4', 'one of'],
  ['battery: { chemistry: % }', 'calcium', '', 'one of'],
  ['battery: { chemistry: % }', 'flooded calcium', 'flooded-calcium', 'one of'],
  ['engine: { cycle: electric }\nfuel: none\ndriveBattery: { chemistry: % }', 'agm', 'lead-acid', 'one of'],
  ['engine: { cycle: electric }\nfuel: none\ndriveBattery: { chemistry: % }', 'nmc', 'lithium-ion', 'one of'],
  ['engine: { cycle: electric }\nfuel: none\ndriveBattery: { chemistry: % }', 'LFP', 'lithium-ion', 'one of'],
  ['cooling: %', 'water', 'liquid', ''],
  ['fuel: { tankMaterial: % }', 'metal', 'steel', 'one of'],
  ['fuel: { tankMaterial: % }', 'alloy', 'aluminium', 'one of'],
  ['fuel: { delivery: % }', 'carb', 'carburettor', 'one of'],
  ['fuel: { delivery: % }', 'efi', 'injection', 'one of'],
  ['fuel: { blend: % }', '10', 'E10', 'one of'],
  ['fuel: { blend: % }', 'e 10', 'E10', 'one of'],
  ['fuel: { blend: % }', '85 %', 'E85', 'one of'],
  ['fuel: { blend: % }', 'e5', 'E5', 'one of'],
  // The number on the pump is the octane number, which says nothing of ethanol.
  ['fuel: { blend: % }', '95', '', 'one of'],
  ['fuel: { blend: % }', '98', '', 'one of'],
  ['fuel: { blend: % }', '102', '', 'one of'],
  ['chassis: { drive: % }', 'cvt', 'variator', 'one of'],
  ['chassis: { drive: % }', 'shft', 'shaft', 'one of'],
  ['fuel: { bowls: % }', '"2"', '2', 'a number'],
  ['fuel: { bowls: % }', '2 pieces', '2', 'a number'],
  ['fuel: { densityKgPerM3: % }', '745 kg/m3', '745', 'a number'],
  ['fuel: { densityKgPerM3: % }', '"745.5"', '745.5', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '45 min', '45', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '45 minutes', '45', 'a number'],
  // An hour is no minute: the number alone would be wrong.
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '2 h', '120', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '1.5 hours', '90', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '1 h 30', '90', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '1h30min', '90', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '"1:30"', '90', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '1:75', '', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '45 %', '', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', '2-3', '', 'a number'],
  ['fuel: { bowls: % }', '2-3', '', 'a number'],
  ['jobs: [{ id: a, name: A, assemblies: [], minutes: % }]', 'two', '', 'a number'],
  ['name: %', '320', '"320"', 'text'],
  ['name: %', 'true', '"true"', 'text'],
  ['readings: %', 'none', '[]', 'a list'],
  ['readings: %', 'no', '[]', 'a list'],
  ['jobs: [{ id: a, name: A, minutes: 5, assemblies: % }]', 'nothing', '[]', 'a list'],
  [
    'jobs: [{ id: a, name: A, minutes: 5, assemblies: [], tools: % }]',
    '"Feeler gauges,Torque wrench"',
    '[Feeler gauges, Torque wrench]',
    'a list',
  ],
  [
    'jobs: [{ id: a, name: A, minutes: 5, assemblies: [], tools: % }]',
    '"Gauges , wrench"',
    '[Gauges, wrench]',
    'a list',
  ],
  ['jobs: [{ id: a, name: A, minutes: 5, assemblies: [], tools: % }]', '(gauges)', '[gauges]', 'a list'],
  ['jobs: [{ id: a, name: A, minutes: 5, assemblies: [], tools: % }]', 'gauges - wrench', '[gauges, wrench]', 'a list'],
  ['jobs: [{ id: a, name: A, minutes: 5, assemblies: [], tools: % }]', '"a, b; c"', '', 'a list'],
  ['jobs: [{ id: a, name: A, minutes: 5, assemblies: [], tools: % }]', '"a; b"', '', 'a list'],
] as const)('%s with %s is told to be written as %s', (line, wrong, meant, expected) => {
  const said = told(line.replace('%', wrong));
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(/^found .*, expected /s);
  expect(said[0]).toContain(expected);
  if (meant === '') {
    expect(said[0]).not.toMatch(/Write (?!one of these|it like|\[\]|"- ")/);
    // What cannot be read as a list is not written as one.
    if (expected === 'a list') expect(said[0]).not.toContain('[');
    return;
  }
  const advice = said[0]!.split('. ').slice(1).join('. ');
  expect(advice).toMatch(/\.$/);
  const written = / ?(\[.*\]|"[^"]*"|\S+)\.$/.exec(advice)![1];
  const own = advice.includes('Write [] where') ? '[]' : written;
  expect(own).toBe(meant);
  expect(told(line.replace('%', own!))).toEqual([]);
});

/** A field's name, and the one that is advised. */
test.each([
  ['mileage: 4000 km', 'odometer'],
  ['gas: { tank: 17 L }', 'fuel'],
  ['petrol: { tank: 17 L }', 'fuel'],
  ['gasoline: { tank: 17 L }', 'fuel'],
  ['wheels: []', 'tyres'],
  ['repairs: []', 'jobs'],
  ['tasks: []', 'jobs'],
  ['coolant: { volume: 2 L }', 'cooling'],
  ['tyre: []', 'tyres'],
])('%s is told to be called %s', (line, name) => {
  expect(told(line)).toEqual([expect.stringContaining(`Write "${name}"`)]);
  expect(told(line.replace(/^\w+/, name))).toEqual([]);
});

test.each([
  ['type: motorcycle', 'kind'],
  ['title: One', 'name'],
  ['location: tin-shed', 'place'],
  ['garage: tin-shed', 'place'],
])('%s is told to be called %s, and nothing is said to be missing beside it', (line, name) => {
  const said = readWith({
    'machines/one.yaml': `${HEAD.split('\n')
      .filter((row) => !row.startsWith(`${name}:`))
      .join('\n')}${line}\n`,
  }).problems;
  expect(said.map(({ fix }) => fix)).toEqual([expect.stringContaining(`Write "${name}"`)]);
});
