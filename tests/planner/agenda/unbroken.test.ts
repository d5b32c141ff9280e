/** Work that goes on without a break. Common practice: an engine is drained, filled and run, or started and warmed, in one go. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Problem } from '../../../src/planner/agenda/problem.ts';
import { solve } from '../../../src/planner/agenda/solve.ts';
import { faults } from './check.ts';
import { smallProblem } from './small-cases.ts';
import { plan, task, yard } from './world.ts';

// 2026-10-31 is a Saturday.
const [SATURDAY, SUNDAY, NEXT] = ['2026-10-31', '2026-11-01', '2026-11-07'];
const FROM = '2026-10-26';
const TO = '2026-11-15';
type Days = { from?: string; to?: string; after?: string[]; waitH?: number };
const wash = () => task('wash', 40, FROM, TO);
const start = ({ from = FROM, to = TO, ...over } = {} as Days) =>
  task('start', 15, from, to, { after: ['wash'], ...over });
const warm = ({ from = FROM, to = TO, ...over } = {} as Days) =>
  task('warm', 20, from, to, { after: ['start'], goesOnFrom: 'juniper/start', ...over });

test('what would be begun in the last minutes of a session and ended in the next waits for the next', () => {
  const home = yard({ saturday: 1, sunday: 1 });
  const parted = plan([wash(), start(), { ...warm(), goesOnFrom: undefined }], home).dateOf;
  expect([...parted.values()]).toEqual([SATURDAY, SATURDAY, SUNDAY]);
  const { dateOf, sessions, misfits } = plan([wash(), start(), warm()], home);
  expect([...dateOf.values()]).toEqual([SATURDAY, SUNDAY, SUNDAY]);
  expect(sessions.map((s) => [s.hours * 60, s.steps.map(({ step }) => step)])).toEqual([
    [40, ['wash']],
    [35, ['start', 'warm']],
  ]);
  expect(misfits).toEqual([]);
});

test('a run of three keeps its order, and what follows one of them follows the run', () => {
  const levels = task('levels', 20, FROM, TO, { after: ['warm'], goesOnFrom: 'juniper/warm' });
  const papers = task('papers', 5, FROM, TO, { after: ['start'] });
  const { dateOf, sessions } = plan([wash(), start(), warm(), levels, papers], yard({ saturday: 1 }));
  expect(sessions[1]!.steps.map(({ step }) => step)).toEqual(['start', 'warm', 'levels', 'papers']);
  expect([...dateOf.values()]).toEqual([SATURDAY, NEXT, NEXT, NEXT, NEXT]);
});

test('the run has the days that all of it has: dry ones, late ones, those up to the earliest end', () => {
  const home = yard({ saturday: 1, sunday: 1 });
  expect(plan([start(), warm({ from: SUNDAY })], home).dateOf.get('juniper/start')).toBe(SUNDAY);
  expect(plan([start({ from: SUNDAY }), warm()], home).dateOf.get('juniper/warm')).toBe(SUNDAY);
  const { dateOf } = plan([wash(), start({ to: SUNDAY }), warm()], home);
  expect([dateOf.get('juniper/start'), dateOf.get('juniper/warm')]).toEqual([SUNDAY, SUNDAY]);
});

test('they are parted where something has to wait between them', () => {
  const { dateOf, misfits } = plan([start({ waitH: 12 }), warm()], yard({ saturday: 1, sunday: 1 }));
  expect([...dateOf.values()]).toEqual([SATURDAY, SUNDAY]);
  expect(misfits).toEqual([]);
});

test('where no session is long enough for both, neither is begun, and what is lacking is one longer day', () => {
  const { dateOf, misfits } = plan([start({ after: [] }), warm()], yard({ saturday: 0.5, sunday: 0.5 }));
  expect(dateOf.size).toBe(0);
  expect(misfits).toEqual([
    {
      steps: [
        { machine: 'juniper', step: 'start' },
        { machine: 'juniper', step: 'warm' },
      ],
      before: TO,
      hoursMissing: 35 / 60,
      text: 'juniper: start; juniper: warm: 35 min of work in one go up to 15 November 2026, but the longest session has 30 min: one longer day is needed.',
    },
  ]);
});

test('where other work leaves no session for both, neither is begun', () => {
  // On Saturday 20 of 60 minutes are left, on Sunday there are 24: 35 are wanted.
  const busy = task('chain', 40, FROM, SATURDAY);
  const { dateOf, misfits } = plan(
    [busy, start({ after: [], to: SUNDAY }), warm({ to: SUNDAY })],
    yard({ saturday: 1, sunday: 0.4 }),
  );
  expect([...dateOf]).toEqual([['juniper/chain', SATURDAY]]);
  expect(misfits).toHaveLength(1);
  expect(misfits[0]!.hoursMissing * 60).toBeCloseTo(35 - 24, 9);
  expect(misfits[0]!.text).toMatch(/: 11 min more needed by then\.$/);
});

test('other work that has to come between them does, on whatever day', () => {
  const between = task('look', 50, FROM, TO, { after: ['start'] });
  const { dateOf } = plan([start(), between, warm({ after: ['start', 'look'] })], yard({ saturday: 1, sunday: 1 }));
  expect([...dateOf.values()]).toEqual([SATURDAY, SUNDAY, NEXT]);
});

/** Each step that follows the one before it at once goes on from it. */
const unbroken = smallProblem.map(
  (problem): Problem => ({
    ...problem,
    activities: problem.activities.map((a, i) => ({
      ...a,
      goesOnFrom: a.after.some(({ of, lag }) => of === i - 1 && lag === 0) ? i - 1 : undefined,
    })),
  }),
);

test('every rule is kept, each step is placed or said to be missing, with runs or without', () => {
  let unbrokenRuns = 0;
  fc.assert(
    fc.property(unbroken, (problem) => {
      const schedule = solve(problem, 1);
      expect(faults(problem, schedule)).toEqual([]);
      problem.activities.forEach(({ goesOnFrom }, i) => {
        if (goesOnFrom !== undefined && schedule.start[i] === schedule.end[goesOnFrom]) unbrokenRuns += 1;
      });
    }),
    { numRuns: 400, seed: 20261129 },
  );
  expect(unbrokenRuns).toBeGreaterThan(0);
});
