/** Pages of the built site in a real browser: what they complain of, and where they go. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

export const PHONE: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  locale: 'en-CA',
  timezoneId: 'America/Edmonton',
  hasTouch: true,
  isMobile: true,
};
export const DESK: BrowserContextOptions = {
  ...PHONE,
  viewport: { width: 1280, height: 900 },
  isMobile: false,
  hasTouch: false,
};

export interface Opened {
  context: BrowserContext;
  page: Page;
  /** Errors, refusals of the policy, and requests to other hosts. */
  complaints: string[];
}

/** A page of its own with its own storage. */
export async function open(browser: Browser, origin: string, options: BrowserContextOptions = PHONE): Promise<Opened> {
  const context = await browser.newContext(options);
  const complaints: string[] = [];
  context.on('weberror', (e) => complaints.push(e.error().message));
  context.on('console', (m) => {
    if (m.type() === 'error' && !/net::ERR_(INTERNET_DISCONNECTED|FAILED)/.test(m.text())) complaints.push(m.text());
  });
  context.on('request', (r) => {
    if (!/^(blob|data):/.test(r.url()) && !r.url().startsWith(origin)) complaints.push(`asked ${r.url()}`);
  });
  const page = await context.newPage();
  return { context, page, complaints };
}

/** What axe finds, as one line each. */
export async function faults(page: Page): Promise<string[]> {
  // As the DevTools protocol puts it there: the page's policy forbids scripts of another origin, and rightly.
  await page.evaluate(AXE);
  return page.evaluate(async (rules) => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const { violations } = await axe.run({ runOnly: rules });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)}`));
  }, RULES);
}

/** Text of the download that an act begins. */
export async function downloaded(page: Page, act: () => Promise<unknown>): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), act()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

/** Nothing went wrong. */
export const calm = ({ complaints }: Opened) => expect(complaints).toEqual([]);
