/** A season lived through: a household in a folder of its own, its site at one address, and the acts that it takes. */
import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import ICAL from 'ical.js';
import type { Browser, BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { readFolder } from '../../src/content/read-folder.ts';
import { planSeason } from '../../src/planner/plan.ts';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { openBrowser } from '../site/browser.ts';
import { serve } from '../site/serve.ts';

const PROJECT = resolve(import.meta.dirname, '../..');
const HOUSEHOLDS = join(import.meta.dirname, 'households');

export type Act = 'command' | 'edit' | 'page' | 'click' | 'field' | 'print';

export interface Ran {
  code: number | null;
  said: string;
}

/** One event of a calendar file, read back by another program than the one that wrote it. */
export interface Reminder {
  uid: string;
  day: string;
  title: string;
  sequence: number;
}

export class Walk {
  readonly folder = mkdtempSync(join(tmpdir(), 'idle-walk-'));
  readonly garage = join(this.folder, 'garage');
  readonly out = join(this.folder, 'site');
  readonly acts: Record<Act, number> = { command: 0, edit: 0, page: 0, click: 0, field: 0, print: 0 };
  private browser: Browser | undefined;
  private server: Awaited<ReturnType<typeof serve>> | undefined;

  /** Begins with the files of a household; they are as old as the first day. */
  constructor(household: string, day: string) {
    cpSync(join(HOUSEHOLDS, household), this.garage, { recursive: true });
    for (const entry of readdirSync(this.garage, { recursive: true, withFileTypes: true }))
      if (entry.isFile()) this.age(join(entry.parentPath, entry.name), day);
  }

  /** Runs one of the commands on a day. */
  command(script: string, day: string, ...args: string[]): Promise<Ran> {
    this.acts.command += 1;
    const env = {
      ...process.env,
      IDLE_CONTENT: this.garage,
      IDLE_OUT: this.out,
      IDLE_TODAY: day,
      NODE_ENV: 'production',
    };
    return new Promise((done, fail) => {
      const child = spawn(process.execPath, [join(PROJECT, 'src/cli', `${script}.ts`), ...args], { cwd: PROJECT, env });
      let said = '';
      child.stdout.on('data', (text) => (said += text));
      child.stderr.on('data', (text) => (said += text));
      child.on('error', fail);
      child.on('close', (code) => done({ code, said }));
    });
  }

  /** Builds the site, which must succeed. */
  async build(day: string): Promise<SeasonPlan> {
    const { code, said } = await this.command('build', day);
    if (code !== 0) throw new Error(`The site did not build on ${day}:\n${said}`);
    return this.plan();
  }

  /** What the next build would say, without its pages. */
  planOn(day: string): SeasonPlan {
    const { household, problems } = readFolder(this.garage, {
      asOf: day,
      procedures: join(PROJECT, 'content', 'procedures'),
      library: join(PROJECT, 'public', 'climate', 'normals.json'),
    });
    if (!household) throw new Error(problems.map((p) => `${p.file}:${p.line} ${p.what}`).join('\n'));
    return planSeason(household, { asOf: day }).plan;
  }

  plan(): SeasonPlan {
    return JSON.parse(readFileSync(join(this.out, 'plan.json'), 'utf8'));
  }

  /** Changes one place of a file. */
  edit(file: string, from: string, to: string, day: string): void {
    const path = join(this.garage, file);
    const text = readFileSync(path, 'utf8');
    if (text.split(from).length !== 2) throw new Error(`${file}: found "${from}" ${text.split(from).length - 1} times`);
    this.write(file, text.replace(from, to), day);
  }

  write(file: string, text: string | Buffer, day: string): void {
    this.acts.edit += 1;
    const path = join(this.garage, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    this.age(path, day);
  }

  private age(path: string, day: string): void {
    const at = new Date(`${day}T18:00:00Z`);
    utimesSync(path, at, at);
  }

  /** A device, with a store of its own. */
  async device(options: BrowserContextOptions = {}): Promise<BrowserContext> {
    this.browser ??= await openBrowser();
    this.server ??= await serve(this.out);
    return this.browser.newContext({
      timezoneId: 'America/Chicago',
      locale: 'en-US',
      serviceWorkers: 'block',
      acceptDownloads: true,
      ...options,
    });
  }

  get origin(): string {
    return this.server!.origin;
  }

  /** Opens a page of the site on a day. */
  async open(device: BrowserContext, path: string, day: string): Promise<Page> {
    this.acts.page += 1;
    const [page = await device.newPage()] = device.pages();
    await page.clock.setFixedTime(new Date(`${day}T18:00:00Z`));
    await page.goto(this.origin + path);
    return page;
  }

  async click(page: Page, name: string | RegExp): Promise<void> {
    this.acts.click += 1;
    const wanted = page.getByRole('button', { name }).or(page.getByRole('link', { name }));
    await wanted.filter({ visible: true }).first().click();
  }

  /** Clicks, and gives the file that is saved. */
  async save(page: Page, name: string | RegExp): Promise<{ name: string; text: string }> {
    const [download] = await Promise.all([page.waitForEvent('download'), this.click(page, name)]);
    return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
  }

  async fill(page: Page, within: string, fields: Record<string, string>): Promise<void> {
    for (const [name, value] of Object.entries(fields)) {
      this.acts.field += 1;
      await page.locator(`${within} [name=${name}]`).fill(value);
    }
  }

  /** Prints the page on A4. @returns number of its pages */
  async print(page: Page): Promise<number> {
    this.acts.print += 1;
    const pdf = await page.pdf({ format: 'A4' });
    return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
  }

  /** Ticks boxes of the page. @returns how many there were */
  async tick(page: Page, steps: (step: string) => boolean): Promise<string[]> {
    const boxes = page.locator('input.box[data-step]');
    const ids = await boxes.evaluateAll((found) => found.map((box) => (box as HTMLElement).dataset.step ?? ''));
    const wanted = ids.filter(steps);
    for (const id of wanted) {
      this.acts.click += 1;
      await page.locator(`input.box[data-step="${id}"]`).check();
    }
    return wanted;
  }

  async close(): Promise<void> {
    await this.browser?.close();
    await this.server?.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** The reminders of a calendar file. */
export function reminders(text: string): Reminder[] {
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    uid: String(event.getFirstPropertyValue('uid')),
    day: String(event.getFirstPropertyValue('dtstart')),
    title: String(event.getFirstPropertyValue('summary')),
    sequence: Number(event.getFirstPropertyValue('sequence')),
  }));
}

/** The text of a part of a page, in one line. */
export async function textOf(part: Locator): Promise<string> {
  return ((await part.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
}
