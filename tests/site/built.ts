/**
 * The sites under test, each built once for all files of a run: from made-up plans, and the demo household from its content.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { publishOffline } from '../../src/publish/offline.ts';
import { barePlan, demoMachines, otherHousehold, sitePlan } from '../fixtures/site-plan.ts';
import { writePlan } from '../fixtures/write-plan.ts';

const PROJECT = resolve(import.meta.dirname, '../..');

const HOUR_MS = 3_600_000;

/** The households that are built. */
const PLANS = {
  demo: () => sitePlan(demoMachines()),
  many: () => otherHousehold(120),
  bare: () => barePlan(),
} as const;

export type Built = keyof typeof PLANS | 'content';

/**
 * A built site.
 * @param which - the household
 * @returns its folder
 */
export async function builtSite(which: Built = 'demo'): Promise<string> {
  // Test files run in processes of their own: the first makes the folder and builds, the others wait for it.
  const folder = join(PROJECT, 'node_modules/.cache/idle-season', `${which}-${process.ppid}`);
  const out = join(folder, 'site');
  const done = join(folder, 'done');
  if (claim(folder)) {
    await alone(() => build(which, folder, out));
    writeFileSync(done, '');
  }
  for (let i = 0; !existsSync(done); i++) {
    if (i > 600) throw new Error(`${folder} was begun and not finished; delete it and run the tests again.`);
    await wait(200);
  }
  return out;
}

function claim(folder: string): boolean {
  const parent = resolve(folder, '..');
  mkdirSync(parent, { recursive: true });
  try {
    mkdirSync(folder);
  } catch {
    return false;
  }
  // What runs of an hour ago left behind; a younger one may still be in use.
  for (const old of readdirSync(parent))
    if (Date.now() - statSync(join(parent, old)).mtimeMs > HOUR_MS)
      rmSync(join(parent, old), { recursive: true, force: true });
  return true;
}

/** One build at a time: the generator keeps its working files in the project. */
async function alone(act: () => void): Promise<void> {
  const lock = join(PROJECT, 'node_modules/.cache/idle-season', `lock-${process.ppid}`);
  for (let i = 0; ; i++) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      if (i > 600) throw new Error(`${lock} was taken and not given back; delete it and run the tests again.`);
      await wait(200);
    }
  }
  try {
    act();
  } finally {
    rmSync(lock, { recursive: true });
  }
}

function build(which: Built, folder: string, out: string): void {
  const plan = join(folder, 'plan');
  if (which !== 'content') writePlan(plan, PLANS[which]());
  const astro = [join(PROJECT, 'node_modules/astro/bin/astro.mjs'), 'build', '--outDir', out];
  const run = spawnSync(process.execPath, which === 'content' ? [join(PROJECT, 'src/cli/build.ts')] : astro, {
    cwd: PROJECT,
    env: { ...process.env, IDLE_PLAN: plan, IDLE_OUT: out, ASTRO_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' },
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`The site did not build:\n${run.stdout}\n${run.stderr}`);
  // What the build does after the generator, for a site that works without network.
  if (which !== 'content') publishOffline(out);
}

/** Addresses of all pages of a built site. */
export function pagesOf(site: string): string[] {
  return readdirSync(site, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.html'))
    .map((file) => `/${relative(site, join(site, file)).replaceAll('\\', '/')}`.replace(/index\.html$/, ''))
    .sort();
}
