/** What tests do with the planner page before they look at it. */
import type { Page } from 'playwright-core';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { downloaded } from './opened.ts';

/** Answers the questions for a machine of one's own, and waits for its plan. */
export async function planOwn(page: Page, origin: string): Promise<void> {
  await page.goto(`${origin}/plan/`);
  await page.getByLabel('What do you call it?').fill('Grey Owl');
  await page.getByLabel('Nearest weather station').fill('edmonton');
  await page.locator('#stations [role=option]').first().waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.getByLabel('Last day of use').first().fill('2026-10-25');
  await page.getByLabel('First day of use after the rest').fill('2027-04-10');
  await page.getByLabel('Capacity on its label').fill('12');
  await page.locator('[data-title]', { hasText: 'Grey Owl' }).waitFor();
  await settled(page);
}

/** Nothing is being worked out any more. */
export async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(400);
  await page.locator('season-planner:not([aria-busy])').waitFor({ timeout: 30_000 });
}

/** The plan that the page takes along. */
export const planOf = async (page: Page): Promise<SeasonPlan> =>
  JSON.parse(
    (await downloaded(page, () => page.getByRole('button', { name: 'The plan as data' }).click())).bytes.toString(),
  );
