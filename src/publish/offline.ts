/** Puts the service worker at the root of a built site, with the name of the build and what is kept beforehand. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const WORKER = join(import.meta.dirname, '..', 'browser', 'offline', 'sw.js');

/** Pages, sheets and calendars up to this size are kept beforehand; the rest when it is visited [bytes]. */
const BEFOREHAND = 6 * 1024 * 1024;

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

function keptBeforehand(folder: string, files: readonly string[]): string[] {
  let size = 0;
  return [...files.filter((path) => SHELL.test(path)), ...files.filter((path) => !SHELL.test(path))].filter((path) => {
    size += statSync(join(folder, path)).size;
    return SHELL.test(path) || size <= BEFOREHAND;
  });
}

/** As pages link to it: a folder's page by the folder. */
const address = (path: string) => path.replace(/(^|\/)index\.html$/, '$1').replace(/^$/, './');
