/** What cannot be so among the few things that a form asks of a machine; the same for its file. */
import { ASKED_LIMITS, sayBeyond } from './limits.ts';
import type { Path } from './path.ts';
import type { MachineFile } from './schemas/machine.ts';
import type { Known } from './sound.ts';
import { inTypedUnit, type Typed } from './typed.ts';

/** Adds a problem at a path of the machine's file. */
export type Say = (path: Path, what: string, fix: string) => void;

/** What is sound of a machine's file. */
export type Sound = Known<MachineFile>;

/** Problems of figures that no machine of the kind has, of tank and tap. */
export function answerProblems(m: Sound, say: Say, typed: Typed): void {
  sayBeyond(m, m.kind, ASKED_LIMITS, say, typed);
  if (m.fuel !== undefined && m.fuel !== 'none') tankAndTap(m.fuel, say, typed);
}

function tankAndTap(f: Exclude<NonNullable<Sound['fuel']>, 'none'>, say: Say, typed: Typed): void {
  if (f.tank !== undefined && f.inTank?.high !== undefined && f.inTank.high > f.tank * 1.02) {
    const { unit, figure } = inTypedUnit('L', typed(['fuel', 'tank']));
    say(
      ['fuel', 'inTank'],
      `found ${figure(f.inTank.high)} ${unit} in a tank of ${figure(f.tank)} ${unit}, expected no more than it holds`,
      'Correct one of the two.',
    );
  }
  if (f.tap === 'vacuum' && f.delivery === 'injection')
    say(
      ['fuel', 'tap'],
      'found a vacuum tap on an injected engine, expected none',
      'Write tap: none, or delivery: carburettor.',
    );
}
