/** A machine with what was measured and done on it. */
import { expect, test } from 'vitest';
import { type BenchRecord, emptyRecord, sameKey, withRecords } from '../../src/planner/bench-record.ts';
import { job, machine } from './fluids/fixture.ts';

const record = (over: Partial<BenchRecord>): BenchRecord => ({ ...emptyRecord(), ...over });
const reading = (date: string, volts = 12.5) => ({ date, volts, temperatureC: 4, restedH: 12 });

test('without a record the machine is what its own file says', () => {
  const bike = machine();
  expect(withRecords(bike, [])).toBe(bike);
  expect(withRecords(bike, [emptyRecord()])).toEqual({
    ...bike,
    skippedSteps: [],
    odometerKm: undefined,
    engineHours: undefined,
  });
});

test('what was measured stands in the order of its days, of one day as it came, and what both say stands once', () => {
  const bike = machine({ readings: [reading('2026-11-08'), reading('2026-12-01', 12.4)] });
  const { volts, ...rest } = reading('2026-12-01', 12.4);
  const { readings } = withRecords(bike, [
    record({ readings: [reading('2026-12-20'), reading('2026-11-08', 12.3)] }),
    record({
      readings: [reading('2026-11-01'), { ...rest, volts }, { ...reading('2026-11-08'), note: undefined } as never],
    }),
  ]);
  expect(readings.map((r) => [r.date, r.volts])).toEqual([
    ['2026-11-01', 12.5],
    ['2026-11-08', 12.5],
    ['2026-11-08', 12.3],
    ['2026-12-01', 12.4],
    ['2026-12-20', 12.5],
  ]);
});

test('ticks, steps left out, charges and notes are those of the file and of all records', () => {
  const bike = machine({
    doneSteps: [{ stepId: 'wash', date: '2026-11-02' }],
    skippedSteps: [{ stepId: 'wax', date: '2026-11-03' }],
    charged: [{ date: '2026-11-04', toPct: 100 }],
    notes: [{ date: '2026-11-05', text: 'cold' }],
  });
  const found = withRecords(bike, [
    record({
      done: [{ step: 'oil', date: '2026-11-01', season: '2026-11' }],
      skipped: [{ step: 'plugs', date: '2026-11-01', why: 'lost' }],
      charged: [{ date: '2026-11-01', toPct: 80 }],
      notes: [{ date: '2026-11-01', text: 'dry', assembly: 'tank' }],
    }),
  ]);
  expect(found.doneSteps).toEqual([
    { stepId: 'oil', date: '2026-11-01', season: '2026-11' },
    { stepId: 'wash', date: '2026-11-02' },
  ]);
  expect(found.skippedSteps).toEqual([
    { stepId: 'plugs', date: '2026-11-01', why: 'lost' },
    { stepId: 'wax', date: '2026-11-03' },
  ]);
  expect(found.charged).toEqual([
    { date: '2026-11-01', toPct: 80 },
    { date: '2026-11-04', toPct: 100 },
  ]);
  expect(found.notes).toEqual([
    { date: '2026-11-01', text: 'dry', assemblyId: 'tank' },
    { date: '2026-11-05', text: 'cold' },
  ]);
  expect(withRecords(machine(), [record({ skipped: [{ step: 'wax', date: '2026-11-03' }] })]).skippedSteps).toEqual([
    { stepId: 'wax', date: '2026-11-03' },
  ]);
});

test('a thing lies where it was told to lie last; what has no day was told before all others', () => {
  const bike = machine({
    asLeft: [
      { item: 'tank', where: 'shelf', since: '2026-11-10' },
      { item: 'seat', where: 'attic' },
    ],
  });
  const { asLeft } = withRecords(bike, [
    record({
      asLeft: [
        { item: 'seat', where: 'hall', since: '2026-11-01' },
        { item: 'tank', where: 'floor', since: '2026-11-09' },
      ],
    }),
    record({ asLeft: [{ item: 'keys', where: 'hook' }] }),
  ]);
  expect(new Map(asLeft.map(({ item, where }) => [item, where]))).toEqual(
    new Map([
      ['tank', 'shelf'],
      ['seat', 'hall'],
      ['keys', 'hook'],
    ]),
  );
  expect(asLeft).toHaveLength(3);
});

test('a job that is finished is done, another is as it was; of each meter the highest count holds', () => {
  const jobs = [job({ id: 'valves' }), job({ id: 'cables' }), job({ id: 'chain', done: true })];
  const bike = machine({ jobs, odometerKm: 41_000 });
  const found = withRecords(bike, [
    record({ finishedJobs: [{ job: 'valves' }], odometer: [{ km: 41_300 }], engineHours: [{ h: 12 }] }),
    record({ odometer: [{ km: 40_900 }] }),
  ]);
  expect(found.jobs.map(({ id, done }) => [id, done])).toEqual([
    ['valves', true],
    ['cables', false],
    ['chain', true],
  ]);
  expect([found.odometerKm, found.engineHours]).toEqual([41_300, 12]);
});

test('things say the same whatever the order of their fields, and though one says nothing in one of them', () => {
  expect(sameKey({ a: 1, b: 'x' })).toBe(sameKey({ b: 'x', a: 1, c: undefined }));
  expect(sameKey({ a: 1, b: 'x' })).not.toBe(sameKey({ a: 1, b: 'y' }));
  expect(sameKey({ a: 1 })).not.toBe(sameKey({ b: 1 }));
});
