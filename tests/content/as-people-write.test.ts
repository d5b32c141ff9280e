/** What is unusual and right is taken: each beside the sound household. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openClimateLibrary, stationClimate } from '../../src/content/climate-library.ts';
import { readContent } from '../../src/content/read.ts';
import { normalsOf } from '../../src/planner/climate/index.ts';
import { planSeason } from '../../src/planner/plan.ts';
import { household, readWith, SMALLEST } from './helpers.ts';

const machine = (change: (text: string) => string) => {
  const { household: found, problems } = readWith({ 'machines/juniper.yaml': change(SMALLEST) });
  expect(problems).toEqual([]);
  return found!.machines[0]!;
};

test('a name in a block of one line is that line', () => {
  for (const sign of ['|', '>', '|-'])
    expect(machine((text) => text.replace(/^name: .*$/m, `name: ${sign}\n  Juniper the Second`)).name).toBe(
      'Juniper the Second',
    );
});

test('a text that begins with a date is a text', () => {
  const notes = 'notes:\n  - { date: "2026-09-06", text: 2026-09-05 boot cracked }\n';
  expect(machine((text) => `${text.trimEnd()}\n${notes}`).notes[0]!.text).toBe('2026-09-05 boot cracked');
});

test.each(['ft-lbs', 'ft lb', 'ft lbs', 'lb ft', 'lbs-ft'])('a torque in %s is one in pound-feet', (unit) => {
  const assemblies = `assemblies:\n  - id: seat\n    name: Seat\n    offMinutes: 5\n    onMinutes: 5\n    fasteners: [{ what: bolt, count: 2, head: hex 10 mm, torque: 18 ${unit} }]\n`;
  // 1 lbf·ft = 1.3558179483314 N·m.
  expect(machine((text) => `${text.trimEnd()}\n${assemblies}`).assemblies[0]!.fasteners[0]!.torqueNm).toBeCloseTo(
    24.4047,
    3,
  );
});

test('the coldest of the bundled stations are planned, whatever the petrol', { timeout: 60_000 }, () => {
  const PROJECT = join(import.meta.dirname, '../..');
  const library = openClimateLibrary(JSON.parse(readFileSync(join(PROJECT, 'public/climate/normals.json'), 'utf8')));
  const coldest = [...Array(library.size).keys()]
    .map((at) => ({ at, minC: Math.min(...normalsOf(stationClimate(library, at)).minC) }))
    .sort((a, b) => a.minC - b.minC)
    .slice(0, 3)
    .map(({ at }) => at);
  for (const at of coldest) {
    const files = household('smallest').map((file) =>
      file.path.startsWith('places/')
        ? {
            ...file,
            bytes: `name: Shed\nenclosure: thin-metal-shed\npower: false\nclimate: { station: "${library.file.id[at]}" }\n`,
          }
        : file,
    );
    for (const blend of ['E0', 'E10', 'E85']) {
      const own = files.map((file) =>
        file.path === 'machines/juniper.yaml'
          ? { ...file, bytes: SMALLEST.replace('blend: E10', `blend: ${blend}`) }
          : file,
      );
      const { household: found, problems } = readContent(own, { asOf: '2026-11-25', library });
      expect(problems).toEqual([]);
      expect(planSeason(found!, { asOf: '2026-11-25' }).problems).toEqual([]);
    }
  }
});
