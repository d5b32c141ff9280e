/**
 * `npm run bench`: what a plan, a page's re-plan, a build and a calendar cost; beside blank pages and bare libraries.
 *
 *   npm run bench -- --machines 10,100,1000 --json bench.json
 *   npm run bench -- --no-builds          without the builds, which take minutes
 *
 * All that is compared is measured in the same run. Builds go to folders of their own, which are deleted.
 */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildBlank } from './bench/blank-site.ts';
import { calendarRows } from './bench/calendar.ts';
import { writeClub } from './bench/club.ts';
import { planRows } from './bench/plans.ts';
import { type Taken, watched } from './bench/process-tree.ts';
import type { Row } from './bench/row.ts';
import { PROJECT, readCommandLine, stop } from './paths.ts';

const AS_OF = '2026-11-25';

const { values } = readCommandLine([], {
  machines: { type: 'string', default: '10,100,1000' },
  json: { type: 'string' },
  'no-builds': { type: 'boolean', default: false },
});
const sizes = values.machines.split(',').map(Number);
if (!sizes.every((n) => Number.isInteger(n) && n > 0))
  stop(`--machines: found "${values.machines}", expected whole numbers such as 10,100,1000`);

const rows: Row[] = [];
const add = (some: readonly Row[]) => {
  for (const row of some) {
    rows.push(row);
    console.log(
      `${row.what.padEnd(64)}${figure(row.value).padStart(10)} ${row.unit.padEnd(4)} ${row.note ?? ''}`.trimEnd(),
    );
  }
};

const work = mkdtempSync(join(tmpdir(), 'idle-bench-'));
try {
  console.log(`Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}\n`);
  writeClub(join(work, 'five'), 5);
  add(planRows(join(work, 'five'), AS_OF));
  add(calendarRows(join(work, 'five'), AS_OF));
  for (const script of ['bench-climate', 'bench-battery']) add(await scriptRows(script));
  if (!values['no-builds']) await builds();
} finally {
  rmSync(work, { recursive: true, force: true });
}
if (values.json !== undefined)
  writeFileSync(
    values.json,
    `${JSON.stringify({ node: process.version, processors: cpus().length, rows }, null, 2)}\n`,
  );

/** The rows that another benchmark prints: "what: 1.2 ms a machine", "what   1.2 ms (least 1.1)", "ratio …: 3". */
async function scriptRows(name: string): Promise<Row[]> {
  const { out } = await watched([join(import.meta.dirname, `${name}.ts`)]);
  return out.split('\n').flatMap((line): Row[] => {
    const found = /^(.*?):?\s+([\d.]+)(?:\s+(ms|ns)\b\s*(.*))?$/.exec(line);
    return found
      ? [{ what: found[1]!, value: Number(found[2]), unit: found[3] ?? '×', note: found[4] || undefined }]
      : [];
  });
}

async function builds(): Promise<void> {
  let last: { machines: number; taken: Taken } | undefined;
  for (const machines of sizes) {
    const content = join(work, `content-${machines}`);
    const site = join(work, `site-${machines}`, 'dist');
    mkdirSync(join(site, '..'), { recursive: true });
    writeClub(content, machines);
    const taken = await watched([join(PROJECT, 'src/cli/build.ts')], {
      IDLE_CONTENT: content,
      IDLE_OUT: site,
      IDLE_TODAY: AS_OF,
      NODE_ENV: 'production',
    });
    if (taken.code !== 0 || !existsSync(site)) {
      console.error(`${taken.out.slice(-2000)}\n${machines} machines did not build (exit code ${taken.code}).`);
      process.exitCode = 1;
      return;
    }
    const pages = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.html'),
    ).length;
    rmSync(site, { recursive: true, force: true });
    const blank = await buildBlank(pages);
    add(buildRows(machines, pages, taken, blank, last));
    last = { machines, taken };
  }
}

/** The figures of one build beside the blank site's; processor time stands beside the clock, since other work may share it. */
function buildRows(
  machines: number,
  pages: number,
  taken: Taken,
  blank: Taken,
  last: { machines: number; taken: Taken } | undefined,
): Row[] {
  const name = `build of ${machines} machines`;
  const result: Row[] = [{ what: `${name}, ${pages} pages`, value: taken.seconds, unit: 's' }];
  if (taken.cpuSeconds !== undefined)
    result.push({ what: `${name}, processor time`, value: taken.cpuSeconds, unit: 's' });
  if (taken.peakMB !== undefined) result.push({ what: `${name}, peak memory`, value: taken.peakMB, unit: 'MB' });
  if (last && machines > last.machines) {
    const more = machines - last.machines;
    const cost = (t: Taken) => t.cpuSeconds ?? t.seconds;
    result.push({
      what: `${name}, each machine more than ${last.machines}`,
      value: ((cost(taken) - cost(last.taken)) / more) * 1000,
      unit: 'ms',
    });
  }
  result.push({ what: `blank site of ${pages} pages`, value: blank.seconds, unit: 's' });
  if (blank.cpuSeconds !== undefined)
    result.push({ what: `blank site of ${pages} pages, processor time`, value: blank.cpuSeconds, unit: 's' });
  if (blank.peakMB !== undefined)
    result.push({ what: `blank site of ${pages} pages, peak memory`, value: blank.peakMB, unit: 'MB' });
  result.push({ what: `${name}, ratio to the blank site`, value: taken.seconds / blank.seconds, unit: '×' });
  return result;
}

function figure(value: number): string {
  return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
}
