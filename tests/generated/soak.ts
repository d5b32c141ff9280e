/**
 * `npm run soak`: 100,000 generated households, or as many as are asked for.
 *
 *   npm run soak -- --cases 5000 --seed 7
 *
 * Cases come in rounds, each with a seed of its own, so that a fault can be found again without what went before it. Two
 * thirds of the rounds are households of one machine, as most are and which are quickly planned; the others have up to three or
 * eight, which share days, chargers and places. Most rounds share a set of stores; every tenth draws its stores afresh. Prints
 * each fault with the smallest content that has it.
 */
import { parseArgs } from 'node:util';
import { seekFault } from './run.ts';

const ROUND = 500;
/** Machines of a household at most, round by round. */
const MACHINES = [1, 3, 1, 1, 8, 1, 3, 1, 1, 3] as const;
const FAULTS_MOST = 10;

const { values } = parseArgs({ options: { cases: { type: 'string' }, seed: { type: 'string' } } });
const cases = Number(values.cases ?? 100_000);
const seed = Number(values.seed ?? Math.floor(Math.random() * 1_000_000));
if (!(Number.isInteger(cases) && cases > 0 && Number.isInteger(seed))) {
  console.error('--cases and --seed take whole numbers, such as --cases 5000 --seed 7');
  process.exit(1);
}

console.log(`${cases} households from seed ${seed}`);
const started = performance.now();
const faults: string[] = [];
for (let done = 0, round = 0; done < cases && faults.length < FAULTS_MOST; round++) {
  const size = Math.min(ROUND, cases - done);
  const fresh = round % 10 === 9;
  const fault = seekFault({
    cases: fresh ? Math.min(size, 100) : size,
    seed: seed + round,
    stores: fresh ? 0 : 32,
    machines: MACHINES[round % MACHINES.length]!,
    wholeOneIn: 25,
    costlyOneIn: 4,
    twiceOneIn: 100,
  });
  done += fresh ? Math.min(size, 100) : size;
  if (fault !== undefined) {
    faults.push(fault);
    console.log(`\n${fault}\n`);
  }
  const seconds = (performance.now() - started) / 1000;
  console.log(
    `${done} of ${cases} in ${seconds.toFixed(0)} s, ${faults.length} with a fault (round seed ${seed + round})`,
  );
}
console.log(faults.length === 0 ? 'No fault found.' : `${faults.length} faults. Seed ${seed}.`);
process.exit(faults.length === 0 ? 0 : 1);
