import { expect, test } from 'vitest';
import { whatChanges as whatChangesIn } from '../../../src/planner/agenda/index.ts';
import type { Misfit } from '../../../src/planner/season-plan.ts';

type Changed = Parameters<typeof whatChangesIn>[0];
const whatChanges = (base: Changed, shifted: Changed) => whatChangesIn(base, shifted, 'en-GB');

function changed(lastUse: string, over: { charge?: string; date?: string; misfits?: Misfit[] } = {}): Changed {
  return {
    draft: {
      machine: { id: 'juniper', season: { lastUse } },
      rest: { firstFrost: '2026-11-05' },
      steps: [
        { id: 'wash', title: 'Wash', latest: '2026-11-20', date: over.date ?? '2026-10-31', done: false },
        { id: 'wax', title: 'Wax', latest: '2026-12-20', date: '2026-10-31', done: false },
      ],
      battery: over.charge ? { charges: [{ date: over.charge }] } : undefined,
    },
    misfits: over.misfits ?? [],
  };
}

const misfit = (step: string, machines = ['juniper']): Misfit => ({
  steps: machines.map((machine) => ({ machine, step })),
  hoursMissing: 2,
  before: '2026-11-20',
  text: '',
});

test('what no longer fits is named, with the hours that have no place', () => {
  const base = changed('2026-10-25', { misfits: [misfit('wax')] });
  const later = changed('2026-11-08', { misfits: [misfit('wax'), misfit('wash')] });
  const { missed, misfitHours, text } = whatChanges(base, later);
  expect(missed).toEqual(['Wash']);
  expect(misfitHours).toBe(2);
  expect(text.at(-1)).toBe('No longer fits: Wash (2 h of work).');
});

test('of hours that are missing for several machines each has its share', () => {
  const later = changed('2026-11-08', { misfits: [misfit('wash', ['juniper', 'sleet'])] });
  expect(whatChanges(changed('2026-10-25'), later).misfitHours).toBe(1);
});

test('the step whose time shrinks to the least is named', () => {
  const { text } = whatChanges(changed('2026-10-25'), changed('2026-11-01', { date: '2026-11-14' }));
  expect(text).toContain('Tightest: Wash, 6 days before its latest day instead of 20.');
  expect(text).toContain('Everything that fitted still fits.');
});

test('the first frost is told before or after the last use', () => {
  expect(whatChanges(changed('2026-10-25'), changed('2026-11-01')).text[0]).toContain('4 days after the last use');
  expect(whatChanges(changed('2026-10-25'), changed('2026-11-08')).text[0]).toContain('before the last use');
  expect(whatChanges(changed('2026-11-05'), changed('2026-11-08')).text.join()).not.toContain('frost');
  expect(whatChanges(changed('2026-08-01'), changed('2026-08-08')).text.join()).not.toContain('frost');
});

test('a charge that moves, appears or goes is told', () => {
  const text = (a?: string, b?: string) =>
    whatChanges(
      changed('2026-10-25', { ...(a && { charge: a }) }),
      changed('2026-11-01', { ...(b && { charge: b }) }),
    ).text.join(' ');
  expect(text('2026-12-20', '2026-12-27')).toContain('from 20 December 2026 to 27 December 2026 (7 days later)');
  expect(text(undefined, '2026-12-27')).toContain('A charge falls due on 27 December 2026');
  expect(text('2026-12-20', undefined)).toContain('The charge of 20 December 2026 is no longer needed');
  expect(text('2026-12-20', '2026-12-20')).not.toContain('charge');
});

test('where a machine has no step in a message, its hours are none of it', () => {
  const later = changed('2026-11-08', {
    misfits: [misfit('refit', ['sleet']), misfit('wax', ['sleet', 'juniper', 'magpie', 'badger'])],
  });
  const { missed, misfitHours, text } = whatChanges(changed('2026-10-25'), later);
  expect(missed).toEqual(['Wax']);
  expect(misfitHours).toBe(0.5);
  expect(text.at(-1)).toBe('No longer fits: Wax (0.5 h of work).');
});

test('what fits no longer while other work does again is named without hours, a step unknown by its name', () => {
  const base = changed('2026-10-25', { misfits: [misfit('wax'), misfit('oil')] });
  const later = changed('2026-11-08', { misfits: [misfit('tyres'), misfit('tyres')] });
  const { missed, misfitHours, text } = whatChanges(base, later);
  expect([missed, misfitHours, text.at(-1)]).toEqual([['tyres'], 0, 'No longer fits: tyres.']);
});

test('days are compared for steps that are still to do and have a day and a last day in both plans', () => {
  const withSteps = (lastUse: string, steps: Changed['draft']['steps'], dateOf?: Changed['dateOf']): Changed => ({
    draft: { machine: { id: 'juniper', season: { lastUse } }, rest: {}, steps },
    misfits: [],
    dateOf,
  });
  const step = (id: string, over: Partial<Changed['draft']['steps'][number]> = {}) => ({
    id,
    title: id,
    latest: '2026-11-20',
    date: '2026-10-31',
    done: false,
    ...over,
  });
  const tightest = (base: Changed['draft']['steps'], later: Changed['draft']['steps'], dateOf?: Changed['dateOf']) =>
    whatChanges(withSteps('2026-10-25', base, dateOf), withSteps('2026-11-01', later, dateOf)).text.find((t) =>
      t.startsWith('Tightest'),
    );
  const soon = { date: '2026-11-10' };
  expect(tightest([step('wash')], [step('wash', soon)])).toBe(
    'Tightest: wash, 10 days before its latest day instead of 20.',
  );
  // Of two the one that has least is told; of equal ones the first.
  const both = [step('wash', soon), step('wax', { date: '2026-11-12' }), step('oil', { date: '2026-11-12' })];
  expect(
    tightest(
      both.map((s) => step(s.id)),
      both,
    ),
  ).toBe('Tightest: wax, 8 days before its latest day instead of 20.');
  expect(tightest([step('wash')], [step('wash')])).toBeUndefined();
  expect(tightest([step('wash', soon)], [step('wash')])).toBeUndefined();
  expect(tightest([], [step('wash', soon)])).toBeUndefined();
  for (const over of [{ done: true }, { latest: undefined }, { date: undefined }]) {
    expect(tightest([step('wash')], [step('wash', { ...soon, ...over })])).toBeUndefined();
    expect(tightest([step('wash', over)], [step('wash', soon)])).toBeUndefined();
  }
  const agenda = new Map([['juniper/wash', '2026-11-10']]);
  expect(tightest([step('wash')], [step('wash', { date: undefined })], agenda)).toContain('10 days before');
});

test('a frost is counted up to sixty days off, and told as passed only where riding on passes it', () => {
  const first = (lastUse: string, base = '2026-08-01') => whatChanges(changed(base), changed(lastUse)).text[0];
  expect(first('2026-09-06')).toBe('The first frost in the store usually comes 60 days after the last use.');
  expect(first('2026-09-05')).toBe('Everything that fitted still fits.');
  expect(first('2026-11-04')).toContain('comes 1 day after');
  expect(first('2026-11-05')).toContain('has its first frost by 5 November 2026, before the last use');
  expect(first('2026-11-12', '2026-11-04')).toContain('has its first frost');
  expect(first('2026-11-12', '2026-11-05')).toBe('Everything that fitted still fits.');
});

test('a first charge that moves is told with its days, and which way', () => {
  const text = (a: string, b: string) =>
    whatChanges(changed('2026-10-25', { charge: a }), changed('2026-11-01', { charge: b })).text.join(' ');
  expect(text('2026-12-20', '2026-12-21')).toContain('from 20 December 2026 to 21 December 2026 (1 day later)');
  expect(text('2026-12-20', '2026-12-18')).toContain('from 20 December 2026 to 18 December 2026 (2 days earlier)');
});
