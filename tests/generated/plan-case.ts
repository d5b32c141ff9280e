/** Reads and plans one generated case; stores met before are taken as the same, so that their weather is drawn once. */
import { join } from 'node:path';
import { formatProblem } from '../../src/content/problem.ts';
import { type ContentFile, readContent } from '../../src/content/read.ts';
import { readFiles } from '../../src/content/read-folder.ts';
import type { Climate } from '../../src/planner/climate/index.ts';
import type { Household, Place } from '../../src/planner/household.ts';
import { type PlanResult, planSeason } from '../../src/planner/plan.ts';
import { library } from '../planner/tasks/library.ts';
import { type Case, writtenFiles } from './household.ts';

const FOLDER = join(import.meta.dirname, '../../content/procedures');

/** The bundled procedures, read once. */
export const PROCEDURES: readonly ContentFile[] = readFiles(FOLDER).files.map((file) => ({
  path: `procedures/${file.path}`,
  bytes: file.bytes,
}));

/** Kept in the order of use, oldest first. */
class Kept<T> {
  private readonly items = new Map<string, T>();
  private readonly most: number;

  constructor(most: number) {
    this.most = most;
  }

  same(value: T): T {
    const key = JSON.stringify(value);
    const found = this.items.get(key) ?? value;
    this.items.delete(key);
    this.items.set(key, found);
    if (this.items.size > this.most) this.items.delete(this.items.keys().next().value!);
    return found;
  }
}

const climates = new Kept<Climate>(32);
const places = new Kept<Place>(600);

export interface Planned {
  household: Household;
  result: PlanResult;
}

/** A case read and planned, or what the reader says is wrong with it. */
export function planCase(drawn: Case, fresh = false): Planned | { problems: string[] } {
  const { household, problems } = readContent(writtenFiles(drawn), { asOf: drawn.asOf, procedures: PROCEDURES });
  if (!household) return { problems: problems.map((problem) => formatProblem(problem)) };
  const own: Household = fresh
    ? household
    : {
        ...household,
        places: household.places.map((place) => places.same({ ...place, climate: climates.same(place.climate) })),
      };
  return { household: own, result: planSeason(own, { asOf: drawn.asOf, quick: !drawn.whole }) };
}

/** Items that some procedure opens, and ids of steps as records write them: what content may refer to. */
export function libraryNames(): { openItems: string[]; stepIds: string[] } {
  const procedures = library();
  return {
    openItems: [
      ...new Set(
        procedures.flatMap((p) => p.steps.flatMap((s) => (s.each ? [] : s.opens.map((opened) => opened.item)))),
      ),
    ],
    stepIds: procedures.flatMap((p) => p.steps.map((s) => `${p.id}.${s.id}${s.each ? '.1' : ''}`)),
  };
}
