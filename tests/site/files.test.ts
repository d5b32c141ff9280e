import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { builtSite, pagesOf } from './built.ts';
import { problemsOf } from './html.ts';
import { fileOf } from './serve.ts';

const kB = (path: string) => gzipSync(readFileSync(path)).length / 1000;
const read = (site: string, path: string) => readFileSync(fileOf(site, path)!, 'utf8');

/** Scripts or styles that a page names. */
function linked(site: string, page: string, end: 'js' | 'css'): string[] {
  const address = new RegExp(`(?:src|href)="/([^"]+\\.${end})"`, 'g');
  return [...read(site, page).matchAll(address)].map((found) => found[1]!);
}

/** Scripts with all that they import before they run; what is fetched on a person's act is not among them. */
function withImports(site: string, scripts: readonly string[]): Set<string> {
  const found = new Set<string>();
  const visit = (file: string): void => {
    if (found.has(file)) return;
    found.add(file);
    const code = readFileSync(join(site, file), 'utf8');
    for (const [, name] of code.matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) visit(`_astro/${name}`);
  };
  scripts.forEach(visit);
  return found;
}

/** Published beside the pages by another part of the build. */
const PUBLISHED = /^\/(plan\.json|plan\.schema\.json|calendar\/[\w-]+\.ics|machines\/[\w-]+\/plan\.json)$/;

describe.each(['demo', 'many', 'bare'] as const)('the built site: %s', (which) => {
  let site = '';
  let pages: string[] = [];
  beforeAll(async () => {
    site = await builtSite(which);
    pages = pagesOf(site);
  });

  test('has a page, a lay-up sheet and a start-up sheet for each machine, and every main page', () => {
    const machines = { demo: 5, many: 120, bare: 1 }[which];
    expect(pages.filter((p) => /^\/machines\/[^/]+\/$/.test(p))).toHaveLength(machines);
    expect(pages.filter((p) => p.endsWith('/lay-up/'))).toHaveLength(machines);
    expect(pages.filter((p) => p.endsWith('/start-up/'))).toHaveLength(machines);
    for (const page of [
      '/',
      '/jobs/',
      '/agenda/',
      '/agenda/months/',
      '/agenda/rounds/',
      '/shopping/',
      '/methods/',
      '/404.html',
    ])
      expect(pages).toContain(page);
  });

  test('keeps its budgets: page 60 kB, script 8 kB, style 12 kB, each gzipped', () => {
    for (const page of pages) expect(kB(fileOf(site, page)!), page).toBeLessThanOrEqual(60);
    const sum = (files: Iterable<string>) => [...files].reduce((total, file) => total + kB(join(site, file)), 0);
    for (const page of sample(pages)) {
      const scripts = withImports(site, linked(site, page, 'js'));
      expect(scripts.size, page).toBeGreaterThan(0);
      expect(sum(scripts), page).toBeLessThanOrEqual(page === '/plan/' ? 120 : 8);
      expect(sum(linked(site, page, 'css')), page).toBeLessThanOrEqual(12);
    }
  });

  test('holds nothing inline and asks no other host', () => {
    for (const page of sample(pages)) {
      const html = read(site, page);
      expect(html, page).not.toMatch(/<script(?![^>]*\ssrc=)/i);
      expect(html, page).not.toMatch(/<style/i);
      expect(html, page).not.toMatch(/\sstyle=/i);
      expect(html, page).not.toMatch(/\son\w+=/i);
      expect(html, page).not.toMatch(/(?:src|href)="(?:https?:)?\/\//i);
      expect(html, page).toContain('http-equiv="Content-Security-Policy" content="default-src \'self\';');
      expect(html, page).toContain('name="robots" content="noindex');
    }
  });

  test('has no link that leads nowhere', () => {
    const missing: string[] = [];
    const ids = new Map<string, Set<string>>();
    const idsOf = (path: string) => {
      const known = ids.get(path) ?? new Set([...read(site, path).matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]!));
      ids.set(path, known);
      return known;
    };
    for (const page of sample(pages))
      for (const [, link] of read(site, page).matchAll(/\s(?:href|src)="([^"]*)"/g)) {
        if (/^webcal:/.test(link!)) continue;
        const url = new URL(link!, `http://x${page}`);
        if (PUBLISHED.test(url.pathname) && !existsSync(join(site, 'plan.json'))) continue;
        const file = fileOf(site, url.pathname);
        if (!file) missing.push(`${page} -> ${link}`);
        else if (url.hash && !idsOf(url.pathname).has(url.hash.slice(1))) missing.push(`${page} -> ${link}`);
      }
    expect(missing).toEqual([]);
  });

  test('is valid HTML', async () => {
    for (const page of sample(pages)) expect(await problemsOf(read(site, page), page)).toEqual([]);
  });

  test('prints no number that is not one', () => {
    for (const page of sample(pages)) expect(read(site, page), page).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });
});

test('another household reads its own units, clock, dates and calendar address', async () => {
  const site = await builtSite('many');
  const machine = read(site, '/machines/machine-1/');
  expect(machine).toMatch(/41 psi(?! \()/);
  expect(machine).toMatch(/−8 °F(?! \()/);
  const agenda = read(site, '/agenda/');
  expect(agenda).toContain('href="webcal://shed.example/idle/calendar/all.ics"');
  expect(agenda).toContain('<span class="address">https://shed.example/idle/calendar/all.ics</span>');
  expect(agenda).toContain('1:00 pm');
  expect(agenda).toMatch(/Sun, Sep 20, 2026/);
  const demo = read(await builtSite('demo'), '/agenda/');
  expect(demo).not.toContain('webcal:');
  expect(demo).toContain('13:00');
});

test('text from content is never markup', async () => {
  const site = await builtSite('demo');
  // Within an attribute's quotes "<" is a letter like any other.
  const tags = (page: string) => read(site, page).replaceAll(/="[^"]*"/g, '');
  for (const page of pagesOf(site)) expect(tags(page), page).not.toContain('<b>Son</b>');
  expect(read(site, '/machines/badger/')).toContain('Badger &amp; &lt;b&gt;Son&lt;/b&gt;');
});

test('the margins of a sheet name machine and season, escaped', async () => {
  const site = await builtSite('demo');
  const css = readFileSync(join(site, 'machines/badger/start-up.css'), 'utf8');
  expect(css).toContain('counter(page)');
  expect(css).toContain('counter(pages)');
  expect(css).toContain('Badger \\26  \\3c b\\3e Son');
  expect(css).toContain('2027');
});

/** All pages of a small site; of a large one some of each kind. */
function sample(pages: string[]): string[] {
  return pages.length < 60
    ? pages
    : pages.filter((page) => !/machine-\d+\//.test(page) || /machine-(1|120)\//.test(page));
}
