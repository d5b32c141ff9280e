import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { HOSTILE } from '../generated/text.ts';
import { openBrowser } from '../site/browser.ts';
import { serve } from '../site/serve.ts';
import { cleanUp, command, copyOf, hashes, put, temporary } from './household.ts';

afterAll(cleanUp);

/** A small household whose names are what careless pages break on. */
function hostile(): string {
  const folder = copyOf('smallest');
  const quoted = (text: string) => JSON.stringify(text);
  put(
    folder,
    'household.yaml',
    `id: small
name: ${quoted('</title><script>alert(1)</script>')}
timeZone: Europe/Oslo
units: metric
hours: { saturday: 5, sunday: 4 }
chargers:
  - { id: one, name: ${quoted('"><img src=x onerror=alert(1)>')}, current: 1 A, chemistries: [flooded] }
revised: "2026-11-25T07:00:00Z"
`,
  );
  put(
    folder,
    'places/tin-shed.yaml',
    `name: ${quoted('<b onclick=alert(1)>shed</b>')}\nenclosure: thin-metal-shed\npower: false\nclimate: valley\n`,
  );
  for (const [i, name] of HOSTILE.entries())
    put(
      folder,
      `machines/machine-${i}.yaml`,
      `name: ${quoted(name)}
kind: motorcycle
place: tin-shed
lastUse: "2026-10-25"
firstUse: "2027-04-10"
assemblies: [{ id: seat, name: ${quoted(name)}, offMinutes: 5 }]
jobs: [{ id: job, name: ${quoted(name)}, assemblies: [seat], minutes: 30, parts: [{ what: ${quoted(name)}, leadDays: 7 }] }]
notes: [{ date: "2026-11-01", text: ${quoted(`${name}\n${name}`)} }]
paperwork: [{ id: insurance, what: ${quoted(name)}, date: "2027-03-31" }]
`,
    );
  return folder;
}

let built: Promise<{ content: string; site: string }> | undefined;

/** The hostile household, built once. */
function site(): Promise<{ content: string; site: string }> {
  built ??= (async () => {
    const content = hostile();
    const to = join(temporary(), 'dist');
    const { code, err } = await command('build', [], { IDLE_CONTENT: content, IDLE_OUT: to, TZ: 'Pacific/Auckland' });
    expect(err).toBe('');
    expect(code).toBe(0);
    return { content, site: to };
  })();
  return built;
}

const pages = (folder: string) => Object.keys(hashes(folder)).filter((path) => path.endsWith('.html'));

test('two builds of the same content are the same bytes, in other time zones, locales and folders', async () => {
  const { content, site: first } = await site();
  const elsewhere = copyOf('smallest', join(temporary(), 'another name', 'content'));
  for (const path of Object.keys(hashes(content))) put(elsewhere, path, readFileSync(join(content, path), 'utf8'));
  const second = join(temporary(), 'public html');
  const { code } = await command('build', [], {
    IDLE_CONTENT: elsewhere,
    IDLE_OUT: second,
    TZ: 'America/St_Johns',
    LC_ALL: 'ar_EG.UTF-8',
  });
  expect(code).toBe(0);
  expect(hashes(second)).toEqual(hashes(first));
});

test('two builds at a time do not take each other’s files', async () => {
  const parent = temporary();
  const builds = ['smallest', 'workshop'].map((name) =>
    command('build', [], {
      IDLE_CONTENT: join(import.meta.dirname, '../households', name),
      IDLE_OUT: join(parent, name),
    }),
  );
  expect((await Promise.all(builds)).map(({ code, err }) => ({ code, err }))).toEqual([
    { code: 0, err: '' },
    { code: 0, err: '' },
  ]);
  expect(readdirSync(parent).sort()).toEqual(['smallest', 'workshop']);
  expect(readdirSync(join(parent, 'smallest', 'machines'))).toEqual(['juniper']);
  expect(readdirSync(join(parent, 'workshop', 'machines'))).not.toContain('juniper');
});

test('a name is shown as the letters it is made of, never as markup, on every page', async () => {
  const { site: folder } = await site();
  const all = pages(folder);
  expect(all.length).toBeGreaterThan(3 * HOSTILE.length);
  for (const path of all) {
    // Inside the quotes of an attribute, "<" is a letter like others.
    const whole = readFileSync(join(folder, path), 'utf8');
    const html = whole.replace(/="[^"]*"/g, '="…"');
    expect(html, path).not.toMatch(/<script>alert|<img src=x|<b onclick|<\/title><script/i);
    expect(html, path).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/);
    expect(html, path).not.toMatch(/<[a-z][^>]*\son[a-z]+\s*=/i);
    expect(html, path).not.toMatch(/<[a-z][^>]*\sstyle\s*=|<style/i);
    expect(whole, path).toMatch(/<meta http-equiv="Content-Security-Policy"/i);
  }
  const index = readFileSync(join(folder, 'index.html'), 'utf8');
  expect(index).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
});

test('a real browser runs nothing of a name, and the policy is never broken', async () => {
  const { site: folder } = await site();
  const server = await serve(folder);
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    const said: string[] = [];
    page.on('dialog', (dialog) => {
      said.push(dialog.message());
      void dialog.dismiss();
    });
    page.on('pageerror', (error) => said.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' || /Content.Security.Policy/i.test(message.text())) said.push(message.text());
    });
    for (const path of [
      '/',
      '/agenda/',
      '/jobs/',
      '/shopping/',
      '/machines/machine-0/',
      '/machines/machine-1/lay-up/',
    ]) {
      await page.goto(`${server.origin}${path}`);
      await page.waitForLoadState('networkidle');
      expect(await page.locator('img[src="x"], b[onclick], script:not([src]):not([type])').count(), path).toBe(0);
    }
    expect(await page.locator('h1').first().textContent()).toContain('onerror=alert(1)');
    expect(said).toEqual([]);
  } finally {
    await browser.close();
    await server.close();
  }
});

test('only static files are published, and none of them is content', async () => {
  const { site: folder } = await site();
  const kinds = new Set(Object.keys(hashes(folder)).map((path) => path.replace(/^.*\.(?=[^.]*$)/, '')));
  for (const kind of kinds)
    expect(['html', 'css', 'js', 'json', 'ics', 'svg', 'png', 'ico', 'webmanifest', 'txt', 'woff2']).toContain(kind);
});

test('nothing outside the content folder is read through a link', async () => {
  const folder = copyOf('smallest');
  const outside = temporary();
  put(outside, 'secret.yaml', 'name: Secret\nkind: quad\nplace: tin-shed\n');
  symlinkSync(join(outside, 'secret.yaml'), join(folder, 'machines', 'secret.yaml'));
  const { code, err, out } = await command('check', [], { IDLE_CONTENT: folder });
  expect(code).toBe(1);
  expect(err).toContain('machines/secret.yaml');
  expect(err + out).not.toContain('Secret');
});

test('a build that fails tells every fault of every file and leaves the last site byte for byte', async () => {
  const folder = copyOf('smallest');
  const last = join(temporary(), 'dist');
  mkdirSync(join(last, 'deep'), { recursive: true });
  put(last, 'index.html', 'the last good site');
  put(last, 'deep/page.html', 'a page of it');
  const before = hashes(last);
  const broken = [
    'name: [unclosed',
    'name: A\nkind: boat\nplace: tin-shed\n',
    'name: A\nkind: quad\nplace: nowhere\n',
    'name: A\nname: B\nkind: quad\nplace: tin-shed\n',
    'kind: quad\nplace: tin-shed\n',
    'name: A\nkind: quad\nplace: tin-shed\nlastUse: 2026-10-25\n',
    'name: A\nkind: quad\nplace: tin-shed\nbattery: { capacity: 12 }\n',
    'name: A\nkind: quad\nplace: tin-shed\nfuel: { tank: -4 L }\n',
    'name: A\nkind: quad\nplace: tin-shed\nlastUse: "2027-01-01"\nfirstUse: "2026-01-01"\n',
    '\tname: A\n',
  ];
  for (const [i, text] of broken.entries()) put(folder, `machines/broken-${i}.yaml`, text);
  const { code, err } = await command('build', [], { IDLE_CONTENT: folder, IDLE_OUT: last });
  expect(code).toBe(1);
  for (const i of broken.keys()) expect(err).toMatch(new RegExp(`machines/broken-${i}\\.yaml:\\d+:\\d+ {2}`));
  expect(err).not.toMatch(/\n\s+at .*:\d+:\d+/);
  expect(hashes(last)).toEqual(before);
  expect(readdirSync(join(last, '..'))).toEqual(['dist']);
});
