/**
 * The household's plan as a file: JSON with each machine on a line of its own. As one text the plan of a thousand machines takes
 * several times the memory of the plan itself.
 */
import { closeSync, openSync } from 'node:fs';
import type { MachinePlan, SeasonPlan } from '../planner/season-plan.ts';
import { writeParts } from './write-file.ts';

/**
 * Writes a plan without the battery's daily paths, so that it stays small for a thousand machines, and gives each machine whole.
 * @param plan - the plan
 * @param path - of the file
 * @param writeMachine - takes the JSON of each machine with its paths, in parts
 */
export function writePlan(
  plan: SeasonPlan,
  path: string,
  writeMachine: (id: string, json: readonly Uint8Array[]) => void,
): void {
  const file = openSync(path, 'w');
  try {
    const { machines, ...rest } = plan;
    writeParts(file, [JSON.stringify(rest).slice(0, -1), ',\n"machines":[']);
    for (const [i, machine] of machines.entries()) {
      const { head, paths, end } = partsOf(machine);
      writeParts(file, [i === 0 ? '\n' : ',\n', head, end]);
      writeMachine(machine.id, [head, paths, end]);
    }
    writeParts(file, ['\n]}\n']);
  } finally {
    closeSync(file);
  }
}

/** A machine as JSON; its battery's paths are a part of their own, near its end. */
function partsOf({ battery, ...rest }: MachinePlan): { head: Uint8Array; paths: Uint8Array; end: Uint8Array } {
  const { paths, ...short } = battery ?? {};
  const json = Buffer.from(JSON.stringify({ ...rest, battery: battery && short }));
  const end = json.length - (battery ? 2 : 0);
  return {
    head: json.subarray(0, end),
    paths: Buffer.from(paths ? `,"paths":${JSON.stringify(paths)}` : ''),
    end: json.subarray(end),
  };
}
