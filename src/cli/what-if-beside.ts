/**
 * What a longer season would cost, for a large household: more than half of the work of a plan, and each machine's trials
 * stand alone. A second thread works on them while the first plans the rest; then both share what is left.
 */
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import type { Household, IsoDate } from '../planner/household.ts';
import { placeContext } from '../planner/place-context.ts';
import type { WhatIf } from '../planner/season-plan.ts';
import { whatIfLater } from '../planner/what-if.ts';

interface Work {
  household: Household;
  asOf: IsoDate;
  /** Position of the next machine that nobody has taken, in memory that both threads share. */
  next: Int32Array;
}

/** Trials by the machine's position in the household. */
type Done = Map<number, WhatIf[]>;

/**
 * Starts on the trials of all machines in a second thread.
 * @param household - validated
 * @param asOf - the day the plan is made for
 * @returns helps with those that are left, and gives the trials of every machine in the household's order
 */
export function whatIfBeside(household: Household, asOf: IsoDate): () => Promise<WhatIf[][]> {
  const work: Work = { household, asOf, next: new Int32Array(new SharedArrayBuffer(4)) };
  const worker = new Worker(new URL(import.meta.url), { workerData: work });
  worker.unref();
  const others = new Promise<Done>((resolve, reject) => worker.once('message', resolve).once('error', reject));
  return async () => {
    const own = takeTurns(work);
    worker.ref();
    const done = new Map([...(await others), ...own]);
    return household.machines.map((_, i) => done.get(i)!);
  };
}

function takeTurns({ household, asOf, next }: Work): Done {
  const places = new Map(household.places.map((place) => [place.id, place]));
  const done: Done = new Map();
  for (let i = Atomics.add(next, 0, 1); i < household.machines.length; i = Atomics.add(next, 0, 1)) {
    const machine = household.machines[i]!;
    const context = placeContext(places.get(machine.placeId)!, household.seed);
    done.set(i, whatIfLater(machine, household, context, asOf));
  }
  return done;
}

if (!isMainThread) parentPort!.postMessage(takeTurns(workerData as Work));
