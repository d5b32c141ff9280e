/** Headings of a printed sheet. By definition of the kinds: one rides what has a saddle, drives a car, uses a mower. */
import { expect, test } from 'vitest';
import type { MachineKind } from '../../src/planner/household.ts';
import { caution } from '../../src/planner/tasks/cautions.ts';
import { formatOf } from '../../src/site/formats.ts';
import { sheetGroups } from '../../src/site/sheet-groups.ts';
import { WORDS } from '../../src/site/words.ts';
import { plainStep } from '../planner/plain-step.ts';

const manner = { locale: 'en-GB', clock: '24h', units: 'metric', asOf: '2026-11-29' };

test.each<[MachineKind, string]>([
  ['motorcycle', 'ride'],
  ['snow-machine', 'ride'],
  ['car', 'drive'],
  ['side-by-side', 'drive'],
  ['tractor', 'use'],
  ['mower', 'use'],
])('the day of first use of a %s is its first %s, and a check that fails forbids that', (kind, word) => {
  const step = plainStep('ride.first', { phase: 'start-up', stage: 'first-ride' });
  const groups = sheetGroups([step], 'start-up', kind, formatOf(manner as Parameters<typeof formatOf>[0]));
  expect(groups.map(({ heading }) => heading)).toEqual([`First ${word}`]);
  expect(WORDS.sheet.stops(kind)).toBe(`Do not ${word}:`);
});

test('what can hurt stands right before the work that first needs it, once on the sheet', () => {
  const day = { phase: 'lay-up', date: '2026-11-14' } as const;
  const steps = [
    plainStep('papers.file', { ...day, part: 'Papers' }),
    plainStep('oil.drain', { ...day, part: 'Oil', cautions: ['hot-parts'] }),
    plainStep('oil.fill', { ...day, part: 'Oil', cautions: ['used-oil', 'hot-parts'] }),
    plainStep('exhaust.plug', { ...day, part: 'Exhaust', cautions: ['hot-parts', 'Own words {x}.'] }),
    plainStep('brakes.look', { ...day, part: 'Brakes', cautions: ['brakes-steering'], date: '2026-11-15' }),
  ];
  const groups = sheetGroups(steps, 'lay-up', 'car', formatOf(manner as Parameters<typeof formatOf>[0]));
  const told = groups.map(({ runs }) => runs.map(({ cautions, steps: rows }) => [cautions.length, rows.length]));
  // Nothing for the papers; two before the oil, whose row of steps the exhaust goes on; one on the next day.
  expect(told).toEqual([
    [
      [0, 1],
      [2, 3],
    ],
    [[1, 1]],
  ]);
  expect(groups[0]!.runs[1]!.cautions.map(({ title }) => title)).toEqual([
    caution('hot-parts')!.title,
    caution('used-oil')!.title,
  ]);
  const rows = groups.flatMap(({ runs }) => runs.flatMap((run) => run.steps));
  expect(rows.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
  expect(rows[3]!.mind).toEqual([caution('hot-parts')!.title, 'Own words {x}']);
});
