/** What the agenda says of its sessions and of what finds none. 2026-10-31 is a Saturday. */
import { expect, test } from 'vitest';
import { type AgendaTask, placeable, planAgenda } from '../../../src/planner/agenda/index.ts';
import type { Household } from '../../../src/planner/household.ts';
import { machine, place } from '../fluids/fixture.ts';
import { plan, task, yard } from './world.ts';

const FROM = '2026-10-26';
const TO = '2026-11-01';
const LATER = '2026-11-08';

const texts = (tasks: AgendaTask[], home: Household) => plan(tasks, home).misfits.map((m) => m.text);

test('a session is called by its machines, each with its own work, in the order in which they come', () => {
  const home = yard({ saturday: 3 }, { machines: [machine(), machine({ id: 'sleet', name: 'Sleet' })] });
  const tasks = [
    task('Wash', 30, FROM, TO),
    task('Oil', 20, FROM, TO, { machine: 'sleet' }),
    task('Wax', 10, FROM, TO),
    task('Fuel', 10, FROM, TO, { machine: 'magpie' }),
  ];
  const [session] = plan(tasks, home).sessions;
  expect(session).toMatchObject({
    id: 'session-2026-10-31',
    date: '2026-10-31',
    title: 'Juniper: wash; wax. Sleet: oil. magpie: fuel',
  });
  expect(
    plan([task('Wash', 30, '2027-05-01', '2027-05-09', { needs: { dryDay: true } })], home).sessions[0]!.title,
  ).toBe('Juniper: wash (on a dry day above 5 °C)');
  // One step of several is enough.
  const day = '2027-05-01';
  const both = [task('Wash', 30, day, day, { needs: { dryDay: true } }), task('Oil', 20, day, day)];
  expect(plan(both, home).sessions[0]!.title).toBe('Juniper: wash; oil (on a dry day above 5 °C)');
});

test('a session lasts from its start to the end of its last work, and the ways to its places', () => {
  const places = [place({ tripMinutes: 10 }), place({ id: 'hall', tripMinutes: 15 })];
  const tasks = [task('a', 20, FROM, TO), task('b', 40, FROM, TO), task('c', 35, FROM, TO, { placeId: 'hall' })];
  const [session] = plan(tasks, yard({ saturday: 3 }, { places })).sessions;
  expect(session!.hours * 60).toBeCloseTo(20 + 40 + 35 + 10 + 15, 9);
  const half = plan(tasks.slice(0, 1), yard({ friday: 6.25 }, { places })).sessions[0]!;
  expect([half.date, half.start]).toEqual(['2026-10-30', '17:45']);
});

test('no tasks make an empty agenda', () => {
  expect(planAgenda({ tasks: [], household: yard({}), asOf: FROM, places: [] })).toEqual({
    sessions: [],
    misfits: [],
    dateOf: new Map(),
    notes: [],
  });
});

test('a task is placeable that some agenda has room for, a run of them where there is room for all of it', () => {
  const tasks = [
    task('fits', 60, FROM, TO),
    task('long', 61, FROM, TO),
    task('start', 30, FROM, TO),
    task('warm', 30, FROM, TO, { after: ['start'], goesOnFrom: 'juniper/start' }),
    task('drain', 30, FROM, TO),
    task('fill', 31, FROM, TO, { after: ['drain'], goesOnFrom: 'juniper/drain' }),
  ];
  const home = yard({ saturday: 1 });
  const keys = placeable({ tasks, household: home, asOf: FROM, places: home.places });
  expect([...keys].sort()).toEqual(['juniper/fits', 'juniper/start', 'juniper/warm']);
});

test('what does not fit is told by its last day, and by cause within it', () => {
  const tasks = [
    task('late', 200, FROM, LATER),
    task('long', 120, FROM, TO),
    task('behind', 10, FROM, TO, { after: ['long'] }),
    task('longer', 130, FROM, TO),
  ];
  const { misfits } = plan(tasks, yard({ saturday: 1.5 }));
  expect(misfits.map((m) => [m.before, m.steps.map((s) => s.step), m.hoursMissing])).toEqual([
    [TO, ['behind'], 10 / 60],
    [TO, ['long', 'longer'], 250 / 60],
    [LATER, ['late'], 200 / 60],
  ]);
  expect(misfits.map((m) => m.text)).toEqual([
    'juniper: behind: 10 min of work up to 1 November 2026, which waits for steps that find no day themselves.',
    'juniper: long; juniper: longer: 4.2 h of work in one go up to 1 November 2026, but the longest session has 1.5 h: one longer day is needed.',
    'juniper: late: 3.3 h of work in one go up to 8 November 2026, but the longest session has 1.5 h: one longer day is needed.',
  ]);
});

test('of what waits too long each group is told with the day on which its wait is over', () => {
  const tasks = [
    task('order', 10, FROM, TO, { waitH: 20 * 24 }),
    task('off', 10, FROM, LATER, { after: ['order'] }),
    task('glue', 10, FROM, TO, { waitH: 10 * 24 }),
    task('paint', 10, FROM, LATER, { after: ['glue'] }),
    task('sand', 10, FROM, LATER, { after: ['glue'] }),
  ];
  // Both are done on Saturday the 31st from ten in the morning.
  expect(texts(tasks, yard({ saturday: 1 }))).toEqual([
    'juniper: paint; juniper: sand: 20 min of work up to 8 November 2026, but what it waits for is over only about 10 November 2026.',
    'juniper: off: 10 min of work up to 8 November 2026, but what it waits for is over only about 20 November 2026.',
  ]);
});

test('three are named, the rest is counted; a last day before the plan is past', () => {
  const steps = (count: number) => ['a', 'b', 'c', 'd', 'e'].slice(0, count).map((step) => task(step, 70, FROM, TO));
  const said = (count: number, asOf = '2026-10-01') => {
    const home = yard({ saturday: 1 });
    return planAgenda({ tasks: steps(count), household: home, asOf, places: home.places }).misfits[0]!.text;
  };
  expect(said(3)).toMatch(/^juniper: a; juniper: b; juniper: c: 3\.5 h/);
  expect(said(4)).toMatch(/^juniper: a; juniper: b; juniper: c; and 1 more step: 4\.7 h/);
  expect(said(5)).toMatch(/^juniper: a; juniper: b; juniper: c; and 2 more steps: 5\.8 h/);
  expect([said(3).endsWith('is needed.'), said(3, TO).endsWith('is needed.')]).toEqual([true, true]);
  expect(said(3, '2026-11-02')).toMatch(/is needed\. That day is past\.$/);
});

test('where there are hours, what is not to be had in them is named', () => {
  // Two machines on one stand, on one Saturday.
  const two = (needs: AgendaTask['needs'] | object, home: Household) =>
    texts(
      ['juniper', 'magpie'].map((of) => task('a', 30, FROM, '2026-10-31', { machine: of, needs })),
      home,
    );
  const said = 'magpie: a: 30 min of work up to 31 October 2026: there are hours for it, but';
  expect(two({ stand: true }, yard({ saturday: 3 }))).toEqual([`${said} the stand is not to be had in them.`]);
  expect(two({ stand: true, bench: true }, yard({ saturday: 3 }))).toEqual([
    `${said} the stand and the bench is not to be had in them.`,
  ]);
  // One pair of hands, the bench free: it is the hours that are lacking, as many as are not left over.
  expect(two({ bench: true }, yard({ saturday: 0.75 }))).toEqual([
    'magpie: a: 30 min of work without a place up to 31 October 2026: 15 min more needed by then.',
  ]);
});

test('the way to a place is not counted among the hours that are free', () => {
  // 60 min less 10 for the way: 20 are left behind the first, who is at the place already; 35 are asked for.
  const places = [place({ tripMinutes: 10 }), place({ id: 'hall', tripMinutes: 12 })];
  const missing = (over: object) =>
    plan([task('a', 30, FROM, TO), task('b', 35, FROM, TO, over)], yard({ saturday: 1 }, { places })).misfits[0]!;
  // The longer one is left out of the two, or the one that is further off.
  expect(missing({}).hoursMissing * 60).toBeCloseTo(35 - 20, 9);
  // At the hall: the way there takes 12 min more, so 8 are left.
  expect(missing({ placeId: 'hall' }).hoursMissing * 60).toBeCloseTo(35 - 8, 9);
});

test('no session at all, and a session that the way alone fills', () => {
  const far = yard({ saturday: 0.5 }, { places: [place({ tripMinutes: 40 })] });
  expect(texts([task('a', 30, FROM, TO)], far)).toEqual([
    'juniper: a: 30 min of work in one go up to 1 November 2026, but the longest session has 0 min: one longer day is needed.',
  ]);
  expect(texts([task('a', 30, FROM, '2026-10-30'), task('b', 30, FROM, TO)], yard({ saturday: 1 }))).toEqual([
    'juniper: a: 30 min of work without a place: no free hours at all in its time up to 30 October 2026.',
  ]);
});
