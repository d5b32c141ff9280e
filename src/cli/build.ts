/**
 * `npm run build`: content files -> plan -> site.
 *
 * Everything is made beside the last good site and takes its place in one step at the very end, so that a fault in a
 * content file, or in the build itself, leaves that site as it was.
 */
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { build } from 'astro';
import { publishInputs } from '../publish/inputs.ts';
import { publishOffline } from '../publish/offline.ts';
import { publish, writePlanFiles } from '../publish/write.ts';
import { contentFolder, PROJECT, siteFolder } from './paths.ts';
import { planContent } from './plan-content.ts';

const started = performance.now();
const planned = planContent(contentFolder());
if (!planned) process.exit(1);
const { household, plan } = planned;

const out = siteFolder();
mkdirSync(dirname(out), { recursive: true });
const work = mkdtempSync(join(dirname(out), '.idle-build-'));
try {
  const site = join(work, 'site');
  process.env.IDLE_PLAN = join(work, 'plan');
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  writePlanFiles(plan, process.env.IDLE_PLAN);
  await build({ root: PROJECT, outDir: site, logLevel: 'warn' });
  publish(plan, site);
  publishInputs(household, plan, site);
  publishOffline(site);
  const last = join(work, 'last');
  if (existsSync(out)) renameSync(out, last);
  renameSync(site, out);
} finally {
  rmSync(work, { recursive: true, force: true });
}
const seconds = ((performance.now() - started) / 1000).toFixed(1);
console.log(`${plan.machines.length} machines planned and built into ${out} in ${seconds} s`);
