/** What cannot be so among the few things that a form asks of a machine; the same for its file. */
import type { MachineKind } from '../planner/household.ts';
import type { Path } from './path.ts';
import type { MachineFile } from './schemas/machine.ts';
import type { Known } from './sound.ts';

/** Adds a problem at a path of the machine's file. */
export type Say = (path: Path, what: string, fix: string) => void;

/** What is sound of a machine's file. */
export type Sound = Known<MachineFile>;

/** Capacity of a starting battery by kind [Ah]: beyond it, another figure of the label was read; common practice. */
const CAPACITY_AH: Record<MachineKind, readonly [number, number]> = {
  motorcycle: [1, 40],
  scooter: [1, 30],
  'snow-machine': [3, 60],
  quad: [3, 60],
  'side-by-side': [5, 120],
  car: [10, 250],
  tractor: [10, 400],
  mower: [1, 120],
};

/** Tank by kind [L]; common practice. */
const LARGEST_TANK_L: Record<MachineKind, number> = {
  motorcycle: 60,
  scooter: 30,
  'snow-machine': 100,
  quad: 60,
  'side-by-side': 120,
  car: 200,
  tractor: 400,
  mower: 60,
};

/** Problems of capacity, tank and tap. */
export function answerProblems(m: Sound, say: Say): void {
  if (m.battery !== undefined && m.battery !== 'none') capacity(m.battery, m.kind, say);
  if (m.fuel !== undefined && m.fuel !== 'none') tankAndTap(m.fuel, m.kind, say);
}

type Group<Name extends 'battery' | 'fuel'> = Exclude<NonNullable<Sound[Name]>, 'none'>;

function capacity(b: Group<'battery'>, kind: MachineKind | undefined, say: Say): void {
  if (b.capacity !== undefined && kind !== undefined) {
    const [low, high] = CAPACITY_AH[kind];
    if (!(b.capacity >= low && b.capacity <= high)) {
      say(
        ['battery', 'capacity'],
        `found ${b.capacity} Ah, expected ${low} to ${high} Ah for a ${kind}`,
        'Take the figure in Ah from the label; the cold-cranking figure in A is no measure of capacity.',
      );
    }
  }
}

function tankAndTap(f: Group<'fuel'>, kind: MachineKind | undefined, say: Say): void {
  if (f.tank !== undefined && kind !== undefined && f.tank > LARGEST_TANK_L[kind]) {
    say(
      ['fuel', 'tank'],
      `found a tank of ${round(f.tank)} L, expected at most ${LARGEST_TANK_L[kind]} L for a ${kind}`,
      'Check the figure and its unit.',
    );
  }
  if (f.tank !== undefined && f.inTank?.high !== undefined && f.inTank.high > f.tank * 1.02) {
    say(
      ['fuel', 'inTank'],
      `found ${round(f.inTank.high)} L in a tank of ${round(f.tank)} L, expected no more than it holds`,
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

/** Two decimals, as a person would write the figure. */
export function round(value: number): number {
  return Math.round(value * 100) / 100;
}
