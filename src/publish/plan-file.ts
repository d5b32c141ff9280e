/**
 * The household's plan as a file: JSON with each machine on a line of its own. As one text the plan of a thousand machines takes
 * several times the memory of the plan itself, to write and to read.
 */
import { closeSync, openSync, readFileSync, writeSync } from 'node:fs';
import type { BatteryPlan, MachinePlan, SeasonPlan } from '../planner/season-plan.ts';
import { stringSharing } from './shared-strings.ts';

const MACHINES = '"machines":[';

/**
 * Writes a plan without the battery's daily paths, so that it stays small for a thousand machines, and gives each machine whole.
 * @param plan - the plan
 * @param path - of the file
 * @param writeMachine - takes the text of each machine with its paths
 */
export function writePlan(plan: SeasonPlan, path: string, writeMachine: (id: string, json: string) => void): void {
  const file = openSync(path, 'w');
  try {
    const { machines, ...rest } = plan;
    writeSync(file, `${JSON.stringify(rest).slice(0, -1)},\n${MACHINES}`);
    for (const [i, machine] of machines.entries()) {
      const { whole, withoutPaths } = textsOf(machine);
      writeSync(file, `${i === 0 ? '' : ','}\n${withoutPaths}`);
      writeMachine(machine.id, whole);
    }
    writeSync(file, '\n]}\n');
  } finally {
    closeSync(file);
  }
}

/** A machine as JSON with and without its battery's paths; all else is made into text once. */
function textsOf({ battery, ...rest }: MachinePlan): { whole: string; withoutPaths: string } {
  const text = JSON.stringify(rest);
  if (!battery) return { whole: text, withoutPaths: text };
  const { paths: _, ...short } = battery;
  const withBattery = (plan: BatteryPlan) => `${text.slice(0, -1)},"battery":${JSON.stringify(plan)}}`;
  return { whole: withBattery(battery), withoutPaths: withBattery(short) };
}

/**
 * Reads a plan.
 * @param path - of a file that `writePlan` wrote, or of any JSON with a plan
 */
export function readPlan(path: string): SeasonPlan {
  const machines: MachinePlan[] = [];
  const rest: string[] = [];
  const share = stringSharing();
  for (const line of linesOf(readFileSync(path))) {
    if (rest.at(-1) === MACHINES && line.startsWith('{')) machines.push(share(JSON.parse(line.replace(/,$/, ''))));
    else rest.push(line);
  }
  const plan: SeasonPlan = share(JSON.parse(rest.join('\n')));
  return machines.length === 0 ? plan : { ...plan, machines };
}

function* linesOf(bytes: Buffer): Generator<string> {
  for (let from = 0; from < bytes.length; ) {
    const end = bytes.indexOf('\n', from);
    const to = end < 0 ? bytes.length : end;
    yield bytes.toString('utf8', from, to);
    from = to + 1;
  }
}
