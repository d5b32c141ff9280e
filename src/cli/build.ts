/**
 * `npm run build -- --content ../my-garage`: content files -> plan -> site.
 *
 * Everything is made beside the last good site and takes its place in one step at the very end, so that a fault in a
 * content file, or in the build itself, leaves that site as it was.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { counted } from '../planner/written.ts';
import { publishOffline } from '../publish/offline.ts';
import type { PlanToCome } from '../site/season.ts';
import { contentFolder, PROJECT, readCommandLine, siteFolder } from './paths.ts';

const started = performance.now();
readCommandLine(['content', 'out', 'today']);
const out = siteFolder();
const folders: string[] = [];
let generating: Promise<void> | undefined;
/** Machines. */
const LARGE = 200;
/** Left to itself the engine lets garbage grow to several times what is in use before it looks; a fifth less memory in all. */
const THRIFTY = '--heap-growing-percent=50';
let machines: number | undefined;
try {
  // The site generator keeps its own half-made files beside the site only where that lies in the folder it runs in; else two
  // builds at a time would take each other's.
  const folder = temporary(join(PROJECT, '.work'), 'build-');
  const [plan, site] = [join(folder, 'plan'), join(folder, 'site')];
  const planning = planInto(plan);
  process.env.IDLE_PLAN = plan;
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  (globalThis as PlanToCome).idleSeasonPlanning = planning;
  // The site generator bundles scripts and styles while the plan is made, and its pages wait for the plan (src/site/season.ts);
  // not beside the plan of a large household: the two together take more memory than either.
  if (!isLarge()) generate(site).catch(() => undefined);
  machines = await planning;
  if (machines !== undefined) {
    await generate(site);
    moveInto(plan, site);
    publishOffline(site);
    replace(site);
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`${counted(machines, 'machine')} planned and built into ${out} in ${seconds} s`);
  }
} finally {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
}
if (machines === undefined) process.exit(1);

/** Builds the pages into a folder; once, whoever asks. */
function generate(site: string): Promise<void> {
  generating ??= (async () => {
    const { build } = await import('astro');
    const here = process.cwd();
    process.chdir(PROJECT);
    await build({ root: PROJECT, outDir: site, logLevel: 'warn' });
    process.chdir(here);
  })();
  return generating;
}

function isLarge(): boolean {
  try {
    return readdirSync(join(contentFolder(), 'machines')).length > LARGE;
  } catch {
    return false;
  }
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

/** Runs the planning in a process of its own; undefined where it found something wrong, and said so. */
async function planInto(folder: string): Promise<number | undefined> {
  const child = spawn(process.execPath, [THRIFTY, join(import.meta.dirname, 'plan-into.ts'), folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let out = '';
  child.stdout.on('data', (data) => {
    out += data;
  });
  const [code] = await once(child, 'close');
  return code === 0 ? Number(out) : undefined;
}

/** Moves all files of a folder into another, into folders of the same names where there are some. */
function moveInto(from: string, to: string): void {
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const [source, target] = [join(from, entry.name), join(to, entry.name)];
    if (entry.isDirectory() && existsSync(target)) moveInto(source, target);
    else renameSync(source, target);
  }
}
