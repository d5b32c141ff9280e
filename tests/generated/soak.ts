/**
 * `npm run soak`: 100,000 generated households, or as many as are asked for, on every core.
 *
 *   npm run soak -- --cases 5000 --seed 7
 *
 * Cases come in rounds, each with a seed of its own, so that a fault can be found again without what went before it. Two
 * thirds of the rounds are households of one machine, as most are and which are quickly planned; the others have up to three or
 * eight, which share days, chargers and places. Most rounds share a set of stores; every tenth draws its stores afresh. Prints
 * each fault with the smallest content that has it.
 */
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { type RunOptions, type Sought, seekFault } from './run.ts';

const ROUND = 500;
/** Cases of a round in which each draws its stores afresh: a store costs far more than a machine on it. */
const FRESH_ROUND = 100;
/** Machines of a household at most, round by round. */
const MACHINES = [1, 3, 1, 1, 8, 1, 3, 1, 1, 3] as const;
const FAULTS_MOST = 10;

/** What round `round` of a run plans, of `left` cases still to be drawn. */
function roundOptions(round: number, seed: number, left: number): RunOptions {
  const fresh = round % 10 === 9;
  return {
    cases: Math.min(fresh ? FRESH_ROUND : ROUND, left),
    seed: seed + round,
    stores: fresh ? 0 : 32,
    machines: MACHINES[round % MACHINES.length]!,
    wholeOneIn: 25,
    costlyOneIn: 4,
    twiceOneIn: 100,
  };
}

/** Hands rounds to one thread for each core until all cases are drawn or too many faults are found. */
async function soak(cases: number, seed: number): Promise<number> {
  console.log(`${cases} households from seed ${seed}`);
  const started = performance.now();
  let drawn = 0;
  let planned = 0;
  let round = 0;
  const faults: string[] = [];
  const work = async () => {
    const worker = new Worker(new URL(import.meta.url));
    while (drawn < cases && faults.length < FAULTS_MOST) {
      const options = roundOptions(round, seed, cases - drawn);
      round += 1;
      drawn += options.cases;
      const sought = await oneRound(worker, options);
      planned += sought.planned;
      if (sought.fault !== undefined) {
        faults.push(sought.fault);
        console.log(`\n${sought.fault}\n`);
      }
      const seconds = ((performance.now() - started) / 1000).toFixed(0);
      console.log(`${planned} of ${cases} in ${seconds} s, ${faults.length} with a fault (round seed ${options.seed})`);
    }
    await worker.terminate();
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  console.log(faults.length === 0 ? 'No fault found.' : `${faults.length} faults. Seed ${seed}.`);
  return faults.length;
}

function oneRound(worker: Worker, options: RunOptions): Promise<Sought> {
  return new Promise((resolve, reject) => {
    worker.removeAllListeners();
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.postMessage(options);
  });
}

if (isMainThread) {
  const { values } = parseArgs({ options: { cases: { type: 'string' }, seed: { type: 'string' } } });
  const cases = Number(values.cases ?? 100_000);
  const seed = Number(values.seed ?? Math.floor(Math.random() * 1_000_000));
  if (!(Number.isInteger(cases) && cases > 0 && Number.isInteger(seed))) {
    console.error('--cases and --seed take whole numbers, such as --cases 5000 --seed 7');
    process.exit(1);
  }
  process.exit((await soak(cases, seed)) === 0 ? 0 : 1);
} else {
  parentPort!.on('message', (options: RunOptions) => parentPort!.postMessage(seekFault(options)));
}
