/** Record files of the person -> what they say that is not known yet. */
import type { PlannerClient } from '../planner/client.ts';
import { entriesOf, type Said, saidKey } from './entries.ts';
import { BENCH } from './words.ts';

/**
 * Reads record files of one machine.
 * @param known - what need not be said again
 * @returns what is new, each once; and what is wrong, a line each
 */
export async function readRecords(
  client: PlannerClient,
  files: Iterable<File>,
  { machine, known, asOf }: { machine: string; known: readonly Said[]; asOf: string },
): Promise<{ fresh: Said[]; wrong: string[] }> {
  const met = new Set(known.map(saidKey));
  const fresh: Said[] = [];
  const wrong: string[] = [];
  for (const file of files) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const read = await client.ask('readRecord', { file: { path: file.name, bytes }, asOf }).catch(() => undefined);
    if (!read) {
      wrong.push(`${file.name}: ${BENCH.notRead}`);
      continue;
    }
    wrong.push(...read.problems.map((p) => `${p.file}:${p.line}:${p.column} ${p.field} ${p.what}. ${p.fix}`));
    if (read.machine !== undefined && read.machine !== machine)
      wrong.push(`${file.name}: ${BENCH.otherMachine(read.machine)}`);
    else if (read.record)
      for (const said of entriesOf(read.record)) {
        if (!met.has(saidKey(said))) fresh.push(said);
        met.add(saidKey(said));
      }
  }
  return { fresh, wrong };
}
