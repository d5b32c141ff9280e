/** Each fact of a machine, true and not: what a procedure's `when` sees. */
import { expect, test } from 'vitest';
import type { Machine } from '../../../src/planner/household.ts';
import { machineFacts, startingMachine } from '../../../src/planner/tasks/facts.ts';
import { concreteSteps, matches, windowsOf } from '../../../src/planner/tasks/index.ts';
import { type Case, caseOf, procedureOf, stepOf } from './generate.ts';

const factsOf = ({ machine, place, household, parts }: Case) => machineFacts(machine, place, household, parts);

function withMachine(change: Partial<Machine>): Case {
  const base = caseOf();
  return { ...base, machine: { ...base.machine, ...change } };
}
const chassis = (change: Partial<Machine['chassis']>) =>
  withMachine({ chassis: { ...caseOf().machine.chassis, ...change } });
const corrosion = (level: number) => {
  const base = caseOf();
  const protection = { ...base.parts.corrosion.protection, level };
  return { ...base, parts: { ...base.parts, corrosion: { ...base.parts.corrosion, protection } } };
};
const papers = (...kinds: ('insurance' | 'registration' | 'inspection' | 'other')[]) =>
  caseOf({ papers: kinds.map((kind) => ({ kind, pausedOverRest: false })) });
const fuel = caseOf().machine.fuel!;
const battery = {
  chemistry: 'agm',
  care: 'carry-in',
  keptAt: 'room',
  connected: true,
  capacityAh: 9,
  charges: 0,
} as const;
const COOLANT = { strength: 0.4, replaceL: 0.5, enough: false, old: false } as const;

test.each<[string, Case, object, Case, object]>([
  [
    'an electric starter',
    caseOf({ start: 'electric-and-kick' }),
    { engine: { electricStart: true, handStart: true } },
    caseOf({ start: 'kick' }),
    { engine: { electricStart: false, handStart: true } },
  ],
  [
    'a starter alone',
    caseOf({ start: 'electric' }),
    { engine: { electricStart: true, handStart: false } },
    caseOf({ start: 'pull' }),
    { engine: { electricStart: false } },
  ],
  [
    'engine oil',
    caseOf({ oilL: 0.1 }),
    { engine: { oil: true, oilChange: 'advised' } },
    caseOf({ oilL: 0 }),
    { engine: { oil: false, oilChange: 'none' } },
  ],
  [
    'two-stroke oil',
    caseOf({ cycle: 'two-stroke', twoStrokeOil: 'premix' }),
    { engine: { twoStrokeOil: 'premix' } },
    caseOf(),
    { engine: { twoStrokeOil: 'none' } },
  ],
  [
    'petrol',
    caseOf(),
    { fuel: { present: true, delivery: 'carburettor', tank: 'steel', tap: 'vacuum', bowls: true } },
    caseOf({ fuel: undefined }),
    {
      fuel: {
        present: false,
        delivery: 'none',
        choice: 'none',
        tank: 'none',
        tap: 'none',
        bowls: false,
        premix: false,
        lined: false,
        spring: 'none',
      },
    },
  ],
  [
    'two taps',
    withMachine({ fuel: { ...fuel, taps: { kind: 'manual', count: 2 } } }),
    { fuel: { twoTaps: true, tap: 'manual' } },
    withMachine({ fuel: { ...fuel, taps: { kind: 'manual', count: 1 } } }),
    { fuel: { twoTaps: false } },
  ],
  [
    'no tap',
    withMachine({ fuel: { ...fuel, taps: null } }),
    { fuel: { tap: 'none', twoTaps: false } },
    caseOf(),
    { fuel: { tap: 'vacuum' } },
  ],
  [
    'float bowls',
    withMachine({ fuel: { ...fuel, bowls: 1 } }),
    { fuel: { bowls: true } },
    withMachine({ fuel: { ...fuel, bowls: 0 } }),
    { fuel: { bowls: false } },
  ],
  [
    'mixture and a lined tank',
    withMachine({ fuel: { ...fuel, premix: true, lined: true } }),
    { fuel: { premix: true, lined: true } },
    caseOf(),
    { fuel: { premix: false, lined: false } },
  ],
  [
    'stabiliser',
    caseOf({ flags: { stabiliser: true } }),
    { fuel: { stabiliser: true, choice: 'fill' } },
    caseOf({ flags: { drain: true } }),
    { fuel: { stabiliser: false, choice: 'drain' } },
  ],
  [
    'a battery',
    caseOf({ battery }),
    { battery: { present: true, care: 'carry-in', keptAt: 'room', family: 'sealed', charges: false } },
    caseOf({ battery: undefined }),
    {
      battery: {
        present: false,
        care: 'none',
        chemistry: 'none',
        family: 'none',
        connected: false,
        keptAt: 'none',
        removable: false,
        charges: false,
      },
    },
  ],
  [
    'a drive battery',
    caseOf({ cycle: 'electric', driveBattery: { chemistry: 'lead-acid', removable: true } }),
    { driveBattery: { present: true, chemistry: 'lead-acid', removable: true } },
    caseOf({ driveBattery: { chemistry: 'lead-acid', removable: true } }),
    { driveBattery: { present: false, chemistry: 'none', removable: false } },
  ],
  [
    'families of batteries',
    caseOf({ battery: { ...battery, chemistry: 'lifepo4' } }),
    { battery: { family: 'lithium' } },
    caseOf({ battery: { ...battery, chemistry: 'flooded-calcium', charges: 1 } }),
    { battery: { family: 'flooded', charges: true } },
  ],
  [
    'coolant that is too weak',
    caseOf({ coolant: COOLANT }),
    { coolant: { present: true, known: true, enough: 'no', swap: true, old: false } },
    caseOf(),
    { coolant: { present: false, known: false, enough: 'none', swap: false, old: false } },
  ],
  [
    'coolant of unknown strength',
    caseOf({ coolant: { ...COOLANT, strength: undefined, enough: null, replaceL: 0 } }),
    { coolant: { known: false, enough: 'unknown', swap: false } },
    caseOf({ coolant: { ...COOLANT, enough: true, old: true } }),
    { coolant: { enough: 'yes', old: true } },
  ],
  [
    'grease points',
    chassis({ greasePoints: 1 }),
    { chassis: { greasePoints: true } },
    chassis({ greasePoints: 0 }),
    { chassis: { greasePoints: false } },
  ],
  [
    'exhaust outlets',
    chassis({ exhaustOutlets: 1 }),
    { chassis: { exhaust: true } },
    chassis({ exhaustOutlets: 0 }),
    { chassis: { exhaust: false } },
  ],
  [
    'brake fluid',
    chassis({ brakeFluid: 'DOT4' }),
    { chassis: { brakeFluid: 'DOT4' } },
    caseOf(),
    { chassis: { brakeFluid: 'none' } },
  ],
  [
    'tyres',
    caseOf(),
    { tyres: { present: true, raised: true } },
    caseOf({ tyres: [] }),
    { tyres: { present: false, raised: false } },
  ],
  [
    'tyres left as they are',
    caseOf({ tyres: [{ count: 1, raised: false, pressureKPa: 200 }] }),
    { tyres: { present: true, raised: false } },
    caseOf(),
    { tyres: { raised: true } },
  ],
  [
    'a film',
    corrosion(2),
    { corrosion: { film: true, fog: false } },
    corrosion(1),
    { corrosion: { film: false, fog: false } },
  ],
  ['fogging', corrosion(3), { corrosion: { film: true, fog: true } }, corrosion(2), { corrosion: { fog: false } }],
  ['a bag', caseOf({ flags: { bag: true } }), { corrosion: { bag: true } }, caseOf(), { corrosion: { bag: false } }],
  [
    'a dry store',
    caseOf({ flags: { dry: true } }),
    { corrosion: { dry: true } },
    caseOf(),
    { corrosion: { dry: false } },
  ],
  ['the open', caseOf({ flags: { open: true } }), { place: { open: true } }, caseOf(), { place: { open: false } }],
  [
    'power, rodents and a bench',
    caseOf({ flags: { power: true, rodents: true, bench: true } }),
    { place: { power: true, rodents: true, bench: true } },
    caseOf(),
    { place: { power: false, rodents: false, bench: false } },
  ],
  [
    'salt',
    caseOf({ flags: { exposed: true, washed: true } }),
    { roadSalt: { exposed: true, washed: true } },
    caseOf(),
    { roadSalt: { exposed: false, washed: false } },
  ],
  [
    'a warm room',
    caseOf({ flags: { room: true } }),
    { household: { batteryRoom: true } },
    caseOf(),
    { household: { batteryRoom: false } },
  ],
  [
    'insurance',
    papers('other', 'insurance'),
    { paperwork: { insurance: true, registration: false, inspection: false, paused: false } },
    papers('registration'),
    { paperwork: { insurance: false, registration: true } },
  ],
  [
    'inspection',
    papers('inspection', 'other'),
    { paperwork: { inspection: true } },
    papers(),
    { paperwork: { inspection: false, registration: false, insurance: false } },
  ],
  [
    'a paper that is suspended',
    caseOf(),
    { paperwork: { paused: true } },
    papers('insurance'),
    { paperwork: { paused: false } },
  ],
  [
    'a service of several that is due',
    caseOf({
      services: [
        { id: 'valves', lastDone: 5, pulledIn: true },
        { id: 'coolant', lastDone: 5, pulledIn: false },
      ],
    }),
    { services: { due: true } },
    caseOf({ services: [{ id: 'valves', lastDone: 5, pulledIn: false }] }),
    { services: { due: false } },
  ],
])('%s', (_, one, has, other, hasNot) => {
  expect(factsOf(one)).toMatchObject(has);
  expect(factsOf(other)).toMatchObject(hasNot);
});

test('a stand counts for the kinds that it is for', () => {
  const base = caseOf();
  const facts = (kinds: string[]) =>
    factsOf({ ...base, household: { ...base.household, stands: [{ name: 'Stand', kinds }] } as never });
  expect(facts(['motorcycle'])).toMatchObject({ household: { stand: true } });
  expect(facts(['quad'])).toMatchObject({ household: { stand: false } });
});

test('coolant is old that reaches its age by the first use, and no later', () => {
  const base = caseOf({ coolant: COOLANT });
  const { firstUse } = base.machine.season;
  const old = (ageDue: string | undefined) =>
    (
      factsOf({ ...base, parts: { ...base.parts, coolant: { ...base.parts.coolant!, ageDue } } }).coolant as {
        old: boolean;
      }
    ).old;
  const [year, month, day] = firstUse.split('-').map(Number) as [number, number, number];
  const after = new Date(Date.UTC(year, month - 1, day + 1)).toISOString().slice(0, 10);
  expect([old(firstUse), old(after), old(undefined)]).toEqual([true, false, false]);
});

test('of machines that start up within three weeks the nearest makes the swap, of two as near the first by id', () => {
  const base = caseOf();
  const other = (id: string, firstUse: string) => ({
    ...base.machine,
    id,
    season: { ...base.machine.season, firstUse },
  });
  const swap = (...others: ReturnType<typeof other>[]) =>
    startingMachine(base.machine, { ...base.household, machines: [base.machine, ...others] })?.id;
  // Laid up on 25 October.
  expect(swap(other('a', '2026-11-15'))).toBe('a');
  expect(swap(other('a', '2026-11-16'))).toBeUndefined();
  expect(swap(other('a', '2026-10-04'))).toBe('a');
  expect(swap(other('a', '2026-10-03'))).toBeUndefined();
  expect(swap(other('a', '2026-11-10'), other('b', '2026-10-30'))).toBe('b');
  expect(swap(other('b', '2026-10-30'), other('a', '2026-10-30'))).toBe('a');
  expect(swap()).toBeUndefined();
});

test('steps have the days of their phase and deadline', () => {
  const base = caseOf({ frost: 20 });
  const windows = windowsOf(base.machine.season);
  expect(windows).toEqual({
    before: '2026-10-04',
    beforeLast: '2026-10-11',
    lastUse: '2026-10-25',
    layUpEnd: '2026-11-15',
    startUpFrom: '2027-03-20',
    firstUse: '2027-04-10',
    rideEnd: '2027-05-01',
  });
  const days = (phase: 'lay-up' | 'swap' | 'look-in' | 'start-up', step: Partial<ReturnType<typeof stepOf>> = {}) => {
    const procedures = [procedureOf({ id: 'p', phase, steps: [stepOf({ id: 's', title: 'Do it', ...step })] })];
    const [{ earliest, latest, date } = {}] = concreteSteps({ ...base, procedures });
    return [earliest, latest, date];
  };
  const before = (name: string) => ({ deadline: { before: name } }) as never;
  expect(days('swap')).toEqual(['2026-10-04', '2026-11-15', undefined]);
  expect(days('lay-up')).toEqual(['2026-10-25', '2026-11-15', undefined]);
  expect(days('lay-up', before('last-use'))).toEqual(['2026-10-11', '2026-10-25', undefined]);
  expect(days('lay-up', before('first-use'))).toEqual(['2026-10-25', '2027-04-10', undefined]);
  // Frost twenty days after the last use, 14 November: by the 13th.
  expect(days('lay-up', before('first-frost-in-store'))).toEqual(['2026-10-25', '2026-11-13', undefined]);
  expect(days('look-in')).toEqual(['2026-11-15', '2027-03-20', undefined]);
  expect(days('start-up')).toEqual(['2027-03-20', '2027-04-10', undefined]);
  expect(days('start-up', { stage: 'first-ride' })).toEqual(['2027-04-10', '2027-04-10', '2027-04-10']);
  expect(days('start-up', { stage: 'first-ride', ...(before('ride-end') as object) })).toEqual([
    '2027-04-11',
    '2027-05-01',
    undefined,
  ]);
});

test('a short rest halves its windows, and lay-up ends before start-up begins', () => {
  const season = (firstUse: string) => windowsOf({ lastUse: '2026-10-25', firstUse, proposed: false, reasons: [] });
  expect(season('2026-11-04')).toMatchObject({ layUpEnd: '2026-10-29', startUpFrom: '2026-10-31' });
  expect(season('2026-10-26')).toMatchObject({ layUpEnd: '2026-10-25', startUpFrom: '2026-10-26' });
  expect(season('2026-10-25')).toMatchObject({ layUpEnd: '2026-10-25', startUpFrom: '2026-10-25' });
});

test('a when asks for one of its values, of nested facts too', () => {
  const facts = factsOf(caseOf());
  expect(matches({ kind: ['car', 'motorcycle'], fuel: { choice: 'fill' } }, facts)).toBe(true);
  expect(matches({ kind: 'car' }, facts)).toBe(false);
  expect(matches({ fuel: { choice: 'drain' } }, facts)).toBe(false);
});
