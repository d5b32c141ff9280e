import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2 AA, and what axe holds to be good practice. */
export const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds; the script comes over the protocol, past the page's own policy. */
export async function axe(page: Page, rules = RULES): Promise<string[]> {
  await page.evaluate(`${AXE};0`);
  return page.evaluate(async (tags) => {
    const { violations } = await (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(document, {
      runOnly: tags,
    });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 120)} ${n.failureSummary ?? ''}`));
  }, rules);
}
