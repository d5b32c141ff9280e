import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { Desk } from '../../src/browser/planner/desk.ts';
import { readFiles } from '../../src/content/read-folder.ts';
import { withoutPaths } from '../../src/publish/write.ts';
import { demoSite, PROJECT, TODAY } from './site.ts';

let folder: string;
let desk: Desk;

beforeAll(async () => {
  folder = await demoSite();
  desk = new Desk({ base: '', methods: {} }, async (path) => JSON.parse(readFileSync(join(folder, path), 'utf8')));
}, 240_000);

const sorted = (value: unknown): string =>
  JSON.stringify(value, (_, v) =>
    v !== null && typeof v === 'object' && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  );

test('what the page does with the demo files gives the plan of the build, byte for byte with sorted keys', async () => {
  const files = readFiles(join(PROJECT, 'content')).files.map(({ path, bytes }) => ({
    path,
    bytes: bytes as Uint8Array,
  }));
  const { problems, shown } = await desk.files({
    files,
    now: Date.parse(`${TODAY}T19:00:00Z`),
    revised: '2026-01-01T00:00:00Z',
  });
  expect(problems).toEqual([]);
  expect(shown!.machines).toHaveLength(5);
  const plan = desk.plan();
  expect(sorted(withoutPaths(plan))).toBe(sorted(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))));
  for (const machine of plan.machines)
    expect(sorted(machine)).toBe(
      sorted(JSON.parse(readFileSync(join(folder, 'machines', machine.id, 'plan.json'), 'utf8'))),
    );
  expect(await desk.calendar({ machine: undefined })).toBe(readFileSync(join(folder, 'calendar/all.ics'), 'utf8'));
});

test('the charges worked out from the published input are those of the build where the record says nothing more', async () => {
  const entries = { readings: [], charged: [], done: [], notes: [], asLeft: [] };
  for (const machine of ['juniper', 'magpie', 'sleet', 'badger', 'old-fern']) {
    const { charges } = await desk.record({ machine, entries, asOf: TODAY });
    const page = readFileSync(join(folder, 'machines', machine, 'index.html'), 'utf8');
    const built = JSON.parse(readFileSync(join(folder, 'machines', machine, 'plan.json'), 'utf8'));
    const dates = [...charges.matchAll(/<strong>([^<]+)<\/strong>/g)].map((m) => m[1]);
    expect(dates).toHaveLength(built.battery.charges.length);
    for (const date of dates) expect(page).toContain(`>${date}</time>`);
  }
});

test('a reading far below what was expected brings the first charge forward', async () => {
  const none = { readings: [], charged: [], done: [], notes: [], asLeft: [] };
  const low = { ...none, readings: [{ date: '2026-11-24', volts: 12.3, temperatureC: -3, restedH: 300 }] };
  const [before, after] = [
    await desk.record({ machine: 'juniper', entries: none, asOf: TODAY }),
    await desk.record({ machine: 'juniper', entries: low, asOf: TODAY }),
  ];
  expect(after.charges).not.toBe(before.charges);
  expect(after.picture).not.toBe(before.picture);
});
