import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { calendarOf } from '../../src/calendar/index.ts';
import { aPlan } from '../fixtures/plan.ts';
import { readBack } from './read-back.ts';

const run = promisify(execFile);
const script = new URL('print-calendar.ts', import.meta.url).pathname;

/** The calendar as a process in another time zone and locale writes it. */
async function printed(env: Record<string, string>, ...args: string[]): Promise<string> {
  const { stdout } = await run(process.execPath, [script, ...args], {
    env: { ...process.env, ...env },
    maxBuffer: 1 << 24,
  });
  return stdout;
}

const ZONES = [
  'UTC',
  'America/New_York',
  'America/St_Johns',
  'Europe/Helsinki',
  'Asia/Tokyo',
  'Asia/Kathmandu',
  'Australia/Hobart',
  'Pacific/Auckland',
] as const;

test.each(['north', 'south'])('a process in any of eight time zones writes the same bytes (%s)', async (half) => {
  const expected = calendarOf(aPlan({ south: half === 'south' }));
  for (const pair of [ZONES.slice(0, 4), ZONES.slice(4)]) {
    const files = await Promise.all(pair.map((TZ) => printed({ TZ }, half)));
    for (const [i, file] of files.entries()) expect(file, pair[i]).toBe(expected);
  }
});

test('a process whose locale has other digits and another calendar writes the same bytes', async () => {
  const expected = calendarOf(aPlan(), { machineId: 'juniper' });
  for (const LC_ALL of ['ar_EG.UTF-8', 'fa_IR.UTF-8', 'th_TH.UTF-8']) {
    expect(await printed({ LC_ALL, TZ: 'Asia/Tehran' }, 'north', 'juniper'), LC_ALL).toBe(expected);
  }
});

test('a household of any zone and hemisphere has its reminders on the days of the plan', () => {
  for (const zone of ZONES) {
    for (const south of [false, true]) {
      const plan = aPlan({ zone, south });
      expect(readBack(calendarOf(plan)).events.map((e) => e.start)).toEqual(plan.events.map((e) => e.date));
    }
  }
});
