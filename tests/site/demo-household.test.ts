import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '../../src/planner/dates.ts';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { axe } from './axe.ts';
import { openBrowser } from './browser.ts';
import { builtSite, pagesOf } from './built.ts';
import { problemsOf } from './html.ts';
import { fileOf, serve } from './serve.ts';

let folder = '';
let plan: SeasonPlan;
let pages: string[] = [];
let site: Awaited<ReturnType<typeof serve>>;
let browser: Browser;
let page: Page;
const heard: string[] = [];

beforeAll(async () => {
  folder = await builtSite('content');
  plan = JSON.parse(readFileSync(fileOf(folder, '/plan.json')!, 'utf8'));
  pages = pagesOf(folder);
  [browser, site] = await Promise.all([openBrowser(), serve(folder)]);
  page = await browser.newPage({ viewport: { width: 360, height: 800 } });
  page.on('console', (message) => heard.push(message.text()));
  page.on('pageerror', (error) => heard.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(site.origin)) heard.push(`asked ${request.url()}`);
  });
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const read = (path: string) => readFileSync(fileOf(folder, path)!, 'utf8');

test('there are as many machine pages as machines in the plan', () => {
  expect(pages.filter((path) => /^\/machines\/[^/]+\/$/.test(path))).toHaveLength(plan.machines.length);
});

test('every page is within 60 kB, valid, and leads nowhere in vain, the published files included', async () => {
  for (const path of pages) {
    const html = read(path);
    expect(gzipSync(html).length, path).toBeLessThanOrEqual(60_000);
    expect(html, path).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(await problemsOf(html, path)).toEqual([]);
    for (const [, link] of html.matchAll(/\s(?:href|src)="([^"#]*)[^"]*"/g)) {
      if (link === '' || link!.startsWith('webcal:')) continue;
      expect(fileOf(folder, new URL(link!, `http://x${path}`).pathname), `${path} -> ${link}`).toBeDefined();
    }
  }
});

test('no amount is left unfilled in a step, no caution as a bare key', () => {
  for (const path of pages.filter((p) => /(lay-up|start-up)\/$/.test(p))) {
    const text = read(path).replaceAll(/<[^>]*>/g, ' ');
    expect(text, path).not.toMatch(/\{[a-z][\w.-]*\}/i);
    expect(text, path).not.toMatch(/\s(petrol-vapour|carbon-monoxide|rodent-bait|brakes-steering)\s/);
  }
});

test('nothing tells where the places are: no coordinates on any page', () => {
  // The planner page asks for them in words; it is the same page for everybody and holds no place.
  for (const path of pages.filter((p) => p !== '/plan/')) expect(read(path), path).not.toMatch(/latitude|longitude/i);
});

test('a machine is in one state on every day, and said to wait when its last use is over and its lay-up has not begun', async () => {
  const clocked = await browser.newPage();
  const stateOn = async (id: string, day: string) => {
    await clocked.clock.setFixedTime(`${day}T18:00:00Z`);
    await clocked.goto(`${site.origin}/machines/${id}/`);
    const shown = await clocked
      .locator('h1 ~ p span[data-show-from], header span[data-show-from]')
      .filter({ visible: true })
      .allTextContents();
    expect(shown, `${id} on ${day}`).toHaveLength(1);
    return shown[0]!.trim();
  };
  const late = plan.machines.find((m) => m.layUp.start > addDays(m.season.lastUse, 1))!;
  expect(await stateOn(late.id, late.season.lastUse)).toBe('in use');
  expect(await stateOn(late.id, addDays(late.season.lastUse, 1))).toBe('waiting to be laid up');
  for (const { id, layUp, startUp } of plan.machines) {
    const states = [];
    for (const day of [layUp.start, layUp.done, startUp.start, startUp.firstUse]) states.push(await stateOn(id, day));
    const expected = ['being laid up', 'at rest', 'being started up', 'in use'];
    // A lay-up or start-up that is done within its day has no day of its own.
    if (layUp.start === layUp.done) expected[0] = 'at rest';
    expect(states, id).toEqual(expected);
  }
  await clocked.close();
});

test('on a phone every page is quiet, fits, and axe finds nothing', async () => {
  for (const path of pages) {
    await page.goto(site.origin + path);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      path,
    ).toBeLessThanOrEqual(0);
    expect(await axe(page), path).toEqual([]);
    expect(heard, path).toEqual([]);
  }
});

test.each(['A4', 'Letter'])('every sheet prints on six pages of %s at the most', async (format) => {
  await page.emulateMedia({ media: null });
  for (const path of pages.filter((p) => /(lay-up|start-up)\/$/.test(p))) {
    await page.goto(site.origin + path);
    const pdf = (await page.pdf({ format })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length, path).toBeLessThanOrEqual(6);
  }
});

test('every caution that a step names stands in full once on its sheet', async () => {
  for (const path of pages.filter((p) => /(lay-up|start-up)\/$/.test(p))) {
    await page.goto(site.origin + path);
    const { full, named } = await page.evaluate(() => ({
      full: [...document.querySelectorAll('.cautions strong')].map((title) => title.textContent!.replace(/[.]$/, '')),
      named: [...document.querySelectorAll('.mind')].map((mind) => mind.textContent!),
    }));
    expect(new Set(full).size, path).toBe(full.length);
    expect(full.length, path).toBeGreaterThan(3);
    for (const title of full)
      expect(
        named.some((text) => text.includes(title)),
        `${path}: ${title}`,
      ).toBe(true);
  }
});

test('no step of any sheet is taller than a page, nothing reaches over the edge of the paper', async () => {
  // The text area of Letter is the lower, that of A4 the narrower.
  const [width, height] = [(210 - 26) * 3.78, 11 * 96 - 34 * 3.78];
  await page.setViewportSize({ width: Math.floor(width), height: Math.floor(height) });
  await page.emulateMedia({ media: 'print' });
  for (const path of pages.filter((p) => /(lay-up|start-up)\/$/.test(p))) {
    await page.goto(site.origin + path);
    const faults = await page.evaluate((tallest) => {
      const right = document.documentElement.clientWidth + 1;
      const boxes = [...document.querySelectorAll<HTMLElement>('.step, .boxed, table, h1, h2, p, li')];
      return boxes
        .filter((box) => {
          const { height: tall, right: end } = box.getBoundingClientRect();
          return end > right || (box.matches('.step, .boxed') && tall > tallest);
        })
        .map((box) => box.outerHTML.slice(0, 100));
    }, height);
    expect(faults, path).toEqual([]);
  }
});
