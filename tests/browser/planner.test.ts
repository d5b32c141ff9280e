import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import ICAL from 'ical.js';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { withoutPaths } from '../fixtures/without-paths.ts';
import { openBrowser } from '../site/browser.ts';
import { serve } from '../site/serve.ts';
import { calm, DESK, downloaded, faults, open } from './opened.ts';
import { planOf, planOwn, settled } from './planning.ts';
import { demoSite, PROJECT, TODAY } from './site.ts';
import { unzip } from './unzip.ts';

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

/** As it is published, with its keys in order. */
const sorted = (value: unknown): string =>
  JSON.stringify(value, (_, v) =>
    v !== null && typeof v === 'object' && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  );

test('on a phone and by keyboard, answers become a plan with dates, numbers, pictures, steps and assumptions', async () => {
  const opened = await open(browser, site.origin);
  const { page } = opened;
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  await page.getByRole('heading', { name: 'Dates and amounts' }).waitFor();
  for (const heading of ['Warnings', 'Battery', 'Fuel', 'Air of the store', 'What to do, by day', 'Assumed, not known'])
    expect(await page.getByRole('heading', { name: heading, exact: true }).count()).toBe(1);
  expect(await page.locator('.numbers .big').count()).toBe(5);
  expect(await page.locator('.figure').count()).toBe(3);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  expect(await faults(page)).toEqual([]);
  calm(opened);
}, 120_000);

test('the page is sound in the dark and with both sheets in sight', async () => {
  const opened = await open(browser, site.origin, { ...DESK, colorScheme: 'dark' });
  await planOwn(opened.page, site.origin);
  for (const sheet of ['Lay-up sheet', 'Start-up sheet']) {
    await opened.page.getByRole('button', { name: sheet }).click();
    expect(await opened.page.locator('.sheet:visible .step').count()).toBeGreaterThan(5);
    expect(await faults(opened.page)).toEqual([]);
  }
  calm(opened);
}, 120_000);

test('a sheet is printed alone, with the machine in the margin and boxes to tick', async () => {
  const { page } = await open(browser, site.origin, DESK);
  await planOwn(page, site.origin);
  await page.getByRole('button', { name: 'Start-up sheet' }).click();
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('form').first().isVisible()).toBe(false);
  expect(await page.locator('.tools').isVisible()).toBe(false);
  const margins = await page.evaluate(() =>
    document.adoptedStyleSheets.flatMap((s) => [...s.cssRules].map((r) => r.cssText)).join(),
  );
  expect(margins).toContain('Grey Owl · Start-up sheet');
  expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(10_000);
}, 120_000);

test('the files that are taken along are read without a problem and give the same plan', async () => {
  const { page } = await open(browser, site.origin, DESK);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  await page.getByRole('button', { name: 'Add a machine' }).click();
  await page.getByLabel('What do you call it?').fill('Blue: "two"');
  await page.getByLabel('What is it?').selectOption('snow-machine');
  await page.getByLabel('What does it stand in?').selectOption('attached-garage');
  await page.getByLabel('What kind of battery?').selectOption('agm');
  await settled(page);
  const plan = await planOf(page);
  expect(plan.machines.map((m) => m.name).sort()).toEqual(['Blue: "two"', 'Grey Owl']);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Content files' }).click());
  const content = mkdtempSync(join(tmpdir(), 'idle-content-'));
  try {
    for (const file of unzip(bytes)) {
      mkdirSync(dirname(join(content, file.path)), { recursive: true });
      writeFileSync(join(content, file.path), file.bytes);
    }
    const { household, problems } = readFolder(content, {
      asOf: TODAY,
      procedures: join(PROJECT, 'content/procedures'),
      library: join(PROJECT, 'public/climate/normals.json'),
    });
    expect(problems).toEqual([]);
    expect(sorted(plan)).toBe(sorted(planSeason(household!, { asOf: TODAY }).plan));
  } finally {
    rmSync(content, { recursive: true, force: true });
  }
}, 120_000);

test('the demo household loaded as a folder gives the plan of the build byte for byte, and its calendar', async () => {
  const opened = await open(browser, site.origin, DESK);
  const { page } = opened;
  await page.clock.setFixedTime(NOON);
  await page.goto(`${site.origin}/plan/`);
  await page.getByText('I have content files').click();
  await page.locator('input[webkitdirectory]').setInputFiles(join(PROJECT, 'content'));
  await page.getByText(/files read/).waitFor({ timeout: 60_000 });
  await settled(page);
  const plan = await planOf(page);
  const built = (path: string) => JSON.parse(readFileSync(join(folder, path), 'utf8'));
  expect(sorted(withoutPaths(plan))).toBe(sorted(built('plan.json')));
  for (const machine of plan.machines) expect(sorted(machine)).toBe(sorted(built(`machines/${machine.id}/plan.json`)));
  const calendar = await downloaded(page, () => page.getByRole('button', { name: 'Calendar of all machines' }).click());
  expect(calendar.bytes.toString()).toBe(readFileSync(join(folder, 'calendar/all.ics'), 'utf8'));
  await page.getByRole('button', { name: 'Juniper' }).click();
  await page.locator('[data-title]', { hasText: 'Juniper' }).waitFor();
  expect(await faults(page)).toEqual([]);
  calm(opened);
}, 180_000);

test('loaded files that were moved by the slider keep their comments and carry the new day', async () => {
  const { page } = await open(browser, site.origin, DESK);
  await page.clock.setFixedTime(NOON);
  await page.goto(`${site.origin}/plan/`);
  await page.getByText('I have content files').click();
  await page.locator('input[webkitdirectory]').setInputFiles(join(PROJECT, 'tests/households/workshop'));
  await page.getByText(/files read/).waitFor({ timeout: 60_000 });
  const slider = page.getByLabel('Move the last day of use');
  await slider.evaluate((input: HTMLInputElement) => {
    input.value = '-3';
    input.dispatchEvent(new Event('input'));
    input.dispatchEvent(new Event('change'));
  });
  await settled(page);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Content files' }).click());
  const before = readFileSync(join(PROJECT, 'tests/households/workshop/machines/bike.yaml'), 'utf8');
  const after = unzip(bytes)
    .find((f) => f.path === 'machines/bike.yaml')!
    .bytes.toString();
  const comments = (text: string) =>
    text
      .split('\n')
      .filter((l) => l.includes('#'))
      .map((l) => l.slice(l.indexOf('#')));
  expect(comments(after)).toEqual(comments(before));
  expect(after).not.toBe(before);
  expect(after).toMatch(/lastUse: "\d{4}-\d{2}-\d{2}"/);
}, 120_000);

test('every problem of loaded files is shown with file, line, column and field, and nothing is planned', async () => {
  const { page } = await open(browser, site.origin);
  await page.goto(`${site.origin}/plan/`);
  await page.getByText('I have content files').click();
  const fault = (name: string) => join(PROJECT, 'tests/faults', name, 'machines/bike.yaml');
  const both = mkdtempSync(join(tmpdir(), 'idle-faults-'));
  mkdirSync(join(both, 'machines'));
  for (const name of ['unknown-chemistry', 'mistyped-key'])
    writeFileSync(join(both, 'machines', `${name}.yaml`), readFileSync(fault(name)));
  await page.locator('input[webkitdirectory]').setInputFiles(both);
  const list = page.locator('[data-problems] li');
  await list.first().waitFor({ timeout: 60_000 });
  const texts = await list.allInnerTexts();
  expect(
    texts.filter((t) => /unknown-chemistry\.yaml:\d+:\d+/.test(t) && t.includes('battery.chemistry')),
  ).toHaveLength(1);
  expect(texts.some((t) => /mistyped-key\.yaml:\d+:\d+/.test(t))).toBe(true);
  expect(texts.some((t) => t.startsWith('household.yaml:1:1'))).toBe(true);
  expect(await page.locator('[data-result]').isVisible()).toBe(false);
  expect(await faults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to my own machines' }).click();
  expect(await page.getByLabel('What do you call it?').isVisible()).toBe(true);
  rmSync(both, { recursive: true, force: true });
}, 120_000);

test('an electric machine is asked for its drive battery, one for the road for salt, and the plan goes by both', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const asked = (label: string) => page.getByLabel(label).isVisible();
  const drive = 'What kind of drive battery?';
  const salt = 'Is it used on salted roads?';
  expect([await asked(drive), await asked(salt)]).toEqual([false, true]);
  await page.getByLabel('What is it?').selectOption('mower');
  await page.getByLabel('What engine has it?').selectOption('electric');
  expect([await asked(drive), await asked(salt)]).toEqual([true, false]);
  await page.getByLabel('What is it?').selectOption('scooter');
  await page.getByLabel('What kind of battery?').selectOption('none');
  await page.getByLabel(drive).selectOption('lead-acid');
  await page.getByLabel('Does it come out?').selectOption('true');
  await page.getByLabel(salt).selectOption('true');
  await settled(page);
  const shown = page.locator('[data-show=plan]');
  await shown.getByRole('heading', { name: 'Drive battery', exact: true }).waitFor();
  const plan = await planOf(page);
  const [machine] = plan.machines;
  expect(machine!.driveBattery).toMatchObject({ chemistry: 'lead-acid', removable: true });
  const steps = machine!.steps.map(({ id }) => id);
  for (const id of [
    'drive-battery.out-lead',
    'drive-battery.full-away',
    'wash.salt',
    'start-up-drive-battery.full-away',
  ])
    expect(steps).toContain(id);
  expect(plan.ledger.map(({ item }) => item)).toContain('drive-battery-out');
  expect(await shown.textContent()).not.toMatch(/petrol|exhaust|spark plug|clutch/i);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  expect(await faults(page)).toEqual([]);
}, 120_000);

test('a diesel engine is refused in words at its field, and no plan of petrol is shown for it', async () => {
  const { page } = await open(browser, site.origin);
  await planOwn(page, site.origin);
  await page.getByLabel('What engine has it?').selectOption('diesel');
  await page.locator('#engine-wrong').waitFor();
  await settled(page);
  expect(await page.locator('#engine-wrong').innerText()).toContain('Diesel engines are not planned');
  expect(await page.locator('[data-result]').isVisible()).toBe(false);
  await page.getByLabel('What engine has it?').selectOption('four-stroke');
  await settled(page);
  expect(await page.locator('[data-result]').isVisible()).toBe(true);
  expect(await faults(page)).toEqual([]);
}, 120_000);

test('an answer outside its bounds is told at its field', async () => {
  const { page } = await open(browser, site.origin);
  await planOwn(page, site.origin);
  await page.getByLabel('Capacity on its label').fill('320');
  await page.locator('#capacity-wrong').waitFor();
  expect(await page.locator('#capacity-wrong').innerText()).toContain('expected 1 to 100 Ah for a motorcycle');
  await page.getByLabel('First day of use after the rest').fill('2026-10-01');
  await page.locator('#firstUse-wrong').waitFor();
  expect(await faults(page)).toEqual([]);
}, 120_000);

test('answers are there again after a reload; damaged ones are put aside and not lost', async () => {
  const { page } = await open(browser, site.origin);
  await planOwn(page, site.origin);
  await page.reload();
  await page.locator('[data-title]', { hasText: 'Grey Owl' }).waitFor({ timeout: 30_000 });
  expect(await page.getByLabel('Capacity on its label').inputValue()).toBe('12');
  await page.evaluate(() => localStorage.setItem('idle-season.answers', '{"format":9,"future":true'));
  await page.reload();
  await page.getByText('Choose a weather station').waitFor();
  await page.getByLabel('What do you call it?').fill('New');
  expect(await page.evaluate(() => localStorage.getItem('idle-season.answers.aside'))).toBe(
    '{"format":9,"future":true',
  );
  const save = page.getByRole('button', { name: 'Save the old answers as a file' });
  const letGo = page.getByRole('button', { name: 'I have them' });
  expect(await letGo.isVisible()).toBe(false);
  expect((await downloaded(page, () => save.click())).bytes.toString()).toBe('{"format":9,"future":true');
  await letGo.click();
  expect(await save.isVisible()).toBe(false);
  await page.reload();
  await page.getByText('Choose a weather station').waitFor();
  expect(await save.isVisible()).toBe(false);
}, 120_000);

test('what was done and measured is kept, moves the plan, and is in the files that are taken along', async () => {
  const opened = await open(browser, site.origin);
  const { page } = opened;
  await page.clock.setFixedTime('2026-12-20T19:00:00Z');
  await planOwn(page, site.origin);
  await settled(page);
  const overdue = page.locator('[data-slot=warnings]').getByText(/overdue/);
  const first = page.locator('.numbers > div').first();
  expect(await overdue.count()).toBeGreaterThan(0);
  const log = page.getByRole('group', { name: 'Done and measured' });
  const write = async (kind: string, date: string, values: Record<string, string> = {}) => {
    await log.getByLabel('What was done?').selectOption(kind);
    await log.getByLabel('When?').fill(date);
    for (const [label, value] of Object.entries(values)) await log.getByLabel(label).fill(value);
    await log.getByRole('button', { name: 'Write it down' }).click();
    await settled(page);
  };
  await write('lay-up', '2026-11-01');
  expect(await overdue.count()).toBe(0);
  const before = await first.textContent();
  const reading = { 'Voltage, nothing': '12.40', 'Temperature of': '0', 'Rested since': '400' };
  await write('readings', '2026-12-05', reading);
  expect(await first.textContent()).not.toBe(before);
  await write('readings', '2026-12-21', reading);
  expect(await log.getByRole('listitem').count()).toBe(2);
  await write('charged', '2026-12-19');
  // The look about the middle of the month is passed by then, until it is ticked.
  await write('look-in', '2026-12-14');
  const looks = (await planOf(page)).machines[0]!.steps.filter(({ phase }) => phase === 'look-in');
  const ticked = new Set(looks.filter(({ done }) => done).map(({ date }) => date!.slice(0, 7)));
  expect([...ticked]).toEqual(['2026-12']);
  expect(await log.getByRole('listitem').allTextContents()).toEqual([
    expect.stringContaining('Reading 2026-12-05: 12.4 V, 0 °C, rested 400 h'),
    expect.stringContaining('Charge 2026-12-19: 100 %'),
    expect.stringContaining('Done 2026-11-01: All of the lay-up'),
    expect.stringContaining('Done 2026-12-14: All of a look-in'),
  ]);
  expect(await faults(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await page.reload();
  await settled(page);
  expect(await log.getByRole('listitem').count()).toBe(4);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Content files' }).click());
  const file = unzip(bytes).find(({ path }) => path.startsWith('machines/'))!;
  expect(new TextDecoder().decode(file.bytes)).toContain(
    '{ date: "2026-12-05", voltage: 12.4 V, temperature: 0 °C, rested: 400 h }',
  );
  expect(new TextDecoder().decode(file.bytes)).toMatch(/step: "?look-in"?, date: "2026-12-14"/);
  await log.getByRole('button', { name: /Take back.*100 %/ }).click();
  await settled(page);
  expect(await log.getByRole('listitem').count()).toBe(3);
  calm(opened);
}, 120_000);

test('boxes of the sheets are ticked by a finger, stay where they are, and are done after a reload and in the files', async () => {
  const opened = await open(browser, site.origin);
  const { page } = opened;
  await page.clock.setFixedTime('2026-11-01T19:00:00Z');
  await planOwn(page, site.origin);
  await page.getByRole('button', { name: 'Lay-up sheet' }).click();
  const sheet = page.locator('[data-slot=lay-up]');
  const boxes = sheet.getByRole('checkbox');
  const count = await boxes.count();
  expect(count).toBeGreaterThan(20);
  const row = sheet.locator('[data-step]').nth(12);
  const step = (await row.getAttribute('data-step'))!;
  const own = sheet.locator(`[data-step="${step}"]`).first();
  const box = own.getByRole('checkbox');
  const title = (await own.locator('.title').textContent())!;
  await box.scrollIntoViewIfNeeded();
  const top = async () => (await box.boundingBox())!.y;
  const before = await top();
  await box.tap();
  await settled(page);
  expect(await box.isChecked()).toBe(true);
  expect(Math.abs((await top()) - before)).toBeLessThan(2);
  expect(await boxes.count()).toBe(count);
  const log = page.getByRole('group', { name: 'Done and measured' });
  await log.getByText('One step ticked on a sheet').click();
  expect(await log.getByRole('listitem').allTextContents()).toEqual([
    expect.stringContaining(`Done 2026-11-01: ${title}`),
  ]);
  expect((await planOf(page)).machines[0]!.steps.find(({ id }) => id === step)!.done).toBe(true);
  await page.reload();
  await settled(page);
  await page.getByRole('button', { name: 'Lay-up sheet' }).click();
  expect(await box.isChecked()).toBe(true);
  const { bytes } = await downloaded(page, () => page.getByRole('button', { name: 'Content files' }).click());
  const file = unzip(bytes).find(({ path }) => path.startsWith('machines/'))!;
  expect(new TextDecoder().decode(file.bytes)).toContain(step);
  await box.focus();
  await page.keyboard.press('Space');
  await settled(page);
  expect(await box.isChecked()).toBe(false);
  expect(await box.evaluate((b) => b === document.activeElement)).toBe(true);
  expect(await log.getByRole('listitem').count()).toBe(0);
  // What the whole sheet says is done is not undone by one of its boxes.
  await log.getByLabel('What was done?').selectOption('lay-up');
  await log.getByLabel('When?').fill('2026-11-01');
  await log.getByRole('button', { name: 'Write it down' }).click();
  await settled(page);
  expect(await box.isChecked()).toBe(true);
  await box.tap();
  expect(await box.isChecked()).toBe(true);
  await page.getByRole('status').getByText('The whole sheet is written down as done.').waitFor();
  expect(await faults(page)).toEqual([]);
  calm(opened);
}, 120_000);

test('coordinates, typed or taken from the device, give the nearest stations', async () => {
  const opened = await open(browser, site.origin, {
    ...DESK,
    geolocation: { latitude: 53.31, longitude: -113.58 },
    permissions: ['geolocation'],
  });
  const { page } = opened;
  await page.goto(`${site.origin}/plan/`);
  const first = page.locator('#stations [role=option]').first();
  await page.getByLabel('Nearest weather station').fill('−43.5; 172.6');
  await first.filter({ hasText: /, New Zealand, \d+ km away$/ }).waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Take where I am' }).click();
  await first.filter({ hasText: 'Edmonton' }).waitFor();
  await first.click();
  await page.getByText('Weather of Edmonton').waitFor();
  await page.getByRole('heading', { name: 'Dates and amounts' }).waitFor({ timeout: 30_000 });
  expect((await planOf(page)).places[0]!.station!.name).toContain('Edmonton');
  calm(opened);
}, 60_000);

test('a town that is no station is planned by the nearest one, and stands in the field by its own name', async () => {
  const opened = await open(browser, site.origin, { ...DESK, locale: 'de-DE', timezoneId: 'Europe/Berlin' });
  const { page } = opened;
  await page.goto(`${site.origin}/plan/`);
  const field = page.getByLabel('Nearest weather station');
  await field.fill('hannover');
  const first = page.locator('#stations [role=option]').first();
  await first.filter({ hasText: /^Hannover, Germany: station .+, \d+ km away$/ }).waitFor();
  await first.click();
  expect(await field.inputValue()).toBe('Hannover');
  await page.getByText('Weather of ').waitFor();
  await page.getByRole('heading', { name: 'Dates and amounts' }).waitFor({ timeout: 30_000 });
  expect((await planOf(page)).places[0]!.station!.distanceKm).toBeGreaterThan(5);
  await page.reload();
  await page.getByRole('heading', { name: 'Dates and amounts' }).waitFor({ timeout: 30_000 });
  expect(await field.inputValue()).toBe('Hannover');
  await field.fill('nowhere at all');
  await page.getByText(/no station or town of that name/).waitFor();
  calm(opened);
}, 90_000);

test('what is taken along comes back on a phone: as the zip, or as its files without their folders', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const plan = sorted(await planOf(page));
  const zip = await downloaded(page, () => page.getByRole('button', { name: 'Content files (zip)' }).click());
  const loose = unzip(zip.bytes).map(({ path, bytes }) => ({ name: path.split('/').at(-1)!, bytes }));
  expect(loose.length).toBeGreaterThan(2);
  const load = async (files: { name: string; mimeType: string; buffer: Buffer }[]) => {
    await page.locator('input[type=file]').first().setInputFiles(files);
    await page.locator('[data-status]', { hasText: 'The plan below is made from' }).waitFor({ timeout: 30_000 });
    await settled(page);
    return sorted(await planOf(page));
  };
  await page.getByText('I have content files').click();
  expect(await load([{ name: 'content.zip', mimeType: 'application/zip', buffer: zip.bytes }])).toBe(plan);
  await page.getByRole('button', { name: 'Back to my own machines' }).click();
  const files = loose.map(({ name, bytes }) => ({ name, mimeType: 'text/yaml', buffer: Buffer.from(bytes) }));
  expect(await load(files)).toBe(plan);
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles([{ name: 'x.zip', mimeType: 'application/zip', buffer: Buffer.from('PK, or not') }]);
  await page.getByText('None of these is a content file').waitFor();
}, 120_000);

test('a station is chosen by a touch, the second by coordinates too, and nothing under the list is pressed', async () => {
  const { page } = await open(browser, site.origin);
  await page.goto(`${site.origin}/plan/`);
  const field = page.getByLabel('Nearest weather station');
  const said = page.locator('#station-said');
  await field.fill('52,4 -113,8');
  const options = page.locator('#stations [role=option]');
  await options.nth(1).waitFor();
  const [first, second] = (await options.allTextContents()).map((text) => text.split(',')[0]!);
  await options.nth(0).tap();
  await page.waitForTimeout(300);
  expect(await said.textContent()).toBe(`Weather of ${first}`);
  await settled(page);
  const place = async () => (await planOf(page)).places[0]!;
  expect((await place()).station?.name).toBe(first);
  await field.fill('52,4 -113,8');
  await options.nth(1).waitFor();
  await options.nth(1).tap();
  await settled(page);
  expect(await said.textContent()).toBe(`Weather of ${second}`);
  expect((await place()).climateSource).not.toMatch(/Rotterdam/);
  expect((await place()).station).toBeUndefined();
  await field.fill('no such town');
  await page.getByText(`The plan still has the weather of ${second}`).waitFor();
}, 120_000);

// ASHRAE's table, ethylene glycol: 43.5 % freezes at −28.8 °C.
test('tested coolant is asked for where the machine has some, and tells its strength', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const asked = page.getByLabel('Coolant tested, freezes at');
  expect(await asked.isVisible()).toBe(false);
  await page.getByLabel('What is it?').selectOption('car');
  await asked.fill('34');
  await page.getByText('Correct what is marked to see the plan.').waitFor();
  await asked.fill('−28,8');
  await settled(page);
  const { coolant } = (await planOf(page)).machines[0]!;
  expect(coolant).toMatchObject({ freezeC: expect.closeTo(-28.8, 6), strength: expect.closeTo(0.435, 6) });
  await page.getByLabel('Cooled by').selectOption('air');
  expect(await asked.isVisible()).toBe(false);
  await settled(page);
  expect((await planOf(page)).machines[0]!.coolant).toBeUndefined();
}, 120_000);

test('a comma is a decimal point, wrong figures take the plan away until they are right, after a reload too', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  await page.getByLabel('Capacity on its label').fill('11,2');
  await settled(page);
  expect((await planOf(page)).machines[0]!.battery!.capacityAh).toBe(11.2);
  const result = page.locator('[data-result]');
  for (const wrong of ['-5', '1,234.5', 'much']) {
    await page.getByLabel('Capacity on its label').fill(wrong);
    await page.getByText('Correct what is marked to see the plan.').waitFor();
    expect(await result.isVisible()).toBe(false);
  }
  await page.reload();
  await page.getByText('Correct what is marked to see the plan.').waitFor();
  await page.getByLabel('Capacity on its label').fill('14');
  await settled(page);
  expect(await result.isVisible()).toBe(true);
  await page.getByLabel('What do you call it?').fill('   ');
  await page.getByText('Give every machine a name to see the plan.').waitFor();
  await page.getByLabel('What do you call it?').fill('Owl');
  await page.getByLabel(/It may stay connected for months/).check();
  await page.getByText('Say what it gives, or take the tick below away.').waitFor();
}, 120_000);

test('a machine is removed that is in sight, and answers that cannot be kept are told of for as long as they are not', async () => {
  const { page } = await open(browser, site.origin);
  await planOwn(page, site.origin);
  const add = async (name: string) => {
    await page.getByRole('button', { name: 'Add a machine' }).click();
    await page.getByLabel('What do you call it?').fill(name);
  };
  await add('Crow');
  await add('Jackdaw');
  await page.getByRole('button', { name: 'Remove this machine' }).click();
  await page.getByRole('button', { name: 'Really remove Jackdaw' }).waitFor();
  await page.locator('[data-tabs]').getByRole('button', { name: 'Crow' }).click();
  await page.getByRole('button', { name: 'Remove this machine' }).click();
  await page.getByRole('button', { name: 'Really remove Crow' }).click();
  expect(await page.locator('[data-tabs] button').allTextContents()).toEqual([
    'Grey Owl',
    'Jackdaw',
    expect.any(String),
  ]);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.getByLabel('What do you call it?').fill('Rook');
  await settled(page);
  expect(await page.getByText('This window does not let the page keep your answers.').isVisible()).toBe(true);
}, 120_000);

test('reminders keep their identity when a machine is called otherwise after they were taken', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const uids = async () =>
    (await downloaded(page, () => page.getByRole('button', { name: 'Calendar file' }).click())).bytes
      .toString()
      .match(/^UID:.*$/gm);
  const before = await uids();
  await page.getByLabel('What do you call it?').fill('Snowy Owl');
  await settled(page);
  expect(await uids()).toEqual(before);
}, 120_000);

test('a calendar that is taken again takes back what has fallen away since, after a reload as well', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const taken = async () =>
    new ICAL.Component(
      ICAL.parse(
        (await downloaded(page, () => page.getByRole('button', { name: 'Calendar file' }).click())).bytes.toString(),
      ),
    )
      .getAllSubcomponents('vevent')
      .map((event) => ({
        uid: String(event.getFirstPropertyValue('uid')),
        day: String(event.getFirstPropertyValue('dtstart')),
        status: String(event.getFirstPropertyValue('status') ?? ''),
      }));
  const before = await taken();
  expect(before.every(({ status }) => status === '')).toBe(true);
  await page.reload();
  await page.clock.setFixedTime(`${TODAY}T20:00:00Z`);
  await page.getByLabel('First day of use after the rest').fill('2027-02-20');
  await settled(page);
  const after = await taken();
  // The start-up begins in January now: nobody looks in in the middle of February. All else moves with the season.
  const gone = after.filter(({ status }) => status === 'CANCELLED');
  expect(gone.map(({ day }) => day)).toEqual([expect.stringMatching(/^2027-02-1/)]);
  expect(before.map(({ uid }) => uid)).toContain(gone[0]!.uid);
  for (const { uid } of before.filter(({ day }) => day >= TODAY))
    expect(after.some((event) => event.uid === uid)).toBe(true);
}, 120_000);

test('who comes back after the season is offered the next rest, and has it in one press', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const next = page.getByRole('button', { name: 'Plan the next rest' });
  expect(await next.isVisible()).toBe(false);
  await page.clock.setFixedTime('2027-09-20T19:00:00Z');
  await page.reload();
  await page.getByText('This rest is over.').waitFor();
  await settled(page);
  const warnings = page.locator('[data-slot=warnings] .warnings > li', { hasText: 'rest ended on April 10, 2027' });
  expect(await warnings.first().textContent()).toMatch(/^Warning/i);
  expect(await faults(page)).toEqual([]);
  await next.click();
  await settled(page);
  expect(await page.getByLabel('Last day of use').first().inputValue()).toBe('2027-10-25');
  expect(await page.getByLabel('First day of use after the rest').inputValue()).toBe('2028-04-10');
  expect(await next.isVisible()).toBe(false);
  expect(await page.locator('.dates').first().textContent()).toContain('Apr 10, 2028');
  await page.reload();
  await page.locator('[data-title]', { hasText: 'Grey Owl' }).waitFor();
  expect(await page.getByLabel('Last day of use').first().inputValue()).toBe('2027-10-25');
}, 120_000);

test('a finger that begins on the slider and scrolls the page leaves the season as it was', async () => {
  const { page } = await open(browser, site.origin);
  await page.clock.setFixedTime(NOON);
  await planOwn(page, site.origin);
  const dates = page.locator('[data-slot=dates]');
  const before = await dates.textContent();
  await page.evaluate(() => {
    const slider = document.querySelector<HTMLInputElement>('[data-slider]')!;
    slider.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
    slider.value = '-40';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  });
  await page.waitForFunction((was) => document.querySelector('[data-slot=dates]')!.textContent !== was, before);
  await page.evaluate(() =>
    document.querySelector('[data-slider]')!.dispatchEvent(new PointerEvent('pointercancel', { bubbles: true })),
  );
  await page.waitForFunction((was) => document.querySelector('[data-slot=dates]')!.textContent === was, before);
  expect(await page.locator('[data-is-late]').count()).toBe(0);
  expect(await page.getByLabel('Last day of use').first().inputValue()).toBe('2026-10-25');
  expect(await page.locator('[data-slider]').inputValue()).toBe('0');
}, 120_000);
