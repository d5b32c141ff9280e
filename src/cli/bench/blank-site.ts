/** An Astro site of blank pages, to hold the build against: the least that so many pages can cost. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT } from '../paths.ts';
import { type Taken, watched } from './process-tree.ts';

/**
 * Builds as many blank pages as the site has.
 * @param pages - how many
 */
export async function buildBlank(pages: number): Promise<Taken> {
  // Inside the project, so that the site generator is found.
  const root = join(PROJECT, 'node_modules/.cache/idle-season', `blank-${process.pid}`);
  const folder = join(root, 'src/pages/[id]');
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(root, 'package.json'), '{ "type": "module" }\n');
    writeFileSync(join(root, 'astro.config.mjs'), 'export default {};\n');
    writeFileSync(
      join(folder, 'index.astro'),
      `---
export const getStaticPaths = () => Array.from({ length: ${pages} }, (_, i) => ({ params: { id: String(i) } }));
---
<!doctype html>
<html lang="en"><head><meta charset="utf-8" /><title>Blank</title></head><body></body></html>
`,
    );
    return await watched([join(PROJECT, 'node_modules/astro/bin/astro.mjs'), 'build', '--root', root], {
      ASTRO_TELEMETRY_DISABLED: '1',
      NODE_ENV: 'production',
    });
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}
