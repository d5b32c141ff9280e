/** Which steps want a session and between which days: windows worked out by hand from three weeks on each side of a rest. */
import { expect, test } from 'vitest';
import { agendaTasks, movesWork, standing, visitMinutes } from '../../src/planner/agenda-tasks.ts';
import type { DraftMachine } from '../../src/planner/machine-plan.ts';
import type { PlanStep } from '../../src/planner/season-plan.ts';
import { machine, place } from './fluids/fixture.ts';
import { NO_NEEDS, plainStep as step } from './plain-step.ts';

// Lay-up to 15 November, start-up from 20 March, ride to 1 May.
const SEASON = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] };
const draft = (steps: PlanStep[], tripMinutes = 10, id = 'juniper'): DraftMachine =>
  ({
    machine: machine({ id, season: SEASON }),
    context: { place: place({ id: 'shed', tripMinutes }) },
    steps,
  }) as unknown as DraftMachine;
const stands = (one: PlanStep, asOf: string, others: PlanStep[] = []) => standing(one, draft([one, ...others]), asOf);

test('before its time a step has the days that were given to it', () => {
  expect(stands(step('wash'), '2026-10-01')).toEqual({ earliest: '2026-10-25', latest: '2026-11-15' });
  expect(stands(step('wash'), '2026-10-25')).toEqual({ earliest: '2026-10-25', latest: '2026-11-15' });
});

test('what is done or has a day of its own wants no session', () => {
  expect(stands(step('wash', { done: true }), '2026-10-26')).toBeUndefined();
  expect(stands(step('look', { date: '2026-12-15' }), '2026-10-26')).toBeUndefined();
});

test('within the lay-up nothing is planned on a day gone by, and its end is no wall', () => {
  // Four weeks from 1 November are 29 November.
  expect(stands(step('wash'), '2026-11-01')).toEqual({ earliest: '2026-11-01', latest: '2026-11-29' });
  // One with a last day of its own keeps it.
  expect(stands(step('test', { latest: '2026-11-10' }), '2026-11-01')).toEqual({
    earliest: '2026-11-01',
    latest: '2026-11-10',
  });
});

test('what has its own last day of use is wanted after the start-up has begun', () => {
  expect(stands(step('wash'), '2027-03-25')).toBeUndefined();
  expect(stands(step('coolant.test', { latest: '2026-11-10', useUntil: '2027-05-01' }), '2027-03-25')).toEqual({
    earliest: '2027-03-25',
    latest: '2027-04-22',
    overdue: '2026-11-10',
  });
});

test('past its last day it is overdue and wanted within four weeks, but no later than it has a use', () => {
  expect(stands(step('wash'), '2026-11-16')).toEqual({
    earliest: '2026-11-16',
    latest: '2026-12-14',
    overdue: '2026-11-15',
  });
  expect(stands(step('wash'), '2027-03-10')).toEqual({
    earliest: '2027-03-10',
    latest: '2027-03-20',
    overdue: '2026-11-15',
  });
  expect(stands(step('wash'), '2027-03-20')?.latest).toBe('2027-03-20');
  expect(stands(step('wash'), '2027-03-21')).toBeUndefined();
  expect(stands(step('swap', { phase: 'swap' }), '2027-03-21')).toBeUndefined();
});

test('winter work has a use until the first use, and three weeks longer where it was begun', () => {
  const late = step('late', { phase: 'winter', latest: '2027-04-01' });
  expect(stands(late, '2027-04-10')).toEqual({ earliest: '2027-04-10', latest: '2027-04-10', overdue: '2027-04-01' });
  expect(stands(late, '2027-04-11')).toBeUndefined();
  const begun = [step('begun', { phase: 'winter', done: true })];
  expect(stands(late, '2027-04-11', begun)?.latest).toBe('2027-05-01');
  expect(stands(late, '2027-05-02', begun)).toBeUndefined();
  // What was done of another phase is no beginning of this one.
  expect(stands(late, '2027-04-11', [step('laid up', { done: true })])).toBeUndefined();
});

test('a start-up is to be done by the first use, and once that is past within three weeks, begun or not', () => {
  const late = step('late', { phase: 'start-up', latest: '2027-04-01' });
  expect(stands(late, '2027-04-10')).toEqual({ earliest: '2027-04-10', latest: '2027-04-10', overdue: '2027-04-01' });
  expect(stands(late, '2027-04-11')).toEqual({ earliest: '2027-04-11', latest: '2027-05-01', overdue: '2027-04-01' });
  expect(stands(late, '2027-05-01')?.latest).toBe('2027-05-01');
  expect(stands(late, '2027-05-02')).toBeUndefined();
});

test('winter work without days lies between lay-up and start-up', () => {
  const bare = step('job', { phase: 'winter', earliest: undefined, latest: undefined });
  expect(stands(bare, '2026-10-01')).toEqual({ earliest: '2026-11-15', latest: '2027-03-20' });
  const from = step('job', { phase: 'winter', earliest: '2027-03-25', latest: undefined });
  expect(stands(from, '2026-10-01')).toEqual({ earliest: '2027-03-25', latest: '2027-03-25' });
});

test('a refit on the start-up sheet without days of its own lies in the start-up', () => {
  const refit = step('refit', { phase: 'start-up', earliest: undefined, latest: undefined });
  expect(stands(refit, '2026-10-01')).toEqual({ earliest: '2027-03-20', latest: '2027-04-10' });
});

test('a task of the agenda is its step: what it follows, goes on from, waits and competes for', () => {
  const needs = { ...NO_NEEDS, stand: true };
  const steps = [
    step('wash', { waitH: 3 }),
    step('start', { after: ['wash'], goesOnFrom: 'wash', needs, title: 'Start it' }),
    step('done', { done: true }),
    step('job', { phase: 'winter' }),
  ];
  const tasks = agendaTasks(draft(steps), '2026-10-01');
  expect(tasks.map(({ key }) => key)).toEqual(['juniper/wash', 'juniper/start', 'juniper/job']);
  expect(tasks[1]).toMatchObject({
    machine: 'juniper',
    step: 'start',
    title: 'Juniper: Start it',
    work: 'Start it',
    after: ['juniper/wash'],
    goesOnFrom: 'juniper/wash',
    needs,
    waitH: 0,
    earliest: '2026-10-25',
    latest: '2026-11-15',
  });
  expect(tasks[0]).toMatchObject({ waitH: 3, goesOnFrom: undefined, after: [] });
  // Only a job may be spread over sessions.
  expect(tasks.map(({ splittable }) => splittable)).toEqual([false, false, true]);
});

test('no start-up before the day from which it is wanted, and other work as it was', () => {
  const sheet = { phase: 'start-up' as const, earliest: '2027-03-20', latest: '2027-04-10' };
  const steps = [step('wash'), step('brakes', sheet), step('paper', { ...sheet, latest: '2027-04-01' })];
  const from = (day: string) => agendaTasks(draft(steps), '2026-10-01', day).map(({ earliest }) => earliest);
  expect(from('2027-04-02')).toEqual(['2026-10-25', '2027-04-02', '2027-04-01']);
  expect(from('2027-03-01')).toEqual(['2026-10-25', '2027-03-20', '2027-03-20']);
});

test('the re-check follows all that makes the machine ready, on another day', () => {
  const steps = [
    step('start', { phase: 'start-up' }),
    step('ride', { phase: 'start-up', stage: 'first-ride', date: '2027-04-10', after: ['start'] }),
    step('re-check', { phase: 'start-up', stage: 'first-ride', after: ['ride'] }),
  ];
  const tasks = agendaTasks(draft(steps), '2026-10-01');
  expect(tasks.map(({ after, behindH }) => [after, behindH])).toEqual([
    [[], undefined],
    [['juniper/ride', 'juniper/start'], 18],
  ]);
});

test('work was moved where the first of its days is past', () => {
  expect(movesWork(draft([step('wash')]), '2026-10-25')).toBe(false);
  expect(movesWork(draft([step('wash')]), '2026-10-26')).toBe(true);
  expect(movesWork(draft([step('wash', { done: true })]), '2026-10-26')).toBe(false);
  expect(movesWork(draft([]), '2026-10-26')).toBe(false);
});

test('visits take their minutes and the way, the way to a place once a day', () => {
  const look = (date: string, over = {}) => step(`look ${date}`, { phase: 'look-in', date, minutes: 15, ...over });
  const one = draft([look('2026-12-15'), look('2026-12-15', { minutes: 5 }), look('2027-01-15'), step('wash')]);
  const other = draft([look('2026-12-15'), look('2027-02-15', { done: true })], 10, 'otter');
  expect([...visitMinutes([one, other])]).toEqual([
    ['2026-12-15', 15 + 10 + 5 + 15],
    ['2027-01-15', 15 + 10],
  ]);
  expect(visitMinutes([]).size).toBe(0);
});
