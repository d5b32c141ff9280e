/**
 * The household's plan as a file: JSON with each machine on a line of its own. As one text the plan of a thousand machines takes
 * several times the memory of the plan itself, to write and to read.
 */
import { closeSync, openSync, readSync } from 'node:fs';
import type { MachinePlan, SeasonPlan } from '../planner/season-plan.ts';
import { stringSharing } from './shared-strings.ts';
import { writeParts } from './write-file.ts';

const MACHINES = '"machines":[';

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
    writeParts(file, [JSON.stringify(rest).slice(0, -1), `,\n${MACHINES}`]);
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

/** A household's plan with something of each machine. */
export type PlanWith<Part> = Omit<SeasonPlan, 'machines'> & { machines: Part[] };

/**
 * Reads a plan machine by machine, so that no more is held of a large one than is kept.
 * @param path - of a file that `writePlan` wrote, or of any JSON with a plan
 * @param keep - what to keep of a machine
 */
export function readPlan<Part>(path: string, keep: (machine: MachinePlan) => Part): PlanWith<Part> {
  const machines: Part[] = [];
  const rest: string[] = [];
  const share = stringSharing();
  for (const line of linesOf(path)) {
    if (rest.at(-1) === MACHINES && line.startsWith('{'))
      machines.push(share(keep(JSON.parse(line.replace(/,$/, '')))));
    else rest.push(line);
  }
  const plan: SeasonPlan = share(JSON.parse(rest.join('\n')));
  return { ...plan, machines: machines.length === 0 ? plan.machines.map(keep) : machines };
}

const PIECE_BYTES = 1 << 20;

/** The lines of a file, of which only so much is in memory as the longest of them. */
function* linesOf(path: string): Generator<string> {
  const file = openSync(path, 'r');
  try {
    let begun: Buffer[] = [];
    for (;;) {
      const buffer = Buffer.allocUnsafe(PIECE_BYTES);
      const piece = buffer.subarray(0, readSync(file, buffer));
      if (piece.length === 0) break;
      let from = 0;
      for (let end = piece.indexOf('\n'); end >= 0; end = piece.indexOf('\n', from)) {
        yield Buffer.concat([...begun, piece.subarray(from, end)]).toString('utf8');
        begun = [];
        from = end + 1;
      }
      begun.push(piece.subarray(from));
    }
    if (begun.some(({ length }) => length > 0)) yield Buffer.concat(begun).toString('utf8');
  } finally {
    closeSync(file);
  }
}
