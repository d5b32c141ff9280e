import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axe, RULES } from './axe.ts';
import { openBrowser } from './browser.ts';
import { builtSite, pagesOf } from './built.ts';
import { serve } from './serve.ts';

let browser: Browser;
let site: Awaited<ReturnType<typeof serve>>;
let pages: string[] = [];

beforeAll(async () => {
  const folder = await builtSite('demo');
  pages = pagesOf(folder);
  [browser, site] = await Promise.all([openBrowser(), serve(folder)]);
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens a page, and hears what it complains of and where it goes. */
async function open<T>(path: string, options: BrowserContextOptions, act: (page: Page, heard: string[]) => Promise<T>) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const heard: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') heard.push(message.text());
  });
  page.on('pageerror', (error) => heard.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(site.origin)) heard.push(`asked ${request.url()}`);
  });
  try {
    await page.goto(site.origin + path);
    return await act(page, heard);
  } finally {
    await context.close();
  }
}

/** One page of each kind. */
const KINDS = [
  '/',
  '/machines/juniper/',
  '/machines/badger/',
  '/machines/juniper/lay-up/',
  '/machines/juniper/start-up/',
  '/jobs/',
  '/agenda/',
  '/agenda/months/',
  '/agenda/rounds/',
  '/shopping/',
  '/methods/',
  '/offline/',
  '/plan/',
  '/404.html',
];

describe.each(KINDS)('%s', (path) => {
  test.each(['light', 'dark'] as const)('is quiet, asks nobody and passes axe, %s', async (colorScheme) => {
    await open(path, { viewport: { width: 1280, height: 900 }, colorScheme }, async (page, heard) => {
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      // In the dark only the colours differ.
      expect(await axe(page, colorScheme === 'dark' ? ['color-contrast'] : RULES)).toEqual([]);
      expect(heard).toEqual([]);
    });
  });

  test.each([360, 768, 1440])('fits %i px without scrolling sideways, and at twice the text size', async (width) => {
    await open(path, { viewport: { width, height: 800 } }, async (page) => {
      const over = () =>
        page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(await over()).toBeLessThanOrEqual(0);
      // 200 % zoom of a window is half of its width with all else the same.
      await page.setViewportSize({ width: Math.max(320, width / 2), height: 400 });
      expect(await over()).toBeLessThanOrEqual(0);
    });
  });

  test('gives gloves 44 px: every link and switch that stands by itself', async () => {
    await open(path, { viewport: { width: 360, height: 800 } }, async (page) => {
      const small = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('a, button, summary, input, select')]
          .filter((found) => {
            // A link within a sentence is as high as its line (WCAG 2.5.8, inline exception).
            const inSentence = found.tagName === 'A' && getComputedStyle(found).display === 'inline';
            const box = found.getBoundingClientRect();
            if (inSentence || box.width === 0 || found.matches('.skip, .unseen') || box.height >= 43.5) return false;
            // A label's whole row ticks its box.
            if ((found.closest('label')?.getBoundingClientRect().height ?? 0) >= 43.5) return false;
            // A mark may be smaller than what it hears: ask what a finger 21 px above and below its middle would meet.
            found.scrollIntoView({ block: 'center', behavior: 'instant' });
            const { x, y, width, height } = found.getBoundingClientRect();
            const hears = (dy: number) => document.elementFromPoint(x + width / 2, y + height / 2 + dy) === found;
            return !(hears(-21) && hears(21));
          })
          .map((found) => found.outerHTML.slice(0, 120)),
      );
      expect(small).toEqual([]);
    });
  });
});

test('the keyboard alone reaches content, unfolds a reason, and sees where it is', async () => {
  await open('/machines/juniper/', { viewport: { width: 1280, height: 900 } }, async (page) => {
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('skip');
    expect((await page.locator('.skip').boundingBox())?.y).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
    const reached = new Set<string>();
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => {
        const found = document.activeElement as HTMLElement;
        return { tag: found.tagName, outline: getComputedStyle(found).outlineStyle };
      });
      if (at.tag === 'BODY') break;
      expect(at.outline, at.tag).not.toBe('none');
      reached.add(at.tag);
    }
    expect(reached).toContain('SUMMARY');
    const why = page.locator('summary', { hasText: 'Why' }).first();
    await why.focus();
    await page.keyboard.press('Enter');
    expect(await why.evaluate((found) => (found.parentElement as HTMLDetailsElement).open)).toBe(true);
  });
});

test('nothing moves for those who asked for no motion', async () => {
  await open('/', { reducedMotion: 'reduce' }, async (page) => {
    const moving = await page.evaluate(
      () =>
        [...document.querySelectorAll('*')].filter((found) => {
          const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(found);
          return animationName !== 'none' || transitionDuration !== '0s' || scrollBehavior === 'smooth';
        }).length,
    );
    expect(moving).toBe(0);
  });
});

describe('what is next is worked out on the device', () => {
  const at = async <T>(day: string, act: (page: Page) => Promise<T>) => {
    const context = await browser.newContext({ timezoneId: 'America/Regina' });
    try {
      const page = await context.newPage();
      await page.clock.setFixedTime(new Date(`${day}T18:00:00Z`));
      await page.goto(`${site.origin}/`);
      return await act(page);
    } finally {
      await context.close();
    }
  };
  const first = (page: Page) => page.locator('.next li:not([hidden])').first().locator('time').getAttribute('datetime');
  const angle = async (page: Page) =>
    Number(/rotate\(([\d.]+)\)/.exec((await page.locator('[data-hand]').getAttribute('transform')) ?? '')?.[1]);

  test.each(['2026-10-20', '2026-12-24', '2027-03-29'])(
    'opened on %s it begins with that day or later',
    async (day) => {
      await at(day, async (page) => {
        const dates = await page
          .locator('.next li:not([hidden]) time')
          .evaluateAll((times) => times.map((time) => time.getAttribute('datetime') ?? ''));
        expect(dates.length).toBeGreaterThan(0);
        expect(dates.length).toBeLessThanOrEqual(10);
        for (const date of dates) expect(date >= day).toBe(true);
        expect([...dates].sort()).toEqual(dates);
        expect(await page.locator('time[data-today]').getAttribute('datetime')).toBe(day);
        expect(await page.locator('.next li.is-first').count()).toBe(1);
      });
    },
  );

  test('the hand of the ring stands at today: a quarter round is one April', async () => {
    expect(await at('2027-04-02', angle)).toBeCloseTo((91 / 365) * 360, 0);
    expect(await at('2026-07-02', angle)).toBeCloseTo((182 / 365) * 360, 0);
  });

  test('a machine is at rest between lay-up and start-up, in use before and after', async () => {
    const state = async (page: Page) =>
      (
        await page.locator('.tag', { hasText: 'Juniper' }).locator('[data-show-from]:not([hidden])').textContent()
      )?.trim();
    expect(await at('2026-10-20', state)).toBe('in use');
    expect(await at('2026-10-27', state)).toBe('being laid up');
    expect(await at('2027-01-15', state)).toBe('at rest');
    expect(await at('2027-04-05', state)).toBe('being started up');
    expect(await at('2027-06-01', state)).toBe('in use');
  });

  test('what passed a few days ago is still to be found, and not among what is next', async () => {
    await at('2026-10-28', async (page) => {
      expect((await first(page))! >= '2026-10-28').toBe(true);
      await page.locator('[data-passed] summary').click();
      expect(await page.locator('[data-passed] li:not([hidden])').allInnerTexts()).toEqual([
        expect.stringContaining('Lay up Juniper'),
      ]);
    });
  });

  test('long after the season it says that nothing is left', async () => {
    await at('2031-01-01', async (page) => {
      expect(await page.locator('.next li:not([hidden])').count()).toBe(0);
      expect(await page.locator('[data-next-empty]').isVisible()).toBe(true);
    });
  });

  test('without the script the page stands as on the day of the plan', async () => {
    await open('/', { javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('.next li:not([hidden])').count()).toBe(10);
      expect(await first(page)).toBe('2026-10-25');
      expect(await angle(page)).toBeCloseTo((292 / 365) * 360, 0);
    });
  });
});

test('sessions of days that have passed move out of the way', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date('2026-12-01T18:00:00Z'));
  await page.goto(`${site.origin}/agenda/`);
  const shown = await page
    .locator('[data-month] [data-session]')
    .evaluateAll((found) => found.map((item) => (item as HTMLElement).dataset.session ?? ''));
  expect(shown.length).toBeGreaterThan(0);
  for (const day of shown) expect(day >= '2026-12-01').toBe(true);
  expect(await page.locator('[data-earlier] [data-session]').count()).toBeGreaterThan(0);
  await context.close();
});

test('every page was seen by one of these tests', () => {
  const kind = (page: string) => page.replace(/^\/machines\/[^/]+\//, '/machines/*/');
  expect([...new Set(pages.map(kind))].sort()).toEqual([...new Set(KINDS.map(kind))].sort());
});
