/** Folders and processes for tests of the commands. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const PROJECT = join(import.meta.dirname, '../..');

export interface Ended {
  code: number | null;
  out: string;
  err: string;
}

/** Runs one of the project's commands to its end. */
export function command(name: string, args: string[], env: Record<string, string> = {}): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(PROJECT, 'src/cli', `${name}.ts`), ...args], {
      cwd: PROJECT,
      env: { ...process.env, NODE_ENV: 'production', IDLE_TODAY: '2026-11-25', ...env },
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (data) => {
      out += data;
    });
    child.stderr.on('data', (data) => {
      err += data;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

const made: string[] = [];

/** An empty folder of its own, deleted by `cleanUp`. */
export function temporary(): string {
  const folder = mkdtempSync(join(tmpdir(), 'idle-cli-'));
  made.push(folder);
  return folder;
}

export function cleanUp(): void {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** A copy of one of the test households. */
export function copyOf(name: string, folder = temporary()): string {
  cpSync(join(import.meta.dirname, '../households', name), folder, { recursive: true });
  return folder;
}

/** Writes a file in a folder, its own folder with it. */
export function put(folder: string, path: string, text: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

/** Every file below a folder with the hash of its bytes. */
export function hashes(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(folder, path)).isFile())
    .sort();
  return Object.fromEntries(
    files.map((path) => [
      path,
      createHash('sha256')
        .update(readFileSync(join(folder, path)))
        .digest('hex'),
    ]),
  );
}
