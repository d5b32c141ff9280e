/**
 * `npm run build`: content files -> plan -> site.
 *
 * Everything is made beside the last good site and takes its place in one step at the very end, so that a fault in a
 * content file, or in the build itself, leaves that site as it was.
 */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { build } from 'astro';
import { publishInputs } from '../publish/inputs.ts';
import { publishOffline } from '../publish/offline.ts';
import { publish } from '../publish/write.ts';
import { contentFolder, PROJECT, siteFolder } from './paths.ts';
import { planContent } from './plan-content.ts';

const started = performance.now();
const out = siteFolder();
let work: string | undefined;
try {
  const machines = planInto(() => {
    mkdirSync(dirname(out), { recursive: true });
    work = mkdtempSync(join(dirname(out), '.idle-build-'));
    return join(work, 'plan');
  });
  if (machines === undefined || work === undefined) process.exit(1);
  const site = join(work, 'site');
  const plan = join(work, 'plan');
  process.env.IDLE_PLAN = plan;
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  await build({ root: PROJECT, outDir: site, logLevel: 'warn' });
  moveInto(plan, site);
  publishOffline(site);
  const last = join(work, 'last');
  if (existsSync(out)) renameSync(out, last);
  renameSync(site, out);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${machines} machines planned and built into ${out} in ${seconds} s`);
} finally {
  if (work !== undefined) rmSync(work, { recursive: true, force: true });
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
