/** Draws cases, plans each and holds it against every check; the smallest case that fails is written out as its files. */
import fc from 'fast-check';
import { faultsOf } from './faults.ts';
import { type Case, caseArb, writtenFiles } from './household.ts';
import { placePool } from './places.ts';
import { libraryNames, planCase } from './plan-case.ts';
import { smallerCase } from './smaller.ts';

export interface RunOptions {
  cases: number;
  seed: number;
  /** Stores that cases share; 0 draws each store afresh. */
  stores: number;
  machines: number;
  wholeOneIn: number;
  /** One case in so many has its pictures drawn and its calendars read back. */
  costlyOneIn: number;
  /** One case in so many is planned a second time, from text to plan, and compared byte by byte. */
  twiceOneIn: number;
}

/** All that is wrong with one case. */
export function caseFaults(drawn: Case, twice = false, costly = true): string[] {
  const planned = planCase(drawn);
  if ('problems' in planned) return planned.problems.map((problem) => `the reader refuses it: ${problem}`);
  // What is said to be open and cannot be on such a machine is refused, as it should be; there is no plan to look at.
  const { problems } = planned.result;
  if (problems.length > 0 && problems.every((problem) => problem.field === 'asLeft')) return [];
  const faults = faultsOf(planned, costly);
  if (!twice) return faults;
  const again = planCase(drawn, true);
  const same = 'result' in again && JSON.stringify(again.result) === JSON.stringify(planned.result);
  return same ? faults : [...faults, 'the same content gives another plan the second time'];
}

export interface Sought {
  /** Cases that were planned, up to the one with a fault. */
  planned: number;
  /** The smallest case with a fault, in words. */
  fault?: string;
}

/** Looks for a case with a fault. */
export function seekFault(options: RunOptions): Sought {
  const arbitrary = caseArb({
    ...libraryNames(),
    pool: placePool(options.stores),
    machines: options.machines,
    wholeOneIn: options.wholeOneIn,
  });
  let n = 0;
  const seek = (drawn: Case) => {
    n += 1;
    return caseFaults(drawn, n % options.twiceOneIn === 0, n % options.costlyOneIn === 0);
  };
  // Shrinking is left to `smallerCase`, which knows what a file is.
  const result = fc.check(
    fc.property(fc.noShrink(arbitrary), (drawn) => {
      const faults = seek(drawn);
      if (faults.length > 0) throw new Error(faults.join('\n'));
    }),
    { numRuns: options.cases, seed: options.seed },
  );
  const planned = n;
  if (!result.failed) return { planned };
  const found = result.counterexample![0];
  const kind = kindOf(attempt(found));
  const smallest = smallerCase(found, (smaller) => kindOf(attempt(smaller)) === kind);
  const fault = [
    `seed ${result.seed}, path ${result.counterexamplePath}, as of ${smallest.asOf}${smallest.whole ? ', with all trials' : ''}`,
    attempt(smallest),
    ...writtenFiles(smallest).map(({ path, bytes }) => `--- ${path}\n${bytes}`),
  ].join('\n');
  return { planned, fault };
}

/** What is wrong with a case, a crash included. */
function attempt(drawn: Case): string {
  try {
    return caseFaults(drawn, true).join('\n');
  } catch (error) {
    return `crash: ${error instanceof Error ? error.stack : String(error)}`;
  }
}

/** The check that failed first; or the words of the crash or of the refusal without their figures. */
function kindOf(faults: string): string {
  const first = faults.split('\n')[0] ?? '';
  const refused = /^the reader refuses it: \S+ {2}(.*)/.exec(first)?.[1];
  if (refused !== undefined) return refused.replace(/\d[\d-]*/g, '#');
  return first.replace(/\d[\d-]*/g, '#').slice(0, faults.startsWith('crash') ? 60 : faults.indexOf(':'));
}
