/** What only shows when the steps of a procedure are held against each other and its phase. */
import { STAGES } from '../planner/ledger/index.ts';
import { type Loaded, problemAt } from './loaded.ts';
import type { Path } from './path.ts';
import { nearest, type Problem } from './problem.ts';
import type { ProcedureFile } from './schemas/procedure.ts';
import { knownEntries } from './sound.ts';

/** Problems of one procedure that its schema cannot see. */
export function procedureProblems({ source, checked }: Loaded<ProcedureFile>): Problem[] {
  const { phase, steps } = checked.sound;
  return knownEntries(steps).flatMap(([i, one]) => {
    const say = (path: Path, what: string, fix: string) => problemAt(source, ['steps', i, ...path], what, fix);
    const problems: Problem[] = [];
    if (one.id !== undefined && steps!.findIndex((other) => other?.id === one.id) !== i)
      problems.push(
        say(['id'], `found "${one.id}" a second time, expected each step id once`, 'Give the step a name of its own.'),
      );
    if (phase === 'start-up' && !source.keysAt(['steps', i]).some((name) => nearest(name, ['stage'])))
      problems.push(say([], `found no stage, expected one of ${STAGES.join(', ')}`, 'Add the line "stage: controls".'));
    if (phase !== undefined && phase !== 'start-up')
      for (const field of ['stage', 'doNotRide'] as const)
        if (one[field] !== undefined)
          problems.push(
            say(
              [field],
              `found "${field}" in a ${phase} procedure, expected it in start-up procedures only`,
              'Delete the line.',
            ),
          );
    return problems;
  });
}
