import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entriesOf, recordOf } from '../../src/browser/bench/entries.ts';
import { type Answers, householdOf, problemsOf } from '../../src/content/answers.ts';
import { openClimateLibrary } from '../../src/content/climate-library.ts';
import { KINDS } from '../../src/content/kinds.ts';
import { readContent } from '../../src/content/read.ts';
import { readFiles } from '../../src/content/read-folder.ts';
import { readProcedures } from '../../src/content/read-procedures.ts';
import { filesOf } from '../../src/content/write.ts';
import { emptyRecord } from '../../src/planner/bench-record.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { ENCLOSURES } from '../../src/planner/storage/index.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const library = openClimateLibrary(JSON.parse(readFileSync(join(ROOT, 'public/climate/normals.json'), 'utf8')));
const bundledFiles = readFiles(join(ROOT, 'content/procedures')).files.map((f) => ({
  ...f,
  path: `procedures/${f.path}`,
}));
const { procedures } = readProcedures(bundledFiles);
const asOf = '2026-11-25';

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const machine = fc
  .record({
    id: fc.constant('one'),
    name: fc.constantFrom('One', 'Grey Owl', 'no', '12', 'a: b', '"quoted"', 'Fjällräv'),
    kind: fc.constantFrom(...KINDS),
    place: fc.constant('store'),
    lastUse: maybe(fc.constantFrom('2026-09-12', '2026-11-01')),
    firstUse: maybe(fc.constantFrom('2027-03-20', '2027-05-01')),
    battery: fc.oneof(
      fc.constant(false as const),
      fc.record({
        chemistry: maybe(fc.constantFrom('flooded', 'flooded-calcium', 'agm', 'gel', 'lifepo4')),
        capacity: maybe(fc.constantFrom('0.5 Ah', '12 Ah', '400 Ah')),
        removable: maybe(fc.boolean()),
        drain: maybe(fc.constantFrom('0 mA', '3.5 mA', '0.03 A')),
      }),
    ),
    fuel: fc.oneof(
      fc.constant(false as const),
      fc.record({
        delivery: maybe(fc.constantFrom('carburettor', 'injection')),
        tank: maybe(fc.constantFrom('0.2 L', '4.5 US gal', '3 imp gal', '400 L')),
        inTank: maybe(fc.constantFrom('0 L', '0.1 US gal', '5 L')),
        tap: maybe(fc.constantFrom('vacuum', 'manual', 'none')),
        blend: maybe(fc.constantFrom('E0', 'E5', 'E10', 'E85')),
      }),
    ),
    engine: maybe(
      fc.constantFrom(
        { cycle: undefined },
        { cycle: 'four-stroke' },
        { cycle: 'two-stroke', twoStrokeOil: 'premix' },
        { cycle: 'two-stroke', twoStrokeOil: 'injected' },
        { cycle: 'electric' },
      ),
    ),
    driveBattery: maybe(
      fc.record({ chemistry: maybe(fc.constantFrom('lithium-ion', 'lead-acid')), removable: maybe(fc.boolean()) }),
    ),
    salted: maybe(fc.boolean()),
    cooling: maybe(fc.constantFrom('air', 'oil', 'liquid', 'none')),
    coolantFreezesAt: maybe(fc.constantFrom('-34 °C', '-29.2 °F', '0 °C')),
    record: fc
      .record({
        readings: fc.array(
          fc.record({
            date: fc.constantFrom('2026-10-30', '2026-11-20'),
            volts: fc.constantFrom(5, 12.55, 16),
            temperatureC: fc.constantFrom(-3.3, 0, 4),
            restedH: fc.constantFrom(0, 300),
          }),
          { maxLength: 3 },
        ),
        charged: fc.array(
          fc.record({ date: fc.constantFrom('2026-11-01', '2026-11-25'), toPct: fc.constantFrom(90, 100) }),
          { maxLength: 2 },
        ),
        done: fc.array(
          fc.record({ step: fc.constantFrom('lay-up', 'start-up'), date: fc.constantFrom('2026-04-12', '2026-11-14') }),
          { maxLength: 2 },
        ),
      })
      // Each once and by date, as a form keeps them.
      .map((lists) => recordOf(entriesOf({ ...emptyRecord(), ...lists }))),
  })
  .map(({ record, driveBattery, ...given }) => ({
    ...given,
    coolantFreezesAt: given.cooling === undefined || given.cooling === 'liquid' ? given.coolantFreezesAt : undefined,
    // As a form asks it.
    fuel: given.engine?.cycle && given.fuel === false ? undefined : given.fuel,
    ...(given.engine?.cycle === 'electric' ? { fuel: false as const, driveBattery } : {}),
    record: given.battery === false ? { ...record, readings: [] } : record,
  }));
const answers: fc.Arbitrary<Answers> = fc.record({
  household: fc.record({
    id: fc.constant('home-4f2a'),
    name: fc.constant('My machines'),
    timeZone: fc.constantFrom('Europe/Oslo', 'America/Edmonton', 'Pacific/Auckland'),
    locale: fc.constantFrom('en-GB', 'en-US', 'nb-NO'),
    units: fc.constantFrom('metric', 'us', 'imperial'),
    country: maybe(fc.constantFrom('NO', 'CA')),
    charger: maybe(fc.record({ current: fc.constantFrom('0.1 A', '4 A'), maintainer: fc.boolean() })),
    stabiliserDose: maybe(fc.constantFrom('0.1 mL/L', '4 mL/L', '100 mL/L')),
    batteryRoom: maybe(fc.constant({ name: 'House', temperature: '18 °C' })),
    revised: fc.constant('2026-11-25T07:00:00Z'),
  }),
  places: fc
    .record({
      id: fc.constant('store'),
      name: fc.constant('Shed'),
      enclosure: fc.constantFrom(...ENCLOSURES.map((e) => e.id)),
      power: fc.boolean(),
      climate: fc.oneof(
        fc.constantFrom(...library.file.id.slice(0, 40)).map((station) => ({ station })),
        fc.record({ near: fc.constantFrom([60.2, 10.7] as const, [-43.5, 172.6] as const, [0, 0] as const) }),
      ),
    })
    .map((place) => [place]),
  machines: machine.map((one) => [one]),
});

test('answers planned directly are the same household as their files read', () => {
  fc.assert(
    fc.property(answers, (given) => {
      const read = readContent(filesOf(given), { asOf, library, readProcedures: procedures });
      const wrong = problemsOf(given);
      expect(wrong.map(({ field, what, fix }) => ({ field, what, fix }))).toEqual(
        read.problems.map(({ field, what, fix }) => ({ field, what, fix })),
      );
      if (wrong.length === 0) expect(householdOf(given, { procedures, library }, asOf)).toEqual(read.household);
    }),
    { numRuns: 60 },
  );
});

test('procedures read beforehand give the same household as their files', () => {
  const given = fc.sample(answers, { numRuns: 50, seed: 7 }).find((a) => problemsOf(a).length === 0);
  const files = filesOf(given!);
  const before = readContent(files, { asOf, library, readProcedures: procedures });
  const now = readContent(files, { asOf, library, procedures: bundledFiles });
  expect(JSON.parse(JSON.stringify(before.household))).toEqual(JSON.parse(JSON.stringify(now.household)));
});

test('a household from answers can be planned, and a place or station that is not there is named', () => {
  const given = fc.sample(answers, { numRuns: 50, seed: 3 }).find((a) => problemsOf(a).length === 0);
  const { plan, problems } = planSeason(householdOf(given!, { procedures, library }, asOf), { asOf, quick: true });
  expect([plan.machines.length, problems]).toEqual([1, []]);
  const lost = { ...given!, machines: [{ ...given!.machines[0]!, place: 'attic' }] };
  expect(() => householdOf(lost, { procedures, library }, asOf)).toThrow('attic');
  const off = { ...given!, places: [{ ...given!.places[0]!, climate: { station: 'nowhere' } }] };
  expect(() => householdOf(off, { procedures, library }, asOf)).toThrow('nowhere');
});
