import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { builtSite } from './built.ts';
import { serve } from './serve.ts';

let browser: Browser;
let site: Awaited<ReturnType<typeof serve>>;
let page: Page;

beforeAll(async () => {
  const folder = await builtSite('demo');
  [browser, site] = await Promise.all([openBrowser(), serve(folder)]);
  page = await browser.newPage();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Pages of a PDF, as its page tree counts them. */
function pageCount(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

const MM = 96 / 25.4;
/** Text area of a sheet: paper less the margins of its style. */
const PAPERS = [
  { format: 'A4', width: (210 - 26) * MM, height: (297 - 34) * MM },
  { format: 'Letter', width: 8.5 * 96 - 26 * MM, height: 11 * 96 - 34 * MM },
] as const;

describe.each(PAPERS)('on $format', ({ format, width, height }) => {
  test.each([
    ['/machines/juniper/lay-up/', 1, 2],
    ['/machines/juniper/start-up/', 1, 3],
    ['/machines/badger/start-up/', 1, 3],
    ['/shopping/', 1, 2],
    ['/jobs/', 1, 4],
  ])('%s prints on %i to %i pages', async (path, least, most) => {
    await page.goto(site.origin + path);
    const count = pageCount(await page.pdf({ format }));
    expect(count).toBeGreaterThanOrEqual(least);
    expect(count).toBeLessThanOrEqual(most);
  });

  test.each(['/machines/juniper/lay-up/', '/machines/juniper/start-up/'])(
    '%s clips nothing and splits no step and no box of cautions',
    async (path) => {
      await page.setViewportSize({ width: Math.floor(width), height: Math.floor(height) });
      await page.emulateMedia({ media: 'print' });
      await page.goto(site.origin + path);
      const found = await page.evaluate((tallest) => {
        const problems: string[] = [];
        const right = document.documentElement.clientWidth;
        for (const node of document.querySelectorAll<HTMLElement>('main *')) {
          const box = node.getBoundingClientRect();
          if (box.width === 0 || node.classList.contains('unseen')) continue;
          if (box.right > right + 1 || box.left < -1) problems.push(`outside: ${node.outerHTML.slice(0, 80)}`);
          if (node.scrollWidth > node.clientWidth + 1 && getComputedStyle(node).overflowX !== 'visible')
            problems.push(`clipped: ${node.outerHTML.slice(0, 80)}`);
        }
        const steps = [...document.querySelectorAll<HTMLElement>('.step, .cautions')];
        for (const step of steps) {
          if (getComputedStyle(step).breakInside !== 'avoid') problems.push(`splits: ${step.textContent.slice(0, 60)}`);
          if (step.getBoundingClientRect().height > tallest)
            problems.push(`taller than a page: ${step.textContent.slice(0, 60)}`);
        }
        return { problems, steps: steps.length };
      }, height);
      expect(found.steps).toBeGreaterThan(3);
      expect(found.problems).toEqual([]);
      await page.emulateMedia({ media: null });
    },
  );
});

test('month sheets have one month on a page', async () => {
  await page.goto(`${site.origin}/agenda/months/`);
  const months = await page.locator('.month').count();
  expect(pageCount(await page.pdf({ preferCSSPageSize: true, format: 'Letter' }))).toBe(months);
});

test('a sheet is black on white in 11 pt or more, with boxes of 5 mm', async () => {
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.goto(`${site.origin}/machines/juniper/start-up/`);
  const found = await page.evaluate(() => {
    const small: string[] = [];
    const coloured: string[] = [];
    for (const node of document.querySelectorAll<HTMLElement>('main *')) {
      const own = [...node.childNodes].some((child) => child.nodeType === 3 && child.textContent?.trim());
      if (!own || node.getBoundingClientRect().width === 0) continue;
      const { fontSize, color } = getComputedStyle(node);
      if (Number.parseFloat(fontSize) < 14.6) small.push(`${fontSize} ${node.textContent.slice(0, 40)}`);
      const [r = 0, g = 0, b = 0] = color.match(/\d+/g)?.map(Number) ?? [];
      if (Math.max(r, g, b) > 60) coloured.push(`${color} ${node.textContent.slice(0, 40)}`);
    }
    const boxes = [...document.querySelectorAll('.box')].map((box) => box.getBoundingClientRect());
    return {
      small,
      coloured,
      paper: getComputedStyle(document.body).backgroundColor,
      boxes: boxes.map((box) => [Math.round(box.width * 10) / 10, Math.round(box.height * 10) / 10]),
    };
  });
  expect(found.small).toEqual([]);
  expect(found.coloured).toEqual([]);
  expect(found.paper).toBe('rgb(255, 255, 255)');
  expect(found.boxes.length).toBeGreaterThan(5);
  for (const [w, h] of found.boxes) {
    expect(w).toBeCloseTo(18.9, 0);
    expect(h).toBeCloseTo(18.9, 0);
  }
  await page.emulateMedia({ media: null, colorScheme: null });
});

test('every safety-critical step has room for initials, every reading its blank', async () => {
  await page.goto(`${site.origin}/machines/juniper/start-up/`);
  const steps = await page.locator('.step').evaluateAll((found) =>
    found.map((step) => ({
      critical: step.querySelector('.critical') !== null,
      blanks: [...step.querySelectorAll('.blank')].map((blank) => blank.textContent?.trim()),
    })),
  );
  expect(steps.filter((s) => s.critical).length).toBeGreaterThan(2);
  for (const step of steps) expect(step.blanks.includes('initials')).toBe(step.critical);
  // Gauges in Britain show bar beside psi (common practice).
  expect(steps.flatMap((s) => s.blanks)).toContain('bar');
});
