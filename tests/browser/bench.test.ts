import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { openBrowser } from '../site/browser.ts';
import { serve } from '../site/serve.ts';
import { calm, DESK, downloaded, faults, type Opened, open, PHONE } from './opened.ts';
import { demoSite, PROJECT, TODAY } from './site.ts';

let browser: Browser;
let site: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  const folder = await demoSite();
  [browser, site] = await Promise.all([openBrowser(), serve(folder)]);
}, 240_000);
afterEach(async () => {
  await Promise.all(browser.contexts().map((context) => context.close()));
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const NOON = `${TODAY}T19:00:00Z`;

async function machine(options = PHONE, before?: (page: Page) => Promise<unknown>): Promise<Opened> {
  const opened = await open(browser, site.origin, options);
  await opened.page.clock.setFixedTime(NOON);
  await before?.(opened.page);
  await opened.page.goto(`${site.origin}/machines/juniper/`);
  return opened;
}

async function openRecord(page: Page): Promise<void> {
  await page.locator('bench-record summary').click();
  await page.locator('[data-entries] li').first().waitFor();
}

async function logReading(page: Page, volts = '12.3'): Promise<void> {
  const form = page.locator('form[data-kind=reading]');
  await form.getByLabel('Volts at the posts').fill(volts);
  await form.getByLabel('Battery temperature').fill('-3');
  await form.getByLabel('Hours since').fill('300');
  await form.getByRole('button').click();
}

const entries = (page: Page) => page.locator('[data-entries] li');
const charges = (page: Page) => page.locator('[data-bench-charges]');

test('a reading is kept on the device and moves the charge dates of the page, after a reload too', async () => {
  const opened = await machine();
  const { page } = opened;
  const before = await charges(page).textContent();
  await openRecord(page);
  await logReading(page);
  await page.getByText('Charge dates worked out anew').waitFor({ timeout: 30_000 });
  const after = await charges(page).textContent();
  expect(after).not.toBe(before);
  expect(await faults(page)).toEqual([]);
  await page.reload();
  await page.getByText('Charge dates worked out anew').waitFor({ state: 'attached', timeout: 30_000 });
  expect(await charges(page).textContent()).toBe(after);
  await openRecord(page);
  expect(await entries(page).count()).toBe(1);
  await page.getByRole('button', { name: /Delete.*12.3 V/ }).click();
  await page.getByText('Nothing yet.').waitFor();
  calm(opened);
}, 120_000);

test('wrong figures are told and not written down', async () => {
  const { page } = await machine();
  await openRecord(page);
  await logReading(page, '123');
  await page.getByText('Volts at the posts: correct this first.').waitFor();
  expect(await page.locator('[data-entries]').textContent()).toContain('Nothing yet.');
}, 60_000);

test('steps ticked on a sheet, by keyboard, stay ticked, and are done in the export', async () => {
  const opened = await machine();
  const { page } = opened;
  await page.goto(`${site.origin}/machines/juniper/lay-up/`);
  const box = page.locator('input.box').first();
  const step = await box.getAttribute('data-step');
  await box.focus();
  await page.keyboard.press('Space');
  await page.waitForFunction(() => document.querySelector('[data-said]')?.textContent !== '');
  await page.reload();
  await page.waitForFunction(() => document.querySelector<HTMLInputElement>('input.box')?.checked);
  expect(await faults(page)).toEqual([]);
  await openRecord(page);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());
  expect(bytes.toString()).toContain(`step: ${step}`);
  await box.uncheck();
  await page.getByText('Nothing yet.').waitFor();
  calm(opened);
}, 60_000);

test('an export is taken by the build as it stands, and by another device', async () => {
  const { page } = await machine(DESK);
  await openRecord(page);
  await logReading(page, '12.51');
  await entries(page).filter({ hasText: '12.51' }).waitFor();
  const charge = page.locator('form[data-kind=charged]');
  await charge.getByRole('button').click();
  const part = page.locator('form[data-kind=part]');
  await part.getByLabel('Where').fill('Top shelf, "left" box: {1}');
  await part.getByRole('button').click();
  const next = page.locator('form[data-kind=next]');
  await next.getByLabel('What, when').fill('bolts, the two rusty ones # yes');
  await next.getByRole('button').click();
  await entries(page).filter({ hasText: 'rusty' }).waitFor();
  const file = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());

  const content = mkdtempSync(join(tmpdir(), 'idle-record-'));
  cpSync(join(PROJECT, 'content'), content, { recursive: true });
  mkdirSync(join(content, 'records/juniper'), { recursive: true });
  writeFileSync(join(content, 'records/juniper', file.name), file.bytes);
  const { household, problems } = readFolder(content, { asOf: TODAY });
  rmSync(content, { recursive: true, force: true });
  expect(problems).toEqual([]);
  const juniper = household!.machines.find((m) => m.id === 'juniper')!;
  expect(juniper.readings).toContainEqual({ date: TODAY, volts: 12.51, temperatureC: -3, restedH: 300 });
  expect(juniper.charged).toContainEqual({ date: TODAY, toPct: 100 });
  expect(juniper.notes.some((n) => n.text === 'Replace next time: bolts, the two rusty ones # yes')).toBe(true);
  expect(juniper.asLeft.some((l) => l.where === 'Top shelf, "left" box: {1}')).toBe(true);

  const other = await machine(DESK);
  await openRecord(other.page);
  await other.page
    .locator('[data-import]')
    .setInputFiles({ name: file.name, mimeType: 'text/yaml', buffer: file.bytes });
  await other.page.getByText('4 entries were added.').waitFor({ timeout: 30_000 });
  await other.page
    .locator('[data-import]')
    .setInputFiles({ name: file.name, mimeType: 'text/yaml', buffer: file.bytes });
  await other.page.getByText('0 entries were added.').waitFor({ timeout: 30_000 });
  expect(await entries(other.page).count()).toBe(4);
  const wrong = 'machine: juniper\nreadings:\n  - { date: "2026-11-20", voltage: 12 }\n';
  await other.page
    .locator('[data-import]')
    .setInputFiles({ name: 'bad.yaml', mimeType: 'text/yaml', buffer: Buffer.from(wrong) });
  await other.page
    .getByText(/bad\.yaml:3:\d+/)
    .first()
    .waitFor({ timeout: 30_000 });
  calm(other);
}, 120_000);

test('two tabs write side by side, and each sees what the other wrote', async () => {
  const { page, context } = await machine(DESK);
  const second = await context.newPage();
  await second.clock.setFixedTime(NOON);
  await second.goto(`${site.origin}/machines/juniper/`);
  await openRecord(page);
  await openRecord(second);
  await Promise.all([logReading(page, '12.5'), logReading(second, '12.6')]);
  for (const tab of [page, second]) {
    await entries(tab).filter({ hasText: '12.5 V' }).waitFor();
    await entries(tab).filter({ hasText: '12.6 V' }).waitFor();
  }
}, 60_000);

const put = (page: Page, version: number, rows: object[]) =>
  page.evaluate(
    ([version, rows]) =>
      new Promise<void>((resolve, reject) => {
        const asked = indexedDB.open('idle-season', version as number);
        asked.onupgradeneeded = () => asked.result.createObjectStore('entries', { keyPath: 'id' });
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const write = asked.result.transaction('entries', 'readwrite');
          for (const row of rows as object[]) write.objectStore('entries').put(row);
          write.oncomplete = () => {
            asked.result.close();
            resolve();
          };
        };
      }),
    [version, rows] as const,
  );

const GOOD = {
  format: 1,
  id: 'a',
  machine: 'juniper',
  kind: 'readings',
  date: '2026-11-20',
  volts: 12.5,
  temperatureC: 1,
  restedH: 20,
};
const DAMAGED = { format: 1, id: 'b', machine: 'juniper', kind: 'readings', date: 12, volts: 'much' };
const LATER = { format: 2, id: 'c', machine: 'juniper', what: 'something new' };

test('damaged entries and those of another format are left as they are, told of, and can be saved', async () => {
  const { page } = await machine(DESK);
  await put(page, 1, [GOOD, DAMAGED, LATER]);
  await openRecord(page);
  await page.getByText('2 entries cannot be read. They were left as they are.').waitFor();
  expect(await entries(page).count()).toBe(1);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Save them as a file' }).click());
  expect(JSON.parse(bytes.toString())).toEqual([DAMAGED, LATER]);
  await logReading(page);
  await entries(page).nth(1).waitFor();
  await page.reload();
  await openRecord(page);
  await page.getByText('2 entries cannot be read').waitFor();
}, 60_000);

test('a record that a newer version wrote is read as far as it is known, and never rebuilt', async () => {
  const { page } = await machine(DESK);
  await put(page, 7, [GOOD, LATER]);
  await openRecord(page);
  await page.getByText('A newer version of this site has written here.').waitFor();
  expect(await entries(page).count()).toBe(1);
  const version = await page.evaluate(
    async () => (await indexedDB.databases()).find((d) => d.name === 'idle-season')?.version,
  );
  expect(version).toBe(7);
}, 60_000);

test('where the browser keeps nothing, that is said, and the entries of the page can still be exported', async () => {
  const { page } = await machine(DESK, (p) =>
    p.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('no', 'SecurityError');
      };
    }),
  );
  await openRecord(page);
  await page.getByText('This browser keeps nothing here').waitFor();
  await logReading(page);
  await entries(page).filter({ hasText: '12.3 V' }).waitFor();
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());
  expect(bytes.toString()).toContain('voltage: 12.3 V');
}, 60_000);

test('a full device is told of; what was typed stays in its fields and in the export', async () => {
  const { page } = await machine(DESK, (p) =>
    p.addInitScript(() => {
      IDBObjectStore.prototype.add = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    }),
  );
  await openRecord(page);
  await logReading(page);
  await page.getByText('The device is full').waitFor();
  expect(await page.getByLabel('Volts at the posts').inputValue()).toBe('12.3');
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());
  expect(bytes.toString()).toContain('voltage: 12.3 V');
}, 60_000);
