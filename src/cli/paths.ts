/** Where things are, for the commands. */
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's own folder. */
export const PROJECT = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** The household's content: `IDLE_CONTENT`, or the demo household. */
export function contentFolder(): string {
  return resolve(process.env.IDLE_CONTENT ?? resolve(PROJECT, 'content'));
}

/** Where the finished site goes: `IDLE_OUT`, or `dist/`. */
export function siteFolder(): string {
  return resolve(process.env.IDLE_OUT ?? resolve(PROJECT, 'dist'));
}
