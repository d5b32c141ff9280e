/** A machine with two batteries never has one of them called "its battery". */
import { expect, test } from 'vitest';
import { planBatteries } from '../../../src/planner/battery/index.ts';
import type { Battery, Household, Machine, Place } from '../../../src/planner/household.ts';
import { settleSteps } from '../../../src/planner/ledger/index.ts';
import { concreteSteps } from '../../../src/planner/tasks/index.ts';
import { caseOf } from '../tasks/generate.ts';
import { library } from '../tasks/library.ts';
import { battery, COLD_LOW, COLD_STORE, contexts, exactly, household, machine, place } from './world.ts';

const SUMMER = { lastUse: '2026-04-05', firstUse: '2026-11-20', proposed: false, reasons: [] };
const LOW = { date: '2026-06-01', volts: 12.0, temperatureC: 10, restedH: 12 };
const KEEPER = { id: 'k', name: 'Keeper', currentA: 1, chemistries: ['agm' as const], maintainer: true };

/** Cases in which something is said of the battery, each with a word of it. */
const CASES: [RegExp, Partial<Battery>, Partial<Place>, Partial<Household>, Partial<Machine>, string][] = [
  [/no charger serves it/, {}, {}, { chargers: [] }, {}, '2026-04-01'],
  [/Nothing can charge/, { removable: false }, {}, {}, {}, '2026-04-01'],
  [
    /does not come out, and none/,
    { removable: false },
    { power: true },
    { chargers: [{ ...KEEPER, placeId: 'House' }] },
    {},
    '2026-04-01',
  ],
  [/is to stay on a maintainer/, { care: 'maintainer' }, {}, {}, {}, '2026-04-01'],
  [/may stay on/, { care: 'maintainer' }, { power: true }, {}, {}, '2026-04-01'],
  [/said not to come out/, { care: 'carry-in', removable: false }, {}, {}, {}, '2026-04-01'],
  [/No warm room is named/, { care: 'carry-in' }, {}, { batteryRoom: undefined }, {}, '2026-04-01'],
  [
    /comes? .*(?:beyond|within) /,
    { care: 'visits', startPct: exactly(50) },
    {},
    { away: [{ from: '2026-09-01', to: '2027-06-01' }] },
    { season: { ...SUMMER, lastUse: '2026-10-25', firstUse: '2027-04-10' } },
    '2026-10-25',
  ],
  [
    /is not kept full/,
    { care: 'maintainer' },
    { power: true },
    { chargers: [KEEPER] },
    { readings: [LOW] },
    '2026-06-02',
  ],
  [/and none is logged/, {}, {}, {}, {}, '2026-09-01'],
  [/no day from/, {}, {}, { away: [{ from: '2026-04-02', to: '2026-12-01' }] }, {}, '2026-04-01'],
  [/reading of/, {}, {}, {}, { readings: [{ ...LOW, volts: 13.4 }], charged: [] }, '2026-06-02'],
];

test.each(CASES)('what is said of %s names the battery that is meant', (word, own, at, home, more, asOf) => {
  const said = (driveBattery?: Machine['driveBattery']) => {
    const moth = machine('Moth', 'Barn', { battery: battery('agm', 12, own), season: SUMMER, driveBattery, ...more });
    const of = household([moth], { places: [place('Barn', at), place('House', { power: true })], ...home });
    return planBatteries(of, asOf, contexts(of, COLD_STORE, COLD_LOW)).warnings.map(({ text }) => text);
  };
  const one = said();
  expect(
    one.some((text) => word.test(text)),
    one.join('\n'),
  ).toBe(true);
  const two = said({ chemistry: 'lithium-ion', removable: true, lowestStorageC: -20 });
  for (const text of two) expect(text).not.toMatch(/Moth's battery|battery of Moth|Moth:|Moth,/);
  expect(two).toEqual(one.map((text) => text.replaceAll("Moth's battery", "Moth's 12 V battery")));
});

test('on the sheets of an electric machine each battery that a title names is the one or the other', () => {
  for (const chemistry of ['flooded-antimony', 'agm', 'lifepo4'] as const)
    for (const care of ['visits', 'carry-in', 'maintainer'] as const)
      for (const power of [true, false]) {
        const drawn = caseOf({
          cycle: 'electric',
          battery: { chemistry, care, keptAt: 'machine', connected: false, capacityAh: 12, charges: 2 },
          flags: { power },
        });
        const steps = settleSteps(drawn.machine, concreteSteps({ ...drawn, procedures: library() }));
        const named = steps.filter(
          ({ title }) =>
            /\bbattery\b/i.test(title) && !/12 V battery|drive battery|battery bay|battery mounts/i.test(title),
        );
        expect(named.map(({ id, title }) => `${id}: ${title}`)).toEqual([]);
      }
});
