/** One machine moved among others that keep their days: which days are left for it, worked out by hand from the hours of each. */
import { expect, test } from 'vitest';
import type { Household, IsoDate } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { planMoved } from '../../src/planner/plan-moved.ts';
import type { PlanStep, SeasonPlan } from '../../src/planner/season-plan.ts';
import { yard } from './agenda/world.ts';
import { COVER } from './cover.ts';
import { machine } from './fluids/fixture.ts';
import { plainStep } from './plain-step.ts';

const AS_OF = '2026-10-20';
const RESTS = { lastUse: '2026-10-25', firstUse: '2027-04-10', proposed: false, reasons: [] };
/** Its lay-up lasts three weeks, to 29 November. */
const MOVED = { ...RESTS, lastUse: '2026-11-08' };

/** One place for all plans: what the weather makes of it is worked out once. */
const { places } = yard({});

/** Two hours on Saturdays and nobody there from 22 November on: of the moved lay-up's days the 14th and the 21st are left. */
const home = (juniper = RESTS, over: Partial<Household> = {}): Household =>
  yard(
    { saturday: 2 },
    {
      away: [{ from: '2026-11-22', to: '2026-11-29' }],
      machines: [
        machine({ id: 'sedge', season: RESTS }),
        machine({ id: 'juniper', season: juniper }),
        machine({ id: 'bracken', season: RESTS }),
      ],
      places,
      procedures: COVER,
      ...over,
    },
  );

const onlyJuniper = ({ machines }: Household) => machines.filter(({ id }) => id === 'juniper');

function planned(household: Household): SeasonPlan {
  const { plan, problems } = planSeason(household, { asOf: AS_OF, quick: true });
  expect(problems).toEqual([]);
  return plan;
}

/** The plan before, with the others' work on these days. */
function before(sedge: PlanStep[], bracken: PlanStep[] = [], over: Partial<Household> = {}): SeasonPlan {
  const steps = new Map([
    ['sedge', sedge],
    ['bracken', bracken],
  ]);
  const plan = planned(home(RESTS, over));
  return { ...plan, machines: plan.machines.map((m) => ({ ...m, steps: steps.get(m.id) ?? m.steps })) };
}

function coverOn(plan: SeasonPlan): IsoDate | undefined {
  return plan.machines.find(({ id }) => id === 'juniper')!.steps.find(({ id }) => id === 'cover.cover-on')!.date;
}

const work = (date: IsoDate | undefined, minutes: number, done = false) => plainStep('work', { date, minutes, done });

test('its work has the hours that the work of all others leaves', () => {
  const move = (sedge: PlanStep[], bracken: PlanStep[] = []) =>
    coverOn(planMoved(home(MOVED), before(sedge, bracken), 'juniper'));
  // An hour and a half of two are taken on one of two days.
  expect(move([work('2026-11-14', 90)])).toBe('2026-11-21');
  expect(move([work('2026-11-21', 90)])).toBe('2026-11-14');
  // Two steps of 45 min leave as little, whether of one machine or of two.
  expect(move([work('2026-11-14', 45), work('2026-11-14', 45)])).toBe('2026-11-21');
  expect(move([work('2026-11-14', 45)], [work('2026-11-14', 45)])).toBe('2026-11-21');
  expect(move([work('2026-11-21', 45)], [work('2026-11-21', 45)])).toBe('2026-11-14');
  // No hour is left on either day.
  expect(move([work('2026-11-14', 90)], [work('2026-11-21', 90)])).toBeUndefined();
});

test('work that is done, and work without a day, takes no hours', () => {
  const move = (bracken: PlanStep) =>
    coverOn(planMoved(home(MOVED), before([work('2026-11-14', 90)], [bracken]), 'juniper'));
  expect(move(work('2026-11-21', 90, true))).toBe('2026-11-21');
  expect(move(work(undefined, 90))).toBe('2026-11-21');
});

test('two pairs of hands do an hour and a half of work in three quarters of an hour', () => {
  const over = { hands: 2 };
  const both = before([work('2026-11-14', 90), work('2026-11-21', 90)], [], over);
  expect(coverOn(planMoved(home(MOVED, over), both, 'juniper'))).toBeDefined();
  // Three and a half hours are an hour and three quarters of the two: a quarter is left, half an hour's work.
  const more = before([work('2026-11-14', 210), work('2026-11-21', 210)], [], over);
  expect(coverOn(planMoved(home(MOVED, over), more, 'juniper'))).toBeUndefined();
});

test('the others keep their plans, their order, their open items and their part of shared sessions', () => {
  const plan = before([work('2026-11-14', 90)]);
  const shared = { id: 'a', date: '2026-10-31', start: '13:00', hours: 2, title: '' };
  const of = (id: string) => ({ machine: id, step: 'cover.cover-on' });
  const sessions = [
    { ...shared, steps: [of('sedge'), of('juniper')] },
    { ...shared, id: 'b', date: '2026-11-07', steps: [of('juniper')] },
  ];
  const moved = planMoved(home(MOVED), { ...plan, sessions }, 'juniper');
  expect(moved.machines.map(({ id }) => id)).toEqual(['sedge', 'juniper', 'bracken']);
  expect([moved.machines[0], moved.machines[2]]).toEqual([plan.machines[0], plan.machines[2]]);
  expect(moved.machines[1]!.season.lastUse).toBe('2026-11-08');
  expect(moved.sessions[0]).toEqual({ ...shared, steps: [of('sedge')] });
  // The session that was Juniper's alone is over; its hour has the day that is left.
  const later = moved.sessions.slice(1);
  expect(later.map(({ date }) => date)).not.toContain('2026-11-07');
  expect(later.find(({ date }) => date === '2026-11-21')!.steps).toEqual([of('juniper')]);
  expect(later.flatMap(({ steps }) => steps).every((s) => s.machine === 'juniper')).toBe(true);
  // Each machine has one cover on it, and each is said once.
  expect(moved.ledger.map((open) => `${open.machine} ${open.item}`).sort()).toEqual([
    'bracken cover',
    'juniper cover',
    'sedge cover',
  ]);
});

test('of three machines no reminder is made anew; one alone has a plan of its own, without reminders', () => {
  const all = before([]);
  expect(planMoved(home(MOVED), all, 'juniper').events).toBe(all.events);
  const alone = home(MOVED, { machines: onlyJuniper(home(MOVED)) });
  const plan = planned({ ...alone, machines: onlyJuniper(home()) });
  expect(plan.events.length).toBeGreaterThan(0);
  const moved = planMoved(alone, plan, 'juniper');
  expect(moved.events).toEqual([]);
  expect(coverOn(moved)).toBe('2026-11-14');
  expect(coverOn(plan)).toBe('2026-10-31');
});
