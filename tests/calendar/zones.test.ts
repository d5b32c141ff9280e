import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { calendarOf } from '../../src/calendar/index.ts';
import { aPlan } from '../fixtures/plan.ts';
import { readBack } from './read-back.ts';

const run = promisify(execFile);
const script = new URL('print-calendar.ts', import.meta.url).pathname;

const expected = calendarOf(aPlan()) + calendarOf(aPlan({ south: true }), { machineId: 'juniper' });

/** The calendars of both hemispheres as a process in another time zone and locale writes them. */
async function printed(env: Record<string, string>): Promise<string> {
  const { stdout } = await run(process.execPath, [script], { env: { ...process.env, ...env }, maxBuffer: 1 << 24 });
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

test.each(ZONES)('a process in %s writes the same bytes', async (TZ) => {
  expect(await printed({ TZ })).toBe(expected);
});

test.each(['ar_EG.UTF-8', 'th_TH.UTF-8'])('a process of the locale %s writes the same bytes', async (LC_ALL) => {
  expect(await printed({ LC_ALL, TZ: 'Asia/Tehran' })).toBe(expected);
});

test('a household of any zone and hemisphere has its reminders on the days of the plan', () => {
  for (const zone of ZONES) {
    for (const south of [false, true]) {
      const plan = aPlan({ zone, south });
      expect(readBack(calendarOf(plan)).events.map((e) => e.start)).toEqual(plan.events.map((e) => e.date));
    }
  }
});
