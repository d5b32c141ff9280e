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
