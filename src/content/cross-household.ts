/** What only shows when household.yaml is held against the other files. */
import { farAway } from './cross-years.ts';
import { type Loaded, problemAt, repeatedIds } from './loaded.ts';
import { nearest, type Problem } from './problem.ts';
import type { HouseholdFile } from './schemas/household.ts';
import { knownEntries } from './sound.ts';

/**
 * Problems of household.yaml that its own schema cannot see.
 * @param places - ids of all places, sound or not
 * @param asOf - the day of the plan
 */
export function householdProblems(
  { source, checked }: Loaded<HouseholdFile>,
  places: readonly string[],
  asOf: string,
): Problem[] {
  const { chargers, stands } = checked.sound;
  const problems: Problem[] = [];
  farAway(checked.sound, asOf, (path, what, fix) => problems.push(problemAt(source, path, what, fix)));
  return [
    ...problems,
    ...repeatedIds(source, 'chargers', chargers),
    ...repeatedIds(source, 'stands', stands),
    ...knownEntries(chargers).flatMap(([i, c]) =>
      c.place === undefined || places.includes(c.place)
        ? []
        : [unknownPlace(source, ['chargers', i, 'place'], c.place, places)],
    ),
  ];
}

/** The problem of a place that is not there. */
export function unknownPlace(
  source: Loaded<unknown>['source'],
  path: (string | number)[],
  found: string,
  places: readonly string[],
): Problem {
  const near = nearest(found, places);
  const expected = places.length > 0 ? `one of ${places.join(', ')}` : 'the id of a file in places/';
  return problemAt(
    source,
    path,
    `found the place "${found}", expected ${expected}`,
    near ? `Write ${near}.` : `${places.length > 0 ? 'Write one of these, or add' : 'Add'} places/${found}.yaml.`,
  );
}
