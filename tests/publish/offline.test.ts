import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { publishOffline } from '../../src/publish/offline.ts';

/** What the worker of a site of so many machines keeps beforehand; each machine with pages of the demo's size. */
function keptOf(machines: number): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'idle-offline-'));
  const put = (path: string, kB: number) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), Buffer.alloc(kB * 1024));
  };
  for (const [path, kB] of [
    ['index.html', 60],
    ['_astro/worker.js', 700],
    ['climate/normals.json', 600],
    ['plan/procedures.json', 140],
    ['agenda/index.html', 60],
    ['calendar/all.ics', 60 * machines],
    ['plan.json', 160 * machines],
  ] as const)
    put(path, kB);
  for (let i = 0; i < machines; i++) {
    const id = `m${String(i).padStart(4, '0')}`;
    put(`machines/${id}/index.html`, 80);
    put(`machines/${id}/lay-up/index.html`, 60);
    put(`machines/${id}/start-up/index.html`, 60);
    put(`machines/${id}/plan.json`, 200);
    put(`calendar/${id}.ics`, 60);
  }
  publishOffline(folder);
  const text = readFileSync(join(folder, 'sw.js'), 'utf8');
  rmSync(folder, { recursive: true });
  return JSON.parse(text.slice(text.indexOf('{'), text.indexOf(';\n'))).files;
}

test('the whole site of a household of two dozen machines is kept beforehand, but for what no page asks for', () => {
  const files = keptOf(24);
  expect(files.filter((f) => /^machines\/.*\/$/.test(f))).toHaveLength(24 * 3);
  expect(files.filter((f) => f.endsWith('.ics'))).toHaveLength(25);
  expect(files.filter((f) => f.endsWith('plan.json'))).toEqual([]);
});

test('of a club’s site the agenda is kept and as many machines as fit, each with its sheets or not at all', () => {
  const files = keptOf(300);
  expect(files).toEqual(expect.arrayContaining(['./', 'agenda/', '_astro/worker.js']));
  const pages = files.filter((f) => f.startsWith('machines/'));
  const machines = new Set(pages.map((f) => f.split('/')[1]));
  expect(machines.size).toBeGreaterThan(30);
  expect(machines.size).toBeLessThan(300);
  expect(pages).toHaveLength(machines.size * 3);
});
