/** Puts the service worker at the root of a built site, with the name of the build and what is kept beforehand. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const WORKER = join(import.meta.dirname, '..', 'browser', 'offline', 'sw.js');

/**
 * So much is kept on a device beforehand: the whole site of a household that is planned whole on its pages (24 machines take
 * 8 MB), about 2.5 MB as it is sent. Of a larger one, as many machines as fit; the rest when it is visited [bytes].
 */
const BEFOREHAND = 12 * 1024 * 1024;

/** Never asked for by a page. */
const LEFT_OUT = /^(machines\/[^/]+\/plan\.json|plan\.json|plan\.schema\.json|schemas\/.*|404\.html|sw\.js)$/;

/** What must be there for anything to work; the others follow while there is room. */
const SHELL = /^(_astro\/|icons\/|manifest|index\.html|offline\/|plan\/|climate\/)/;

/**
 * Writes `sw.js`.
 * @param folder - the built site, all other files in place
 */
export function publishOffline(folder: string): void {
  const all = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => !LEFT_OUT.test(path) && statSync(join(folder, path)).isFile())
    .sort();
  const code = readFileSync(WORKER, 'utf8');
  const files = keptBeforehand(folder, all);
  const hash = createHash('sha256').update(code);
  for (const path of all) hash.update(path).update(readFileSync(join(folder, path)));
  const idle = { build: hash.digest('hex').slice(0, 12), files: files.map(address) };
  writeFileSync(join(folder, 'sw.js'), `self.IDLE=${JSON.stringify(idle)};\n${code}`);
}

/** What is kept of a machine goes together: a page without its sheets would fail in the shed. */
const partOf = (path: string) => /^machines\/[^/]+\//.exec(path)?.[0] ?? path;

/** The shell whatever it takes; then what tells of all machines, then the machines, their calendars last. */
function rank(path: string): number {
  if (SHELL.test(path)) return 0;
  if (path.startsWith('calendar/')) return 3;
  return path.startsWith('machines/') ? 2 : 1;
}

function keptBeforehand(folder: string, files: readonly string[]): string[] {
  const parts = new Map<string, string[]>();
  for (const path of files) parts.set(partOf(path), [...(parts.get(partOf(path)) ?? []), path]);
  let left = BEFOREHAND;
  return [...parts]
    .sort(([a], [b]) => rank(a) - rank(b))
    .flatMap(([part, own]) => {
      const size = own.reduce((sum, path) => sum + statSync(join(folder, path)).size, 0);
      if (rank(part) > 0 && size > left) return [];
      left -= size;
      return own;
    });
}

/** As pages link to it: a folder's page by the folder. */
const address = (path: string) => path.replace(/(^|\/)index\.html$/, '$1').replace(/^$/, './');
