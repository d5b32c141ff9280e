import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../../src/content/read-folder.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import { slipsIn } from './slips.ts';

const PROJECT = join(import.meta.dirname, '../../..');

const HOUSEHOLDS = [
  ['content', '2026-11-25'],
  ['tests/households/workshop', '2026-11-25'],
  ['tests/households/south', '2027-05-20'],
  ['tests/households/smallest', '2026-12-24'],
  ['tests/walks/households/yard', '2026-10-27'],
] as const;

function planned(folder: string, asOf: string) {
  const { household, problems } = readFolder(join(PROJECT, folder), {
    asOf,
    procedures: join(PROJECT, 'content/procedures'),
    library: join(PROJECT, 'public/climate/normals.json'),
  });
  expect(problems).toEqual([]);
  return planSeason(household!, { asOf, withoutWhatIf: folder !== 'content' }).plan;
}

test.each(HOUSEHOLDS)('every text of the plan of %s is whole', (folder, asOf) => {
  expect(slipsIn(planned(folder, asOf))).toEqual([]);
});

// Common practice: an engine is not left between its first start and the look at it warm.
test.each(HOUSEHOLDS)('in %s each first start is made, warmed through and looked at on one day', (folder, asOf) => {
  for (const { id, steps } of planned(folder, asOf).machines) {
    const days = steps.filter(({ stage, done }) => stage === 'first-start' && !done).map(({ date }) => date);
    expect([...new Set(days)].length, `${id}: ${days}`).toBeLessThanOrEqual(1);
  }
});
