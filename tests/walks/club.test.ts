/** The club: three hundred machines in one hall, two helpers, six chargers, a spreadsheet. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { members } from './members.ts';
import { textOf, Walk } from './walk.ts';

const MACHINES = 300;
let walk: Walk;
let plan: SeasonPlan;
/** What the agenda lists under each matter without a day. */
let withoutDay: { text: string; href: string | null | undefined }[][];

beforeAll(() => {
  walk = new Walk('club', '2026-10-01');
  walk.write('../members.csv', members(MACHINES), '2026-10-01');
});
afterAll(() => walk.close());

const csv = (day: string, ...more: string[]) =>
  walk.command('from-csv', day, ...more, join(walk.folder, 'members.csv'), walk.garage);

/** Every file of the site with what is in it. */
function siteNow(): string {
  const hash = createHash('sha256');
  const files = readdirSync(walk.out, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  for (const path of files.map((entry) => join(entry.parentPath, entry.name)).sort())
    hash.update(path).update(readFileSync(path));
  return `${files.length} files ${hash.digest('hex')}`;
}

test('a spreadsheet becomes three hundred machines with one command, and one more builds the site', async () => {
  expect(await csv('2026-10-01')).toMatchObject({ code: 0, said: expect.stringContaining('300 files written') });
  plan = await walk.build('2026-10-01');
  expect(plan.machines).toHaveLength(MACHINES);
  const pages = readdirSync(join(walk.out, 'machines')).filter((name) => name.startsWith('member-'));
  expect(pages).toHaveLength(MACHINES);
}, 300_000);

test('the round of a week is one printed page: where each battery stands, its charger, its hours', async () => {
  const desk = await walk.device({ viewport: { width: 1280, height: 900 } });
  // The first week in which somebody goes round once November is half over.
  const first = DateTime.fromISO(plan.trips.find((t) => t.date >= '2026-11-16')!.date);
  const [monday, sunday] = [first.startOf('week'), first.endOf('week')].map((day) => day.toISODate()!);
  const page = await walk.open(desk, '/agenda/', monday!);
  withoutDay = await page.locator('[aria-labelledby=misfits] li.warning').evaluateAll((items) =>
    items.map((item) =>
      [...item.querySelectorAll('li')].map((line) => ({
        text: line.textContent!.replaceAll(/\s+/g, ' ').trim(),
        href: line.querySelector('a')?.getAttribute('href'),
      })),
    ),
  );
  await walk.click(page, 'Rounds of charging');
  await walk.click(page, new RegExp(`^${first.startOf('week').setLocale('en-GB').toFormat('d LLL yyyy')}`));
  const week = page.locator('.round:target');
  const due = plan.trips.filter((t) => t.date >= monday! && t.date <= sunday!).flatMap((t) => t.charges);
  expect(due.length).toBeGreaterThan(10);
  const rows = await week.locator('tbody tr').all();
  expect(rows).toHaveLength(due.length);
  for (const row of rows)
    expect(await textOf(row)).toMatch(/Member \d+, \w+ ?Row [A-J], \d+ ?(Keeper|Bench|Car|Lithium)/);
  expect(await walk.print(page)).toBe(1);
  // Nobody's charger is in two places: of those that start together each has one of its own.
  for (const trip of plan.trips) {
    const started = trip.charges.flatMap((c) => (c.startHour === undefined ? [] : [`${c.chargerId} ${c.startHour}`]));
    expect(new Set(started).size, trip.date).toBe(started.length);
  }
});

test('of much work without a day the agenda names the machines with their steps, and each name leads to its page', () => {
  expect(withoutDay).toHaveLength(plan.misfits.length);
  expect(Math.max(...plan.misfits.map(({ steps }) => steps.length))).toBeGreaterThan(60);
  plan.misfits.forEach(({ steps }, i) => {
    const ids = [...new Set(steps.map(({ machine }) => machine))];
    const lines = withoutDay[i]!;
    if (steps.length <= 60) expect(lines).toHaveLength(steps.length);
    else
      expect(lines).toEqual(
        ids.map((id) => {
          const own = steps.filter(({ machine }) => machine === id).length;
          const { name } = plan.machines.find((machine) => machine.id === id)!;
          return { text: `${name}: ${own} ${own === 1 ? 'step' : 'steps'}`, href: `/machines/${id}/` };
        }),
      );
  });
});

test("a member's faulty row is told with all others' faults by cell, and nothing is written", async () => {
  const rows = members(MACHINES).split('\n');
  rows[41] = rows[41]!.replace(/\d+ Ah/, '14 mAh').replace('2026-10-', '2026-13-');
  rows[42] = rows[42]!.replace(',hall,', ',hal,');
  walk.write('../members.csv', rows.join('\n'), '2026-12-01');
  const { code, said } = await csv('2026-12-01', '--replace');
  expect(code).toBe(1);
  expect(said).toMatch(/members\.csv:42:\d+ {2}cell G42 battery\.capacity: found "14 mAh"/);
  expect(said).toMatch(/members\.csv:42:\d+ {2}cell L42 lastUse: /);
  expect(said).toMatch(/members\.csv:43:\d+ {2}cell D43 place: found the place "hal", expected one of hall/);
  expect(said).toContain('3 faults');
});

test("a member's faulty file is told with every fault, the site of the day before stays whole", async () => {
  const before = siteNow();
  walk.write(
    'machines/member-007.yaml',
    'name: Member 7\nkind: motorbike\nplace: hall\nlastUse: "2026-02-30"\nbattery: { chemistry: agm, capacity: 12 }\n',
    '2026-12-01',
  );
  const { code, said } = await walk.command('build', '2026-12-01');
  expect(code).toBe(1);
  expect(said.match(/member-007\.yaml:\d+:\d+/g)).toEqual([
    'member-007.yaml:2:7',
    'member-007.yaml:4:10',
    'member-007.yaml:5:38',
  ]);
  expect(said).toMatch(/3 problems in .*: nothing was built\./);
  expect(siteNow()).toBe(before);
  expect(readdirSync(walk.folder).filter((name) => name.startsWith('.idle'))).toEqual([]);
});

test('the season began with no more acts than this', () => {
  expect(walk.acts).toMatchObject({ command: 4, edit: 3, page: 1, click: 2, print: 1 });
});
