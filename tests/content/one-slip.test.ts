/**
 * One slip of the hand in any row of a sound file: it is told once, in its row, and what is advised is the row as it was. Only the
 * first row of a group or an entry says how deep the rest is meant to be; where that one stands wrong, the row below may be told.
 */
import { expect, test } from 'vitest';
import { readContent } from '../../src/content/read.ts';
import { household } from './helpers.ts';

const sound = household('workshop');
const rest = sound.filter(({ path }) => path !== 'machines/bike.yaml');
const bike = sound.find(({ path }) => path === 'machines/bike.yaml')!;
const rows = new TextDecoder().decode(bike.bytes as Uint8Array).split('\n');

const FIELD = /^\s*(?:- )?[\w-]+: \S/;
const ENTRY = /^\s*- /;
/** One space off, a row can be as near to the level above its own as to that. */
const depth = () => /Indent it (?:by \d spaces?|deeper)|Begin it at the margin/;
const behindDash = (row: string) => row.trim().replace(/^- /, '');
const valueIn = (row: string) => behindDash(row).replace(/^[\w-]+: /, '');

/** What a slip makes of a row, where it has what it takes; and what has to be advised. */
interface Slip {
  make: (row: string) => string | undefined;
  fix: (row: string) => string | RegExp;
  /** The slip moves the row, or hides that it is a field. */
  moves?: boolean;
}

const SLIPS: Record<string, Slip> = {
  'a colon left out': {
    make: (row) => (FIELD.test(row) ? row.replace(': ', ' ') : undefined),
    fix: (row) => `Write "${behindDash(row)}".`,
    moves: true,
  },
  'an equals sign for the colon': {
    make: (row) => (FIELD.test(row) ? row.replace(': ', ' = ') : undefined),
    fix: () => 'Write "field: value".',
  },
  'a semicolon for the colon': {
    make: (row) => (FIELD.test(row) ? row.replace(': ', '; ') : undefined),
    fix: () => 'Write "field: value".',
  },
  'no space behind the colon': {
    make: (row) => (/^\s*(?:- )?[\w-]+: \w/.test(row) ? row.replace(': ', ':') : undefined),
    fix: () => 'Put a space after the colon.',
  },
  'a dash left out': {
    make: (row) => (ENTRY.test(row) ? row.replace('- ', '  ') : undefined),
    // Of the only entry of a list a row does not tell whether it was meant to be one.
    fix: () => /"- |dash/,
  },
  'no space behind the dash': {
    make: (row) => (ENTRY.test(row) ? row.replace('- ', '-') : undefined),
    fix: () => 'Put a space after the dash.',
  },
  'a bullet for the dash': {
    make: (row) => (ENTRY.test(row) ? row.replace('- ', '• ') : undefined),
    fix: () => 'Write "- " before the entry.',
  },
  'a space too many': { make: (row) => (row === '' ? undefined : ` ${row}`), fix: depth, moves: true },
  'a space too few': { make: (row) => (row.startsWith(' ') ? row.slice(1) : undefined), fix: depth, moves: true },
  'tabs for spaces': {
    make: (row) => (row.startsWith(' ') ? row.replace(/^ +/, (indent) => '\t'.repeat(indent.length / 2)) : undefined),
    fix: () => 'Indent with two spaces for each level.',
  },
  'a quote not closed': {
    make: (row) => (/"$/.test(row) ? row.slice(0, -1) : undefined),
    fix: (row) => `Close it: ${valueIn(row)}.`,
  },
  'a bracket not closed': {
    make: (row) => (/[\]}]$/.test(row) ? row.slice(0, -1) : undefined),
    fix: (row) => `Close it with "${row.at(-1)}"`,
  },
};

/** Rows that open the file, a group or an entry. */
const opens = (at: number) => at === 0 || ENTRY.test(rows[at]!) || /:$/.test(rows[at - 1] ?? '');

test.each(Object.entries(SLIPS))('%s', (_, { make, fix, moves = false }) => {
  let seen = 0;
  for (const [at, row] of rows.entries()) {
    const broken = make(row);
    if (broken === undefined) continue;
    seen += 1;
    const { household: found, problems } = readContent(
      [...rest, { path: bike.path, bytes: rows.with(at, broken).join('\n') }],
      { asOf: '2026-11-25' },
    );
    expect(found, broken).toBeUndefined();
    const [first, ...others] = problems;
    if (moves && opens(at)) {
      expect([at + 1, at + 2], broken).toContain(first!.line);
      continue;
    }
    expect(others, broken).toEqual([]);
    expect(first!.line, broken).toBe(at + 1);
    // At a sign that can be seen, or at the tab that is to go.
    expect(broken[first!.column - 1], broken).toMatch(/[\S\t]/);
    const advised = fix(row);
    if (typeof advised === 'string') expect(first!.fix, broken).toContain(advised);
    else expect(first!.fix, broken).toMatch(advised);
  }
  expect(seen).toBeGreaterThan(4);
});
