/** A file server on the loopback address for a built site. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ics': 'text/calendar; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
};

/** The file of an address in a built site, or nothing. */
export function fileOf(root: string, path: string): string | undefined {
  const plain = join(root, normalize(decodeURIComponent(path.split(/[?#]/)[0] ?? '/')));
  const file = existsSync(plain) && statSync(plain).isDirectory() ? join(plain, 'index.html') : plain;
  return existsSync(file) ? file : undefined;
}

/** Serves a folder until it is closed. */
export async function serve(root: string): Promise<{ origin: string; close: () => Promise<void> }> {
  const server = createServer((request, response) => {
    const file = fileOf(root, request.url ?? '/');
    response.writeHead(file ? 200 : 404, {
      'content-type': TYPES[extname(file ?? '.html')] ?? 'application/octet-stream',
    });
    response.end(file ? readFileSync(file) : readFileSync(join(root, '404.html')));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
