import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FORBIDDEN } from '../../src/content/no-text.ts';
import { KINDS } from '../../src/content/schemas/household.ts';
import { writeMachine } from '../../src/content/write.ts';
import { readWith } from './helpers.ts';

const ROOT = join(import.meta.dirname, '..', '..');

test.each(KINDS)('a file written for a %s is read without a problem', (kind) => {
  const text = writeMachine({ name: 'One', kind, place: 'tin-shed', lastUse: '2026-10-25', firstUse: '2027-04-10' });
  const { household, problems } = readWith({ 'machines/one.yaml': text });
  expect(problems).toEqual([]);
  expect(household!.machines.find((m) => m.id === 'one')).toMatchObject({ kind, season: { lastUse: '2026-10-25' } });
});

test('all that was answered is in the file, and a machine without battery and fuel says so', () => {
  const full = writeMachine({
    name: 'One',
    kind: 'motorcycle',
    place: 'tin-shed',
    battery: { chemistry: 'agm', capacity: '12 Ah', removable: false, drain: '3 mA' },
    fuel: { delivery: 'carburettor', tank: '4.5 US gal', inTank: '1 US gal', blend: 'E10', tap: 'manual' },
    cooling: 'air',
  });
  const m = readWith({ 'machines/one.yaml': full }).household!.machines.find((x) => x.id === 'one')!;
  expect(m.battery).toMatchObject({ chemistry: 'agm', capacityAh: 12, removable: false, drainMA: { value: 3 } });
  expect(m.fuel).toMatchObject({ delivery: 'carburettor', blend: 'E10', taps: { kind: 'manual' } });
  const bare = writeMachine({ name: 'Two', kind: 'mower', place: 'tin-shed', battery: false, fuel: false });
  const two = readWith({ 'machines/two.yaml': bare }).household!.machines.find((x) => x.id === 'two')!;
  expect([two.battery, two.fuel]).toEqual([undefined, undefined]);
});

test('any name comes back as it was given', () => {
  const printable = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
    .map((s) => s.trim().normalize('NFC'))
    .filter((s) => s !== '' && !FORBIDDEN.test(s) && !/\p{Cc}/u.test(s));
  const tricky = fc.constantFrom(
    'no',
    'true',
    '12',
    '1e3',
    '0x1f',
    '2026-10-25',
    '- a',
    'a: b',
    'a #b',
    '"',
    "'",
    '<b>',
    '~',
    'null',
    '@x',
    '!x',
    '&a',
    '*a',
    '{a',
    '[a',
    '| a',
    '> a',
    '% a',
    '` a',
    '?',
    ': ',
  );
  fc.assert(
    fc.property(fc.oneof(printable, tricky), (name) => {
      const text = writeMachine({
        name,
        kind: 'car',
        place: 'tin-shed',
        lastUse: '2026-10-25',
        firstUse: '2027-04-10',
      });
      const { household, problems } = readWith({ 'machines/one.yaml': text });
      expect(problems).toEqual([]);
      expect(household!.machines.find((m) => m.id === 'one')!.name).toBe(name.trim());
    }),
    { numRuns: 150 },
  );
});

test('npm run new asks, corrects, writes once and never overwrites', () => {
  const folder = mkdtempSync(join(tmpdir(), 'idle-new-'));
  try {
    cpSync(join(ROOT, 'tests', 'households', 'smallest'), folder, { recursive: true });
    const run = (input: string, ...args: string[]) =>
      spawnSync(process.execPath, [join(ROOT, 'src', 'cli', 'new.ts'), ...args], {
        input,
        encoding: 'utf8',
        env: { ...process.env, IDLE_CONTENT: folder },
      });
    const first = run(
      'Grey Owl\nscooter\nnowhere\ntin-shed\n2026-10-30\n2027-04-01\nagm\n7\n7 Ah\ninjection\n\n\nair\n',
    );
    expect(first.status, first.stderr).toBe(0);
    expect(first.stdout).toContain('found "nowhere", expected one of tin-shed');
    expect(first.stdout).toContain('found "7" without a unit');
    const file = join(folder, 'machines', 'grey-owl.yaml');
    const text = readFileSync(file, 'utf8');
    expect(text).toContain('capacity: 7 Ah');
    expect(readWith({ 'machines/grey-owl.yaml': text }).problems).toEqual([]);
    const again = run(
      '',
      '--name',
      'Grey Owl',
      '--kind',
      'car',
      '--place',
      'tin-shed',
      '--chemistry',
      'none',
      '--delivery',
      'none',
    );
    expect(again.status).toBe(1);
    expect(again.stderr).toContain('is there already and was left as it is');
    expect(readFileSync(file, 'utf8')).toBe(text);
    const wrong = run('', '--name', 'Other', '--kind', 'rocket');
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toContain('--kind: found "rocket", expected one of motorcycle');
    expect(wrong.stderr).not.toContain('    at ');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
