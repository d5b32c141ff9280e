import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ICAL from 'ical.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { openBrowser, openKeeping } from '../site/browser.ts';
import { serve } from '../site/serve.ts';
import { calm, DESK, downloaded, faults, type Opened, open, PHONE } from './opened.ts';
import { demoSite, PROJECT, TODAY } from './site.ts';

let browser: Browser;
let folder: string;
let site: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  folder = await demoSite();
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

async function machine(options = PHONE, before?: (page: Page) => Promise<unknown>, id = 'juniper'): Promise<Opened> {
  const opened = await open(browser, site.origin, options);
  await opened.page.clock.setFixedTime(NOON);
  await before?.(opened.page);
  await opened.page.goto(`${site.origin}/machines/${id}/`);
  return opened;
}

async function openRecord(page: Page): Promise<void> {
  await page.locator('bench-record summary').first().click();
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
const charges = (page: Page) => page.locator('section[aria-labelledby=battery] ul.assumed').first();
const replanned = (page: Page) => page.locator('[data-replanned]', { hasText: 'worked out anew' });

test('a reading moves all that shows a charge on the page, and stays moved after a reload until it is deleted', async () => {
  const opened = await machine();
  const { page } = opened;
  const number = page.locator('.numbers .big').first();
  const none = await number.textContent();
  expect(await page.getByText('No charge is needed before the one at start-up').count()).toBe(1);
  await openRecord(page);
  await logReading(page);
  await replanned(page).waitFor({ timeout: 30_000 });
  const first = await number.textContent();
  expect(first).not.toBe(none);
  // The charge's card, the number, the picture, the steps of the rest: all tell of the same day.
  expect(await charges(page).locator('strong').first().textContent()).toContain(first);
  expect(await page.locator('.figure-battery').textContent()).toContain('charge');
  const step = page.locator('.step', { hasText: 'volts, then charge' }).first();
  expect(await step.textContent()).toContain(first);
  expect(await step.locator('input.box').count()).toBe(1);
  expect(await page.locator('.anew').textContent()).toContain('Worked out anew on this device');
  expect(await faults(page)).toEqual([]);
  await page.reload();
  await replanned(page).waitFor({ state: 'attached', timeout: 30_000 });
  expect(await number.textContent()).toBe(first);
  await openRecord(page);
  expect(await entries(page).count()).toBe(1);
  await page.getByRole('button', { name: /Delete.*12.3 V/ }).click();
  await page.getByText('Nothing yet.').waitFor();
  await page
    .locator('[data-replanned]', { hasText: 'no charge is needed before start-up' })
    .waitFor({ timeout: 30_000 });
  expect(await number.textContent()).toBe(none);
  calm(opened);
}, 120_000);

test('the calendar taken after a reading has the new charge, and each earlier reminder once with a higher revision', async () => {
  const { page } = await machine();
  const published = await page.evaluate(async () => (await fetch('/calendar/juniper.ics')).text());
  const old = reminders(published);
  await openRecord(page);
  await logReading(page);
  await replanned(page).waitFor({ timeout: 30_000 });
  const day = await page
    .locator('.step time')
    .evaluateAll((all) => all.map((t) => (t as HTMLTimeElement).dateTime).sort());
  for (const act of [
    () => page.getByRole('button', { name: 'Calendar of Juniper' }).click(),
    // The link that stands above on the page gives the same.
    () => page.getByRole('link', { name: 'Calendar file' }).click(),
  ]) {
    const fresh = reminders((await downloaded(page, act)).bytes.toString());
    expect(new Set(fresh.map((e) => e.uid)).size).toBe(fresh.length);
    const charge = fresh.find((e) => /^Charge .*Juniper/.test(e.title))!;
    expect(day).toContain(charge.day);
    expect(old.map((e) => e.uid)).not.toContain(charge.uid);
    for (const { uid, sequence } of old.filter((e) => e.day >= TODAY))
      expect(fresh.find((e) => e.uid === uid)?.sequence).toBeGreaterThan(sequence);
  }
  const all = await downloaded(page, () => page.getByRole('button', { name: 'Calendar of all machines' }).click());
  expect(reminders(all.bytes.toString()).some((e) => e.title.includes('Sleet'))).toBe(true);
}, 120_000);

/** Read by another program than the one that wrote it. */
function reminders(text: string) {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    uid: String(event.getFirstPropertyValue('uid')),
    day: String(event.getFirstPropertyValue('dtstart')),
    title: String(event.getFirstPropertyValue('summary')),
    sequence: Number(event.getFirstPropertyValue('sequence')),
  }));
}

test('the front page and the agenda say which machine has moved, until a build has taken it in', async () => {
  const { page } = await machine();
  await openRecord(page);
  await logReading(page);
  await replanned(page).waitFor({ timeout: 30_000 });
  const first = (await page.locator('.numbers .big').first().textContent())!;
  for (const path of ['/', '/agenda/', '/agenda/months/']) {
    await page.goto(site.origin + path);
    const note = page.locator('moved-note');
    expect(await note.textContent()).toContain(`Juniper: next charge by ${first}`);
    expect(await note.isVisible()).toBe(true);
  }
  expect(await faults(page)).toEqual([]);
  // A page that knows the same day has nothing to say.
  await page.evaluate(() => {
    const note = document.querySelector<HTMLElement>('moved-note')!;
    const [[id, next]] = Object.entries(JSON.parse(note.dataset.next!)) as [[string, string]];
    localStorage.setItem('idle-season.next', JSON.stringify({ [id]: { name: id, date: next, said: next } }));
  });
  await page.goto(`${site.origin}/agenda/`);
  expect(await page.locator('moved-note').isVisible()).toBe(false);
  // What is kept there may be damaged.
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  for (const damaged of ['null', '[null]', '7', '{"juniper":null,"otter":{"date":3}}', '{"jun']) {
    await page.evaluate((text) => localStorage.setItem('idle-season.next', text), damaged);
    await page.goto(`${site.origin}/agenda/`);
    expect(await page.locator('moved-note').isVisible()).toBe(false);
  }
  expect(errors).toEqual([]);
}, 120_000);

test('wrong figures are told and not written down', async () => {
  const { page } = await machine();
  await openRecord(page);
  await logReading(page, '123');
  await page.getByText('Volts at the posts: Write a number from 0 to 16.').waitFor();
  expect(await page.locator('[data-entries]').textContent()).toContain('Nothing yet.');
}, 60_000);

test('steps ticked on a sheet, by keyboard, stay ticked, and are done in the export with their season', async () => {
  const opened = await machine();
  const { page } = opened;
  await page.goto(`${site.origin}/machines/old-fern/lay-up/`);
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
  expect(bytes.toString()).toContain(`step: ${step}, date: "${TODAY}", season: "2026-11"`);
  await box.uncheck();
  await page.getByText('Nothing yet.').waitFor();
  calm(opened);
}, 60_000);

test('a step is left out on purpose on the sheet, and the start-up sheet no longer asks for what it would have opened', async () => {
  const opened = await machine();
  const { page } = opened;
  await page.goto(`${site.origin}/machines/old-fern/lay-up/`);
  const step = page.locator('li.step[data-step="plugs-in.exhaust"]');
  await step.getByRole('button', { name: /^Leave out/ }).click();
  const form = page.locator('form[data-kind=skipped]');
  await expect.poll(() => form.getByLabel('Step').inputValue()).toBe('plugs-in.exhaust');
  await form.getByLabel('Why').fill('One plug, is lost');
  await form.getByRole('button').click();
  await step.getByText('Left out on purpose: One plug, is lost').waitFor();
  expect(await step.locator('input.box').isDisabled()).toBe(true);
  expect(await form.getByLabel('Step').locator('option[value="plugs-in.exhaust"]').count()).toBe(0);
  // A check before the ride is not offered.
  expect(await form.getByLabel('Step').locator('option[value^="start-up"]').count()).toBe(0);
  expect(await faults(page)).toEqual([]);
  await replanned(page).waitFor({ timeout: 30_000 });

  await page.goto(`${site.origin}/machines/old-fern/start-up/`);
  const closes = JSON.parse(readFileSync(join(folder, 'machines/old-fern/plan.json'), 'utf8')).steps.find(
    (s: { closes: string[] }) => s.closes.includes('exhaust-plugged'),
  ).id;
  await page.locator(`li.step[data-step="${closes}"]`, { hasText: 'Not needed any more' }).waitFor({ timeout: 30_000 });
  expect(await page.getByText('Not needed any more').count()).toBe(1);

  await openRecord(page);
  const file = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());
  const { bike } = builtWith(file, 'old-fern');
  expect(bike.skippedSteps).toEqual([
    { stepId: 'plugs-in.exhaust', date: TODAY, season: '2026-11', why: 'One plug, is lost' },
  ]);
  await page.getByRole('button', { name: /Delete.*lost/ }).click();
  await page.getByText('Nothing yet.').waitFor();
  calm(opened);
}, 120_000);

/** The demo's content with a file in its records, as the build reads it. */
function builtWith({ name, bytes }: { name: string; bytes: Buffer }, id = 'juniper') {
  const content = mkdtempSync(join(tmpdir(), 'idle-record-'));
  cpSync(join(PROJECT, 'content'), content, { recursive: true });
  mkdirSync(join(content, 'records', id), { recursive: true });
  writeFileSync(join(content, 'records', id, name), bytes);
  const { household, problems } = readFolder(content, { asOf: TODAY });
  rmSync(content, { recursive: true, force: true });
  expect(problems).toEqual([]);
  return { bike: household!.machines.find((m) => m.id === id)! };
}

const FULL = `machine: juniper
season: "2026-11"
readings:
  - { date: "2026-11-20", voltage: 12.5 V, temperature: 27 °F, rested: 300 h }
charged: [{ date: "2026-11-22", to: 80 % }]
done: [{ step: wash.dry, date: "2026-11-14" }, { step: wash.wash, date: "2026-11-14" }, { step: wash.wash, date: "2026-03-01", season: "2025-11" }]
skipped: [{ step: plugs-in.exhaust, date: "2026-11-14", why: "one plug, \\"lost\\": {x}" }]
notes: [{ date: "2026-11-15", text: "first line\\nsecond # line", assembly: airbox }]
asLeft: [{ item: tank, where: "tray one", since: "2026-11-16" }, { item: airbox }]
finishedJobs: [valve-clearances]
odometer: 30000 mi
engineHours: 210.5 h
`.replaceAll('\\\\', '\\');

test('all that a record file can say comes back from the page as it went in', async () => {
  const { page } = await machine(DESK);
  await openRecord(page);
  await give(page, 'full.yaml', FULL);
  await page.getByText('12 entries were added.').waitFor({ timeout: 30_000 });
  const back = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());
  const [before, after] = [builtWith({ name: 'full.yaml', bytes: Buffer.from(FULL) }), builtWith(back)];
  expect(after.bike).toEqual(before.bike);
  expect(after.bike).not.toEqual(builtWith({ name: 'none.yaml', bytes: Buffer.from('machine: juniper\n') }).bike);
  // Steps stand by their titles in the order of the sheets, and last winter's by themselves.
  const lines = await page.locator('[data-entries] > li > span').allTextContents();
  const titles = new Map<string, string>(JSON.parse((await page.locator('bench-record').getAttribute('data-steps'))!));
  const done = lines.filter((line) => /^(Done|Left out)/.test(line));
  const order = [...titles.keys()];
  const given = ['wash.wash', 'wash.dry', 'plugs-in.exhaust']
    .filter((id) => titles.has(id))
    .sort((a, b) => order.indexOf(a) - order.indexOf(b));
  expect(given).toHaveLength(3);
  for (const [i, id] of given.entries()) expect(done[i]).toContain(titles.get(id));
  await page.getByText('Of earlier seasons: 1').waitFor();
}, 120_000);

test.each([
  ['a field of a newer version', 'machine: juniper\ntorques: [1]\n', /later\.yaml:2:1 torques/],
  ['a newer format', 'format: 2\nmachine: juniper\n', /bring this one up to date/],
  ['another machine', 'machine: sleet\n', /about sleet/],
  ['no text', '\u0000\u0001\u0002', /later\.yaml/],
])(
  'of a file with %s nothing is taken, and it is said why',
  async (_, text, said) => {
    const { page } = await machine(DESK);
    await openRecord(page);
    await give(page, 'later.yaml', `${text}`);
    await page.locator('[data-problems] li').filter({ hasText: said }).first().waitFor({ timeout: 30_000 });
    expect(await page.locator('[data-entries]').textContent()).toContain('Nothing yet.');
  },
  60_000,
);

const give = (page: Page, name: string, text: string) =>
  page.locator('[data-import]').setInputFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) });

test('ticks of last winter, on this device or imported, do not tick this winter’s boxes', async () => {
  const { page } = await machine(DESK);
  const tick = { format: 1, machine: 'old-fern', kind: 'done' };
  await put(page, 1, [
    { ...tick, id: 'a', step: 'wash.wash', date: '2025-11-02' },
    { ...tick, id: 'b', step: 'wash.dry', date: '2026-11-02', season: '2025-11' },
    { ...tick, id: 'c', step: 'plugs-in.exhaust', date: '2026-11-02' },
  ]);
  await page.goto(`${site.origin}/machines/old-fern/lay-up/`);
  await openRecord(page);
  const checked = page.locator('input.box:checked');
  await checked.first().waitFor();
  expect(await checked.evaluateAll((all) => all.map((b) => (b as HTMLElement).dataset.step))).toEqual([
    'plugs-in.exhaust',
  ]);
  await page.getByText('Of earlier seasons: 2').waitFor();
}, 60_000);

test('what is done before the script of the record is there waits for it: files, boxes, forms', async () => {
  const { page } = await machine(DESK, (p) =>
    p.route(/_astro\/bench\./, async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 1500));
      await route.continue();
    }),
  );
  await page.locator('#rest-steps').waitFor();
  await page.locator('section[aria-labelledby=rest-steps] summary').click();
  const boxes = page.locator('input.box');
  await boxes.nth(0).check();
  await boxes.nth(1).check();
  await page.locator('bench-record summary').first().click();
  await give(page, 'early.yaml', 'machine: juniper\ncharged: [{ date: "2026-11-20" }]\n');
  await logReading(page, '12.5');
  await entries(page).nth(3).waitFor({ timeout: 30_000 });
  expect(await boxes.nth(0).isChecked()).toBe(true);
  expect(await boxes.nth(1).isChecked()).toBe(true);
  const text = await page.locator('[data-entries]').textContent();
  for (const said of ['2026-11-20: 100 %', '12.5 V', `Done ${TODAY}`]) expect(text).toContain(said);
}, 60_000);

test('where the script of the record cannot be loaded, that is said in sight', async () => {
  const { page } = await machine(PHONE, (p) => p.route(/_astro\/bench\./, (route) => route.abort()));
  await page.goto(`${site.origin}/machines/old-fern/lay-up/`);
  await page.locator('input.box').first().check();
  const alarm = page.getByText('The bench record could not be loaded, so nothing was written down.');
  await alarm.waitFor();
  expect(await alarm.evaluate((e) => e.getBoundingClientRect().bottom <= innerHeight)).toBe(true);
}, 60_000);

test('an export is taken by the build as it stands, and by another device', async () => {
  const { page } = await machine(DESK);
  await openRecord(page);
  await logReading(page, '12.51');
  await entries(page).filter({ hasText: '12.51' }).waitFor();
  for (const name of ['Log a charge', 'Say where a part lies', 'Replace next time'])
    await page.locator('summary', { hasText: name }).last().click();
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

  const { bike: juniper } = builtWith(file);
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
/** A version that knows one field more wrote it: exported by this one, the field would be gone. */
const FULLER = { ...GOOD, id: 'd', hydrometer: 1.26 };

test('damaged entries and those of another format are left as they are, told of, and can be saved', async () => {
  const { page } = await machine(DESK);
  await put(page, 1, [GOOD, DAMAGED, LATER, FULLER]);
  await openRecord(page);
  await page.getByText('3 entries cannot be read. They were left as they are.').waitFor();
  expect(await entries(page).count()).toBe(1);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Save them as a file' }).click());
  expect(JSON.parse(bytes.toString())).toEqual([DAMAGED, LATER, FULLER]);
  await logReading(page);
  await entries(page).nth(1).waitFor();
  await page.reload();
  await openRecord(page);
  await page.getByText('3 entries cannot be read').waitFor();
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

test('a device that is really full says so, keeps what was typed, and writes it down when there is room', async () => {
  const { page, context } = await machine(DESK);
  await openRecord(page);
  const cdp = await context.newCDPSession(page);
  const quota = (quotaSize?: number) =>
    cdp.send('Storage.overrideQuotaForOrigin', {
      origin: site.origin,
      ...(quotaSize === undefined ? {} : { quotaSize }),
    });
  await quota(1);
  await logReading(page);
  await page.getByText('The device is full').waitFor();
  expect(await page.getByLabel('Volts at the posts').inputValue()).toBe('12.3');
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Export as a file' }).click());
  expect(bytes.toString()).toContain('voltage: 12.3 V');
  await quota();
  await logReading(page, '12.6');
  await page.waitForFunction(() => document.querySelector('[data-trouble]')?.textContent === '');
  await page.reload();
  await openRecord(page);
  await entries(page).filter({ hasText: '12.3 V' }).waitFor();
  await entries(page).filter({ hasText: '12.6 V' }).waitFor();
}, 60_000);

test('a page whose entries are nowhere else asks before it is left', async () => {
  const { page } = await machine(DESK, (p) =>
    p.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('no', 'SecurityError');
      };
    }),
  );
  await openRecord(page);
  await logReading(page);
  await entries(page).filter({ hasText: '12.3 V' }).waitFor();
  const asked = new Promise<string>((resolve) =>
    page.once('dialog', (dialog) => {
      resolve(dialog.type());
      void dialog.accept();
    }),
  );
  await page.goto(`${site.origin}/`);
  expect(await asked).toBe('beforeunload');
}, 60_000);

test('a tab whose store a newer version takes over goes on writing into it', async () => {
  const { page, context } = await machine(DESK);
  await openRecord(page);
  await logReading(page, '12.5');
  await entries(page).filter({ hasText: '12.5 V' }).waitFor();
  const newer = await context.newPage();
  await newer.goto(`${site.origin}/methods/`);
  await newer.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const asked = indexedDB.open('idle-season', 2);
        asked.onsuccess = () => {
          asked.result.close();
          resolve();
        };
        asked.onblocked = () => reject(new Error('the first tab did not let go'));
        asked.onerror = () => reject(asked.error);
      }),
  );
  await logReading(page, '12.6');
  await entries(page).filter({ hasText: '12.6 V' }).waitFor();
  await page.getByText('A newer version of this site has written here.').waitFor();
  await page.reload();
  await openRecord(page);
  await entries(page).filter({ hasText: '12.6 V' }).waitFor();
}, 60_000);

test('a record that the browser has lost is not passed over in silence', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'idle-browser-'));
  const openPage = async () => {
    const context = await openKeeping(folder, DESK);
    const page = await context.newPage();
    await page.clock.setFixedTime(NOON);
    await page.goto(`${site.origin}/machines/juniper/`);
    await openRecord(page);
    return { context, page };
  };
  const first = await openPage();
  await logReading(first.page);
  await entries(first.page).filter({ hasText: '12.3 V' }).waitFor();
  await first.context.close();
  // What a broken disk does: the files of the store are there and say nothing.
  const stores = join(folder, 'Default', 'IndexedDB');
  const damaged = readdirSync(stores, { recursive: true, withFileTypes: true }).filter((f) => f.isFile());
  expect(damaged.length).toBeGreaterThan(0);
  for (const f of damaged) writeFileSync(join(f.parentPath, f.name), Buffer.alloc(64, 7));
  const second = await openPage();
  await second.page.locator('[data-trouble]', { hasText: 'has lost it' }).waitFor({ timeout: 30_000 });
  await second.context.close();
  rmSync(folder, { recursive: true, force: true });
}, 120_000);

test('a box of the rounds of charging stands in the record of its machine, and moves its next charge', async () => {
  const opened = await machine(PHONE);
  const { page } = opened;
  await page.goto(`${site.origin}/agenda/rounds/`);
  const box = page.getByRole('checkbox', { name: /Done: Old Fern/ });
  await box.check();
  await page.getByText('Written down.').waitFor();
  await page.reload();
  await page.waitForFunction(() => document.querySelectorAll('input.box:checked').length === 1);
  expect(await box.isChecked()).toBe(true);
  expect(await faults(page)).toEqual([]);
  await page.goto(`${site.origin}/machines/old-fern/`);
  await replanned(page).waitFor({ state: 'attached', timeout: 30_000 });
  expect(await page.locator('section[aria-labelledby=battery]').textContent()).not.toContain('Charge by Apr 14, 2027');
  await openRecord(page);
  await entries(page).filter({ hasText: 'then charge' }).waitFor();
  await page.goto(`${site.origin}/agenda/rounds/`);
  await page.waitForFunction(() => document.querySelectorAll('input.box:checked').length === 1);
  await box.uncheck();
  await page.getByText('Taken out.').waitFor();
  await page.reload();
  await page.goto(`${site.origin}/machines/old-fern/`);
  await openRecord(page);
  await page.getByText('Nothing yet.').waitFor();
  calm(opened);
}, 60_000);
