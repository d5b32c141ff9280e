/** Content files taken from the device, read by the reader of the build. Apart, since it needs the YAML and schema libraries. */

import { parseDocument } from 'yaml';
import type { ClimateLibrary } from '../../content/climate-library.ts';
import type { ReadResult } from '../../content/read.ts';
import { readContent } from '../../content/read.ts';
import type { Procedure } from '../../planner/household.ts';
import { dayIn } from '../day-in.ts';
import type { LoadedFile } from './messages.ts';

export { filesOf } from '../../content/write.ts';
export { contentOf } from './picked.ts';

interface With {
  /** The device's clock [ms since 1970]. */
  now: number;
  revised: string;
  procedures: readonly Procedure[];
  library: ClimateLibrary | undefined;
}

/** Reads what was dropped or picked; the day is today in the household's own time zone. */
export function readLoaded(
  files: readonly LoadedFile[],
  { now, revised, procedures, library }: With,
): ReadResult & { day: string } {
  let day = '';
  const result = readContent(files, {
    asOf: (zone) => {
      day = dayIn(zone, now);
      return day;
    },
    revised,
    readProcedures: procedures,
    library,
  });
  return { ...result, day };
}

/** A machine's file with another last day of use; comments and order stay. */
export function withLastUse(file: LoadedFile, lastUse: string): LoadedFile {
  const document = parseDocument(new TextDecoder().decode(file.bytes));
  const scalar = document.createNode(lastUse);
  scalar.type = 'QUOTE_DOUBLE';
  document.set('lastUse', scalar);
  return { ...file, bytes: new TextEncoder().encode(document.toString({ lineWidth: 0 })) };
}
