import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { cleanUp, command, copyOf, put } from './household.ts';

afterEach(cleanUp);

const DEMO = '5 machines: no problem found.';

test('--content names the folder, and goes before the environment', async () => {
  const folder = copyOf('smallest');
  expect((await command('check', ['--content', folder])).out).toContain('1 machine: no problem found.');
  const both = await command('check', ['--content', folder], { IDLE_CONTENT: join(folder, 'nowhere') });
  expect(both.out).toContain('1 machine: no problem found.');
  expect((await command('check', [])).out).toContain(DEMO);
});

test('--today decides the day, and goes before the environment', async () => {
  const folder = copyOf('smallest');
  put(
    folder,
    'records/juniper/later.yaml',
    'readings:\n  - { date: "2026-12-05", voltage: 12.6 V, temperature: 2 °C, rested: 12 h }\n',
  );
  const now = await command('check', ['--content', folder, '--today', '2026-12-06']);
  expect(now).toMatchObject({ code: 0, err: '' });
  const before = await command('check', ['--content', folder, '--today', '2026-11-01']);
  expect(before.code).toBe(1);
  expect(before.err).toContain('2026-12-05');
});

test('what a command does not know is refused in plain words, with what it knows', async () => {
  const refused: [string, string[], string][] = [
    ['check', ['--contnet', 'x'], 'found the option "--contnet", expected --content <folder>, --today <date>.'],
    ['build', ['--content'], 'found "--content" without its value, expected'],
    ['build', ['--out', '--today', '2026-10-25'], 'found "--out" without its value, expected'],
    ['check', ['../my-garage'], 'found "../my-garage", expected --content <folder>'],
    ['check', ['--today', '25.10.2026'], '--today: found "25.10.2026", expected a date such as 2026-10-25.'],
    ['check', ['--today', '2026-13-01'], '--today: found "2026-13-01", expected a date'],
    ['new', ['--nme', 'Juniper'], 'found the option "--nme", expected --content <folder>, --household'],
    ['from-csv', ['--replace=yes', 'a.csv', 'b'], 'found "--replace" with a value, expected'],
  ];
  for (const [name, args, said] of refused) {
    const { code, err, out } = await command(name, args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(said);
    expect(err.trim().split('\n')).toHaveLength(1);
  }
});

test('the folder of a spreadsheet may be given as --content', async () => {
  const folder = copyOf('smallest');
  put(folder, 'one.csv', 'id,name,kind,place\nteal,Teal,quad,tin-shed\n');
  const { code, err } = await command('from-csv', [join(folder, 'one.csv'), '--content', folder]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect((await command('check', ['--content', folder])).out).toContain('2 machines: no problem found.');
});
