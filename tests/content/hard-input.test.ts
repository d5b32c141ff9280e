import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatProblem } from '../../src/content/problem.ts';
import { readContent } from '../../src/content/read.ts';
import { household } from './helpers.ts';

const sound = household('workshop');
const bike = sound.find((f) => f.path === 'machines/bike.yaml')!.bytes as Uint8Array;
const rest = sound.filter((f) => f.path !== 'machines/bike.yaml');

function outcome(bytes: Uint8Array) {
  const { household: found, problems } = readContent([...rest, { path: 'machines/bike.yaml', bytes }], {
    asOf: '2026-11-25',
  });
  const lines = bytes.filter((b) => b === 10).length + 2;
  for (const p of problems) {
    expect(p.line).toBeGreaterThanOrEqual(1);
    expect(p.column).toBeGreaterThanOrEqual(1);
    if (p.file === 'machines/bike.yaml') expect(p.line).toBeLessThanOrEqual(lines);
    expect(formatProblem(p)).not.toMatch(/[\p{Cc}\u202e]|undefined|\[object|NaN /u);
  }
  expect(found === undefined).toBe(problems.length > 0);
}

test('any bytes in place of a file give a household or problems, never a crash', () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), outcome), { numRuns: 200 });
});

test('any stretch of a sound file, cut, doubled or overwritten, gives a household or problems', () => {
  const signs = fc.constantFrom(
    ...[
      ':',
      '-',
      '"',
      '[',
      '}',
      '\n',
      '\t',
      ' ',
      '#',
      '&a ',
      '*a',
      '!x ',
      '? ',
      '| ',
      '\u00e9',
      '12',
      'no',
      '~',
      '<<: ',
      '"2026-02-30"',
    ],
  );
  fc.assert(
    fc.property(fc.nat(bike.length), fc.nat(40), signs, fc.boolean(), (at, length, sign, twice) => {
      const insert = new TextEncoder().encode(sign);
      const middle = twice ? bike.subarray(at, at + length) : new Uint8Array();
      outcome(
        Uint8Array.from([...bike.subarray(0, at), ...insert, ...middle, ...bike.subarray(at + (twice ? 0 : length))]),
      );
    }),
    { numRuns: 400 },
  );
});

test('a tab within a unit is told by its name', () => {
  const text = new TextDecoder().decode(bike).replace('12 months', '12 m\tonths');
  outcome(new TextEncoder().encode(text));
});

test('what stands within quotes or in a block of text may begin its lines with any space', () => {
  const text = new TextDecoder().decode(bike);
  const read = (remarks: string) =>
    readContent(
      [...rest, { path: 'machines/bike.yaml', bytes: new TextEncoder().encode(`${text}\nremarks: ${remarks}\n`) }],
      { asOf: '2026-11-25' },
    ).problems.map(({ what }) => what);
  expect(text).not.toContain('remarks:');
  expect(read('"one\n\n  \u2008two"')).toEqual([]);
  expect(read("'one\n\n  \u00a0two'")).toEqual([]);
  expect(read('|\n  one\n  \ttwo\n  \u3000three')).toEqual([]);
  expect(read('"one"\n\u00a0spot: here')).toEqual([expect.stringContaining('a space of another kind (U+00A0)')]);
});

test('lines moved about give a household or problems', () => {
  const lines = new TextDecoder().decode(bike).split('\n');
  fc.assert(
    fc.property(fc.nat(lines.length - 1), fc.nat(lines.length - 1), fc.nat(6), (from, to, indent) => {
      const moved = [...lines];
      const [line] = moved.splice(from, 1);
      moved.splice(to, 0, ' '.repeat(indent) + line!.trimStart());
      outcome(new TextEncoder().encode(moved.join('\n')));
    }),
    { numRuns: 200 },
  );
});
