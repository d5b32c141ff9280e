/** What the days of a machine's steps say of its season, word by word; days worked out on the calendar. */
import { expect, test } from 'vitest';
import type { DraftMachine } from '../../src/planner/machine-plan.ts';
import { datedSteps, layUpDays, startUpDays } from '../../src/planner/season-days.ts';
import type { PlanStep } from '../../src/planner/season-plan.ts';
import { overdueWarnings, seasonWarnings } from '../../src/planner/season-warnings.ts';
import { machine, place } from './fluids/fixture.ts';
import { NO_NEEDS, plainStep as step } from './plain-step.ts';

// Lay-up to 15 November, start-up from 20 March, ride to 1 May.
const SEASON = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] as string[] };
const draft = (steps: PlanStep[] = [], over = {}): DraftMachine =>
  ({
    machine: machine({ season: SEASON, doneSteps: [], file: 'machines/juniper.yaml', ...over }),
    context: { place: place() },
    steps,
  }) as unknown as DraftMachine;
const METRIC = { locale: 'en-GB', units: 'metric' } as const;

test('a step has the day of the agenda, unless it has one of its own; a lay-up step that is done that of its tick', () => {
  const steps = [
    step('wash'),
    step('look', { phase: 'look-in', date: '2026-12-15' }),
    step('oil', { done: true }),
    step('brakes', { phase: 'start-up', done: true }),
    step('late', { latest: '2026-10-30' }),
  ];
  const doneSteps = [
    { stepId: 'oil', date: '2026-10-28' },
    { stepId: 'brakes', date: '2026-10-29' },
  ];
  const found = datedSteps(
    draft(steps, { doneSteps }),
    (id) => (id === 'wash' ? '2026-11-07' : undefined),
    '2026-11-01',
  );
  expect(found.map(({ id, date, overdue }) => [id, date, overdue])).toEqual([
    ['wash', '2026-11-07', undefined],
    ['look', '2026-12-15', undefined],
    ['oil', '2026-10-28', undefined],
    ['brakes', undefined, undefined],
    ['late', undefined, '2026-10-30'],
  ]);
});

test('the lay-up lasts from its first day to its last, is complete when all of it is done, and may have no day at all', () => {
  const days = (steps: PlanStep[]) => layUpDays(draft(), steps, '2026-11-01');
  expect(days([step('b', { date: '2026-11-07' }), step('a', { date: '2026-11-01' })])).toEqual({
    start: '2026-11-01',
    done: '2026-11-07',
    complete: false,
  });
  const done = [step('a', { date: '2026-11-01', done: true })];
  expect(days(done)).toMatchObject({ complete: true, done: '2026-11-01' });
  expect(days([...done, step('b')])).toMatchObject({ complete: false, done: '2026-11-01' });
  expect(days([])).toEqual({ start: '2026-10-25', done: '2026-10-25', complete: true });
  expect(days([step('a')])).toEqual({ start: '2026-10-25', done: '2026-11-15', complete: false });
  // Used oil has time after it, a look-in is no lay-up.
  const others = [
    step('oil', { date: '2027-03-01', latest: '2027-04-10' }),
    step('look', { phase: 'look-in', date: '2026-12-15' }),
  ];
  expect(days([...done, ...others])).toMatchObject({ complete: true, done: '2026-11-01' });
  // Three weeks after the last use its days are over, whatever is still to be done.
  const late = (asOf: string, steps: PlanStep[]) => layUpDays(draft(), steps, asOf).late;
  expect([late('2026-11-15', [step('a')]), late('2026-11-16', [step('a')])]).toEqual([undefined, true]);
  expect(late('2026-11-16', done)).toBeUndefined();
});

test('a start-up that is ticked says on which day the machine was made ready', () => {
  const doneSteps = [
    { stepId: 'brakes', date: '2027-03-29' },
    { stepId: 'oil', date: '2027-03-28' },
  ];
  const done = ['brakes', 'oil'].map((id) => sheet(id, undefined, { done: true }));
  const made = (steps: PlanStep[]) => startUpDays(draft(steps, { doneSteps }), steps, '2027-04-01').made;
  expect(made(done)).toBe('2027-03-29');
  expect(made([...done, sheet('tyres', '2027-04-03')])).toBeUndefined();
});

const sheet = (id: string, date: string | undefined, over = {}) => step(id, { phase: 'start-up', date, ...over });

test('the start-up lasts from its first session to its last before the ride', () => {
  const days = (steps: PlanStep[], asOf = '2026-12-01') => startUpDays(draft(), steps, asOf);
  expect(days([])).toEqual({ start: '2027-04-10', ready: '2027-04-10', firstUse: '2027-04-10' });
  const placed = [
    sheet('b', '2027-04-03'),
    sheet('a', '2027-03-27'),
    sheet('ride', '2027-04-10', { stage: 'first-ride' }),
    sheet('again', '2027-04-11', { stage: 'first-ride' }),
    sheet('done', undefined, { done: true }),
    step('wash', { date: '2026-11-01' }),
  ];
  expect(days(placed)).toEqual({ start: '2027-03-27', ready: '2027-04-03', firstUse: '2027-04-10' });
  // One that found no day: not ready before the first use, nor before today, and three weeks after it the season is over.
  const lacking = [...placed, sheet('none', undefined)];
  expect(days(lacking)).toEqual({ start: '2027-03-27', ready: '2027-04-10', firstUse: '2027-04-10' });
  expect(days(lacking, '2027-04-12')).toMatchObject({ ready: '2027-04-12', firstUse: '2027-04-12' });
  expect(days(lacking, '2027-06-01')).toMatchObject({ ready: '2027-05-01', firstUse: '2027-05-01' });
  // What of it has a day after today is waited for as well: nobody rides before the brakes of next Saturday.
  const late = [sheet('brakes', '2027-04-17'), sheet('none', undefined)];
  expect(days(late, '2027-04-12')).toEqual({ start: '2027-04-17', ready: '2027-04-17', firstUse: '2027-04-17' });
});

test('a first ride that the start-up holds up is made when that is done, one that was made keeps its day', () => {
  const steps = [
    step('brakes', { phase: 'start-up', latest: '2027-04-10' }),
    sheet('ride', '2027-04-10', { stage: 'first-ride' }),
    sheet('made', '2027-04-10', { stage: 'first-ride', done: true }),
    sheet('charge', '2027-04-09', { stage: 'first-ride', latest: '2027-04-09' }),
    sheet('re-check', '2027-04-24', { stage: 'first-ride' }),
  ];
  // The charge that was to be on the eve waits for the start-up's last day, on which its battery may be looked at, and takes a night.
  const dates = datedSteps(draft(steps), (id) => (id === 'brakes' ? '2027-04-17' : undefined), '2027-04-12');
  expect(dates.map(({ date }) => date)).toEqual(['2027-04-17', '2027-04-18', '2027-04-10', '2027-04-17', '2027-04-24']);
});

test('a start-up that has found no day is a danger before the first use, other work a warning, overdue work neither', () => {
  const said = (steps: PlanStep[], asOf = '2026-10-26') => overdueWarnings(draft(), steps, asOf, 'en-GB');
  const brakes = step('brakes', { phase: 'start-up', title: 'Brakes', latest: '2027-04-10' });
  expect(said([brakes, step('wash', { title: 'Wash it' })])).toEqual([
    {
      machine: 'juniper',
      about: 'overdue',
      level: 'danger',
      text: "No day by 10 April 2027 is found for 1 step of Juniper's start-up (Brakes).",
      act: 'Find the hours for it, or move the first use: do not start or use Juniper before every line of its start-up sheet is done. What is done: say so under "Done and measured" on the form, as "start-up" under "done" in a record file, or step by step on the page of the machine.',
    },
    expect.objectContaining({
      level: 'warning',
      // Begun and not done: four weeks from 26 October.
      text: "No day by 23 November 2026 is found for 1 step of Juniper's lay-up (Wash it).",
    }),
  ]);
  expect(said([step('wash')], '2026-12-01')).toEqual([]);
  expect(said([{ ...brakes, date: '2027-04-03' }])).toEqual([]);
  // A re-check has no day before its ride, and taking oil away is no matter of a start-up.
  const recheck = step('re-check', { phase: 'start-up', stage: 'first-ride', latest: '2027-05-01' });
  expect(said([recheck, brakes])[0]!.text).toMatch(/^No day by 10 April 2027 is found for 1 step /);
  expect(said([step('oil', { latest: '2027-04-10' })], '2027-03-20')).toHaveLength(1);
  expect(said([step('oil', { latest: '2027-04-10' })], '2027-03-21')).toEqual([]);
  // What is of use until a day of its own is wanted all the same.
  expect(said([step('swap', { latest: '2027-04-10', useUntil: '2027-05-01' })], '2027-03-21')).toHaveLength(1);
  // Nor is a look-in, which has a day of its own.
  expect(said([step('look', { phase: 'look-in' })])).toEqual([]);
  expect(said([brakes], '2027-04-11')).toHaveLength(1);
});

test('a ride has no day while the start-up has found none', () => {
  const steps = [
    step('brakes', { phase: 'start-up', latest: '2027-04-10' }),
    sheet('ride', '2027-04-10', { stage: 'first-ride' }),
  ];
  const rides = (day: string | undefined) => datedSteps(draft(steps), () => day, '2027-04-09').at(-1)!.date;
  expect(rides(undefined)).toBeUndefined();
  expect(rides('2027-04-10')).toBe('2027-04-10');
});

test('a first use that is past with its start-up not ticked is a danger, and says on which day that is made up for', () => {
  const left = [
    sheet('plugs', '2027-04-17', { title: 'Plugs out' }),
    sheet('brakes', '2027-04-18', { title: 'Brakes' }),
  ];
  const said = (asOf: string, steps: PlanStep[] = left) => overdueWarnings(draft(), steps, asOf, 'en-GB');
  expect(said('2027-04-10')).toEqual([]);
  expect(said('2027-04-12')).toEqual([
    {
      machine: 'juniper',
      about: 'start-up',
      level: 'danger',
      text: "Juniper's first use was to be on 10 April 2027, and 2 steps of its start-up are not ticked (Plugs out; Brakes).",
      act: 'Do not start or use it before every line of its start-up sheet is done, from 17 April 2027 on: it may still be plugged, drained or raised. What is done: say so under "Done and measured" on the form, as "start-up" under "done" in a record file, or step by step on the page of the machine.',
    },
  ]);
  // An electric machine has nothing that is plugged or drained.
  const { engine } = machine();
  const electric = draft([], { engine: { ...engine, cycle: 'electric' } });
  expect(overdueWarnings(electric, left, '2027-04-12', 'en-GB')[0]!.act).toContain(
    'it may still be as the rest left it.',
  );
  // The same is not said again as work that is overdue.
  expect(said('2027-04-12', [{ ...left[0]!, overdue: '2027-04-10' }])).toHaveLength(1);
  expect(said('2027-05-02', [sheet('plugs', undefined)])).toMatchObject([{ level: 'warning' }]);
  expect(said('2027-05-02', [sheet('plugs', undefined)])[0]!.act).toMatch(/sheet is done: it may/);
  expect(said('2027-04-12', [{ ...left[0]!, done: true }])).toEqual([]);
  // The ride itself does not make a machine ready.
  expect(said('2027-04-12', [sheet('ride', '2027-04-10', { stage: 'first-ride' })])).toEqual([]);
});

test('what is overdue is told by its work, with how much, since when, and what to do', () => {
  const late = (id: string, over = {}) => step(id, { overdue: '2026-11-15', date: '2026-12-06', ...over });
  const said = (steps: PlanStep[]) => overdueWarnings(draft(), steps, '2026-12-01', 'en-GB');
  expect(said([step('wash')])).toEqual([]);
  expect(said([late('wash', { title: 'Wash it' })])).toEqual([
    {
      machine: 'juniper',
      about: 'overdue',
      level: 'warning',
      text: "1 step of Juniper's lay-up is overdue, the first since 15 November 2026, and not ticked (Wash it).",
      act: 'Do it as soon as you can: the first day with hours for it is 6 December 2026. What is done: say so under "Done and measured" on the form, as "lay-up" under "done" in a record file, or step by step on the page of the machine, where what is not wanted can be left out.',
    },
  ]);
  const four = [
    late('a', { overdue: '2026-11-14' }),
    late('b', { phase: 'swap', date: '2026-12-05' }),
    late('c', { date: undefined }),
    late('d'),
  ];
  const [layUp, more] = said(four);
  expect(more).toBeUndefined();
  expect(layUp!.text).toBe(
    "4 steps of Juniper's lay-up are overdue, the first since 14 November 2026, and not ticked (a; b; c; and 1 more).",
  );
  expect(layUp!.act).toMatch(/^Do it as soon as you can: the first day with hours for it is 5 December 2026\. /);
  // Today is no day to be waited for.
  expect(said([late('e', { date: '2026-12-01' })])[0]!.act).toMatch(/^Do it today\. /);
  const [job, start] = said([
    late('job', { phase: 'winter', date: undefined }),
    late('brakes', { phase: 'start-up' }),
    late('horn', { phase: 'start-up' }),
  ]);
  expect(job!.text).toMatch(/^1 step of Juniper's winter work is overdue/);
  expect(job!.act).toBe(
    'Do it now. What is done: tick it on the page of the machine, where what is not wanted can be left out.',
  );
  expect(start!.text).toMatch(/^2 steps of Juniper's start-up are overdue.*\(brakes; horn\)\.$/);
  expect(start!.act).toMatch(/as "start-up" under "done"/);
});

test('lay-up work whose time is over is told while the machine starts up, and not before or after', () => {
  const left = [step('wash'), step('swap', { phase: 'swap' }), step('look', { phase: 'look-in' })];
  const said = (asOf: string, steps = left) => overdueWarnings(draft(), steps, asOf, 'en-GB');
  expect(said('2027-03-20')).toEqual([]);
  expect(said('2027-03-21')).toEqual([
    {
      machine: 'juniper',
      about: 'overdue',
      level: 'note',
      text: "2 steps of Juniper's lay-up were never ticked (wash; swap), and it is too late for them now.",
      act: 'The start-up sheet goes through all that they would have changed: look at each, done or not.',
    },
  ]);
  expect(said('2027-04-10')).toHaveLength(1);
  expect(said('2027-05-01')).toHaveLength(1);
  expect(said('2027-05-02')).toEqual([]);
  expect(said('2027-03-21', [step('wash', { done: true }), step('oil', { date: '2027-03-27' })])).toEqual([]);
  expect(said('2027-03-21', [step('oil', { latest: '2027-03-21', date: '2027-03-21' })])).toEqual([]);
  // On its last day it is not too late yet.
  expect(said('2027-03-21', [step('oil', { latest: '2027-03-21' })])).toEqual([]);
  expect(said('2027-03-22', [step('oil', { latest: '2027-03-21' })])).toHaveLength(1);
  expect(said('2027-03-21', [step('wash')])[0]!.text).toBe(
    "1 step of Juniper's lay-up was never ticked (wash), and it is too late for it now.",
  );
});

test('a rest that is over asks for the next one, gravely once its re-check is past', () => {
  const said = (asOf: string, steps: PlanStep[] = []) => seasonWarnings(draft(), steps, asOf, METRIC);
  expect(said('2027-04-10')).toEqual([]);
  expect(said('2027-04-11')).toEqual([
    {
      machine: 'juniper',
      about: 'season',
      level: 'note',
      text: "Juniper's rest ended on 10 April 2027.",
      act: 'Give the next days of last and first use: in the form, or as lastUse and firstUse in machines/juniper.yaml.',
    },
  ]);
  expect(said('2027-05-01')[0]!.level).toBe('note');
  expect(said('2027-05-02')[0]!.level).toBe('warning');
  // While the start-up is wanted, the rest is not over; three weeks after the first use it is.
  const brakes = step('brakes', { phase: 'start-up' });
  expect(said('2027-04-11', [brakes])).toEqual([]);
  expect(said('2027-05-02', [brakes])).toHaveLength(1);
  expect(said('2027-04-11', [{ ...brakes, done: true }])).toHaveLength(1);
});

test('days that were only proposed say so, with their reasons in the household’s units', () => {
  const season = { ...SEASON, proposed: true, reasons: ['Nights fall below {0 °C}.', 'It is late.'] };
  const said = (units: 'metric' | 'us') =>
    seasonWarnings(draft([], { season }), [], '2026-10-01', { ...METRIC, units });
  expect(said('metric')).toEqual([
    {
      machine: 'juniper',
      about: 'season',
      level: 'note',
      text: 'The dates of the rest, 25 October 2026 to 10 April 2027, are proposed from the climate. Nights fall below 0 °C. It is late.',
      act: 'Give both days once you know them: in the form, or as lastUse and firstUse in machines/juniper.yaml.',
    },
  ]);
  expect(said('us')[0]!.text).toContain('Nights fall below 32 °F. It is late.');
});

test('look-ins that nobody ticks are told once two have passed, and where a maintainer stays on with what to look for', () => {
  const look = (date: string, done = false) => step(`look.${date}`, { phase: 'look-in', date, done });
  const [dec, jan, feb] = ['2026-12-01', '2027-01-01', '2027-02-01'];
  const said = (asOf: string, looks: PlanStep[], over = {}) =>
    overdueWarnings({ ...draft(), ...over } as DraftMachine, looks, asOf, 'en-GB').filter(
      ({ about }) => about === 'look-in',
    );
  expect(said('2027-01-01', [look(dec), look(jan), look(feb)])).toEqual([]);
  expect(said('2027-01-02', [look(dec), look(jan), look(feb)])).toEqual([
    {
      machine: 'juniper',
      about: 'look-in',
      level: 'note',
      text: '2 look-ins at Juniper have passed without a tick, the first on 1 December 2026.',
      act: expect.stringMatching(/^Look in once: .* Tick it on the page of the machine\.$/),
    },
  ]);
  const kept = { battery: { care: 'maintainer' } };
  expect(said('2027-01-02', [look(dec), look(jan)], kept)).toEqual([
    expect.objectContaining({
      level: 'warning',
      act: expect.stringMatching(/mains and both clips, and read the volts/),
    }),
  ]);
  expect(said('2027-01-02', [look(dec), look(jan)], { battery: { care: 'visits' } })[0]!.level).toBe('note');
  // One that was made up for by the next is no matter, nor what is over, nor two lines of one look-in.
  expect(said('2027-03-01', [look(dec), look(jan, true), look(feb)])).toEqual([]);
  expect(said('2027-04-11', [look(dec), look(jan), look(feb)])).toEqual([]);
  expect(said('2026-12-20', [look(dec), { ...look(dec), id: 'drive' }])).toEqual([]);
  // A charge has its own warning, and where the lay-up is not done that is told.
  const charge = { ...look(jan), needs: { ...NO_NEEDS, charger: true } };
  expect(said('2027-01-02', [look(dec), charge])).toEqual([]);
  // Who charged it was there.
  expect(said('2027-03-01', [look(dec), { ...charge, done: true }, look(feb)])).toEqual([]);
  expect(said('2027-01-02', [step('wash'), look(dec), look(jan)])).toEqual([]);
  expect(said('2027-01-02', [step('wash', { done: true }), look(dec), look(jan)])).toHaveLength(1);
});
