/**
 * The browser of the site's tests: the one that IDLE_BROWSER names, else an installed one, else the bundled build for
 * Linux on x64.
 */
import { existsSync } from 'node:fs';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type LaunchOptions,
} from 'playwright-core';

const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** Opens a browser without a window, or says what to do where there is none. */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch(await launchOptions());
}

/** Opens one that keeps what it stores in a folder, so that it can be closed and opened again. */
export async function openKeeping(folder: string, options: BrowserContextOptions): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, { ...options, ...(await launchOptions()) });
}

async function launchOptions(): Promise<LaunchOptions> {
  const named = process.env.IDLE_BROWSER;
  if (named && !existsSync(named))
    throw new Error(`IDLE_BROWSER is "${named}", expected the path of a browser that exists.`);
  const found = named ?? INSTALLED.find((path) => existsSync(path));
  if (found) return { executablePath: found, args: ['--no-sandbox'] };
  if (process.platform === 'linux' && process.arch === 'x64') {
    const { default: bundled } = await import('@sparticuz/chromium');
    // The bundle's own switches put all in one process and turn web security off: not wanted where a policy is tested.
    return { executablePath: await bundled.executablePath(), args: ['--no-sandbox', '--disable-gpu'] };
  }
  throw new Error(
    'No Chrome or Chromium was found. Install one, or set IDLE_BROWSER to the path of its program, and run the tests again.',
  );
}
