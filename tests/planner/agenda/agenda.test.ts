import { expect, test } from 'vitest';
import { addDays } from '../../../src/planner/dates.ts';
import { place } from '../fluids/fixture.ts';
import { datesOf, plan, task, yard } from './world.ts';

// 2026-10-31 is a Saturday, 2026-11-01 a Sunday.
const FROM = '2026-10-25';
const TO = '2026-11-15';

test('steps fill the fewest sessions, as early as that allows', () => {
  const tasks = [30, 45, 60, 45].map((minutes, i) => task(`s${i}`, minutes, FROM, TO));
  const agenda = plan(tasks, yard({ wednesday: 1, saturday: 3 }));
  expect(datesOf(agenda)).toEqual(['2026-10-31']);
  expect(agenda.sessions[0]).toMatchObject({ start: '10:00', hours: 3 });
  expect(agenda.misfits).toEqual([]);
});

test('nothing is done on a day away, or outside its days', () => {
  const home = yard({ saturday: 3 }, { away: [{ from: '2026-10-30', to: '2026-11-01' }] });
  expect(datesOf(plan([task('wash', 60, FROM, TO)], home))).toEqual(['2026-11-07']);
  expect(plan([task('wash', 60, FROM, '2026-11-06')], home).misfits).toMatchObject([
    { hoursMissing: 1, before: '2026-11-06', steps: [{ machine: 'juniper', step: 'wash' }] },
  ]);
});

test('two free hours a week and a frost in ten days: the smallest set that does not fit is named with the hours missing', () => {
  const tasks = [
    task('coolant', 90, '2026-10-26', '2026-11-05'),
    task('wash', 60, '2026-10-26', '2026-11-05'),
    task('battery', 30, '2026-10-26', '2026-11-05'),
    task('wax', 45, '2026-10-26', '2026-11-30', { after: ['wash'] }),
  ];
  const { misfits, dateOf } = plan(tasks, yard({ saturday: 2 }));
  // Leaving the wash out would leave out the wax that follows it: two steps instead of one.
  expect(misfits).toHaveLength(1);
  expect(misfits[0]).toMatchObject({ hoursMissing: 1, before: '2026-11-05', steps: [{ step: 'coolant' }] });
  expect(misfits[0]!.text).toBe(
    'juniper: coolant: 1.5 h of work without a place up to 5 November 2026: 1 h more needed by then.',
  );
  expect(dateOf.get('juniper/wax')).toBe('2026-11-07');
});

test('the hours said to be missing are enough', () => {
  const tasks = [90, 60, 50, 40].map((minutes, i) => task(`s${i}`, minutes, '2026-10-26', '2026-11-05'));
  const missing = plan(tasks, yard({ saturday: 2 })).misfits.reduce((sum, m) => sum + m.hoursMissing, 0);
  expect(missing).toBe(2);
  expect(plan(tasks, yard({ saturday: 2 + missing })).misfits).toEqual([]);
  expect(plan(tasks, yard({ saturday: 2 + missing - 0.1 })).misfits).not.toEqual([]);
});

test('what follows a step that does not fit does not fit either', () => {
  const tasks = [task('a', 240, FROM, TO), task('b', 10, FROM, '2026-12-30', { after: ['a'] })];
  const { misfits, dateOf } = plan(tasks, yard({ saturday: 2 }));
  expect(misfits.map((m) => m.steps[0]!.step)).toEqual(['a', 'b']);
  expect(misfits[0]!.text).toContain('the longest session has 2 h: one longer day is needed');
  expect(misfits[1]!.text).toContain('waits for steps that find no day themselves');
  expect(dateOf.size).toBe(0);
});

test('a winter job longer than a session is spread over several, another step is not', () => {
  const { sessions, misfits } = plan(
    [task('valves', 300, FROM, '2026-12-30', { phase: 'winter', splittable: true })],
    yard({ saturday: 2 }),
  );
  expect(misfits).toEqual([]);
  expect(sessions.map((s) => [s.date, s.hours])).toEqual([
    ['2026-10-31', 2],
    ['2026-11-07', 2],
    ['2026-11-14', 1],
  ]);
});

test('a household without hours is told so for every step', () => {
  const { misfits, sessions } = plan([task('wash', 60, FROM, TO)], yard({}));
  expect(sessions).toEqual([]);
  expect(misfits[0]!.text).toContain('no free hours at all in its time up to 15 November 2026');
});

test('parts that take eight weeks hold the opening back, and what comes too late is told with its day', () => {
  const order = task('order', 10, '2026-10-26', '2027-03-01', { phase: 'winter', waitH: 56 * 24 });
  const off = (latest: string) => task('off', 30, '2026-11-15', latest, { phase: 'winter', after: ['order'] });
  const fits = plan([order, off('2027-03-01')], yard({ saturday: 2 }));
  expect(fits.dateOf.get('juniper/order')).toBe('2026-10-31');
  expect(fits.dateOf.get('juniper/off')).toBe(addDays('2026-10-31', 56));
  const late = plan([order, off('2026-12-20')], yard({ saturday: 2 }));
  expect(late.misfits).toHaveLength(1);
  expect(late.misfits[0]!.text).toMatch(/what it waits for is over only about 26 December 2026/);
});

test('a soak within the session is waited for, and other work goes into the wait', () => {
  const tasks = [
    task('soak', 10, FROM, '2026-10-31', { waitH: 1 }),
    task('rinse', 10, FROM, '2026-10-31', { after: ['soak'] }),
    task('tyres', 40, FROM, '2026-10-31'),
  ];
  const { sessions } = plan(tasks, yard({ saturday: 2 }));
  expect(sessions).toHaveLength(1);
  expect(sessions[0]!.steps.map((s) => s.step)).toEqual(['soak', 'tyres', 'rinse']);
  expect(sessions[0]!.hours).toBeCloseTo(80 / 60, 9);
});

test('two machines do not stand on one stand in the same session', () => {
  const both = (home: ReturnType<typeof yard>) =>
    plan(
      ['juniper', 'magpie'].map((machine) => task('wheel', 30, FROM, TO, { machine, needs: { stand: true } })),
      home,
    );
  expect(datesOf(both(yard({ saturday: 3 })))).toEqual(['2026-10-31', '2026-11-07']);
  const two = ['a', 'b'].map((id) => ({ id, name: id, kinds: ['motorcycle' as const] }));
  expect(datesOf(both(yard({ saturday: 3 }, { stands: two })))).toEqual(['2026-10-31']);
});

test('a charger stays taken until its charge is over', () => {
  const charge = (machine: string) =>
    task('charge', 10, '2026-10-31', '2026-11-01', { machine, needs: { charger: true }, waitH: 12 });
  const home = yard({ saturday: 3, sunday: 3 });
  expect(datesOf(plan([charge('juniper'), charge('magpie')], home))).toEqual(['2026-10-31', '2026-11-01']);
  const third = plan(['juniper', 'magpie', 'badger'].map(charge), home).misfits;
  expect(third).toHaveLength(1);
  expect(third[0]!.text).toContain('there are hours for it, but the charger is not to be had in them');
});

test('what the household does not have is noted, and holds nothing up', () => {
  const tasks = [
    task('wheel', 30, FROM, TO, { kind: 'car', needs: { stand: true, charger: true, bench: true }, chemistry: 'gel' }),
  ];
  const agenda = plan(tasks, yard({ saturday: 3 }, { places: [place({ bench: false })] }));
  expect(agenda.misfits).toEqual([]);
  expect(agenda.notes.map((n) => n.text.replace(/.* (stand|charger|bench),.*/, '$1'))).toEqual(['stand', 'bench']);
});

test('a step for a dry day waits for a time of year that usually has them', () => {
  // The invented place is above 5 °C by day from April to October only.
  const wash = (from: string, to: string) =>
    plan([task('wash', 30, from, to, { needs: { dryDay: true } })], yard({ saturday: 3 }));
  const spring = wash('2027-02-01', '2027-05-01');
  expect(spring.dateOf.get('juniper/wash')! >= '2027-03-15').toBe(true);
  expect(spring.sessions[0]!.title).toContain('on a dry day above 5 °C');
  const winter = wash('2026-12-01', '2027-01-31');
  expect(winter.misfits).toEqual([]);
  expect(winter.notes[0]!.text).toContain('not usual between 1 December 2026 and 31 January 2027');
});

test('in the south the dry and mild time lies at the turn of the year', () => {
  const north = place({ tripMinutes: 0 });
  if (north.climate.kind !== 'normals') throw new RangeError('expected normals');
  const turned = (list: number[]) => [...list.slice(6), ...list.slice(0, 6)];
  const { normals } = north.climate;
  const climate = {
    ...north.climate,
    latitudeDeg: -50,
    normals: { ...normals, meanC: turned(normals.meanC), minC: turned(normals.minC), maxC: turned(normals.maxC) },
  };
  const home = yard({ saturday: 3 }, { places: [{ ...north, climate }] });
  const { dateOf } = plan([task('wash', 30, '2026-07-01', '2026-12-31', { needs: { dryDay: true } })], home);
  expect(dateOf.get('juniper/wash')! > '2026-08-31').toBe(true);
});

test('two machines swap seasons within a fortnight, the one to sleep and the other to wake', () => {
  const tasks = [
    task('fuel', 20, '2026-10-26', '2026-11-01'),
    task('wash', 60, '2026-11-01', '2026-11-14', { after: ['fuel'] }),
    task('battery', 30, '2026-11-01', '2026-11-14', { after: ['wash'] }),
    task('refit', 60, '2026-10-26', '2026-11-08', { machine: 'sleet', phase: 'start-up', kind: 'snow-machine' }),
    task('start', 30, '2026-10-26', '2026-11-08', {
      machine: 'sleet',
      phase: 'start-up',
      kind: 'snow-machine',
      after: ['refit'],
    }),
  ];
  const { sessions, misfits } = plan(tasks, yard({ sunday: 4 }));
  expect(misfits).toEqual([]);
  expect(sessions).toHaveLength(1);
  expect(new Set(sessions[0]!.steps.map((s) => s.machine))).toEqual(new Set(['juniper', 'sleet']));
});

test('within a session the steps of one machine stay together', () => {
  const tasks = ['a', 'b', 'c'].flatMap((step) =>
    ['juniper', 'magpie'].map((machine) => task(step, 20, FROM, '2026-10-31', { machine })),
  );
  const [session] = plan(tasks, yard({ saturday: 2 })).sessions;
  const machines = session!.steps.map((s) => s.machine);
  expect(machines.filter((m, i) => m !== machines[i - 1])).toEqual(['juniper', 'magpie']);
});

test('going to a place costs its trip once a session', () => {
  const tasks = [task('a', 50, FROM, TO), task('b', 50, FROM, TO)];
  const far = { places: [place({ tripMinutes: 20 })] };
  expect(plan(tasks, yard({ saturday: 2 }, far)).sessions).toMatchObject([{ hours: 2 }]);
  expect(plan(tasks, yard({ saturday: 1.9 }, far)).sessions).toHaveLength(2);
});

test('two pairs of hands work side by side, but not on one thing after another', () => {
  const side = [task('a', 60, FROM, '2026-10-31'), task('b', 60, FROM, '2026-10-31')];
  expect(plan(side, yard({ saturday: 1 }, { hands: 2 })).misfits).toEqual([]);
  const line = [side[0]!, task('b', 60, FROM, '2026-10-31', { after: ['a'] })];
  expect(plan(line, yard({ saturday: 1 }, { hands: 2 })).misfits).toHaveLength(1);
});

test('an evening session begins at six, a long one early enough to end by midnight', () => {
  const start = (hours: number) =>
    plan([task('a', 30, '2026-10-26', '2026-10-30')], yard({ wednesday: hours })).sessions[0]!.start;
  expect([start(2), start(10)]).toEqual(['18:00', '14:00']);
});

test('hours, hands and minutes that are none are refused', () => {
  const one = [task('a', 30, FROM, TO)];
  expect(() => plan(one, yard({ saturday: 25 }))).toThrow('found 25 h on saturday');
  expect(() => plan(one, yard({ saturday: 2 }, { hands: Number.NaN }))).toThrow('found NaN pairs of hands');
  expect(() => plan([task('a', Number.NaN, FROM, TO)], yard({ saturday: 2 }))).toThrow('found NaN min');
});
