import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../../src/content/read-folder.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import { slipsIn } from './slips.ts';

const PROJECT = join(import.meta.dirname, '../../..');

test.each([
  ['content', '2026-11-25'],
  ['tests/households/workshop', '2026-11-25'],
  ['tests/households/south', '2027-05-20'],
  ['tests/households/smallest', '2026-12-24'],
  ['tests/walks/households/yard', '2026-10-27'],
])('every text of the plan of %s is whole', (folder, asOf) => {
  const { household, problems } = readFolder(join(PROJECT, folder), {
    asOf,
    procedures: join(PROJECT, 'content/procedures'),
    library: join(PROJECT, 'public/climate/normals.json'),
  });
  expect(problems).toEqual([]);
  expect(slipsIn(planSeason(household!, { asOf, withoutWhatIf: folder !== 'content' }).plan)).toEqual([]);
});
