/** The phone: no toolchain, no network in the shed, another device, and back after five months. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reminders, textOf, Walk } from './walk.ts';

const PHONE = {
  viewport: { width: 390, height: 844 },
  isMobile: true,
  hasTouch: true,
  serviceWorkers: 'allow' as const,
};
const NAME = 'Grey Owl';

let walk: Walk;
let phone: BrowserContext;
let page: Page;

beforeAll(async () => {
  walk = new Walk('yard', '2026-10-10');
  // Somebody else built the site and put it where the phone finds it.
  await walk.build('2026-11-15');
  phone = await walk.device(PHONE);
}, 120_000);
afterAll(() => walk.close());

async function fill(label: string, value: string): Promise<void> {
  walk.acts.field += 1;
  await page.getByLabel(label).first().fill(value);
}

const planned = () => page.locator('[data-title]', { hasText: NAME }).waitFor({ timeout: 30_000 });
const fits = () => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);

test('at home: a machine is described in the planner page, the phone keeps the site', async () => {
  page = await walk.open(phone, '/plan/', '2026-11-15');
  await fill('What do you call it?', NAME);
  await fill('Nearest weather station', 'duluth');
  await page.locator('#stations [role=option]').first().waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await fill('Last day of use', '2026-10-25');
  await fill('First day of use after the rest', '2027-04-10');
  await fill('Capacity on its label', '12');
  await planned();
  expect(await fits()).toBe(true);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (!navigator.serviceWorker.controller)
      await new Promise((done) => navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }));
  });
});

test('in the shed, no network: the plan is there, its calendar is taken, its sheet is printed', async () => {
  await phone.setOffline(true);
  page = await walk.open(phone, '/plan/', '2026-11-16');
  await planned();
  const [calendar] = reminders((await walk.save(page, /^Calendar/)).text);
  expect(calendar!.title).toContain(NAME);
  await walk.click(page, 'Lay-up sheet');
  await page.locator('.sheet:visible .step').first().waitFor();
  expect(await walk.print(page)).toBeLessThanOrEqual(5);
});

let record = '';

test('in the shed, no network: a reading is logged, the charge moves, the record leaves as a file', async () => {
  page = await walk.open(phone, '/machines/heron/', '2026-11-21');
  const before = await textOf(page.locator('.numbers .big').first());
  walk.acts.click += 1;
  await page.locator('bench-record summary').first().click();
  await walk.fill(page, 'form[data-kind=reading]', { volts: '12.4', temperature: '27', rested: '640' });
  await walk.click(page, /^Write it down ?: Log a reading/);
  await page.locator('[data-replanned]', { hasText: 'worked out anew' }).waitFor({ timeout: 30_000 });
  expect(await textOf(page.locator('.numbers .big').first())).not.toBe(before);
  record = (await walk.save(page, 'Export as a file')).text;
  expect(record).toContain('date: "2026-11-21", voltage: 12.4 V');
  expect(await fits()).toBe(true);
});

test('another device takes the record and says the same', async () => {
  const own = await textOf(page.locator('.numbers .big').first());
  const folder = mkdtempSync(join(tmpdir(), 'idle-record-'));
  writeFileSync(join(folder, 'heron.yaml'), record);
  const tablet = await walk.device({ viewport: { width: 1024, height: 768 } });
  const other = await walk.open(tablet, '/machines/heron/', '2026-11-21');
  await other.locator('bench-record summary').first().click();
  await other.locator('[data-entries] li', { hasText: 'Nothing yet' }).waitFor();
  await other.locator('[data-import]').setInputFiles(join(folder, 'heron.yaml'));
  await other.locator('[data-entries] li', { hasText: '2026-11-21: 12.4 V' }).waitFor({ timeout: 30_000 });
  await other.locator('[data-replanned]', { hasText: 'worked out anew' }).waitFor({ timeout: 30_000 });
  expect(await textOf(other.locator('.numbers .big').first())).toBe(own);
  rmSync(folder, { recursive: true, force: true });
  await tablet.close();
});

test('back after five months: the newer site waits to be taken, and the device has lost nothing', async () => {
  walk.edit('machines/bramble.yaml', 'name: Bramble', 'name: Bramble the Second', '2027-05-05');
  await walk.build('2027-05-05');
  await phone.setOffline(false);
  page = await walk.open(phone, '/', '2027-05-06');
  await page.getByText('A newer version of this site is ready.').waitFor({ timeout: 30_000 });
  await Promise.all([page.waitForEvent('load'), walk.click(page, 'Take it now')]);
  await page.locator('.tag', { hasText: 'Bramble the Second' }).first().waitFor();
  // Offline again: the newer site is whole on the phone, with what the phone itself had.
  await phone.setOffline(true);
  page = await walk.open(phone, '/machines/heron/', '2027-05-06');
  await page
    .locator('[data-entries] li', { hasText: '2026-11-21: 12.4 V' })
    .waitFor({ state: 'attached', timeout: 30_000 });
  page = await walk.open(phone, '/plan/', '2027-05-06');
  await planned();
  expect(await page.getByLabel('Capacity on its label').inputValue()).toBe('12');
});

test('the phone took no more acts than this', () => {
  expect(walk.acts).toMatchObject({ command: 2, page: 7, print: 1 });
  expect(walk.acts.click + walk.acts.field).toBeLessThanOrEqual(16);
});
