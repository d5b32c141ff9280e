/** What only shows when the fields of a machine are held against each other, the other files and the day. */
import type { Say, Sound } from './cross-answers.ts';
import type { CrossContext } from './cross-context.ts';
import { unknownPlace } from './cross-household.ts';
import { partProblems } from './cross-parts.ts';
import { seasonProblems } from './cross-season.ts';
import { stepProblems } from './cross-steps.ts';
import { workProblems } from './cross-work.ts';
import { farSeason, yearProblems } from './cross-years.ts';
import { KINDS } from './kinds.ts';
import { idsOf, type Loaded, problemAt, repeatedIds } from './loaded.ts';
import type { Problem } from './problem.ts';
import { asLeftProblems, measuredProblems } from './records.ts';
import type { MachineFile } from './schemas/machine.ts';
import { knownEntries } from './sound.ts';
import { round, typedIn } from './typed.ts';
import { wordMeant } from './words.ts';

/** All problems of one machine that its schema cannot see. */
export function machineProblems({ source, checked }: Loaded<MachineFile>, context: CrossContext): Problem[] {
  const m: Sound = { ...checked.sound, kind: checked.sound.kind ?? kindMeant(source.data) };
  const problems: Problem[] = [];
  const say: Say = (path, what, fix) => problems.push(problemAt(source, path, what, fix));
  if (m.place !== undefined && !context.places.has(m.place))
    problems.push(unknownPlace(source, ['place'], m.place, [...context.places.keys()]));
  if (!farSeason(m, context.asOf, say)) seasonProblems(m, say);
  partProblems(m, context, say, typedIn(source.data));
  yearProblems(m, context.asOf, say);
  services(m, say);
  problems.push(...asLeftProblems(source, m.asLeft, idsOf(checked, 'assemblies'), context.openItems));
  problems.push(...measuredProblems(source, m, context.asOf));
  problems.push(...repeatedIds(source, 'services', m.services), ...repeatedIds(source, 'paperwork', m.paperwork));
  problems.push(...workProblems(source, checked));
  const { procedures } = context;
  stepProblems(m, { procedures, jobs: idsOf(checked, 'jobs'), assemblies: idsOf(checked, 'assemblies') }, say);
  return problems;
}

/** The kind that a mistyped one was meant to be: the figures of the file are held against that kind in the same run. */
function kindMeant(data: unknown): Sound['kind'] {
  const written = (data as { kind?: unknown } | null | undefined)?.kind;
  const meant = typeof written === 'string' ? wordMeant(written, KINDS) : undefined;
  return KINDS.find((kind) => kind === meant);
}

function services(m: Sound, say: Say): void {
  for (const [i, s] of knownEntries(m.services)) {
    const { odometer, engineHours } = s.lastDone ?? {};
    if (odometer !== undefined && m.odometer !== undefined && odometer > m.odometer)
      say(
        ['services', i, 'lastDone', 'odometer'],
        `found ${round(odometer)} km, more than the machine's ${round(m.odometer)} km, expected less`,
        'Correct one of the two.',
      );
    if (engineHours !== undefined && m.engineHours !== undefined && engineHours > m.engineHours)
      say(
        ['services', i, 'lastDone', 'engineHours'],
        `found ${round(engineHours)} h, more than the machine's ${round(m.engineHours)} h, expected less`,
        'Correct one of the two.',
      );
  }
}
