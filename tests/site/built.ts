/**
 * The site under test, built once for all files of a run: from a made-up plan, or the folder that IDLE_SITE names.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { barePlan, demoMachines, otherHousehold, sitePlan } from '../fixtures/site-plan.ts';
import { writePlan } from '../fixtures/write-plan.ts';

const PROJECT = resolve(import.meta.dirname, '../..');

/** The households that are built. */
const PLANS = {
  demo: () => sitePlan(demoMachines()),
  many: () => otherHousehold(120),
  bare: () => barePlan(),
} as const;

export type Built = keyof typeof PLANS;

/**
 * A built site.
 * @param which - the household
 * @returns its folder
 */
export async function builtSite(which: Built = 'demo'): Promise<string> {
  if (which === 'demo' && process.env.IDLE_SITE) return resolve(process.env.IDLE_SITE);
  // Test files run in processes of their own: the first makes the folder and builds, the others wait for it.
  const folder = join(PROJECT, 'node_modules/.cache/idle-season', `${which}-${process.ppid}`);
  const out = join(folder, 'site');
  const done = join(folder, 'done');
  if (claim(folder)) {
    build(which, folder, out);
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
  // What earlier runs left behind.
  for (const old of readdirSync(parent))
    if (!old.endsWith(`-${process.ppid}`)) rmSync(join(parent, old), { recursive: true, force: true });
  return true;
}

function build(which: Built, folder: string, out: string): void {
  const plan = join(folder, 'plan');
  writePlan(plan, PLANS[which]());
  const run = spawnSync(
    process.execPath,
    [join(PROJECT, 'node_modules/astro/bin/astro.mjs'), 'build', '--outDir', out],
    {
      cwd: PROJECT,
      env: { ...process.env, IDLE_PLAN: plan, IDLE_OUT: out, ASTRO_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' },
      encoding: 'utf8',
    },
  );
  if (run.status !== 0) throw new Error(`The site did not build:\n${run.stdout}\n${run.stderr}`);
}

/** Addresses of all pages of a built site. */
export function pagesOf(site: string): string[] {
  return readdirSync(site, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.html'))
    .map((file) => `/${relative(site, join(site, file)).replaceAll('\\', '/')}`.replace(/index\.html$/, ''))
    .sort();
}
