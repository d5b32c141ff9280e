/** The demo household built as `npm run build` does, once for all files of a run; or the folder that IDLE_SITE names. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

export const PROJECT = resolve(import.meta.dirname, '../..');
/** The day of the build and of the pages. */
export const TODAY = '2026-11-25';

/** The built site's folder. */
export async function demoSite(): Promise<string> {
  const parent = join(PROJECT, 'node_modules/.cache/idle-season-whole');
  const folder = join(parent, `run-${process.ppid}`);
  const out = join(folder, 'site');
  const done = join(folder, 'done');
  mkdirSync(parent, { recursive: true });
  if (claimed(folder)) {
    // What runs of an hour ago left behind; a younger one may still be in use.
    for (const old of readdirSync(parent))
      if (Date.now() - statSync(join(parent, old)).mtimeMs > 3_600_000)
        rmSync(join(parent, old), { recursive: true, force: true });
    const env = { ...process.env, IDLE_OUT: out, IDLE_TODAY: TODAY, NODE_ENV: 'production' };
    const run = spawnSync(process.execPath, [join(PROJECT, 'src/cli/build.ts')], {
      cwd: PROJECT,
      env,
      encoding: 'utf8',
    });
    writeFileSync(done, run.status === 0 ? '' : `${run.stdout}\n${run.stderr}`);
    if (run.status !== 0) throw new Error(`The site did not build:\n${run.stderr}`);
  }
  for (let i = 0; !existsSync(done); i++) {
    if (i > 900) throw new Error(`${folder} was begun and not finished; delete it and run the tests again.`);
    await wait(200);
  }
  return out;
}

function claimed(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    return false;
  }
}
