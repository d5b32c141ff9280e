/** Start-ups near to their first use: days worked out by hand from the hours of each day. Common practice, see the module. */
import { expect, test } from 'vitest';
import type { Household } from '../../src/planner/household.ts';
import { householdAgenda } from '../../src/planner/household-agenda.ts';
import type { DraftMachine } from '../../src/planner/machine-plan.ts';
import type { PlanStep } from '../../src/planner/season-plan.ts';
import { yard } from './agenda/world.ts';
import { machine } from './fluids/fixture.ts';
import { plainStep } from './plain-step.ts';

const WEEKENDS = { saturday: 2, sunday: 2 };

/** A machine whose first use is Saturday 10 April 2027, so that its start-up may begin on 20 March. */
function draft(steps: PlanStep[], id: string, home: Household): DraftMachine {
  const season = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] };
  return { machine: machine({ id, season }), context: { place: home.places[0]! }, steps } as unknown as DraftMachine;
}

/** The start-up of one machine: steps of these minutes, each behind the one before. */
const startUp = (minutes: readonly number[], over: Partial<PlanStep> = {}): PlanStep[] =>
  minutes.map((each, i) =>
    plainStep(`s${i}`, {
      phase: 'start-up',
      minutes: each,
      earliest: '2027-03-20',
      latest: '2027-04-10',
      after: i === 0 ? [] : [`s${i - 1}`],
      ...(i === 0 ? over : {}),
    }),
  );

function daysOf(steps: PlanStep[], over: Partial<Household> = {}, busy = new Map<string, number>()): string[] {
  const home = yard(WEEKENDS, over);
  const { dateOf, misfits } = householdAgenda([draft(steps, 'juniper', home)], home, {
    asOf: '2026-12-01',
    places: home.places,
    busy,
    quick: false,
  });
  expect(misfits).toEqual([]);
  return [...dateOf.values()].sort();
}

test('a start-up lies in the last weekend before the first use, not three weeks before it', () => {
  expect(daysOf(startUp([60, 60]))).toEqual(['2027-04-03', '2027-04-03']);
});

test('it begins earlier where these days lack the hours for its work and a quarter more', () => {
  // Six hours want seven and a half: 10, 4 and 3 April and 28 March have two each.
  expect(daysOf(startUp([60, 60, 60, 60, 60, 60]))).toEqual(
    ['2027-03-28', '2027-04-03', '2027-04-04'].flatMap((day) => [day, day]),
  );
});

test('it is eased little by little where that does not do: first to twice its work', () => {
  // Four steps of 61 min take a session each. A quarter more than their 4.07 h is to be had on 10, 4 and 3 April, which are three
  // sessions; twice as much from 27 March on.
  expect(daysOf(startUp([61, 61, 61, 61]))).toEqual(['2027-03-27', '2027-03-28', '2027-04-03', '2027-04-04']);
});

test('days away and hours that are taken count for nothing', () => {
  const away = [{ from: '2027-03-29', to: '2027-04-05' }];
  // Two hours want two and a half: 10 April and 28 March have two each.
  expect(daysOf(startUp([60, 60]), { away })).toEqual(['2027-03-28', '2027-03-28']);
  const busy = new Map(['2027-04-03', '2027-04-04', '2027-04-10'].map((day) => [day, 120]));
  // 28 and 27 March have two hours each, one session is enough.
  expect(daysOf(startUp([60, 60]), {}, busy)).toEqual(['2027-03-27', '2027-03-27']);
});

test('machines that start up on the same day share these hours', () => {
  const home = yard(WEEKENDS);
  const drafts = ['juniper', 'magpie'].map((id) => draft(startUp([60, 60]), id, home));
  const { dateOf, misfits } = householdAgenda(drafts, home, {
    asOf: '2026-12-01',
    places: home.places,
    busy: new Map(),
    quick: false,
  });
  expect(misfits).toEqual([]);
  // Each wants two and a half hours: 10, 4 and 3 April have six.
  expect([...dateOf.values()].sort()).toEqual(['2027-04-03', '2027-04-03', '2027-04-04', '2027-04-04']);
});

test('of machines with different first uses, the hours near to the later one are the later one’s', () => {
  const home = yard(WEEKENDS);
  const shifted = startUp([60, 60, 60, 60, 60, 60]).map((step) => ({
    ...step,
    earliest: '2027-03-13',
    latest: '2027-04-03',
  }));
  const early = draft(shifted, 'magpie', home);
  const season = { ...early.machine.season, firstUse: '2027-04-03' };
  const drafts = [
    { ...early, machine: { ...early.machine, season } },
    draft(startUp([60, 60, 60, 60, 60, 60]), 'juniper', home),
  ];
  const days = (order: DraftMachine[]) => {
    const { dateOf, misfits } = householdAgenda(order, home, {
      asOf: '2026-12-01',
      places: home.places,
      busy: new Map(),
      quick: false,
    });
    expect(misfits).toEqual([]);
    return [...dateOf]
      .filter(([key]) => key.startsWith('juniper'))
      .map(([, date]) => date)
      .sort();
  };
  // Juniper wants seven and a half hours: 10, 4 and 3 April and 28 March. Magpie, who is wanted a week before, has those before them.
  for (const order of [drafts, drafts.toReversed()]) expect(days(order)[0]! >= '2027-03-28').toBe(true);
});

test('neither the work of other months nor what comes after the first use asks for room before it', () => {
  const layUp = plainStep('wash', { phase: 'lay-up', minutes: 110, earliest: '2026-12-02', latest: '2026-12-20' });
  const more = [1, 2, 3, 4].map((k) => ({ ...layUp, id: `wash-${k}` }));
  const recheck = plainStep('re-check', {
    phase: 'start-up',
    stage: 'first-ride',
    minutes: 110,
    earliest: '2027-04-11',
    latest: '2027-05-01',
  });
  const days = daysOf([layUp, ...more, ...startUp([60, 60]), recheck, { ...recheck, id: 're-check-2' }]);
  expect(days.filter((day) => day > '2026-12-31')).toEqual(['2027-04-03', '2027-04-03', '2027-04-11', '2027-04-17']);
  // Nor do the hours after the first use count for it: six hours want those from 28 March on, as without the re-check.
  const six = daysOf([...startUp([60, 60, 60, 60, 60, 60]), { ...recheck, minutes: 10 }]);
  expect(six).toEqual([...['2027-03-28', '2027-04-03', '2027-04-04'].flatMap((day) => [day, day]), '2027-04-11']);
});

test('what does not fit into the last days has all three weeks after all', () => {
  // Ten days must pass after the first step.
  expect(daysOf(startUp([30, 30], { waitH: 240 }))).toEqual(['2027-03-20', '2027-04-03']);
});

test('a re-check is on another day than the start-up, however late that is', () => {
  // The two hours of 10 April would hold both.
  const steps = startUp([60]).map((step) => ({ ...step, earliest: '2027-04-10' }));
  const recheck = plainStep('re-check', {
    phase: 'start-up',
    stage: 'first-ride',
    minutes: 20,
    earliest: '2027-04-10',
    latest: '2027-05-01',
    after: ['s0'],
  });
  expect(daysOf([...steps, recheck])).toEqual(['2027-04-10', '2027-04-11']);
});
