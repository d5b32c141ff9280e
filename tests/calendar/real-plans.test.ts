import { expect, test } from 'vitest';
import { calendarOf, monthViews } from '../../src/calendar/index.ts';
import { readFolder } from '../../src/content/read-folder.ts';
import { addDays } from '../../src/planner/dates.ts';
import type { Household, Machine } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import type { PlanEvent, SeasonPlan } from '../../src/planner/season-plan.ts';
import { readBack } from './read-back.ts';

const AS_OF = '2026-11-25';

function householdOf(folder: string): Household {
  const library = 'public/climate/normals.json';
  const { household } = readFolder(folder, { asOf: AS_OF, procedures: 'content/procedures', library });
  if (!household) throw new Error(`found problems in ${folder}, expected a household`);
  return household;
}
const planOf = (household: Household) => planSeason(household, { asOf: AS_OF, quick: true }).plan;
const changed = (household: Household, id: string, change: (machine: Machine) => Machine): Household => ({
  ...household,
  machines: household.machines.map((machine) => (machine.id === id ? change(machine) : machine)),
});
const uids = (plan: SeasonPlan) => plan.events.map((event) => event.uid);

/** Work in a session says its hour. */
const atAnHour = (title: string) => /: \d\d:\d\d, /.test(title);

const demo = householdOf('content');
const demoPlan = planOf(demo);

test.each(['content', 'tests/households/south', 'tests/households/smallest', 'tests/households/workshop'])(
  'the calendar of %s is read back as its plan',
  (folder) => {
    const plan = folder === 'content' ? demoPlan : planOf(householdOf(folder));
    expect(plan.events.length).toBeGreaterThan(plan.machines.length * 3);
    expect(new Set(uids(plan)).size).toBe(plan.events.length);
    const expected = plan.events.map((e) => [e.uid, e.date, e.title]);
    expect(readBack(calendarOf(plan)).events.map((e) => [e.uid, e.start, e.summary])).toEqual(expected);
    for (const { id } of plan.machines) {
      expect(readBack(calendarOf(plan, { machineId: id })).events.map((e) => e.start)).toEqual(
        plan.events.filter((e) => e.machines.includes(id)).map((e) => e.date),
      );
    }
    const shown = monthViews(plan).flatMap((month) => month.weeks.flat().filter((day) => day.labels.length > 0));
    expect(shown.map((day) => day.date)).toEqual([...new Set(plan.events.map((e) => e.date))]);
  },
);

test('no text of a real plan has a name left unfilled', () => {
  for (const { title, text } of demoPlan.events) expect(`${title}\n${text}`).not.toMatch(/\{[\w.-]+\}|undefined|NaN/);
});

test('every charge of a real plan is told on its day, and every session of work on its own', () => {
  for (const machine of demoPlan.machines) {
    const mine = demoPlan.events.filter((e) => e.machines.includes(machine.id));
    const charges = (machine.battery?.charges ?? []).map((c) => c.date);
    expect(mine.filter((e) => e.category === 'charge').map((e) => e.date)).toEqual(charges);
    const work = demoPlan.sessions
      .filter((s) => s.date <= machine.startUp.firstUse)
      .filter((s) => s.steps.some((x) => x.machine === machine.id && !x.step.startsWith('strip.order.')))
      .map((s) => s.date);
    const told = new Set(mine.filter((e) => atAnHour(e.title)).map((e) => e.date));
    expect([...told]).toEqual([...new Set(work)]);
  }
});

test('nothing but a re-check lies after the first use of its machine', () => {
  for (const machine of demoPlan.machines) {
    const late = demoPlan.events.filter((e) => e.machine === machine.id && e.date > machine.startUp.firstUse);
    expect(
      late.every((e) => e.title.includes('re-check')),
      late.map((e) => e.title).join(),
    ).toBe(true);
  }
});

test('a renamed machine changes titles only', () => {
  const renamed = planOf(changed(demo, 'juniper', (m) => ({ ...m, name: 'June' })));
  expect(renamed.events.map((e) => [e.uid, e.date])).toEqual(demoPlan.events.map((e) => [e.uid, e.date]));
});

test('a season that is moved by three weeks keeps the reminders of its machine', () => {
  // Old Fern's lead is off in time: else its charge comes while Sleet is in use in the one plan and at rest in the other, and
  // what was one trip for both is two.
  const home = changed(demo, 'old-fern', (m) => ({
    ...m,
    doneSteps: [...m.doneSteps, { stepId: 'battery.off', date: m.season.lastUse }],
  }));
  const still = planOf(home);
  const moved = planOf(
    changed(home, 'sleet', (m) => ({
      ...m,
      season: { ...m.season, lastUse: addDays(m.season.lastUse, 21), firstUse: addDays(m.season.firstUse, 21) },
    })),
  );
  const of = (plan: SeasonPlan, kept: ReadonlySet<string>) =>
    plan.events.filter(
      (e) =>
        e.machine === 'sleet' && ['charge', 'look-in', 'order', 'paperwork'].includes(e.category) && !kept.has(e.uid),
    );
  const come = of(moved, new Set(uids(still)));
  const gone = of(still, new Set(uids(moved)));
  // A paper that ran out within the rest may now lie outside it, and a look-in on the day of a charge is told with the
  // charge; nothing else comes or goes.
  const free = (e: PlanEvent) => e.category === 'charge' || e.category === 'order';
  expect([...come, ...gone].filter(free)).toEqual([]);
  // Of the look-ins, by their numbers, those come or go that only one of the two plans has a reminder of their own for; three
  // weeks bring the middle of one month more or less into the rest.
  const sleet = (plan: SeasonPlan) => plan.machines.find((m) => m.id === 'sleet')!;
  const rounds = (plan: SeasonPlan) => sleet(plan).steps.filter(({ id }) => id.startsWith('look-in.round.'));
  const own = (plan: SeasonPlan) => {
    const charged = sleet(plan).battery!.charges.map(({ date }) => date);
    return new Set(rounds(plan).flatMap(({ id, date }) => (charged.includes(date!) ? [] : [id])));
  };
  const lookIns = [...come, ...gone].filter((e) => e.category === 'look-in');
  const [before, after] = [own(still), own(moved)];
  const ofOne = [...before].filter((id) => !after.has(id)).length + [...after].filter((id) => !before.has(id)).length;
  expect(lookIns).toHaveLength(ofOne);
  expect(Math.abs(rounds(still).length - rounds(moved).length)).toBeLessThanOrEqual(1);
});

test('a job that is struck out leaves all of the other machines but the filling of their sessions', () => {
  const struck = planOf(changed(demo, 'juniper', (m) => ({ ...m, jobs: m.jobs.slice(1) })));
  const others = (plan: SeasonPlan) =>
    plan.events
      .filter((e) => !e.machines.includes('juniper') && !atAnHour(e.title))
      .map((e) => e.uid)
      .sort();
  expect(others(struck)).toEqual(others(demoPlan));
});
