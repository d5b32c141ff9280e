/**
 * `npm run build`: content files -> plan -> site.
 *
 * Everything is made beside the last good site and takes its place in one step at the very end, so that a fault in a
 * content file, or in the build itself, leaves that site as it was.
 */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { build } from 'astro';
import { publishInputs } from '../publish/inputs.ts';
import { publishOffline } from '../publish/offline.ts';
import { publish } from '../publish/write.ts';
import { contentFolder, PROJECT, siteFolder } from './paths.ts';
import { planContent } from './plan-content.ts';

const started = performance.now();
const out = siteFolder();
const folders: string[] = [];
try {
  // The site generator keeps its own half-made files beside the site only where that lies in the folder it runs in; else two
  // builds at a time would take each other's.
  const work = join(PROJECT, '.work');
  const machines = planInto(() => join(temporary(work, 'build-'), 'plan'));
  if (machines === undefined) process.exit(1);
  const [folder] = folders;
  const [plan, site] = [join(folder!, 'plan'), join(folder!, 'site')];
  process.env.IDLE_PLAN = plan;
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  process.chdir(PROJECT);
  await build({ root: PROJECT, outDir: site, logLevel: 'warn' });
  moveInto(plan, site);
  publishOffline(site);
  replace(site);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${machines} machines planned and built into ${out} in ${seconds} s`);
} finally {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
}

/** A folder of its own that is deleted at the end. */
function temporary(parent: string, name: string): string {
  mkdirSync(parent, { recursive: true });
  const folder = mkdtempSync(join(parent, name));
  folders.push(folder);
  return folder;
}

/** Puts a finished site in the place of the last one, from beside it: only there is moving it one step. */
function replace(site: string): void {
  const beside = temporary(dirname(out), '.idle-build-');
  const next = join(beside, 'site');
  try {
    renameSync(site, next);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error;
    cpSync(site, next, { recursive: true });
  }
  if (existsSync(out)) renameSync(out, join(beside, 'last'));
  renameSync(next, out);
}

/**
 * Plans, and writes everything that is published beside the pages into a folder that the pages are then built from. The plan
 * itself is let go: for a thousand machines it takes as much memory as building their pages does.
 * @param folder - makes the folder, once there is a plan
 * @returns how many machines there are, or undefined where something is wrong
 */
function planInto(folder: () => string): number | undefined {
  const planned = planContent(contentFolder());
  if (!planned) return undefined;
  const { household, plan } = planned;
  const to = folder();
  publish(plan, to);
  publishInputs(household, plan, to);
  return plan.machines.length;
}

/** Moves all files of a folder into another, into folders of the same names where there are some. */
function moveInto(from: string, to: string): void {
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const [source, target] = [join(from, entry.name), join(to, entry.name)];
    if (entry.isDirectory() && existsSync(target)) moveInto(source, target);
    else renameSync(source, target);
  }
}
