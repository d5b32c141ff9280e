import { expect, test } from 'vitest';
import { recordOfFile } from '../../src/content/records.ts';
import { emptyRecord } from '../../src/planner/bench-record.ts';
import { readWith } from './helpers.ts';

test('readings of file and records stand together, in the order of their days', () => {
  const { household } = readWith({}, 'workshop');
  const bike = household!.machines[0]!;
  expect(bike.readings).toEqual([
    { date: '2026-11-08', volts: 12.55, temperatureC: 4, restedH: 12 },
    { date: '2026-11-21', volts: 12.48, temperatureC: 1, restedH: 300 },
  ]);
});

test('the export of a record is the newest change of the content where nothing newer is written', () => {
  expect(readWith({}, 'workshop').household!.revised).toBe('2026-11-22T17:40:00.000Z');
});

test('a record exported twice counts once', () => {
  const { household, problems } = readWith(
    {
      'records/bike/again.yaml':
        'readings:\n  - date: "2026-11-21"\n    voltage: 12.48 V\n    temperature: 1 °C\n    rested: 300 h\n',
    },
    'workshop',
  );
  expect(problems).toEqual([]);
  expect(household!.machines[0]!.readings).toHaveLength(2);
});

test('finished jobs, steps, charges and what lies where are taken over', () => {
  const { household } = readWith(
    {
      'records/bike/b.yaml': [
        'finishedJobs: [valves]',
        'odometer: 41300 km',
        'charged: [{ date: "2026-11-22" }]',
        'done: [{ step: oil.change, date: "2026-10-26" }]',
        'skipped: [{ step: plugs-in.exhaust, date: "2026-10-26", why: No plug }]',
        'asLeft:',
        '  - { item: tank, where: Top shelf, since: "2026-11-14" }',
        '',
      ].join('\n'),
      'records/bike/c.yaml': 'asLeft: [{ item: tank, where: Under the bench, since: "2026-11-20" }]\n',
    },
    'workshop',
  );
  const bike = household!.machines[0]!;
  expect(bike.jobs.map((j) => [j.id, j.done])).toEqual([
    ['valves', true],
    ['cables', false],
  ]);
  expect(bike.odometerKm).toBe(41300);
  expect(bike.charged).toEqual([{ date: '2026-11-22', toPct: 100 }]);
  expect(bike.doneSteps).toEqual([{ stepId: 'oil.change', date: '2026-10-26' }]);
  expect(bike.skippedSteps).toEqual([{ stepId: 'plugs-in.exhaust', date: '2026-10-26', why: 'No plug' }]);
  expect(bike.asLeft).toEqual([{ item: 'tank', where: 'Under the bench', since: '2026-11-20' }]);
});

test('a record names its season for all its ticks, or a tick its own', () => {
  const record = [
    'format: 1',
    'season: "2026-11"',
    'done: [{ step: oil.change, date: "2026-10-26" }, { step: wash.wash, date: "2026-03-26", season: "2025-11" }]',
    'skipped: [{ step: plugs-in.exhaust, date: "2026-10-26" }]',
    '',
  ].join('\n');
  const bike = readWith({ 'records/bike/b.yaml': record }, 'workshop').household!.machines[0]!;
  expect(bike.doneSteps.map((d) => d.season)).toEqual(['2025-11', '2026-11']);
  expect(bike.skippedSteps![0]!.season).toBe('2026-11');
});

test.each([
  ['format: 2', /another version of Idle Season/],
  ['season: "2026"', /05 or 11/],
])('a record with %s is refused, and it is said what to do', (line, fix) => {
  const { problems } = readWith({ 'records/bike/b.yaml': `${line}\n` }, 'workshop');
  expect(problems.map((p) => [p.file, p.line])).toEqual([['records/bike/b.yaml', 1]]);
  expect(problems[0]!.fix).toMatch(fix);
});

test('a record that says nothing is the empty one', () => {
  expect(recordOfFile({})).toEqual(emptyRecord());
});
